//! Whether the strips of slab beside cutouts are wide enough.

use super::rails::or_say_none;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const LEAST: Limit = Limit {
    name: "rail-width",
    what: "width of the strip of slab beside a cutout",
    usual: 76.2,
    unit: Unit::Length,
    source: "common practice, 3 in",
};

pub(super) static RAIL_WIDTH: Rule = Rule {
    code: "slab-rail-width",
    family: Family::Slab,
    title: "The strips of slab beside cutouts are wide enough to be cast and to last",
    about: About {
        checks: "Every strip between a cutout and the edge of the counter, the next cutout or the end of its run is at least `rail-width` wide. It \
                 cautions below one and a half times the limit and fails below it.",
        why: "A strip of two inches cracks when the form is pulled, if the concrete has found its way round mesh and form at all.",
        reckoned: "The width from the cutout to what ends the strip, overhang included, against the limit, which is common practice.",
        example: "A sink 3 in behind the frame's face under an overhang of 2 in leaves 5-7/8 in: it passes.",
    },
    limits: &[&LEAST],
    levers: &[
        "appliances[].front.closed.setback",
        "appliances[].at",
        "runs[].depth",
        "counter.overhang.working",
    ],
    outside: &[Outside {
        what: "3 in of slab beside a cutout, as builders have it",
        origin: Origin::Practice,
        test: "a_narrow_strip_is_told",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let all = or_say_none(subject.plan, answers);
    let least = subject.bound(&LEAST);
    for rail in all {
        let a = &subject.design().appliances[rail.appliance];
        let found = format!(
            "the strip of slab {} '{}' is {} wide",
            rail.beside,
            a.name,
            subject.mm(rail.width)
        );
        let answer = if least.is_reached_by(rail.width / 1.5) {
            answers.pass(&a.place, found)
        } else if least.is_reached_by(rail.width) {
            answers.caution(&a.place, found)
        } else {
            answers.fail(&a.place, found)
        };
        answer
            .about(format!("{} {}", rail.beside, a.name))
            .at_least(&least)
            .hint("move the cutout, or make the run deeper or longer");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-rail-width";

    // Nothing it asks can be missing.
    #[test]
    fn a_narrow_strip_is_told() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // Grill from 13 to 43 in, ice well 14 in wide: its middle at 55-1/2 leaves 5-1/2 in, at 54 leaves 4, at 52 leaves 2.
        let at = |at: &str| {
            let at = format!("{{from: left, distance: {at}}}");
            let trial = Trial::sound().with("appliances[ice well].at", &at);
            trial.about(CODE, "right of grill").verdict
        };
        assert_eq!(at("55-1/2 in"), Verdict::Pass);
        assert_eq!(at("54 in"), Verdict::Caution);
        assert_eq!(at("52 in"), Verdict::Fail);
        let none = Trial::sound()
            .with("appliances", "[]")
            .without("openings")
            .without("gas")
            .without("electricity");
        assert_eq!(none.worst(CODE), Verdict::Pass);
    }
}
