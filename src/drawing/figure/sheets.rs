//! Figures of one kind on their sheets: sections, details.

use super::arrange::{Arrangement, Figure, Wishes, arrange};
use super::{Beside, Caption, NotesColumn, notes_height, notes_width};
use crate::drawing::Scale;
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::page::Page;
use crate::drawing::set::Planned;
use crate::geometry::Bounds2;

/// What the layout must know of a figure.
pub trait Shown {
    /// The letter or number by which other sheets call it.
    fn sign(&self) -> String;
    /// What is drawn, millimetres built, in its own view.
    fn area(&self) -> Bounds2;
    /// Room for chains and levels, millimetres on the paper; the column of notes comes on top of it, on the right.
    fn margins(&self) -> Margins;
    /// The notes of its column.
    fn texts(&self) -> Vec<String>;
    /// Its caption at a scale.
    fn caption(&self, scale: &Scale) -> Caption;
}

/// What the figures of a kind have in common.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kind {
    /// One of them, such as `Section`.
    pub one: &'static str,
    /// Several of them; in small letters the stem of their sheets' names too.
    pub many: &'static str,
    /// From a view to its column of notes, millimetres on the paper.
    pub beside: f64,
    /// How wide columns of notes may be, the one that is liked best first: a wider one is lower.
    pub columns: &'static [f64],
}

/// All figures of a kind, laid out.
#[derive(Clone, Debug)]
pub struct Sheets<T> {
    kind: Kind,
    /// The figures in their order.
    pub figures: Vec<T>,
    /// Where each lies.
    pub arranged: Arrangement,
    /// How wide the columns of notes are.
    column: f64,
}

/// A caption is laid out for the longest name that a scale has.
const LONGEST: &str = "1 1/2\" = 1'-0\"";

impl<T: Shown> Sheets<T> {
    /// Lays figures out in a room: with the width of the notes that gives the largest scale, then the fewest sheets.
    pub fn new(kind: Kind, figures: Vec<T>, room: Bounds2, wishes: &Wishes) -> Self {
        let laid = kind.columns.iter().map(|&column| {
            let needs: Vec<Figure> = figures.iter().map(|f| needs(f, &kind, column)).collect();
            (column, arrange(&needs, &[room], wishes))
        });
        let better = |a: &Arrangement, b: &Arrangement| {
            let scale = |a: &Arrangement| (a.fits, a.base.factor);
            let ((fits, factor), (other_fits, other)) = (scale(a), scale(b));
            fits.cmp(&other_fits)
                .then(factor.total_cmp(&other))
                .then(b.sheets.cmp(&a.sheets))
                .is_gt()
        };
        let best = laid.reduce(
            |best, next| {
                if better(&next.1, &best.1) { next } else { best }
            },
        );
        let (column, arranged) = best.unwrap_or_else(|| (0.0, arrange(&[], &[room], wishes)));
        Self {
            kind,
            figures,
            arranged,
            column,
        }
    }

    /// The scale of a sheet.
    pub fn scale(&self, sheet: usize) -> Scale {
        let scales = &self.arranged.scales;
        scales.get(sheet).unwrap_or(&self.arranged.base).clone()
    }

    /// Which sheets there are.
    pub fn planned(&self) -> Vec<Planned> {
        let sheets = 0..self.arranged.sheets;
        sheets
            .map(|sheet| {
                let figures: Vec<String> = self.on(sheet).map(|(f, _)| f.sign()).collect();
                let Kind { one, many, .. } = self.kind;
                let title = match figures.as_slice() {
                    [only] => format!("{one} {only}"),
                    [first, second] => format!("{many} {first} and {second}"),
                    [first, .., last] => format!("{many} {first} to {last}"),
                    [] => many.to_owned(),
                };
                Planned {
                    stem: format!("{}-{}", many.to_lowercase(), sheet + 1),
                    title,
                    face: None,
                    figures,
                }
            })
            .collect()
    }

    /// Draws the captions of a sheet, then its figures by `draw`, each with where its view lies and its column of notes;
    /// says how many texts found no place.
    pub fn draw(
        &self,
        page: &mut Page,
        sheet: usize,
        mut draw: impl FnMut(&mut Page, &T, (&Fit, &NotesColumn)) -> usize,
    ) -> usize {
        let scale = self.scale(sheet);
        for (figure, place) in self.on(sheet) {
            figure.caption(&scale).draw(page, place.caption);
        }
        let drawn = self.on(sheet).map(|(figure, place)| {
            let fit = Fit::at(scale.clone(), &figure.area(), &place.view);
            let column = NotesColumn {
                beside: Beside::Right,
                edge: place.view.high.x + self.kind.beside,
                width: self.column,
                height: (place.caption.y, place.cell.high.y),
            };
            draw(page, figure, (&fit, &column))
        });
        drawn.sum()
    }

    fn on(&self, sheet: usize) -> impl Iterator<Item = (&T, &super::Place)> {
        let pairs = self.figures.iter().zip(&self.arranged.places);
        pairs.filter(move |(_, place)| place.sheet == sheet)
    }
}

/// What a figure needs of a sheet with notes so wide.
fn needs(figure: &impl Shown, kind: &Kind, column: f64) -> Figure {
    let (area, margins) = (figure.area(), figure.margins());
    let texts = figure.texts();
    let scale = Scale {
        factor: 1.0,
        name: LONGEST.to_owned(),
    };
    Figure {
        built: (area.width(), area.height()),
        margins: Margins {
            right: margins.right
                + kind.beside
                + notes_width(texts.iter().map(String::as_str), column),
            ..margins
        },
        least_height: notes_height(texts.iter().map(String::as_str), column) + 4.0,
        caption: figure.caption(&scale).size(),
    }
}
