//! Whether a propane cylinder in the island stands where one may.

use super::cylinder_enclosure::stands_in;
use super::hot::hot;
use super::spaces::Space;
use crate::design::{Cylinder, Fuel, OpeningKind, Placed};
use crate::diagnostics::Verdict;
use crate::plan::{PanelOf, Plan};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// The largest cylinder in an island.
const CAPACITY: Limit = Limit {
    name: "gas-cylinder-capacity",
    what: "how much propane a cylinder in the island holds at most",
    usual: 9.071_847_4,
    unit: Unit::Mass,
    source: "value from memory: ANSI Z21.58/CSA 1.6, cylinders of at most 20 lb",
};

/// Room over the valve.
const HEADROOM: Limit = Limit {
    name: "gas-cylinder-headroom",
    what: "how much room there is above the cylinder's valve for a hand",
    usual: 101.6,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static CYLINDER: Rule = Rule {
    code: "gas-cylinder",
    family: Family::Gas,
    title: "A propane cylinder stands upright on a floor, apart from burners and sparks, its valve in reach",
    about: About {
        checks: "A cylinder in the island stands in a compartment of its own: no appliance with heat hangs in it, a bulkhead parts it from \
                 a burner beside it, no receptacle or electric appliance is in it. It stands on a floor that the file gives, \
                 upright, with `gas-cylinder-headroom` above its valve, and a door or hatch that opens without tools leads to \
                 the valve. It fails where one of these does not hold, and is a caution where no bulkhead parts it from a burner beside it, or \
                 where it holds more than `gas-cylinder-capacity`. Without a cylinder, or with one outside, it passes.",
        why: "A cylinder that is warmed lets gas out; one that lies lets liquid out; a valve behind screws is not shut in time. The \
              local code, the appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "The compartment's stretch against the bodies of all appliances along the same run; bulkheads within 6 in of its end; its floor plus the valve's height against the \
                   underside of the ties; the doors and hatches that lead into it. That the valve is reached without tools: ANSI Z21.58/CSA \
                   1.6. Headroom is common practice, the capacity a value from memory.",
        example: "A 20 lb cylinder with its valve at 15 in on a floor at 2 in leaves 12-7/8 in under ties at 29-7/8 in: it passes.",
    },
    limits: &[&CAPACITY, &HEADROOM],
    levers: &["compartments[].floor", "levels.counter"],
    outside: &[Outside {
        what: "the valve is reached without tools (ANSI Z21.58/CSA 1.6)",
        origin: Origin::Published,
        test: "the_valve_is_reached_without_tools",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let plan = subject.plan;
    let gas = plan.design.gas.as_ref();
    let Some((gas, cylinder)) = gas.and_then(|g| Some((g, g.cylinder.as_ref()?))) else {
        answers.nothing("there is no propane cylinder");
        return;
    };
    if gas.fuel.value != Fuel::Propane {
        let found = "there is a propane cylinder, and the pipes bring natural gas";
        answers
            .fail(&cylinder.place, found)
            .about("cylinder")
            .hint("write propane as the fuel, or leave the cylinder out");
    }
    let Some(space) = stands_in(plan, cylinder) else {
        answers
            .pass(&cylinder.place, "the cylinder stands outside the island")
            .about("cylinder");
        return;
    };
    sources(answers, plan, cylinder, &space);
    burners_beside(answers, plan, cylinder, &space);
    floor(subject, answers, cylinder, &space);
    valve(answers, plan, cylinder, &space);
    let most = subject.bound(&CAPACITY);
    if !most.allows(cylinder.capacity.kg()) {
        let found = format!(
            "the cylinder holds {}",
            subject.spell(Unit::Mass, cylinder.capacity.kg())
        );
        answers
            .caution(&cylinder.place, found)
            .about("cylinder size")
            .at_most(&most)
            .hint("take a smaller cylinder, or stand it outside the island");
    }
}

/// Flames and sparks in the cylinder's own compartment.
fn sources(answers: &mut Answers, plan: &Plan, cylinder: &Placed<Cylinder>, space: &Space) {
    let burns = |i: &usize| plan.design.appliances[*i].cooks();
    let hot = space.appliances(plan).into_iter().filter(burns);
    let hot = hot.map(|i| plan.design.appliances[i].name.as_str());
    let mut names: Vec<&str> = hot.chain(space.electric(plan)).collect();
    names.dedup();
    let found = if names.is_empty() {
        format!("nothing in {} burns or sparks", space.name)
    } else {
        format!("in {} with the cylinder: {}", space.name, names.join(", "))
    };
    let fine = names.is_empty();
    let hint = if fine {
        ""
    } else {
        "give the cylinder a compartment of its own, without flame, heat or electricity"
    };
    answers
        .judge(fine, &cylinder.place, found)
        .about("cylinder compartment")
        .limit("no source of ignition beside a cylinder", "common practice")
        .hint(hint);
}

/// How near the end of the compartment a bulkhead is to part it, millimetres.
const AT_THE_END: f64 = 152.4;

/// Burners next door, and what parts them.
fn burners_beside(answers: &mut Answers, plan: &Plan, cylinder: &Placed<Cylinder>, space: &Space) {
    for h in hot(plan) {
        for s in space.stretches.iter().filter(|s| s.run == h.run) {
            let (left, right) = (s.from - h.body.u.1, h.body.u.0 - s.to);
            if left < 0.0 && right < 0.0 {
                continue;
            }
            let end = if left >= 0.0 { s.from } else { s.to };
            let parted = plan.panels.iter().any(|p| {
                let at = plan.runs[p.run].local(p.start).x;
                let near = at <= end + AT_THE_END && at + plan.sizes.panel >= end - AT_THE_END;
                matches!(p.of, PanelOf::Bulkhead(_)) && p.run == s.run && near
            });
            let name = &h.appliance.name;
            let (verdict, found, hint) = if parted {
                (
                    Verdict::Pass,
                    format!("a bulkhead parts the cylinder from '{name}'"),
                    "",
                )
            } else {
                (
                    Verdict::Caution,
                    format!("the file has no bulkhead between the cylinder and '{name}'"),
                    "put a bulkhead there, boarded tight from floor to counter",
                )
            };
            answers
                .say(verdict, &cylinder.place, found)
                .about(format!("cylinder and {name}"))
                .limit(
                    "a tight partition between cylinder and burner",
                    "common practice",
                )
                .hint(hint);
        }
    }
}

/// Upright, on a floor.
fn floor(subject: &Subject, answers: &mut Answers, cylinder: &Placed<Cylinder>, space: &Space) {
    let design = subject.design();
    let name = cylinder.compartment.as_ref().map(|c| &c.value);
    let Some(compartment) = design.compartments.iter().find(|c| Some(&c.name) == name) else {
        return;
    };
    if !compartment.floor.place.key.starts_with("compartments") {
        let found = "what the cylinder stands on is not known";
        answers
            .missing(&compartment.place, "floor", found)
            .about("cylinder floor");
        return;
    }
    let least = subject.bound(&HEADROOM);
    let ties = space.top - design.trade.stud.depth.mm();
    let room = ties - space.floor - cylinder.valve.mm();
    let found = if room < 0.0 {
        let over = subject.mm(-room);
        format!(
            "upright on its floor the cylinder's valve would be {over} above the underside of the ties"
        )
    } else {
        let room = subject.mm(room);
        format!("upright on its floor the cylinder has {room} between its valve and the ties")
    };
    let fine = least.is_reached_by(room);
    let hint = if fine {
        ""
    } else {
        "lower the floor, or take a smaller cylinder; it never lies down"
    };
    answers
        .judge(fine, &compartment.floor.place, found)
        .about("cylinder floor")
        .at_least(&least)
        .hint(hint);
}

/// A door or hatch to the valve.
fn valve(answers: &mut Answers, plan: &Plan, cylinder: &Placed<Cylinder>, space: &Space) {
    let doors = space.ways(plan).into_iter().filter(|w| {
        let leaf = matches!(w.hole.kind, Some(OpeningKind::Door | OpeningKind::Hatch));
        leaf && w.share > 0.5
    });
    let doors: Vec<_> = doors.map(|w| &plan.design.openings[w.hole.index]).collect();
    let by_hand = doors.iter().find(|o| o.hardware.by_hand.value);
    let (fine, found, hint) = match (by_hand, doors.first()) {
        (Some(o), _) => (
            true,
            format!("'{}' opens by hand to the cylinder's valve", o.name),
            "",
        ),
        (None, Some(o)) => (
            false,
            format!(
                "'{}' leads to the cylinder's valve and opens only with tools",
                o.name
            ),
            "fit a latch that a hand opens",
        ),
        (None, None) => (
            false,
            format!("no door or hatch leads into {}", space.name),
            "put a door that opens by hand before the cylinder",
        ),
    };
    answers
        .judge(fine, &cylinder.place, found)
        .about("cylinder valve")
        .limit("the valve is reached without tools", "ANSI Z21.58/CSA 1.6")
        .hint(hint);
}

#[cfg(test)]
mod tests {
    use super::super::cylinder_enclosure::tests::with_cylinder;
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "gas-cylinder";

    #[test]
    fn the_valve_is_reached_without_tools() {
        // Published: ANSI Z21.58/CSA 1.6.
        assert_eq!(
            with_cylinder().worst(CODE),
            Verdict::Pass,
            "{:#?}",
            with_cylinder().answers(CODE)
        );
        let screwed = with_cylinder().with("openings[cylinder door].opens", "with-tools");
        assert_eq!(screwed.about(CODE, "cylinder valve").verdict, Verdict::Fail);
        let shut = with_cylinder()
            .with("openings[cylinder door].side", "right")
            .with("gas.shut_off", "{behind: cylinder door}");
        let shut = shut.with("openings[cylinder door].run", "bar");
        assert_eq!(shut.about(CODE, "cylinder valve").verdict, Verdict::Fail);
    }

    #[test]
    fn it_stands_apart_from_flames_and_sparks() {
        // Common practice.
        let under = with_cylinder()
            .with("compartments[cylinder room].to", "70 in")
            .about(CODE, "cylinder compartment");
        assert_eq!(under.verdict, Verdict::Fail);
        assert!(under.found.contains("grill"), "{}", under.found);
        let beside = with_cylinder()
            .without("runs[cook].bulkheads")
            .about(CODE, "cylinder and grill");
        assert_eq!(beside.verdict, Verdict::Caution);
        let spark = with_cylinder()
            .with("openings[working valve vent].kind", "receptacle")
            .about(CODE, "cylinder compartment");
        assert_eq!(spark.verdict, Verdict::Fail);
    }

    #[test]
    fn it_stands_upright_on_a_floor() {
        // Worked on paper: ties from 33-1/2 - 3-5/8 = 29-7/8 in, valve at 2 + 15 in: 12-7/8 in. Common practice: 4 in.
        let found = with_cylinder().about(CODE, "cylinder floor");
        assert_eq!(found.verdict, Verdict::Pass);
        assert!(found.found.contains("1'-0 7/8\""), "{}", found.found);
        let high = with_cylinder().with("compartments[cylinder room].floor", "12 in");
        assert_eq!(high.about(CODE, "cylinder floor").verdict, Verdict::Fail);
        // 2 + 30 in is 2-1/8 in above the ties.
        let tall = with_cylinder().with("gas.cylinder.valve", "30 in");
        let found = tall.about(CODE, "cylinder floor").found;
        assert!(found.contains("2 1/8\" above"), "{found}");
        let unknown = with_cylinder().without("compartments[cylinder room].floor");
        assert_eq!(
            unknown.about(CODE, "cylinder floor").verdict,
            Verdict::NotChecked
        );
    }

    #[test]
    fn a_large_one_is_a_caution_and_none_is_nothing() {
        // Value from memory: cylinders of at most 20 lb.
        let large = with_cylinder().with("gas.cylinder.capacity", "30 lb");
        assert_eq!(large.about(CODE, "cylinder size").verdict, Verdict::Caution);
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let natural = with_cylinder().with("gas.fuel", "natural-gas");
        assert_eq!(natural.worst(CODE), Verdict::Fail);
    }
}
