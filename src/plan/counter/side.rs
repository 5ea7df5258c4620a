//! The loop of the counter's sides.

use super::{CounterSide, SideKind};
use crate::design::{Design, PlanCorner, Side};
use crate::geometry::{CornerShape, Point2};
use crate::plan::{Corner, Cutout, Face, RunPlan};

/// A side with the shape of the corner where it starts.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct ShapedSide {
    pub side: CounterSide,
    pub shape: CornerShape,
}

/// How far the counter passes a face of the frame.
pub(super) fn offset(design: &Design, face: &Face) -> f64 {
    if face.wall {
        0.0
    } else {
        (design.trade.cladding() + design.counter.overhang.of(face.side).value).mm()
    }
}

/// The sides counter-clockwise, the first face's first.
pub(super) fn sides(
    design: &Design,
    runs: &[RunPlan],
    faces: &[Face],
    cutouts: &[Cutout],
) -> Vec<ShapedSide> {
    let n = faces.len();
    let corners: Vec<_> = (0..n)
        .map(|i| {
            let (before, face) = (&faces[(i + n - 1) % n], &faces[i]);
            face.moved_out((before, offset(design, before)), offset(design, face))
        })
        .collect();
    (0..n)
        .flat_map(|i| {
            let shape = corner_shape(design, &faces[(i + n - 1) % n], &faces[i]);
            let side = whole(design, i, &faces[i], corners[i], corners[(i + 1) % n]);
            let notches = notches(faces, runs, cutouts, i);
            broken(ShapedSide { side, shape }, &notches, &runs[faces[i].run])
        })
        .collect()
}

fn corner_shape(design: &Design, before: &Face, after: &Face) -> CornerShape {
    if after.corner == Corner::Reflex || before.wall || after.wall {
        return CornerShape::Sharp;
    }
    match design.counter.corners.value {
        PlanCorner::Sharp => CornerShape::Sharp,
        PlanCorner::Chamfered(leg) => CornerShape::Chamfered(leg.mm()),
        PlanCorner::Rounded(radius) => CornerShape::Rounded(radius.mm()),
    }
}

/// How far the tile band stands out past the finish coat.
fn tile_stands_out(design: &Design) -> f64 {
    design.tile_band.as_ref().map_or(0.0, |band| {
        (band.tile_thickness.value - design.trade.finish_coat.value)
            .mm()
            .max(0.0)
    })
}

fn whole(design: &Design, number: usize, face: &Face, start: Point2, end: Point2) -> CounterSide {
    let turndown = design.counter.turndown.is_some();
    let overhang = if face.wall {
        0.0
    } else {
        design.counter.overhang.of(face.side).mm()
    };
    let room = if face.wall {
        0.0
    } else {
        overhang - tile_stands_out(design)
    };
    CounterSide {
        face: number,
        kind: if face.wall {
            SideKind::Wall
        } else {
            SideKind::Exposed
        },
        start,
        end,
        overhang,
        room,
        dropped: turndown && !face.wall && design.counter.turndown_sides.contains(&face.side),
    }
}

/// The open cutouts that break a face, left to right.
fn notches(faces: &[Face], runs: &[RunPlan], cutouts: &[Cutout], face: usize) -> Vec<Cutout> {
    let this = &faces[face];
    let mut notches: Vec<_> = cutouts
        .iter()
        .filter(|c| c.open && this.side == Side::Working && c.run == this.run && c.run < runs.len())
        .copied()
        .collect();
    notches.sort_by(|a, b| a.u0.total_cmp(&b.u0));
    notches
}

/// A side with its notches: the notches' own sides go in between its pieces.
fn broken(whole: ShapedSide, notches: &[Cutout], run: &RunPlan) -> Vec<ShapedSide> {
    let end = whole.side.end;
    let mut pieces = vec![whole];
    for c in notches {
        let rounded = if c.radius > 0.0 {
            CornerShape::Rounded(c.radius)
        } else {
            CornerShape::Sharp
        };
        let corners =
            [(c.u0, c.v0), (c.u0, c.v1), (c.u1, c.v1), (c.u1, c.v0)].map(|(u, v)| run.point(u, v));
        let Some(last) = pieces.last_mut() else { break };
        last.side.end = corners[0];
        let front = last.side.clone();
        let shapes = [CornerShape::Sharp, rounded, rounded];
        for (k, shape) in shapes.into_iter().enumerate() {
            let side = CounterSide {
                kind: SideKind::Notch(c.appliance),
                start: corners[k],
                end: corners[k + 1],
                overhang: 0.0,
                room: 0.0,
                dropped: false,
                ..front
            };
            pieces.push(ShapedSide { side, shape });
        }
        let rest = CounterSide {
            start: corners[3],
            end,
            ..front
        };
        pieces.push(ShapedSide {
            side: rest,
            shape: CornerShape::Sharp,
        });
    }
    pieces
}
