//! What each step says in words: what it handles, what can hurt, what is ticked.

use super::amounts::Amounts;
use crate::catalog::work::{Caution, Hands, Heaviest, Item, Measure, Pieces, WorkStep};
use crate::parts::PartKind;
use crate::units::{Length, Mass, Notation, Unit};

/// What one person lifts: the load constant of the NIOSH lifting equation, value from memory.
const ONE_LIFTS: f64 = 23.0;

/// A slab of more concrete is poured by three: common practice, cubic metres (about 10 cubic feet).
const LARGE_POUR: f64 = 0.28;

/// How many lift a weight.
fn lifters(mass: Mass) -> u32 {
    (mass.kg() / ONE_LIFTS).ceil().clamp(1.0, 1000.0) as u32
}

/// How many pairs of hands a step needs.
pub(super) fn hands(amounts: &Amounts, hands: Hands) -> u32 {
    match hands {
        Hands::Some(count) => count,
        Hands::Lifting(of, least) => lifters(amounts.heaviest(of)).max(least),
        Hands::Pouring if amounts.design().pour.crew.place.line > 0 => {
            amounts.design().pour.crew.value
        }
        Hands::Pouring if amounts.of(Measure::Slab) > LARGE_POUR => 3,
        Hands::Pouring => 2,
    }
}

/// What can hurt at a step, a sentence each.
pub(super) fn cautions(amounts: &Amounts, step: &WorkStep) -> Vec<String> {
    let all = step.cautions.iter();
    all.filter_map(|c| match c {
        Caution::Say(text) => Some((*text).to_owned()),
        Caution::Lift(of) => lift(amounts, *of, least(step, *of)),
    })
    .collect()
}

/// How many lift it however light it is: what is long or limp.
fn least(step: &WorkStep, of: Heaviest) -> u32 {
    match step.hands {
        Hands::Lifting(what, least) if what == of => least,
        _ => 1,
    }
}

fn lift(amounts: &Amounts, of: Heaviest, least: u32) -> Option<String> {
    let mass = amounts.heaviest(of);
    let what = match of {
        Heaviest::Panel => "the heaviest panel's steel weighs",
        Heaviest::Board => "a whole sheet weighs",
        Heaviest::Appliance => "the heaviest of them known weighs",
        Heaviest::Bag => "a bag weighs",
        Heaviest::Slab => "the slab, whole, weighs",
    };
    if mass <= Mass::ZERO {
        let unknown = of == Heaviest::Appliance;
        return unknown.then(|| {
            "Lifting: the file gives no weights; see each appliance's own instructions.".to_owned()
        });
    }
    let spelt = Unit::Mass.spell(mass.kg(), amounts.design().project.units);
    let who = match lifters(mass).max(least) {
        1 => "one person, from the knees".to_owned(),
        n => format!("{n} people together"),
    };
    Some(format!("Lifting: {what} {spelt}: {who}."))
}

/// What is ticked at a step, a sentence each.
pub(super) fn checks(amounts: &Amounts, step: &WorkStep, crew: u32) -> Vec<String> {
    let mut all = Vec::new();
    for item in step.checks {
        match item {
            Item::Say(text) => all.push((*text).to_owned()),
            Item::If(case, text) if amounts.holds(*case) => all.push((*text).to_owned()),
            Item::If(..) => {}
            Item::EachThing => all.extend(things(amounts)),
            Item::Concrete => all.push(concrete(amounts)),
            Item::PourHands => all.push(pour_hands(amounts, crew)),
        }
    }
    all
}

/// One line for each appliance and each thing built in.
fn things(amounts: &Amounts) -> Vec<String> {
    let design = amounts.design();
    let units = design.project.units;
    let size = |sizes: &[Length]| {
        let spelt: Vec<String> = sizes.iter().map(|s| units.spell_with_unit(*s)).collect();
        spelt.join(" × ")
    };
    let appliances = design.appliances.iter().map(|a| {
        let hole = size(&[a.cutout_width.value, a.cutout_depth.value]);
        format!(
            "{}: body through its cutout {hole}, flange lies flat",
            a.name
        )
    });
    let framed = design.openings.iter().filter(|o| o.kind.is_framed());
    let openings = framed.map(|o| {
        let hole = size(&[o.width.value, o.height.value]);
        format!("{}: fits its opening {hole}", o.name)
    });
    appliances.chain(openings).collect()
}

fn concrete(amounts: &Amounts) -> String {
    let volume = amounts.concrete();
    let spelt = match amounts.design().project.units {
        Notation::Imperial => format!("{:.1} cu ft", volume.mm3() / 28_316_846.592),
        Notation::Metric => format!("{:.0} L", volume.mm3() / 1e6),
    };
    format!(
        "Bags on site and dry: enough for {spelt} and the spare ones of the order list; counted by two"
    )
}

fn pour_hands(amounts: &Amounts, crew: u32) -> String {
    let wanted = hands(amounts, Hands::Pouring);
    if wanted > crew {
        let more = wanted - crew;
        format!("{wanted} pairs of hands here until it is trowelled: {more} more than the crew")
    } else {
        format!("{wanted} pairs of hands here until it is trowelled")
    }
}

/// What a step handles, such as `12 boards`.
pub(super) fn pieces(amounts: &Amounts, step: &WorkStep) -> Vec<String> {
    let all = step.pieces.iter().map(|p| piece(amounts, *p));
    all.filter(|text| !text.is_empty()).collect()
}

fn piece(amounts: &Amounts, pieces: Pieces) -> String {
    let design = amounts.design();
    let count = |kind| counted(amounts.count(kind), kind);
    let many = |number: f64, one: &str, many: &str| match number {
        n if n < 0.5 => String::new(),
        n if n < 1.5 => format!("1 {one}"),
        n => format!("{n:.0} {many}"),
    };
    match pieces {
        Pieces::Sleepers => count(PartKind::Sleeper),
        Pieces::PanelSteel => many(
            amounts.of(Measure::PanelMembers),
            "piece of panels",
            "pieces of panels",
        ),
        Pieces::Crossings => many(
            amounts.of(Measure::Crossings),
            "tie or blocking",
            "ties, trimmers, blocking",
        ),
        Pieces::Channel => many(
            amounts.count(PartKind::BaseChannel) as f64,
            "base channel",
            "base channels",
        ),
        Pieces::Boards => count(PartKind::Board),
        Pieces::Substrate => area(amounts, "substrate", Measure::Substrate),
        Pieces::Forms => {
            let edge = many(
                amounts.count(PartKind::EdgeForm) as f64,
                "edge form",
                "edge forms",
            );
            let holes = amounts.of(Measure::CutoutForms);
            let holes = many(holes, "cutout form", "cutout forms");
            [edge, holes]
                .into_iter()
                .filter(|t| !t.is_empty())
                .collect::<Vec<_>>()
                .join(", ")
        }
        Pieces::Slab => area(amounts, "counter", Measure::Top),
        Pieces::BaseCoat => area(amounts, "base coat", Measure::BaseCoat),
        Pieces::FinishCoat => area(amounts, "finish coat", Measure::FinishCoat),
        Pieces::Tiles => count(PartKind::Tile),
        Pieces::Fronts => {
            let names = design.openings.iter().filter(|o| {
                !matches!(
                    o.kind,
                    crate::design::OpeningKind::Undercounter
                        | crate::design::OpeningKind::Receptacle
                )
            });
            names
                .map(|o| o.name.as_str())
                .collect::<Vec<_>>()
                .join(", ")
        }
        Pieces::Appliances => {
            let built_in = design
                .openings
                .iter()
                .filter(|o| o.kind == crate::design::OpeningKind::Undercounter);
            let names = design.appliances.iter().map(|a| a.name.as_str());
            names
                .chain(built_in.map(|o| o.name.as_str()))
                .collect::<Vec<_>>()
                .join(", ")
        }
    }
}

fn counted(count: usize, kind: PartKind) -> String {
    match count {
        0 => String::new(),
        1 => format!("1 {}", kind.name()),
        n => format!("{n} {}s", kind.name()),
    }
}

/// A layer with its area.
fn area(amounts: &Amounts, what: &str, of: Measure) -> String {
    let units = amounts.design().project.units;
    format!("{what} {}", Unit::Area.spell(amounts.of(of) * 1e6, units))
}
