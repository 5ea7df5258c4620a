//! What a licensed electrician must decide.

use super::receptacle::receptacles;
use crate::design::Fuel;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static ELECTRICIAN: Rule = Rule {
    code: "power-electrician",
    family: Family::Services,
    title: "What a licensed electrician must decide",
    about: About {
        checks: "Where the design has a receptacle, an electric appliance or an electric supply, it is always a caution that lists what \
                 a licensed electrician must decide. Without any of them it passes. It never fails and is never left unchecked. It has \
                 no limit, since nothing here sizes a circuit.",
        why: "A wrong wire burns inside a closed face for years before it is seen; a missing bond makes the whole steel frame live.",
        reckoned: "Nothing is reckoned: it only looks whether there is electricity.",
        example: "One receptacle in a face: a caution with the list.",
    },
    limits: &[],
    levers: &[],
    outside: &[Outside {
        what: "what a permit office asks of the electrician: circuit, wire, breaker, bonding, burial, disconnecting",
        origin: Origin::Practice,
        test: "where_there_is_electricity_the_list_is_there",
    }],
    check,
};

/// What is left to the electrician, in the words of the trade.
const DECIDES: [&str; 8] = [
    "the circuit and its load",
    "the size and kind of wire",
    "the breaker",
    "the ground-fault protection and where it is",
    "the bonding of the steel frame and of gas and water pipes",
    "the depth of burial from the house and the conduit's kind",
    "the disconnecting switch",
    "the inspection before the boards go on",
];

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let supply = design.electricity.as_ref().map(|e| e.place.clone());
    let electric = |f: &crate::design::Placed<Fuel>| f.value == Fuel::Electricity;
    let appliance = design
        .appliances
        .iter()
        .find(|a| a.rating.fuel.as_ref().is_some_and(electric));
    let receptacle = receptacles(subject)
        .first()
        .map(|r| r.opening.place.clone());
    let place = supply.or(receptacle).or(appliance.map(|a| a.place.clone()));
    match place {
        None => answers.nothing("there is no electricity"),
        Some(place) => answers
            .caution(
                &place,
                format!("a licensed electrician must decide: {}", DECIDES.join(", ")),
            )
            .hint("have a licensed electrician plan and connect it, with a permit"),
    };
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    // Neither `fail` nor `not checked` can occur: whether there is electricity is always known, and that is all it asks.
    const CODE: &str = "power-electrician";

    #[test]
    fn where_there_is_electricity_the_list_is_there() {
        // Common practice: what a permit office asks.
        let found = Trial::sound().answers(CODE);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].verdict, Verdict::Caution);
        for word in ["circuit", "wire", "breaker", "bonding", "burial"] {
            assert!(found[0].found.contains(word), "{word}");
        }
        let none = Trial::sound().without("openings").without("electricity");
        assert_eq!(none.worst(CODE), Verdict::Pass);
        let appliance = none.with("appliances[ice well].fuel", "electricity");
        assert_eq!(appliance.worst(CODE), Verdict::Caution);
        let only_supply = Trial::sound()
            .without("openings[receptacle]")
            .without("electricity.feeds");
        assert_eq!(only_supply.worst(CODE), Verdict::Caution);
    }
}
