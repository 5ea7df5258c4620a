//! Whether the frame's top is level.

use super::measured::measured;
use crate::design::FrameCorner;
use crate::plan::Plan;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::standing::raises;
use crate::units::Unit;

const LEVEL: Limit = Limit {
    name: "out-of-level",
    what: "difference in height of the frame's corners that is level enough",
    usual: 3.175,
    unit: Unit::Length,
    source: "1/8 in, common practice",
};

const SLOPE: Limit = Limit {
    name: "out-of-level-at-most",
    what: "difference in height of the frame's corners that the slab takes up",
    usual: 9.525,
    unit: Unit::Length,
    source: "3/8 in, common practice",
};

pub(super) static LEVEL_RULE: Rule = Rule {
    code: "frame-level",
    family: Family::Frame,
    title: "The frame's top is level",
    about: About {
        checks: "Heights of the frame's corners from one mark: it passes where the highest and the lowest differ by no more than `out-of-level`, is a caution up to `out-of-level-at-most`, and fails beyond. It says which \
                 corner to raise and by how much.",
        why: "The slab is cast on the frame. What the frame falls, the slab is thicker at one end and thinner at the other, or the counter falls with it and water runs to the wrong side.",
        reckoned: "Each corner is raised to the highest one: nothing is let down, for shims only add.",
        example: "Corners at 34, 34, 33-7/8 and 33-3/4 in over the mark: two are raised, by 1/8 and 1/4 in.",
    },
    limits: &[&LEVEL, &SLOPE],
    levers: &[],
    outside: &[Outside {
        what: "a frame level within 1/8 in is level enough: common practice",
        origin: Origin::Practice,
        test: "a_frame_within_an_eighth_is_level_enough",
    }],
    check,
};

fn corner_words(plan: &Plan, run: usize, corner: FrameCorner) -> String {
    format!(
        "the {} of run '{}'",
        corner.name(),
        plan.design.runs[run].name.value
    )
}

fn check(subject: &Subject, answers: &mut Answers) {
    let unknown = "whether the frame's top is level";
    let Some((as_built, _)) = measured(subject, answers, unknown) else {
        return;
    };
    let corners = raises(subject.plan);
    let place = as_built.runs.first().map_or(&as_built.place, |m| &m.place);
    if corners.len() < 3 {
        answers.missing(
            place,
            "heights",
            "how high the corners of the frame stand: three or more are needed",
        );
        return;
    }
    let (enough, most) = (subject.bound(&LEVEL), subject.bound(&SLOPE));
    let off = corners.iter().map(|c| c.by).fold(0.0, f64::max);
    let found = format!(
        "the corners of the frame's top differ by {} in height",
        subject.mm(off)
    );
    let low = corners.iter().filter(|c| c.by > enough.value / 2.0);
    let low: Vec<String> = low
        .map(|c| {
            format!(
                "{} by {}",
                corner_words(subject.plan, c.run, c.corner),
                subject.mm(c.by)
            )
        })
        .collect();
    let hint = format!("shim under the sleepers: raise {}", low.join(", "));
    let answer = if enough.allows(off) {
        answers.pass(place, found).at_most(&enough)
    } else if most.allows(off) {
        answers.caution(place, found).at_most(&enough)
    } else {
        answers.fail(place, found).at_most(&most)
    };
    answer.hint(hint);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-level";

    fn heights(list: &str) -> Trial {
        Trial::sound().with(
            "as_built",
            &format!("{{runs: [{{run: cook, heights: {{{list}}}}}]}}"),
        )
    }

    #[test]
    fn a_frame_within_an_eighth_is_level_enough() {
        let at = |low: &str| {
            heights(&format!(
                "working_left: 34 in, working_right: 34 in, seating_right: 34 in, seating_left: {low}"
            ))
        };
        assert_eq!(at("34 in").worst(CODE), Verdict::Pass);
        assert_eq!(at("33-7/8 in").worst(CODE), Verdict::Pass);
        assert_eq!(at("33-3/4 in").worst(CODE), Verdict::Caution);
        let found = &at("33-1/2 in").answers(CODE)[0];
        assert_eq!(found.verdict, Verdict::Fail);
        assert!(
            found
                .hint
                .ends_with("raise the seating-side left corner of run 'cook' by 1/2\""),
            "{found:?}"
        );
    }

    #[test]
    fn two_heights_say_too_little() {
        assert_eq!(
            heights("working_left: 34 in, working_right: 34 in").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(
            Trial::sound().without("as_built").worst(CODE),
            Verdict::NotChecked
        );
    }
}
