//! What the island weighs.

use super::stance::Stance;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{GRAVITY, Unit};

const HEAVY: Limit = Limit {
    name: "island-weight",
    what: "dead weight of the whole island that asks for no second thought",
    usual: 2000.0,
    unit: Unit::Mass,
    source: "common practice: two tonnes, the weight of a car on the same ground",
};

pub(super) static TOTAL_WEIGHT: Rule = Rule {
    code: "ground-total-weight",
    family: Family::Ground,
    title: "What the whole island weighs",
    about: About {
        checks: "Says the dead weight, run by run and together, and which appliances are not in it because the file does not give their weight. It cautions above `island-weight`. It never fails: whether \
                 the ground bears it is asked by `ground-bearing`.",
        why: "Who asks a landlord or a building department is asked for this number first.",
        reckoned: "Exact volume of every part × its density, by run; steel 490 pcf (published), dried concrete 145 pcf (value from memory), board, stucco, tile from memory; plus the weights that the file gives.",
        example: "An L of 10 and 7 ft with a 2 in counter weighs some 2,700 lb: it passes.",
    },
    limits: &[&HEAVY],
    levers: &["counter.thickness"],
    outside: &[Outside {
        what: "a run's weight against the takeoff's dead weight, which shapely and the density table hold up, and the slab by hand",
        origin: Origin::Library,
        test: "the_runs_together_weigh_what_the_parts_weigh",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let kg: Vec<f64> = (0..design.runs.len())
        .map(|i| Stance::of(subject, i).weight / GRAVITY)
        .collect();
    let whole: f64 = kg.iter().sum();
    let runs = design.runs.iter().zip(&kg);
    let each: Vec<String> = runs
        .map(|(r, kg)| format!("'{}' {}", r.name.value, subject.spell(Unit::Mass, *kg)))
        .collect();
    let unknown = design
        .appliances
        .iter()
        .filter(|a| a.rating.weight.is_none());
    let unknown: Vec<&str> = unknown.map(|a| a.name.as_str()).collect();
    let without = if unknown.is_empty() {
        String::new()
    } else {
        format!(", without {}", unknown.join(", "))
    };
    let found = format!(
        "the island weighs {} ({}){without}",
        subject.spell(Unit::Mass, whole),
        each.join(", ")
    );
    let heavy = subject.bound(&HEAVY);
    let place = &design.counter.thickness.place;
    let answer = if heavy.allows(whole) {
        answers.pass(place, found)
    } else {
        answers.caution(place, found)
    };
    answer
        .at_most(&heavy)
        .hint("let somebody who knows the ground look at it");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::Subject;
    use crate::rules::trial::Trial;
    use crate::takeoff::{Amount, reckon};

    const CODE: &str = "ground-total-weight";

    // It tells and cautions; it neither fails nor lacks anything.
    #[test]
    fn the_runs_together_weigh_what_the_parts_weigh() {
        let plan = Trial::sound().plan();
        let subject = Subject::new(&plan);
        let ours: f64 = subject.loads().iter().map(|l| l.mass.kg()).sum();
        // The takeoff's dead weight, checked there by other means, and the four weights that the file gives: 120, 18, 14 and 30 lb.
        let takeoff = reckon(&plan, subject.assembly());
        let dead = takeoff
            .quantities
            .iter()
            .filter(|q| q.item == "dead weight");
        let dead: f64 = dead
            .map(|q| match q.amount {
                Amount::Mass(m) => m.kg(),
                _ => 0.0,
            })
            .sum();
        let given = 182.0 * 0.453_592_37;
        assert!((ours / (dead + given) - 1.0).abs() < 1e-3, "{ours} {dead}");
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let careful = Trial::sound().with("limits", "[{name: island-weight, value: 1000 kg}]");
        assert_eq!(careful.worst(CODE), Verdict::Caution);
    }
}
