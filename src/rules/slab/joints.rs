//! Whether the slab has joints where it would crack.

use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const TIMES: Limit = Limit {
    name: "joint-spacing",
    what: "length of slab without a crack-control joint, in times its thickness",
    usual: 36.0,
    unit: Unit::Count,
    source: "24 to 36 times the thickness, ACI 360R, value from memory",
};

const LONGEST: Limit = Limit {
    name: "joint-length",
    what: "length of a counter with steel in it without a crack-control joint",
    usual: 2438.4,
    unit: Unit::Length,
    source: "common practice, 8 ft",
};

pub(super) static JOINTS: Rule = Rule {
    code: "slab-joints",
    family: Family::Slab,
    title: "Crack-control joints stand near enough",
    about: About {
        checks: "From each end and joint of a run to the next there is no more slab than `joint-spacing` times the thickness: it passes. With mesh or bars \
                 it may be `joint-length`, with a caution. Beyond it fails.",
        why: "A slab shrinks by a sixteenth of an inch in eight feet; without a joint it chooses where to crack.",
        reckoned: "The longest stretch of each run between its ends and the joints of `counter.joints`, against the limits: 36 × thickness (ACI 360R, from \
                   memory; overhangs at the ends are left out) or, for a counter with steel in it, common practice.",
        example: "A run of 10 ft and 2 in thick with a joint in its middle has stretches of 5 ft: 30 times its thickness, it passes. Without: 10 ft, it fails.",
    },
    limits: &[&TIMES, &LONGEST],
    levers: &["counter.thickness", "runs[].length"],
    outside: &[Outside {
        what: "24 to 36 times the thickness (ACI 360R)",
        origin: Origin::Memory,
        test: "a_long_run_wants_a_joint",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let casting = &design.counter.casting;
    let (times, longest) = (subject.bound(&TIMES), subject.bound(&LONGEST));
    let has_steel = casting.reinforcement.mesh.is_some() || casting.reinforcement.bars.is_some();
    for (i, run) in design.runs.iter().enumerate() {
        let stretch = stretch(subject, i);
        let most = times.value * design.counter.thickness.mm();
        let found = format!(
            "run '{}' has {} of slab without a joint",
            run.name.value,
            subject.mm(stretch)
        );
        let limit = format!("{} × thickness = {}", times.value, subject.mm(most));
        let answer = if stretch <= most * (1.0 + 1e-9) {
            answers
                .pass(&run.length.place, found)
                .limit(limit, times.source.clone())
        } else if has_steel && longest.allows(stretch) {
            answers
                .caution(&run.length.place, found)
                .limit(limit, times.source.clone())
        } else {
            answers.fail(&run.length.place, found).at_most(&longest)
        };
        let hint =
            "saw or form a joint, best at a cutout's corner, and write it under counter.joints";
        answer.about(run.name.value.as_str()).hint(hint);
    }
}

/// The longest stretch of a run between its ends and joints.
pub(super) fn stretch(subject: &Subject, run: usize) -> f64 {
    let length = subject.plan.runs[run].length;
    let joints = subject.design().counter.casting.joints.iter();
    let own = joints
        .filter(|j| j.0 == run)
        .map(|j| j.1.mm().clamp(0.0, length));
    let mut at: Vec<f64> = own.chain([0.0, length]).collect();
    at.sort_by(f64::total_cmp);
    at.windows(2).map(|w| w[1] - w[0]).fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-joints";

    // Nothing it asks can be missing: without joints in the file there are none.
    #[test]
    fn a_long_run_wants_a_joint() {
        // 36 × 2 in = 6 ft. The bar run of 7 ft has none: with mesh a caution. The cook run's 10 ft are halved.
        assert_eq!(Trial::sound().about(CODE, "cook").verdict, Verdict::Pass);
        assert_eq!(Trial::sound().about(CODE, "bar").verdict, Verdict::Caution);
        let none = Trial::sound().without("counter.joints");
        assert_eq!(none.about(CODE, "cook").verdict, Verdict::Fail);
        let plain = Trial::sound().without("counter.reinforcement");
        assert_eq!(plain.about(CODE, "bar").verdict, Verdict::Fail);
        let thick = Trial::sound().with("counter.thickness", "2-1/2 in");
        assert_eq!(thick.about(CODE, "bar").verdict, Verdict::Pass);
    }
}
