//! Whether the main gas valve and each appliance's own are reached in a hurry.

use super::supply::burns_gas;
use crate::design::{Appliance, Gas, Opening, OpeningKind};
use crate::diagnostics::{Place, Verdict};
use crate::geometry::Bounds2;
use crate::plan::{BodyOf, Plan};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// How far an arm reaches in.
const REACH: Limit = Limit {
    name: "gas-shut-off-reach",
    what: "how far behind the face of its opening the main gas valve is",
    usual: 457.2,
    unit: Unit::Length,
    source: "common practice: an arm to the elbow and a hand",
};

/// How far an appliance's own valve is from it.
const FROM_APPLIANCE: Limit = Limit {
    name: "gas-shut-off-distance",
    what: "how far from an appliance the door or hatch to its own gas valve is",
    usual: 1828.8,
    unit: Unit::Length,
    source: "value from memory: IFGC 409.5.1, a shutoff valve within 6 ft of the appliance",
};

pub(super) static SHUT_OFF: Rule = Rule {
    code: "gas-shut-off",
    family: Family::Gas,
    title: "The main gas valve and each appliance's own are reached through a door or hatch without tools",
    about: About {
        checks: "The main shut-off valve is behind a door or hatch that opens without tools, at most `gas-shut-off-reach` behind its face, and each \
                 gas appliance has such a door or hatch within `gas-shut-off-distance`, for its own valve. Where the file has a cylinder and no other main valve, the cylinder's is the main one. It fails otherwise; less than 10 % \
                 of reach left over is a caution. Where what an appliance runs on is not known, its valve is not checked.",
        why: "When a hose burns there is time for one movement. A screw or a drawer in the way is too much. The local code, the \
              appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "Main valve: `gas.shut_off.depth` against the limit, common practice. Own valve: the shortest level distance between the appliance's \
                   body and the opening, against 6 ft (IFGC 409.5.1, value from memory).",
        example: "A valve 6 in behind a hatch at the left end passes; one 20 in behind it fails.",
    },
    limits: &[&REACH, &FROM_APPLIANCE],
    levers: &["gas.shut_off.depth", "openings[].at"],
    outside: &[
        Outside {
            what: "18 in, an arm to the elbow and a hand",
            origin: Origin::Practice,
            test: "the_main_valve_is_in_reach_behind_a_leaf_that_opens",
        },
        Outside {
            what: "6 ft from the appliance (IFGC 409.5.1)",
            origin: Origin::Memory,
            test: "each_appliance_has_a_door_near_it",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let unknown = |a: &Appliance| a.cooks() && a.rating.fuel.is_none();
    let burners: Vec<usize> = (0..design.appliances.len())
        .filter(|i| burns_gas(&design.appliances[*i]))
        .collect();
    if let Some(gas) = &design.gas {
        main_valve(subject, answers, gas);
    } else if let Some(&i) = burners.first() {
        let found = format!(
            "where the gas to '{}' is shut off is not known",
            design.appliances[i].name
        );
        answers.missing(&Place::default(), "gas.shut_off", found);
    } else if !design.appliances.iter().any(unknown) {
        answers.nothing("there is no gas");
    }
    for i in burners {
        own_valve(subject, answers, i);
    }
    for a in design.appliances.iter().filter(|a| unknown(a)) {
        let found = format!(
            "what '{}' runs on is not known, so whether it needs a gas valve",
            a.name
        );
        answers.missing(&a.place, "fuel", found).about(&a.name);
    }
}

/// True for a leaf behind which a hand finds a valve.
fn is_leaf(o: &Opening) -> bool {
    matches!(o.kind, OpeningKind::Door | OpeningKind::Hatch)
}

/// Why an opening does not lead to the main valve.
fn wrong_leaf(o: &Opening) -> Option<String> {
    let behind = format!("the main gas valve is behind '{}'", o.name);
    if !is_leaf(o) {
        Some(format!("{behind}, a {}", o.kind.name()))
    } else if !o.hardware.by_hand.value {
        Some(format!("{behind}, which opens only with tools"))
    } else {
        None
    }
}

fn main_valve(subject: &Subject, answers: &mut Answers, gas: &Gas) {
    if gas.shut_off.is_none() && gas.cylinder.is_some() {
        answers
            .pass(
                &gas.place,
                "the valve of the cylinder is the main valve; gas-cylinder answers for it",
            )
            .about("main valve");
        return;
    }
    let Some(behind) = &gas.shut_off else {
        answers
            .missing(
                &gas.place,
                "shut_off",
                "where the main gas valve is reached is not known",
            )
            .about("main valve");
        return;
    };
    let Some(o) = subject
        .design()
        .openings
        .iter()
        .find(|o| o.name == behind.value)
    else {
        return;
    };
    let wrong = wrong_leaf(o);
    if let Some(found) = wrong {
        answers
            .fail(&behind.place, found)
            .about("main valve")
            .limit(
                "a door or hatch that opens without tools",
                "common practice",
            )
            .hint("put the valve behind a door or hatch with a latch that a hand opens");
        return;
    }
    let Some(depth) = &gas.shut_off_depth else {
        let found = format!(
            "how far behind '{}' the main gas valve is is not known",
            o.name
        );
        answers
            .missing(&gas.place, "shut_off.depth", found)
            .about("main valve");
        return;
    };
    let most = subject.bound(&REACH);
    let found = format!(
        "the main gas valve is {} behind '{}'",
        subject.mm(depth.mm()),
        o.name
    );
    let verdict = graded(depth.mm(), most.value);
    let hint = if verdict == Verdict::Pass {
        ""
    } else {
        "bring the valve nearer to the opening"
    };
    answers
        .say(verdict, &depth.place, found)
        .about("main valve")
        .at_most(&most)
        .hint(hint);
}

fn graded(distance: f64, most: f64) -> Verdict {
    if distance > most + 1e-6 {
        Verdict::Fail
    } else if distance > most * 0.9 {
        Verdict::Caution
    } else {
        Verdict::Pass
    }
}

fn own_valve(subject: &Subject, answers: &mut Answers, appliance: usize) {
    let plan = subject.plan;
    let a: &Appliance = &plan.design.appliances[appliance];
    let most = subject.bound(&FROM_APPLIANCE);
    let nearest = doors(plan, appliance)
        .into_iter()
        .min_by(|p, q| p.1.total_cmp(&q.1));
    let Some((name, distance)) = nearest else {
        answers
            .fail(
                &a.place,
                format!(
                    "no door or hatch that opens by hand leads to the valve of '{}'",
                    a.name
                ),
            )
            .about(&a.name)
            .at_most(&most)
            .hint("put a door or hatch with a latch that a hand opens below or beside it");
        return;
    };
    let found = format!(
        "'{name}', which opens by hand, is {} from '{}'",
        subject.mm(distance),
        a.name
    );
    let verdict = graded(distance, most.value);
    let hint = if verdict == Verdict::Pass {
        ""
    } else {
        "put a door or hatch nearer to it"
    };
    answers
        .say(verdict, &a.place, found)
        .about(&a.name)
        .at_most(&most)
        .hint(hint);
}

/// The doors and hatches that open by hand, with their level distance from an appliance's body.
fn doors(plan: &Plan, appliance: usize) -> Vec<(&str, f64)> {
    let Some(body) = plan
        .bodies
        .iter()
        .find(|b| b.of == BodyOf::Appliance(appliance))
    else {
        return Vec::new();
    };
    let body = plan.runs[body.run].rectangle(body.u, body.v);
    let mut found = Vec::new();
    for face in &plan.faces {
        for hole in face.openings.iter().filter(|h| h.kind.is_some()) {
            let o = &plan.design.openings[hole.index];
            if is_leaf(o) && o.hardware.by_hand.value {
                let (p, q) = (face.point(hole.s0, 0.0), face.point(hole.s1, 0.0));
                let hole = Bounds2 {
                    low: p.inf(&q),
                    high: p.sup(&q),
                };
                found.push((o.name.as_str(), apart(&body, &hole)));
            }
        }
    }
    found
}

/// The shortest distance between two rectangles.
fn apart(a: &Bounds2, b: &Bounds2) -> f64 {
    let gap = |i: usize| (b.low[i] - a.high[i]).max(a.low[i] - b.high[i]).max(0.0);
    gap(0).hypot(gap(1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    const CODE: &str = "gas-shut-off";

    #[test]
    fn the_main_valve_is_in_reach_behind_a_leaf_that_opens() {
        // Common practice: 18 in.
        let at = |depth| {
            Trial::sound()
                .with("gas.shut_off.depth", depth)
                .about(CODE, "main valve")
        };
        assert_eq!(at("6 in").verdict, Verdict::Pass);
        assert_eq!(at("17 in").verdict, Verdict::Caution);
        assert_eq!(at("20 in").verdict, Verdict::Fail);
        let screwed = Trial::sound().with("openings[gas hatch].opens", "with-tools");
        assert_eq!(screwed.about(CODE, "main valve").verdict, Verdict::Fail);
        let drawer = Trial::sound().with("gas.shut_off.behind", "drawers");
        assert_eq!(drawer.about(CODE, "main valve").verdict, Verdict::Fail);
    }

    #[test]
    fn what_the_file_does_not_say_is_not_checked() {
        let found = Trial::sound()
            .without("gas.shut_off")
            .about(CODE, "main valve");
        assert_eq!(found.verdict, Verdict::NotChecked);
        let found = Trial::sound()
            .without("gas.shut_off.depth")
            .about(CODE, "main valve");
        assert!(found.hint.contains("gas.shut_off.depth"), "{}", found.hint);
        let found = Trial::sound()
            .without("appliances[grill].fuel")
            .about(CODE, "grill");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(found.hint.contains("fuel"), "{}", found.hint);
        assert_eq!(
            Trial::sound().without("gas").worst(CODE),
            Verdict::NotChecked
        );
    }

    #[test]
    fn each_appliance_has_a_door_near_it() {
        // Value from memory (IFGC 409.5.1): within 6 ft.
        assert_eq!(Trial::sound().about(CODE, "grill").verdict, Verdict::Pass);
        let only_far = Trial::sound()
            .with("openings[grill doors].opens", "with-tools")
            .with("openings[gas hatch].opens", "with-tools");
        // Worked on paper: the sink doors are 47-1/4 in across the corner and 15-1/2 in away from the grill's body.
        let found = only_far.about(CODE, "grill");
        assert!(found.found.contains("4'-1 3/4\""), "{}", found.found);
        assert_eq!(found.verdict, Verdict::Pass);
        let nearer = "[{name: gas-shut-off-distance, value: 4 ft, source: the gas works}]";
        let nearer = only_far.clone().with("limits", nearer);
        assert_eq!(nearer.about(CODE, "grill").verdict, Verdict::Fail);
        let none = only_far.with("openings[sink doors].opens", "with-tools");
        assert!(none.about(CODE, "grill").found.starts_with("no door"));
    }

    #[test]
    fn distances_are_those_of_a_right_triangle() {
        // Worked on paper: 3 across and 4 away make 5.
        let at = |x: f64, y: f64| Bounds2 {
            low: crate::geometry::Point2::new(x, y),
            high: crate::geometry::Point2::new(x + 1.0, y + 1.0),
        };
        assert!((apart(&at(0.0, 0.0), &at(4.0, 5.0)) - 5.0).abs() < 1e-12);
        assert_eq!(apart(&at(0.0, 0.0), &at(0.5, 0.5)), 0.0);
        assert_eq!(
            (graded(6.0, 6.0), graded(5.0, 6.0)),
            (Verdict::Caution, Verdict::Pass)
        );
    }
}
