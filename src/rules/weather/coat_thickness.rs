//! Whether the coats are as thick as their backing asks.

use crate::design::Backing;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const BOARD: Limit = Limit {
    name: "coats-on-board",
    what: "base and finish coat together on cement board",
    usual: 6.35,
    unit: Unit::Length,
    source: "common practice: 1/4 in with reinforcing mesh, and the finish",
};

const LATH: Limit = Limit {
    name: "coats-on-lath",
    what: "base and finish coat together on metal lath",
    usual: 22.225,
    unit: Unit::Length,
    source: "7/8 in, ASTM C926",
};

const MASONRY: Limit = Limit {
    name: "coats-on-masonry",
    what: "two coats on masonry",
    usual: 12.7,
    unit: Unit::Length,
    source: "1/2 in, ASTM C926; three coats 5/8 in",
};

const CONCRETE: Limit = Limit {
    name: "coats-on-concrete",
    what: "two coats on cast concrete",
    usual: 9.525,
    unit: Unit::Length,
    source: "3/8 in, ASTM C926",
};

pub(super) static COAT_THICKNESS: Rule = Rule {
    code: "weather-coat-thickness",
    family: Family::Weather,
    title: "The coats are as thick as what they lie on asks",
    about: About {
        checks: "Base coat and finish coat together against the thickness for `trade.backing`. It passes from it to half as much again, cautions beyond that (thick coats crack and sag), and fails below it.",
        why: "A thin coat shows every joint of the board and lets water through; a thick one falls off by its own weight.",
        reckoned: "`trade.base_coat` + `trade.finish_coat` against ASTM C926: on lath 7/8 in, on masonry 1/2 in in two coats, on cast concrete 3/8 in. On cement board the base coat with its mesh by common practice.",
        example: "1/4 in base and 1/8 in finish on board are 3/8 in: it passes. On lath they fail.",
    },
    limits: &[&BOARD, &LATH, &MASONRY, &CONCRETE],
    levers: &["trade.base_coat", "trade.finish_coat"],
    outside: &[Outside {
        what: "3/8 in on cast concrete, 1/2 in on masonry, 7/8 in on lath (ASTM C926)",
        origin: Origin::Published,
        test: "each_backing_asks_for_its_own",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let Some(backing) = &design.making.backing else {
        let trade = crate::diagnostics::Place {
            key: "trade".to_owned(),
            ..crate::diagnostics::Place::default()
        };
        answers.missing(&trade, "backing", "what the coats lie on");
        return;
    };
    let (limit, name) = match backing.value {
        Backing::Board => (&BOARD, "cement board"),
        Backing::Lath => (&LATH, "metal lath"),
        Backing::Masonry => (&MASONRY, "masonry"),
        Backing::Concrete => (&CONCRETE, "cast concrete"),
    };
    let least = subject.bound(limit);
    let thick = (design.trade.base_coat.value + design.trade.finish_coat.value).mm();
    let found = format!(
        "base and finish coat are {} together on {name}",
        subject.mm(thick)
    );
    let place = if design.trade.base_coat.place.is_known() {
        &design.trade.base_coat.place
    } else {
        &backing.place
    };
    let answer = if !least.is_reached_by(thick) {
        answers
            .fail(place, found)
            .hint("a thicker base coat, in two passes")
    } else if thick > 1.5 * least.value + 1e-6 {
        answers
            .caution(place, found)
            .hint("lay it in several coats, each scratched and kept damp")
    } else {
        answers.pass(place, found)
    };
    answer.at_least(&least);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-coat-thickness";

    #[test]
    fn each_backing_asks_for_its_own() {
        let on = |backing: &str, base: &str| {
            let trial = Trial::sound().with("trade.backing", backing);
            trial.with("trade.base_coat", base).worst(CODE)
        };
        // ASTM C926, with a finish of 1/8 in: 3/8, 1/2 and 7/8 in together.
        assert_eq!(on("concrete", "1/4 in"), Verdict::Pass);
        assert_eq!(on("concrete", "3/16 in"), Verdict::Fail);
        assert_eq!(on("masonry", "3/8 in"), Verdict::Pass);
        assert_eq!(on("masonry", "5/16 in"), Verdict::Fail);
        assert_eq!(on("lath", "3/4 in"), Verdict::Pass);
        assert_eq!(on("lath", "11/16 in"), Verdict::Fail);
        assert_eq!(on("board", "1/4 in"), Verdict::Pass);
        assert_eq!(on("board", "1/2 in"), Verdict::Caution);
        assert_eq!(
            Trial::sound().without("trade.backing").worst(CODE),
            Verdict::NotChecked
        );
    }
}
