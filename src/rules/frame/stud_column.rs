//! Whether the studs bear the counter.

use super::loading::{PEOPLE, PERSON, TENSILE, YIELD, grade, verdict};
use super::members::stud_place;
use super::steel::{Punched, Unbraced, column_strength};
use super::tops::tops;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};
use crate::units::Unit;

pub(super) static STUD_COLUMN: Rule = Rule {
    code: "frame-stud-column",
    family: Family::Frame,
    title: "The studs bear the counter as columns",
    about: About {
        checks: "In each frame panel the stud or jamb that uses most of its strength as a column. Up to 90 % of the allowable strength it passes, up to 100 % it \
                 cautions, beyond that it fails.",
        why: "Jambs beside wide doors and under trimmers carry far more than a stud of the grid, and thin steel folds without a warning.",
        reckoned: "The load of half the way to each neighbour: the strip over the panel with people, the ends of the ties there, and one `frame-person`, all taken as if it pressed in the middle of the stud, for board and track hold it there. Fcre by flexure and by \
                   torsion with flexure, nothing holding the stud but its ends (AISI S100-16 E2.1, E2.2); Fn = 0.658^(λ²) Fy up to λ 1.5, else 0.877 Fy / λ²; Pn = Ae Fn with the \
                   effective area at Fn, the web beside a punch-out as two strips (E3.1, Appendix 1.1.1); distortional buckling (E4.1); Pn / 1.80.",
        example: "A stud of 362S125-33, 31-7/16 in long: some 1,780 lb with nothing but its ends held; beside a door of 24 in it carries some 450 lb with a person: it passes.",
    },
    limits: &[&PEOPLE, &PERSON, &YIELD, &TENSILE],
    levers: &[
        "levels.counter",
        "counter.thickness",
        "trade.stud_spacing",
        "openings[].width",
    ],
    outside: &[
        Outside {
            what: "the column of AISI D100-17, Example III-3 (362S162-54: λc 1.64, Fn 16.3 ksi, Ae .414 in², Pn 6.75 kip)",
            origin: Origin::Published,
            test: "the_published_column_example_is_met",
        },
        Outside {
            what: "elastic buckling of whole columns by finite strips",
            origin: Origin::Library,
            test: "test_whole_columns_agree_with_finite_strips",
        },
        Outside {
            what: "a stud of 31-7/16 in by the same sections, its warping by numbers, worked in another language",
            origin: Origin::Memory,
            test: "a_stud_bears_what_formulas_worked_elsewhere_give_it",
        },
        Outside {
            what: "local buckling, element by element, is never above that by finite strips",
            origin: Origin::Library,
            test: "test_element_by_element_is_never_above_the_strips",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let stud = &subject.design().trade.stud;
    let (punched, steel) = (Punched::usual(stud), grade(subject));
    let person = subject.bound(&PERSON).value;
    let track = subject.plan.sizes.track_flange;
    let mut any = false;
    for top in tops(subject) {
        let posts = top.posts(track);
        let loaded = posts.iter().map(|p| (top.on(p.takes) + person, p));
        let Some((load, post)) = loaded.max_by(|a, b| a.0.total_cmp(&b.0)) else {
            continue;
        };
        any = true;
        let column = column_strength(stud, punched, steel, &Unbraced::all(post.length));
        let name = top.name(subject);
        let found = format!(
            "on {name} a stud {} long carries {} from {} of the panel",
            subject.mm(post.length),
            subject.spell(Unit::Force, load),
            subject.mm(post.takes.1 - post.takes.0)
        );
        let limit = format!("at most {}", subject.spell(Unit::Force, column.allowable));
        answers
            .say(
                verdict(load / column.allowable),
                &stud_place(subject),
                found,
            )
            .about(name)
            .limit(
                limit,
                "AISI S100-16 E2, E3.1 and E4.1, allowable strength, value from memory",
            )
            .hint("a thicker stud, or one more stud beside the jamb that carries it");
    }
    if !any {
        answers.nothing("there is no stud from track to track");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-stud-column";

    fn laden(lb: u32, mils: u32) -> Verdict {
        let limits = format!("[{{name: frame-person, value: {lb} lb}}]");
        Trial::sound()
            .with("limits", &limits)
            .with("trade.stud", &format!("362S125-{mils}"))
            .worst(CODE)
    }

    #[test]
    fn more_load_never_helps() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let row: Vec<_> = (0..16).map(|k| laden(500 + k * 100, 33)).collect();
        assert!(row.is_sorted(), "{row:?}");
        for v in [Verdict::Pass, Verdict::Caution, Verdict::Fail] {
            assert!(row.contains(&v), "{v:?}: {row:?}");
        }
    }

    #[test]
    fn thicker_studs_never_fail_where_thinner_passed() {
        for lb in [200, 900, 1800] {
            let row = [54, 43, 33, 30, 27, 18].map(|m| laden(lb, m));
            assert!(row.is_sorted(), "{lb} lb: {row:?}");
        }
    }

    #[test]
    fn taller_counters_never_pass_where_lower_failed() {
        let row = [30, 36, 42, 48].map(|inches| {
            Trial::bare()
                .with("limits", "[{name: frame-person, value: 1200 lb}]")
                .with("levels.counter", &format!("{inches} in"))
                .worst(CODE)
        });
        assert!(row.is_sorted(), "{row:?}");
    }

    #[test]
    fn a_stud_bears_what_formulas_worked_elsewhere_give_it() {
        // A 362S125-33 of 31-7/16 in, reckoned apart from this program with sharp corners by E2, E3.1 and Appendix 1 (values
        // from memory): Fcre 47.8 ksi, Fn 24.7, Ae .131 in² beside the punch-outs, so 1,800 lb; round bends take 1 to 2 %.
        // It carries, in an end of a run 8 ft deep, 16 in of 2-7/8 + 3-3/4 + 8 in of counter at 68 psf and a turndown
        // of 1.6 lb/ft, 113 lb, and a person of 200.
        let deep = Trial::bare()
            .with("runs", "[{name: cook, length: 8 ft, depth: 8 ft}]")
            .without("counter.joints");
        let found = deep.about(CODE, "the left end of run 'cook'");
        assert!(found.found.contains("carries 313 lb"), "{}", found.found);
        let digits: String = found.limit.chars().filter(char::is_ascii_digit).collect();
        let bears: f64 = digits.parse().unwrap();
        assert!((bears / 1800.0 - 1.0).abs() < 0.02, "{}", found.limit);
    }

    // Nothing it asks can be missing from a design: it has no `not checked`.
}
