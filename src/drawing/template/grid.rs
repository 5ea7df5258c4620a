//! The grid of windows that pages show, and how a window lies on its page.

use super::scene::Scene;
use super::trace::{Pieces, Trace};
use crate::geometry::{Bounds2, Point2, Segment, Vector2, Vertex};
use std::collections::BTreeSet;

/// Windows of one size in columns and rows, neighbours sharing an overlap; in the template's plane, millimetres.
///
/// The plane is cut into cells by lines in the middle of the overlaps; each cell lies in its own window, so pages cut
/// along those lines cover everything once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Grid {
    /// How many windows across.
    pub(super) columns: usize,
    /// How many windows up.
    pub(super) rows: usize,
    low: Point2,
    window: Vector2,
    overlap: Vector2,
}

/// Column and row of a window, counted from the lower left.
pub(super) type Place = (usize, usize);

/// A piece of line shorter than this needs no page: a micrometre.
const LEAST: f64 = 1e-3;

/// How many positions of the grid are tried in each direction.
const TRIES: usize = 5;

impl Grid {
    /// The grid over a scene that leaves the fewest pages; among equals the most central one.
    pub(super) fn over(scene: &Scene, window: Vector2, overlap: Vector2) -> Option<Self> {
        let bounds = scene.bounds()?;
        let (columns, slack_x) = count(bounds.width(), window.x, overlap.x)?;
        let (rows, slack_y) = count(bounds.height(), window.y, overlap.y)?;
        let at = |share_x: f64, share_y: f64| Self {
            columns,
            rows,
            low: bounds.low - Vector2::new(slack_x * share_x, slack_y * share_y),
            window,
            overlap,
        };
        let shares = |n: usize| {
            // The middle first, so that it wins among equals.
            let tried = if n > 1 && n <= 40 { TRIES } else { 1 };
            let mut shares: Vec<_> = (1..=tried).map(|k| k as f64 / (tried + 1) as f64).collect();
            shares.sort_by(|a, b| (a - 0.5).abs().total_cmp(&(b - 0.5).abs()));
            shares
        };
        let rows_tried = shares(rows);
        shares(columns)
            .into_iter()
            .flat_map(|x| rows_tried.iter().map(move |y| at(x, *y)))
            .min_by_key(|grid| grid.needed(scene).len())
    }

    /// One window over a box.
    pub(super) fn single(bounds: Bounds2) -> Self {
        Self {
            columns: 1,
            rows: 1,
            low: bounds.low,
            window: bounds.high - bounds.low,
            overlap: Vector2::zeros(),
        }
    }

    /// The windows with something in their cell, row by row from the top, left to right.
    pub(super) fn needed(&self, scene: &Scene) -> Vec<Place> {
        let mut places = BTreeSet::new();
        for line in scene.lines.iter().filter(|l| l.kind.is_needed()) {
            line.trace
                .segments()
                .for_each(|s| self.mark_cells(&s, &mut places));
        }
        places
            .into_iter()
            .map(|(down, i)| (i, self.rows - 1 - down))
            .collect()
    }

    /// Notes the cells that a piece passes, by row from the top and column.
    fn mark_cells(&self, segment: &Segment, places: &mut BTreeSet<(usize, usize)>) {
        let Some(bounds) = Bounds2::around(segment.bounds_points()) else {
            return;
        };
        let mut cuts = vec![0.0, 1.0];
        for axis in 0..2 {
            let (first, last) = (
                self.cell_at(axis, bounds.low[axis]),
                self.cell_at(axis, bounds.high[axis]),
            );
            cuts.extend(
                (first + 1..=last).flat_map(|k| segment.crossings(axis, self.parting(axis, k))),
            );
        }
        cuts.sort_by(f64::total_cmp);
        let length = segment.length();
        for pair in cuts.windows(2).filter(|p| (p[1] - p[0]) * length > LEAST) {
            let middle = segment.at(f64::midpoint(pair[0], pair[1]));
            let (i, j) = (self.cell_at(0, middle.x), self.cell_at(1, middle.y));
            places.insert((self.rows - 1 - j, i));
        }
    }

    /// The number of the cell at a coordinate; a cell owns its lower and left edge.
    fn cell_at(&self, axis: usize, at: f64) -> usize {
        let n = if axis == 0 { self.columns } else { self.rows };
        let cells = (at - self.low[axis] - self.overlap[axis] / 2.0) / self.step()[axis];
        (cells.floor().max(0.0) as usize).min(n - 1)
    }

    fn step(&self) -> Vector2 {
        self.window - self.overlap
    }

    /// What a page shows.
    pub(super) fn window(&self, (i, j): Place) -> Bounds2 {
        let low = self.low + self.step().component_mul(&Vector2::new(i as f64, j as f64));
        Bounds2 {
            low,
            high: low + self.window,
        }
    }

    /// What a page keeps when it is cut and joined.
    pub(super) fn cell(&self, (i, j): Place) -> Bounds2 {
        Bounds2 {
            low: Point2::new(self.parting(0, i), self.parting(1, j)),
            high: Point2::new(self.parting(0, i + 1), self.parting(1, j + 1)),
        }
    }

    /// Where the cells of a direction part: before each of them and behind the last.
    pub(super) fn parting(&self, axis: usize, k: usize) -> f64 {
        let n = if axis == 0 { self.columns } else { self.rows };
        let inner = if k == 0 {
            0.0
        } else if k >= n {
            self.overlap[axis]
        } else {
            self.overlap[axis] / 2.0
        };
        self.low[axis] + self.step()[axis] * k as f64 + inner
    }

    /// The mark of a page: column letters from the left, row number from the top.
    pub(super) fn mark(&self, (i, j): Place) -> String {
        format!("{}{}", letters(i), self.rows - j)
    }
}

/// How many windows cover an extent, and what is left over.
fn count(extent: f64, window: f64, overlap: f64) -> Option<(usize, f64)> {
    let step = window - overlap;
    if !(extent.is_finite() && step.is_finite() && step > 1.0) {
        return None;
    }
    let n = ((extent - overlap) / step - 1e-9)
        .ceil()
        .clamp(1.0, 10_000.0) as usize;
    Some((n, n as f64 * step + overlap - extent))
}

/// A, B … Z, AA, AB …
fn letters(column: usize) -> String {
    let mut rest = column + 1;
    let mut text = Vec::new();
    while rest > 0 {
        rest -= 1;
        text.push(char::from(b'A' + (rest % 26) as u8));
        rest /= 26;
    }
    text.iter().rev().collect()
}

/// How a window lies on its page.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Map {
    /// The window's lower left corner in the template's plane.
    pub(super) from: Point2,
    /// The same corner on the paper.
    pub(super) to: Point2,
    /// Paper millimetres for a millimetre of the template, across and up.
    pub(super) scale: Vector2,
}

/// The angle over which an arc that is stretched unequally is drawn as one arc, radians.
const STRETCHED: f64 = 0.1;

impl Map {
    pub(super) fn point(&self, p: Point2) -> Point2 {
        self.to + (p - self.from).component_mul(&self.scale)
    }

    /// A line on the paper. Under unequal scales an arc becomes short arcs through true points of its ellipse.
    pub(super) fn path(&self, trace: &Trace) -> Vec<Vertex> {
        let equal = self.scale.x == self.scale.y;
        let mut path = Vec::with_capacity(trace.points.len());
        for segment in trace.segments() {
            let sweep = segment.arc().map_or(0.0, |a| a.sweep.abs());
            if equal || sweep == 0.0 {
                path.push(Vertex {
                    at: self.point(segment.from),
                    bulge: segment.bulge,
                });
            } else {
                self.stretched(&segment, sweep, &mut path);
            }
        }
        let end = trace.points.last().filter(|_| !trace.closed);
        path.extend(end.map(|v| Vertex {
            at: self.point(v.at),
            bulge: 0.0,
        }));
        path
    }

    fn stretched(&self, segment: &Segment, sweep: f64, path: &mut Vec<Vertex>) {
        let n = (sweep / STRETCHED).ceil().max(1.0);
        let at = |f: f64| {
            self.point(if f <= 0.0 {
                segment.from
            } else {
                segment.at(f)
            })
        };
        for i in 0..n as usize {
            let (from, to) = (at(i as f64 / n), at((i as f64 + 1.0) / n));
            let chord = to - from;
            let bow = at((i as f64 + 0.5) / n) - from;
            let bulge = 2.0 * (chord.y * bow.x - chord.x * bow.y) / chord.norm_squared();
            path.push(Vertex {
                at: from,
                bulge: if bulge.is_finite() { bulge } else { 0.0 },
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Outline;

    #[test]
    fn columns_count_on_past_z() {
        let marks: Vec<_> = [0, 1, 25, 26, 27, 51, 52, 701, 702].map(letters).to_vec();
        assert_eq!(marks, ["A", "B", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA"]);
    }

    #[test]
    fn windows_cover_an_extent_with_their_overlaps() {
        // 3 × 180 − 2 × 20 = 500 exactly; a hair more needs a fourth.
        assert_eq!(count(500.0, 180.0, 20.0).map(|c| c.0), Some(3));
        assert_eq!(count(500.1, 180.0, 20.0).map(|c| c.0), Some(4));
        assert_eq!(count(10.0, 180.0, 20.0).map(|c| c.0), Some(1));
        assert_eq!(count(10.0, 20.0, 20.0), None);
        assert_eq!(count(f64::NAN, 180.0, 20.0), None);
    }

    #[test]
    fn a_stretched_circle_stays_on_its_ellipse() {
        let circle = Trace::round(&Outline::rounded_rectangle(-50.0, -50.0, 50.0, 50.0, 50.0));
        let map = Map {
            from: Point2::origin(),
            to: Point2::origin(),
            scale: Vector2::new(1.01, 0.99),
        };
        let drawn = Trace {
            points: map.path(&circle),
            closed: true,
        };
        for segment in drawn.segments() {
            for f in [0.0, 0.25, 0.5, 0.75] {
                let p = segment.at(f);
                let (x, y): (f64, f64) = (p.x / 1.01, p.y / 0.99);
                assert!((x.hypot(y) - 50.0).abs() < 1e-4, "{p} is off its ellipse");
            }
        }
    }
}
