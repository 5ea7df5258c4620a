//! Whether the slab is placed while it can be worked.

use crate::rules::weather::{hours_of, pouring};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::pour::{Fitness, sooner, usual};
use crate::units::TimeSpan;

const WORKING: Limit = hours_of(
    usual::WORKING,
    "how long a mix can be worked at 70 °F",
    "90 minutes from mixing to discharge, long the rule of ASTM C94, value from memory",
);

const INITIAL_SET: Limit = hours_of(
    usual::INITIAL_SET,
    "initial set of concrete at 70 °F",
    "common practice, 3 to 5 h",
);

pub(super) static PLACING_TIME: Rule = Rule {
    code: "slab-placing-time",
    family: Family::Slab,
    title: "The slab is placed while the first of it can still be worked",
    about: About {
        checks: "The time from the first batch to the last, by the batches of the takeoff, `pour.mixers` and `pour.batch_time`, against how long the mix can be worked at the temperature it then has. It passes within `working-time`, cautions up to `initial-set`, and fails beyond it.",
        why: "In heat the first batch is stiff before the last is mixed. Fresh concrete does not join what has set: that line is the next crack.",
        reckoned: "Batches / mixers, rounded up, × time of a batch. `working-time` and `initial-set` are told for 70 °F and shortened by exp[-Q (1/T - 1/Ts)] at the concrete's temperature, ASTM C1074, Q 5,000 K (value from memory), with the delay of a retarder.",
        example: "8 batches with one mixer at 6 minutes are 48 minutes. At 70 °F there are 90, at 95 °F 40: a caution.",
    },
    limits: &[&WORKING, &INITIAL_SET],
    levers: &[],
    outside: &[
        Outside {
            what: "90 minutes from mixing to discharge, long the rule of ASTM C94",
            origin: Origin::Memory,
            test: "a_slow_crew_meets_what_has_set",
        },
        Outside {
            what: "time halves for 20 °F more, about 70 °F",
            origin: Origin::Published,
            test: "test_heat_shortens_the_clock_about_by_half_for_twenty_degrees",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(pouring) = pouring(subject, answers) else {
        return;
    };
    let Some((placing, first)) = pouring.plan.placing.zip(pouring.hours.first()) else {
        let missing =
            "how many batches the slab takes: no bag of concrete in the supplies serves it";
        answers.missing(&crate::diagnostics::Place::default(), "supplies", missing);
        return;
    };
    let design = subject.design();
    let (working, set) = (subject.bound(&WORKING), subject.bound(&INITIAL_SET));
    let at = |hours: f64| {
        sooner(
            TimeSpan::hours(hours) + design.pour.retarder,
            first.concrete,
        )
    };
    let (working_time, set_time) = (at(working.value), at(set.value));
    let fitness = if placing.time <= working_time {
        Fitness::Fit
    } else if placing.time <= set_time {
        Fitness::Care
    } else {
        Fitness::Not
    };
    let found = format!(
        "{} batches take {} to place; at {} the mix can be worked for {}",
        placing.batches,
        placing.time.spell(),
        first.concrete.spell(subject.notation()),
        working_time.spell()
    );
    let place = design.pour.batch_time.place.or(pouring.place);
    answers
        .say(pouring.verdict(fitness), place, found)
        .limit(
            format!(
                "within {}; the first batch sets after {}",
                working_time.spell(),
                set_time.spell()
            ),
            working.source.clone(),
        )
        .hint("a second mixer and more hands, colder water, a retarder, an earlier start, or a joint to which one can stop");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-placing-time";

    #[test]
    fn a_slow_crew_meets_what_has_set() {
        // ASTM C94's old 90 minutes. Some 8 batches at 64 °F, where time is 1.17 times as long: at 6 minutes each 48 of 105; at 20
        // minutes 160, which is more than 105 and less than 280; at 40 minutes 320.
        let each = |time: &str| Trial::sound().with("pour.batch_time", time).worst(CODE);
        assert_eq!(each("6 min"), Verdict::Pass);
        assert_eq!(each("20 min"), Verdict::Caution);
        assert_eq!(each("40 min"), Verdict::Fail);
        let two = Trial::sound()
            .with("pour.batch_time", "20 min")
            .with("pour.mixers", "2");
        assert_eq!(two.worst(CODE), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("pour.at").worst(CODE),
            Verdict::NotChecked
        );
    }
}
