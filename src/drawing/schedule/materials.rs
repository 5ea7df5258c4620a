//! The schedule of materials.

use super::spelling::Spelling;
use crate::design::Casting;
use crate::parts::{Assembly, Group, Part, PartKind};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::units::Unit;
use std::collections::BTreeMap;

/// How the amount of a material is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Measure {
    /// By the metre or foot.
    Length,
    /// By the area of a layer.
    Area,
    /// By the area of a layer and its volume.
    Mixed,
    /// Pieces only.
    Count,
}

/// What everything the island is built of comes to, one section, sheet or layer a row, then what lies in the slab: net, as
/// drawn, without waste or spare. Appliances and what fills openings have schedules of their own.
///
/// Invariant: the counts add up to the parts of the assembly that are no appliances.
pub fn material_schedule(plan: &Plan, assembly: &Assembly) -> Table {
    let spelling = Spelling::of(plan);
    let mut rows: Vec<Vec<Cell>> = Vec::new();
    for group in Group::ALL.into_iter().filter(|g| *g != Group::Appliances) {
        let mut equal: BTreeMap<(PartKind, &str, &str), Vec<&Part>> = BTreeMap::new();
        for part in assembly.parts.iter().filter(|p| p.group == group) {
            let key = (
                kind_of(part.kind),
                part.material.as_str(),
                part.section.as_str(),
            );
            equal.entry(key).or_default().push(part);
        }
        let spelt = equal.into_iter();
        rows.extend(spelt.map(|(key, parts)| row(plan, assembly, key, &parts)));
    }
    rows.extend(unmeasured(plan));
    let unit = |metric: &'static str, imperial: &'static str| {
        if spelling.is_imperial() {
            imperial
        } else {
            metric
        }
    };
    Table {
        name: "material-schedule".to_owned(),
        title: "Materials".to_owned(),
        columns: vec![
            Column::plain("for"),
            Column::plain("material"),
            Column::plain("section, sheet or layer"),
            Column::plain("pieces"),
            Column::with_unit("length", unit("m", "ft")),
            Column::with_unit("area", unit("m²", "sq ft")),
            Column::with_unit("volume", unit("m³", "cu ft")),
            Column::plain("more"),
        ],
        rows,
    }
}

/// What stands below it.
pub fn material_notes() -> Vec<String> {
    vec![
        "Net amounts as drawn, without waste and spare: what to buy stands in the order list. – not measured so, or the \
         file does not say."
            .to_owned(),
    ]
}

/// Members of one section are bought as one: studs, jambs and what else is cut from it.
fn kind_of(kind: PartKind) -> PartKind {
    use PartKind as K;
    match kind {
        K::Jamb | K::Cripple | K::Tie | K::Trimmer | K::Blocking => K::Stud,
        K::TopTrack | K::Header | K::Sill => K::BottomTrack,
        other => other,
    }
}

/// What is made of it.
fn made_of_it(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Stud => "studs, jambs, cripples, ties, trimmers, blocking",
        PartKind::BottomTrack => "tracks, headers, sills",
        PartKind::Sleeper => "sleepers under the tracks",
        other => other.name(),
    }
}

fn measure_of(kind: PartKind) -> Measure {
    match kind {
        PartKind::Board | PartKind::Substrate | PartKind::Tile => Measure::Area,
        PartKind::BaseCoat | PartKind::FinishCoat | PartKind::Slab => Measure::Mixed,
        PartKind::CutoutForm => Measure::Count,
        _ => Measure::Length,
    }
}

fn row(
    plan: &Plan,
    assembly: &Assembly,
    key: (PartKind, &str, &str),
    parts: &[&Part],
) -> Vec<Cell> {
    let (kind, material, section) = key;
    let imperial = Spelling::of(plan).is_imperial();
    let measure = measure_of(kind);
    let when = |yes: bool, value: f64, decimals: u8| {
        if yes {
            Cell::number(value, decimals)
        } else {
            Cell::Empty
        }
    };
    let length: f64 = parts.iter().map(|p| p.length.mm()).sum();
    let volume: f64 = parts.iter().map(|p| assembly.solid(p).volume()).sum();
    let area = volume / thickness(plan, kind).max(1e-6);
    let (foot, one) = (304.8_f64, 1000.0_f64);
    let unit = if imperial { foot } else { one };
    let measured_area =
        measure == Measure::Area || (measure == Measure::Mixed && kind != PartKind::Slab);
    vec![
        Cell::text(made_of_it(kind)),
        Cell::text(material),
        Cell::text(section),
        Cell::count(u32::try_from(parts.len()).unwrap_or(u32::MAX)),
        // Short pieces would come to nothing.
        when(
            measure == Measure::Length,
            length / unit,
            if length < unit { 2 } else { 1 },
        ),
        if kind == PartKind::Slab {
            Cell::number(slab_area(plan) / unit.powi(2), if imperial { 1 } else { 2 })
        } else {
            when(
                measured_area,
                area / unit.powi(2),
                if imperial { 1 } else { 2 },
            )
        },
        when(
            measure == Measure::Mixed,
            volume / unit.powi(3),
            if imperial { 2 } else { 3 },
        ),
        Cell::text(more(plan, kind)),
    ]
}

/// The thickness of a layer, millimetres.
fn thickness(plan: &Plan, kind: PartKind) -> f64 {
    let trade = &plan.design.trade;
    match kind {
        PartKind::Board => trade.board_thickness.mm(),
        PartKind::BaseCoat => trade.base_coat.mm(),
        PartKind::FinishCoat => trade.finish_coat.mm(),
        PartKind::Substrate => trade.substrate_thickness.mm(),
        PartKind::Tile => tile_thickness(plan),
        _ => 1.0,
    }
}

fn tile_thickness(plan: &Plan) -> f64 {
    let band = plan.design.tile_band.as_ref();
    band.map_or(1.0, |b| b.tile_thickness.mm())
}

/// The top of the counter, cutouts taken off, mm².
fn slab_area(plan: &Plan) -> f64 {
    let counter = &plan.counter;
    let holes: f64 = counter.slab.cutouts.iter().map(|c| c.area().abs()).sum();
    counter.outline.area().abs() - holes
}

/// What the design says of a material beyond its name.
fn more(plan: &Plan, kind: PartKind) -> String {
    let spelling = Spelling::of(plan);
    let trade = &plan.design.trade;
    match kind {
        PartKind::Stud => format!("joined by {}", trade.fastener),
        PartKind::Board => format!(
            "sheets {} × {}, joints {} wide, taped",
            spelling.length(trade.board_length.value),
            spelling.length(trade.board_width.value),
            spelling.length(trade.board_gap.value)
        ),
        PartKind::Slab => concrete(spelling, &plan.design.counter.casting),
        PartKind::EdgeForm | PartKind::CutoutForm => "struck when the slab has set".to_owned(),
        _ => String::new(),
    }
}

/// Strength and air of the slab's concrete.
fn concrete(spelling: Spelling, casting: &Casting) -> String {
    let strength = casting.strength.as_ref();
    let strength = strength.map_or_else(
        || "–".to_owned(),
        |s| spelling.amount(Unit::Stress, s.mpa()),
    );
    let air = match casting.air_entrained.as_ref().map(|a| a.value) {
        Some(true) => "air-entrained",
        Some(false) => "not air-entrained",
        None => "air-entrained: –",
    };
    format!("strength {strength}; {air}")
}

/// What the file speaks of without its being a part: mesh, bars, brackets.
fn unmeasured(plan: &Plan) -> Vec<Vec<Cell>> {
    let spelling = Spelling::of(plan);
    let casting = &plan.design.counter.casting;
    let steel = &casting.reinforcement;
    let apart = |size: &crate::design::Placed<crate::units::Length>, spacing: Option<_>| {
        let size = spelling.length(size.value);
        let spacing = spacing.map(|s: &crate::design::Placed<_>| spelling.length(s.value));
        format!("{size} at {}", spacing.unwrap_or_else(|| "–".to_owned()))
    };
    let mut rows = Vec::new();
    let mut add = |what: &str, material: &str, section: String, more: String| {
        let mut row = vec![Cell::text(what), Cell::text(material), Cell::text(section)];
        row.extend(vec![Cell::Empty; 4]);
        row.push(Cell::text(more));
        rows.push(row);
    };
    let cover = steel
        .cover
        .as_ref()
        .map(|c| format!("cover {}", spelling.length(c.value)));
    if let Some(mesh) = &steel.mesh {
        let cover = cover.clone().unwrap_or_default();
        add(
            "mesh in the slab",
            "wire",
            apart(mesh, steel.mesh_spacing.as_ref()),
            cover,
        );
    }
    if let Some(bars) = &steel.bars {
        let cover = cover.unwrap_or_default();
        add(
            "bars over the overhang",
            "steel",
            apart(bars, steel.bar_spacing.as_ref()),
            cover,
        );
    }
    if let Some(brackets) = &casting.brackets {
        let reach = format!("reach {}", spelling.length(brackets.reach.value));
        let spacing = format!("{} apart at most", spelling.length(brackets.spacing.value));
        add("brackets under the overhang", "", reach, spacing);
    }
    rows
}
