//! Whether the slab bears a person between two brackets.

use super::concrete::{FACTORS, Steel, WEIGHT};
use super::overhang::{
    EDGE_LOAD, EDGE_WIDTH, Overhang, YIELD, counter, holds, overhangs, steel_without_cover,
};
use super::overhang_bending::SAFETY;
use crate::design::{Brackets, Placed, Side};
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};
use crate::units::Stress;

pub(super) static BRACKET_SPAN: Rule = Rule {
    code: "slab-bracket-span",
    family: Family::Slab,
    title: "The slab bears a person half way between two brackets",
    about: About {
        checks: "The overhang as a strip that runs along the edge from bracket to bracket, a person standing half way. It passes where \
                 mesh, or plain concrete by its design strength, bears the factored moment; it cautions where plain concrete does not but \
                 stays `overhang-safety` times away from cracking, and fails nearer. Without brackets there is nothing to ask.",
        why: "Brackets far apart hold the overhang only where they are: between them the edge sags and cracks over the bracket.",
        reckoned: "M = 3 P L / 16 + w b L²/8 over the strip's width b: the moment at the fixed end of a beam that is fixed at one end and \
                   supported at the other (AISC Manual, Table 3-23, cases 13 and 12, values from memory), which no span of a row comes \
                   above; L is `counter.brackets.spacing`, P `edge-load`, w the weight of the slab (150 pcf), b from the steel to the edge \
                   but no more than `edge-load-width` + L/2. That the frame carries the strip's inner edge is left out. Cracking at \
                   7.5 √f'c b h²/6 (ACI 318-19, 19.2.3.1), plain design strength 0.60 · 5 √f'c b h²/6 (14.5.2.1a), mesh by 0.90 As fy (d - a/2) \
                   (22.2) at the face where it lies the worse, against 1.2 dead + 1.6 live. Bars across the overhang do not help along it.",
        example: "2 in of 4,000 psi concrete, 10.9 in past the steel, brackets 24 in apart, 300 lb: 137 in·lb an inch, 214 with factors; it \
                  cracks at 316, by design bears 126. Mesh of 1/8 in every 2 in bears 251: it passes; without mesh it is a caution.",
    },
    limits: &[&EDGE_LOAD, &EDGE_WIDTH, &YIELD, &SAFETY],
    levers: &[
        "counter.brackets.spacing",
        "counter.thickness",
        "counter.reinforcement.mesh_spacing",
    ],
    outside: &[
        Outside {
            what: "3 P L / 16 and w L²/8 (AISC Manual, Table 3-23, cases 13 and 12, from memory), by hand at 24 in",
            origin: Origin::Memory,
            test: "the_strip_between_brackets_is_a_beam",
        },
        Outside {
            what: "7.5 √f'c and 5 √f'c with φ 0.60 (ACI 318-19): the published coefficients, at 4,000 psi",
            origin: Origin::Published,
            test: "stresses_of_concrete_are_those_of_the_code",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let casting = &subject.design().counter.casting;
    let Some(brackets) = &casting.brackets else {
        answers.nothing("there are no brackets");
        return;
    };
    let all = overhangs(subject);
    let seating: Vec<_> = all.iter().filter(|o| o.side == Side::Seating).collect();
    if seating.is_empty() {
        answers
            .nothing("the counter passes no seating side: there is nothing for brackets to carry");
        return;
    }
    let Some(strength) = &casting.strength else {
        answers.missing(&counter(), "strength", "how strong the concrete is");
        return;
    };
    for overhang in seating {
        one(subject, answers, overhang, brackets, strength.value);
    }
}

/// Moments at the bracket for each millimetre of the strip's width, N: of its own weight, and of the person.
fn moments(subject: &Subject, overhang: &Overhang, span: f64) -> (f64, f64) {
    let dead = WEIGHT * subject.design().counter.thickness.mm() * span * span / 8.0;
    let spread = subject.bound(&EDGE_WIDTH).value + span / 2.0;
    let width = overhang.whole.min(spread).max(1.0);
    (
        dead,
        3.0 / 16.0 * subject.bound(&EDGE_LOAD).value * span / width,
    )
}

fn casting_has_mesh(subject: &Subject) -> bool {
    let casting = &subject.design().counter.casting;
    casting.reinforcement.mesh.is_some()
}

/// What mesh bears along the edge, at whichever face it lies worse for; nothing without.
fn mesh(subject: &Subject, strength: Stress) -> f64 {
    let counter = &subject.design().counter;
    let r = &counter.casting.reinforcement;
    let (Some(wire), Some(apart), Some(cover)) = (&r.mesh, &r.mesh_spacing, &r.cover) else {
        return 0.0;
    };
    let top = Steel::round(wire.value, apart.value, cover.value, counter.thickness.mm());
    let bottom = Steel {
        depth: cover.mm() + wire.mm() / 2.0,
        ..top
    };
    let fy = subject.bound(&YIELD).value;
    top.moment(strength, fy).min(bottom.moment(strength, fy))
}

fn one(
    subject: &Subject,
    answers: &mut Answers,
    overhang: &Overhang,
    brackets: &Placed<Brackets>,
    strength: Stress,
) {
    let span = brackets.spacing.mm().min(overhang.length);
    let (dead, live) = moments(subject, overhang, span);
    let factored = FACTORS.0 * dead + FACTORS.1 * live;
    let (holds, mesh) = (holds(subject, strength), mesh(subject, strength));
    let safety = subject.bound(&SAFETY);
    let times = holds.cracks / (dead + live).max(1e-9);
    let head = format!(
        "{}: between brackets {} apart",
        overhang.name,
        subject.mm(span)
    );
    let place = &brackets.spacing.place;
    let answer = if mesh >= factored {
        answers.pass(place, format!("{head} the mesh bears a person"))
    } else if holds.plain >= factored {
        answers.pass(place, format!("{head} the concrete bears a person"))
    } else if steel_without_cover(subject) && casting_has_mesh(subject) {
        let found = format!("{head} the slab bears a person or not: how deep its mesh lies");
        answers.missing(&counter(), "reinforcement.cover", found)
    } else {
        let times_said = subject.times(times);
        let found =
            format!("{head} the slab would crack at {times_said} times the load of a person");
        if safety.is_reached_by(times) {
            answers.caution(place, found)
        } else {
            answers.fail(place, found)
        }
    };
    answer.about(overhang.name).at_least(&safety).hint(
        "brackets nearer to each other, mesh in the slab, or a thicker slab; an engineer decides",
    );
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-bracket-span";
    const SEATING: &str = "cook run, seating side";

    fn apart(inches: u32, trial: Trial) -> Trial {
        trial.with(
            "counter.brackets",
            &format!("{{spacing: {inches} in, reach: 8 in}}"),
        )
    }

    #[test]
    fn the_strip_between_brackets_is_a_beam() {
        // By hand: L 24 in, b 10.875 in, 300 lb: 3/16 × 300 × 24 / 10.875 = 124.1; .1736 × 24²/8 = 12.5; together 136.6 in·lb an inch,
        // with factors 213.6. Plain: it cracks at 316.2, 2.3 times; by design it bears 126.5. Mesh: As .00614 in², T 368 lb, the worse
        // depth 3/4 + 1/16 in, a .108 in: 0.9 × 368 × .758 = 251.
        assert_eq!(Trial::sound().about(CODE, SEATING).verdict, Verdict::Pass);
        // 30 in: 155.2 + 19.5, with factors 272, more than the mesh bears, though it would bear 375 were it pulled at its own face
        // alone; it cracks at 1.8 times.
        let wide = apart(30, Trial::sound()).about(CODE, SEATING);
        assert_eq!(wide.verdict, Verdict::Fail);
        assert!(wide.found.contains("1.8 times"), "{}", wide.found);
        let plain = || Trial::sound().without("counter.reinforcement");
        let found = plain().about(CODE, SEATING);
        assert_eq!(found.verdict, Verdict::Caution);
        assert!(
            found.found.ends_with("2.3 times the load of a person"),
            "{}",
            found.found
        );
        // 12 in: 62.1 + 3.1, with factors 103: plain concrete is enough. 36 in: 186 + 28 = 214: 1.5 times.
        let at = |inches: u32| apart(inches, plain()).about(CODE, SEATING).verdict;
        assert_eq!(at(12), Verdict::Pass);
        assert_eq!(at(36), Verdict::Fail);
        let unknown = Trial::sound().without("counter.strength");
        assert_eq!(unknown.worst(CODE), Verdict::NotChecked);
        let deep = Trial::sound().without("counter.reinforcement.cover");
        assert_eq!(
            deep.about(CODE, SEATING).place.key,
            "counter.reinforcement.cover"
        );
        let none = Trial::sound().without("counter.brackets");
        assert_eq!(none.worst(CODE), Verdict::Pass);
    }

    #[test]
    fn nearer_brackets_and_a_thicker_slab_are_never_worse() {
        let rows: Vec<_> = (8..=72)
            .step_by(8)
            .map(|i| apart(i, Trial::sound()).worst(CODE))
            .collect();
        assert!(rows.is_sorted(), "{rows:?}");
        assert_eq!(rows.last(), Some(&Verdict::Fail));
        let thin = Trial::sound().without("counter.reinforcement");
        let mut rows: Vec<_> = ["1-1/4 in", "1-1/2 in", "2 in", "2-1/2 in", "3 in", "4 in"]
            .iter()
            .map(|t| thin.clone().with("counter.thickness", t).worst(CODE))
            .collect();
        rows.reverse();
        assert!(rows.is_sorted(), "{rows:?}");
    }
}
