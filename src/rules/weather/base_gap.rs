//! Whether boards and coats end clear of the ground.

use crate::design::Surface;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const PAVED: Limit = Limit {
    name: "base-gap-paved",
    what: "from a paved surface up to board and coats",
    usual: 50.8,
    unit: Unit::Length,
    source: "2 in, IRC 2018, R703.7.2.1 for weep screeds, value from memory",
};

const EARTH: Limit = Limit {
    name: "base-gap-earth",
    what: "from earth up to board and coats",
    usual: 101.6,
    unit: Unit::Length,
    source: "4 in, IRC 2018, R703.7.2.1 for weep screeds, value from memory",
};

pub(super) static BASE_GAP: Rule = Rule {
    code: "weather-base-gap",
    family: Family::Weather,
    title: "Boards and coats end clear of the ground",
    about: About {
        checks: "From the highest point of the ground to the lower edge of boards and coats: `base-gap-paved` over slab, pavers or a deck, `base-gap-earth` over bare ground. It cautions down to half of it and fails below.",
        why: "Stucco drinks. Where it touches the ground it is wet to the knee, and in winter the face comes off.",
        reckoned: "`levels.base_gap` against the clearances of weep screeds (IRC 2018, R703.7.2.1, from memory), which are made for houses.",
        example: "2 in over a slab passes; over earth it is half of what is asked: a caution.",
    },
    limits: &[&PAVED, &EARTH],
    levers: &["levels.base_gap"],
    outside: &[Outside {
        what: "2 in above paved surfaces, 4 in above earth (IRC 2018, R703.7.2.1)",
        origin: Origin::Memory,
        test: "earth_asks_for_more_than_paving",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let Some(surface) = &design.site.surface else {
        answers.missing(
            &design.site.place,
            "surface",
            "what lies on the ground under the island",
        );
        return;
    };
    let limit = if surface.value == Surface::Bare {
        &EARTH
    } else {
        &PAVED
    };
    let least = subject.bound(limit);
    let gap = &design.levels.base_gap;
    let found = format!(
        "boards and coats end {} above the ground",
        subject.mm(gap.mm())
    );
    // 50 mm are 2 in to a builder.
    let clear = gap.mm() + 1.0;
    let answer = if least.is_reached_by(clear) {
        answers.pass(&gap.place, found)
    } else if least.is_reached_by(clear * 2.0) {
        answers.caution(&gap.place, found)
    } else {
        answers.fail(&gap.place, found)
    };
    answer
        .at_least(&least)
        .hint("higher sleepers and base gap, or paving round the island");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-base-gap";

    #[test]
    fn earth_asks_for_more_than_paving() {
        let over = |surface: &str, gap: &str| {
            let trial = Trial::sound()
                .with("site.surface", surface)
                .with("trade.sleeper.height", "3/4 in");
            trial.with("levels.base_gap", gap).worst(CODE)
        };
        let slab = "{slab: {thickness: 4 in}}";
        assert_eq!(over(slab, "2 in"), Verdict::Pass);
        assert_eq!(over(slab, "1-1/2 in"), Verdict::Caution);
        assert_eq!(over(slab, "7/8 in"), Verdict::Fail);
        assert_eq!(over("bare", "2 in"), Verdict::Caution);
        assert_eq!(over("bare", "1-3/4 in"), Verdict::Fail);
        assert_eq!(over(slab, "50 mm"), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("site.surface").worst(CODE),
            Verdict::NotChecked
        );
    }
}
