//! Whether the strips of slab beside cutouts hold.

use super::concrete::{FACTORS, WEIGHT, modulus, modulus_of_rupture, plain_bending};
use super::overhang::EDGE_LOAD;
use super::overhang::counter;
use super::rails::{Rail, or_say_none};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{Stress, Unit};

const SAFETY: Limit = Limit {
    name: "rail-safety",
    what: "how many times the load it takes to crack a strip beside a cutout that no steel carries",
    usual: 2.0,
    unit: Unit::Count,
    source: "common practice",
};

const NARROW: Limit = Limit {
    name: "rail-width-without-bar",
    what: "width of the strip of slab beside a cutout that needs no bar along it",
    usual: 101.6,
    unit: Unit::Length,
    source: "common practice, 4 in",
};

pub(super) static RAIL_BENDING: Rule = Rule {
    code: "slab-rail-bending",
    family: Family::Slab,
    title: "The strips of slab beside cutouts bear a person",
    about: About {
        checks: "Each strip beside a cutout passes where a panel, tie, trimmer or blocking runs along it near the cutout; it cautions there where it is narrower than \
                 `rail-width-without-bar` and no bar lies in the slab. Where none does, it is a beam \
                 between its supports at the ends of the cutout: it passes by the design strength of plain concrete, cautions where \
                 that is passed but cracking stays `rail-safety` times away, and fails nearer.",
        why: "The strip before a sink is where everybody leans. Over steel it only lies there; free, it is a beam without steel.",
        reckoned: "M = w b L²/8 + P L/4 for a simple beam of the strip's width b over the cutout's length L, with P `edge-load` at its middle and w the weight \
                   of the slab; it cracks at 7.5 √f'c b h²/6 (ACI 318-19, 19.2.3.1), by design bears 0.60 · 5 √f'c b h²/6 (14.5.2.1a) \
                   against 1.2 dead + 1.6 live. The two beam cases are those of the AISC Manual, Table 3-23, cases 1 and 7 (values from memory).",
        example: "A strip 6 in wide and 2 in thick, free over 14 in: 300 lb at its middle and its own weight make 90 ft·lb; it cracks at 158: 1.7 times, it fails.",
    },
    limits: &[&EDGE_LOAD, &SAFETY, &NARROW],
    levers: &["counter.thickness", "appliances[].front.closed.setback"],
    outside: &[Outside {
        what: "P L/4 and w L²/8 of a simple beam (AISC Manual, Table 3-23, cases 7 and 1, from memory) with 7.5 √f'c, by hand",
        origin: Origin::Memory,
        test: "a_free_strip_is_a_beam",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let all = or_say_none(subject.plan, answers);
    let strength = subject.design().counter.casting.strength.as_ref();
    for rail in all {
        let a = &subject.design().appliances[rail.appliance];
        if rail.carried {
            carried(subject, answers, &rail);
        } else if let Some(strength) = strength {
            beam(subject, answers, &rail, strength.value);
        } else {
            answers
                .missing(&counter(), "strength", "how strong the concrete is")
                .about(format!("{} {}", rail.beside, a.name));
        }
    }
}

/// Steel bears it; a narrow strip still tears at its ends when the slab shrinks.
fn carried(subject: &Subject, answers: &mut Answers, rail: &Rail) {
    let design = subject.design();
    let a = &design.appliances[rail.appliance];
    let name = format!("{} {}", rail.beside, a.name);
    let narrow = subject.bound(&NARROW);
    if !narrow.is_reached_by(rail.width) && design.counter.casting.reinforcement.bars.is_none() {
        let found = format!(
            "steel runs under the strip of slab {} '{}', but it is only {} wide and has no bar along it",
            rail.beside,
            a.name,
            subject.mm(rail.width)
        );
        answers
            .caution(&a.place, found)
            .about(name)
            .at_least(&narrow)
            .hint(format!(
                "lay a bar of {} along it, and past the cutout by {} at either end",
                subject.mm(9.525),
                subject.mm(304.8)
            ));
    } else {
        let found = format!(
            "steel runs under the strip of slab {} '{}'",
            rail.beside, a.name
        );
        answers.pass(&a.place, found).about(name);
    }
}

fn beam(subject: &Subject, answers: &mut Answers, rail: &Rail, strength: Stress) {
    let a = &subject.design().appliances[rail.appliance];
    let thickness = subject.design().counter.thickness.mm();
    let section = modulus(thickness) * rail.width;
    let dead = WEIGHT * thickness * rail.width * rail.span * rail.span / 8.0;
    let live = subject.bound(&EDGE_LOAD).value * rail.span / 4.0;
    let times = modulus_of_rupture(strength) * section / (dead + live).max(1e-9);
    let safety = subject.bound(&SAFETY);
    let found = format!(
        "no steel runs under the strip of slab {} '{}', {} wide over {}; it would crack at {} times the load of a person",
        rail.beside,
        a.name,
        subject.mm(rail.width),
        subject.mm(rail.span),
        subject.times(times),
    );
    let answer = if plain_bending(strength) * section >= FACTORS.0 * dead + FACTORS.1 * live {
        answers.pass(&a.place, found)
    } else if safety.is_reached_by(times) {
        answers.caution(&a.place, found)
    } else {
        answers.fail(&a.place, found)
    };
    answer
        .about(format!("{} {}", rail.beside, a.name))
        .at_least(&safety)
        .hint("a tie or blocking under the strip, a wider strip, or a thicker slab with bars; an engineer decides");
}

#[cfg(test)]
mod tests {
    use super::{RAIL_BENDING, SAFETY};
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;
    use crate::rules::{Subject, ask};
    use crate::units::Length;

    #[test]
    fn a_free_strip_is_a_beam() {
        assert_eq!(Trial::sound().worst(RAIL_BENDING.code), Verdict::Pass);
        let mut plan = Trial::sound().plan();
        plan.crossings.clear();
        let verdict = |plan: &crate::plan::Plan| {
            let found = ask(&RAIL_BENDING, &Subject::new(plan));
            found
                .into_iter()
                .find(|f| f.subject == "right of grill")
                .unwrap()
        };
        // By hand: 8 in wide, 2 in thick, free over 21 in (the cutout behind the working face): 300 × 21/4 = 1,575 and .0868 × 2 × 8 ×
        // 21²/8 = 76.5, together 1,652 in·lb; it cracks at 474.3 × 8 × 4/6 = 2,530: 1.53 times.
        let found = verdict(&plan);
        assert_eq!(found.verdict, Verdict::Fail);
        assert!(found.found.contains("1.5 times"), "{}", found.found);
        // At 2-1/2 in: dead 96, 3,953 / 1,671 = 2.4 times: a caution. At 4 in: 0.6 × 5 × 63.25 × 8 × 16/6 = 4,048 against 1.2 × 153 + 1.6
        // × 1,575 = 2,704: it passes.
        plan.design.counter.thickness.value = Length::inches(2.5);
        assert_eq!(verdict(&plan).verdict, Verdict::Caution);
        plan.design.counter.thickness.value = Length::inches(4.0);
        assert_eq!(verdict(&plan).verdict, Verdict::Pass);
        plan.design.counter.casting.strength = None;
        assert_eq!(verdict(&plan).verdict, Verdict::NotChecked);
        assert_eq!(SAFETY.usual, 2.0);
    }
}
