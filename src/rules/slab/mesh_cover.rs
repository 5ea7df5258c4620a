//! Whether mesh and bars have concrete enough on both sides.

use super::overhang::counter;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const COVER: Limit = Limit {
    name: "steel-cover",
    what: "concrete between steel and the face of the slab",
    usual: 19.05,
    unit: Unit::Length,
    source: "common practice for thin counters with coated or stainless steel, 3/4 in; ACI 318-19, Table 20.5.1.3.1, asks for \
             1-1/2 in outdoors (value from memory)",
};

/// What the code asks for outdoors, 1-1/2 in (ACI 318-19, Table 20.5.1.3.1, from memory).
const CODE_COVER: f64 = 38.1;

pub(super) static MESH_COVER: Rule = Rule {
    code: "slab-mesh-cover",
    family: Family::Slab,
    title: "Mesh and bars lie deep enough in the slab",
    about: About {
        checks: "Over and under the steel there is at least `steel-cover` of concrete, its diameter counted twice where wires cross. Where that holds but \
                 the code's cover outdoors does not, it cautions to use stainless, coated or glass fibre steel. It fails below the limit.",
        why: "Steel too near the top rusts and lifts the concrete off; too near the bottom it does nothing for an overhang.",
        reckoned: "Cover above is the file's `counter.reinforcement.cover`; below: thickness - cover - 2 d for mesh of wires d, - d for bars.",
        example: "Mesh of 1/8 in, 3/4 in below the top of a 2 in slab leaves 1 in below it: it holds, with a caution, for 3/4 in is less than \
                  what the code asks for outdoors.",
    },
    limits: &[&COVER],
    levers: &["counter.thickness", "counter.reinforcement.cover"],
    outside: &[Outside {
        what: "1-1/2 in of cover outdoors for small bars (ACI 318-19, Table 20.5.1.3.1)",
        origin: Origin::Memory,
        test: "steel_lies_deep_enough_or_not",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let (r, thickness) = (
        &design.counter.casting.reinforcement,
        design.counter.thickness.mm(),
    );
    let layers = [
        (
            "mesh",
            r.mesh.as_ref().map(|m| (2.0 * m.mm(), m.place.clone())),
        ),
        ("bars", r.bars.as_ref().map(|b| (b.mm(), b.place.clone()))),
    ];
    if layers.iter().all(|l| l.1.is_none()) {
        answers.missing(
            &counter(),
            "reinforcement.mesh",
            "whether there is mesh in the slab",
        );
        return;
    }
    let Some(cover) = &r.cover else {
        answers.missing(&counter(), "reinforcement.cover", "how deep the steel lies");
        return;
    };
    let least = subject.bound(&COVER);
    for (name, layer) in layers {
        let Some((thick, _)) = layer else { continue };
        let below = thickness - cover.mm() - thick;
        let smaller = cover.mm().min(below);
        let found = format!(
            "{name}: {} of concrete above and {} below",
            subject.mm(cover.mm()),
            subject.mm(below.max(0.0))
        );
        let answer = if !least.is_reached_by(smaller) {
            answers
                .fail(&cover.place, found)
                .hint("a thicker slab, thinner steel, or lay it in the middle")
        } else if smaller >= CODE_COVER - 1e-6 {
            answers.pass(&cover.place, found)
        } else {
            let hint = "use stainless, epoxy-coated or glass fibre steel; galvanised mesh at least";
            answers.caution(&cover.place, found).hint(hint)
        };
        answer.about(name).at_least(&least);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-mesh-cover";

    #[test]
    fn steel_lies_deep_enough_or_not() {
        // 2 in less 3/4 less two wires of 1/8: 1 in below, less than the code's 1-1/2 in.
        let found = Trial::sound().about(CODE, "mesh");
        assert_eq!(found.verdict, Verdict::Caution);
        assert!(
            found
                .found
                .ends_with("3/4\" of concrete above and 1\" below"),
            "{}",
            found.found
        );
        let thick = Trial::sound()
            .with("counter.thickness", "4 in")
            .with("counter.reinforcement.cover", "1-1/2 in");
        assert_eq!(thick.worst(CODE), Verdict::Pass);
        // A file that asks for more than the code is held to that.
        let own = "[{name: steel-cover, value: 2 in, source: the engineer}]";
        assert_eq!(thick.with("limits", own).worst(CODE), Verdict::Fail);
        let deep = Trial::sound().with("counter.reinforcement.cover", "1-1/4 in");
        assert_eq!(deep.worst(CODE), Verdict::Fail);
        assert_eq!(
            Trial::sound().without("counter.reinforcement").worst(CODE),
            Verdict::NotChecked
        );
    }
}
