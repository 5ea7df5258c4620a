//! Whether gas and electricity share a closed room.

use super::cylinder_enclosure::stands_in;
use super::spaces::spaces;
use super::supply::burns_gas;
use crate::diagnostics::Verdict;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static AND_ELECTRICITY: Rule = Rule {
    code: "gas-and-electricity",
    family: Family::Gas,
    title: "Gas and electricity do not share a closed room, or share it with care",
    about: About {
        checks: "No compartment, or the whole inside where the file names none, holds both gas and electricity: gas appliances or a \
                 propane cylinder on the one hand, receptacles, refrigerators and electric appliances on the other. With a \
                 cylinder it fails; with a gas appliance alone it is a caution. Where what an appliance runs on is not known it is not checked.",
        why: "A receptacle, a switch and the thermostat of a refrigerator make sparks, just what leaked gas waits for. The local code, the \
              appliance's own instructions, a licensed gas fitter and a licensed electrician decide.",
        reckoned: "Bodies and openings by the stretch of their run, against the compartments of the file; conduit that only passes through is not looked at. That gas and sparks are kept apart is common practice.",
        example: "A grill at one end and a receptacle at the other end of one undivided island: a caution. A bulkhead and two \
                  compartments between them: a pass.",
    },
    limits: &[],
    levers: &[],
    outside: &[Outside {
        what: "gas and sparks are kept in rooms of their own",
        origin: Origin::Practice,
        test: "a_room_of_its_own_for_each",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let plan = subject.plan;
    let cylinder = plan.design.gas.as_ref().and_then(|g| g.cylinder.as_ref());
    let stands = cylinder.and_then(|c| stands_in(plan, c));
    let mut shared = false;
    for space in spaces(plan) {
        let electric = space.electric(plan);
        if electric.is_empty() {
            continue;
        }
        let here: Vec<_> = space
            .appliances(plan)
            .into_iter()
            .map(|i| &plan.design.appliances[i])
            .collect();
        let gas: Vec<_> = here
            .iter()
            .filter(|a| burns_gas(a))
            .map(|a| a.name.as_str())
            .collect();
        let with_cylinder = stands.as_ref() == Some(&space);
        let unknown = here.iter().find(|a| a.cooks() && a.rating.fuel.is_none());
        if gas.is_empty() && !with_cylinder {
            if let Some(a) = unknown {
                shared = true;
                let found = format!(
                    "{} holds {}, and what '{}' runs on is not known",
                    space.name,
                    electric.join(", "),
                    a.name
                );
                answers.missing(&a.place, "fuel", found).about(&space.name);
            }
            continue;
        }
        shared = true;
        let (verdict, gas, hint) = if with_cylinder {
            (
                Verdict::Fail,
                "the propane cylinder".to_owned(),
                "move the electricity out of the cylinder's compartment",
            )
        } else {
            (
                Verdict::Caution,
                gas.join(", "),
                "part them by a bulkhead and two compartments, or seal conduit and boxes against the inside and keep them away from where the gas gathers",
            )
        };
        let found = format!(
            "{} holds gas ({gas}) and electricity ({})",
            space.name,
            electric.join(", ")
        );
        answers
            .say(verdict, &space.place, found)
            .about(&space.name)
            .limit(
                "gas and electricity in rooms of their own",
                "common practice",
            )
            .hint(hint);
    }
    if !shared {
        answers.nothing("no closed room holds both gas and electricity");
    }
}

#[cfg(test)]
mod tests {
    use super::super::cylinder_enclosure::tests::with_cylinder;
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "gas-and-electricity";

    #[test]
    fn a_room_of_its_own_for_each() {
        // Common practice.
        let open = Trial::sound();
        assert_eq!(open.worst(CODE), Verdict::Caution);
        assert!(open.answers(CODE)[0].found.contains("receptacle"));
        let room = "[{name: grill room, run: cook, from: 0 in, to: 48 in}]";
        assert_eq!(
            Trial::sound().with("compartments", room).worst(CODE),
            Verdict::Pass
        );
        let unknown = Trial::sound().without("appliances[grill].fuel");
        assert_eq!(unknown.worst(CODE), Verdict::NotChecked);
        let coal = Trial::sound().with("appliances[grill].fuel", "charcoal");
        assert_eq!(coal.worst(CODE), Verdict::Pass);
    }

    #[test]
    fn a_cylinder_and_a_spark_fail() {
        assert_eq!(with_cylinder().worst(CODE), Verdict::Pass);
        let spark = with_cylinder().with("openings[working valve vent].kind", "receptacle");
        assert_eq!(spark.worst(CODE), Verdict::Fail);
    }
}
