//! Whether board and coats are as thick as the base channel that receives them.

use crate::diagnostics::{Place, Verdict};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// How much board and base coat may differ from the channel.
const MATCH: Limit = Limit {
    name: "channel-match",
    what: "how much board and base coat together may differ from the depth of the base channel",
    usual: 1.5875,
    unit: Unit::Length,
    source: "common practice: the step of a tape measure",
};

pub(super) static BASE_CHANNEL: Rule = Rule {
    code: "fit-base-channel",
    family: Family::Fit,
    title: "Board and base coat fill the base channel",
    about: About {
        checks: "The board and the base coat together are as deep as the base channel (`trade.base_channel`), to within \
                 `channel-match`. Up to twice that is a caution; more fails, and so does a board that does not go into the channel.",
        why: "The channel's front lip is what the base coat is struck off against. A channel too shallow leaves the coat proud of \
              its support; one too deep leaves a lip that shows and holds water.",
        reckoned: "Difference = channel − (board + base coat). 1/2 in board and 1/4 in base coat make a 3/4 in channel: common \
                   practice.",
        example: "5/8 in board with 3/8 in base coat is 1 in: with a 3/4 in channel it is 1/4 in off, and fails.",
    },
    limits: &[&MATCH],
    levers: &[
        "trade.base_channel",
        "trade.base_coat",
        "trade.board.thickness",
    ],
    outside: &[Outside {
        what: "1/2 in board and 1/4 in base coat make a 3/4 in channel",
        origin: Origin::Practice,
        test: "half_inch_board_and_a_quarter_of_coat_fill_three_quarters",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    if subject.plan.faces.iter().all(|f| f.wall) {
        answers.nothing("every face stands against a wall, so there is no base channel");
        return;
    }
    let Some(channel) = &design.making.base_channel else {
        let trade = Place {
            key: "trade".to_owned(),
            ..Place::default()
        };
        answers.missing(
            &trade,
            "base_channel",
            "the depth of the base channel is not known",
        );
        return;
    };
    let board = design.trade.board_thickness.mm();
    let filling = board + design.trade.base_coat.mm();
    let off = channel.mm() - filling;
    let most = subject.bound(&MATCH);
    let verdict = if board > channel.mm() + 1e-6 {
        Verdict::Fail
    } else if most.allows(off.abs()) {
        Verdict::Pass
    } else if off.abs() <= 2.0 * most.value + 1e-9 {
        Verdict::Caution
    } else {
        Verdict::Fail
    };
    let found = format!(
        "board and base coat are {} deep and the base channel {}",
        subject.mm(filling),
        subject.mm(channel.mm())
    );
    let answer = answers.say(verdict, &channel.place, found);
    let answer = answer.limit(
        format!("within {} of each other", most.spell()),
        most.source.clone(),
    );
    if verdict != Verdict::Pass {
        answer.hint(format!("take a channel {} deep", subject.mm(filling)));
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-base-channel";

    #[test]
    fn half_inch_board_and_a_quarter_of_coat_fill_three_quarters() {
        // Common practice: 1/2 in board + 1/4 in base coat = 3/4 in channel.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        for (channel, verdict) in [
            ("13/16 in", Verdict::Pass),
            ("7/8 in", Verdict::Caution),
            ("5/8 in", Verdict::Caution),
            ("1 in", Verdict::Fail),
            ("7/16 in", Verdict::Fail),
        ] {
            let trial = Trial::sound().with("trade.base_channel", channel);
            assert_eq!(trial.worst(CODE), verdict, "{channel}");
        }
    }

    #[test]
    fn an_unknown_channel_is_not_checked() {
        let found = Trial::sound().without("trade.base_channel").answers(CODE);
        assert_eq!(found[0].verdict, Verdict::NotChecked);
        assert_eq!(found[0].place.key, "trade.base_channel");
    }
}
