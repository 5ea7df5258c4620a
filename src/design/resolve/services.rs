//! Compartments, gas and electricity resolved.

use super::amounts::SOME;
use super::gather::{Gather, Limits, Usual};
use super::ratings::{fuel_of, weight};
use super::soft::{flag, word};
use crate::design::{
    Appliance, Compartment, Cylinder, Electricity, EnclosureEdition, Gas, GasPipe, Levels, Opening,
    PipeMaterial, Placed, Run,
};
use crate::diagnostics::Place;
use crate::parameters::{self, Given};
use crate::units::{Length, Stress, parse_stress};

/// Lengths of pipe that mean anything.
const PIPE: Limits = Limits(1.0, 300_000.0);
/// What two compartments may share: the thickness of what parts them, millimetres (4 in).
const SAME_ROOM: f64 = 101.6;
/// Heights that mean anything.
const HIGH: Limits = Limits(0.0, 3000.0);

/// The closed compartments that make sense.
pub(super) fn compartments(
    g: &mut Gather,
    given: &Given<Vec<Given<parameters::Compartment>>>,
    runs: &[Run],
    levels: &Levels,
) -> Vec<Compartment> {
    let mut found: Vec<Compartment> = Vec::new();
    for (c, place) in given.entries() {
        let name = g.entry_name(&c.name, place, found.iter().map(|c| c.name.as_str()));
        let run = g.run_of(&c.run, place, runs);
        let most = run
            .and_then(|r| runs.get(r))
            .map_or(f64::MAX, |r| r.length.mm());
        let from = g.entry_length(&c.from, place, "from", Limits(0.0, most));
        let to = g.entry_length(&c.to, place, "to", Limits(0.0, most));
        let floor = g.optional_length(&c.floor, HIGH);
        let (Some(name), Some(run), Some(from), Some(to)) = (name, run, from, to) else {
            continue;
        };
        if to.value <= from.value {
            let found = format!("'{name}' ends before it begins");
            g.fail(
                "compartment-ends",
                &to.place,
                found,
                "make 'to' greater than 'from'",
            );
            continue;
        }
        let overlaps = |o: &&Compartment| {
            let shared = o.to.mm().min(to.mm()) - o.from.mm().max(from.mm());
            o.run == run && shared > SAME_ROOM
        };
        if let Some(other) = found.iter().find(overlaps) {
            let said = format!("'{name}' and '{}' take the same room", other.name);
            g.fail(
                "compartments-overlap",
                &from.place,
                said,
                "end one of them where the other begins",
            );
            continue;
        }
        found.push(Compartment {
            name,
            place: place.clone(),
            run,
            from,
            to,
            floor: floor.unwrap_or_else(|| levels.base_gap.clone()),
        });
    }
    found
}

/// What pipes and feeds refer to.
pub(super) struct Served<'a> {
    pub(super) appliances: &'a [Appliance],
    pub(super) openings: &'a [Opening],
    pub(super) compartments: &'a [Compartment],
}

impl Served<'_> {
    fn opening(&self, g: &mut Gather, given: &Given<String>) -> Option<Placed<String>> {
        let names = self.openings.iter().map(|o| o.name.as_str());
        g.reference(given, "opening", names)?;
        word_of(given)
    }

    fn compartment(&self, g: &mut Gather, given: &Given<String>) -> Option<Placed<String>> {
        let names = self.compartments.iter().map(|c| c.name.as_str());
        g.reference(given, "compartment", names)?;
        word_of(given)
    }
}

/// The text and its place.
fn word_of(given: &Given<String>) -> Option<Placed<String>> {
    Some(Placed {
        value: given.value()?.trim().to_owned(),
        place: given.place(),
    })
}

/// The gas supply.
pub(super) fn gas(g: &mut Gather, given: &Given<parameters::Gas>, served: &Served) -> Option<Gas> {
    let Given::Yes(gas, place) = given else {
        return None;
    };
    let fuel = g.entry_word(&gas.fuel, place, "fuel", fuel_of);
    if let Some(fuel) = &fuel
        && !fuel.is_gas()
    {
        let found = format!("{} is not a gas", fuel.name());
        g.fail(
            "fuel-no-gas",
            &fuel.place,
            found,
            "write natural-gas or propane",
        );
    }
    let pipes = pipes(g, &gas.pipes, served);
    let drop = g.amount(&gas.allowed_drop, &SOME, |t| {
        parse_stress(t).map(Stress::mpa)
    });
    let cylinder = cylinder(g, &gas.cylinder, served);
    let (shut_off, depth) = shut_off(g, &gas.shut_off, served);
    Some(Gas {
        place: place.clone(),
        fuel: fuel.filter(|f| f.is_gas())?,
        allowed_drop: drop.map(|d| Placed {
            value: Stress::megapascals(d.value),
            place: d.place,
        }),
        pipes,
        cylinder,
        edition: word(&gas.enclosure_edition, |e| match e {
            parameters::EnclosureEdition::A => EnclosureEdition::A,
            parameters::EnclosureEdition::B => EnclosureEdition::B,
        }),
        shut_off,
        shut_off_depth: depth,
        sleeves: flag(&gas.sleeves),
    })
}

fn shut_off(
    g: &mut Gather,
    given: &Given<parameters::ShutOff>,
    served: &Served,
) -> (Option<Placed<String>>, Option<Placed<Length>>) {
    let Given::Yes(s, place) = given else {
        return (None, None);
    };
    g.is_there(&s.behind, place, "behind");
    let depth = g.optional_length(&s.depth, HIGH);
    (served.opening(g, &s.behind), depth)
}

fn cylinder(
    g: &mut Gather,
    given: &Given<parameters::Cylinder>,
    served: &Served,
) -> Option<Placed<Cylinder>> {
    let Given::Yes(c, place) = given else {
        return None;
    };
    g.is_there(&c.capacity, place, "capacity");
    let capacity = weight(g, &c.capacity);
    let compartment = served.compartment(g, &c.compartment);
    let valve = g.length(&c.valve, Usual(15.0, 380.0), HIGH);
    let value = Cylinder {
        capacity: capacity?,
        compartment,
        valve,
    };
    Some(Placed {
        value,
        place: place.clone(),
    })
}

fn pipes(
    g: &mut Gather,
    given: &Given<Vec<Given<parameters::GasPipe>>>,
    served: &Served,
) -> Vec<GasPipe> {
    let mut found: Vec<GasPipe> = Vec::new();
    for (p, place) in given.entries() {
        let name = g.entry_name(&p.name, place, found.iter().map(|p| p.name.as_str()));
        let earlier: Vec<String> = found.iter().map(|p| p.name.clone()).collect();
        let from = g.reference(
            &p.from,
            "pipe above this one",
            earlier.iter().map(String::as_str),
        );
        let length = g.entry_length(&p.length, place, "length", PIPE);
        let size = g.entry_length(&p.size, place, "size", Limits(3.0, 120.0));
        let names = served.appliances.iter().map(|a| a.name.as_str());
        let serves = g.reference(&p.serves, "appliance", names);
        let lost = !p.from.is_absent() && from.is_none();
        let (Some(name), Some(length), Some(size), false) = (name, length, size, lost) else {
            continue;
        };
        found.push(GasPipe {
            name,
            place: place.clone(),
            from: from.map(|f| f.value),
            length,
            size,
            material: material(&p.material),
            serves,
        });
    }
    found
}

fn material(given: &Given<parameters::PipeMaterial>) -> Placed<PipeMaterial> {
    let usual = Placed {
        value: PipeMaterial::Steel,
        place: Place::default(),
    };
    let meaning = |m| match m {
        parameters::PipeMaterial::Steel => PipeMaterial::Steel,
        parameters::PipeMaterial::Corrugated => PipeMaterial::Corrugated,
    };
    word(given, meaning).unwrap_or(usual)
}

/// The electric supply within the island.
pub(super) fn electricity(
    g: &mut Gather,
    given: &Given<parameters::Electricity>,
    served: &Served,
) -> Option<Electricity> {
    let Given::Yes(e, place) = given else {
        return None;
    };
    let feeds = e.feeds.value().into_iter().flatten();
    let feeds = feeds.filter_map(|f| served.opening(g, f)).collect();
    Some(Electricity {
        place: place.clone(),
        conduit: g.optional_length(&e.conduit, Limits(3.0, 120.0)),
        height: g.optional_length(&e.height, HIGH),
        bushings: flag(&e.bushings),
        feeds,
    })
}
