//! What instructions say of an appliance, and what fills an opening, resolved.

use super::amounts::{Range, SHARE, SOME};
use super::gather::{Gather, Limits, Usual};
use super::soft::{flag, word};
use crate::design::{
    BoxFill, Clearances, Cover, Drain, Fuel, Hardware, Hinge, OpeningKind, Placed, Protection,
    Rating,
};
use crate::diagnostics::Place;
use crate::parameters::{self, CountText, Given};
use crate::units::{
    Length, Mass, Power, Volume, parse_mass, parse_power, parse_share, parse_volume,
};

/// Distances to what can burn.
const APART: Limits = Limits(0.0, 6000.0);

const FEW: Range = Range {
    least: 0.0,
    most: 100.0,
    said: "0 to 100",
};

/// Wire sizes for which box volumes are given.
const GAUGE: Range = Range {
    least: 6.0,
    most: 18.0,
    said: "an American wire gauge from 6 to 18, such as 12",
};

/// What is known of an appliance beyond its sizes.
pub(super) fn rating(g: &mut Gather, a: &parameters::Appliance) -> Rating {
    let heat = g.amount(&a.heat_input, &SOME, |t| parse_power(t).map(Power::w));
    let empty = parameters::Clearance::default();
    let c = a.clearance.value().unwrap_or(&empty);
    Rating {
        fuel: word(&a.fuel, fuel_of),
        heat_input: heat.map(|h| with(&h, Power::watts)),
        weight: weight(g, &a.weight),
        gap: g.optional_length(&a.gap, Limits(0.0, 300.0)),
        clearance: Clearances {
            back: g.optional_length(&c.back, APART),
            sides: g.optional_length(&c.sides, APART),
            above: g.optional_length(&c.above, APART),
            below: g.optional_length(&c.below, APART),
        },
        drain: drain(g, &a.drain),
    }
}

/// The fuel that a word names.
pub(super) fn fuel_of(fuel: parameters::Fuel) -> Fuel {
    match fuel {
        parameters::Fuel::NaturalGas => Fuel::NaturalGas,
        parameters::Fuel::Propane => Fuel::Propane,
        parameters::Fuel::Charcoal => Fuel::Charcoal,
        parameters::Fuel::Wood => Fuel::Wood,
        parameters::Fuel::Electricity => Fuel::Electricity,
        parameters::Fuel::Nothing => Fuel::Nothing,
    }
}

/// A weight.
pub(super) fn weight(g: &mut Gather, given: &Given<parameters::MassText>) -> Option<Placed<Mass>> {
    let weight = g.amount(given, &SOME, |t| parse_mass(t).map(Mass::kg))?;
    Some(with(&weight, Mass::kilograms))
}

fn with<T>(amount: &Placed<f64>, make: impl Fn(f64) -> T) -> Placed<T> {
    Placed {
        value: make(amount.value),
        place: amount.place.clone(),
    }
}

fn drain(g: &mut Gather, given: &Given<parameters::Drain>) -> Option<Placed<Drain>> {
    let Given::Yes(d, place) = given else {
        return None;
    };
    let size = g.entry_length(&d.size, place, "size", Limits(6.0, 200.0));
    let length = g.entry_length(&d.length, place, "length", Limits(1.0, 100_000.0));
    let fall = g.entry_length(&d.fall, place, "fall", Limits(0.0, 100_000.0));
    let value = Drain {
        size: size?,
        length: length?,
        fall: fall?,
        trapped: flag(&d.trapped),
    };
    Some(Placed {
        value,
        place: place.clone(),
    })
}

/// What fills an opening.
pub(super) fn hardware(
    g: &mut Gather,
    o: &parameters::Opening,
    kind: Option<OpeningKind>,
    width: Length,
    body_depth: Length,
) -> Hardware {
    let pair = kind == Some(OpeningKind::Door) && width > g.usual(Usual(20.0, 500.0));
    let usual = if pair { Hinge::Pair } else { Hinge::Left };
    let travel = g.optional_length(&o.travel, Limits(0.0, 3000.0));
    Hardware {
        body_width: g.optional_length(&o.body_width, Limits(1.0, 3000.0)),
        body_height: g.optional_length(&o.body_height, Limits(1.0, 3000.0)),
        hinge: word(&o.hinge, hinge_of).unwrap_or(usually(usual)),
        travel: travel.unwrap_or(usually(body_depth)),
        by_hand: word(&o.opens, |w| w == parameters::Opens::ByHand).unwrap_or(usually(true)),
        free_area: g.amount(&o.free_area, &SHARE, parse_share),
        weight: weight(g, &o.weight),
        protection: word(&o.protection, |p| match p {
            parameters::Protection::GroundFault => Protection::GroundFault,
            parameters::Protection::None => Protection::None,
        }),
        cover: word(&o.cover, |c| match c {
            parameters::Cover::InUse => Cover::InUse,
            parameters::Cover::Flap => Cover::Flap,
            parameters::Cover::None => Cover::None,
        }),
        weather_resistant: flag(&o.weather_resistant),
        box_fill: box_fill(g, &o.box_fill),
    }
}

fn usually<T>(value: T) -> Placed<T> {
    Placed {
        value,
        place: Place::default(),
    }
}

fn hinge_of(hinge: parameters::Hinge) -> Hinge {
    match hinge {
        parameters::Hinge::Left => Hinge::Left,
        parameters::Hinge::Right => Hinge::Right,
        parameters::Hinge::Pair => Hinge::Pair,
        parameters::Hinge::Bottom => Hinge::Bottom,
        parameters::Hinge::Top => Hinge::Top,
        parameters::Hinge::None => Hinge::None,
    }
}

fn box_fill(g: &mut Gather, given: &Given<parameters::BoxFill>) -> Option<Placed<BoxFill>> {
    let Given::Yes(b, place) = given else {
        return None;
    };
    for (there, key) in [
        (!b.volume.is_absent(), "volume"),
        (!b.gauge.is_absent(), "gauge"),
        (!b.conductors.is_absent(), "conductors"),
    ] {
        if !there {
            g.is_there(&Given::<String>::No, place, key);
        }
    }
    let volume = g.amount(&b.volume, &SOME, |t| parse_volume(t).map(Volume::mm3));
    let gauge = g.whole(&b.gauge, &GAUGE);
    let conductors = g.whole(&b.conductors, &FEW);
    let one =
        |g: &mut Gather, given: &Given<CountText>| g.whole(given, &FEW).map_or(1, |n| n.value);
    let (grounds, devices) = (one(g, &b.grounds), one(g, &b.devices));
    let value = BoxFill {
        volume: with(&volume?, Volume::cubic_millimetres),
        gauge: gauge?,
        conductors: conductors?,
        grounds,
        devices,
        clamps: b.clamps.value() != Some(&false),
    };
    Some(Placed {
        value,
        place: place.clone(),
    })
}
