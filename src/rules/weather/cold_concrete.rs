//! Whether the concrete is placed and kept warm enough.

use super::{Pouring, celsius, hours_of, pouring};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::pour::{HourPlan, Limits, cold, frost, usual};
use crate::units::{Temperature, TimeSpan, Unit};

const COLDEST: Limit = celsius(
    usual::COLDEST,
    "temperature of concrete in sections under 12 in, placed and kept",
    "55 °F, ACI 306R, Table 3.1",
);

const COLD_AIR: Limit = celsius(
    usual::COLD_AIR,
    "air below which it is cold weather",
    "40 °F during the days of protection, ACI 306R, value from memory",
);

const NO_FROST: Limit = hours_of(
    usual::NO_FROST,
    "how long young concrete must not freeze",
    "two days, ACI 306R, value from memory",
);

pub(super) static COLD_CONCRETE: Rule = Rule {
    code: "weather-cold-concrete",
    family: Family::Weather,
    title: "The concrete is neither placed cold nor freezes while it is young",
    about: About {
        checks: "That concrete leaves the mixer no colder than `concrete-coldest` in each hour from the first batch to the last; and that the air of the forecast stays above freezing for `hours-without-frost` after that. Air below `cold-air` in that time is a caution: then it must be kept at \
                 `concrete-coldest` under blankets. Frost fails, and so does concrete that is too cold.",
        why: "Water that freezes in young concrete breaks it from inside, and it never gets its strength.",
        reckoned: "The concrete's temperature as in `weather-hot-concrete`; the lowest air of the hours that the forecast has. ACI 306R, Table 3.1: sections under 12 in at 55 °F. Where the forecast ends sooner, no more is known.",
        example: "Bags at 66 °F and water at 60 °F give 64 °F: it passes. Bags from a shed at 40 °F give 45 °F and fail; water at 98 °F mends it.",
    },
    limits: &[&COLDEST, &COLD_AIR, &NO_FROST],
    levers: &[],
    outside: &[Outside {
        what: "55 °F for sections under 12 in (ACI 306R, Table 3.1)",
        origin: Origin::Published,
        test: "fifty_five_degrees_is_the_least",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(pouring) = pouring(subject, answers) else {
        return;
    };
    let (coldest, cold_air) = (subject.bound(&COLDEST), subject.bound(&COLD_AIR));
    let limits = Limits {
        coldest: Temperature::celsius(coldest.value),
        cold_air: Temperature::celsius(cold_air.value),
        no_frost: TimeSpan::hours(subject.bound(&NO_FROST).value),
        ..Limits::of(subject.design())
    };
    let degrees = |t: Temperature| subject.spell(Unit::Temperature, t.in_celsius());
    let placed = pouring.hours.iter();
    let placed =
        placed.filter(|h| h.hour.at < pouring.window.placed || h.hour.at <= pouring.window.from);
    let least = placed
        .min_by(|a: &&&HourPlan, b| a.concrete.in_celsius().total_cmp(&b.concrete.in_celsius()));
    if let Some(least) = least {
        let verdict = pouring.verdict(cold(least.concrete, &limits));
        let found = format!(
            "from {} on the concrete leaves the mixer at {}{}",
            least.hour.at.spell_time(),
            degrees(least.concrete),
            pouring.untold()
        );
        answers
            .say(verdict, pouring.place, found)
            .about("placed")
            .at_least(&coldest)
            .hint("store the bags warm, and mix with warm water, no hotter than 140 °F (60 °C)");
    }
    let low = lowest(&pouring, limits.no_frost);
    let verdict = pouring.verdict(frost(low, &limits));
    let found = format!(
        "in the {} after placing begins the air goes down to {}{}",
        limits.no_frost.spell(),
        degrees(low),
        pouring.untold()
    );
    answers
        .say(verdict, pouring.place, found)
        .about("kept")
        .at_least(&cold_air)
        .hint(format!(
            "keep it at {} under insulating blankets; where it freezes, wait",
            coldest.spell()
        ));
}

/// The coldest air from the first batch on for so long.
fn lowest(pouring: &Pouring, span: TimeSpan) -> Temperature {
    let after = pouring.plan.hours.iter().filter(|h| {
        let at = h.hour.at.hours_since(pouring.window.from);
        at > -1.0 && at <= span.in_hours().max(0.0)
    });
    let air = after.map(|h| h.hour.air.in_celsius());
    Temperature::celsius(air.fold(f64::MAX, f64::min).min(1000.0))
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-cold-concrete";

    #[test]
    fn fifty_five_degrees_is_the_least() {
        // ACI 306R, Table 3.1: 55 °F for sections under 12 in.
        let at = |degrees: &str| {
            let materials = format!("{{bags: {degrees}, water: {degrees}}}");
            let trial = Trial::sound().with("pour.materials", &materials);
            trial.about(CODE, "placed").verdict
        };
        assert_eq!(at("60 °F"), Verdict::Pass);
        assert_eq!(at("55 °F"), Verdict::Pass);
        assert_eq!(at("54 °F"), Verdict::Fail);
        assert_eq!(
            Trial::sound().without("pour.forecast").worst(CODE),
            Verdict::NotChecked
        );
    }

    #[test]
    fn frost_within_two_days_fails_and_cold_asks_for_blankets() {
        let night = |air: &str| {
            let hour = |h: u32, air: &str| {
                format!("{{at: 2027-05-14T{h:02}:00, air: {air}, humidity: 60 %, wind: 3 mph}}")
            };
            let mut hours: Vec<_> = (6..20).map(|h| hour(h, "60 °F")).collect();
            hours.push(hour(20, air));
            let forecast = format!("{{hours: [{}]}}", hours.join(", "));
            let trial = Trial::sound().with("pour.forecast", &forecast);
            trial.about(CODE, "kept").verdict
        };
        assert_eq!(night("45 °F"), Verdict::Pass);
        assert_eq!(night("36 °F"), Verdict::Caution);
        assert_eq!(night("30 °F"), Verdict::Fail);
    }
}
