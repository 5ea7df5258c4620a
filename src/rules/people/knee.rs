//! Whether the overhang leaves room for knees.

use super::seating::{KNEES, edges, knee_depth, seats};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// The least overhang at which one can sit at all.
const LEAST: Limit = Limit {
    name: "knee-depth-least",
    what: "the overhang below which nobody can sit at a counter",
    usual: 203.2,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static KNEE: Rule = Rule {
    code: "people-knee",
    family: Family::People,
    title: "The overhang leaves room for knees",
    about: About {
        checks: "Where people sit, the counter passes the finished face by the knee depth that its height asks for. Less is a \
                 caution; less than `knee-depth-least` fails.",
        why: "Who cannot get the knees under sits sideways and leans back. But each inch of overhang bends a cast slab more: beyond \
              about 12 in it needs brackets, and the rules of the slab say so. A caution here and a pass there may be the right choice.",
        reckoned: "18, 15 and 12 in at counters 30, 36 and 42 in high (published kitchen planning guidelines), between them in \
                   proportion.",
        example: "A counter at 36 in with 10 in of overhang: 5 in less than the guidelines, a caution.",
    },
    limits: &[&KNEES[0], &KNEES[1], &KNEES[2], &LEAST],
    levers: &["counter.overhang.seating", "levels.counter"],
    outside: &[Outside {
        what: "18, 15 and 12 in at 30, 36 and 42 in, kitchen planning guidelines",
        origin: Origin::Published,
        test: "a_higher_counter_needs_less_depth",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    if seats(subject, answers).is_none() {
        return;
    }
    let height = subject.plan.levels.counter_top;
    let asked = knee_depth(KNEES.map(|k| subject.bound(&k).value), height);
    let least = subject.bound(&LEAST);
    let place = &subject.design().counter.overhang.seating.place;
    let edges = edges(subject.plan);
    if edges.is_empty() {
        answers
            .fail(place, "seats are asked for, and no side is for seats")
            .at_least(&least);
    }
    for edge in edges {
        let face = &subject.plan.faces[edge.face].name;
        let found = format!(
            "the counter passes the {face} by {}, {} above the ground",
            subject.mm(edge.overhang),
            subject.mm(height)
        );
        let hint = format!(
            "an overhang of {} gives the knees their room; look at the slab's checks too",
            subject.mm(asked)
        );
        if edge.overhang >= asked - 1e-6 {
            let limit = format!("at least {}", subject.mm(asked));
            answers
                .pass(place, found)
                .about(face)
                .limit(limit, KNEES[1].source);
        } else if least.is_reached_by(edge.overhang) {
            let limit = format!("at least {}", subject.mm(asked));
            answers
                .caution(place, found)
                .about(face)
                .limit(limit, KNEES[1].source)
                .hint(hint);
        } else {
            answers
                .fail(place, found)
                .about(face)
                .at_least(&least)
                .hint(hint);
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "people-knee";

    #[test]
    fn a_higher_counter_needs_less_depth() {
        // Published: 15 in at 36 in, 12 at 42. The trial island passes its face by 10 in.
        let found = Trial::sound().answers(CODE);
        assert!(
            found
                .iter()
                .all(|f| f.verdict == Verdict::Caution && f.limit == "at least 1'-3\""),
            "{found:#?}"
        );
        let over = |inches: &str| Trial::sound().with("counter.overhang.seating", inches);
        assert_eq!(over("15 in").worst(CODE), Verdict::Pass);
        assert_eq!(over("14-7/8 in").worst(CODE), Verdict::Caution);
        assert_eq!(
            over("12 in").with("levels.counter", "42 in").worst(CODE),
            Verdict::Pass
        );
        assert_eq!(over("7 in").worst(CODE), Verdict::Fail);
    }

    #[test]
    fn unknown_seats_are_not_checked() {
        assert_eq!(
            Trial::sound().without("people.seats").worst(CODE),
            Verdict::NotChecked
        );
    }
}
