//! The closed rooms inside the island: those that the file names, and what is left of the inside.

use crate::design::{OpeningKind, Side};
use crate::diagnostics::Place;
use crate::plan::{Body, BodyOf, Face, FaceOpening, Plan};
use crate::units::Length;

/// Things that share less than this do not count as in the same room, millimetres.
const TOUCH: f64 = 1.0;

/// A stretch along one run, millimetres from its left end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    pub(super) run: usize,
    pub(super) from: f64,
    pub(super) to: f64,
}

/// A closed room inside the island.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Space {
    /// Its name in messages.
    pub(super) name: String,
    /// Its entry in the file; without a line for what no entry names.
    pub(super) place: Place,
    /// The stretches it takes; more than one where it goes round a corner.
    pub(super) stretches: Vec<Stretch>,
    /// Its floor above the datum.
    pub(super) floor: f64,
    /// Its top: the underside of what the counter is cast on.
    pub(super) top: f64,
}

/// An opening of a face that leads into a room, and the share of it that does.
#[derive(Clone, Copy, Debug)]
pub(super) struct Way<'a> {
    pub(super) face: &'a Face,
    pub(super) hole: &'a FaceOpening,
    pub(super) share: f64,
}

/// All rooms, those with names first.
pub(super) fn spaces(plan: &Plan) -> Vec<Space> {
    let named = plan.design.compartments.iter().map(|c| Space {
        name: format!("'{}'", c.name),
        place: c.place.clone(),
        stretches: vec![Stretch {
            run: c.run,
            from: c.from.mm(),
            to: c.to.mm(),
        }],
        floor: c.floor.mm(),
        top: plan.levels.frame_top,
    });
    let mut all: Vec<Space> = named.collect();
    let left = joined(plan, left_over(plan, &all));
    let several = left.len() > 1;
    for stretches in left {
        let name = name_of(plan, &stretches, all.is_empty(), several);
        all.push(Space {
            name,
            place: Place {
                key: "compartments".to_owned(),
                ..Place::default()
            },
            stretches,
            floor: plan.levels.frame_bottom,
            top: plan.levels.frame_top,
        });
    }
    all
}

fn name_of(plan: &Plan, stretches: &[Stretch], whole: bool, several: bool) -> String {
    let first = stretches.first().filter(|_| several);
    match first {
        None if whole => "the inside of the island".to_owned(),
        None => "the rest of the inside".to_owned(),
        Some(s) => {
            let notation = plan.design.project.units;
            format!(
                "the room from {} along run '{}'",
                notation.spell_with_unit(Length::millimetres(s.from)),
                plan.design.runs[s.run].name.value
            )
        }
    }
}

/// The stretches of each run that no named room takes.
fn left_over(plan: &Plan, named: &[Space]) -> Vec<Stretch> {
    let mut left = Vec::new();
    for (run, r) in plan.runs.iter().enumerate() {
        let mut taken: Vec<_> = named
            .iter()
            .flat_map(|s| &s.stretches)
            .filter(|s| s.run == run)
            .collect();
        taken.sort_by(|a, b| a.from.total_cmp(&b.from));
        let mut from = 0.0;
        for t in taken {
            if t.from - from > TOUCH {
                left.push(Stretch {
                    run,
                    from,
                    to: t.from,
                });
            }
            from = f64::max(from, t.to);
        }
        if r.length - from > TOUCH {
            left.push(Stretch {
                run,
                from,
                to: r.length,
            });
        }
    }
    left
}

/// Stretches that meet in a corner are one room.
fn joined(plan: &Plan, stretches: Vec<Stretch>) -> Vec<Vec<Stretch>> {
    let mut rooms: Vec<Vec<Stretch>> = Vec::new();
    for s in stretches {
        let meets = |t: &Stretch| {
            t.run + 1 == s.run
                && t.to > plan.runs[t.run].length - plan.runs[s.run].depth + TOUCH
                && s.from < plan.runs[t.run].depth - TOUCH
        };
        match rooms.iter_mut().find(|r| r.iter().any(meets)) {
            Some(room) => room.push(s),
            None => rooms.push(vec![s]),
        }
    }
    rooms
}

impl Space {
    /// The share of a stretch that lies in this room.
    fn share(&self, run: usize, from: f64, to: f64) -> f64 {
        let within = |s: &&Stretch| s.run == run;
        let shared = |s: &Stretch| (to.min(s.to) - from.max(s.from)).max(0.0);
        let sum: f64 = self.stretches.iter().filter(within).map(shared).sum();
        sum / (to - from).max(TOUCH)
    }

    /// True when a body hangs in this room.
    pub(super) fn holds(&self, body: &Body) -> bool {
        self.share(body.run, body.u.0, body.u.1) * (body.u.1 - body.u.0) > TOUCH
    }

    /// The appliances whose bodies hang in this room.
    pub(super) fn appliances(&self, plan: &Plan) -> Vec<usize> {
        let here = |b: &Body| match b.of {
            BodyOf::Appliance(i) if self.holds(b) => Some(i),
            _ => None,
        };
        plan.bodies.iter().filter_map(here).collect()
    }

    /// The openings of the faces that lead into this room.
    pub(super) fn ways<'a>(&self, plan: &'a Plan) -> Vec<Way<'a>> {
        let mut ways = Vec::new();
        for face in &plan.faces {
            for hole in face.openings.iter().filter(|h| h.kind.is_some()) {
                let share = self.share_of(plan, face, hole);
                if share > 1e-6 {
                    ways.push(Way { face, hole, share });
                }
            }
        }
        ways
    }

    /// The share of an opening between the room's floor and its top.
    fn share_up(&self, hole: &FaceOpening) -> f64 {
        let within = hole.z1.min(self.top) - hole.z0.max(self.floor);
        (within / (hole.z1 - hole.z0).max(TOUCH)).clamp(0.0, 1.0)
    }

    fn share_of(&self, plan: &Plan, face: &Face, hole: &FaceOpening) -> f64 {
        self.share_up(hole) * self.share_along(plan, face, hole)
    }

    fn share_along(&self, plan: &Plan, face: &Face, hole: &FaceOpening) -> f64 {
        let run = &plan.runs[face.run];
        let u = |s: f64| run.local(face.point(s, 0.0)).x;
        let (a, b) = (u(hole.s0), u(hole.s1));
        match face.side {
            Side::Working | Side::Seating => self.share(face.run, a.min(b), a.max(b)),
            // An end opens into the room that reaches it.
            Side::Left | Side::Right => {
                let inwards = if face.side == Side::Left {
                    TOUCH
                } else {
                    -TOUCH
                };
                let (from, to) = (a.min(a + inwards), a.max(a + inwards));
                f64::from(u8::from(self.share(face.run, from, to) > 0.5))
            }
        }
    }

    /// The receptacles and electric appliances in this room, by name.
    pub(super) fn electric<'a>(&self, plan: &'a Plan) -> Vec<&'a str> {
        let electric = |w: &Way| {
            matches!(
                w.hole.kind,
                Some(OpeningKind::Receptacle | OpeningKind::Undercounter)
            )
        };
        let ways = self.ways(plan).into_iter();
        let openings = ways.filter(electric).map(|w| w.hole.name.as_str());
        let fed = self.appliances(plan).into_iter().filter_map(|i| {
            let a = &plan.design.appliances[i];
            let fuel = a.rating.fuel.as_ref()?;
            (fuel.value == crate::design::Fuel::Electricity).then_some(a.name.as_str())
        });
        openings.chain(fed).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn names(trial: &Trial) -> Vec<(String, usize)> {
        let plan = trial.plan();
        let all = spaces(&plan);
        all.iter()
            .map(|s| (s.name.clone(), s.stretches.len()))
            .collect()
    }

    #[test]
    fn without_names_the_inside_is_one_room_round_the_corner() {
        let found = names(&Trial::sound());
        assert_eq!(found, [("the inside of the island".to_owned(), 2)]);
    }

    #[test]
    fn a_room_in_the_middle_parts_the_rest() {
        let room = "[{name: store, run: cook, from: 50 in, to: 70 in}]";
        let found = names(&Trial::sound().with("compartments", room));
        let expected = [
            ("'store'".to_owned(), 1),
            ("the room from 0\" along run 'cook'".to_owned(), 1),
            ("the room from 5'-10\" along run 'cook'".to_owned(), 2),
        ];
        assert_eq!(found, expected);
    }

    #[test]
    fn what_opens_below_a_room_s_floor_does_not_lead_into_it() {
        // The low vent is from 5 to 8 in: above a floor at 7 in a third of it is left, above one at 9 in nothing.
        let at = |floor: &str| {
            let room =
                format!("[{{name: room, run: cook, from: 0 in, to: 48 in, floor: {floor}}}]");
            let plan = Trial::sound().with("compartments", &room).plan();
            let all = spaces(&plan);
            let ways = all[0].ways(&plan);
            let low = ways.iter().find(|w| w.hole.name == "low vent");
            low.map_or(0.0, |w| w.share)
        };
        assert!((at("2 in") - 1.0).abs() < 1e-9);
        assert!((at("7 in") - 1.0 / 3.0).abs() < 1e-9);
        assert!(at("9 in").abs() < 1e-9);
    }

    #[test]
    fn vents_and_bodies_are_where_they_stand() {
        let room = "[{name: grill room, run: cook, from: 0 in, to: 48 in}]";
        let plan = Trial::sound().with("compartments", room).plan();
        let all = spaces(&plan);
        let holes = |s: &Space| -> Vec<String> {
            s.ways(&plan).iter().map(|w| w.hole.name.clone()).collect()
        };
        // The left end and the two vents at 24 in lead into the grill's room; the receptacle is in the other run's end.
        let first = holes(&all[0]);
        for name in ["grill doors", "gas hatch", "low vent", "high vent"] {
            assert!(first.iter().any(|n| n == name), "{name}: {first:?}");
        }
        assert!(holes(&all[1]).iter().any(|n| n == "receptacle"));
        assert_eq!(all[0].appliances(&plan), [0]);
        assert_eq!(all[1].electric(&plan), ["receptacle"]);
        assert!(all[0].electric(&plan).is_empty());
    }
}
