//! Whether receptacles are where cords reach them: near enough below the counter, often enough along a wall.

use super::receptacle::{Receptacle, is_own, or_say_none};
use crate::diagnostics::{Place, Verdict};
use crate::plan::Face;
use crate::rules::{About, Answers, Bound, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// How far the middle of a receptacle may be below the top of the counter.
const BELOW: Limit = Limit {
    name: "receptacle-below-counter",
    what: "how far the middle of a receptacle may be below the top of the counter",
    usual: 304.8,
    unit: Unit::Length,
    source: "NEC 2017, 210.52(C)(5) exception, an indoor rule that is often asked for (value from memory)",
};

/// How far a point along a counter wall may be from a receptacle.
const ALONG_WALL: Limit = Limit {
    name: "receptacle-along-wall",
    what: "how far a point along a wall behind the counter may be from a receptacle, measured along the wall",
    usual: 609.6,
    unit: Unit::Length,
    source: "NEC 2017, 210.52(C)(1), an indoor rule that is often asked for",
};

pub(super) static RECEPTACLE_POSITION: Rule = Rule {
    code: "power-receptacle-position",
    family: Family::Services,
    title: "Receptacles are near enough to the counter that cords need not hang",
    about: About {
        checks: "The middle of each receptacle is at most `receptacle-below-counter` below the top of the counter, and no point \
                 along a side against a wall is more than `receptacle-along-wall` from a receptacle. Both are indoor rules that \
                 inspectors often ask for, so a miss is a caution; where the file sets the limit itself, it fails.",
        why: "A cord that is too short is lengthened with another one, which lies in the wet; a cord that hangs down is caught by \
              a child or a knee and pulls a hot pot along.",
        reckoned: "Height: top of the counter less the middle of the box. Along a wall: the largest distance from a point of that \
                   side to the nearest receptacle, both measured along the wall. The rule that a receptacle is not more than 20 in \
                   above the counter (NEC 210.52(C)) is kept by every box in a face, since faces end below the counter; \
                   receptacles in the wall of a house are not in the file.",
        example: "Counter at 36 in, box from 20 to 24-1/2 in: its middle is 13-3/4 in below, more than 12 in: a caution. With its \
                  lower edge at 22 in it is 11-3/4 in below: it passes.",
    },
    limits: &[&BELOW, &ALONG_WALL],
    levers: &["openings[].sill"],
    outside: &[
        Outside {
            what: "12 in below an indoor counter, NEC 210.52(C)(5) exception",
            origin: Origin::Memory,
            test: "a_receptacle_far_below_the_counter_is_a_caution",
        },
        Outside {
            what: "24 in along a counter wall, NEC 210.52(C)(1)",
            origin: Origin::Published,
            test: "a_counter_wall_wants_one_every_four_feet",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let receptacles = or_say_none(subject, answers);
    let bound = subject.bound(&BELOW);
    for r in &receptacles {
        let below = subject.plan.levels.counter_top - r.middle().z;
        let found = format!(
            "the middle of '{}' is {} below the top of the counter",
            r.opening.name,
            subject.mm(below)
        );
        let place = if r.opening.sill.place.is_known() {
            &r.opening.sill.place
        } else {
            &r.opening.place
        };
        let verdict = by_indoor_rule(bound.allows(below), &bound, &BELOW);
        let answer = answers
            .say(verdict, place, found)
            .about(&r.opening.name)
            .at_most(&bound);
        if verdict != Verdict::Pass {
            answer.hint("raise it; ask the inspector whether the indoor rule is held to outdoors");
        }
    }
    if !receptacles.is_empty() {
        let bound = subject.bound(&ALONG_WALL);
        for face in subject.plan.faces.iter().filter(|f| f.wall) {
            along_wall(subject, answers, face, &receptacles, &bound);
        }
    }
}

fn by_indoor_rule(holds: bool, bound: &Bound, limit: &Limit) -> Verdict {
    match (holds, is_own(bound, limit)) {
        (true, _) => Verdict::Pass,
        (false, true) => Verdict::Fail,
        (false, false) => Verdict::Caution,
    }
}

/// The point of a wall that is farthest from every receptacle.
fn along_wall(
    subject: &Subject,
    answers: &mut Answers,
    face: &Face,
    receptacles: &[Receptacle],
    bound: &Bound,
) {
    let s = |r: &Receptacle| {
        (r.middle().xy() - face.start)
            .dot(&face.along)
            .clamp(0.0, face.length)
    };
    let mut at: Vec<f64> = receptacles.iter().map(s).collect();
    at.sort_by(f64::total_cmp);
    let (Some(first), Some(last)) = (at.first(), at.last()) else {
        return;
    };
    let inner = at.windows(2).map(|w| (w[1] - w[0]) / 2.0);
    let farthest = inner.fold(first.max(face.length - last), f64::max);
    let found = format!(
        "along the {} a point is {} from the nearest receptacle in the file",
        face.name,
        subject.mm(farthest)
    );
    let verdict = by_indoor_rule(bound.allows(farthest), bound, &ALONG_WALL);
    let answer = answers
        .say(verdict, &Place::default(), found)
        .about(&face.name)
        .at_most(bound);
    if verdict != Verdict::Pass {
        answer.hint(
            "add receptacles; those in the wall of the house, which are not in the file, count too",
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    // `not checked` cannot occur: every design has the height of its receptacles and the length of its walls.
    const CODE: &str = "power-receptacle-position";

    #[test]
    fn a_receptacle_far_below_the_counter_is_a_caution() {
        // NEC 210.52(C)(5) exception (value from memory): at most 12 in below. Counter 36, box 4-1/2 high: with its sill at
        // 21-3/4 the middle is 12 below, at 21-1/2 it is 12-1/4 below.
        let at = |sill: &str| Trial::sound().with("openings[receptacle].sill", sill);
        assert_eq!(
            at("21-3/4 in").about(CODE, "receptacle").verdict,
            Verdict::Pass
        );
        let low = at("21-1/2 in").about(CODE, "receptacle");
        assert_eq!(low.verdict, Verdict::Caution);
        assert!(low.found.contains("1'-0 1/4\""), "{}", low.found);
        let own = "[{name: receptacle-below-counter, value: 12 in, source: the inspector}]";
        assert_eq!(
            at("21-1/2 in").with("limits", own).worst(CODE),
            Verdict::Fail
        );
        assert_eq!(
            Trial::sound().without("openings").worst(CODE),
            Verdict::Pass
        );
    }

    #[test]
    fn a_counter_wall_wants_one_every_four_feet() {
        // NEC 210.52(C)(1): no point along the wall more than 24 in from one. A wall of 10 ft with one at its end has
        // points far from it.
        let wall = Trial::sound()
            .without("people.seats")
            .with("runs[cook].walls", "[left]")
            .with("openings[gas hatch].side", "seating")
            .with("openings[gas hatch].at", "{from: left, distance: 50 in}")
            .with("openings[receptacle].run", "cook")
            .with("openings[receptacle].side", "seating")
            .with("openings[receptacle].sill", "22 in");
        let at = |left: &str| {
            let at = format!("{{from: left, distance: {left}}}");
            wall.clone().with("openings[receptacle].at", &at)
        };
        // The wall is 30 in deep at u = 0, so a receptacle on the seating side is at its far corner: 30 in from the
        // cook's corner, too far.
        let found = at("8 in").about(CODE, "cook run, left end");
        assert_eq!(found.verdict, Verdict::Caution);
        assert!(found.found.contains("2'-6\""), "{}", found.found);
        let two_foot = wall
            .with("runs[cook].depth", "24 in")
            .with("runs[bar].depth", "30 in");
        assert_eq!(
            two_foot
                .without("appliances")
                .with("openings", "[{name: receptacle, kind: receptacle, run: cook, side: seating, at: {from: left, distance: 8 in}, width: 2-3/4 in, height: 4-1/2 in, sill: 22 in}]")
                .about(CODE, "cook run, left end")
                .verdict,
            Verdict::Pass
        );
    }
}
