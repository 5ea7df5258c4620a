//! Whether the concrete is placed too warm.

use super::evaporation::helps;
use super::{celsius, pouring};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::pour::{HourPlan, Limits, heat, usual};
use crate::units::{Temperature, Unit};

const HOTTEST: Limit = celsius(
    usual::HOTTEST,
    "temperature of concrete where it is placed",
    "95 °F at discharge, ACI 301-20",
);

pub(super) static HOT_CONCRETE: Rule = Rule {
    code: "weather-hot-concrete",
    family: Family::Weather,
    title: "The concrete is not placed too hot",
    about: About {
        checks: "How warm concrete leaves the mixer in each hour from the first batch to the last, against `concrete-hottest`. It passes more than 5 °F below, cautions nearer than that, for the estimate is no finer, and fails above.",
        why: "Hot concrete wants more water, sets before it is finished, and is weaker for good.",
        reckoned: "ACI 305R: T = (0.22 Ts Ws + Tw Ww) / (0.22 Ws + Ww), by the masses of dry mix and water of the first bag of concrete in the supplies; 0.22 is the specific heat of cement, sand and stone (value from memory). Bags are as warm as the air unless `pour.materials.bags` says otherwise; what the mixer and the sun add is not in it.",
        example: "Dry mix at 90 °F, 80 lb, and 6 lb of water at 60 °F: 82 °F. Bags left in the sun at 125 °F give 108 °F, which fails.",
    },
    limits: &[&HOTTEST],
    levers: &[],
    outside: &[Outside {
        what: "95 °F at discharge (ACI 301-20)",
        origin: Origin::Published,
        test: "ninety_five_degrees_is_the_most",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(pouring) = pouring(subject, answers) else {
        return;
    };
    let placed = pouring.hours.iter();
    let placed =
        placed.filter(|h| h.hour.at < pouring.window.placed || h.hour.at <= pouring.window.from);
    let warmest = placed
        .max_by(|a: &&&HourPlan, b| a.concrete.in_celsius().total_cmp(&b.concrete.in_celsius()));
    let Some(warmest) = warmest else {
        return;
    };
    let bound = subject.bound(&HOTTEST);
    let limits = Limits {
        hottest: Temperature::celsius(bound.value),
        ..Limits::of(subject.design())
    };
    let verdict = pouring.verdict(heat(warmest.concrete, &limits));
    let found = format!(
        "from {} on the concrete leaves the mixer at {}{}",
        warmest.hour.at.spell_time(),
        subject.spell(Unit::Temperature, warmest.concrete.in_celsius()),
        pouring.untold()
    );
    answers
        .say(verdict, pouring.place, found)
        .about("hot concrete")
        .at_most(&bound)
        .hint(format!(
            "shade the bags, and cool the water; {}",
            helps(subject, warmest)
        ));
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-hot-concrete";

    #[test]
    fn ninety_five_degrees_is_the_most() {
        // ACI 301-20: 95 °F. Dry mix and water at one temperature give concrete of that temperature.
        let at = |degrees: &str| {
            let materials = format!("{{bags: {degrees}, water: {degrees}}}");
            Trial::sound()
                .with("pour.materials", &materials)
                .worst(CODE)
        };
        assert_eq!(at("80 °F"), Verdict::Pass);
        assert_eq!(at("94 °F"), Verdict::Caution);
        assert_eq!(at("96 °F"), Verdict::Fail);
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("pour.forecast").worst(CODE),
            Verdict::NotChecked
        );
    }
}
