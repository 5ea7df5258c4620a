//! The base channel, in which board and base coat stand.

use super::OnFace;
use crate::geometry::{EndPlane, Extrusion, Outline, Placement, Point2, Region, Solid};
use crate::parts::{Group, PartKind, Piece};
use std::f64::consts::FRAC_PI_2;

/// Its sheet, millimetres (common practice).
pub(super) const SHEET: f64 = 0.5;
/// How far its lip stands up in front of the base coat: three eighths of an inch (common practice).
pub(super) const LIP: f64 = 9.525;
/// How far its leg hangs down over the sleeper: one inch (common practice).
const LEG: f64 = 25.4;

/// The base channel of one face, mitred at the corners, square beside a wall and where an opening stands on the
/// ground; none where the frame stands on the ground and leaves it no room. Pieces are numbered when there are several.
pub(super) fn channel(on: &OnFace) -> Vec<Piece> {
    let leg = LEG.min(on.levels.frame_bottom);
    if leg < SHEET {
        return Vec::new();
    }
    let outer = on.layers.base.outer + if on.has_lip() { SHEET } else { 0.0 };
    let profile = profile(outer, leg, on.has_lip());
    let stretches = stretches(on);
    let several = stretches.len() > 1;
    let plate = on.plate(
        PartKind::BaseChannel,
        Group::Boards,
        "galvanised steel",
        "base channel".to_owned(),
    );
    stretches
        .iter()
        .zip(1..)
        .map(|(ends, number)| {
            let letters = if several {
                format!("CH{number}")
            } else {
                "CH".to_owned()
            };
            let [start, end] = *ends;
            let at = on.face().plate(end.s, on.levels.frame_bottom, 0.0);
            let turn = Placement::rotation(nalgebra::Vector3::y() * -FRAC_PI_2);
            let longest =
                end.s - start.s + (outer * end.mitre).max(0.0) - (outer * start.mitre).min(0.0);
            plate.placed(
                on.mark(&letters),
                drawn_out(&profile, start, end),
                longest,
                at * turn,
            )
        })
        .collect()
}

/// An end of a piece: where it is in the frame's plane, and how much farther along s for each millimetre out of it:
/// 1, -1 or, for a square end, 0.
#[derive(Clone, Copy)]
struct End {
    s: f64,
    mitre: f64,
}

/// The profile drawn out against s: x is out of the island, y up, z = 0 at the right end.
fn drawn_out(profile: &Region, start: End, end: End) -> Solid {
    Solid::Extrusion(Extrusion {
        profile: profile.clone(),
        start: EndPlane {
            offset: 0.0,
            slope: [-end.mitre, 0.0],
        },
        end: EndPlane {
            offset: end.s - start.s,
            slope: [-start.mitre, 0.0],
        },
        slots: Vec::new(),
    })
}

/// The pieces of one face, from left to right.
fn stretches(on: &OnFace) -> Vec<[End; 2]> {
    let face = on.face();
    let (first, last) = mitres(on);
    let mut grounded: Vec<_> = face
        .openings
        .iter()
        .filter(|o| o.z0 < on.levels.frame_bottom + LIP)
        .collect();
    grounded.sort_by(|a, b| a.s0.total_cmp(&b.s0));
    let square = |s| End { s, mitre: 0.0 };
    let mut from = End {
        s: 0.0,
        mitre: first,
    };
    let mut found = Vec::new();
    for o in grounded {
        found.push([from, square(o.s0)]);
        from = square(o.s1.max(from.s));
    }
    let end = End {
        s: face.length,
        mitre: last,
    };
    found.push([from, end]);
    found.retain(|[a, b]| b.s - a.s > on.layers.finish.outer);
    found
}

/// How much farther along s the channel begins and ends for each millimetre out of the frame: at a square corner 1 or -1,
/// at another the tangent of half its turn; at a wall it is cut along the wall.
fn mitres(on: &OnFace) -> (f64, f64) {
    let [before, face, after] = on.neighbours();
    let slope = |(sine, cosine): (f64, f64), wall: bool| {
        if wall {
            0.0 - cosine / sine
        } else {
            sine / (1.0 + cosine)
        }
    };
    (
        -slope(before.turn_to(face), before.wall),
        slope(face.turn_to(after), after.wall),
    )
}

fn profile(outer: f64, leg: f64, lip: bool) -> Region {
    let t = SHEET;
    let mut corners = vec![(0.0, -t), (outer, -t)];
    if leg > t {
        corners = vec![(0.0, -leg), (t, -leg), (t, -t), (outer, -t)];
    }
    if lip {
        corners.extend([(outer, LIP), (outer - t, LIP), (outer - t, 0.0)]);
    } else {
        corners.push((outer, 0.0));
    }
    corners.push((0.0, 0.0));
    let points: Vec<_> = corners.iter().map(|c| Point2::new(c.0, c.1)).collect();
    Region::solid(Outline::polygon(&points))
}
