//! How heavy each line of an axonometric is: the heavier, the farther behind it the next thing is.

use crate::drawing::fit::Fit;
use crate::drawing::hidden::{Depths, Line, Stroke};
use crate::drawing::{Layer, Pen};
use crate::geometry::{Point2, Vector2};
use crate::parts::{Group, Part, PartKind};

/// What is seen beside a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Beside {
    /// Surfaces at the line itself on both sides.
    Near,
    /// On one side something well behind it.
    Behind,
    /// On one side nothing: the line is an outline.
    Nothing,
}

/// Farther than this behind a line is well behind it, millimetres built.
const BEHIND: f64 = 150.0;
/// Between the places at which a line is looked at, millimetres on the sheet.
const STEP: f64 = 1.5;
/// So far beside a line its sides are looked at, millimetres on the sheet.
const ASIDE: f64 = 0.1;

/// Weights of strokes: tile joints, thin lines of lesser things, other edges near, edges before a gap, outlines.
pub(in crate::drawing) const PENS: [(Layer, Pen); 4] = [
    (Layer::Detail, Pen::Fine),
    (Layer::Detail, Pen::Thin),
    (Layer::Outline, Pen::Medium),
    (Layer::Outline, Pen::Thick),
];

/// The least and the greatest weight of the lines of a body.
pub(super) fn range(part: Option<&Part>) -> (u8, u8) {
    match part {
        Some(part) if part.kind == PartKind::Tile => (0, 3),
        // Steel is full of holes and edges before gaps: heavy, they would drown the layers.
        Some(part) if part.group == Group::Framing => (1, 1),
        _ => (1, 3),
    }
}

/// The strokes of visible lines, each line parted where its weight changes; `range` gives the least and the greatest
/// weight of each body's lines.
pub(in crate::drawing) fn weighed(
    lines: &[Line],
    depths: &Depths,
    fit: &Fit,
    range: impl Fn(usize) -> (u8, u8),
) -> Vec<Stroke> {
    let mut strokes = Vec::new();
    for line in lines.iter().filter(|l| l.seen) {
        for (from, to, beside) in parted(line, depths, fit.scale.factor) {
            let at = |t: f64| line.from + (line.to - line.from) * t;
            let (least, most) = range(line.of);
            let weight = match beside {
                Beside::Near => least,
                Beside::Behind => most.min(2),
                Beside::Nothing => most,
            };
            strokes.push(Stroke {
                from: at(from),
                to: at(to),
                weight,
            });
        }
    }
    strokes
}

/// Stretches of a line as fractions of it, each with what is beside it.
fn parted(line: &Line, depths: &Depths, factor: f64) -> Vec<(f64, f64, Beside)> {
    let along = line.to - line.from;
    let count = (along.norm() * factor / STEP).ceil().clamp(1.0, 2000.0);
    let aside = Vector2::new(-along.y, along.x).normalize() * (ASIDE / factor);
    let look = |t: f64| {
        let depth = line.depths[0] + (line.depths[1] - line.depths[0]) * t;
        beside(line.from + along * t, aside, depth, depths)
    };
    let places: Vec<f64> = (0..count as u32)
        .map(|i| (f64::from(i) + 0.5) / count)
        .collect();
    let mut parts: Vec<(f64, f64, Beside)> = Vec::new();
    let mut last: Option<(f64, Beside)> = None;
    for place in places {
        let now = look(place);
        if let Some((before, was)) = last
            && was == now
        {
            if let Some(part) = parts.last_mut() {
                part.1 = place;
            }
            last = Some((place.max(before), now));
            continue;
        }
        let start = last.map_or(0.0, |(before, was)| change(before, place, was, look));
        if let Some(part) = parts.last_mut() {
            part.1 = start;
        }
        parts.push((start, place, now));
        last = Some((place, now));
    }
    if let Some(part) = parts.last_mut() {
        part.1 = 1.0;
    }
    parts
}

/// Where between two places what is beside a line ends being `was`.
fn change(mut low: f64, mut high: f64, was: Beside, look: impl Fn(f64) -> Beside) -> f64 {
    for _ in 0..6 {
        let middle = f64::midpoint(low, high);
        if look(middle) == was {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

fn beside(at: Point2, aside: Vector2, depth: f64, depths: &Depths) -> Beside {
    let side = |point: Point2| match depths.at(point) {
        None => Beside::Nothing,
        Some(found) if found < depth - BEHIND => Beside::Behind,
        Some(_) => Beside::Near,
    };
    side(at + aside).max(side(at - aside))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Scale;
    use crate::drawing::hidden::{Placed, Shape, visible};
    use crate::geometry::{Bounds2, Placement, Solid};

    #[test]
    fn a_line_is_heavy_where_nothing_is_behind_it_and_lighter_where_something_is() {
        // A far plate 200 × 200; a near one 100 × 100, 500 before it, sticks out half to the right of it.
        let plates = [(200.0, 0.0, 0.0), (100.0, 150.0, 500.0)].map(|(size, x, z)| {
            let shape = Shape::new(&Solid::cuboid(size, size, 10.0).faceted(1.0));
            (
                shape,
                Placement::translation(x, 50.0 * f64::from(z > 0.0), z),
            )
        });
        let bodies: Vec<_> = (plates.iter())
            .map(|(shape, motion)| Placed {
                shape,
                motion: *motion,
            })
            .collect();
        let lines = visible(&bodies);
        let fit = Fit::at(
            Scale {
                factor: 0.1,
                name: String::new(),
            },
            &Bounds2 {
                low: Point2::new(0.0, 0.0),
                high: Point2::new(250.0, 200.0),
            },
            &Bounds2 {
                low: Point2::new(0.0, 0.0),
                high: Point2::new(25.0, 20.0),
            },
        );
        let strokes = weighed(&lines, &Depths::new(&bodies), &fit, |_| (1, 3));
        let long = |weight: u8| -> f64 {
            let own = strokes.iter().filter(|s| s.weight == weight);
            own.map(|s| (s.to - s.from).norm()).sum()
        };
        // Of the near plate's edges 100 + 2 × 50 lie before the far one; the rest of all lines, 800 + 400 less the 100
        // that are hidden, has nothing behind it.
        assert!((long(2) - 200.0).abs() < 2.0, "{}", long(2));
        assert!((long(3) - 900.0).abs() < 2.0, "{}", long(3));
        assert!(long(0) + long(1) < 2.0);
    }
}
