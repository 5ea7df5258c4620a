//! Whether a slab cast elsewhere can be demoulded and lifted.

use super::concrete::{WEIGHT, modulus, modulus_of_rupture};
use super::overhang_bending::counter;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const EACH: Limit = Limit {
    name: "lift-each",
    what: "what one person lifts with others",
    usual: 23.0,
    unit: Unit::Mass,
    source: "load constant of the NIOSH lifting equation (1994), 23 kg or 51 lb, value from memory",
};

const IMPACT: Limit = Limit {
    name: "lift-safety",
    what: "how many times the weight of a carried slab it takes to crack it",
    usual: 3.0,
    unit: Unit::Count,
    source: "common practice: 1.5 for suction and jolts, 2 for safety",
};

pub(super) static LIFTING: Rule = Rule {
    code: "slab-lifting",
    family: Family::Slab,
    title: "A slab cast elsewhere can be lifted without cracking and without hurting anybody",
    about: About {
        checks: "Only where `counter.elsewhere` is true; cast in place there is nothing to lift. The heaviest piece between joints, shared by `counter.lifters`, stays within \
                 `lift-each`, and carried by its ends it stays `lift-safety` away from cracking. It cautions where the piece is carried so at all, and fails where a limit is passed.",
        why: "A slab of 600 lb falls from four hands. A slab carried flat by its ends breaks at the sink.",
        reckoned: "Weight = longest stretch between joints × depth × thickness × 150 pcf. Cracking: fr = 7.5 √f'c (ACI 318-19, 19.2.3.1) against w L²/8 of a simple beam.",
        example: "10 ft × 30 in × 2 in weigh 625 lb: twelve people. On edge it carries itself; flat it cracks at 1.5 times its weight.",
    },
    limits: &[&EACH, &IMPACT],
    levers: &["counter.lifters", "counter.thickness"],
    outside: &[Outside {
        what: "51 lb for one person, the load constant of the NIOSH lifting equation",
        origin: Origin::Memory,
        test: "twelve_people_for_ten_feet",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let casting = &subject.design().counter.casting;
    if casting.elsewhere.as_ref().is_none_or(|e| !e.value) {
        answers.nothing("the counter is cast in place: nothing is lifted");
        return;
    }
    let thickness = subject.design().counter.thickness.mm();
    let (length, depth) = largest(subject);
    let kg = WEIGHT * thickness * length * depth / 9.806_65;
    lift(subject, answers, kg);
    let Some(strength) = &casting.strength else {
        answers
            .missing(&counter(), "strength", "how strong the concrete is")
            .about("cracking");
        return;
    };
    let carried = WEIGHT * thickness * length * length / 8.0;
    let times = modulus_of_rupture(strength.value) * modulus(thickness) / carried.max(1e-9);
    let safety = subject.bound(&IMPACT);
    let found = format!(
        "carried flat by its ends, a piece of {} cracks at {times:.1} times its weight",
        subject.mm(length)
    );
    let place = &subject.design().counter.thickness.place;
    let hint =
        "carry it on edge, strapped to a stiff frame, after at least a week; wait for the strength";
    let answer = if safety.is_reached_by(times) {
        answers.caution(place, found)
    } else {
        answers.fail(place, found)
    };
    answer.about("cracking").at_least(&safety).hint(hint);
}

fn lift(subject: &Subject, answers: &mut Answers, kg: f64) {
    let each = subject.bound(&EACH);
    let needed = (kg / each.value.max(1e-9)).ceil();
    let Some(lifters) = &subject.design().counter.casting.lifters else {
        let found = format!(
            "how many lift the heaviest piece of {}",
            subject.spell(Unit::Mass, kg)
        );
        answers
            .missing(&counter(), "lifters", found)
            .about("weight");
        return;
    };
    let share = kg / f64::from(lifters.value.max(1));
    let found = format!(
        "the heaviest piece weighs {}: {} for each of {}",
        subject.spell(Unit::Mass, kg),
        subject.spell(Unit::Mass, share),
        lifters.value
    );
    answers
        .judge(each.allows(share), &lifters.place, found)
        .about("weight")
        .at_most(&each)
        .hint(format!("{needed:.0} people, a hoist, or cast it in place"));
}

/// Length and depth of the largest piece between joints.
fn largest(subject: &Subject) -> (f64, f64) {
    let pieces = subject.plan.runs.iter().enumerate().map(|(i, run)| {
        let joints = subject.design().counter.casting.joints.iter();
        let own = joints.filter(|j| j.0 == i).map(|j| j.1.mm());
        let mut at: Vec<f64> = own.chain([0.0, run.length]).collect();
        at.sort_by(f64::total_cmp);
        let longest = at.windows(2).map(|w| w[1] - w[0]).fold(0.0, f64::max);
        (longest, run.depth)
    });
    let larger = |a: (f64, f64), b: (f64, f64)| if b.0 * b.1 > a.0 * a.1 { b } else { a };
    pieces.fold((0.0, 0.0), larger)
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-lifting";

    fn elsewhere() -> Trial {
        Trial::sound()
            .with("counter.elsewhere", "true")
            .without("counter.joints")
    }

    #[test]
    fn twelve_people_for_ten_feet() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // 10 ft × 30 in × 2 in at 150 pcf: 625 lb, 12.3 times 51 lb (23 kg is 50.7 lb).
        let with = |n: &str| elsewhere().with("counter.lifters", n).about(CODE, "weight");
        assert_eq!(with("12").verdict, Verdict::Fail);
        assert!(
            with("12").hint.starts_with("13 people"),
            "{}",
            with("12").hint
        );
        assert_eq!(with("13").verdict, Verdict::Pass);
        assert_eq!(
            elsewhere().about(CODE, "weight").verdict,
            Verdict::NotChecked
        );
        // By hand: .0868 × 2 × 120²/8 = 312.5 in·lb an inch; it cracks at 474.3 × 4/6 = 316.2: 1.0 times. In pieces of 5 ft: 4.05.
        assert_eq!(elsewhere().about(CODE, "cracking").verdict, Verdict::Fail);
        let short = elsewhere().with(
            "counter.joints",
            "[{run: cook, at: 5 ft}, {run: bar, at: 42 in}]",
        );
        assert_eq!(short.about(CODE, "cracking").verdict, Verdict::Caution);
    }
}
