//! Dead weight: what everything that stays weighs, by run.

use super::share::shares;
use super::slab::of_runs;
use super::tally::{At, Tally, mass};
use crate::catalog::{Density, density};
use crate::parts::{Group, Part, PartKind};
use crate::units::{Mass, Volume};

/// What is weighed together: its name, its parts, and how heavy they are.
type Lot = (&'static str, fn(&Part) -> bool, Density);

const LOTS: [Lot; 5] = [
    ("steel", |p| is_steel(p), density::STEEL),
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

/// The weight of each lot by run, and the whole by run: what a floor or a slab on the ground has to carry.
pub(super) fn reckon(tally: &mut Tally) {
    let slab = of_runs(tally);
    let substrate = shares(tally.plan);
    for run in 0..tally.plan.runs.len() {
        let mut whole = Mass::ZERO;
        let mut add = |tally: &mut Tally, name: &str, volume: f64, density: Density| {
            let weight = density.of(Volume::cubic_millimetres(volume));
            whole += weight;
            let reckoned = format!("exact volume × {}", density.spell(tally.units()));
            let item = format!("weight of {name}");
            tally.add(None, &item, At::run(run), mass(weight), reckoned);
        };
        for (name, is_one, density) in LOTS {
            let parts = tally.assembly.parts.iter();
            let own = parts.filter(|p| p.run == Some(run) && is_one(p));
            let volume = own.map(|p| tally.volume(p)).sum();
            add(tally, name, volume, density);
        }
        let sheet = tally.plan.counter.substrate.area_within(&substrate[run])
            * tally.plan.design.trade.substrate_thickness.mm();
        add(tally, "substrate", sheet, density::CEMENT_BOARD);
        add(
            tally,
            "slab when dried",
            slab[run].volume(),
            density::CONCRETE_DRIED,
        );
        tally.add(
            None,
            "dead weight",
            At::run(run),
            mass(whole),
            "these together, without appliances, what fills openings and people; whether ground or deck bears it, the \
             local code and an engineer decide",
        );
    }
}
