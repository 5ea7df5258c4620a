//! Dead weight: what everything that stays weighs, by run.

use super::slab::of_runs;
use super::tally::{At, Tally, mass};
use crate::catalog::{Density, density};
use crate::parts::{Group, Part, PartKind};
use crate::takeoff::territory::territories;
use crate::units::{Mass, Volume};

/// What a run weighs altogether, as an item.
pub const DEAD_WEIGHT: &str = "dead weight";

/// Steel and slab are told by section and as the slab's own rows.
const STEEL: &str = "steel";
const DRIED: &str = "dried slab";

/// The lots whose parts belong to one run.
const LOTS: [&str; 5] = [STEEL, "sleepers", "boards", "coats", "tiles"];

/// What a part is weighed with, and how heavy that is; `None` for what does not stay, and for envelopes.
pub fn weighed_as(part: &Part) -> Option<(&'static str, Density)> {
    Some(match part.kind {
        PartKind::Sleeper => ("sleepers", density::SLEEPER),
        PartKind::Board => ("boards", density::CEMENT_BOARD),
        PartKind::BaseCoat | PartKind::FinishCoat => ("coats", density::STUCCO),
        PartKind::Tile => ("tiles", density::TILE),
        PartKind::Substrate => ("substrate", density::CEMENT_BOARD),
        PartKind::Slab => (DRIED, density::CONCRETE_DRIED),
        PartKind::BaseChannel => (STEEL, density::STEEL),
        _ if part.group == Group::Framing => (STEEL, density::STEEL),
        _ => return None,
    })
}

/// The weight of each lot by run that has no row of its own already, and the whole by run: what a floor or a slab on the
/// ground has to carry.
pub(super) fn reckon(tally: &mut Tally) {
    let slab = of_runs(tally);
    let substrate = territories(tally.plan);
    for run in 0..tally.plan.runs.len() {
        let sheet = tally.plan.counter.substrate.area_within(&substrate[run])
            * tally.plan.design.trade.substrate_thickness.mm();
        let mut lots = Vec::new();
        for name in LOTS {
            let own = tally.assembly.parts.iter().filter(|p| p.run == Some(run));
            let lot: Vec<_> = own
                .filter_map(|p| weighed_as(p).filter(|w| w.0 == name).map(|w| (p, w.1)))
                .collect();
            let volume = lot.iter().map(|(p, _)| tally.volume(p)).sum();
            let heavy = lot.first().map_or(density::STEEL, |l| l.1);
            lots.push((name, volume, heavy));
        }
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
    tally.add(None, DEAD_WEIGHT, at, mass(whole), reckoned);
}
