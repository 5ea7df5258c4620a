//! Whether each closed room with a gas appliance has the openings that its gas needs.

use super::airing::Room;
use super::needs::Need;
use super::piping::Gas;
use super::spaces::{Space, spaces};
use super::supply::burns_gas;
use super::vents::{Vent, vents};
use crate::diagnostics::Verdict;
use crate::rules::{About, Answers, Bound, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// The free area of one opening.
const AREA: Limit = Limit {
    name: "gas-vent-area",
    what: "the free area of each opening that a room with a gas appliance needs",
    usual: 6451.6,
    unit: Unit::Area,
    source: "common practice; the appliance's own instructions decide",
};

/// How far above the floor an opening for propane may reach.
const FLOOR_BAND: Limit = Limit {
    name: "gas-vent-floor",
    what: "how far above the floor of its room the upper edge of an opening for propane may be",
    usual: 127.0,
    unit: Unit::Length,
    source: "common practice, after the floor openings of cylinder enclosures (ANSI Z21.58/CSA 1.6)",
};

/// How much room may be left above the highest opening for natural gas.
const POCKET: Limit = Limit {
    name: "gas-vent-top",
    what: "how far below the top of its room the upper edge of the highest opening for natural gas may be",
    usual: 127.0,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static VENTILATION: Rule = Rule {
    code: "gas-ventilation",
    family: Family::Gas,
    title: "Each closed room with a gas appliance has the openings that its gas needs",
    about: About {
        checks: "Every compartment in which a gas appliance hangs, or the whole inside where the file names none, has openings by what its \
                 gas weighs. Natural gas is lighter than air: an opening in the upper third lets it out, one in the lower half lets air in, \
                 each of `gas-vent-area` at least. Propane is heavier: two openings at the floor, each of that area, their upper \
                 edges at most `gas-vent-floor` above it. It fails where one is lacking. Since these figures are common practice it \
                 is a caution at best, until the file sets `gas-vent-area` under `limits` by the appliance's own instructions. It is a caution too when more than \
                 `gas-vent-top` is left above the highest opening for natural gas, or less than 10 % of area is left over.",
        why: "Gas that leaks inside a closed island stays there until a burner lights it. An island of cement board is tighter than it \
              looks. The local code, the appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "Only openings of the kind `vent` count, by width × height × `free_area`, and only with the part that leads into the room; \
                   gaps round doors do not count. A vent whose free area is not known counts for nothing, and where that matters it is \
                   not checked. All three figures are common practice.",
        example: "A vent of 10 × 3 in, 75 % free, lets 22.5 sq in through: more than the 10 sq in asked for.",
    },
    limits: &[&AREA, &FLOOR_BAND, &POCKET],
    levers: &["openings[].width", "openings[].height", "openings[].sill"],
    outside: &[
        Outside {
            what: "10 sq in in each opening; high and low for natural gas, two at the floor for propane",
            origin: Origin::Practice,
            test: "each_gas_leaves_by_its_own_way",
        },
        Outside {
            what: "a vent of 10 × 3 in with 75 % free area against the file's own figure",
            origin: Origin::Practice,
            test: "the_file_s_own_figure_makes_it_a_pass",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let plan = subject.plan;
    let mut said = false;
    for a in plan.design.appliances.iter().filter(|a| a.cooks()) {
        if a.rating.fuel.is_none() {
            said = true;
            let found = format!(
                "what '{}' runs on is not known, so its air cannot be checked",
                a.name
            );
            answers.missing(&a.place, "fuel", found).about(&a.name);
        }
    }
    for space in spaces(plan) {
        let here = space.appliances(plan);
        let gas = |i: &usize| {
            let a = &plan.design.appliances[*i];
            a.rating
                .fuel
                .as_ref()
                .filter(|_| burns_gas(a))
                .and_then(|f| Gas::of(f.value))
        };
        let gases: Vec<Gas> = here.iter().filter_map(gas).collect();
        for one in [Gas::Natural, Gas::Propane] {
            if gases.contains(&one) {
                said = true;
                room(subject, answers, &space, one);
            }
        }
    }
    if !said {
        answers.nothing("no closed room holds a gas appliance");
    }
}

fn room(subject: &Subject, answers: &mut Answers, space: &Space, gas: Gas) {
    let area = subject.bound(&AREA);
    let band = subject.bound(&FLOOR_BAND);
    let vents = vents(subject.plan, space);
    let room = Room {
        floor: space.floor,
        top: space.top,
        vents: &vents,
    };
    let needs = room.needs(gas, area.value, band.value);
    let own = area.source != AREA.source;
    if !own && needs.iter().all(|n| n.verdict() == Verdict::Pass) {
        by_practice(subject, answers, space, &needs, &area);
    } else {
        for need in &needs {
            one(subject, answers, space, &vents, need, &area);
        }
    }
    let pocket = subject.bound(&POCKET);
    // Where nothing opens in the upper third it has failed already.
    let third = (space.top - space.floor) / 3.0;
    let left = room.pocket().filter(|p| !pocket.allows(*p) && *p <= third);
    if let Some(left) = left.filter(|_| gas == Gas::Natural) {
        let found = format!(
            "{} are left in {} above its highest vent, where natural gas gathers",
            subject.mm(left),
            space.name
        );
        answers
            .caution(&space.place, found)
            .about(&space.name)
            .at_most(&pocket)
            .hint("move the upper vent higher");
    }
}

/// Everything is there, by figures that are only common practice.
fn by_practice(
    subject: &Subject,
    answers: &mut Answers,
    space: &Space,
    needs: &[Need],
    area: &Bound,
) {
    let each = needs
        .iter()
        .map(|n| format!("{}, {}", n.what, subject.spell(Unit::Area, n.has.least)));
    let found = format!(
        "{} has free: {}",
        space.name,
        each.collect::<Vec<_>>().join("; ")
    );
    answers
        .caution(&space.place, found)
        .about(&space.name)
        .at_least(area)
        .hint("common practice only: write what the appliance's own instructions ask for under 'limits' as gas-vent-area");
}

fn one(
    subject: &Subject,
    answers: &mut Answers,
    space: &Space,
    vents: &[Vent],
    need: &Need,
    area: &Bound,
) {
    let has = subject.spell(Unit::Area, need.has.least);
    let found = format!("{}: {} has {has} free", need.what, space.name);
    let verdict = need.verdict();
    if verdict == Verdict::NotChecked
        && let Some(vent) = vents.iter().find(|v| v.free.least < v.free.most)
    {
        let place = &subject.design().openings[vent.opening].place;
        let unknown = format!(
            "{found} for certain; the free area of '{}' is not known",
            vent.name
        );
        answers
            .missing(place, "free_area", unknown)
            .about(&space.name);
        return;
    }
    let hint = match verdict {
        Verdict::Fail => "add or enlarge vents there; count only their free area",
        Verdict::Caution => "less than 10 % is left over: a louvre or a wasp's nest takes more",
        _ => "",
    };
    answers
        .say(verdict, &space.place, found)
        .about(&space.name)
        .at_least(area)
        .hint(hint);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "gas-ventilation";
    const OWN: &str = "[{name: gas-vent-area, value: 20 sq in, source: the grill's instructions}]";

    fn high() -> Trial {
        Trial::sound().with("openings[high vent].sill", "25-3/4 in")
    }

    #[test]
    fn the_file_s_own_figure_makes_it_a_pass() {
        // Worked on paper: 10 × 3 in at 75 % is 22.5 sq in. Common practice: 10 sq in.
        assert_eq!(high().worst(CODE), Verdict::Caution);
        assert_eq!(high().with("limits", OWN).worst(CODE), Verdict::Pass);
        let more = "[{name: gas-vent-area, value: 21 sq in, source: the grill's instructions}]";
        assert_eq!(
            high().with("limits", more).worst(CODE),
            Verdict::Caution,
            "a narrow margin"
        );
        let most = "[{name: gas-vent-area, value: 23 sq in, source: the grill's instructions}]";
        assert_eq!(high().with("limits", most).worst(CODE), Verdict::Fail);
    }

    #[test]
    fn each_gas_asks_for_its_own_openings() {
        let propane = Trial::sound().with("appliances[grill].fuel", "propane");
        assert_eq!(
            propane.worst(CODE),
            Verdict::Fail,
            "one vent at the floor, and too high"
        );
        let shut = high().without("openings[high vent]");
        assert_eq!(shut.worst(CODE), Verdict::Fail);
        let low = high()
            .with("limits", OWN)
            .with("openings[high vent].sill", "20 in");
        let found = low.answers(CODE);
        let pocket = found
            .iter()
            .find(|f| f.verdict == Verdict::Caution)
            .unwrap();
        assert!(
            pocket.found.contains("10 1/2\" are left"),
            "{}",
            pocket.found
        );
    }

    #[test]
    fn a_vent_of_unknown_free_area_is_not_checked() {
        let unknown = high().without("openings[high vent].free_area");
        let found = unknown.answers(CODE);
        let open = found
            .iter()
            .find(|f| f.verdict == Verdict::NotChecked)
            .unwrap();
        assert!(open.hint.contains("free_area"), "{}", open.hint);
        // Too small even if it were all open.
        let small = unknown.with("openings[high vent].height", "7/8 in");
        assert_eq!(small.worst(CODE), Verdict::Fail);
        let what = high().without("appliances[grill].fuel");
        assert_eq!(what.worst(CODE), Verdict::NotChecked);
        let coal = high().with("appliances[grill].fuel", "charcoal");
        assert_eq!(coal.worst(CODE), Verdict::Pass);
    }

    #[test]
    fn only_the_room_s_own_vents_count() {
        let room = "[{name: grill room, run: cook, from: 0 in, to: 48 in}]";
        let parted = high().with("compartments", room).with("limits", OWN);
        assert_eq!(parted.worst(CODE), Verdict::Pass);
        let elsewhere = parted.with("openings[low vent].at", "{from: left, distance: 70 in}");
        assert_eq!(elsewhere.worst(CODE), Verdict::Fail);
    }
}
