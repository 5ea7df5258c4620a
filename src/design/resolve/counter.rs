//! Counter and tile band resolved.

use super::gather::{Gather, Limits, Usual};
use super::making;
use super::runs::side_of;
use crate::design::{
    Counter, EdgeProfile, Overhang, Placed, PlanCorner, Run, Side, TileBand, Turndown,
};
use crate::parameters::{self, Corners, Dimension, Edge, Given};
use crate::units::Length;

/// The counter.
pub(super) fn counter(g: &mut Gather, given: &Given<parameters::Counter>, runs: &[Run]) -> Counter {
    let empty = parameters::Counter::default();
    let c = given.value().unwrap_or(&empty);
    let thickness = g.length(&c.thickness, Usual(2.0, 50.0), Limits(25.0, 150.0));
    let overhang = overhang(g, &c.overhang);
    let (turndown, turndown_sides) = turndown(g, &c.turndown);
    let room = EdgeRoom {
        thickness: thickness.value,
        rim: turndown.as_ref().map(|t| (t.depth.value, t.width.value)),
    };
    let profile = profile(g, &c.edge, &room);
    let corners = corners(g, &c.corners);
    Counter {
        thickness,
        overhang,
        turndown,
        turndown_sides,
        profile,
        corners,
        casting: making::casting(g, given, runs),
    }
}

fn overhang(g: &mut Gather, given: &Given<parameters::Overhang>) -> Overhang {
    let empty = parameters::Overhang::default();
    let o = given.value().unwrap_or(&empty);
    let limits = Limits(0.0, 600.0);
    let working = g.length(&o.working, Usual(1.5, 40.0), limits);
    let usual = working.value;
    Overhang {
        working,
        seating: g.length_or(&o.seating, usual, limits),
        left: g.length_or(&o.left, usual, limits),
        right: g.length_or(&o.right, usual, limits),
    }
}

fn turndown(g: &mut Gather, given: &Given<parameters::Turndown>) -> (Option<Turndown>, Vec<Side>) {
    let empty = parameters::Turndown::default();
    let t = given.value().unwrap_or(&empty);
    let depth = g.length(&t.depth, Usual(1.0, 25.0), Limits(3.0, 150.0));
    let width = g.length(&t.width, Usual(1.5, 40.0), Limits(12.0, 150.0));
    let sides: Vec<Side> = if t.sides.is_absent() {
        Side::ALL.to_vec()
    } else {
        let mut sides: Vec<_> = t.sides.entries().map(|(s, _)| side_of(*s)).collect();
        sides.sort_unstable();
        sides.dedup();
        sides
    };
    if sides.is_empty() {
        return (None, sides);
    }
    (Some(Turndown { depth, width }), sides)
}

/// What an edge profile must fit into.
struct EdgeRoom {
    thickness: Length,
    /// Depth and width of the turndown.
    rim: Option<(Length, Length)>,
}

fn profile(g: &mut Gather, given: &Given<Edge>, room: &EdgeRoom) -> Placed<EdgeProfile> {
    let place = given.place();
    let usual = g.usual(Usual(0.125, 3.0));
    let limits = Limits(1.0, 150.0);
    let rim_width = room.rim.map_or(Length::inches(24.0), |r| r.1);
    let full = room.thickness + room.rim.map_or(Length::ZERO, |r| r.0);
    let sized = |g: &mut Gather, size: &Given<Dimension>, key: &str, most: Length| {
        let size = g.needed_length(size, &place, key, limits)?;
        if size.value > most {
            let found = format!("a {key} of {} does not fit the edge", g.spell(size.value));
            let hint = format!("it can be {} at most", g.spell(most));
            g.error("edge-large", &size.place, found, hint);
            return None;
        }
        Some(size.value)
    };
    let square = EdgeProfile::Square { eased: usual };
    let value = match given.value() {
        None => square,
        Some(Edge::Square { eased }) => {
            let eased = g.length_or(eased, usual, Limits(0.0, room.thickness.mm() / 2.0));
            EdgeProfile::Square { eased: eased.value }
        }
        Some(Edge::Chamfer { size }) => sized(g, size, "size", room.thickness.min(rim_width))
            .map_or(square, |size| EdgeProfile::Chamfer { size }),
        Some(Edge::QuarterRound { radius }) => {
            sized(g, radius, "radius", room.thickness.min(rim_width))
                .map_or(square, |radius| EdgeProfile::QuarterRound { radius })
        }
        Some(Edge::Cove { radius }) => sized(g, radius, "radius", room.thickness.min(rim_width))
            .map_or(square, |radius| EdgeProfile::Cove { radius }),
        Some(Edge::HalfRound) => {
            if full / 2.0 > rim_width {
                let found = format!(
                    "a half-round over {} does not fit the turndown",
                    g.spell(full)
                );
                let hint = format!("make the turndown {} wide or wider", g.spell(full / 2.0));
                g.error("edge-large", &place, found, hint);
            }
            EdgeProfile::HalfRound
        }
    };
    Placed { value, place }
}

fn corners(g: &mut Gather, given: &Given<Corners>) -> Placed<PlanCorner> {
    let place = given.place();
    let limits = Limits(1.0, 600.0);
    let value = match given.value() {
        Some(Corners::Chamfered { size }) => g
            .needed_length(size, &place, "size", limits)
            .map(|s| PlanCorner::Chamfered(s.value)),
        Some(Corners::Rounded { radius }) => g
            .needed_length(radius, &place, "radius", limits)
            .map(|r| PlanCorner::Rounded(r.value)),
        Some(Corners::Sharp) | None => None,
    };
    Placed {
        value: value.unwrap_or(PlanCorner::Sharp),
        place,
    }
}

/// More tiles than this are not one band.
const MOST_TILES: f64 = 50_000.0;

/// The tile band, where the file has one.
pub(super) fn tile_band(
    g: &mut Gather,
    given: &Given<parameters::TileBand>,
    runs: &[Run],
) -> Option<TileBand> {
    let t = given.value()?;
    let tile = Limits(10.0, 1200.0);
    let tile_height = g.length(&t.tile_height, Usual(4.25, 100.0), tile);
    let band = TileBand {
        height: g.length_or(&t.height, tile_height.value, Limits(10.0, 1500.0)),
        tile_width: g.length(&t.tile_width, Usual(4.25, 100.0), tile),
        tile_height,
        tile_thickness: g.length(&t.tile_thickness, Usual(0.375, 10.0), Limits(2.0, 40.0)),
        joint: g.length(&t.joint, Usual(0.1875, 5.0), Limits(0.0, 25.0)),
    };
    let round: f64 = runs
        .iter()
        .map(|r| 2.0 * (r.length.mm() + r.depth.mm()))
        .sum();
    let tiles = round / band.tile_width.mm() * (band.height.mm() / band.tile_height.mm()).ceil();
    if tiles > MOST_TILES {
        let found = format!("the band would have some {tiles:.0} tiles");
        let hint = format!("use larger tiles or a lower band; {MOST_TILES:.0} can be laid out");
        g.error("too-many", &band.tile_width.place, found, hint);
    }
    (t.laid.value() != Some(&false)).then_some(band)
}
