//! Whether the compartment of a propane cylinder has the openings that its edition of the standard asks for.

use super::enclosure::{Enclosure, Figures};
use super::needs::Need;
use super::spaces::{Space, spaces};
use super::vents::vents;
use crate::design::{Cylinder, EnclosureEdition, OpeningKind, Placed};
use crate::diagnostics::Verdict;
use crate::plan::Plan;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const STANDARD: &str = "ANSI Z21.58/CSA 1.6";

/// One opening by edition A, at least.
const LEAST: Limit = Limit {
    name: "gas-cylinder-opening",
    what: "the free area of each opening by edition A, however small the cylinder",
    usual: 6451.6,
    unit: Unit::Area,
    source: STANDARD,
};
/// Edition A, a pound.
const A_EACH: Limit = Limit {
    name: "gas-cylinder-each",
    what: "square inches of each opening by edition A for each pound of propane",
    usual: 0.5,
    unit: Unit::Count,
    source: STANDARD,
};
/// Edition B near the top, a pound.
const B_HIGH: Limit = Limit {
    name: "gas-cylinder-high",
    what: "square inches of all openings near the top by edition B for each pound of propane",
    usual: 1.0,
    unit: Unit::Count,
    source: STANDARD,
};
/// Edition B at the floor, a pound.
const B_LOW: Limit = Limit {
    name: "gas-cylinder-low",
    what: "square inches of all openings at the floor by edition B for each pound of propane",
    usual: 0.5,
    unit: Unit::Count,
    source: STANDARD,
};
/// The upper edge of an opening at the floor.
const FLOOR_BAND: Limit = Limit {
    name: "gas-cylinder-floor",
    what: "how far above the floor the upper edge of an opening at the floor may be",
    usual: 127.0,
    unit: Unit::Length,
    source: STANDARD,
};
/// The lower edge of an opening at the floor, edition B.
const FLOOR_EDGE: Limit = Limit {
    name: "gas-cylinder-floor-edge",
    what: "how far above the floor the lower edge of an opening at the floor may be by edition B",
    usual: 25.4,
    unit: Unit::Length,
    source: STANDARD,
};
/// An opening near the top, edition B.
const TOP_BAND: Limit = Limit {
    name: "gas-cylinder-top",
    what: "how far below the top the lower edge of an opening near the top may be by edition B",
    usual: 127.0,
    unit: Unit::Length,
    source: STANDARD,
};
/// What counts as at the valve's level, edition A.
const VALVE_LEVEL: Limit = Limit {
    name: "gas-cylinder-valve-level",
    what: "how far above or below an opening the valve may be and still count as at its level by edition A",
    usual: 50.8,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static CYLINDER_ENCLOSURE: Rule = Rule {
    code: "gas-cylinder-enclosure",
    family: Family::Gas,
    title: "The compartment of a propane cylinder has the openings its standard asks for",
    about: About {
        checks: "By edition A: two openings at the valve's level on opposite sides, each of half a square inch a pound of propane and 10 sq in at \
                 least, and as much at the floor, upper edges at most 5 in above it. By edition B: two or more openings within 5 in \
                 of the top, at least 90 degrees apart, together one square inch a pound, and openings at the floor of half a square inch a pound, \
                 from at most 1 in to at most 5 in above it. One side fully open always serves. Which edition holds is a \
                 setting, `gas.enclosure_edition`. It fails where an opening is lacking and is a caution when less than 10 % is left over.",
        why: "A cylinder's valve lets propane out when it warms or is not quite shut. Propane runs along the floor like water; it must \
              find a way out low, and air a way in. The local code, the appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "Vents of the compartment, by width × height × `free_area`; each opening must also pass a rod of 1/8 in, which the file does not \
                   tell. ANSI Z21.58/CSA 1.6, two editions in circulation.",
        example: "A 20 lb cylinder: edition A asks for 10 sq in in each of four openings; edition B for 20 sq in near the top and 10 at the floor.",
    },
    limits: &[
        &LEAST,
        &A_EACH,
        &B_HIGH,
        &B_LOW,
        &FLOOR_BAND,
        &FLOOR_EDGE,
        &TOP_BAND,
        &VALVE_LEVEL,
    ],
    levers: &["openings[].width", "openings[].height", "openings[].sill"],
    outside: &[
        Outside {
            what: "a 20 lb cylinder by ANSI Z21.58/CSA 1.6, edition A: 10 sq in each",
            origin: Origin::Published,
            test: "twenty_pounds_by_edition_a",
        },
        Outside {
            what: "a 20 lb cylinder by ANSI Z21.58/CSA 1.6, edition B: 20 sq in high, 10 sq in low",
            origin: Origin::Published,
            test: "twenty_pounds_by_edition_b",
        },
    ],
    check,
};

fn figures(subject: &Subject) -> Figures {
    let value = |limit| subject.bound(limit).value;
    Figures {
        least_opening: value(&LEAST),
        a_per_pound: value(&A_EACH),
        b_high_per_pound: value(&B_HIGH),
        b_low_per_pound: value(&B_LOW),
        floor_band: value(&FLOOR_BAND),
        floor_edge: value(&FLOOR_EDGE),
        top_band: value(&TOP_BAND),
        valve_level: value(&VALVE_LEVEL),
    }
}

/// The compartment that a cylinder stands in; `None` when it stands outside the island.
pub(super) fn stands_in(plan: &Plan, cylinder: &Cylinder) -> Option<Space> {
    let name = &cylinder.compartment.as_ref()?.value;
    let number = plan
        .design
        .compartments
        .iter()
        .position(|c| c.name == *name)?;
    // Rooms with names come first, in the order of the file.
    spaces(plan).into_iter().nth(number)
}

fn check(subject: &Subject, answers: &mut Answers) {
    let gas = subject.design().gas.as_ref();
    let Some((gas, cylinder)) = gas.and_then(|g| Some((g, g.cylinder.as_ref()?))) else {
        answers.nothing("there is no propane cylinder");
        return;
    };
    let Some(space) = stands_in(subject.plan, cylinder) else {
        answers
            .pass(&cylinder.place, "the cylinder stands outside the island")
            .about("cylinder");
        return;
    };
    let Some(edition) = &gas.edition else {
        let found = "which edition of the standard for cylinder enclosures holds is not known";
        answers
            .missing(&gas.place, "enclosure_edition", found)
            .about("cylinder");
        return;
    };
    let vents = vents(subject.plan, &space);
    let enclosure = Enclosure {
        floor: space.floor,
        top: space.top,
        valve: space.floor + cylinder.valve.mm(),
        capacity: cylinder.capacity.kg(),
        vents: &vents,
        open_side: has_open_side(subject.plan, &space),
    };
    let needs = match edition.value {
        EnclosureEdition::A => enclosure.edition_a(&figures(subject)),
        EnclosureEdition::B => enclosure.edition_b(&figures(subject)),
    };
    if needs.is_empty() {
        let found = format!("one side of {} is fully open", space.name);
        answers.pass(&cylinder.place, found).about("cylinder");
    }
    for need in needs {
        say(subject, answers, &space, cylinder, edition.value, &need);
    }
}

/// A side counts as fully open when a vent that is all open takes this share of it.
const OPEN: f64 = 0.9;

fn has_open_side(plan: &Plan, space: &Space) -> bool {
    let side: f64 = space.stretches.iter().map(|s| s.to - s.from).sum();
    let side = side * (space.top - space.floor);
    let open = |w: &super::spaces::Way| {
        let part = plan.design.openings[w.hole.index]
            .hardware
            .free_area
            .as_ref();
        let area = (w.hole.s1 - w.hole.s0) * (w.hole.z1 - w.hole.z0) * w.share;
        let free = w.hole.kind == Some(OpeningKind::Vent) && part.is_some_and(|p| p.value >= 0.99);
        free && side > 0.0 && area >= side * OPEN
    };
    space.ways(plan).iter().any(open)
}

fn say(
    subject: &Subject,
    answers: &mut Answers,
    space: &Space,
    cylinder: &Placed<Cylinder>,
    edition: EnclosureEdition,
    need: &Need,
) {
    let letter = match edition {
        EnclosureEdition::A => "A",
        EnclosureEdition::B => "B",
    };
    let has = subject.spell(Unit::Area, need.has.least);
    let hint = match need.verdict() {
        Verdict::Fail => {
            "add or enlarge vents there; count only their free area, and let a rod of 1/8 in pass"
        }
        Verdict::NotChecked => "write 'free_area' of each vent of the compartment",
        Verdict::Caution => "less than 10 % is left over: a louvre or a wasp's nest takes more",
        _ => "",
    };
    answers
        .say(
            need.verdict(),
            &cylinder.place,
            format!("{}: {} has {has} free", need.what, space.name),
        )
        .about("cylinder")
        .limit(
            format!("at least {}", subject.spell(Unit::Area, need.asked)),
            format!("{STANDARD}, edition {letter} of the two in circulation"),
        )
        .hint(hint);
}

#[cfg(test)]
pub(super) mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "gas-cylinder-enclosure";

    /// A 20 lb cylinder in the end of the cook run that is at the left, between its two long sides; vents of 8 in, all open.
    pub(crate) fn with_cylinder() -> Trial {
        let vent = |name: &str, side: &str, sill: &str| {
            format!(
                "  - {{name: {name}, kind: vent, run: cook, side: {side}, at: {{from: left, distance: 14 in}}, width: 8 in, height: 2 in, sill: {sill}, flange: 1/2 in, free_area: 90 %}}\n"
            )
        };
        let vents = [
            vent("working valve vent", "working", "16 in"),
            vent("seating valve vent", "seating", "16 in"),
            vent("working floor vent", "working", "4 in"),
            vent("seating floor vent", "seating", "4 in"),
        ];
        let hatch = "  - {name: cylinder door, kind: door, run: cook, side: left, at: {from: working, distance: 15 in}, width: 16 in, height: 22 in, sill: 5 in}\n";
        Trial::sound()
            .with("appliances", "[{name: grill, kind: grill, run: cook, at: {from: left, distance: 60 in}, cutout: {width: 30 in, depth: 21 in}, body: {width: 29-1/2 in, depth: 20-1/2 in, height: 9-1/2 in}, flange: 3/4 in, front: {closed: {setback: 5 in}}, fuel: propane, heat_input: 40000 Btu/h}]")
            .with("openings", &format!("\n{}{hatch}", vents.concat()))
            .with("runs[cook].bulkheads", "[26 in]")
            .with("compartments", "[{name: cylinder room, run: cook, from: 0 in, to: 26 in, floor: 2 in}]")
            .with("gas", "{fuel: propane, enclosure_edition: a, cylinder: {capacity: 20 lb, compartment: cylinder room, valve: 15 in}, pipes: [{name: hose, length: 6 ft, size: 1/2 in, serves: grill}], shut_off: {behind: cylinder door, depth: 6 in}}")
            .without("electricity")
    }

    #[test]
    fn four_openings_serve_by_edition_a() {
        // Published: 10 sq in each for 20 lb. Worked on paper: 8 × 2 in at 90 % is 14.4 sq in.
        assert_eq!(with_cylinder().worst(CODE), Verdict::Pass);
        let small = with_cylinder().with("openings[seating floor vent].free_area", "65 %");
        assert_eq!(small.worst(CODE), Verdict::Caution);
        let small = with_cylinder().with("openings[seating floor vent].free_area", "60 %");
        assert_eq!(small.worst(CODE), Verdict::Fail);
        let lifted = with_cylinder().with("openings[working floor vent].sill", "6 in");
        assert_eq!(lifted.worst(CODE), Verdict::Fail);
        let unknown = with_cylinder().without("openings[seating floor vent].free_area");
        assert_eq!(unknown.worst(CODE), Verdict::NotChecked);
    }

    #[test]
    fn the_other_edition_asks_for_other_openings() {
        assert_eq!(
            with_cylinder()
                .with("gas.enclosure_edition", "b")
                .worst(CODE),
            Verdict::Fail
        );
        let found = with_cylinder()
            .without("gas.enclosure_edition")
            .answers(CODE);
        assert_eq!(found[0].verdict, Verdict::NotChecked);
        assert!(
            found[0].hint.contains("gas.enclosure_edition"),
            "{}",
            found[0].hint
        );
    }

    #[test]
    fn no_cylinder_or_one_outside_asks_for_nothing() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let outside = with_cylinder().without("gas.cylinder.compartment");
        assert_eq!(outside.worst(CODE), Verdict::Pass);
    }
}
