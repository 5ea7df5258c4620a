//! Whether water runs off the counter.

use crate::diagnostics::Place;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const LEAST: Limit = Limit {
    name: "counter-fall",
    what: "fall of the counter's top",
    usual: 0.01,
    unit: Unit::Slope,
    source: "common practice, 1/8 in per ft or 10 mm per m",
};

const MOST: Limit = Limit {
    name: "counter-fall-most",
    what: "fall of the counter's top at which things roll",
    usual: 1.0 / 48.0,
    unit: Unit::Slope,
    source: "common practice, 1/4 in per ft",
};

pub(super) static SLAB_FALL: Rule = Rule {
    code: "weather-slab-fall",
    family: Family::Weather,
    title: "Water runs off the counter",
    about: About {
        checks: "The fall of the counter's top is between `counter-fall` and `counter-fall-most`: it passes. More is a caution, since eggs roll; less fails.",
        why: "Rain that stands on a counter finds the joint round the sink, and freezes there.",
        reckoned: "`counter.fall` against the limits, both common practice. It should lead away from the seats, off the working side or an end.",
        example: "1/8 in per ft over 30 in is 5/16 in: it passes.",
    },
    limits: &[&LEAST, &MOST],
    levers: &["counter.fall"],
    outside: &[Outside {
        what: "1/8 to 1/4 in per ft, as builders have it",
        origin: Origin::Practice,
        test: "an_eighth_to_a_quarter",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(fall) = &subject.design().counter.casting.fall else {
        let counter = Place {
            key: "counter".to_owned(),
            ..Place::default()
        };
        answers.missing(&counter, "fall", "how much the counter falls");
        return;
    };
    let (least, most) = (subject.bound(&LEAST), subject.bound(&MOST));
    let found = format!(
        "the counter falls {}",
        subject.spell(Unit::Slope, fall.value)
    );
    let answer = if !least.is_reached_by(fall.value) {
        answers
            .fail(&fall.place, found)
            .at_least(&least)
            .hint("set the forms out of level, away from the seats")
    } else if most.allows(fall.value) {
        answers.pass(&fall.place, found).at_least(&least)
    } else {
        answers
            .caution(&fall.place, found)
            .at_most(&most)
            .hint("things roll on it: less will do")
    };
    answer.about("fall");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-slab-fall";

    #[test]
    fn an_eighth_to_a_quarter() {
        let fall = |fall: &str| Trial::sound().with("counter.fall", fall).worst(CODE);
        assert_eq!(fall("1/8 in per ft"), Verdict::Pass);
        assert_eq!(fall("1/4 in per ft"), Verdict::Pass);
        assert_eq!(fall("3/8 in per ft"), Verdict::Caution);
        assert_eq!(fall("1/16 in per ft"), Verdict::Fail);
        assert_eq!(
            Trial::sound().without("counter.fall").worst(CODE),
            Verdict::NotChecked
        );
    }
}
