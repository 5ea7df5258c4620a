//! What is taken on a sheet: where lines run and texts stand, so that the next text keeps clear of them.

use super::{Align, Item, lettering};
use crate::geometry::{Bounds2, Point2, Vector2, Vertex};

/// Cells of the grid through which neighbours are found, millimetres.
const CELL: f64 = 8.0;

/// The room one line of lettering takes, its tallest and deepest letters counted in.
///
/// Only level and upright lettering (90 degrees) is boxed exactly; anything else by the box round it.
pub fn text_box(at: Point2, text: &str, height: f64, align: Align, angle: f64) -> Bounds2 {
    let width = lettering::width(text, height);
    let left = match align {
        Align::Left => 0.0,
        Align::Centre => -width / 2.0,
        Align::Right => -width,
    };
    let turn = nalgebra::Rotation2::new(angle.to_radians());
    let (low, high) = (-0.33 * height, 1.08 * height);
    let corners = [
        (left, low),
        (left + width, low),
        (left + width, high),
        (left, high),
    ];
    let corners = corners.map(|(x, y)| at + turn * Vector2::new(x, y));
    Bounds2::around(corners).unwrap_or(Bounds2 { low: at, high: at })
}

/// The box of an item of lettering; `None` for a line.
pub fn box_of(item: &Item) -> Option<Bounds2> {
    match item {
        Item::Path { .. } | Item::Dimension(_) => None,
        Item::Text {
            at,
            text,
            height,
            align,
            angle,
            ..
        } => Some(text_box(*at, text, *height, *align, *angle)),
    }
}

/// The straight pieces of a path, arcs as chords within 0.02 mm.
pub fn pieces(points: &[Vertex], closed: bool) -> Vec<[Point2; 2]> {
    let mut pieces = Vec::new();
    let next = points
        .iter()
        .skip(1)
        .chain(points.first().filter(|_| closed));
    for (from, to) in points.iter().zip(next) {
        let segment = crate::geometry::Segment {
            from: from.at,
            to: to.at,
            bulge: from.bulge,
        };
        let chords = segment.chords(0.02);
        let at = |i: usize| segment.at(i as f64 / chords as f64);
        pieces.extend((0..chords).map(|i| [at(i), at(i + 1)]));
    }
    pieces
}

/// True when a straight piece passes through a box.
pub fn crosses(piece: [Point2; 2], area: &Bounds2) -> bool {
    let (from, along) = (piece[0], piece[1] - piece[0]);
    let mut range = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        let (low, high) = (area.low[axis] - from[axis], area.high[axis] - from[axis]);
        if along[axis].abs() < 1e-12 {
            if low >= 0.0 || high <= 0.0 {
                return false;
            }
            continue;
        }
        let (a, b) = (low / along[axis], high / along[axis]);
        range = (range.0.max(a.min(b)), range.1.min(a.max(b)));
    }
    range.0 < range.1
}

/// The same box larger by a margin all round.
pub fn grown(area: &Bounds2, margin: f64) -> Bounds2 {
    let margin = Vector2::repeat(margin);
    Bounds2 {
        low: area.low - margin,
        high: area.high + margin,
    }
}

/// How many lines and texts were registered at some moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Count {
    pieces: usize,
    boxes: usize,
}

/// The lines and texts on one sheet, found by place.
///
/// Invariant: the numbers in each cell rise.
#[derive(Clone, Debug)]
pub struct Occupancy {
    columns: usize,
    rows: usize,
    cells: Vec<(Vec<u32>, Vec<u32>)>,
    pieces: Vec<[Point2; 2]>,
    boxes: Vec<Bounds2>,
}

impl Occupancy {
    /// An empty sheet of this size, millimetres.
    pub fn new(width: f64, height: f64) -> Self {
        let count = |size: f64| (size / CELL).ceil().clamp(1.0, 4096.0) as usize;
        let (columns, rows) = (count(width), count(height));
        Self {
            columns,
            rows,
            cells: vec![(Vec::new(), Vec::new()); columns * rows],
            pieces: Vec::new(),
            boxes: Vec::new(),
        }
    }

    /// How much is registered.
    pub fn count(&self) -> Count {
        Count {
            pieces: self.pieces.len(),
            boxes: self.boxes.len(),
        }
    }

    /// Forgets what was registered last, down to an earlier count.
    pub fn forget_since(&mut self, earlier: Count) {
        while self.pieces.len() > earlier.pieces {
            let Some(piece) = self.pieces.pop() else {
                break;
            };
            let number = self.pieces.len() as u32;
            for reach in reaches(piece) {
                for cell in self.cells_of(&reach) {
                    self.cells[cell].0.pop_if(|last| *last == number);
                }
            }
        }
        while self.boxes.len() > earlier.boxes {
            let Some(area) = self.boxes.pop() else {
                break;
            };
            for cell in self.cells_of(&area) {
                self.cells[cell].1.pop();
            }
        }
    }

    fn cells_of(&self, area: &Bounds2) -> impl Iterator<Item = usize> + use<> {
        let cell =
            |v: f64, count: usize| (v / CELL).floor().clamp(0.0, (count - 1) as f64) as usize;
        let columns = cell(area.low.x, self.columns)..=cell(area.high.x, self.columns);
        let rows = cell(area.low.y, self.rows)..=cell(area.high.y, self.rows);
        let width = self.columns;
        rows.flat_map(move |row| columns.clone().map(move |column| row * width + column))
    }

    /// Registers a straight piece of a line.
    pub fn add_piece(&mut self, piece: [Point2; 2]) {
        let number = self.pieces.len() as u32;
        self.pieces.push(piece);
        for reach in reaches(piece) {
            for cell in self.cells_of(&reach) {
                if self.cells[cell].0.last() != Some(&number) {
                    self.cells[cell].0.push(number);
                }
            }
        }
    }

    /// Registers the box of a text, or any room to be kept free.
    pub fn add_box(&mut self, area: Bounds2) {
        let number = self.boxes.len() as u32;
        self.boxes.push(area);
        for cell in self.cells_of(&area) {
            self.cells[cell].1.push(number);
        }
    }

    /// True when no text box comes into an area.
    pub fn free_of_texts(&self, area: &Bounds2) -> bool {
        self.cells_of(area).all(|cell| {
            let mut taken = self.cells[cell].1.iter();
            taken.all(|&b| !self.boxes[b as usize].overlaps(area, 0.0))
        })
    }

    /// True when neither line nor text comes into an area.
    pub fn is_free(&self, area: &Bounds2) -> bool {
        self.free_of_texts(area)
            && self.cells_of(area).all(|cell| {
                let mut lines = self.cells[cell].0.iter();
                lines.all(|&p| !crosses(self.pieces[p as usize], area))
            })
    }

    /// True when a straight piece passes no text box.
    pub fn is_clear(&self, piece: [Point2; 2]) -> bool {
        self.was_clear(piece, self.count())
    }

    /// True when a straight piece passes none of the text boxes that were registered at an earlier count.
    pub fn was_clear(&self, piece: [Point2; 2], earlier: Count) -> bool {
        let reach = Bounds2 {
            low: piece[0].inf(&piece[1]),
            high: piece[0].sup(&piece[1]),
        };
        self.cells_of(&reach).all(|cell| {
            let boxes = self.cells[cell].1.iter().map(|&b| b as usize);
            let mut taken = boxes.take_while(|&b| b < earlier.boxes);
            taken.all(|b| !crosses(piece, &self.boxes[b]))
        })
    }
}

/// Boxes along a straight piece, each about as long as a cell.
fn reaches(piece: [Point2; 2]) -> impl Iterator<Item = Bounds2> {
    let along = piece[1] - piece[0];
    let steps = (along.norm() / CELL).ceil().clamp(1.0, 10_000.0) as usize;
    let at = move |k: usize| piece[0] + along * (k as f64 / steps as f64);
    (0..steps).map(move |i| {
        let (a, b) = (at(i), at(i + 1));
        Bounds2 {
            low: a.inf(&b),
            high: a.sup(&b),
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(x0: f64, y0: f64, x1: f64, y1: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(x0, y0),
            high: Point2::new(x1, y1),
        }
    }

    #[test]
    fn what_was_tried_is_forgotten_without_a_trace() {
        let mut sheet = Occupancy::new(200.0, 100.0);
        let line = |y: f64| [Point2::new(10.0, y), Point2::new(150.0, y + 30.0)];
        sheet.add_piece(line(20.0));
        sheet.add_box(area(40.0, 60.0, 60.0, 64.0));
        let (before, count) = (format!("{sheet:?}"), sheet.count());
        sheet.add_box(area(42.0, 40.0, 90.0, 70.0));
        sheet.add_piece(line(25.0));
        sheet.add_piece([Point2::new(10.0, 20.0), Point2::new(10.0, 20.0)]);
        let across = [Point2::new(70.0, 0.0), Point2::new(70.0, 100.0)];
        assert!(!sheet.is_clear(across) && sheet.was_clear(across, count));
        sheet.forget_since(count);
        assert_eq!(format!("{sheet:?}"), before);
    }

    #[test]
    fn upright_lettering_runs_up_the_sheet() {
        let at = Point2::new(100.0, 50.0);
        let level = text_box(at, "C-S07", 2.5, Align::Centre, 0.0);
        let upright = text_box(at, "C-S07", 2.5, Align::Centre, 90.0);
        assert!((level.width() - upright.height()).abs() < 1e-9);
        assert!(level.height() >= 2.5 && (level.centre().x - 100.0).abs() < 1e-9);
        // Its top points to the left.
        assert!(upright.low.x < 100.0 - 2.5 && upright.high.x < 101.0);
    }

    #[test]
    fn lines_and_texts_are_found_wherever_they_are() {
        let mut taken = Occupancy::new(400.0, 280.0);
        taken.add_piece([Point2::new(10.0, 10.0), Point2::new(390.0, 270.0)]);
        taken.add_box(area(100.0, 200.0, 120.0, 204.0));
        assert!(!taken.is_free(&area(195.0, 135.0, 205.0, 145.0)));
        assert!(taken.is_free(&area(195.0, 150.0, 205.0, 160.0)));
        assert!(!taken.is_free(&area(119.0, 203.0, 130.0, 210.0)));
        assert!(
            taken.is_free(&area(120.0, 204.0, 130.0, 210.0)),
            "touching is free"
        );
        assert!(!taken.is_clear([Point2::new(110.0, 100.0), Point2::new(110.0, 250.0)]));
        assert!(taken.is_clear([Point2::new(121.0, 100.0), Point2::new(121.0, 250.0)]));
    }

    #[test]
    fn a_line_along_the_border_of_a_box_does_not_cross_it() {
        let b = area(0.0, 0.0, 10.0, 5.0);
        assert!(!crosses(
            [Point2::new(-5.0, 5.0), Point2::new(20.0, 5.0)],
            &b
        ));
        assert!(crosses(
            [Point2::new(-5.0, 4.9), Point2::new(20.0, 4.9)],
            &b
        ));
        assert!(!crosses(
            [Point2::new(11.0, 0.0), Point2::new(30.0, 3.0)],
            &b
        ));
    }
}
