//! What the slab weighs, run by run.

use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{GRAVITY, PSF, Unit};

const MOST: Limit = Limit {
    name: "slab-load",
    what: "weight of the slab on each square foot of counter",
    usual: 50.0 * PSF,
    unit: Unit::AreaLoad,
    source: "common practice: a light-gauge frame carries a counter up to some 4 in thick",
};

pub(super) static WEIGHT: Rule = Rule {
    code: "slab-weight",
    family: Family::Slab,
    title: "What the slab weighs on the frame",
    about: About {
        checks: "Says what the fresh slab weighs on each run and on each square foot. It passes up to `slab-load`, cautions up to a quarter more and fails beyond.",
        why: "Nobody sees the weight on the drawing: a counter of ten feet and two inches weighs as much as four people.",
        reckoned: "Thickness × 150 pcf (unit weight, published) for each square foot; by run with the area of its frame. What the frame makes of it is \
                   reckoned by the frame's rules.",
        example: "2 in weigh 25 psf: a run of 10 ft × 30 in some 625 lb. It passes.",
    },
    limits: &[&MOST],
    levers: &["counter.thickness"],
    outside: &[Outside {
        what: "2 in of concrete at 150 pcf weigh 25 psf (unit weight, published)",
        origin: Origin::Published,
        test: "a_slab_weighs_what_concrete_weighs",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let load = super::concrete::WEIGHT * design.counter.thickness.mm();
    let most = subject.bound(&MOST);
    for (i, run) in design.runs.iter().enumerate() {
        let plan = &subject.plan.runs[i];
        let newtons = load * (plan.framed.1 - plan.framed.0) * plan.depth;
        let found = format!(
            "run '{}': the slab weighs {}, some {} over its frame without overhangs",
            run.name.value,
            subject.spell(Unit::AreaLoad, load),
            subject.spell(Unit::Mass, newtons / GRAVITY),
        );
        let place = &design.counter.thickness.place;
        let answer = if most.allows(load) {
            answers.pass(place, found)
        } else if most.allows(load / 1.25) {
            answers.caution(place, found)
        } else {
            answers.fail(place, found)
        };
        answer
            .about(run.name.value.as_str())
            .at_most(&most)
            .hint("a thinner slab");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-weight";

    // Nothing it asks can be missing.
    #[test]
    fn a_slab_weighs_what_concrete_weighs() {
        // 150 pcf × 2/12 ft = 25 psf; 10 ft × 2.5 ft × 25 psf = 625 lb.
        let found = Trial::sound().about(CODE, "cook");
        assert_eq!(found.verdict, Verdict::Pass);
        assert!(
            found.found.contains("25 psf, some 625 lb"),
            "{}",
            found.found
        );
        let at = |thick: &str| {
            let high = Trial::sound().with("levels.counter", "42 in");
            high.with("counter.thickness", thick).worst(CODE)
        };
        assert_eq!(at("4 in"), Verdict::Pass);
        assert_eq!(at("4-1/2 in"), Verdict::Caution);
        assert_eq!(at("5-1/2 in"), Verdict::Fail);
    }
}
