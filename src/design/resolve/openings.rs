//! Appliances and openings resolved.

use super::gather::{Gather, Limits, Usual};
use super::ratings;
use super::things::{Thing, What};
use crate::design::{Appliance, Front, Opening, OpeningKind, Placed, Run, Station};
use crate::parameters;
use crate::units::Length;

/// The appliances that make sense.
pub(super) fn appliances(g: &mut Gather, things: &[Thing], runs: &[Run]) -> Vec<Appliance> {
    let mut found = Vec::new();
    for thing in things {
        if let What::Appliance(a) = thing.what {
            found.extend(appliance(g, thing, a, runs));
        }
    }
    found
}

/// The openings that make sense.
pub(super) fn openings(g: &mut Gather, things: &[Thing], runs: &[Run]) -> Vec<Opening> {
    let mut found = Vec::new();
    for thing in things {
        if let What::Opening(o) = thing.what {
            found.extend(opening(g, thing, o, runs));
        }
    }
    found
}

fn station(thing: &Thing) -> Option<Placed<Station>> {
    let middle = thing.middle.as_ref()?;
    Some(Placed {
        value: Station::FromLeft(middle.value),
        place: middle.place.clone(),
    })
}

fn appliance(
    g: &mut Gather,
    thing: &Thing,
    a: &parameters::Appliance,
    runs: &[Run],
) -> Option<Appliance> {
    let place = &thing.place;
    let cutout = a.cutout.value()?;
    let depth = g.needed_length(
        &cutout.depth,
        &a.cutout.place(),
        "depth",
        Limits(50.0, 2500.0),
    );
    let width = &thing.width;
    let radius = g.length(&cutout.corner_radius, Usual(0.0, 0.0), Limits(0.0, 500.0));
    let half = depth
        .as_ref()
        .map_or(width.value, |d| d.value.min(width.value))
        / 2.0;
    if radius.value > half {
        let found = format!(
            "a corner radius of {} does not fit the cutout",
            g.spell(radius.value)
        );
        let hint = format!("it can be {} at most", g.spell(half));
        g.error("radius-large", &radius.place, found, hint);
    }
    let body = g.needed(&a.body, place, "body");
    let height = body
        .and_then(|b| g.needed_length(&b.height, &a.body.place(), "height", Limits(10.0, 1800.0)));
    let front = front(g, thing, a, depth.as_ref(), runs);
    let kind = g.text(&a.kind, &thing.name);
    let flange = g.length(&a.flange, Usual(0.75, 20.0), Limits(0.0, 150.0));
    let (body, depth) = (body?, depth?);
    let less = g.usual(Usual(0.5, 12.0));
    let side = Limits(10.0, 2500.0);
    let least = Length::millimetres(10.0);
    let body_width = g.length_or(&body.width, (width.value - less).max(least), side);
    let body_depth = g.length_or(&body.depth, (depth.value - less).max(least), side);
    Some(Appliance {
        name: thing.name.clone(),
        kind,
        place: place.clone(),
        run: thing.run,
        station: station(thing)?,
        cutout_width: width.clone(),
        cutout_depth: depth,
        corner_radius: radius,
        body_width,
        body_depth,
        body_height: height?,
        flange,
        front: front?,
        rating: ratings::rating(g, a),
    })
}

fn front(
    g: &mut Gather,
    thing: &Thing,
    a: &parameters::Appliance,
    depth: Option<&Placed<Length>>,
    runs: &[Run],
) -> Option<Front> {
    let place = a.front.place();
    match g.needed(&a.front, &thing.place, "front")? {
        parameters::Front::Closed { setback } => {
            let most = runs.get(thing.run).map_or(3000.0, |r| r.depth.mm());
            let setback = g.needed_length(setback, &place, "setback", Limits(0.0, most))?;
            Some(Front::Closed { setback })
        }
        parameters::Front::Open { panel_height } => {
            let limits = Limits(25.0, 1200.0);
            let panel_height = g.needed_length(panel_height, &place, "panel_height", limits);
            Some(Front::Open {
                panel_height: panel_height?,
                reach: depth?.clone(),
            })
        }
    }
}

fn opening(
    g: &mut Gather,
    thing: &Thing,
    o: &parameters::Opening,
    runs: &[Run],
) -> Option<Opening> {
    let place = &thing.place;
    let kind = g.needed(&o.kind, place, "kind").map(|k| kind_of(*k));
    let height = g.needed_length(&o.height, place, "height", Limits(20.0, 2000.0));
    let sill = g.needed_length(&o.sill, place, "sill", Limits(0.0, 2000.0));
    let flange = g.length(&o.flange, Usual(1.0, 25.0), Limits(0.0, 150.0));
    let reach = match kind {
        Some(OpeningKind::Drawer) => Usual(20.0, 500.0),
        Some(OpeningKind::Undercounter) => Usual(22.0, 560.0),
        Some(OpeningKind::Receptacle) => Usual(3.0, 75.0),
        _ => Usual(0.0, 0.0),
    };
    let room =
        runs.get(thing.run).map_or(Length::ZERO, |r| r.depth.value) - g.usual(Usual(6.0, 150.0));
    let usual = g.usual(reach).min(room.max(Length::ZERO));
    let body_depth = g.length_or(&o.body_depth, usual, Limits(0.0, 3000.0));
    Some(Opening {
        name: thing.name.clone(),
        kind: kind?,
        place: place.clone(),
        run: thing.run,
        side: thing.side,
        station: station(thing)?,
        width: thing.width.clone(),
        height: height?,
        sill: sill?,
        flange,
        hardware: ratings::hardware(g, o, kind, thing.width.value, body_depth.value),
        body_depth,
    })
}

fn kind_of(kind: parameters::Kind) -> OpeningKind {
    match kind {
        parameters::Kind::Door => OpeningKind::Door,
        parameters::Kind::Drawer => OpeningKind::Drawer,
        parameters::Kind::Hatch => OpeningKind::Hatch,
        parameters::Kind::Undercounter => OpeningKind::Undercounter,
        parameters::Kind::Vent => OpeningKind::Vent,
        parameters::Kind::Receptacle => OpeningKind::Receptacle,
    }
}
