//! Whether receptacles are out of reach of knees and feet.

use super::receptacle::{Receptacle, or_say_none};
use crate::rules::{About, Answers, Bound, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// A receptacle stands under an overhang of at most this much.
const UNDER: Limit = Limit {
    name: "receptacle-overhang",
    what: "the overhang under which a receptacle may stand",
    usual: 152.4,
    unit: Unit::Length,
    source: "NEC 2017, 210.52(C)(5) exception, an indoor rule that is often asked for (value from memory)",
};

pub(super) static RECEPTACLE_SEAT: Rule = Rule {
    code: "power-receptacle-seat",
    family: Family::Services,
    title: "No receptacle where knees and feet strike",
    about: About {
        checks: "A receptacle under an overhang of more than `receptacle-overhang` fails where people sit at that island, is \
                 cautioned where nobody does, and is not checked where the file does not say. Under a smaller overhang it passes.",
        why: "An overhang that deep is where stools go: knees break the cover, feet pull the plug, and the cord hangs in between.",
        reckoned: "The overhang of the counter past the finished face on the receptacle's side, against the limit. A face below the \
                   counter has no height at which neither knees nor feet come.",
        example: "A receptacle in the seating face below an overhang of 10 in with `seats: 4` fails; on the run's end below 2 in it \
                  passes.",
    },
    limits: &[&UNDER],
    levers: &[
        "counter.overhang.seating",
        "counter.overhang.working",
        "counter.overhang.left",
        "counter.overhang.right",
    ],
    outside: &[Outside {
        what: "not where the counter extends more than 6 in beyond its base, NEC 2017, 210.52(C)(5) exception",
        origin: Origin::Memory,
        test: "no_receptacle_below_a_seating_overhang",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let bound = subject.bound(&UNDER);
    for r in or_say_none(subject, answers) {
        one(subject, answers, &r, &bound);
    }
}

fn one(subject: &Subject, answers: &mut Answers, r: &Receptacle, bound: &Bound) {
    let overhang = subject.design().counter.overhang.of(r.face.side).mm();
    let name = &r.opening.name;
    let place = &r.opening.place;
    let found = format!("'{name}' is below an overhang of {}", subject.mm(overhang));
    let people = &subject.design().people;
    let seats = people.seats.as_ref().map(|s| s.value);
    match seats {
        _ if bound.allows(overhang) => answers.pass(place, found),
        None => answers.missing(
            &people.place,
            "seats",
            format!("{found}; whether people sit there is not known"),
        ),
        Some(0) => answers
            .caution(place, format!("{found}, where cords hang"))
            .hint("move it to a side with less overhang"),
        Some(_) => answers
            .fail(place, format!("{found}, where knees and feet strike it"))
            .hint("move it to the working side or to an end of the run"),
    }
    .about(name)
    .at_most(bound);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "power-receptacle-seat";

    #[test]
    fn no_receptacle_below_a_seating_overhang() {
        // NEC 210.52(C)(5) exception (value from memory): not under more than 6 in. The trial's seating side has 10 in.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let below = Trial::sound()
            .with("openings[receptacle].side", "seating")
            .with("openings[receptacle].at", "{from: right, distance: 6 in}");
        assert_eq!(below.worst(CODE), Verdict::Fail);
        let empty = below.clone().with("people.seats", "0");
        assert_eq!(empty.worst(CODE), Verdict::Caution);
        let unsaid = below.clone().without("people");
        let found = unsaid.about(CODE, "receptacle");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert_eq!(found.hint, "write 'people.seats' in the file");
        let shallow = below.with("counter.overhang.seating", "6 in");
        assert_eq!(shallow.worst(CODE), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("openings").worst(CODE),
            Verdict::Pass
        );
    }
}
