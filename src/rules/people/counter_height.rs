//! Whether the counter is as high as those who work and sit at it need.

use super::seating::{SITTING, edges};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const fn height(name: &'static str, what: &'static str, usual: f64, source: &'static str) -> Limit {
    Limit {
        name,
        what,
        usual,
        unit: Unit::Length,
        source,
    }
}

/// From here it is comfortable to cook.
const LOW: Limit = height(
    "work-height-low",
    "the least height at which most people stand and cook at ease",
    863.6,
    "common practice: 36 in is usual, 34 to 38 serves",
);
/// To here.
const HIGH: Limit = height(
    "work-height-high",
    "the greatest height at which most people stand and cook at ease",
    965.2,
    "common practice: 36 in is usual, 34 to 38 serves",
);
/// Below this it is a bench.
const LEAST: Limit = height(
    "work-height-least",
    "the height below which a counter is none",
    711.2,
    "ADA Standards 2010, 902.3: 28 in",
);
/// Above this nobody cooks.
const MOST: Limit = height(
    "work-height-most",
    "the height above which nobody can look into a pan",
    1092.2,
    "common practice: 43 in, a bar of 42 in and its tolerance",
);
/// How far a height may be from one for which stools are sold.
const OFF: Limit = height(
    "seat-height-off",
    "how far the counter may be from 30, 36 or 42 in, for which stools are sold",
    50.8,
    "common practice",
);

pub(super) static COUNTER_HEIGHT: Rule = Rule {
    code: "people-counter-height",
    family: Family::People,
    title: "The counter is as high as those who use it need",
    about: About {
        checks: "The counter's top is between `work-height-low` and `work-height-high` above the ground: outside that is a caution, \
                 outside `work-height-least` and `work-height-most` fails. Where people are to sit, it is near 30, 36 or 42 in, or it is a \
                 caution.",
        why: "Backs ache at a low counter, and stools are sold for three heights. Who uses it decides: the elbow less 4 to 6 in is \
              a good height for work.",
        reckoned: "`levels.counter`, from the highest point of the ground. Cooking 36 in usual: common practice; seating at 30, 36 \
                   and 42 in: published kitchen planning guidelines.",
        example: "A counter at 900 mm is 35-7/16 in: it passes for both.",
    },
    limits: &[&LOW, &HIGH, &LEAST, &MOST, &OFF],
    levers: &["levels.counter"],
    outside: &[Outside {
        what: "36 in to cook at",
        origin: Origin::Practice,
        test: "thirty_six_inches_serve_and_thirty_do_not",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let height = subject.plan.levels.counter_top;
    let place = &subject.design().levels.counter.place;
    let found = format!("the counter is {} above the ground", subject.mm(height));
    let [low, high, least, most] = [&LOW, &HIGH, &LEAST, &MOST].map(|l| subject.bound(l));
    let hint = format!(
        "36 in is usual; between {} and {} serves most people",
        low.spell(),
        high.spell()
    );
    let answer = if !least.is_reached_by(height) {
        answers.fail(place, found).at_least(&least).hint(hint)
    } else if !most.allows(height) {
        answers.fail(place, found).at_most(&most).hint(hint)
    } else if !low.is_reached_by(height) {
        answers.caution(place, found).at_least(&low).hint(hint)
    } else if !high.allows(height) {
        answers.caution(place, found).at_most(&high).hint(hint)
    } else {
        let limit = format!("between {} and {}", low.spell(), high.spell());
        answers.pass(place, found).limit(limit, low.source.clone())
    };
    answer.about("to work at");
    let sit = subject
        .design()
        .people
        .seats
        .as_ref()
        .is_some_and(|s| s.value > 0);
    if sit && !edges(subject.plan).is_empty() {
        to_sit(subject, answers, height);
    }
}

fn to_sit(subject: &Subject, answers: &mut Answers, height: f64) {
    let off = subject.bound(&OFF);
    let nearest = SITTING
        .into_iter()
        .min_by(|a, b| (a - height).abs().total_cmp(&(b - height).abs()))
        .unwrap_or(height);
    let place = &subject.design().levels.counter.place;
    let found = format!(
        "the counter is {} from the {} for which stools are sold",
        subject.mm((height - nearest).abs()),
        subject.mm(nearest)
    );
    if off.allows((height - nearest).abs()) {
        answers.pass(place, found).about("to sit at").at_most(&off);
    } else {
        let hint = format!(
            "make it {}, or have stools that can be set",
            subject.mm(nearest)
        );
        answers
            .caution(place, found)
            .about("to sit at")
            .at_most(&off)
            .hint(hint);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "people-counter-height";

    // The counter always has a height, so nothing is left unchecked; without seats only the work is asked for.

    #[test]
    fn thirty_six_inches_serve_and_thirty_do_not() {
        // Common practice.
        let high = |inches: &str| Trial::bare().with("levels.counter", inches);
        assert_eq!(high("36 in").worst(CODE), Verdict::Pass);
        assert_eq!(high("34 in").worst(CODE), Verdict::Pass);
        assert_eq!(high("32 in").worst(CODE), Verdict::Caution);
        assert_eq!(high("40 in").worst(CODE), Verdict::Caution);
        assert_eq!(high("27 in").worst(CODE), Verdict::Fail);
        assert_eq!(high("44 in").worst(CODE), Verdict::Fail);
    }

    #[test]
    fn stools_are_sold_for_three_heights() {
        let between = Trial::bare()
            .with("levels.counter", "39 in")
            .about(CODE, "to sit at");
        assert_eq!(between.verdict, Verdict::Caution);
        assert_eq!(
            Trial::bare()
                .with("levels.counter", "42 in")
                .about(CODE, "to sit at")
                .verdict,
            Verdict::Pass
        );
        let nobody = Trial::bare().with("people.seats", "0").answers(CODE);
        assert_eq!(nobody.len(), 1);
    }
}
