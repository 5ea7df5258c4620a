//! Whether there is counter beside each cooking appliance and sink to set things down on.

use crate::design::Appliance;
use crate::plan::{Cutout, Plan};
use crate::rules::around::{counter_edge, shared};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const fn landing(
    name: &'static str,
    what: &'static str,
    usual: f64,
    source: &'static str,
) -> Limit {
    Limit {
        name,
        what,
        usual,
        unit: Unit::Length,
        source,
    }
}

/// On the side with less.
const SHORT: Limit = landing(
    "landing-short",
    "free counter on the shorter side of a cooking appliance or a sink",
    304.8,
    "kitchen planning guidelines, value from memory",
);
/// On the side with more.
const LONG: Limit = landing(
    "landing-long",
    "free counter on the longer side of a cooking appliance or a sink",
    381.0,
    "kitchen planning guidelines, value from memory",
);
/// Beside a grill.
const GRILL: Limit = landing(
    "landing-grill",
    "free counter on the longer side of a grill",
    609.6,
    "common practice",
);

pub(super) static LANDING: Rule = Rule {
    code: "people-landing",
    family: Family::People,
    title: "There is counter beside what one cooks and washes at",
    about: About {
        checks: "Beside each cooking appliance and each sink, free counter of `landing-long` (`landing-grill` beside a grill) on one side and \
                 `landing-short` on the other. Less is a caution; where neither side has `landing-short`, it fails.",
        why: "A hot pan in the hand needs a place to go at once, on the side of the free hand.",
        reckoned: "Along the run, from the cutout to the next cutout that is level with it or to the end of the counter; a corner \
                   counts as far as the run's own frame.",
        example: "A grill with 16 in to its left and 8 in to the ice well at its right: a caution for both sides.",
    },
    limits: &[&SHORT, &LONG, &GRILL],
    levers: &[
        "appliances[].at",
        "runs[].length",
        "counter.overhang.left",
        "counter.overhang.right",
    ],
    outside: &[Outside {
        what: "12 in on one side and 15 in on the other of a cooking surface, planning guidelines",
        origin: Origin::Memory,
        test: "twelve_and_fifteen_inches_serve_a_burner",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let mut asked = false;
    for cutout in &subject.plan.cutouts {
        let Some(a) = subject.design().appliances.get(cutout.appliance) else {
            continue;
        };
        if a.cooks() || a.is_sink() {
            asked = true;
            one(subject, answers, a, cutout);
        }
    }
    if !asked {
        answers.nothing("there is nothing to cook or wash at");
    }
}

fn one(subject: &Subject, answers: &mut Answers, a: &Appliance, cutout: &Cutout) {
    let (left, right) = beside(subject.plan, cutout);
    let (less, more) = (left.min(right), left.max(right));
    let short = subject.bound(&SHORT);
    let grill = a.cooks() && a.kind.to_lowercase().contains("grill");
    let long = subject.bound(if grill { &GRILL } else { &LONG });
    let found = format!(
        "beside '{}' {} of counter is free to the left and {} to the right",
        a.name,
        subject.mm(left),
        subject.mm(right)
    );
    let limit = format!(
        "at least {} on one side and {} on the other",
        long.spell(),
        short.spell()
    );
    let holds = short.is_reached_by(less) && long.is_reached_by(more);
    let place = a.station.place.or(&a.place);
    let answer = if holds {
        answers.pass(place, found)
    } else if short.is_reached_by(more) {
        answers.caution(place, found)
    } else {
        answers.fail(place, found)
    };
    let answer = answer.about(&a.name).limit(limit, long.source);
    if !holds {
        answer.hint("move it, or make the run longer");
    }
}

/// Free counter to the left and right of a cutout, along its run.
fn beside(plan: &Plan, cutout: &Cutout) -> (f64, f64) {
    let (first, last) = ends(plan, cutout.run);
    let run = &plan.runs[cutout.run];
    let (mut left, mut right) = (cutout.u0 - first, last - cutout.u1);
    for other in plan
        .cutouts
        .iter()
        .filter(|o| o.appliance != cutout.appliance)
    {
        let theirs = &plan.runs[other.run];
        let (a, b) = (
            theirs.point(other.u0, other.v0),
            theirs.point(other.u1, other.v1),
        );
        let (a, b) = (run.local(a), run.local(b));
        let (low, high) = (a.inf(&b), a.sup(&b));
        if shared((low.y, high.y), (cutout.v0, cutout.v1)) <= 1e-6 {
            continue;
        }
        if high.x <= cutout.u0 + 1e-6 {
            left = left.min(cutout.u0 - high.x);
        } else if low.x >= cutout.u1 - 1e-6 {
            right = right.min(low.x - cutout.u1);
        }
    }
    (left.max(0.0), right.max(0.0))
}

/// Where the counter of a run begins and ends along it; at a corner its own frame does.
fn ends(plan: &Plan, run: usize) -> (f64, f64) {
    let edge = |side| {
        let face = plan.faces.iter().find(|f| f.run == run && f.side == side);
        face.map_or(0.0, |f| counter_edge(plan, f))
    };
    let length = plan.runs.get(run).map_or(0.0, |r| r.length);
    (
        -edge(crate::design::Side::Left),
        length + edge(crate::design::Side::Right),
    )
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;
    use proptest::prelude::*;

    const CODE: &str = "people-landing";

    // Sizes are always known, so nothing is left unchecked.

    /// A burner 12 in wide, its middle so far from the left end of the cook run.
    fn burner(at: &str) -> Trial {
        let burner = format!(
            "[{{name: burner, kind: side burner, run: cook, at: {{from: left, distance: {at}}}, cutout: {{width: 12 in, depth: 16 in}}, body: {{height: 5 in}}, front: {{closed: {{setback: 6 in}}}}}}]"
        );
        Trial::bare().with("appliances", &burner)
    }

    #[test]
    fn twelve_and_fifteen_inches_serve_a_burner() {
        // Planning guidelines from memory. The counter begins 2-7/8 in left of the frame: with its middle at 15-1/8 in the
        // burner has 12 in to the left.
        assert_eq!(burner("15-1/8 in").worst(CODE), Verdict::Pass);
        assert_eq!(burner("15 in").worst(CODE), Verdict::Caution);
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
    }

    #[test]
    fn the_next_cutout_ends_the_landing() {
        // The grill ends at 43 in and the ice well begins at 51: 8 in; to the left 13 + 2-7/8.
        let grill = Trial::sound().about(CODE, "grill");
        assert_eq!(grill.verdict, Verdict::Caution);
        assert!(
            grill
                .found
                .contains("1'-3 7/8\" of counter is free to the left and 8\""),
            "{}",
            grill.found
        );
        let boxed =
            Trial::sound().with("appliances[grill].at", "{from: left, distance: 23-3/4 in}");
        let boxed = boxed.with("appliances[ice well].at", "{from: left, distance: 48 in}");
        // 8-3/4 + 2-7/8 = 11-5/8 to the left, 41 − 38-3/4 to the right.
        assert_eq!(boxed.about(CODE, "grill").verdict, Verdict::Fail);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(12))]
        #[test]
        fn a_longer_run_is_never_worse(more in 0_u32..60) {
            let longer = format!("{} in", 120 + more);
            let trial = burner("15 in").with("runs[cook].length", &longer);
            prop_assert!(trial.worst(CODE) <= burner("15 in").worst(CODE));
        }
    }
}
