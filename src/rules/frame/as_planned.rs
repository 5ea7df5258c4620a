//! Whether the frame stands where the plan has it.

use super::measured::{measured, name, runs};
use crate::plan::Follow;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const OFF: Limit = Limit {
    name: "off-the-plan",
    what: "how far a corner of the frame stands from its planned place without a word",
    usual: 12.7,
    unit: Unit::Length,
    source: "1/2 in, common practice",
};

pub(super) static AS_PLANNED: Rule = Rule {
    code: "frame-as-planned",
    family: Family::Frame,
    title: "The frame stands as it was planned",
    about: About {
        checks: "How far the corners of each measured run stand from where the plan has them, laid on its own working side: it passes up to `off-the-plan` and is a caution beyond. It fails where a corner is more than 2 in \
                 off, or where the counter cannot be made on the frame as it stands: then everything is drawn as planned.",
        why: "Counter, forms, boards and template follow the frame as measured; steel, appliances and cutouts stay where the plan has them in their run. The farther the two part, the more the fit of appliances must be \
              checked on site.",
        reckoned: "The fitted corners of a run against the rectangle of its length and depth, its left corner and its working side on the measured ones.",
        example: "A run planned 10 ft long whose right end stands at 10'-0 3/8\": its two right corners are 3/8 in off. It passes, and the counter is 3/8 in longer.",
    },
    limits: &[&OFF],
    levers: &[],
    outside: &[Outside {
        what: "light steel framing kept within 1/2 in of its plan: common practice",
        origin: Origin::Practice,
        test: "a_frame_half_an_inch_long_still_passes",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let unknown = "whether the frame stands as it was planned";
    let Some(both) = measured(subject, answers, unknown) else {
        return;
    };
    if let Follow::NoCounter(why) = &both.1.follow {
        let found = format!(
            "the counter cannot be made on the frame as measured: {why}; everything is drawn as planned"
        );
        answers
            .fail(&both.0.place, found)
            .hint("write the lengths and depths of the frame as it stands into `runs`, and move what is in the way");
    }
    let most = subject.bound(&OFF);
    for (m, built) in runs(subject, both, answers) {
        let run = name(subject, m);
        if !built.solved {
            let found = format!("run '{run}' has no shape: it is drawn as planned");
            answers.missing(&m.place, "diagonals", found).about(run);
            continue;
        }
        let off = built.farthest_off();
        let found = format!(
            "a corner of run '{run}' stands up to {} from its planned place",
            subject.mm(off)
        );
        let is_left = matches!(both.1.follow, Follow::TooFar { run, .. } if run == m.run);
        let answer = if is_left {
            let found = format!("{found}, too far to follow: everything is drawn as planned");
            answers
                .fail(&m.place, found)
                .limit("at most 2 in", "common practice")
                .hint("tape it again; if it holds, write the length and depth as built into `runs`")
        } else if most.allows(off) {
            answers.pass(&m.place, found).at_most(&most)
        } else {
            answers
                .caution(&m.place, found)
                .at_most(&most)
                .hint("check the fit of appliances and doors before the boards go on")
        };
        answer.about(run);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-as-planned";

    fn long(length: f64) -> Trial {
        let across = length.hypot(30.0);
        let run = format!(
            "{{run: cook, working: {length} in, seating: {length} in, left: 30 in, right: 30 in, diagonals: {{from_working_left: {across:.4} in, from_working_right: {across:.4} in}}}}"
        );
        Trial::sound().with("as_built", &format!("{{runs: [{run}]}}"))
    }

    #[test]
    fn a_frame_half_an_inch_long_still_passes() {
        let verdict = |length| long(length).about(CODE, "cook").verdict;
        assert_eq!(verdict(120.0), Verdict::Pass);
        assert_eq!(verdict(120.375), Verdict::Pass);
        assert_eq!(verdict(121.0), Verdict::Caution);
        assert_eq!(verdict(123.0), Verdict::Fail);
        assert_eq!(
            Trial::sound().without("as_built").worst(CODE),
            Verdict::NotChecked
        );
    }
}
