//! Lines that fall together become one.

use crate::geometry::{Point2, Vector2};

/// A straight piece to draw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// One end.
    pub from: Point2,
    /// The other.
    pub to: Point2,
    /// Its weight; where two fall together the heavier stays.
    pub weight: u8,
}

/// Two directions are one when they differ by less, radians.
pub(super) const SAME_DIRECTION: f64 = 1e-5;

/// A stroke in the coordinates of its own line: direction, distance of the line from the origin, and where along it.
#[derive(Clone, Copy, Debug)]
pub(super) struct OnLine {
    pub angle: f64,
    pub offset: f64,
    pub from: f64,
    pub to: f64,
    weight: u8,
    along: Vector2,
}

impl OnLine {
    pub fn new(stroke: &Stroke) -> Option<Self> {
        let mut along = (stroke.to - stroke.from).try_normalize(0.0)?;
        let backwards =
            along.x < -SAME_DIRECTION || (along.x.abs() <= SAME_DIRECTION && along.y < 0.0);
        if backwards {
            along = -along;
        }
        let [a, b] = [stroke.from, stroke.to].map(|p| along.dot(&p.coords));
        Some(Self {
            angle: along.y.atan2(along.x),
            offset: along.perp(&stroke.from.coords),
            from: a.min(b),
            to: a.max(b),
            weight: stroke.weight,
            along,
        })
    }

    pub fn stroke(&self, (from, to): (f64, f64)) -> Stroke {
        let across = Vector2::new(-self.along.y, self.along.x) * self.offset;
        let point = |t: f64| Point2::from(across + self.along * t);
        Stroke {
            from: point(from),
            to: point(to),
            weight: self.weight,
        }
    }
}

/// Joins strokes that lie on one line and touch, and drops what would be drawn twice: strokes whose lines run within
/// `near` of each other count as one line, drawn where its heaviest, then lowest, piece is.
///
/// The order of the answer depends on geometry alone.
pub fn merge(strokes: &[Stroke], near: f64) -> Vec<Stroke> {
    let mut lines: Vec<_> = strokes.iter().filter_map(OnLine::new).collect();
    lines.sort_by(|a, b| a.angle.total_cmp(&b.angle));
    let mut merged = Vec::new();
    for parallel in lines.chunk_by_mut(|a, b| b.angle - a.angle < SAME_DIRECTION) {
        parallel.sort_by(|a, b| a.offset.total_cmp(&b.offset));
        let mut rest = &*parallel;
        while let Some(first) = rest.first() {
            let count = rest.partition_point(|l| l.offset - first.offset <= near);
            let (together, later) = rest.split_at(count);
            one_line(together, near, &mut merged);
            rest = later;
        }
    }
    merged
}

/// Merges the strokes that lie on one line.
fn one_line(together: &[OnLine], near: f64, merged: &mut Vec<Stroke>) {
    let mut order: Vec<&OnLine> = together.iter().collect();
    order.sort_by(|a, b| {
        (b.weight.cmp(&a.weight))
            .then(a.from.total_cmp(&b.from))
            .then(a.offset.total_cmp(&b.offset))
    });
    let mut covered: Vec<(f64, f64)> = Vec::new();
    for same in order.chunk_by(|a, b| a.weight == b.weight) {
        let joined = joined(same, near);
        for (line, range) in &joined {
            for piece in free(&covered, *range) {
                if piece.1 - piece.0 > 1e-6 {
                    merged.push(line.stroke(piece));
                }
            }
        }
        covered.extend(joined.iter().map(|(_, range)| *range));
        covered = union(covered);
    }
}

/// Ranges that touch joined, with the line that each began on; strokes come sorted by where they begin.
fn joined<'a>(strokes: &[&'a OnLine], near: f64) -> Vec<(&'a OnLine, (f64, f64))> {
    let mut joined: Vec<(&OnLine, (f64, f64))> = Vec::new();
    for stroke in strokes {
        match joined.last_mut() {
            Some((_, range)) if stroke.from <= range.1 + near.min(0.05) => {
                range.1 = range.1.max(stroke.to);
            }
            _ => joined.push((stroke, (stroke.from, stroke.to))),
        }
    }
    joined
}

pub(super) fn union(mut ranges: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    ranges.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut joined: Vec<(f64, f64)> = Vec::new();
    for range in ranges {
        match joined.last_mut() {
            Some(last) if range.0 <= last.1 => last.1 = last.1.max(range.1),
            _ => joined.push(range),
        }
    }
    joined
}

/// What of a range is not covered; `covered` is sorted and apart.
pub(super) fn free(covered: &[(f64, f64)], (from, to): (f64, f64)) -> Vec<(f64, f64)> {
    let mut free = Vec::new();
    let mut at = from;
    for &(a, b) in covered {
        if b <= at {
            continue;
        }
        if a >= to {
            break;
        }
        if a > at {
            free.push((at, a));
        }
        at = b;
    }
    if at < to {
        free.push((at, to));
    }
    free
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stroke(a: (f64, f64), b: (f64, f64), weight: u8) -> Stroke {
        Stroke {
            from: Point2::new(a.0, a.1),
            to: Point2::new(b.0, b.1),
            weight,
        }
    }

    fn ends(strokes: &[Stroke]) -> Vec<(f64, f64, u8)> {
        strokes
            .iter()
            .map(|s| (s.from.x, s.to.x, s.weight))
            .collect()
    }

    #[test]
    fn touching_and_overlapping_pieces_become_one() {
        let merged = merge(
            &[
                stroke((0.0, 5.0), (10.0, 5.0), 1),
                stroke((20.0, 5.0), (10.0, 5.0), 1),
                stroke((12.0, 5.0), (15.0, 5.0), 1),
                stroke((30.0, 5.0), (40.0, 5.0), 1),
            ],
            0.01,
        );
        assert_eq!(ends(&merged), [(0.0, 20.0, 1), (30.0, 40.0, 1)]);
    }

    #[test]
    fn the_heavier_of_two_stays() {
        let merged = merge(
            &[
                stroke((0.0, 5.0), (10.0, 5.0), 0),
                stroke((3.0, 5.0), (6.0, 5.0), 2),
            ],
            0.01,
        );
        assert_eq!(
            ends(&merged),
            [(3.0, 6.0, 2), (0.0, 3.0, 0), (6.0, 10.0, 0)]
        );
    }

    #[test]
    fn the_two_skins_of_a_sheet_are_one_line_at_a_small_scale() {
        let skins = [
            stroke((0.0, 5.0), (10.0, 5.0), 1),
            stroke((0.0, 5.88), (10.0, 5.88), 1),
        ];
        assert_eq!(merge(&skins, 1.6).len(), 1);
        assert_eq!(merge(&skins, 0.1).len(), 2);
    }

    #[test]
    fn upright_lines_that_lean_by_rounding_still_meet() {
        let merged = merge(
            &[
                stroke((7.0, 0.0), (7.0 + 1e-10, 10.0), 1),
                stroke((7.0, 20.0), (7.0 + 1e-10, 10.0), 1),
            ],
            0.01,
        );
        assert_eq!(merged.len(), 1);
        assert!((merged[0].to.y - merged[0].from.y).abs() - 20.0 < 1e-6);
    }
}
