//! Whether trimmers and blocking bear the edge of the cutout.

use super::loading::{PEOPLE, PERSON, TENSILE, YIELD};
use super::members::Asked;
use crate::plan::CrossingKind;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static TRIMMER: Rule = Rule {
    code: "frame-trimmer",
    family: Family::Frame,
    title: "Trimmers and blocking bear the edge of each cutout",
    about: About {
        checks: "In each run the trimmer or blocking that uses most of its strength in bending and shear. Up to 90 % it passes, up to 100 % it cautions, beyond that it \
                 fails. An appliance whose weight the file does not give is not checked.",
        why: "The strip of slab beside a grill is narrow and the grill hangs on it: its steel carries both.",
        reckoned: "A simple beam. Wet concrete of 150 pcf and the sheet from half the way to the next support up to the edge of the cutout, with `frame-people` spread or one \
                   `frame-person` in the middle; half of the appliance's weight on each trimmer; ties that stop at the cutout on its blocking, the blocking on the trimmers. \
                   M ≤ Se Fy / 1.67, V ≤ Vn / 1.60 (AISI S100-16 F3.1, G2.1).",
        example: "A trimmer beside a grill of 120 lb with a rail of 8 in: 26 lb of slab and 60 lb of grill, then a person of 200 lb: 120 ft·lb of some 300, it passes.",
    },
    limits: &[&PEOPLE, &PERSON, &YIELD, &TENSILE],
    levers: &["runs[].depth", "counter.thickness"],
    outside: &[
        Outside {
            what: "a load anywhere on a simple beam (AISC Manual, Table 3-23, case 8)",
            origin: Origin::Memory,
            test: "a_load_anywhere_is_case_8",
        },
        Outside {
            what: "the effective area of a 362S162-54 (AISI D100-17, Example III-3)",
            origin: Origin::Published,
            test: "the_effective_area_agrees_with_the_published_example",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let asked = Asked {
        kinds: &[CrossingKind::Trimmer, CrossingKind::Blocking],
        called: "cutout with a trimmer",
        hint: "a thicker or deeper stud, or a tie nearer to the cutout",
    };
    asked.strength(subject, answers);
    let runs = asked.by_run(subject);
    let mut weightless: Vec<usize> = runs
        .iter()
        .flatten()
        .flat_map(|c| c.weightless.iter().copied())
        .collect();
    weightless.sort_unstable();
    weightless.dedup();
    for i in weightless {
        let a = &subject.design().appliances[i];
        let found = format!("how heavy '{}' is, which hangs on its trimmers", a.name);
        answers.missing(&a.place, "weight", found).about(&a.name);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-trimmer";

    fn worst(weight: u32) -> Verdict {
        Trial::sound()
            .with("appliances[grill].weight", &format!("{weight} lb"))
            .worst(CODE)
    }

    #[test]
    fn a_heavier_grill_never_helps() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let row: Vec<_> = (0..14).map(|k| worst(100 + k * 150)).collect();
        assert!(row.is_sorted(), "{row:?}");
        for v in [Verdict::Pass, Verdict::Caution, Verdict::Fail] {
            assert!(row.contains(&v), "{v:?}: {row:?}");
        }
    }

    #[test]
    fn an_unknown_weight_is_not_checked() {
        let found = Trial::sound()
            .without("appliances[grill].weight")
            .about(CODE, "grill");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(found.place.key.ends_with("weight"));
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
    }
}
