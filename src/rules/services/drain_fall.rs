//! Whether the drains of sinks and ice wells fall enough.

use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const SMALL: Limit = Limit {
    name: "drain-fall",
    what: "fall of a drain of 2-1/2 in and smaller",
    usual: 1.0 / 48.0,
    unit: Unit::Slope,
    source: "1/4 in per ft, IPC 2018, Table 704.1, value from memory",
};

const LARGE: Limit = Limit {
    name: "drain-fall-large",
    what: "fall of a drain of 3 in and larger",
    usual: 1.0 / 96.0,
    unit: Unit::Slope,
    source: "1/8 in per ft, IPC 2018, Table 704.1, value from memory",
};

pub(super) static DRAIN_FALL: Rule = Rule {
    code: "water-drain-fall",
    family: Family::Services,
    title: "The drains of sink and ice well fall enough",
    about: About {
        checks: "Each sink's and ice well's drain falls by `drain-fall`, or from 3 in on by `drain-fall-large`. It cautions where it falls more than 1 in 4 without standing upright, since water then outruns what it carries, and fails \
                 below the limit. What the file does not say is not checked.",
        why: "Water that stands in a drain freezes in it, and stinks before that.",
        reckoned: "Fall / length of `drain` against 1/4 in per ft for 2-1/2 in and smaller, 1/8 in per ft from 3 in on (IPC 2018, Table 704.1, from memory).",
        example: "1 in over 3 ft is 1/3 in per ft: it passes. 1/2 in over 3 ft is 1/6: it fails.",
    },
    limits: &[&SMALL, &LARGE],
    levers: &["appliances[].drain.fall"],
    outside: &[Outside {
        what: "1/4 in per ft up to 2-1/2 in, 1/8 from 3 in on (IPC Table 704.1)",
        origin: Origin::Memory,
        test: "a_quarter_inch_per_foot",
    }],
    check,
};

/// From this size on a drain may fall less: 3 in nominal, mm.
const THREE_INCHES: f64 = 76.2;

fn check(subject: &Subject, answers: &mut Answers) {
    let wet = || {
        subject
            .design()
            .appliances
            .iter()
            .filter(|a| a.is_sink() || a.holds_ice())
    };
    if wet().next().is_none() {
        answers.nothing("there is no sink and no ice well");
    }
    for a in wet() {
        let Some(drain) = &a.rating.drain else {
            answers
                .missing(
                    &a.place,
                    "drain",
                    format!("how the water of '{}' drains", a.name),
                )
                .about(&a.name);
            continue;
        };
        let limit = if drain.size.mm() < THREE_INCHES - 1.0 {
            &SMALL
        } else {
            &LARGE
        };
        let least = subject.bound(limit);
        let fall = drain.fall.mm() / drain.length.mm().max(1e-9);
        let found = format!(
            "the drain of '{}' falls {}",
            a.name,
            subject.spell(Unit::Slope, fall)
        );
        let place = &drain.fall.place;
        let answer = if !least.is_reached_by(fall) {
            let needed = subject.mm(least.value * drain.length.mm());
            answers.fail(place, found).hint(format!(
                "let it fall by {needed} over its length, or shorten it"
            ))
        } else if (0.25..1.0).contains(&fall) {
            answers
                .caution(place, found)
                .hint("lead it with the usual fall and drop it upright at its end")
        } else {
            answers.pass(place, found)
        };
        answer.about(&a.name).at_least(&least);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "water-drain-fall";

    #[test]
    fn a_quarter_inch_per_foot() {
        let with = |drain: &str| {
            Trial::sound()
                .with("appliances[sink].drain", drain)
                .about(CODE, "sink")
                .verdict
        };
        assert_eq!(
            with("{size: 1-1/2 in, length: 4 ft, fall: 1 in}"),
            Verdict::Pass
        );
        assert_eq!(
            with("{size: 1-1/2 in, length: 4 ft, fall: 15/16 in}"),
            Verdict::Fail
        );
        assert_eq!(
            with("{size: 3 in, length: 4 ft, fall: 1/2 in}"),
            Verdict::Pass
        );
        assert_eq!(
            with("{size: 1-1/2 in, length: 4 ft, fall: 14 in}"),
            Verdict::Caution
        );
        let unknown = Trial::sound().without("appliances[sink].drain");
        assert_eq!(unknown.about(CODE, "sink").verdict, Verdict::NotChecked);
    }
}
