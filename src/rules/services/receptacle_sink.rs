//! Whether receptacles near a sink are protected and out of its splash.

use super::receptacle::{Receptacle, between, body_of, or_say_none};
use crate::design::Protection;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// Within this distance of a sink a receptacle must have ground-fault protection.
const PROTECTED: Limit = Limit {
    name: "receptacle-sink-protection",
    what: "how near a sink a receptacle must have ground-fault protection",
    usual: 1828.8,
    unit: Unit::Length,
    source: "NEC 2017, 210.8(A)(7): within 6 ft of the bowl's top inside edge, value from memory",
};

/// Nearer than this water falls on a receptacle.
const SPLASH: Limit = Limit {
    name: "receptacle-sink-splash",
    what: "how near a sink's bowl water falls on a receptacle",
    usual: 304.8,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static RECEPTACLE_SINK: Rule = Rule {
    code: "power-receptacle-sink",
    family: Family::Services,
    title: "Receptacles near a sink are protected and stand out of its splash",
    about: About {
        checks: "A receptacle within `receptacle-sink-protection` of a sink has ground-fault protection: it fails without, and is \
                 not checked where the file does not say. One nearer than `receptacle-sink-splash` is cautioned even so: water \
                 falls there. Farther away it passes.",
        why: "Wet hands at a sink and a live plug in reach of them are how people are killed by a current that no fuse notices.",
        reckoned: "The shortest way in a straight line from the box in the face to the bowl below the counter. The straight line is \
                   never longer than the way a cord takes, so it errs on the careful side.",
        example: "A bowl that ends 20 in from the receptacle on the run's end is within 6 ft: with ground-fault protection it \
                  passes, without it fails. A receptacle 10 in beside the bowl is cautioned: move it 2 in on.",
    },
    limits: &[&PROTECTED, &SPLASH],
    levers: &["openings[].at", "appliances[].at"],
    outside: &[
        Outside {
            what: "ground-fault protection within 6 ft of a sink, NEC 2017, 210.8(A)(7)",
            origin: Origin::Memory,
            test: "within_six_feet_of_a_sink_it_is_protected",
        },
        Outside {
            what: "a foot from the bowl, as electricians keep it",
            origin: Origin::Practice,
            test: "water_falls_within_a_foot",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let receptacles = or_say_none(subject, answers);
    if receptacles.is_empty() {
        return;
    }
    let design = subject.design();
    let mut any = false;
    for (i, sink) in design
        .appliances
        .iter()
        .enumerate()
        .filter(|(_, a)| a.is_sink())
    {
        let Some(bowl) = body_of(subject.plan, i) else {
            continue;
        };
        any = true;
        for r in &receptacles {
            one(subject, answers, r, &sink.name, between(&r.bounds, &bowl));
        }
    }
    if !any {
        answers.nothing("there is no sink");
    }
}

fn one(subject: &Subject, answers: &mut Answers, r: &Receptacle, sink: &str, apart: f64) {
    let (protected, splash) = (subject.bound(&PROTECTED), subject.bound(&SPLASH));
    let opening = r.opening;
    let (name, place) = (&opening.name, &opening.place);
    let distance = format!(
        "'{name}' is {} from the bowl of '{sink}'",
        subject.mm(apart)
    );
    let protection = opening.hardware.protection.as_ref().map(|p| p.value);
    let within = protected.allows(apart);
    match protection {
        None if within => answers.missing(
            place,
            "protection",
            format!("{distance}; whether it has ground-fault protection is not known"),
        ),
        Some(Protection::None) if within => answers
            .fail(
                place,
                format!("{distance} and has no ground-fault protection"),
            )
            .limit(
                format!("ground-fault protection within {}", protected.spell()),
                protected.source.clone(),
            )
            .hint("protect it with a ground-fault circuit interrupter; an electrician decides how"),
        _ if splash.value > 0.0 && !splash.is_reached_by(apart) => answers
            .caution(place, format!("{distance}: water falls there"))
            .at_least(&splash)
            .hint("move it away from the sink, or to another side of the run"),
        _ => answers.pass(place, distance).at_least(&splash),
    }
    .about(name);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "power-receptacle-sink";

    #[test]
    fn within_six_feet_of_a_sink_it_is_protected() {
        // NEC 2017, 210.8(A)(7), value from memory: within 6 ft of the bowl. The trial's sink is 27 in from the run's right end, where the receptacle
        // is: well within.
        let sound = Trial::sound();
        assert_eq!(sound.worst(CODE), Verdict::Pass);
        let bare = Trial::sound().with("openings[receptacle].protection", "none");
        assert_eq!(bare.worst(CODE), Verdict::Fail);
        let unsaid = Trial::sound().without("openings[receptacle].protection");
        let found = unsaid.about(CODE, "receptacle");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(found.hint.contains(".protection"), "{}", found.hint);
        // The bowl at the other end of the other run is farther than 6 ft: protection is asked for by another rule.
        let far = bare
            .with("appliances[sink].run", "cook")
            .with("appliances[ice well].run", "bar")
            .with("appliances[ice well].at", "{from: right, distance: 27 in}")
            .with("appliances[sink].at", "{from: left, distance: 58 in}")
            .with("openings[receptacle].at", "{from: seating, distance: 8 in}")
            .with("openings[sink doors].at", "{from: right, distance: 27 in}");
        assert_eq!(far.worst(CODE), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("openings").worst(CODE),
            Verdict::Pass
        );
    }

    #[test]
    fn water_falls_within_a_foot() {
        // Common practice: a foot. On the seating side, 6-1/2 + 15 in from the working side the cutout ends, its bowl
        // 1/4 in before it: 8-3/4 in to the seating face of a run 30 in deep. Its foot is at 29 in, 4-1/2 above the box: 9.84 in apart.
        let near = |from_right: &str| {
            let at = format!("{{from: right, distance: {from_right}}}");
            Trial::sound()
                .with("openings[receptacle].side", "seating")
                .with("openings[receptacle].at", &at)
        };
        let beside = near("26 in").about(CODE, "receptacle");
        assert_eq!(beside.verdict, Verdict::Caution);
        assert!(beside.found.contains("9 13/16\""), "{}", beside.found);
        assert_eq!(near("6 in").worst(CODE), Verdict::Pass);
    }
}
