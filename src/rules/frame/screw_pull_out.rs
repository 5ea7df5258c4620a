//! Whether the screws of the ties hold the two long panels together.

use super::loading::{TENSILE, YIELD, grade, verdict};
use super::screw_shear::{HUNG, TAB_SCREWS, fastener_place, screw};
use super::steel::tension;
use crate::plan::CrossingKind;
use crate::rules::ground::LEAN;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};
use crate::units::Unit;

pub(super) static SCREW_PULL_OUT: Rule = Rule {
    code: "frame-screw-pull-out",
    family: Family::Frame,
    title: "The screws of the ties are not pulled out",
    about: About {
        checks: "In each run the tie or trimmer that is farthest from its neighbours, pulled along by people who lean outwards on the counter's edge, on `tab-screws` screws. Up to 90 % of their \
                 allowable tension it passes, up to 100 % it cautions, beyond that it fails. Where `trade.fastener` names no screw of number 8, 10 or 12 it is \
                 not checked.",
        why: "The ties are all that keeps the two long panels from spreading until the slab has hardened.",
        reckoned: "`lean-a-foot`, taken level as a guard has it, over half the way to each neighbour; against 0.85 t d Fu / 3.0 where the screw bites and 1.5 t dh Fu / 3.0 under its head, and what tears the screw / 3.0, \
                   the least (AISI S100-16 J4.4.1 to J4.4.3, values from memory).",
        example: "Ties 16 in apart: 50 lb a foot pull 67 lb; two screws of number 8 in 33 mil hold 144 lb: it passes.",
    },
    limits: &[&LEAN, &TAB_SCREWS, &TENSILE, &YIELD],
    levers: &["trade.stud_spacing"],
    outside: &[Outside {
        what: "allowable pull-out of number 8 and 10 screws from 33 mil (72 and 84 lb)",
        origin: Origin::Memory,
        test: "screws_carry_what_the_table_says",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(screw) = screw(subject, answers) else {
        return;
    };
    let trade = &subject.design().trade;
    let steel = grade(subject);
    let (tab, track) = (trade.stud.thickness.mm(), trade.track.thickness.mm());
    let count = subject.bound(&TAB_SCREWS).value;
    let holds = count * tension(screw, tab, tab.min(track), steel);
    let lean = subject.bound(&LEAN).value / 304.8;
    let mut any = false;
    for (run, widest) in widest(subject).into_iter().enumerate() {
        let Some((width, mark)) = widest else {
            continue;
        };
        any = true;
        let pull = lean * width;
        let name = &subject.design().runs[run].name.value;
        let found = format!(
            "{mark} of run '{name}' holds {} together and is pulled with {}",
            subject.mm(width),
            subject.spell(Unit::Force, pull)
        );
        let limit = format!("at most {}", subject.spell(Unit::Force, holds));
        answers
            .say(verdict(pull / holds.max(1e-9)), &fastener_place(), found)
            .about(mark)
            .limit(limit, "AISI S100-16 J4.4, value from memory")
            .hint("more screws in each tab (set `tab-screws`), thicker screws, thicker steel or closer ties");
    }
    if !any {
        answers.nothing("there is no tie");
    }
}

/// In each run the member across it that holds the greatest length together, and its mark.
fn widest(subject: &Subject) -> Vec<Option<(f64, String)>> {
    let plan = subject.plan;
    let of_run = |(run, members): (usize, Vec<super::carried::Carried>)| {
        let frame = &plan.runs[run];
        let half = plan.sizes.panel / 2.0;
        let mut across: Vec<(f64, String)> = members
            .into_iter()
            .filter(|c| plan.crossings[c.index].kind != CrossingKind::Blocking)
            .map(|c| {
                let u = plan.crossings[c.index].u;
                (f64::midpoint(u.0, u.1), c.mark)
            })
            .collect();
        across.sort_by(|a, b| a.0.total_cmp(&b.0));
        // A tie that a cutout cuts in two does not hold the panels together, but each half holds its own panel to the blocking.
        let line = |i: usize| across.get(i).map(|a| a.0);
        let held = (0..across.len()).map(|i| {
            let low = i.checked_sub(1).and_then(line);
            let low = low.unwrap_or(frame.framed.0 + half);
            let high = line(i + 1).unwrap_or(frame.framed.1 - half);
            ((high - low) / 2.0, across[i].1.clone())
        });
        held.max_by(|a, b| a.0.total_cmp(&b.0))
    };
    let runs = HUNG.by_run(subject);
    runs.into_iter().enumerate().map(of_run).collect()
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-screw-pull-out";

    #[test]
    fn a_stronger_pull_never_helps() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let lean = |lb: u32| format!("[{{name: lean-a-foot, value: {lb} lb}}]");
        let row: Vec<_> = (2..40)
            .map(|k| Trial::sound().with("limits", &lean(k * 5)).worst(CODE))
            .collect();
        assert!(row.is_sorted(), "{row:?}");
        for v in [Verdict::Pass, Verdict::Caution, Verdict::Fail] {
            assert!(row.contains(&v), "{v:?}: {row:?}");
        }
    }

    #[test]
    fn an_unnamed_screw_is_not_checked() {
        let trial = Trial::sound().with("trade.fastener", "rivets");
        assert_eq!(trial.worst(CODE), Verdict::NotChecked);
    }
}
