//! The lettering beside the lines of a page.

use super::ink::{Ink, Label, Spot};
use super::scene::Kind;
use super::trace::Trace;
use crate::drawing::{Layer, lettering};
use crate::geometry::{Point2, Segment, Vector2};

/// Height of the capitals of dimensions.
pub(super) const FIGURES: f64 = 3.5;

/// Height of the capitals of names.
pub(super) const NAMES: f64 = 2.5;

/// A visible piece of a line, on the paper.
pub(super) struct Seen<'s> {
    pub(super) kind: Kind,
    pub(super) label: &'s str,
    /// The line's number.
    pub(super) line: usize,
    pub(super) parts: Vec<Trace>,
}

/// Writes the dimension on a dimension line: on the line where it is long enough, else beside it.
pub(super) fn figure(ink: &mut Ink, seen: &Seen) {
    let width = lettering::width(seen.label, FIGURES);
    let label = Label {
        text: seen.label,
        height: FIGURES,
        layer: Layer::Dimension,
        own: Some(seen.line),
        covers: 2,
    };
    for piece in seen.parts.iter().flat_map(Trace::segments) {
        let upwards = is_upright(&piece);
        let mut spots: Vec<_> = [0.5, 0.4, 0.6, 0.3, 0.7]
            .into_iter()
            .filter(|f| piece.length() * 2.0 * f64::min(*f, 1.0 - *f) > width + 9.0)
            .map(|f| Spot {
                middle: piece.at(f),
                upwards,
            })
            .collect();
        if piece.length() > FIGURES {
            let near = [piece.at(0.5), piece.to, piece.from];
            spots.extend(near.into_iter().flat_map(|p| beside(p, width, FIGURES)));
        }
        ink.place(&label, &spots);
    }
}

/// Writes a line's name along one of its pieces.
pub(super) fn name(ink: &mut Ink, seen: &Seen) {
    let width = lettering::width(seen.label, NAMES);
    let covers = usize::from(seen.kind != Kind::Centre);
    let label = Label {
        text: seen.label,
        height: NAMES,
        layer: Layer::Note,
        own: None,
        covers,
    };
    let mut pieces: Vec<_> = seen.parts.iter().flat_map(Trace::segments).collect();
    pieces.sort_by(|a, b| b.length().total_cmp(&a.length()));
    let spots: Vec<_> = pieces
        .iter()
        .flat_map(|piece| along(piece, width))
        .collect();
    if !ink.place(&label, &spots) && seen.kind != Kind::Centre {
        let near: Vec<_> = pieces
            .iter()
            .take(2)
            .flat_map(|p| beside(p.at(0.5), width, NAMES))
            .collect();
        ink.place(&label, &near);
    }
}

/// Writes what a marked point is.
pub(super) fn point(ink: &mut Ink, at: Point2, text: &str) {
    let width = lettering::width(text, NAMES);
    let label = Label {
        text,
        height: NAMES,
        layer: Layer::Note,
        own: None,
        covers: 1,
    };
    ink.place(&label, &beside(at, width + 3.0, NAMES));
}

fn is_upright(piece: &Segment) -> bool {
    let run = piece.to - piece.from;
    run.y.abs() > run.x.abs()
}

/// Places along a straight piece, on both its sides.
fn along(piece: &Segment, width: f64) -> Vec<Spot> {
    let run = piece.to - piece.from;
    let straight = piece.bulge == 0.0 && (run.x.abs() < 1e-6 || run.y.abs() < 1e-6);
    if !straight || piece.length() < width + 4.0 {
        return Vec::new();
    }
    let side = Vector2::new(-run.y, run.x).normalize() * (NAMES * 0.75 + 1.6);
    let upwards = is_upright(piece);
    [0.5, 0.3, 0.7, 0.2, 0.8]
        .into_iter()
        .filter(|f| piece.length() * 2.0 * f64::min(*f, 1.0 - *f) > width + 2.0)
        .flat_map(|f| {
            [side, -side].map(|s| Spot {
                middle: piece.at(f) + s,
                upwards,
            })
        })
        .collect()
}

/// Places round a point, level.
fn beside(at: Point2, width: f64, height: f64) -> Vec<Spot> {
    let (x, y) = (width / 2.0 + 2.5, height + 1.5);
    let around = [
        (x, y),
        (-x, y),
        (x, -y),
        (-x, -y),
        (x, 0.0),
        (-x, 0.0),
        (0.0, y * 1.5),
        (0.0, -y * 1.5),
    ];
    let spots = [1.0, 2.0]
        .into_iter()
        .flat_map(|far| around.map(|(x, y)| Vector2::new(x, y * far)));
    spots
        .map(|shift| Spot {
            middle: at + shift,
            upwards: false,
        })
        .collect()
}
