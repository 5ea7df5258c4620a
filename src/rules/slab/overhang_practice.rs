//! Whether overhangs and their brackets keep to what builders do.

use super::overhang::{Overhang, or_say_none};
use super::overhang_bending::BRACKETS;
use crate::design::{Brackets, Placed, Side};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const WITHOUT: Limit = Limit {
    name: "overhang-without-brackets",
    what: "how far a cast counter passes the finished face without brackets",
    usual: 304.8,
    unit: Unit::Length,
    source: "common practice, at most 12 in",
};

const APART: Limit = Limit {
    name: "bracket-spacing",
    what: "from one bracket to the next",
    usual: BRACKETS,
    unit: Unit::Length,
    source: "common practice, 24 in",
};

const BEYOND: Limit = Limit {
    name: "beyond-brackets",
    what: "how far the counter passes the ends of its brackets",
    usual: 152.4,
    unit: Unit::Length,
    source: "common practice, 6 in",
};

pub(super) static OVERHANG_PRACTICE: Rule = Rule {
    code: "slab-overhang-practice",
    family: Family::Slab,
    title: "Overhangs keep to what is usual, and brackets stand near enough",
    about: About {
        checks: "An overhang without brackets passes the finished face by no more than `overhang-without-brackets`. Where brackets stand, they \
                 are no farther apart than `bracket-spacing` and leave no more than `beyond-brackets` of the counter free. It \
                 fails beyond a limit; without brackets it cautions in the last tenth of it.",
        why: "Beyond a foot a cast counter becomes a diving board: people push themselves up on it, and the whole island wants to tip.",
        reckoned: "Lengths against limits that builders keep; all three are common practice. What the concrete itself bears is another \
                   question: `slab-overhang-bending`.",
        example: "14 in without brackets fails; with brackets 24 in apart that reach 10 in, 4 in are left free: it passes.",
    },
    limits: &[&WITHOUT, &APART, &BEYOND],
    levers: &[
        "counter.overhang.seating",
        "counter.overhang.working",
        "counter.overhang.left",
        "counter.overhang.right",
        "counter.brackets.reach",
        "counter.brackets.spacing",
    ],
    outside: &[Outside {
        what: "12 in without brackets, as builders have it",
        origin: Origin::Practice,
        test: "twelve_inches_and_not_more",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let all = or_say_none(subject, answers);
    let brackets = subject.design().counter.casting.brackets.as_ref();
    for overhang in &all {
        match brackets.filter(|_| overhang.side == Side::Seating) {
            Some(brackets) => with_brackets(subject, answers, overhang, brackets),
            None => without(subject, answers, overhang),
        }
    }
}

fn without(subject: &Subject, answers: &mut Answers, overhang: &Overhang) {
    let most = subject.bound(&WITHOUT);
    let out = overhang.given.mm();
    let found = format!(
        "{}: the counter passes the finished face by {} without brackets",
        overhang.name,
        subject.mm(out)
    );
    let place = &overhang.given.place;
    let answer = if out <= 0.9 * most.value {
        answers.pass(place, found)
    } else if most.allows(out) {
        answers.caution(place, found)
    } else {
        answers.fail(place, found)
    };
    answer
        .about(overhang.name)
        .at_most(&most)
        .hint("a smaller overhang, or brackets");
}

fn with_brackets(
    subject: &Subject,
    answers: &mut Answers,
    overhang: &Overhang,
    brackets: &Placed<Brackets>,
) {
    let (apart, beyond) = (subject.bound(&APART), subject.bound(&BEYOND));
    let free = (overhang.given.mm() - brackets.reach.mm()).max(0.0);
    let found = format!(
        "{}: the counter passes the ends of its brackets by {}",
        overhang.name,
        subject.mm(free)
    );
    answers
        .judge(beyond.allows(free), &brackets.reach.place, found)
        .about(overhang.name)
        .at_most(&beyond)
        .hint("longer brackets, or a smaller overhang");
    let spacing = brackets.spacing.mm();
    let found = format!(
        "{}: brackets stand {} apart",
        overhang.name,
        subject.mm(spacing)
    );
    answers
        .judge(apart.allows(spacing), &brackets.spacing.place, found)
        .about(overhang.name)
        .at_most(&apart)
        .hint("more brackets, nearer to each other");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-overhang-practice";

    // Nothing it asks can be missing: an overhang has its usual value.
    #[test]
    fn twelve_inches_and_not_more() {
        let plain = |out: &str| {
            let trial = Trial::sound().without("counter.brackets");
            trial.with("counter.overhang.seating", out).worst(CODE)
        };
        assert_eq!(plain("10 in"), Verdict::Pass);
        assert_eq!(plain("12 in"), Verdict::Caution);
        assert_eq!(plain("12-1/2 in"), Verdict::Fail);
        let braced = |spacing: &str, reach: &str| {
            let brackets = format!("{{spacing: {spacing}, reach: {reach}}}");
            let trial = Trial::sound().with("counter.overhang.seating", "14 in");
            trial.with("counter.brackets", &brackets).worst(CODE)
        };
        assert_eq!(braced("24 in", "10 in"), Verdict::Pass);
        assert_eq!(braced("24 in", "7 in"), Verdict::Fail);
        assert_eq!(braced("30 in", "10 in"), Verdict::Fail);
    }
}
