//! What is the heaviest single thing to lift.

use crate::catalog::{Form, Need, density};
use crate::diagnostics::Place;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{Mass, Unit};

const ONE: Limit = Limit {
    name: "lift-alone",
    what: "what one person lifts alone",
    usual: 23.0,
    unit: Unit::Mass,
    source: "load constant of the NIOSH lifting equation (1994), 23 kg or 51 lb, value from memory",
};

const FOUR: Limit = Limit {
    name: "lift-together",
    what: "what four people lift together without tackle",
    usual: 92.0,
    unit: Unit::Mass,
    source: "four times the load constant of the NIOSH lifting equation, value from memory; more than four do not find room round it",
};

pub(super) static HEAVIEST_LIFT: Rule = Rule {
    code: "ground-heaviest-lift",
    family: Family::Ground,
    title: "The heaviest single thing can be lifted",
    about: About {
        checks: "Every sheet of board, every appliance and filling whose weight the file gives, and the heaviest bag of concrete that the shops sell. It passes up to `lift-alone`, cautions with the number of people up to \
                 `lift-together`, and fails beyond it: a hoist or a cart.",
        why: "Backs break before islands do, and a grill that is dropped into its cutout breaks the counter.",
        reckoned: "A sheet weighs length × width × thickness × 72 pcf (3 psf at half an inch, value from memory); the rest as given. One person lifts 51 lb at best (NIOSH).",
        example: "A sheet of 4 × 8 ft, 1/2 in thick, weighs 96 lb: two people. A grill of 210 lb needs more than four: a hoist.",
    },
    limits: &[&ONE, &FOUR],
    levers: &["trade.board.thickness"],
    outside: &[Outside {
        what: "51 lb, the load constant of the NIOSH lifting equation (1994)",
        origin: Origin::Memory,
        test: "who_lifts_what",
    }],
    check,
};

/// One thing to lift: its name, what it weighs, its place in the file.
type Thing = (String, Mass, Place);

/// The things, the sheet of board first.
fn things(subject: &Subject) -> Vec<Thing> {
    let design = subject.design();
    let trade = &design.trade;
    let sheet = trade.board_length.value * trade.board_width.value * trade.board_thickness.value;
    let mut all = vec![(
        "a sheet of board".to_owned(),
        density::CEMENT_BOARD.of(sheet),
        trade.board_thickness.place.clone(),
    )];
    let appliances = design.appliances.iter().filter_map(|a| {
        let weight = a.rating.weight.as_ref()?;
        Some((format!("'{}'", a.name), weight.value, weight.place.clone()))
    });
    all.extend(appliances);
    let openings = design.openings.iter().filter_map(|o| {
        let weight = o.hardware.weight.as_ref()?;
        let name = format!("what fills '{}'", o.name);
        Some((name, weight.value, weight.place.clone()))
    });
    all.extend(openings);
    let bags = design
        .supplies
        .of(&Need::Concrete)
        .filter_map(|s| match &s.form {
            Form::Bag { mass, .. } => Some(*mass),
            _ => None,
        });
    let heaviest = bags.fold(Mass::ZERO, Mass::max);
    if heaviest > Mass::ZERO {
        all.push(("a bag of concrete".to_owned(), heaviest, Place::default()));
    }
    all
}

fn check(subject: &Subject, answers: &mut Answers) {
    let (one, four) = (subject.bound(&ONE), subject.bound(&FOUR));
    let (name, mass, place) =
        things(subject)
            .into_iter()
            .fold((String::new(), Mass::ZERO, Place::default()), |a, b| {
                if b.1 > a.1 { b } else { a }
            });
    let kg = mass.kg();
    let people = (kg / one.value.max(1e-9)).ceil();
    let found = format!(
        "the heaviest single thing is {name}: {}",
        subject.spell(Unit::Mass, kg)
    );
    let place = &place;
    let answer = if one.allows(kg) {
        answers.pass(place, found).at_most(&one)
    } else if four.allows(kg) {
        answers
            .caution(place, found)
            .at_most(&one)
            .hint(format!("{people:.0} people lift it"))
    } else {
        answers
            .fail(place, found)
            .at_most(&four)
            .hint("a hoist, a cart, or take it apart")
    };
    answer.about(name);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;
    use crate::units::Length;

    const CODE: &str = "ground-heaviest-lift";

    // Nothing it asks can be missing: what has no weight in the file is not weighed.
    #[test]
    fn who_lifts_what() {
        // 4 × 8 ft × 1/2 in at 72 pcf: 96 lb.
        let sheet = Length::inches(48.0) * Length::inches(96.0) * Length::inches(0.5);
        assert!((density::CEMENT_BOARD.of(sheet).kg() / 0.453_592_37 - 96.0).abs() < 1e-6);
        // The grill of 120 lb: three people. Without it a bag of 80 lb.
        let found = Trial::sound().about(CODE, "'grill'");
        assert_eq!(
            (found.verdict, found.hint.as_str()),
            (Verdict::Caution, "3 people lift it")
        );
        let light = Trial::sound().without("appliances[grill].weight");
        assert_eq!(
            light.about(CODE, "a bag of concrete").verdict,
            Verdict::Caution
        );
        let heavy = Trial::sound().with("appliances[grill].weight", "210 lb");
        assert_eq!(heavy.worst(CODE), Verdict::Fail);
        let strong = light.with(
            "limits",
            "[{name: lift-alone, value: 40 kg, source: two who know each other}]",
        );
        assert_eq!(strong.worst(CODE), Verdict::Pass);
    }
}
