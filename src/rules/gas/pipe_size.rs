//! Whether each gas pipe is large enough, by the table and by the equation.

use super::piping::{Capacity, Nominal};
use super::supply::{ALLOWED_DROP, Supply, supply};
use crate::design::PipeMaterial;
use crate::diagnostics::Verdict;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};
use crate::units::{Power, Unit};

pub(super) static PIPE_SIZE: Rule = Rule {
    code: "gas-pipe-size",
    family: Family::Gas,
    title: "Each gas pipe carries what it feeds, by the table and by the equation",
    about: About {
        checks: "Every branch of the gas pipe carries the heat of all appliances beyond it, taken over the longest length from the \
                 supply to the farthest end, an unused one too. It passes when the code's table and the code's equation both say so. Past the table's \
                 last row, or with more drop than the table is printed for, the equation stands alone and it is a caution, as it is \
                 when less than 10 % is left over, and a pipe that leads to no appliance. It fails when the pipe is too small, or when an appliance burns another gas \
                 than the pipe brings. Corrugated tubing is sized by its maker's tables alone and is not checked.",
        why: "Through a pipe that is too small the far burner starves when the near one is lit: flames lift, go out and let gas \
              through unburnt. The local code, the appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "Longest-length method: one length for all branches, L, from the supply to the farthest outlet. By the table: the \
                   row of that length or the next longer one (NFPA 54 / IFGC Table 402.4(2), natural gas, specific gravity 0.60; \
                   IFGC 2018 Table 402.4(28), propane at 11 in w.c.; schedule 40, drop 0.5 in w.c.). By the equation, for an inlet \
                   below 1.5 psi: D = Q^0.381 / (19.17 (ΔH / (Cr L))^0.206), D inside in inches, Q in cubic feet an hour, ΔH in inches of \
                   water, L in feet, Cr 0.6094 for natural gas and 1.2462 for propane (IFGC 402.4). The smaller of the two rules. \
                   A cubic foot holds 1,000 Btu of natural gas, 2,500 Btu of propane (value from memory).",
        example: "Loads of 35, 75, 35 and 100 cubic feet an hour, 60 ft to the farthest: 110 and 135 need 3/4 in, all 245 need \
                  1 in (IFGC appendix A, example 1).",
    },
    limits: &[&ALLOWED_DROP],
    levers: &["gas.pipes[].size"],
    outside: &[
        Outside {
            what: "IFGC appendix A, example 1: sections of 110, 135 and 245 cubic feet an hour",
            origin: Origin::Published,
            test: "appendix_a_example_1_by_the_longest_length",
        },
        Outside {
            what: "every row of NFPA 54 / IFGC Table 402.4(2) and of IFGC 2018 Table 402.4(28) against the equation",
            origin: Origin::Published,
            test: "every_row_agrees_with_the_equation",
        },
        Outside {
            what: "capacities by isothermal flow with Colebrook's friction (fluids)",
            origin: Origin::Library,
            test: "test_capacities_by_pipe_friction",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(supply) = supply(subject, answers) else {
        return;
    };
    let design = subject.design();
    for i in supply.unserved(design) {
        let a = &design.appliances[i];
        let found = format!("no pipe of the file leads to '{}'", a.name);
        answers
            .missing(&supply.of.place, "pipes[].serves", found)
            .about(&a.name);
    }
    other_gas(subject, &supply, answers);
    let loads = supply.tree.loads();
    for (i, load) in loads.into_iter().enumerate() {
        if supply.leads_nowhere(i) {
            nowhere(answers, &supply, i);
            continue;
        }
        match (supply.tree.branches()[i].size, load) {
            (Some(size), Some(load)) => one(subject, &supply, answers, i, size, load),
            (None, _) => no_table(subject, &supply, answers, i),
            (_, None) => no_load(subject, &supply, answers, i),
        }
    }
}

/// An appliance made for another gas than the pipe brings.
fn other_gas(subject: &Subject, supply: &Supply, answers: &mut Answers) {
    for pipe in &supply.of.pipes {
        let Some(a) = pipe
            .serves
            .as_ref()
            .map(|s| &subject.design().appliances[s.value])
        else {
            continue;
        };
        let brought = supply.of.fuel.value;
        if let Some(fuel) = a.rating.fuel.as_ref().filter(|f| f.value != brought) {
            let found = format!(
                "'{}' runs on {}, and the pipe brings {}",
                a.name,
                fuel.name(),
                brought.name()
            );
            answers
                .fail(&fuel.place, found)
                .about(&a.name)
                .limit("the gas on the appliance's plate", "the appliance's own instructions")
                .hint(if fuel.is_gas() {
                    "take an appliance made for this gas, or have it converted by its maker's kit and a licensed gas fitter"
                } else {
                    "let the pipe serve an appliance that burns gas"
                });
        }
    }
}

fn one(
    subject: &Subject,
    supply: &Supply,
    answers: &mut Answers,
    i: usize,
    size: Nominal,
    load: Power,
) {
    let pipe = &supply.of.pipes[i];
    let found = Capacity::of(supply.gas, size, supply.longest, supply.drop());
    let heat = |p: Power| subject.spell(Unit::Heat, p.w());
    let by_equation = heat(found.by_equation);
    let carries = found.by_table.map_or_else(
        || format!("the table has no row for that, by the equation it carries {by_equation}"),
        |t| {
            format!(
                "by the table it carries {}, by the equation {by_equation}",
                heat(t)
            )
        },
    );
    let name_of = |size: Nominal| size.name_in(subject.notation());
    let said = format!(
        "'{}', {}, is to carry {} over {}; {carries}",
        pipe.name,
        name_of(size),
        heat(load),
        subject.mm(supply.longest.mm()),
    );
    let narrow = load.w() > found.heat().w() * 0.9;
    let verdict = if !found.carries(load) {
        Verdict::Fail
    } else if found.by_table.is_none() || narrow {
        Verdict::Caution
    } else {
        Verdict::Pass
    };
    let hint = match Nominal::least(supply.gas, load, supply.longest, supply.drop()) {
        Some(least) if verdict == Verdict::Fail => format!("take {} pipe", name_of(least)),
        None => {
            let largest = name_of(Nominal::OneAndAQuarter);
            format!("it needs a pipe larger than {largest}: let a gas fitter size it")
        }
        Some(_) if found.by_table.is_none() => {
            "the table does not hold here: let a gas fitter confirm what the equation gives"
                .to_owned()
        }
        Some(_) if narrow => {
            "less than 10 % is left over: the next size leaves room for another burner".to_owned()
        }
        Some(_) => String::new(),
    };
    answers
        .say(verdict, &pipe.place, said)
        .about(&pipe.name)
        .limit(
            format!("at most {}", heat(found.heat())),
            "NFPA 54 / IFGC Tables 402.4(2) and (28) and the low-pressure equation of 402.4",
        )
        .hint(hint);
}

/// A pipe with no appliance beyond it.
fn nowhere(answers: &mut Answers, supply: &Supply, i: usize) {
    let pipe = &supply.of.pipes[i];
    let found = format!(
        "'{}' leads to no appliance; its length counts for the others all the same",
        pipe.name
    );
    answers
        .caution(&pipe.place, found)
        .about(&pipe.name)
        .limit("every end serves an appliance or is capped gas-tight", "common practice")
        .hint("write which appliance it serves under 'serves', or leave it out; have an unused end capped");
}

/// A pipe that the tables do not hold.
fn no_table(subject: &Subject, supply: &Supply, answers: &mut Answers, i: usize) {
    let pipe = &supply.of.pipes[i];
    let (found, hint) = if pipe.material.value == PipeMaterial::Corrugated {
        (
            format!(
                "'{}' is corrugated tubing, which only its maker's tables size",
                pipe.name
            ),
            "size it by its maker's own tables, with the longest length and the load of the pipes beside it",
        )
    } else {
        (
            format!(
                "'{}' is {}, and there is no table for that size here",
                pipe.name,
                subject.mm(pipe.size.mm())
            ),
            "write 1/2 in, 3/4 in, 1 in or 1-1/4 in (15, 20, 25 or 32 mm by DN), or let a gas fitter size it",
        )
    };
    answers
        .say(Verdict::NotChecked, &pipe.place, found)
        .about(&pipe.name)
        .hint(hint);
}

/// A pipe beyond which the heat of an appliance is not known.
fn no_load(subject: &Subject, supply: &Supply, answers: &mut Answers, i: usize) {
    let pipe = &supply.of.pipes[i];
    let unknown = supply.unknown_load(i);
    let Some(a) = unknown.and_then(|a| subject.design().appliances.get(a)) else {
        return;
    };
    let found = format!(
        "what '{}' has to carry is not known: the heat of '{}' is not written",
        pipe.name, a.name
    );
    answers
        .missing(&a.place, "heat_input", found)
        .about(&pipe.name);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "gas-pipe-size";

    fn pipes(first: &str, second: &str) -> Trial {
        let text = format!(
            "[{{name: from the house, {first}}}, {{name: to the grill, from: from the house, serves: grill, {second}}}]"
        );
        Trial::sound().with("gas.pipes", &text)
    }

    #[test]
    fn what_the_table_carries_passes_and_more_fails() {
        // Published (NFPA 54 / IFGC Table 402.4(2)), 40 ft: 1/2 in carries 81,000 Btu/h, 3/4 in 170,000.
        let at = |heat| {
            pipes("length: 30 ft, size: 3/4 in", "length: 10 ft, size: 1/2 in")
                .with("appliances[grill].heat_input", heat)
        };
        assert_eq!(at("60,000 Btu/h").worst(CODE), Verdict::Pass);
        assert_eq!(at("79,000 Btu/h").worst(CODE), Verdict::Caution);
        let found = at("90,000 Btu/h").about(CODE, "to the grill");
        assert_eq!(found.verdict, Verdict::Fail);
        assert_eq!(found.hint, "take 3/4 in pipe");
        assert_eq!(
            at("90,000 Btu/h").about(CODE, "from the house").verdict,
            Verdict::Pass
        );
    }

    #[test]
    fn past_the_table_the_equation_alone_is_a_caution() {
        // Published: Table 402.4(2) is held here up to 60 ft.
        let far = pipes("length: 70 ft, size: 3/4 in", "length: 10 ft, size: 3/4 in");
        assert_eq!(far.worst(CODE), Verdict::Caution);
        let wide = Trial::sound().with("gas.allowed_drop", "1 in w.c.");
        assert_eq!(wide.worst(CODE), Verdict::Caution);
    }

    #[test]
    fn what_cannot_be_sized_is_not_checked() {
        let tube = pipes(
            "length: 30 ft, size: 3/4 in",
            "length: 6 ft, size: 1/2 in, material: corrugated",
        );
        let found = tube.about(CODE, "to the grill");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(found.found.contains("maker's tables"));
        assert_eq!(tube.about(CODE, "from the house").verdict, Verdict::Pass);
        let unknown = Trial::sound().without("appliances[grill].heat_input");
        let found = unknown.about(CODE, "from the house");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(
            found.hint.contains("appliances[1].heat_input"),
            "{}",
            found.hint
        );
        assert_eq!(
            Trial::sound().without("gas").worst(CODE),
            Verdict::NotChecked
        );
        let odd = pipes("length: 30 ft, size: 7/8 in", "length: 6 ft, size: 3/4 in");
        assert_eq!(
            odd.about(CODE, "from the house").verdict,
            Verdict::NotChecked
        );
    }

    #[test]
    fn a_pipe_that_serves_nobody_is_a_caution() {
        let stub = "[{name: from the house, length: 30 ft, size: 3/4 in}, {name: to the grill, from: from the house, length: 6 ft, size: 3/4 in, serves: grill}, \
                     {name: stub, from: from the house, length: 12 ft, size: 7/8 in}]";
        let trial = Trial::sound().with("gas.pipes", stub);
        assert_eq!(trial.about(CODE, "stub").verdict, Verdict::Caution);
        // Its 12 ft make the longest length 42 ft: 151,000 Btu/h by the row of 50 ft (NFPA 54 / IFGC Table 402.4(2)).
        let found = trial.about(CODE, "to the grill");
        assert_eq!(found.limit, "at most 151,000 Btu/h");
        assert_eq!(found.verdict, Verdict::Pass);
    }

    #[test]
    fn a_metric_file_reads_of_nominal_diameters() {
        let metric = Trial::sound().with("project.units", "metric");
        let found = metric.about(CODE, "to the grill").found;
        assert!(found.starts_with("'to the grill', DN 20, "), "{found}");
        assert!(!found.contains(" in"), "{found}");
    }

    #[test]
    fn an_appliance_for_another_gas_fails() {
        let other = Trial::sound().with("appliances[grill].fuel", "propane");
        assert_eq!(other.about(CODE, "grill").verdict, Verdict::Fail);
        let none = Trial::sound()
            .without("gas")
            .with("appliances[grill].fuel", "charcoal");
        assert_eq!(none.worst(CODE), Verdict::Pass);
    }
}
