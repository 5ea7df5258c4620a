//! Whether the ties sink so little that the slab stays flat and whole.

use super::loading::{PEOPLE, PERSON, TENSILE, YIELD, verdict};
use super::members::{Asked, sinks, stud_place};
use crate::plan::CrossingKind;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{Notation, Unit};

/// Under people.
const SHARE: Limit = Limit {
    name: "tie-deflection",
    what: "span of a member under the counter over how far it sinks under people",
    usual: 360.0,
    unit: Unit::Count,
    source: "1/360 of the span, as a floor has it by IRC Table R301.7, value from memory",
};

/// Under wet concrete: what is left in the slab for good.
const SAG: Limit = Limit {
    name: "slab-sag",
    what: "how far a member sinks under wet concrete, which the finished slab keeps",
    usual: 1.5875,
    unit: Unit::Length,
    source: "1/16 in, common practice",
};

pub(super) static TIE_DEFLECTION: Rule = Rule {
    code: "frame-tie-deflection",
    family: Family::Frame,
    title: "Ties and trimmers sink so little that the slab stays flat and whole",
    about: About {
        checks: "In each run the tie, trimmer or blocking that sinks most: under people against its span over `tie-deflection`, under wet concrete against `slab-sag`. Up to \
                 90 % of either it passes, up to 100 % it cautions, beyond that it fails.",
        why: "A slab cast on a frame that gives keeps the sag for good, and cracks over a tie that moves under it.",
        reckoned: "A simple beam with the loads of `frame-tie-bending`, by the moments of a unit load; I is the effective second moment at the moment it bears (AISI S100-16, Appendix 1). \
                   The slab's own stiffness is not counted.",
        example: "A tie of 362S125-33 over 22-3/8 in sinks 1/1000 in under the slab and 4/1000 in under a person; 22-3/8 in / 360 is 62/1000: it passes.",
    },
    limits: &[&SHARE, &SAG, &PEOPLE, &PERSON, &YIELD, &TENSILE],
    levers: &["runs[].depth", "counter.thickness", "trade.stud_spacing"],
    outside: &[
        Outside {
            what: "deflections of simple beams (AISC Manual, Table 3-23, cases 1, 7 and 8)",
            origin: Origin::Memory,
            test: "an_even_load_is_case_1",
        },
        Outside {
            what: "second moments of studs in an industry technical guide, 2024",
            origin: Origin::Published,
            test: "radii_agree_with_the_published_table",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let (share, sag) = (subject.bound(&SHARE), subject.bound(&SAG));
    let all = Asked {
        kinds: &[
            CrossingKind::Tie,
            CrossingKind::Trimmer,
            CrossingKind::Blocking,
        ],
        called: "tie",
        hint: "",
    };
    let mut any = false;
    for run in all.by_run(subject) {
        let judged = run.iter().map(|c| {
            let (wet, people) = sinks(subject, c);
            let allowed = c.spread.length() / share.value.max(1e-9);
            let used = (wet / sag.value.max(1e-9)).max(people / allowed.max(1e-9));
            (used, wet, people, allowed, c)
        });
        let Some((used, wet, people, allowed, c)) = judged.max_by(|a, b| a.0.total_cmp(&b.0))
        else {
            continue;
        };
        any = true;
        let thousandths = |mm: f64| match subject.notation() {
            Notation::Imperial => format!("{:.3} in", mm / 25.4),
            Notation::Metric => format!("{mm:.2} mm"),
        };
        let found = format!(
            "{} sinks {} under wet concrete and {} more under people",
            c.mark,
            thousandths(wet),
            thousandths(people)
        );
        let limit = format!("at most {} and {}", sag.spell(), thousandths(allowed));
        answers
            .say(verdict(used), &stud_place(subject), found)
            .about(&c.mark)
            .limit(limit, format!("{}; {}", sag.source, share.source))
            .hint("a thicker or deeper stud, a closer stud spacing or a shallower run");
    }
    if !any {
        answers.nothing("there is no tie");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-tie-deflection";

    fn allowed(share: u32) -> Verdict {
        let limits = format!("[{{name: tie-deflection, value: {share}}}]");
        Trial::sound().with("limits", &limits).worst(CODE)
    }

    #[test]
    fn a_stricter_limit_never_helps() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let verdicts: Vec<_> = (0..12).map(|k| allowed(2000 + k * 400)).collect();
        assert!(verdicts.is_sorted(), "{verdicts:?}");
        for v in [Verdict::Pass, Verdict::Caution, Verdict::Fail] {
            assert!(verdicts.contains(&v), "{v:?}");
        }
    }

    #[test]
    fn thinner_steel_sinks_more() {
        let limits = "[{name: tie-deflection, value: 4000}]";
        let row = [54, 43, 33, 30, 18].map(|m| {
            Trial::sound()
                .with("limits", limits)
                .with("trade.stud", &format!("362S125-{m}"))
                .worst(CODE)
        });
        assert!(row.is_sorted(), "{row:?}");
    }

    // Nothing it asks can be missing from a design: it has no `not checked`.
}
