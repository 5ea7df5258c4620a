//! Whether pavers or a deck carry the island.

use super::stance::{Stance, surface_of};
use crate::design::Surface;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{PSF, Unit};

const DECK: Limit = Limit {
    name: "deck-load",
    what: "load on each square foot of a deck",
    usual: 40.0 * PSF,
    unit: Unit::AreaLoad,
    source: "live load of decks, IRC 2015, Table R301.5",
};

const THICK: Limit = Limit {
    name: "paver-thickness",
    what: "thickness of pavers under a sleeper",
    usual: 60.0,
    unit: Unit::Length,
    source: "common practice, 60 mm or 2-3/8 in",
};

pub(super) static PAVERS: Rule = Rule {
    code: "ground-pavers",
    family: Family::Ground,
    title: "Pavers, slab or deck carry the island",
    about: About {
        checks: "On a deck: dead weight over the frame's footprint against the load that decks are built for; it fails above it, and below it is still a caution, for an \
                 engineer must look at the joists. On pavers: their thickness, and a caution that they settle. On a slab of 4 in or on bare ground it passes; thinner slabs are a caution.",
        why: "A deck is built for people, not for a ton that stays. Pavers tilt one by one and take the island with them.",
        reckoned: "Weight of the runs / (length × depth of their frames), against 40 psf (IRC 2015, Table R301.5).",
        example: "1,600 lb on 25 sq ft are 64 psf: more than a deck's 40, it fails.",
    },
    limits: &[&DECK, &THICK],
    levers: &["counter.thickness"],
    outside: &[Outside {
        what: "40 psf on decks (IRC 2015, Table R301.5)",
        origin: Origin::Published,
        test: "a_deck_is_built_for_people",
    }],
    check,
};

/// A slab on the ground that carries an island without a word: 4 in, common practice.
const SLAB: f64 = 101.6;

fn check(subject: &Subject, answers: &mut Answers) {
    let site = &subject.design().site;
    let Some(surface) = surface_of(site, answers) else {
        return;
    };
    let place = &surface.place;
    match &surface.value {
        Surface::Bare => {
            answers
                .pass(place, "the sleepers stand on the ground itself")
                .hint("compact it, and lay gravel under the sleepers");
        }
        Surface::Slab { thickness } if thickness.mm() < SLAB - 1e-6 => {
            let found = format!(
                "the slab on the ground is {} thick",
                subject.mm(thickness.mm())
            );
            let limit = format!("at least {}", subject.mm(SLAB));
            answers
                .caution(place, found)
                .limit(limit, "common practice")
                .hint(
                    "look for cracks, and cast footings where the sleepers come if there are any",
                );
        }
        Surface::Slab { thickness } => {
            answers.pass(
                place,
                format!("a slab of {} carries it", subject.mm(thickness.mm())),
            );
        }
        Surface::Pavers { thickness, .. } => {
            let thick = subject.bound(&THICK);
            let found = format!(
                "it stands on pavers {} thick, which settle one by one",
                subject.mm(thickness.mm())
            );
            let answer = if thick.is_reached_by(thickness.mm()) {
                answers.caution(place, found)
            } else {
                answers.fail(place, found)
            };
            answer.at_least(&thick).hint("take the pavers up under the sleepers and cast footings, or lay them in mortar on a slab");
        }
        Surface::Deck => deck(subject, answers),
    }
}

fn deck(subject: &Subject, answers: &mut Answers) {
    let stances = (0..subject.design().runs.len()).map(|i| Stance::of(subject, i));
    let (weight, area) = stances.fold((0.0, 0.0), |(w, a), s| {
        (w + s.weight, a + s.length * s.depth)
    });
    let load = weight / f64::max(area, 1.0);
    let most = subject.bound(&DECK);
    let found = format!(
        "the island presses on the deck with {}",
        subject.spell(Unit::AreaLoad, load)
    );
    let place = subject
        .design()
        .site
        .surface
        .as_ref()
        .map(|s| s.place.clone())
        .unwrap_or_default();
    let answer = if most.allows(load) {
        answers.caution(&place, found)
    } else {
        answers.fail(&place, found)
    };
    answer
        .at_most(&most)
        .hint("let an engineer look at the joists, or carry it on footings through the deck");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "ground-pavers";

    #[test]
    fn a_deck_is_built_for_people() {
        let on = |surface: &str| Trial::sound().with("site.surface", surface).worst(CODE);
        // 25 psf of slab and as much of frame, board and stucco: more than 40 psf.
        assert_eq!(on("deck"), Verdict::Fail);
        assert_eq!(
            on("{pavers: {size: 12 in, thickness: 2-3/8 in}}"),
            Verdict::Caution
        );
        assert_eq!(
            on("{pavers: {size: 12 in, thickness: 1-1/2 in}}"),
            Verdict::Fail
        );
        assert_eq!(on("{slab: {thickness: 4 in}}"), Verdict::Pass);
        assert_eq!(on("{slab: {thickness: 3 in}}"), Verdict::Caution);
        assert_eq!(on("bare"), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("site.surface").worst(CODE),
            Verdict::NotChecked
        );
    }
}
