//! Whether every drawer comes out as far as it should without striking anything.

use super::door_swing::CLEAR;
use super::opens::{drawers, in_the_way, judge, leaves, together};
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static DRAWER_TRAVEL: Rule = Rule {
    code: "fit-drawer-travel",
    family: Family::Fit,
    title: "Every drawer comes out all the way",
    about: About {
        checks: "Each drawer comes out by its travel without striking the counter's edge, another face of the island or an object \
                 of the site: it fails where it strikes. Less than `opening-clear` beside or before it is a caution, and so is a \
                 drawer that cannot be open at the same time as another one or as a leaf.",
        why: "A drawer beside an inside corner opens as far as the other run's face and no farther.",
        reckoned: "In plan, a drawer sweeps a box as wide as its opening and as deep as `travel` (its body's depth where the file \
                   does not say), from the finished face.",
        example: "A drawer 20 in deep, 16 in in front of the next run's face in a U: it strikes 4 in before it is open.",
    },
    limits: &[&CLEAR],
    levers: &["openings[].at", "openings[].travel", "openings[].width"],
    outside: &[Outside {
        what: "a drawer that comes out 20 in needs 20 in, and 1-1/2 in for a hand",
        origin: Origin::Practice,
        test: "a_drawer_needs_its_travel_and_room_for_a_hand",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let (leaves, drawers) = (leaves(subject.plan), drawers(subject.plan));
    if drawers.is_empty() {
        answers.nothing("there is no drawer");
        return;
    }
    let around = in_the_way(subject, answers);
    let clear = subject.bound(&CLEAR);
    for (i, drawer) in drawers.iter().enumerate() {
        judge(subject, answers, drawer, &around, &clear);
        together(answers, drawer, &drawers[i + 1..]);
        together(answers, drawer, &leaves);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;
    use proptest::prelude::*;

    const CODE: &str = "fit-drawer-travel";

    /// The trial island with the sink's doors out of the corner.
    fn apart() -> Trial {
        Trial::sound().with("openings[sink doors].at", "{from: right, distance: 18 in}")
    }

    /// A stake in front of the drawers, so far in front of the finished face (at y = −7/8 in).
    fn stake(out: f64) -> Trial {
        let y = -0.875 - out - 1.0;
        apart().with("site.objects", &format!(
            "[{{name: stake, kind: post, at: {{x: 77 in, y: {y} in, z: 0 in}}, size: {{x: 1 in, y: 1 in, z: 40 in}}}}]"
        ))
    }

    #[test]
    fn a_drawer_needs_its_travel_and_room_for_a_hand() {
        assert_eq!(apart().worst(CODE), Verdict::Pass);
        assert_eq!(stake(22.0).worst(CODE), Verdict::Pass);
        assert_eq!(stake(21.0).worst(CODE), Verdict::Caution);
        let struck = stake(19.0).about(CODE, "drawers");
        assert_eq!(struck.verdict, Verdict::Fail);
        assert!(
            struck.found.contains("the post 'stake'"),
            "{}",
            struck.found
        );
    }

    #[test]
    fn a_drawer_across_a_corner_from_a_door_is_a_caution() {
        // The drawers come out to y = −20-7/8 in, from x = 69-1/2 to 84-1/2. The near leaf of the sink's doors is hinged at
        // y = −15, x = 89-1/8, and sweeps 12 in: to x = 77-1/8, across them.
        let found = Trial::sound().answers(CODE);
        let both = found.iter().find(|f| f.found.contains("'sink doors'"));
        assert_eq!(
            both.map(|f| f.verdict),
            Some(Verdict::Caution),
            "{found:#?}"
        );
    }

    #[test]
    fn an_unknown_site_is_not_checked_and_no_drawer_passes() {
        assert_eq!(
            apart().without("site.objects").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(12))]
        #[test]
        fn more_room_is_never_worse(out in 10.0..30.0_f64, more in 0.0..10.0_f64) {
            prop_assert!(stake(out + more).worst(CODE) <= stake(out).worst(CODE));
        }
    }
}
