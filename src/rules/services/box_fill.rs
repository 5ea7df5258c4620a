//! Whether device boxes hold what is in them.

use super::receptacle::or_say_none;
use crate::design::BoxFill;
use crate::diagnostics::Verdict;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{Notation, Unit};

/// How full a box may be.
const FULL: Limit = Limit {
    name: "box-fill",
    what: "how much of its marked volume what is in a box may count for",
    usual: 1.0,
    unit: Unit::Share,
    source: "NEC 314.16 (2020)",
};

/// From here on a box is tight.
const TIGHT: Limit = Limit {
    name: "box-fill-tight",
    what: "how full a box is when it gets hard to fold the wires in",
    usual: 0.9,
    unit: Unit::Share,
    source: "common practice",
};

pub(super) static BOX_FILL: Rule = Rule {
    code: "power-box-fill",
    family: Family::Services,
    title: "Device boxes hold what is in them",
    about: About {
        checks: "What is in the box of each receptacle counts for at most `box-fill` of the marked volume: beyond it fails, beyond \
                 `box-fill-tight` it is cautioned. A box that the file does not describe, or a gauge that the table does not have, \
                 is not checked.",
        why: "Wires crammed into a box are skinned by the screws of the device and heat each other.",
        reckoned: "V = v (n + 2 d + c + g) after NEC 314.16(B) (2020): v the volume for one conductor (Table 314.16(B): 18 AWG 1.50, \
                   16 AWG 1.75, 14 AWG 2.00, 12 AWG 2.25, 10 AWG 2.50, 8 AWG 3.00, 6 AWG 5.00 in³), n the conductors, d the devices \
                   (each counts two), c one where clamps are inside, g one for up to four earthing conductors and a quarter for each \
                   more. Older editions count one for all earthing conductors together.",
        example: "12 AWG, 4 conductors, one device, clamps, 2 earthing conductors: 2.25 × (4 + 2 + 1 + 1) = 18 in³. A box of 20.3 in³ \
                  is 89 % full and passes; one of 18 in³ is full and is cautioned; one of 16 in³ fails.",
    },
    limits: &[&FULL, &TIGHT],
    levers: &["openings[].box.volume"],
    outside: &[
        Outside {
            what: "2.25 in³ for a 12 AWG conductor (NEC 314.16(B)); the box of four is worked by hand from it",
            origin: Origin::Memory,
            test: "a_box_of_four_conductors_worked_by_the_table",
        },
        Outside {
            what: "a quarter for each earthing conductor beyond four, NEC 314.16(B)(5) (2020)",
            origin: Origin::Memory,
            test: "earthing_conductors_beyond_four_count_a_quarter",
        },
    ],
    check,
};

/// A cubic inch, cubic millimetres.
const CUBIC_INCH: f64 = 16_387.064;

/// The volume for one conductor of a gauge, cubic millimetres: NEC Table 314.16(B).
fn per_conductor(gauge: u32) -> Option<f64> {
    let cubic_inches = match gauge {
        18 => 1.50,
        16 => 1.75,
        14 => 2.00,
        12 => 2.25,
        10 => 2.50,
        8 => 3.00,
        6 => 5.00,
        _ => return None,
    };
    Some(cubic_inches * CUBIC_INCH)
}

/// How many conductors all that is in a box counts for.
fn conductors_counted(fill: &BoxFill) -> f64 {
    let grounds = match fill.grounds {
        0 => 0.0,
        n => 1.0 + 0.25 * f64::from(n.saturating_sub(4)),
    };
    let clamps = if fill.clamps { 1.0 } else { 0.0 };
    f64::from(fill.conductors.value) + 2.0 * f64::from(fill.devices) + clamps + grounds
}

/// A volume in words.
fn spell(notation: Notation, mm3: f64) -> String {
    match notation {
        Notation::Imperial => format!("{:.1} cu in", mm3 / CUBIC_INCH),
        Notation::Metric => format!("{:.0} cm³", mm3 / 1000.0),
    }
}

fn check(subject: &Subject, answers: &mut Answers) {
    for r in or_say_none(subject, answers) {
        let (name, place) = (&r.opening.name, &r.opening.place);
        let Some(fill) = &r.opening.hardware.box_fill else {
            let found = format!("what is in the box of '{name}' is not known");
            answers.missing(place, "box", found).about(name);
            continue;
        };
        let Some(one) = per_conductor(fill.gauge.value) else {
            let found = format!("the table has no volume for {} AWG", fill.gauge.value);
            answers
                .say(Verdict::NotChecked, &fill.gauge.place, found)
                .about(name)
                .hint("write 18, 16, 14, 12, 10, 8 or 6, or ask the electrician");
            continue;
        };
        one_box(subject, answers, name, fill, one * conductors_counted(fill));
    }
}

fn one_box(subject: &Subject, answers: &mut Answers, name: &str, fill: &BoxFill, needed: f64) {
    let (full, tight) = (subject.bound(&FULL), subject.bound(&TIGHT));
    let volume = fill.volume.value.mm3();
    let (verdict, bound) = if !full.allows(needed / volume) {
        (Verdict::Fail, &full)
    } else if tight.allows(needed / volume) {
        (Verdict::Pass, &full)
    } else {
        (Verdict::Caution, &tight)
    };
    let found = format!(
        "what is in the box of '{name}' counts for {} of its {}",
        spell(subject.notation(), needed),
        spell(subject.notation(), volume)
    );
    let answer = answers
        .say(verdict, &fill.volume.place, found)
        .about(name)
        .at_most(bound);
    if verdict != Verdict::Pass {
        answer.hint(format!(
            "use a box of {} or more",
            spell(subject.notation(), needed / tight.value.max(0.01))
        ));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    const CODE: &str = "power-box-fill";

    fn with(inside: &str) -> Trial {
        Trial::sound().with("openings[receptacle].box", &format!("{{{inside}}}"))
    }

    #[test]
    fn a_box_of_four_conductors_worked_by_the_table() {
        // NEC 314.16(B): 2.25 × (4 + 2 + 1 + 1) = 18.0 in³.
        let inside = |volume: &str| {
            with(&format!(
                "volume: {volume}, gauge: 12, conductors: 4, grounds: 2, devices: 1, clamps: true"
            ))
        };
        let found = inside("20.3 cu in").about(CODE, "receptacle");
        assert_eq!(found.verdict, Verdict::Pass);
        assert!(
            found.found.contains("18.0 cu in of its 20.3 cu in"),
            "{}",
            found.found
        );
        assert_eq!(inside("18 cu in").worst(CODE), Verdict::Caution);
        assert_eq!(inside("17.9 cu in").worst(CODE), Verdict::Fail);
        // 14 AWG: 2.00 × 8 = 16; 10 AWG: 2.50 × 8 = 20 in³.
        for (gauge, least, short) in [
            (14, "16 cu in", "15.9 cu in"),
            (10, "20 cu in", "19.9 cu in"),
        ] {
            let inside = |volume: &str| {
                with(&format!(
                    "volume: {volume}, gauge: {gauge}, conductors: 4, grounds: 1, devices: 1, clamps: true"
                ))
            };
            assert_eq!(inside(least).worst(CODE), Verdict::Caution);
            assert_eq!(inside(short).worst(CODE), Verdict::Fail);
        }
    }

    #[test]
    fn earthing_conductors_beyond_four_count_a_quarter() {
        // NEC 314.16(B)(5) (2020, value from memory): 2.00 × (2 + 2 + 1 + 2/4) = 11 in³ for six of them.
        let six = |volume: &str| {
            with(&format!(
                "volume: {volume}, gauge: 14, conductors: 2, grounds: 6, devices: 1, clamps: false"
            ))
        };
        assert_eq!(six("11 cu in").worst(CODE), Verdict::Caution);
        assert_eq!(six("10.9 cu in").worst(CODE), Verdict::Fail);
    }

    #[test]
    fn what_is_not_known_is_not_checked() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let unsaid = Trial::sound().without("openings[receptacle].box");
        let found = unsaid.about(CODE, "receptacle");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert_eq!(found.hint, "write 'openings[7].box' in the file");
        let thick = with("volume: 30 cu in, gauge: 4, conductors: 2");
        assert_eq!(thick.worst(CODE), Verdict::NotChecked);
        assert_eq!(
            Trial::sound().without("openings").worst(CODE),
            Verdict::Pass
        );
    }

    proptest::proptest! {
        #![proptest_config(proptest::test_runner::Config { failure_persistence: None, cases: 16, ..Default::default() })]
        #[test]
        fn a_larger_box_is_never_worse(volume in 5.0..40.0_f64, more in 0.0..20.0_f64) {
            let inside = |v: f64| with(&format!("volume: {v:.3} cu in, gauge: 12, conductors: 3"));
            proptest::prop_assert!(inside(volume + more).worst(CODE) <= inside(volume).worst(CODE));
        }
    }
}
