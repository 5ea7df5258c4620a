//! What the steel must hold: studs within the spacing, board edges on steel.

use islandwright::geometry::{Bounds3, Faceted, Point3};
use islandwright::parts::{Assembly, Part, PartKind};
use islandwright::plan::{Face, Plan};

/// Numbers closer than this are equal, millimetres.
const NEAR: f64 = 1e-3;
/// Where a board's screws stand from its edge, millimetres: 3/8 in (reference-values.md).
const SCREW: f64 = 9.5;
/// How far a corner's stud may stand back from the corner, in its track, millimetres.
const CORNER: f64 = 4.0;
/// The farthest that two samples of a board's edge are apart, millimetres.
const STEP: f64 = 40.0;

/// What a steel part covers of a face, in the face's coordinates.
#[derive(Clone, Copy, Debug)]
struct Cover {
    s0: f64,
    s1: f64,
    z0: f64,
    z1: f64,
    upright: bool,
}

fn is_steel(part: &Part) -> bool {
    use PartKind::{
        Blocking, BottomTrack, Cripple, Header, Jamb, Sill, Stud, Tie, TopTrack, Trimmer,
    };
    matches!(
        part.kind,
        Stud | Jamb | Cripple | BottomTrack | TopTrack | Header | Sill | Tie | Trimmer | Blocking
    )
}

fn is_upright(part: &Part) -> bool {
    matches!(
        part.kind,
        PartKind::Stud | PartKind::Jamb | PartKind::Cripple
    )
}

/// Along, out of the face, and up.
fn on_face(face: &Face, p: &Point3) -> [f64; 3] {
    let d = p.xy() - face.start;
    [d.dot(&face.along), d.dot(&face.outward), p.z]
}

/// The steel whose outer side is in the plane of a face, or behind it by no more than a stud stands back in its track.
fn covers(plan: &Plan, face: &Face, boxes: &[(&Part, Bounds3)]) -> Vec<Cover> {
    let trade = &plan.design.trade;
    let back = (trade.track.depth.mm() - trade.stud.depth.mm()) / 2.0 + 0.1;
    let cover = |(part, b): &(&Part, Bounds3)| {
        let (p, q) = (on_face(face, &b.low), on_face(face, &b.high));
        let out = p[1].max(q[1]);
        (is_steel(part) && out <= NEAR && out >= -back).then_some(Cover {
            s0: p[0].min(q[0]),
            s1: p[0].max(q[0]),
            z0: p[2],
            z1: q[2],
            upright: is_upright(part),
        })
    };
    boxes.iter().filter_map(cover).collect()
}

/// Everything that is wrong with the steel behind the boards.
pub fn faults(plan: &Plan, assembly: &Assembly, surfaces: &[Faceted]) -> Vec<String> {
    let placed = |part: &Part| surfaces[part.solid.0].moved(&part.placement);
    let boxes: Vec<_> = assembly
        .parts
        .iter()
        .filter_map(|part| Some((part, placed(part).bounds()?)))
        .collect();
    let mut faults = Vec::new();
    for (f, face) in plan.faces.iter().enumerate() {
        let covers = covers(plan, face, &boxes);
        wide_gaps(plan, face, &covers, &mut faults);
        let boards = assembly
            .parts
            .iter()
            .filter(|p| p.kind == PartKind::Board && p.face == Some(f));
        for board in boards {
            loose_edges(face, board, &placed(board), &covers, &mut faults);
        }
    }
    faults
}

/// Neighbouring uprights farther apart than the spacing, where no opening is between them.
fn wide_gaps(plan: &Plan, face: &Face, covers: &[Cover], faults: &mut Vec<String>) {
    let spacing = plan.design.trade.stud_spacing.mm();
    let flange = plan.design.trade.stud.flange.mm();
    let (low, high) = (plan.levels.frame_bottom, plan.levels.frame_top);
    for step in 1..20 {
        let z = low + (high - low) * f64::from(step) / 20.0;
        let here = covers
            .iter()
            .filter(|c| c.upright && c.z0 <= z && z <= c.z1);
        // The web of an end stud is wide: both its edges hold a board.
        let mut middles: Vec<f64> = here
            .flat_map(|c| {
                [
                    (c.s0 + flange / 2.0).min(c.s1),
                    (c.s1 - flange / 2.0).max(c.s0),
                ]
            })
            .filter(|s| *s > 0.0 && *s < face.length)
            .chain([0.0, face.length])
            .collect();
        middles.sort_by(f64::total_cmp);
        for pair in middles.windows(2).filter(|p| p[1] - p[0] > spacing + NEAR) {
            let middle = f64::midpoint(pair[0], pair[1]);
            let header = plan.design.trade.track.thickness.mm() + NEAR;
            let open = face.openings.iter().any(|o| {
                o.s0 < middle && middle < o.s1 && o.z0 - header <= z && z <= o.z1 + header
            });
            if !open {
                faults.push(format!(
                    "{}: no upright from {:.1} to {:.1} at z {z:.1}, spacing {spacing:.1}",
                    face.mark, pair[0], pair[1]
                ));
            }
        }
    }
}

/// The edges of a board that no steel is behind, where its screws stand.
fn loose_edges(
    face: &Face,
    board: &Part,
    surface: &Faceted,
    covers: &[Cover],
    faults: &mut Vec<String>,
) {
    for [from, to] in inner_edges(face, surface) {
        let along = [to[0] - from[0], to[1] - from[1]];
        let length = along[0].hypot(along[1]);
        // Seen from behind the island's outside is on the other side: the board lies to the left of its edges.
        let inwards = [-along[1] / length, along[0] / length];
        let samples = (length / STEP).ceil().max(1.0) as usize;
        for k in 0..samples {
            let share = (k as f64 + 0.5) / samples as f64;
            let edge = [from[0] + along[0] * share, from[1] + along[1] * share];
            let s = (edge[0] + inwards[0] * SCREW).clamp(CORNER, face.length - CORNER);
            let z = edge[1] + inwards[1] * SCREW;
            let held = covers.iter().any(|c| {
                c.s0 - NEAR <= s && s <= c.s1 + NEAR && c.z0 - NEAR <= z && z <= c.z1 + NEAR
            });
            if !held && !round_a_vent(face, edge) {
                faults.push(format!(
                    "{}: no steel behind its edge at s {:.1}, z {:.1} of {}",
                    board.mark, edge[0], edge[1], face.mark
                ));
            }
        }
    }
}

/// A vent or a box is only cut through the board.
fn round_a_vent(face: &Face, [s, z]: [f64; 2]) -> bool {
    face.openings.iter().any(|o| {
        o.kind.is_some_and(|k| !k.is_framed())
            && o.s0 - NEAR <= s
            && s <= o.s1 + NEAR
            && o.z0 - NEAR <= z
            && z <= o.z1 + NEAR
    })
}

/// The edges of a board's inner skin in the face's coordinates, the board on their left as seen from outside.
fn inner_edges(face: &Face, surface: &Faceted) -> Vec<[[f64; 2]; 2]> {
    let points: Vec<_> = surface.points.iter().map(|p| on_face(face, p)).collect();
    let inner = |i: u32| points[i as usize][1].abs() <= NEAR;
    let mut edges: Vec<(u32, u32)> = surface
        .triangles
        .iter()
        .filter(|t| t.corners.iter().all(|&i| inner(i)))
        .flat_map(|t| {
            let [a, b, c] = t.corners;
            [(a, b), (b, c), (c, a)]
        })
        .collect();
    let all = edges.clone();
    edges.retain(|&(a, b)| !all.contains(&(b, a)));
    // The inner skin faces into the island: turned round it is counter-clockwise as seen from outside.
    let plane = |i: u32| [points[i as usize][0], points[i as usize][2]];
    edges
        .into_iter()
        .map(|(a, b)| [plane(b), plane(a)])
        .collect()
}
