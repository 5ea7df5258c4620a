//! Dead weight: what everything that stays weighs, by run.

use super::slab::of_runs;
use super::tally::{At, Tally, mass};
use crate::catalog::{Density, density};
use crate::parts::{Group, Part, PartKind};
use crate::takeoff::territory::territories;
use crate::units::{Mass, Volume};

/// What is weighed together: its name, its parts, and how heavy they are.
type Lot = (&'static str, fn(&Part) -> bool, Density);

/// Steel and slab are told by section and as the slab's own rows.
const STEEL: &str = "steel";
const DRIED: &str = "dried slab";

const LOTS: [Lot; 5] = [
    (STEEL, |p| is_steel(p), density::STEEL),
    (
        "sleepers",
        |p| p.kind == PartKind::Sleeper,
        density::SLEEPER,
    ),
    (
        "boards",
        |p| p.kind == PartKind::Board,
        density::CEMENT_BOARD,
    ),
    (
        "coats",
        |p| matches!(p.kind, PartKind::BaseCoat | PartKind::FinishCoat),
        density::STUCCO,
    ),
    ("tiles", |p| p.kind == PartKind::Tile, density::TILE),
];

fn is_steel(part: &Part) -> bool {
    let framing = part.group == Group::Framing && part.kind != PartKind::Sleeper;
    framing || part.kind == PartKind::BaseChannel
}

/// The weight of each lot by run that has no row of its own already, and the whole by run: what a floor or a slab on the
/// ground has to carry.
pub(super) fn reckon(tally: &mut Tally) {
    let slab = of_runs(tally);
    let substrate = territories(tally.plan);
    for run in 0..tally.plan.runs.len() {
        let sheet = tally.plan.counter.substrate.area_within(&substrate[run])
            * tally.plan.design.trade.substrate_thickness.mm();
        let parts = LOTS.map(|(name, is_one, density)| {
            let parts = tally.assembly.parts.iter();
            let own = parts.filter(|p| p.run == Some(run) && is_one(p));
            (name, own.map(|p| tally.volume(p)).sum(), density)
        });
        let mut lots = Vec::from(parts);
        lots.push(("substrate", sheet, density::CEMENT_BOARD));
        lots.push((DRIED, slab[run].volume(), density::CONCRETE_DRIED));
        dead_weight(tally, run, &lots);
    }
}

/// Rows of the lots, by their volume in cubic millimetres, and their sum.
fn dead_weight(tally: &mut Tally, run: usize, lots: &[(&str, f64, Density)]) {
    let (units, at) = (tally.units(), At::run(run));
    let mut whole = Mass::ZERO;
    let mut named = Vec::new();
    for &(name, volume, density) in lots {
        let weight = density.of(Volume::cubic_millimetres(volume));
        whole += weight;
        if weight > Mass::ZERO {
            named.push(format!("{name} {}", mass(weight).spell(units)));
        }
        if ![STEEL, DRIED].contains(&name) {
            let reckoned = format!("exact volume × {}", density.spell(units));
            tally.add(
                None,
                &format!("weight of {name}"),
                at,
                mass(weight),
                reckoned,
            );
        }
    }
    let reckoned = format!(
        "{}; without appliances, what fills openings and people; whether ground or deck bears it, the local code and an \
         engineer decide",
        named.join(", ")
    );
    tally.add(None, "dead weight", at, mass(whole), reckoned);
}
