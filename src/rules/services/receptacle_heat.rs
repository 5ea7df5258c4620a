//! Whether receptacles keep clear of grills and burners.

use super::receptacle::{between, body_of, or_say_none};
use crate::diagnostics::Verdict;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// Nearer than this to what cooks, a receptacle's plastic and a cord's jacket suffer.
const LEAST: Limit = Limit {
    name: "receptacle-heat-least",
    what: "the least distance of a receptacle from the body of a cooking appliance",
    usual: 152.4,
    unit: Unit::Length,
    source: "common practice",
};

/// From here on it is out of the way of heat and grease.
const CLEAR: Limit = Limit {
    name: "receptacle-heat-clear",
    what: "the distance of a receptacle from the body of a cooking appliance at which nobody worries",
    usual: 457.2,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static RECEPTACLE_HEAT: Rule = Rule {
    code: "power-receptacle-heat",
    family: Family::Services,
    title: "Receptacles and cords keep clear of grills and burners",
    about: About {
        checks: "The box of each receptacle is at least `receptacle-heat-least` from the body of every appliance that cooks: nearer \
                 it fails. Nearer than `receptacle-heat-clear` it is cautioned, farther it passes.",
        why: "A cord that is plugged in beside a burner lies over it sooner or later; heat makes its jacket and the box brittle, \
              and grease gets in.",
        reckoned: "The shortest way in a straight line from the box in the face to the body of the appliance. Both limits are common \
                   practice; what the appliance's own instructions ask for goes before them.",
        example: "A receptacle 10 in beside a side burner's body is more than 6 in and less than 18 in from it: a caution.",
    },
    limits: &[&LEAST, &CLEAR],
    levers: &["openings[].at", "appliances[].at"],
    outside: &[Outside {
        what: "half a foot at the very least, a foot and a half to be at ease, as electricians keep it",
        origin: Origin::Practice,
        test: "near_a_grill_it_is_cautioned_and_beside_it_fails",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let receptacles = or_say_none(subject, answers);
    if receptacles.is_empty() {
        return;
    }
    let (least, clear) = (subject.bound(&LEAST), subject.bound(&CLEAR));
    let cooking = subject
        .design()
        .appliances
        .iter()
        .enumerate()
        .filter(|(_, a)| a.cooks());
    let bodies: Vec<_> = cooking
        .filter_map(|(i, a)| Some((&a.name, body_of(subject.plan, i)?)))
        .collect();
    if bodies.is_empty() {
        answers.nothing("there is nothing that cooks");
    }
    for (cooker, body) in &bodies {
        for r in &receptacles {
            let apart = between(&r.bounds, body);
            let (verdict, bound) = if !least.is_reached_by(apart) {
                (Verdict::Fail, &least)
            } else if clear.is_reached_by(apart) {
                (Verdict::Pass, &clear)
            } else {
                (Verdict::Caution, &clear)
            };
            let found = format!(
                "'{}' is {} from '{cooker}'",
                r.opening.name,
                subject.mm(apart)
            );
            let answer = answers
                .say(verdict, &r.opening.place, found)
                .about(&r.opening.name)
                .at_least(bound);
            if verdict != Verdict::Pass {
                answer.hint("move it along the run, or to another side");
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    // `not checked` cannot occur: where things stand is always known, and whether it cooks is told by its kind.
    const CODE: &str = "power-receptacle-heat";

    #[test]
    fn near_a_grill_it_is_cautioned_and_beside_it_fails() {
        // Common practice. The grill's body is 29-1/2 in wide about 28 in from the left end: it begins at 13-1/4 in; its
        // foot is 26-1/2 in up. A box on the left end from 27 in up is beside it: 13-1/4 in apart, a caution.
        let left = |sill: &str| {
            Trial::sound()
                .with("openings[receptacle].run", "cook")
                .with("openings[receptacle].side", "left")
                .with("openings[receptacle].sill", sill)
                .with("openings[gas hatch].side", "seating")
                .with("openings[gas hatch].at", "{from: left, distance: 60 in}")
        };
        let found = left("27 in").about(CODE, "receptacle");
        assert_eq!(found.verdict, Verdict::Caution);
        assert!(found.found.contains("1'-1 1/4\""), "{}", found.found);
        // Moved 8 in to the left the grill's body is 5-1/4 in from the left end.
        let near = left("27 in")
            .with("appliances[grill].at.distance", "20 in")
            .with("openings[grill doors].at", "{in_line_with: grill}");
        assert_eq!(near.worst(CODE), Verdict::Fail);
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let cold = near
            .with("appliances[grill].kind", "ice well")
            .with("appliances[grill].fuel", "nothing");
        assert_eq!(cold.worst(CODE), Verdict::Pass);
    }
}
