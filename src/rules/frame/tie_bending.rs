//! Whether the ties bear the wet slab and people.

use super::loading::{PEOPLE, PERSON, TENSILE, YIELD};
use super::members::Asked;
use crate::plan::CrossingKind;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static TIE_BENDING: Rule = Rule {
    code: "frame-tie-bending",
    family: Family::Frame,
    title: "Ties bear the wet slab and people in bending and shear",
    about: About {
        checks: "In each run the tie that uses most of its strength, in bending between the long panels and in shear at its tabs' web. Up to 90 % of the \
                 allowable strength it passes, up to 100 % it cautions, beyond that it fails.",
        why: "On the day of the pour the slab is only weight: what the ties do not bear falls into the frame, with whoever stands on it.",
        reckoned: "A simple beam. Wet concrete of 150 pcf and the sheet over half the way to each neighbour, with `frame-people` spread, or with one `frame-person` at \
                   mid-span. M ≤ Se Fy / 1.67, Se the effective modulus at yield with the usual punch-outs (AISI S100-16 F3.1, Appendix 1), the top \
                   flange held by the sheet screwed to it; V ≤ Vn / 1.60 (G2.1, G3).",
        example: "A tie of 362S125-33 over 22-3/8 in, 16 in from the next: 68 psf make 40 ft·lb, a person of 200 lb on the wet slab 110 ft·lb; it may bear some 300: it passes.",
    },
    limits: &[&PEOPLE, &PERSON, &YIELD, &TENSILE],
    levers: &["runs[].depth", "counter.thickness", "trade.stud_spacing"],
    outside: &[
        Outside {
            what: "greatest moments and deflections of simple beams (AISC Manual, Table 3-23, cases 1, 7 and 8)",
            origin: Origin::Memory,
            test: "a_load_anywhere_is_case_8",
        },
        Outside {
            what: "the allowable moment of a punched 362S162-33 in industry load tables",
            origin: Origin::Memory,
            test: "a_punched_stud_has_the_moment_of_the_load_tables",
        },
        Outside {
            what: "gross properties of studs by finite elements",
            origin: Origin::Library,
            test: "test_gross_properties_agree_with_finite_elements",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let ties = Asked {
        kinds: &[CrossingKind::Tie],
        called: "tie",
        hint: "a thicker or deeper stud, a closer stud spacing or a shallower run",
    };
    ties.strength(subject, answers);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-tie-bending";

    fn laden(person: &str) -> Trial {
        let limits = format!("[{{name: frame-person, value: {person}}}]");
        Trial::sound().with("limits", &limits)
    }

    #[test]
    fn heavier_people_never_help() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let verdicts: Vec<_> = ["100 lb", "300 lb", "600 lb", "1200 lb"]
            .map(|p| laden(p).worst(CODE))
            .to_vec();
        assert!(verdicts.is_sorted(), "{verdicts:?}");
        assert_eq!(verdicts[3], Verdict::Fail);
    }

    #[test]
    fn thicker_steel_never_fails_where_thinner_passed_and_longer_ties_never_pass_where_shorter_failed()
     {
        let verdict = |mils: u32, depth: u32| {
            laden("450 lb")
                .without("appliances")
                .without("openings")
                .without("gas")
                .without("electricity")
                .with("trade.stud", &format!("362S125-{mils}"))
                .with("runs[0].depth", &format!("{depth} in"))
                .worst(CODE)
        };
        let depths = [24, 30, 36, 42, 48];
        for mils in [18, 30, 33, 43, 54] {
            let row = depths.map(|d| verdict(mils, d));
            assert!(row.is_sorted(), "{mils} mil: {row:?}");
        }
        for depth in depths {
            let row = [54, 43, 33, 30, 18].map(|m| verdict(m, depth));
            assert!(row.is_sorted(), "{depth} in: {row:?}");
        }
        assert_eq!(verdict(18, 48), Verdict::Fail);
    }

    #[test]
    fn close_to_the_limit_it_cautions() {
        let verdicts: Vec<_> = (8..16)
            .map(|p| laden(&format!("{} lb", p * 50)).worst(CODE))
            .collect();
        assert!(verdicts.contains(&Verdict::Caution) && verdicts.is_sorted());
    }

    #[test]
    fn a_run_without_ties_has_nothing_to_check() {
        let small = Trial::bare()
            .with("trade.stud_spacing", "24 in")
            .with("runs", "[{name: cook, length: 24 in, depth: 24 in}]")
            .without("counter.joints")
            .without("counter.brackets");
        assert_eq!(small.worst(CODE), Verdict::Pass);
    }

    // Nothing it asks can be missing from a design: it has no `not checked`.
}
