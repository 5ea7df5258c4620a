//! The title block, after its form; the usual form has the fields that ISO 7200 asks for.

use crate::design::{self, Field, Project};
use crate::drawing::page::{self, LARGE, LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen, Scale};
use crate::geometry::{Bounds2, Point2};
use crate::units::Notation;

/// A row at least so high holds a label and a large value, millimetres.
const LABELLED: f64 = 9.6;

/// What the block says.
pub(super) struct TitleBlock<'a> {
    pub form: &'a design::TitleBlock,
    pub project: &'a Project,
    pub title: &'a str,
    /// Number of the sheet, and of how many.
    pub number: (usize, usize),
    pub scale: &'a Scale,
}

impl TitleBlock<'_> {
    fn value(&self, field: Field) -> String {
        let p = self.project;
        match field {
            Field::Project => p.title.clone(),
            Field::Place => p.place.clone(),
            Field::DrawnBy => p.drawn_by.clone(),
            Field::Date => p.date.clone(),
            Field::Revision => p.revision.clone(),
            Field::Title => self.title.to_owned(),
            Field::Sheet => format!("{} of {}", self.number.0, self.number.1),
            Field::Scale => self.scale.name.clone(),
            Field::Units => match p.units {
                Notation::Imperial => "ft-in".to_owned(),
                Notation::Metric => "mm".to_owned(),
            },
            Field::Blank => String::new(),
        }
    }
}

/// Draws the block with its lower right corner at `corner`; its rows share `height`.
pub(super) fn draw(page: &mut Page, corner: Point2, height: f64, block: &TitleBlock) {
    let left = corner.x - block.form.width.mm();
    let rows = &block.form.rows;
    let row_height = height / rows.len().max(1) as f64;
    let (foot, head) = (
        Point2::new(left, corner.y),
        Point2::new(left, corner.y + height),
    );
    page.line(Layer::Border, Pen::Medium, Dash::Solid, foot, head);
    for (number, row) in rows.iter().enumerate() {
        let low = corner.y + height - row_height * (number + 1) as f64;
        if number + 1 < rows.len() {
            let (from, to) = (Point2::new(left, low), Point2::new(corner.x, low));
            page.line(Layer::Border, Pen::Thin, Dash::Solid, from, to);
        }
        let mut x = left;
        for cell in row {
            let right = x + cell.width.mm();
            let area = Bounds2 {
                low: Point2::new(x, low),
                high: Point2::new(right, low + row_height),
            };
            fill(page, &area, &cell.label, &block.value(cell.field));
            x = right;
            if x < corner.x - 1e-6 {
                let (from, to) = (Point2::new(x, low), Point2::new(x, low + row_height));
                page.line(Layer::Border, Pen::Thin, Dash::Solid, from, to);
            }
        }
    }
}

/// Letters one cell: its label along the top, its value below it.
fn fill(page: &mut Page, cell: &Bounds2, label: &str, value: &str) {
    let room = cell.width() - 3.0;
    let at = |dy: f64| Point2::new(cell.low.x + 1.5, cell.low.y + dy);
    let (label, small) = page::fit(label, room, &[LETTERS]);
    let label_at = at(cell.height() - 1.08 * small - 0.6);
    page.text(Layer::Border, &label, small, (label_at, Align::Left, 0.0));
    let high = label.is_empty() || cell.height() >= LABELLED;
    let heights: &[f64] = if high { &[LARGE, LETTERS] } else { &[LETTERS] };
    let (text, height) = page::fit(value, room, heights);
    page.text(Layer::Border, &text, height, (at(1.6), Align::Left, 0.0));
}
