//! How much pressure is lost on the way to each appliance.

use super::piping::drops;
use super::supply::{ALLOWED_DROP, Supply, supply};
use crate::design::Appliance;
use crate::diagnostics::Verdict;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};
use crate::units::{Stress, Unit};

pub(super) static PRESSURE_DROP: Rule = Rule {
    code: "gas-pressure-drop",
    family: Family::Gas,
    title: "The pressure lost on the way to each appliance stays within what is allowed",
    about: About {
        checks: "With all burners lit, the drop in pressure from the supply to each appliance, branch by branch, is at most \
                 `gas.allowed_drop`, or `gas-pressure-drop` where the file gives none. It fails above that and is a caution when \
                 less than 10 % is left. Where corrugated tubing or an unknown load lies on the way it is not checked.",
        why: "What is lost on the way is missing at the burner. The size of a pipe answers for the farthest appliance; this tells for \
              each one how much is left. The local code, the appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "The low-pressure equation of NFPA 54 and IFGC 402.4 solved for the drop: ΔH = Cr L (Q^0.381 / (19.17 D))^(1/0.206) \
                   for each branch with its own length L in feet, inside diameter D in inches and flow Q in cubic feet an hour, \
                   summed from the supply to the appliance, in inches of water column; 1 in is 249.082 Pa (NIST SP 811).",
        example: "60,000 Btu/h of natural gas through 36 ft of 3/4 in pipe lose about 0.065 in w.c., 16 Pa.",
    },
    limits: &[&ALLOWED_DROP],
    levers: &["gas.pipes[].size"],
    outside: &[
        Outside {
            what: "drops by isothermal flow with Colebrook's friction (fluids)",
            origin: Origin::Library,
            test: "test_drops_by_pipe_friction",
        },
        Outside {
            what: "loads, longest length and drops of two trees of pipe, by a graph library (networkx)",
            origin: Origin::Library,
            test: "test_trees_by_a_graph_library",
        },
        Outside {
            what: "IFGC appendix A, example 1, designed for 0.5 in w.c.",
            origin: Origin::Published,
            test: "sizes_by_the_longest_length_never_use_up_more_than_they_may",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(supply) = supply(subject, answers) else {
        return;
    };
    let found = drops(&supply.tree, supply.gas);
    let mut none = true;
    for (i, drop) in found.into_iter().enumerate() {
        let Some(serves) = &supply.of.pipes[i].serves else {
            continue;
        };
        none = false;
        let a = &subject.design().appliances[serves.value];
        match drop {
            Some(drop) => one(subject, &supply, answers, a, drop),
            None => unknown(subject, &supply, answers, i, a),
        }
    }
    if none {
        answers.missing(
            &supply.of.place,
            "pipes[].serves",
            "no pipe says which appliance it serves",
        );
    }
}

fn one(subject: &Subject, supply: &Supply, answers: &mut Answers, a: &Appliance, drop: Stress) {
    let share = drop.mpa() / supply.allowed.value.max(f64::MIN_POSITIVE);
    let verdict = if share > 1.0 + 1e-9 {
        Verdict::Fail
    } else if share > 0.9 {
        Verdict::Caution
    } else {
        Verdict::Pass
    };
    let found = format!(
        "with all burners lit {} ({:.0} Pa) are lost on the way to '{}'",
        subject.spell(Unit::GasPressure, drop.mpa()),
        drop.mpa() * 1e6,
        a.name
    );
    let hint = match verdict {
        Verdict::Pass => "",
        _ => "take a larger pipe where most is lost, or a shorter way",
    };
    answers
        .say(verdict, &a.place, found)
        .about(&a.name)
        .at_most(&supply.allowed)
        .hint(hint);
}

fn unknown(subject: &Subject, supply: &Supply, answers: &mut Answers, pipe: usize, a: &Appliance) {
    let way = supply.tree.path(pipe);
    if let Some(&b) = way
        .iter()
        .find(|b| supply.tree.branches()[**b].size.is_none())
    {
        let found = format!(
            "'{}' lies on the way to '{}', and no table here holds it",
            supply.of.pipes[b].name, a.name
        );
        answers
            .say(Verdict::NotChecked, &supply.of.pipes[b].place, found)
            .about(&a.name)
            .hint("take the drop of tubing from its maker's tables");
    } else if let Some(u) = way.iter().find_map(|b| supply.unknown_load(*b)) {
        let unknown = &subject.design().appliances[u];
        let found = format!("the heat of '{}' is not known", unknown.name);
        answers
            .missing(&unknown.place, "heat_input", found)
            .about(&a.name);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "gas-pressure-drop";

    fn through(length: &str, size: &str) -> Trial {
        let text = format!("[{{name: line, length: {length}, size: {size}, serves: grill}}]");
        Trial::sound().with("gas.pipes", &text)
    }

    #[test]
    fn the_drop_over_a_row_of_the_table_is_the_drop_it_is_printed_for() {
        // Published (NFPA 54 / IFGC Table 402.4(2)): 1/2 in over 50 ft carries 72,000 Btu/h with a drop of 0.5 in w.c.;
        // the equation agrees within 1.5 % of the flow, 3 % of the drop.
        let line = through("50 ft", "1/2 in");
        let at = |heat| line.clone().with("appliances[grill].heat_input", heat);
        assert_eq!(at("60,000 Btu/h").worst(CODE), Verdict::Pass);
        assert_eq!(at("70,500 Btu/h").worst(CODE), Verdict::Caution);
        let over = at("75,000 Btu/h").about(CODE, "grill");
        assert_eq!(over.verdict, Verdict::Fail);
        assert_eq!(over.limit, "at most 0.5 in w.c.");
    }

    #[test]
    fn a_rising_limit_is_the_file_s_own() {
        let line = through("50 ft", "1/2 in").with("appliances[grill].heat_input", "75,000 Btu/h");
        let more = line.clone().with("gas.allowed_drop", "1 in w.c.");
        assert_eq!(more.worst(CODE), Verdict::Pass);
        let less = through("50 ft", "1/2 in").with("gas.allowed_drop", "0.1 in w.c.");
        assert_eq!(less.worst(CODE), Verdict::Fail);
        let own = "[{name: gas-pressure-drop, value: 0.1 in w.c., source: the gas works}]";
        let own = through("50 ft", "1/2 in")
            .without("gas.allowed_drop")
            .with("limits", own);
        assert_eq!(own.worst(CODE), Verdict::Fail);
    }

    #[test]
    fn tubing_or_an_unknown_burner_on_the_way_is_not_checked() {
        let tube =
            "[{name: line, length: 9 ft, size: 1/2 in, material: corrugated, serves: grill}]";
        let tube = Trial::sound().with("gas.pipes", tube);
        assert_eq!(tube.about(CODE, "grill").verdict, Verdict::NotChecked);
        let unknown = Trial::sound().without("appliances[grill].heat_input");
        assert_eq!(unknown.worst(CODE), Verdict::NotChecked);
        let end = "[{name: line, length: 9 ft, size: 1/2 in}]";
        assert_eq!(
            Trial::sound().with("gas.pipes", end).worst(CODE),
            Verdict::NotChecked
        );
    }

    #[test]
    fn the_sound_island_loses_little() {
        let found = Trial::sound().about(CODE, "grill");
        assert_eq!(found.verdict, Verdict::Pass);
        // Worked on paper: 0.5 (60,000 / 181,080)^1.85 in w.c. over 36 ft of 3/4 in.
        assert!(
            found.found.contains("0.0648 in w.c. (16 Pa)"),
            "{}",
            found.found
        );
    }
}
