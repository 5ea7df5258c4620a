//! Whether the fresh counter dries too fast.

use super::pouring;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::pour::{Fitness, HourPlan, Limits, UNCERTAINTY, drying, usual};
use crate::units::Unit;

const PLAIN: Limit = Limit {
    name: usual::EVAPORATION.0,
    what: "what evaporates from fresh concrete",
    usual: usual::EVAPORATION.1,
    unit: Unit::Evaporation,
    source: "1.0 kg/m²/h or 0.2 lb/sq ft/h, ACI 305R",
};

const SILICA_FUME: Limit = Limit {
    name: usual::EVAPORATION_SILICA_FUME.0,
    what: "the same of a mix with silica fume",
    usual: usual::EVAPORATION_SILICA_FUME.1,
    unit: Unit::Evaporation,
    source: "about half of that for mixes with silica fume, ACI 305R",
};

pub(super) static EVAPORATION: Rule = Rule {
    code: "weather-evaporation",
    family: Family::Weather,
    title: "The fresh counter does not dry faster than it bleeds",
    about: About {
        checks: "The evaporation in every hour of the forecast from the first batch until the steel trowel has gone over the last one, against `evaporation`, or `evaporation-silica-fume` where `pour.silica_fume` is true. The estimate \
                 is good to ±40 %: it passes where the limit holds even then, cautions up to the limit, and fails above it.",
        why: "What dries while it is soft shrinks and tears: plastic cracks run through a counter before it is hard, and no trowel closes them.",
        reckoned: "Uno 1998 (ACI Materials Journal 95-M34): E = 5 ([Tc + 18]^2.5 - r [Ta + 18]^2.5) (V + 4) / 10⁶, kg/m²/h, °C, km/h. The concrete comes from its materials; the wind at 0.5 m from the forecast's by the profile of FAO-56, equation 47 (value from memory), half of it behind \
                   a windbreak (common practice). Sun on unshaded concrete counts as 5 °C in 1,000 W/m²: an allowance without a source, for the formula knows no sun.",
        example: "Air 27 °C, 50 %, concrete 31 °C, wind 19 km/h at 0.5 m: 1.2 kg/m²/h, which fails; at dawn with 18 °C, 75 % and no wind it is 0.05.",
    },
    limits: &[&PLAIN, &SILICA_FUME],
    levers: &[],
    outside: &[
        Outside {
            what: "the worked example of ACI 305R, about 1.2 kg/m²/h",
            origin: Origin::Published,
            test: "the_example_of_aci_305r_is_found",
        },
        Outside {
            what: "Menzel's formula with vapour pressures of PsychroLib, within the ±40 % of the estimate",
            origin: Origin::Library,
            test: "test_evaporation_agrees_with_menzel",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(pouring) = pouring(subject, answers) else {
        return;
    };
    let hours = pouring.hours.iter();
    let worst = hours.max_by(|a, b| a.evaporation.total_cmp(&b.evaporation));
    let Some(worst) = worst else {
        return;
    };
    let bound = subject.bound(if subject.design().pour.silica_fume {
        &SILICA_FUME
    } else {
        &PLAIN
    });
    let limits = Limits {
        evaporation: bound.value,
        ..Limits::of(subject.design())
    };
    let verdict = pouring.verdict(drying(worst.evaporation, &limits));
    let found = format!("{}{}", told(subject, worst), pouring.untold());
    answers
        .say(verdict, pouring.place, found)
        .about("evaporation")
        .at_most(&bound)
        .hint(helps(subject, worst));
}

/// The worst hour with the band of the estimate.
fn told(subject: &Subject, worst: &HourPlan) -> String {
    let spell = |kg: f64| subject.spell(Unit::Evaporation, kg);
    let e = worst.evaporation;
    format!(
        "from {} on some {} evaporate, anything from {} to {}",
        worst.hour.at.spell_time(),
        spell(e),
        spell(e * (1.0 - UNCERTAINTY)),
        spell(e * (1.0 + UNCERTAINTY))
    )
}

/// What brings the hour under the limit.
pub(super) fn helps(subject: &Subject, worst: &HourPlan) -> String {
    let notation = subject.notation();
    let measures: Vec<_> = worst.measures.iter().map(|m| m.spell(notation)).collect();
    let measures = if measures.is_empty() {
        "no measure of this program does".to_owned()
    } else {
        measures.join(", ")
    };
    let sprayed = "spray an evaporation retarder behind the screed";
    match worst.next.filter(|_| worst.fitness == Fitness::Not) {
        Some(next) => format!("{measures}; or wait until {}; {sprayed}", next.spell()),
        None => format!("{measures}; {sprayed}"),
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-evaporation";

    /// Five hours of one weather, wind told at half a metre.
    fn weather(air: &str, humidity: &str, wind: &str) -> Trial {
        let hour = |h: u32| {
            format!("{{at: 2027-05-14T{h:02}:00, air: {air}, humidity: {humidity}, wind: {wind}}}")
        };
        let hours: Vec<_> = (6..12).map(hour).collect();
        let forecast = format!("{{wind_height: 500 mm, hours: [{}]}}", hours.join(", "));
        Trial::sound()
            .with("pour.forecast", &forecast)
            .with("pour.materials", "{bags: 31 °C, water: 31 °C}")
    }

    #[test]
    fn the_example_of_aci_305r_is_found() {
        // ACI 305R: air 27 °C, 50 %, concrete 31 °C, wind 19 km/h give about 1.2 kg/m²/h, over its limit of 1.0.
        let found = weather("27 °C", "50 %", "19 km/h").about(CODE, "evaporation");
        assert_eq!(found.verdict, Verdict::Fail);
        assert!(found.limit.contains("0.205 lb/sq ft/h"), "{}", found.limit);
        // By hand, 10,015 × 5/10⁶ × (V + 4): 1.15 at 19 km/h, 0.85 at 13, which lies within the error, and 0.68 behind a windbreak.
        assert_eq!(
            weather("27 °C", "50 %", "13 km/h").worst(CODE),
            Verdict::Caution
        );
        assert_eq!(
            weather("27 °C", "50 %", "0 km/h").worst(CODE),
            Verdict::Pass
        );
        let fume = weather("27 °C", "50 %", "13 km/h").with("pour.silica_fume", "true");
        assert_eq!(fume.worst(CODE), Verdict::Fail);
        let broken = weather("27 °C", "50 %", "19 km/h").with("pour.windbreak", "true");
        assert_eq!(broken.worst(CODE), Verdict::Pass);
    }

    #[test]
    fn what_is_not_foretold_is_not_checked() {
        for key in ["pour.forecast", "pour.at", "pour"] {
            assert_eq!(Trial::sound().without(key).worst(CODE), Verdict::NotChecked);
        }
        let late = Trial::sound().with("pour.at", "2027-05-14T15:30");
        assert_eq!(late.worst(CODE), Verdict::NotChecked);
        let never = Trial::sound().with("pour.at", "2027-06-14T15:30");
        assert_eq!(never.worst(CODE), Verdict::NotChecked);
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
    }
}
