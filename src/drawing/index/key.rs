//! The key: samples of lines, hatches and signs with what they stand for.

use crate::drawing::hatch::{self, Material, Patch};
use crate::drawing::page::{LARGE, LETTERS, Page};
use crate::drawing::schedule::{Heights, Part, broken};
use crate::drawing::{Align, Dash, Layer, Pen};
use crate::geometry::{Bounds2, Outline, Point2, Region, Vector2};

/// Width and height of a sample.
const SAMPLE: (f64, f64) = (16.0, 3.8);
/// Between sample and words.
const GAP: f64 = 3.0;
/// From one line of words to the next.
const LINE: f64 = 4.0;
/// The least height of an entry.
const ROW: f64 = 5.0;
/// Height of the heading.
const HEADING: f64 = 6.5;
/// The most lines of an entry.
const MOST_LINES: usize = 4;

/// What stands before the words.
#[derive(Clone, Copy, Debug)]
pub enum Sample {
    /// A line of this layer, width and type.
    Line(Layer, Pen, Dash),
    /// A hatched piece.
    Hatch(Material),
    /// A sign, drawn into its box.
    Sign(fn(&mut Page, &Bounds2)),
}

/// Entries under a heading, laid out for a width.
///
/// Invariant: it has at least one entry.
#[derive(Clone, Debug)]
pub struct Key {
    heading: &'static str,
    rows: Vec<Vec<Entry>>,
    heights: Heights,
    /// The width of an entry.
    entry: f64,
}

/// A sample and the lines of its words.
type Entry = (Sample, Vec<String>);

impl Key {
    /// Breaks the words to the width; so many entries stand side by side.
    pub fn new(
        heading: &'static str,
        entries: Vec<(Sample, String)>,
        abreast: usize,
        width: f64,
    ) -> Self {
        let entry = width / abreast.max(1) as f64;
        let lay = |(sample, words): (Sample, String)| {
            let words = broken(&words, LETTERS, entry - SAMPLE.0 - 2.0 * GAP, MOST_LINES);
            (sample, words)
        };
        let entries: Vec<Entry> = entries.into_iter().map(lay).collect();
        let rows = entries.chunks(abreast.max(1)).map(<[Entry]>::to_vec);
        let rows: Vec<Vec<Entry>> = rows.collect();
        Self {
            heading,
            heights: rows.iter().map(|row| height(row)).collect(),
            rows,
            entry,
        }
    }

    /// How many rows of entries it has.
    pub fn rows(&self) -> usize {
        self.rows.len()
    }

    /// The height of some rows with the heading.
    pub fn height_of(&self, part: Part) -> f64 {
        HEADING + self.heights.of(part)
    }

    /// The rows from `from` on that fit a height.
    pub fn part_that_fits(&self, from: usize, height: f64) -> Option<Part> {
        self.heights
            .last_that_fits(from, |part| self.height_of(part) <= height + 1e-9)
    }

    /// Draws some rows below the upper left corner `at`.
    pub fn draw(&self, page: &mut Page, at: Point2, part: Part) {
        let heading = if part.from == 0 {
            self.heading.to_owned()
        } else {
            format!("{} (continued)", self.heading)
        };
        let baseline = at - Vector2::new(0.0, 1.08 * LARGE);
        page.text(Layer::Table, &heading, LARGE, (baseline, Align::Left, 0.0));
        let mut top = at - Vector2::new(0.0, HEADING);
        for row in self.rows.iter().take(part.to).skip(part.from) {
            let mut corner = top;
            for entry in row {
                draw_entry(page, corner, entry);
                corner.x += self.entry;
            }
            top.y -= height(row);
        }
    }
}

fn draw_entry(page: &mut Page, top: Point2, (sample, words): &Entry) {
    let first = Point2::new(top.x, top.y - ROW / 2.0);
    let area = Bounds2 {
        low: first - Vector2::new(0.0, SAMPLE.1 / 2.0),
        high: first + Vector2::new(SAMPLE.0, SAMPLE.1 / 2.0),
    };
    sample.draw(page, &area);
    let mut base = first + Vector2::new(SAMPLE.0 + GAP, -LETTERS / 2.0);
    for line in words {
        page.text(Layer::Table, line, LETTERS, (base, Align::Left, 0.0));
        base.y -= LINE;
    }
}

fn height(row: &[Entry]) -> f64 {
    let lines = row.iter().map(|(_, words)| words.len()).max().unwrap_or(1);
    ROW + LINE * (lines.max(1) - 1) as f64
}

impl Sample {
    fn draw(self, page: &mut Page, area: &Bounds2) {
        match self {
            Self::Line(layer, pen, dash) => {
                let y = area.centre().y;
                let (from, to) = (Point2::new(area.low.x, y), Point2::new(area.high.x, y));
                page.line(layer, pen, dash, from, to);
            }
            Self::Hatch(material) => piece(page, area, material),
            Self::Sign(draw) => draw(page, area),
        }
    }
}

/// A piece of a material as a section shows it: sheet steel and coats as thin as they are on paper.
fn piece(page: &mut Page, area: &Bounds2, material: Material) {
    let half = match material {
        Material::Steel => 0.3,
        Material::BaseCoat | Material::FinishCoat => 1.1,
        _ => SAMPLE.1 / 2.0,
    };
    let (low, high, y) = (area.low.x, area.high.x, area.centre().y);
    let outline = Outline::rectangle(low, y - half, high, y + half);
    let points = outline.vertices().to_vec();
    let regions = vec![Region::solid(outline)];
    hatch::draw(page, &[Patch { material, regions }]);
    if material != Material::Steel {
        page.path(
            Layer::Section,
            Some(Pen::Medium),
            Dash::Solid,
            points,
            true,
            None,
        );
    }
}
