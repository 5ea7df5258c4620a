//! The title block, its fields as ISO 7200 asks for them.

use crate::design::Project;
use crate::drawing::page::{self, LARGE, LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen, Scale};
use crate::geometry::{Bounds2, Point2};
use crate::units::Notation;

/// Width of the block (ISO 7200), millimetres.
pub(super) const WIDTH: f64 = 180.0;
/// Lettering height of the names of fields.
const NAME: f64 = 1.8;

/// What the block says.
pub(super) struct TitleBlock<'a> {
    pub project: &'a Project,
    pub title: &'a str,
    /// Number of the sheet, and of how many.
    pub number: (usize, usize),
    pub scale: &'a Scale,
}

impl TitleBlock<'_> {
    /// Rows from the top: the width of each field, its name and its value.
    fn rows(&self) -> [Vec<(f64, &'static str, String)>; 3] {
        let p = self.project;
        let units = match p.units {
            Notation::Imperial => "ft-in",
            Notation::Metric => "mm",
        };
        let (number, of) = self.number;
        [
            vec![
                (132.0, "project", p.title.clone()),
                (48.0, "sheet", format!("{number} of {of}")),
            ],
            vec![
                (108.0, "what is shown", self.title.to_owned()),
                (42.0, "scale", self.scale.name.clone()),
                (30.0, "units", units.to_owned()),
            ],
            vec![
                (76.0, "place", p.place.clone()),
                (56.0, "drawn by", p.drawn_by.clone()),
                (26.0, "date", p.date.clone()),
                (22.0, "revision", p.revision.clone()),
            ],
        ]
    }
}

/// Draws the block with its lower right corner at `corner`.
pub(super) fn draw(page: &mut Page, corner: Point2, height: f64, block: &TitleBlock) {
    let left = corner.x - WIDTH;
    let row_height = height / 3.0;
    let (foot, head) = (
        Point2::new(left, corner.y),
        Point2::new(left, corner.y + height),
    );
    page.line(Layer::Border, Pen::Medium, Dash::Solid, foot, head);
    for (number, row) in block.rows().into_iter().enumerate() {
        let low = corner.y + height - row_height * (number + 1) as f64;
        if number < 2 {
            let (from, to) = (Point2::new(left, low), Point2::new(corner.x, low));
            page.line(Layer::Border, Pen::Thin, Dash::Solid, from, to);
        }
        let mut x = left;
        for (width, name, value) in row {
            let cell = Bounds2 {
                low: Point2::new(x, low),
                high: Point2::new(x + width, low + row_height),
            };
            field(page, &cell, name, &value);
            x += width;
            if x < corner.x - 1e-6 {
                let (from, to) = (Point2::new(x, low), Point2::new(x, low + row_height));
                page.line(Layer::Border, Pen::Thin, Dash::Solid, from, to);
            }
        }
    }
}

fn field(page: &mut Page, cell: &Bounds2, name: &str, value: &str) {
    let (text, height) = page::fit(value, cell.width() - 4.0, &[LARGE, LETTERS]);
    let at = |dy: f64| Point2::new(cell.low.x + 2.0, cell.low.y + dy);
    let name_at = at(cell.height() - NAME - 1.0);
    page.text(Layer::Border, name, NAME, (name_at, Align::Left, 0.0));
    page.text(Layer::Border, &text, height, (at(2.1), Align::Left, 0.0));
}
