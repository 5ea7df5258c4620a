//! Site, people and own limits resolved.

use super::amounts::{Range, SOME};
use super::gather::{Gather, Limits};
use super::soft::{Named, flag, word};
use crate::design::{
    Ground, ObjectKind, OwnLimit, Passage, People, Placed, Site, SiteObject, Surface,
};
use crate::diagnostics::Place;
use crate::geometry::{Bounds2, LeaningBox, Point2, Vector2};
use crate::parameters::{self, Given};
use crate::units::{Stress, parse_stress};

/// Where something of the site can be, and how large.
const NEAR: Limits = Limits(-100_000.0, 100_000.0);
const LARGE: Limits = Limits(0.0, 100_000.0);
/// Surfaces that mean anything.
const THICK: Limits = Limits(5.0, 2000.0);

const SEATS: Range = Range {
    least: 0.0,
    most: 1000.0,
    said: "0 to 1000",
};

/// The site.
pub(super) fn site(g: &mut Gather, given: &Given<parameters::Site>) -> Site {
    let Given::Yes(s, place) = given else {
        return Site {
            place: group("site"),
            ..Site::default()
        };
    };
    let bearing = g.amount(&s.bearing, &SOME, |t| parse_stress(t).map(Stress::mpa));
    Site {
        place: place.clone(),
        ground: word(&s.ground, |x| match x {
            parameters::Ground::Bedrock => Ground::Bedrock,
            parameters::Ground::SedimentaryRock => Ground::SedimentaryRock,
            parameters::Ground::Gravel => Ground::Gravel,
            parameters::Ground::Sand => Ground::Sand,
            parameters::Ground::Clay => Ground::Clay,
        }),
        bearing: bearing.map(|b| Placed {
            value: Stress::megapascals(b.value),
            place: b.place,
        }),
        surface: surface(g, &s.surface),
        survey: super::survey::survey(g, &s.survey),
        freezing: flag(&s.freezing),
        objects: objects(g, &s.objects),
    }
}

/// The place of a group that the file leaves out: its key, without a line.
fn group(key: &str) -> Place {
    Place {
        key: key.to_owned(),
        ..Place::default()
    }
}

fn surface(g: &mut Gather, given: &Given<parameters::Surface>) -> Option<Placed<Surface>> {
    let place = given.place();
    let value = match given.value()? {
        parameters::Surface::Bare => Surface::Bare,
        parameters::Surface::Deck => Surface::Deck,
        parameters::Surface::Slab { thickness } => Surface::Slab {
            thickness: g.entry_length(thickness, &place, "thickness", THICK)?,
        },
        parameters::Surface::Pavers { size, thickness } => {
            let size = g.entry_length(size, &place, "size", THICK);
            let thickness = g.entry_length(thickness, &place, "thickness", THICK);
            Surface::Pavers {
                size: size?,
                thickness: thickness?,
            }
        }
    };
    Some(Placed { value, place })
}

fn objects(
    g: &mut Gather,
    given: &Given<Vec<Given<parameters::SiteObject>>>,
) -> Option<Placed<Vec<SiteObject>>> {
    given.value()?;
    let mut found: Vec<SiteObject> = Vec::new();
    for (o, place) in given.entries() {
        let name = g.entry_name(&o.name, place, found.iter().map(|o| o.name.as_str()));
        let kind = g.entry_word(&o.kind, place, "kind", kind_of);
        g.is_there(&o.at, place, "at");
        g.is_there(&o.size, place, "size");
        let at = point(g, &o.at, NEAR);
        let size = point(g, &o.size, LARGE);
        let (Some(name), Some(kind), Some(low), Some(size)) = (name, kind, at, size) else {
            continue;
        };
        let stands = LeaningBox {
            foot: Bounds2 {
                low: Point2::new(low[0], low[1]),
                high: Point2::new(low[0] + size[0], low[1] + size[1]),
            },
            z: (low[2], low[2] + size[2]),
            shift: shift(g, &o.top, low, size[2]),
        };
        let around = stands.bounds();
        found.push(SiteObject {
            name,
            place: place.clone(),
            kind: kind.value,
            combustible: flag(&o.combustible),
            low: around.low.coords.into(),
            high: around.high.coords.into(),
            stands,
        });
    }
    Some(Placed {
        value: found,
        place: given.place(),
    })
}

/// An object that leans more than this share of its height has been measured wrongly, or has fallen over.
const MOST_LEAN: f64 = 0.25;

/// How far an object's top stands beside its foot, by where one corner was measured above; none where that makes no sense,
/// which is said.
fn shift(g: &mut Gather, given: &Given<parameters::Point>, low: [f64; 3], high: f64) -> Vector2 {
    let Some(top) = point(g, given, NEAR) else {
        return Vector2::zeros();
    };
    let up = top[2] - low[2];
    let lean = Vector2::new(top[0] - low[0], top[1] - low[1]);
    if up < 1.0 {
        let found = "the top is not above the foot";
        let hint = "write where the corner of 'at' is at the top";
        g.fail("lean-without-height", &given.place(), found, hint);
    } else if lean.norm() > MOST_LEAN * up {
        let lean = g.spell(crate::units::Length::millimetres(lean.norm()));
        let up = g.spell(crate::units::Length::millimetres(up));
        let found = format!("it leans {lean} in {up}");
        let hint = "measure the same corner at foot and top, from the same zero";
        g.fail("lean-too-far", &given.place(), found, hint);
    } else {
        return lean * (high / up);
    }
    Vector2::zeros()
}

fn point(g: &mut Gather, given: &Given<parameters::Point>, limits: Limits) -> Option<[f64; 3]> {
    let Given::Yes(p, place) = given else {
        return None;
    };
    let x = g.entry_length(&p.x, place, "x", limits);
    let y = g.entry_length(&p.y, place, "y", limits);
    let z = g.entry_length(&p.z, place, "z", limits);
    Some([x?.mm(), y?.mm(), z?.mm()])
}

fn kind_of(kind: parameters::ObjectKind) -> ObjectKind {
    match kind {
        parameters::ObjectKind::Post => ObjectKind::Post,
        parameters::ObjectKind::Beam => ObjectKind::Beam,
        parameters::ObjectKind::Wall => ObjectKind::Wall,
        parameters::ObjectKind::Fence => ObjectKind::Fence,
        parameters::ObjectKind::Roof => ObjectKind::Roof,
        parameters::ObjectKind::Walkway => ObjectKind::Walkway,
        parameters::ObjectKind::Other => ObjectKind::Other,
    }
}

/// Who uses the island.
pub(super) fn people(g: &mut Gather, given: &Given<parameters::People>) -> People {
    let Given::Yes(p, place) = given else {
        return People {
            place: group("people"),
            ..People::default()
        };
    };
    People {
        place: place.clone(),
        seats: g.whole(&p.seats, &SEATS),
        behind_seats: word(&p.behind_seats, |w| match w {
            parameters::Passage::Nobody => Passage::Nobody,
            parameters::Passage::Edging => Passage::Edging,
            parameters::Passage::Walking => Passage::Walking,
        }),
        accessible: flag(&p.accessible),
    }
}

/// Limits that the file sets otherwise; whether a rule has such a limit, the rules say.
pub(super) fn limits(
    g: &mut Gather,
    given: &Given<Vec<Given<parameters::OwnLimit>>>,
) -> Vec<OwnLimit> {
    let mut found: Vec<OwnLimit> = Vec::new();
    for (l, place) in given.entries() {
        let name = g.entry_name(&l.name, place, found.iter().map(|l| l.name.value.as_str()));
        g.is_there(&l.value, place, "value");
        let source = g.soft_text(&l.source);
        let (Some(name), Given::Yes(value, at)) = (name, &l.value) else {
            continue;
        };
        found.push(OwnLimit {
            name: Named {
                value: name,
                place: l.name.place(),
            },
            value: Named {
                value: value.trim().to_owned(),
                place: at.clone(),
            },
            source,
        });
    }
    found
}
