//! Whether what can freeze is made for it.

use crate::diagnostics::Place;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const STRENGTH: Limit = Limit {
    name: "freezing-strength",
    what: "strength of concrete that freezes while wet",
    usual: 31.026_407_8,
    unit: Unit::Stress,
    source: "4,500 psi, exposure class F2, ACI 318-19, Table 19.3.2.1, value from memory",
};

const LEAST: Limit = Limit {
    name: "freezing-strength-least",
    what: "strength of concrete that freezes but is seldom wet",
    usual: 24.131_650_5,
    unit: Unit::Stress,
    source: "3,500 psi, exposure class F1, ACI 318-19, Table 19.3.2.1, value from memory",
};

pub(super) static FREEZING: Rule = Rule {
    code: "weather-freezing",
    family: Family::Weather,
    title: "Concrete and drains stand the frost",
    about: About {
        checks: "Where `site.freezing` is true: the mix is air-entrained, and its strength reaches `freezing-strength`; between that and `freezing-strength-least` it cautions, for a counter that is sealed and drains is seldom wet. It fails without air or below. A caution \
                 is also that drains and traps must be emptied before winter where there is water.",
        why: "Water in concrete grows by a tenth when it freezes. The top of a counter scales off in two winters.",
        reckoned: "ACI 318-19, 19.3: class F1 3,500 psi, F2 4,500 psi, both air-entrained (from memory).",
        example: "4,000 psi with air where it freezes: a caution. Without air it fails.",
    },
    limits: &[&STRENGTH, &LEAST],
    levers: &["counter.air_entrained"],
    outside: &[Outside {
        what: "3,500 and 4,500 psi with air (ACI 318-19, Table 19.3.2.1)",
        origin: Origin::Memory,
        test: "frost_asks_for_air_and_strength",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let Some(freezing) = &design.site.freezing else {
        answers.missing(&design.site.place, "freezing", "whether it freezes there");
        return;
    };
    if !freezing.value {
        answers.nothing("it does not freeze there");
        return;
    }
    let counter = Place {
        key: "counter".to_owned(),
        ..Place::default()
    };
    match &design.counter.casting.air_entrained {
        None => {
            answers
                .missing(
                    &counter,
                    "air_entrained",
                    "whether the mix is air-entrained",
                )
                .about("air");
        }
        Some(air) => {
            let found = if air.value {
                "the mix is air-entrained"
            } else {
                "the mix is not air-entrained, and it freezes there"
            };
            let source = "ACI 318-19, 19.3.3, value from memory";
            let answer = answers.judge(air.value, &air.place, found).about("air");
            answer
                .limit("air-entrained where it freezes", source)
                .hint("a mix with air, 5 to 7 %");
        }
    }
    strength(subject, answers, &counter);
    drains(subject, answers, &freezing.place);
}

fn strength(subject: &Subject, answers: &mut Answers, counter: &Place) {
    let Some(strength) = &subject.design().counter.casting.strength else {
        answers
            .missing(counter, "strength", "how strong the concrete is")
            .about("strength");
        return;
    };
    let (wanted, least) = (subject.bound(&STRENGTH), subject.bound(&LEAST));
    let found = format!(
        "the concrete has {}",
        subject.spell(Unit::Stress, strength.mpa())
    );
    let (place, mpa) = (&strength.place, strength.mpa());
    let answer = if wanted.is_reached_by(mpa) {
        answers.pass(place, found).at_least(&wanted)
    } else if least.is_reached_by(mpa) {
        answers
            .caution(place, found)
            .at_least(&wanted)
            .hint("seal the counter each autumn, and let water run off")
    } else {
        answers
            .fail(place, found)
            .at_least(&least)
            .hint("a stronger mix")
    };
    answer.about("strength");
}

fn drains(subject: &Subject, answers: &mut Answers, place: &Place) {
    let wet = subject
        .design()
        .appliances
        .iter()
        .filter(|a| a.is_sink() || a.holds_ice());
    let names: Vec<&str> = wet.map(|a| a.name.as_str()).collect();
    if !names.is_empty() {
        let found = format!(
            "water stands in the drains of {} when it freezes",
            names.join(" and ")
        );
        answers.caution(place, found).about("drains").hint(
            "plan a drain cock at the lowest point, and empty supply and traps before winter",
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-freezing";

    #[test]
    fn frost_asks_for_air_and_strength() {
        let strength = |psi: &str| {
            Trial::sound()
                .with("counter.strength", psi)
                .about(CODE, "strength")
                .verdict
        };
        assert_eq!(strength("4,500 psi"), Verdict::Pass);
        assert_eq!(strength("4,000 psi"), Verdict::Caution);
        assert_eq!(strength("3,000 psi"), Verdict::Fail);
        let air = Trial::sound().with("counter.air_entrained", "false");
        assert_eq!(air.about(CODE, "air").verdict, Verdict::Fail);
        assert_eq!(
            Trial::sound().about(CODE, "drains").verdict,
            Verdict::Caution
        );
        assert_eq!(
            Trial::sound().with("site.freezing", "false").worst(CODE),
            Verdict::Pass
        );
        for key in ["site.freezing", "counter.air_entrained", "counter.strength"] {
            let unknown = Trial::sound().without(key).answers(CODE);
            assert!(
                unknown.iter().any(|f| f.verdict == Verdict::NotChecked),
                "{key}"
            );
        }
    }
}
