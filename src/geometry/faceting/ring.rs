//! An outline flattened to chords that remember their sides.

use crate::geometry::{Outline, Point2};

/// An outline as a polygon, counter-clockwise.
///
/// Invariant: side `s` of the outline became the points `starts[s]..=starts[s + 1]`, the last of them being the first
/// point of the next side.
#[derive(Clone, Debug)]
pub struct Ring {
    /// The corners.
    pub points: Vec<Point2>,
    starts: Vec<usize>,
}

impl Ring {
    /// Flattens an outline; chords stay within `tolerance` of its arcs.
    pub fn new(outline: &Outline, tolerance: f64) -> Self {
        let mut points = Vec::with_capacity(4 * outline.vertices().len());
        let mut starts = Vec::with_capacity(outline.vertices().len());
        for side in outline.segments() {
            starts.push(points.len());
            let chords = side.chords(tolerance);
            points.push(side.from);
            points.extend((1..chords).map(|i| side.at(i as f64 / chords as f64)));
        }
        Self { points, starts }
    }

    /// How many sides the outline has.
    pub fn sides(&self) -> usize {
        self.starts.len()
    }

    /// Where a side begins among the points.
    pub fn start(&self, side: usize) -> usize {
        self.starts.get(side).copied().unwrap_or(0)
    }

    /// What stands at the points of a side, both its ends included.
    pub fn along(&self, side: usize, ids: &[u32]) -> Vec<u32> {
        let end = self.starts.get(side + 1).copied().unwrap_or(ids.len());
        let closing = if end == ids.len() {
            ids.first()
        } else {
            ids.get(end)
        };
        let inner = ids.get(self.start(side)..end).unwrap_or(&[]);
        inner.iter().chain(closing).copied().collect()
    }
}
