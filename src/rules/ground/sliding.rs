//! Whether the island slides when it is pushed.

use super::stance::{PUSH, Stance};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const FRICTION: Limit = Limit {
    name: "friction",
    what: "friction of sleepers on what they stand on, as a share of the weight",
    usual: 0.3,
    unit: Unit::Count,
    source: "value from memory: wood and plastics on wet stone 0.3 to 0.5",
};

const SAFETY: Limit = Limit {
    name: "sliding-safety",
    what: "the friction that keeps the island, in times the push",
    usual: 1.5,
    unit: Unit::Count,
    source: "1.5, as for retaining walls by IBC 2018, 1807.2.3, value from memory",
};

pub(super) static SLIDING: Rule = Rule {
    code: "ground-sliding",
    family: Family::Ground,
    title: "The island does not slide when it is pushed",
    about: About {
        checks: "The friction of the whole island under its own weight against one who pushes. It passes at `sliding-safety`, cautions where it holds with less, and fails where it slides.",
        why: "An island that creeps breaks its gas pipe before anybody notices.",
        reckoned: "`friction` × dead weight against `push`. Statics; the push is that of a guard (IRC 2015, Table R301.5).",
        example: "2,800 lb × 0.3 = 840 lb against 200: 4.2 times, it passes.",
    },
    limits: &[&PUSH, &FRICTION, &SAFETY],
    levers: &["counter.thickness", "runs[].length"],
    outside: &[Outside {
        what: "200 lb on a guard (IRC 2015, Table R301.5), friction from memory",
        origin: Origin::Memory,
        test: "a_heavy_island_stays",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let runs = 0..subject.design().runs.len();
    let weight: f64 = runs.map(|i| Stance::of(subject, i).weight).sum();
    let (friction, push, safety) = (
        subject.bound(&FRICTION),
        subject.bound(&PUSH),
        subject.bound(&SAFETY),
    );
    let times = friction.value * weight / push.value.max(1e-9);
    let found = format!(
        "the island weighs {}; friction keeps it against {} times a push of {}",
        subject.spell(Unit::Force, weight),
        subject.times(times),
        push.spell()
    );
    let place = &subject.design().levels.base_gap.place;
    let answer = if safety.is_reached_by(times) {
        answers.pass(place, found)
    } else if times >= 1.0 {
        answers.caution(place, found)
    } else {
        answers.fail(place, found)
    };
    answer
        .limit(
            format!("at least {} times", safety.value),
            safety.source.clone(),
        )
        .hint("fasten the sleepers to a slab or to stakes");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "ground-sliding";

    // Nothing it asks can be missing.
    #[test]
    fn a_heavy_island_stays() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // Its parts and appliances weigh 2,400 lb: × 0.1 = 240 lb, 1.2 times the push; × 0.02 = 48 lb.
        let with = |friction: &str| {
            let limits = format!("[{{name: friction, value: {friction}}}]");
            Trial::sound().with("limits", &limits).worst(CODE)
        };
        assert_eq!(with("0.1"), Verdict::Caution);
        assert_eq!(with("0.02"), Verdict::Fail);
    }
}
