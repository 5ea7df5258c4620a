//! Whether the screws of the tabs hold what ties and trimmers carry.

use super::loading::{PEOPLE, PERSON, TENSILE, YIELD, grade, verdict};
use super::members::Asked;
use super::steel::{Screw, shear};
use crate::diagnostics::Place;
use crate::plan::CrossingKind;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// How many screws are in a tab.
pub(super) const TAB_SCREWS: Limit = Limit {
    name: "tab-screws",
    what: "screws in each tab of a tie, trimmer or header",
    usual: 2.0,
    unit: Unit::Count,
    source: "common practice; the order list counts two",
};

pub(super) static SCREW_SHEAR: Rule = Rule {
    code: "frame-screw-shear",
    family: Family::Frame,
    title: "The screws of the tabs hold in shear",
    about: About {
        checks: "In each run the end of a tie, trimmer or blocking that carries most, on `tab-screws` screws. Up to 90 % of their allowable shear it passes, up to 100 % it cautions, \
                 beyond that it fails. Where `trade.fastener` names no screw of number 8, 10 or 12 it is not checked.",
        why: "A tie does not rest on anything: its two tabs hang on a few screws.",
        reckoned: "The end of the beam of `frame-tie-bending`, or one `frame-person` right at the tab. A screw bears min(4.2 √(t2³ d) Fu2, 2.7 t1 d Fu1, 2.7 t2 d Fu2) / 3.0, \
                   t1 the tab, t2 what it is screwed to (AISI S100-16 J4.3.1, value from memory), and no more than the screw itself: a number 8 shears at \
                   1,278 lb, a 10 at 1,644, a 12 at 2,330 (J4.3.2, values from memory; its maker decides).",
        example: "33 mil to 33 mil, number 8, Fu 45 ksi: 164 lb a screw, 329 lb a tab of two; 240 lb hang on it: it passes.",
    },
    limits: &[&TAB_SCREWS, &PEOPLE, &PERSON, &TENSILE, &YIELD],
    levers: &["runs[].depth", "counter.thickness", "trade.stud_spacing"],
    outside: &[Outside {
        what: "allowable shear of number 8 and 10 screws, 33 to 33 mil (164 and 177 lb)",
        origin: Origin::Memory,
        test: "screws_carry_what_the_table_says",
    }],
    check,
};

/// Where the file names the screw.
pub(super) fn fastener_place() -> Place {
    Place {
        key: "trade".to_owned(),
        ..Place::default()
    }
}

/// The screw of the design, or the answer that its size is not known.
pub(super) fn screw(subject: &Subject, answers: &mut Answers) -> Option<Screw> {
    let named = Screw::named(&subject.design().trade.fastener);
    if named.is_none() {
        let found = "the screw's number is not known: name it #8, #10 or #12";
        answers.missing(&fastener_place(), "fastener", found);
    }
    named
}

/// Members that hang on tabs.
pub(super) const HUNG: Asked = Asked {
    kinds: &[
        CrossingKind::Tie,
        CrossingKind::Trimmer,
        CrossingKind::Blocking,
    ],
    called: "tie",
    hint: "more screws in each tab (set `tab-screws`), thicker screws or thicker steel",
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(screw) = screw(subject, answers) else {
        return;
    };
    let trade = &subject.design().trade;
    let (tab, track) = (trade.stud.thickness.mm(), trade.track.thickness.mm());
    let count = subject.bound(&TAB_SCREWS).value;
    let holds = count * shear(screw, tab, tab.min(track), grade(subject));
    let mut any = false;
    for run in HUNG.by_run(subject) {
        let shear = run.iter().map(|c| (c.shear(subject), c));
        let Some((shear, c)) = shear.max_by(|a, b| a.0.total_cmp(&b.0)) else {
            continue;
        };
        any = true;
        let found = format!(
            "{} hangs {} on the {count} screws of a tab",
            c.mark,
            subject.spell(Unit::Force, shear)
        );
        let limit = format!("at most {}", subject.spell(Unit::Force, holds));
        answers
            .say(verdict(shear / holds.max(1e-9)), &fastener_place(), found)
            .about(&c.mark)
            .limit(limit, "AISI S100-16 J4.3.1, value from memory")
            .hint(HUNG.hint);
    }
    if !any {
        answers.nothing("there is no tie");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-screw-shear";

    #[test]
    fn more_load_never_helps_and_thicker_steel_never_harms() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let person = |lb: u32| format!("[{{name: frame-person, value: {lb} lb}}]");
        let row: Vec<_> = (4..40)
            .map(|k| Trial::sound().with("limits", &person(k * 10)).worst(CODE))
            .collect();
        assert!(row.is_sorted(), "{row:?}");
        for v in [Verdict::Pass, Verdict::Caution, Verdict::Fail] {
            assert!(row.contains(&v), "{v:?}: {row:?}");
        }
        let row = [54, 43, 33, 30, 27, 18].map(|m| {
            Trial::sound()
                .with("trade.stud", &format!("362S125-{m}"))
                .worst(CODE)
        });
        assert!(row.is_sorted(), "{row:?}");
    }

    #[test]
    fn an_unnamed_screw_is_not_checked() {
        let trial = Trial::sound().with("trade.fastener", "rivets");
        assert_eq!(trial.worst(CODE), Verdict::NotChecked);
    }
}
