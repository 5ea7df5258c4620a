//! Whether the island tips over its seating side.

use super::stance::{LEAN, PUSH, Stance, is_seating, whole_keeping};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const SAFETY: Limit = Limit {
    name: "overturning-safety",
    what: "the moment that keeps a run standing, in times the moment that tips it",
    usual: 1.5,
    unit: Unit::Count,
    source: "1.5, as for retaining walls by IBC 2018, 1807.2.3, value from memory",
};

pub(super) static OVERTURNING: Rule = Rule {
    code: "ground-overturning",
    family: Family::Ground,
    title: "The island does not tip when people lean on the seating side",
    about: About {
        checks: "Run by run, as if it stood alone, about the outer edge of its sleeper on the seating side: its weight keeps it, people who lean along the edge \
                 or one who pushes tip it. It passes at `overturning-safety`. Where a run alone does not reach that but the island that it is joined to \
                 does, it cautions to prop the run until it is joined. It fails where that does not hold either.",
        why: "A narrow bar with a deep overhang tips like a chair, with half a ton of concrete on top.",
        reckoned: "Kept: W (d - x), W the dead weight of the run with its share of the slab, x where it weighs and d the depth of the frame. Tipped, the larger of: `lean-a-foot` × length × (overhang + \
                   cladding); `push` × height. Statics; loads as a guard bears them, which are not taken together (IRC 2015, Table R301.5; IBC 2018, 1607.8.1 from memory).",
        example: "A run of 10 ft that weighs 1,600 lb, 15 in in front of its seating sleeper: 24,000 in·lb against the larger of 500 × 10.9 = 5,450 and 200 × 36 = 7,200: 3.3 times, it passes.",
    },
    limits: &[&LEAN, &PUSH, &SAFETY],
    levers: &[
        "runs[].depth",
        "counter.overhang.seating",
        "levels.counter",
        "counter.thickness",
    ],
    outside: &[
        Outside {
            what: "200 lb on a guard or handrail (IRC 2015, Table R301.5)",
            origin: Origin::Published,
            test: "a_block_tips_by_statics",
        },
        Outside {
            what: "1.5 against overturning (IBC 2018, 1807.2.3)",
            origin: Origin::Memory,
            test: "a_narrow_bar_tips",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let safety = subject.bound(&SAFETY);
    for (i, run) in design.runs.iter().enumerate() {
        let name = run.name.value.as_str();
        if !is_seating(subject, i) {
            let found =
                format!("run '{name}' stands against a wall: nobody leans on it from there");
            answers.pass(&run.length.place, found).about(name);
            continue;
        }
        let stance = Stance::of(subject, i);
        let tipping = stance.tipping(subject).max(1e-9);
        let alone = stance.keeping() / tipping;
        let whole = whole_keeping(subject, i).map_or(f64::INFINITY, |k| k / tipping);
        let found = format!(
            "run '{name}' alone is kept by {} times what people tip it with",
            subject.times(alone)
        );
        let place = &run.depth.place;
        let joined = design.runs.len() > 1;
        let answer = if safety.is_reached_by(alone) {
            answers.pass(place, found)
        } else if joined && safety.is_reached_by(whole) {
            let found = format!("{found}; joined to the others it holds: prop it until it is");
            answers.caution(place, found)
        } else {
            answers.fail(place, found)
        };
        answer
            .about(name)
            .limit(
                format!("at least {} times", safety.value),
                safety.source.clone(),
            )
            .hint("a deeper run, a smaller overhang, or anchors into a slab on the ground");
    }
}

#[cfg(test)]
mod tests {
    use super::super::stance::Stance;
    use crate::diagnostics::Verdict;
    use crate::rules::Subject;
    use crate::rules::trial::Trial;

    const CODE: &str = "ground-overturning";

    #[test]
    fn a_block_tips_by_statics() {
        // By hand, in pounds and inches: 1,600 × (30 - 15) = 24,000 against 50 × 10 × 10.875 = 5,437.5 or 200 × 36 = 7,200.
        let plan = Trial::sound().plan();
        let subject = Subject::new(&plan);
        let lb = 4.448_221_615_260_5;
        let block = Stance {
            weight: 1600.0 * lb,
            at: 15.0 * 25.4,
            length: 120.0 * 25.4,
            depth: 30.0 * 25.4,
            out: 10.875 * 25.4,
            height: 36.0 * 25.4,
            sleeper: 89.0,
        };
        let in_lb = |moment: f64| moment / lb / 25.4;
        assert!((in_lb(block.keeping()) - 24_000.0).abs() < 1e-6);
        assert!((in_lb(block.tipping(&subject)) - 7200.0).abs() < 1e-6);
        // 20 in of overhang: 500 × 20 = 10,000, more than the push.
        let far = Stance {
            out: 20.0 * 25.4,
            ..block
        };
        assert!((in_lb(far.tipping(&subject)) - 10_000.0).abs() < 1e-6);
    }

    #[test]
    fn a_narrow_bar_tips() {
        assert_eq!(Trial::sound().about(CODE, "cook").verdict, Verdict::Pass);
        // The bar run is framed over 54 in only; what it is joined to keeps it.
        assert_eq!(Trial::sound().about(CODE, "bar").verdict, Verdict::Caution);
        let push = |push: u32| {
            let limits = format!("[{{name: push, value: {push} lb}}]");
            Trial::sound()
                .with("limits", &limits)
                .about(CODE, "bar")
                .verdict
        };
        let verdicts: Vec<_> = [20, 100, 400, 20_000].map(push).to_vec();
        assert_eq!((verdicts[0], verdicts[3]), (Verdict::Pass, Verdict::Fail));
        assert!(verdicts.is_sorted(), "{verdicts:?}");
    }

    // Nothing it asks can be missing: weights come from the parts.
}
