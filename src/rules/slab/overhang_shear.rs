//! Whether an overhang holds in shear at the steel.

use super::concrete::plain_shear;
use super::overhang::{EDGE_LOAD, EDGE_WIDTH, with_strength};
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static OVERHANG_SHEAR: Rule = Rule {
    code: "slab-overhang-shear",
    family: Family::Slab,
    title: "No overhang shears off at the steel",
    about: About {
        checks: "The factored shear at the root of each overhang against the design strength of plain concrete. It passes below it, \
                 cautions within a tenth of it, and fails above it.",
        why: "Shear breaks without a crack before it. In slabs of usual thickness it never governs; a thin slab under a heavy load can \
              come near it.",
        reckoned: "V = 1.2 w L + 1.6 P / (b + L) for each unit of width, against 0.60 · 4/3 √f'c h (ACI 318-19, Table 14.5.5.1, and \
                   Table 21.2.1 for φ); w is the weight of the slab at 150 pcf, P is `edge-load` over `edge-load-width` b, spread at 45 \
                   degrees over the length L.",
        example: "2 in of 4,000 psi concrete 10.9 in past the steel under 300 lb: 24 lb an inch of edge; it bears 101.",
    },
    limits: &[&EDGE_LOAD, &EDGE_WIDTH],
    levers: &[
        "counter.thickness",
        "counter.overhang.seating",
        "counter.overhang.working",
        "counter.overhang.left",
        "counter.overhang.right",
        "counter.brackets.reach",
    ],
    outside: &[Outside {
        what: "the coefficient 4/3 √f'c with φ 0.60 (ACI 318-19, Table 14.5.5.1); the shear beside it is worked by hand",
        origin: Origin::Memory,
        test: "a_thin_slab_under_a_heavy_load_shears",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some((all, strength)) = with_strength(subject, answers) else {
        return;
    };
    let thickness = subject.design().counter.thickness.mm();
    for overhang in &all {
        let bears = plain_shear(strength) * thickness;
        let asked = overhang.action(subject).factored_shear();
        let share = asked / bears.max(1e-9);
        let found = format!(
            "{}: shear at the steel takes up {:.0} % of what the concrete bears",
            overhang.name,
            share * 100.0
        );
        let place = &overhang.given.place;
        let answer = if share <= 0.9 {
            answers.pass(place, found)
        } else if share <= 1.0 {
            answers.caution(place, found)
        } else {
            answers.fail(place, found)
        };
        answer
            .about(overhang.name)
            .limit("at most 100 %", "ACI 318-19, Table 14.5.5.1")
            .hint("a thicker slab, or brackets nearer to the edge");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-overhang-shear";
    const SEATING: &str = "cook run, seating side";

    fn under(load: &str) -> Trial {
        let limits = format!("[{{name: edge-load, value: {load}}}]");
        Trial::sound()
            .without("counter.brackets")
            .with("limits", &limits)
    }

    #[test]
    fn a_thin_slab_under_a_heavy_load_shears() {
        // By hand: 2 in, 4,000 psi bears 50.6 × 2 = 101.2 lb an inch. 10.875 in past the steel: 1.2 × (.1736 × 10.875 + .0868 × 1.5) =
        // 2.4, and 1.6 P / 22.875. At 300 lb: 23.4, 23 %; at 1,340 lb: 96.1, 95 %; at 1,500 lb: 107.3, 106 %.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let found = under("300 lb").about(CODE, SEATING);
        assert!(found.found.contains("23 %"), "{}", found.found);
        assert_eq!(
            under("1340 lb").about(CODE, SEATING).verdict,
            Verdict::Caution
        );
        assert_eq!(under("1500 lb").about(CODE, SEATING).verdict, Verdict::Fail);
        let unknown = Trial::sound().without("counter.strength");
        assert_eq!(unknown.worst(CODE), Verdict::NotChecked);
    }
}
