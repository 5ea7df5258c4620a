//! Whether gas pipe passes through steel in a sleeve, and fits the holes there are.

use super::piping::Nominal;
use crate::catalog::PUNCH_OUTS;
use crate::design::{Gas, GasPipe, PipeMaterial};
use crate::diagnostics::{Place, Verdict};
use crate::rules::{About, Answers, Bound, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// Room for a sleeve or bushing.
const ROOM: Limit = Limit {
    name: "gas-sleeve-room",
    what: "how much wider than the pipe the hole in a stud is, for a sleeve or bushing",
    usual: 3.175,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static SLEEVE: Rule = Rule {
    code: "gas-sleeve",
    family: Family::Gas,
    title: "Gas pipe passes through steel in a sleeve or bushing that the hole has room for",
    about: About {
        checks: "The file says that each pipe has a sleeve or bushing where it passes through steel, `gas.sleeves`, and the punch-outs of the studs are wide enough \
                 for the pipe with `gas-sleeve-room` about it. It fails without sleeves, or where a pipe to an appliance is too wide for the \
                 punch-outs; it is a caution where the studs have none and each hole must be cut, and for a pipe that is too wide but serves no appliance itself and so need not pass through the frame. \
                 Corrugated tubing is as wide as its maker says, and is not checked; nor is a pipe of a size that the tables do not hold.",
        why: "The edge of a punched hole is a knife: with every slam of a door it works into the pipe, and zinc against bare steel \
              corrodes. The local code, the appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "Outside diameter of schedule 40 pipe (.840, 1.050, 1.315, 1.660 in; ASME B36.10, value from memory) plus the room, against \
                   the width of a punch-out, 1-1/2 in where the web is deeper than 2-1/2 in (industry guide). The room is common practice.",
        example: "1 in pipe is 1.315 in wide and fits a punch-out of 1-1/2 in with 1/8 in to spare; 1-1/4 in pipe, 1.660 in, does not.",
    },
    limits: &[&ROOM],
    levers: &["gas.sleeves", "gas.pipes[].size"],
    outside: &[
        Outside {
            what: "punch-outs of 1-1/2 in in studs deeper than 2-1/2 in (industry technical guide)",
            origin: Origin::Published,
            test: "one_inch_fits_a_punch_out_and_the_next_size_does_not",
        },
        Outside {
            what: "walls of schedule 40 pipe, ASME B36.10",
            origin: Origin::Memory,
            test: "walls_are_those_of_schedule_40",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let Some(gas) = design.gas.as_ref().filter(|g| !g.pipes.is_empty()) else {
        if let Some(a) = design
            .appliances
            .iter()
            .find(|a| super::supply::burns_gas(a))
        {
            let found = format!("the gas pipe to '{}' is not known", a.name);
            answers.missing(&Place::default(), "gas.pipes", found);
        } else {
            answers.nothing("there is no gas pipe");
        }
        return;
    };
    sleeves(answers, gas);
    let room = subject.bound(&ROOM);
    for pipe in &gas.pipes {
        if pipe.material.value == PipeMaterial::Corrugated {
            let found = format!(
                "'{}' is corrugated tubing, as wide as its maker says",
                pipe.name
            );
            answers
                .say(Verdict::NotChecked, &pipe.place, found)
                .about(&pipe.name)
                .hint("take its width, and the bushing it needs, from its maker");
        } else if let Some(size) = Nominal::named(pipe.size.value) {
            hole(subject, answers, pipe, size, &room);
        } else {
            let size = subject.mm(pipe.size.mm());
            let found = format!(
                "how wide '{}' is outside is not known: {size} is no size of pipe here",
                pipe.name
            );
            answers
                .say(Verdict::NotChecked, &pipe.place, found)
                .about(&pipe.name)
                .hint("measure the pipe, and leave room for a bushing about it");
        }
    }
}

fn sleeves(answers: &mut Answers, gas: &Gas) {
    let Some(sleeves) = &gas.sleeves else {
        let found = "whether gas pipe passes through steel in sleeves is not known";
        answers
            .missing(&gas.place, "sleeves", found)
            .about("sleeves");
        return;
    };
    let (found, hint) = if sleeves.value {
        (
            "each pipe has a sleeve or bushing where it passes through steel",
            "",
        )
    } else {
        (
            "gas pipe passes through steel without sleeve or bushing",
            "put a sleeve or a bushing of plastic or rubber into every hole in steel",
        )
    };
    answers
        .judge(sleeves.value, &sleeves.place, found)
        .about("sleeves")
        .limit(
            "a sleeve or bushing in every hole in steel",
            "common practice",
        )
        .hint(hint);
}

fn hole(subject: &Subject, answers: &mut Answers, pipe: &GasPipe, size: Nominal, room: &Bound) {
    let stud = &subject.design().trade.stud;
    let needs = size.outside().mm() + room.value;
    if stud.depth.mm() <= PUNCH_OUTS.deeper_than + 1e-6 {
        let found = format!(
            "studs {} deep have no punch-outs: '{}' needs holes of {} cut",
            subject.mm(stud.depth.mm()),
            pipe.name,
            subject.mm(needs)
        );
        answers
            .caution(&pipe.place, found)
            .about(&pipe.name)
            .limit("holes as the stud's maker allows", "common practice")
            .hint("let the pipe pass under the frame or through an opening, or cut holes only as the stud's maker allows");
        return;
    }
    let fits = needs <= PUNCH_OUTS.width + 1e-6;
    let verdict = match fits {
        true => Verdict::Pass,
        false if pipe.serves.is_some() => Verdict::Fail,
        false => Verdict::Caution,
    };
    let found = format!(
        "'{}', {}, needs a hole of {} with its sleeve",
        pipe.name,
        size.name_in(subject.notation()),
        subject.mm(needs)
    );
    let hint = if fits {
        ""
    } else {
        "let it pass under the frame or through an opening, or take a smaller pipe if it carries enough"
    };
    answers
        .say(verdict, &pipe.place, found)
        .about(&pipe.name)
        .limit(
            format!(
                "at most {}, the width of a punch-out",
                subject.mm(PUNCH_OUTS.width)
            ),
            "industry technical guide for steel framing, 2024",
        )
        .hint(hint);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "gas-sleeve";

    #[test]
    fn one_inch_fits_a_punch_out_and_the_next_size_does_not() {
        // Published: punch-outs of 1-1/2 in. Values from memory: pipe of 1.315 and 1.660 in.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // 1.050 + .125 in, to the next sixteenth.
        let found = Trial::sound().about(CODE, "to the grill").found;
        assert!(found.contains("a hole of 1 3/16\""), "{found}");
        let at = |pipe: &str, size| Trial::sound().with(&format!("gas.pipes[{pipe}].size"), size);
        assert_eq!(at("to the grill", "1 in").worst(CODE), Verdict::Pass);
        assert_eq!(at("to the grill", "1-1/4 in").worst(CODE), Verdict::Fail);
        assert_eq!(
            at("from the house", "1-1/4 in").worst(CODE),
            Verdict::Caution
        );
    }

    #[test]
    fn without_sleeves_it_fails_and_unsaid_is_not_checked() {
        assert_eq!(
            Trial::sound().with("gas.sleeves", "false").worst(CODE),
            Verdict::Fail
        );
        let found = Trial::sound().without("gas.sleeves").about(CODE, "sleeves");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(found.hint.contains("gas.sleeves"));
        let tube = Trial::sound().with("gas.pipes[to the grill].material", "corrugated");
        assert_eq!(
            tube.about(CODE, "to the grill").verdict,
            Verdict::NotChecked
        );
        assert_eq!(
            Trial::sound().without("gas").worst(CODE),
            Verdict::NotChecked
        );
        let coal = Trial::sound()
            .without("gas")
            .with("appliances[grill].fuel", "charcoal");
        assert_eq!(coal.worst(CODE), Verdict::Pass);
        let odd = Trial::sound().with("gas.pipes[to the grill].size", "7/8 in");
        assert_eq!(odd.about(CODE, "to the grill").verdict, Verdict::NotChecked);
    }

    #[test]
    fn shallow_studs_have_no_holes() {
        // Published: no punch-outs where the web is not deeper than 2-1/2 in.
        let shallow = Trial::sound()
            .with("trade.stud", "250S125-33")
            .with("trade.track", "250T125-33");
        assert_eq!(
            shallow.about(CODE, "to the grill").verdict,
            Verdict::Caution
        );
    }
}
