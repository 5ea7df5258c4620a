//! Whether an overhang holds as a strip that sticks out.

use super::overhang::{
    EDGE_LOAD, EDGE_WIDTH, Overhang, YIELD, bars_needed, counter, holds, steel_without_cover,
    with_strength,
};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{Notation, Stress, Unit};

/// Against cracking, where nothing but concrete holds it.
pub(super) const SAFETY: Limit = Limit {
    name: "overhang-safety",
    what: "how many times the load it takes to crack a plain overhang",
    usual: 2.0,
    unit: Unit::Count,
    source: "common practice",
};

/// As far as plain concrete may stick out without a word.
const PLAIN: Limit = Limit {
    name: "plain-overhang",
    what: "how far a plain slab may pass the steel before bars or mesh are asked for",
    usual: 101.6,
    unit: Unit::Length,
    source: "common practice",
};

/// From one bracket to the next.
pub(super) const BRACKETS: f64 = 609.6;

pub(super) static OVERHANG_BENDING: Rule = Rule {
    code: "slab-overhang-bending",
    family: Family::Slab,
    title: "Each overhang bears its own weight and a person on its edge",
    about: About {
        checks: "Each side of the counter that passes the frame is taken as a strip that sticks out from the steel, or from the end \
                 of the brackets where there are some. It passes where brackets reach its edge, where mesh or bars near the top bear \
                 the factored moment, or where plain concrete does over a short length (`plain-overhang`). Steel whose \
                 `counter.reinforcement.cover` is not in the file is not counted: where it decides, it is not checked. It cautions where plain concrete would not crack but is \
                 all that holds it, and fails where the load comes nearer to cracking it than `overhang-safety`.",
        why: "A counter cracks along the line of the cabinet when somebody sits on its edge, all at once and without warning. \
              Nobody can see from above whether there is steel in it.",
        reckoned: "For each unit of width: M = w L²/2 + rim + P L / (b + L), with w the weight of the slab (150 pcf), L from the steel to the \
                   edge, P `edge-load` over the width b, `edge-load-width`, spread at 45 degrees. Plain concrete cracks at \
                   fr S = 7.5 √f'c h²/6 (ACI 318-19, 19.2.3.1) and by design bears 0.60 · 5 √f'c h²/6 (14.5.2.1a); a plain cantilever \
                   lies outside the scope of that chapter (14.1.3, value from memory), so this value is an alarm and no \
                   licence. With steel: 0.90 As fy (d - a/2) against 1.2 dead + 1.6 live (22.2, Table 5.3.1).",
        example: "2 in of 4,000 psi concrete that pass the steel by 10.9 in with a person of 300 lb: 154 ft·lb a foot, with factors 242; \
                  it cracks at 316, by design bears 126. Without steel: a caution to lay mesh, bars or brackets. Wires of 1/8 in \
                  every 2 in, 3/4 in below the top, bear some 375: it passes.",
    },
    limits: &[&EDGE_LOAD, &EDGE_WIDTH, &YIELD, &SAFETY, &PLAIN],
    levers: &[
        "counter.thickness",
        "counter.overhang.seating",
        "counter.overhang.working",
        "counter.overhang.left",
        "counter.overhang.right",
        "counter.brackets.reach",
        "counter.reinforcement.mesh_spacing",
        "counter.reinforcement.bar_spacing",
    ],
    outside: &[
        Outside {
            what: "7.5 √f'c (ACI 318-19, 19.2.3.1) and 5 √f'c with φ 0.60 (14.5.2.1a, Table 21.2.1): the published coefficients, at 4,000 psi",
            origin: Origin::Published,
            test: "stresses_of_concrete_are_those_of_the_code",
        },
        Outside {
            what: "a singly reinforced strip by ACI 318-19, 22.2 (from memory)",
            origin: Origin::Worked,
            test: "a_reinforced_strip_holds_what_the_formula_gives_by_hand",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some((all, strength)) = with_strength(subject, answers) else {
        return;
    };
    for overhang in &all {
        one(subject, answers, overhang, strength);
    }
}

fn one(subject: &Subject, answers: &mut Answers, overhang: &Overhang, strength: Stress) {
    let action = overhang.action(subject);
    let holds = holds(subject, strength);
    let safety = subject.bound(&SAFETY);
    let service = (action.dead + action.live).max(1e-9);
    let times = holds.cracks / service;
    let cracks = subject.times(times);
    let (unit, edge) = match subject.notation() {
        Notation::Imperial => (304.8, "a foot"),
        Notation::Metric => (1000.0, "a metre"),
    };
    let moment = |m: f64| format!("{} {edge}", subject.spell(Unit::Moment, m * unit));
    let out = subject.mm(overhang.free);
    let place = &overhang.given.place;
    let from = if overhang.free < overhang.whole {
        "its brackets"
    } else {
        "the steel"
    };
    let head = format!("{}: the slab passes {from} by {out}", overhang.name);
    let factored = moment(action.factored());
    let answer = if overhang.free <= 0.0 {
        answers.pass(
            place,
            format!("{}: its brackets reach its edge", overhang.name),
        )
    } else if holds.steel >= action.factored() {
        let bears = moment(holds.steel);
        answers.pass(
            place,
            format!("{head}; its steel bears {bears} of edge where {factored} is asked"),
        )
    } else if holds.plain >= action.factored() && subject.bound(&PLAIN).allows(overhang.free) {
        let bears = moment(holds.plain);
        answers.pass(
            place,
            format!("{head}; plain concrete bears {bears} of edge where {factored} is asked"),
        )
    } else if steel_without_cover(subject) {
        let found = format!("{head}; how deep its steel lies");
        answers.missing(&counter(), "reinforcement.cover", found)
    } else if safety.is_reached_by(times) {
        let found = format!(
            "{head} and only concrete holds it; it would crack at {cracks} times the load of a person"
        );
        answers
            .caution(place, found)
            .hint(remedy(subject, overhang, strength))
    } else {
        let found =
            format!("{head}; it would crack at {cracks} times the load of a person on its edge");
        answers
            .fail(place, found)
            .hint(remedy(subject, overhang, strength))
    };
    answer.about(overhang.name).at_least(&safety);
}

/// Where brackets or bars are needed, and how many.
fn remedy(subject: &Subject, overhang: &Overhang, strength: Stress) -> String {
    let count = |apart: f64| (overhang.length / apart).ceil() as u32 + 1;
    let brackets = format!(
        "{} brackets along the {}, every {} at most and to within {} of the edge",
        count(BRACKETS),
        overhang.name,
        subject.mm(BRACKETS),
        subject.mm(76.2),
    );
    let factored = overhang.action(subject).factored();
    let bars = bars_needed(subject, strength, factored).map(|(size, apart)| {
        format!(
            ", or {} bars of {} across it, every {} and as far back over the frame as they stick out",
            count(apart),
            subject.mm(size),
            subject.mm(apart),
        )
    });
    format!(
        "{brackets}{}; an engineer decides",
        bars.unwrap_or_default()
    )
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-overhang-bending";
    const SEATING: &str = "cook run, seating side";

    fn plain(overhang: &str) -> Trial {
        Trial::sound()
            .without("counter.reinforcement")
            .without("counter.brackets")
            .with("counter.overhang.seating", overhang)
    }

    #[test]
    fn what_holds_it_decides() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // By hand: 2 in, 4,000 psi, 10 in past the face and 10.875 past the steel: dead .1736 × 10.875²/2 + .0868 × 1.5 × 10.125 =
        // 11.6, live 300 × 10.875 / 22.875 = 142.6, together 154 in·lb an inch; it cracks at 474.3 × 4/6 = 316: 2.05 times.
        let found = plain("10 in").about(CODE, SEATING);
        assert_eq!(found.verdict, Verdict::Caution);
        assert!(found.found.contains("2.0 times"), "{}", found.found);
        assert_eq!(plain("14 in").about(CODE, SEATING).verdict, Verdict::Fail);
        assert_eq!(plain("2 in").about(CODE, SEATING).verdict, Verdict::Pass);
        let unknown = Trial::sound().without("counter.strength");
        assert_eq!(unknown.worst(CODE), Verdict::NotChecked);
        assert_eq!(unknown.answers(CODE)[0].place.key, "counter.strength");
        // 14 in, 14.875 past the steel: dead 21.2, live 300 × 14.875 / 26.875 = 166, with factors 291 in·lb an inch. Bars of 3/8 in
        // (.1104 in²) every 6 in, 3/4 in below the top: T 1,104 lb, a .325 in, d 1.0625 in: 894: three times the thickness governs.
        let hint = plain("14 in").about(CODE, SEATING).hint;
        assert!(
            hint.contains("bars of 3/8\" across it, every 6\""),
            "{hint}"
        );
        // Mesh whose depth is not known neither holds nor fails; brackets up to the edge leave nothing to bend.
        let deep = Trial::sound()
            .without("counter.reinforcement.cover")
            .without("counter.brackets");
        let found = deep.about(CODE, SEATING);
        assert_eq!(
            (found.verdict, found.place.key.as_str()),
            (Verdict::NotChecked, "counter.reinforcement.cover")
        );
        let whole = plain("10 in").with("counter.brackets", "{spacing: 24 in, reach: 10 in}");
        let found = whole.about(CODE, SEATING);
        assert!(
            found.found.ends_with("its brackets reach its edge"),
            "{}",
            found.found
        );
        let braced = plain("14 in").with("counter.brackets", "{spacing: 24 in, reach: 11 in}");
        assert_eq!(braced.about(CODE, SEATING).verdict, Verdict::Pass);
    }
}
