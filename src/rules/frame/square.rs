//! Whether the frame stands square.

use super::measured::{measured, name, runs};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const SQUARE: Limit = Limit {
    name: "out-of-square",
    what: "difference of a run's diagonals that is square enough",
    usual: 6.35,
    unit: Unit::Length,
    source: "1/8 to 1/4 in, common practice",
};

const SKEW: Limit = Limit {
    name: "out-of-square-at-most",
    what: "difference of a run's diagonals that is built on all the same",
    usual: 25.4,
    unit: Unit::Length,
    source: "1 in, common practice",
};

pub(super) static SQUARE_RULE: Rule = Rule {
    code: "frame-square",
    family: Family::Frame,
    title: "The frame stands square",
    about: About {
        checks: "By how much the two diagonals of each measured run differ, as fitted by least squares: it passes up to `out-of-square`, is a caution up to `out-of-square-at-most` and fails beyond. It says which \
                 corner to push, in which direction and how far.",
        why: "Boards and tiles are cut square. A frame that is pushed square before the boards go on costs a minute; after that it is kept by them for good.",
        reckoned: "The seating side is pushed along itself by (d1² − d2²) / (2 (a + b)), with the diagonals d1, d2 and the two long sides a, b; the working side stays. Where the corner there joins another run, the working side is pushed the other way instead. What is left after the boards are on is built on as \
                   it stands: counter, forms, boards and template follow the frame as measured.",
        example: "10 ft by 30 in with diagonals of 123-7/8 and 123-1/2 in: the seating side is pushed 3/16 in along itself, from the longer diagonal's end.",
    },
    limits: &[&SQUARE, &SKEW],
    levers: &[],
    outside: &[Outside {
        what: "diagonals equal within 1/8 to 1/4 in are square enough: common practice",
        origin: Origin::Practice,
        test: "diagonals_within_a_quarter_inch_are_square_enough",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let unknown = "whether the frame stands square";
    let Some(both) = measured(subject, answers, unknown) else {
        return;
    };
    let (enough, most) = (subject.bound(&SQUARE), subject.bound(&SKEW));
    for (m, built) in runs(subject, both, answers) {
        let run = name(subject, m);
        if !built.solved {
            let found = format!("run '{run}' has no shape: too few lengths");
            answers.missing(&m.place, "diagonals", found).about(run);
            continue;
        }
        let off = built.out_of_square().abs();
        let found = format!("the diagonals of run '{run}' differ by {}", subject.mm(off));
        let push = built.push;
        let hint = format!(
            "before the boards go on push the {} of run '{run}' {} towards the {}, the {} held",
            push.corner.name(),
            subject.mm(push.by),
            push.towards(),
            push.held()
        );
        let answer = if enough.allows(off) {
            answers.pass(&m.place, found).at_most(&enough)
        } else if most.allows(off) {
            answers.caution(&m.place, found).at_most(&enough)
        } else {
            answers.fail(&m.place, found).at_most(&most)
        };
        answer.about(run).hint(hint);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-square";

    fn diagonals(one: &str, other: &str) -> Trial {
        let run = format!(
            "{{run: cook, working: 10 ft, seating: 10 ft, left: 30 in, right: 30 in, diagonals: {{from_working_left: {one}, from_working_right: {other}}}}}"
        );
        Trial::sound().with("as_built", &format!("{{runs: [{run}]}}"))
    }

    #[test]
    fn diagonals_within_a_quarter_inch_are_square_enough() {
        let verdict = |one, other| diagonals(one, other).about(CODE, "cook").verdict;
        assert_eq!(verdict("123-11/16 in", "123-11/16 in"), Verdict::Pass);
        assert_eq!(verdict("123-25/32 in", "123-19/32 in"), Verdict::Pass);
        assert_eq!(verdict("123-7/8 in", "123-1/2 in"), Verdict::Caution);
        assert_eq!(verdict("124-5/16 in", "123-1/16 in"), Verdict::Fail);
    }

    #[test]
    fn the_corner_to_push_is_at_the_end_of_the_longer_diagonal() {
        // The cook run's right corners join the bar run. 3/8 in between 123.875 and 123.5: (123.875² - 123.5²) / (2 · 240) = .1933 in, 3/16.
        let found = diagonals("123-7/8 in", "123-1/2 in").about(CODE, "cook");
        assert!(
            found
                .hint
                .contains("working-side left corner of run 'cook' 3/16\" towards the right, the seating side held"),
            "{found:?}"
        );
        let found = diagonals("123-1/2 in", "123-7/8 in").about(CODE, "cook");
        assert!(
            found
                .hint
                .contains("seating-side left corner of run 'cook' 3/16\" towards the right"),
            "{found:?}"
        );
    }

    #[test]
    fn an_unmeasured_frame_is_not_checked() {
        assert_eq!(
            Trial::sound().without("as_built").worst(CODE),
            Verdict::NotChecked
        );
    }
}
