//! Levels: heights above the datum, beside an elevation.

use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Point2, Vertex};

/// One height to mark.
#[derive(Clone, Debug, PartialEq)]
pub struct LevelMark {
    /// Where it is on the sheet.
    pub y: f64,
    /// What is there and how high, such as `counter top +3'-0"`.
    pub text: String,
}

/// Levels stand at least so far apart, millimetres; nearer ones are spread and their lines kinked.
const APART: f64 = 5.0;
/// The triangle that stands on the level.
const TRIANGLE: f64 = 2.2;

/// Draws levels from the right edge of a view, the lowest first.
pub fn draw_levels(page: &mut Page, edge: f64, marks: &[LevelMark]) {
    draw_beside(page, Edge { at: edge, out: 1.0 }, marks);
}

/// Draws levels from the left edge of a view, the lowest first.
pub fn draw_levels_left(page: &mut Page, edge: f64, marks: &[LevelMark]) {
    draw_beside(
        page,
        Edge {
            at: edge,
            out: -1.0,
        },
        marks,
    );
}

/// An edge of a view, upright, and which way is out.
#[derive(Clone, Copy)]
struct Edge {
    at: f64,
    out: f64,
}

impl Edge {
    fn x(self, outwards: f64) -> f64 {
        self.at + self.out * outwards
    }
}

fn draw_beside(page: &mut Page, edge: Edge, marks: &[LevelMark]) {
    let mut marks = marks.to_vec();
    marks.sort_by(|a, b| a.y.total_cmp(&b.y));
    let mut lowest = f64::NEG_INFINITY;
    for mark in &marks {
        let y = mark.y.max(lowest);
        lowest = y + APART;
        draw(page, edge, mark, y);
    }
}

fn draw(page: &mut Page, edge: Edge, mark: &LevelMark, y: f64) {
    let start = Point2::new(edge.x(2.0), mark.y);
    let bend = Point2::new(edge.x(6.0), mark.y);
    let landing = Point2::new(edge.x(9.0), y);
    let text_out = 9.0 + 2.0 * TRIANGLE + 0.8;
    let end = Point2::new(edge.x(text_out + lettering::width(&mark.text, LETTERS)), y);
    let points = [start, bend, landing, end]
        .iter()
        .map(|p| Vertex::sharp(p.x, p.y))
        .collect();
    page.path(
        Layer::Dimension,
        Some(Pen::Fine),
        Dash::Solid,
        points,
        false,
        None,
    );
    let tip = edge.x(9.0 + TRIANGLE);
    let triangle = [
        (tip, y),
        (tip + TRIANGLE / 2.0, y + TRIANGLE),
        (tip - TRIANGLE / 2.0, y + TRIANGLE),
    ];
    let points = triangle
        .iter()
        .map(|(x, y)| Vertex::sharp(*x, *y))
        .collect();
    page.path(
        Layer::Dimension,
        Some(Pen::Fine),
        Dash::Solid,
        points,
        true,
        None,
    );
    let align = if edge.out > 0.0 {
        Align::Left
    } else {
        Align::Right
    };
    let stand = (Point2::new(edge.x(text_out), y + 1.0), align, 0.0);
    page.text(Layer::Dimension, &mark.text, LETTERS, stand);
}
