//! The tables of the first sheet: what the island is, its levels, what stands around it, the marks.

use super::distance;
use crate::design::{Design, Fuel, ObjectKind, OpeningKind, SiteObject};
use crate::drawing::outline::finished_corners;
use crate::drawing::schedule::{Grid, edge_mark};
use crate::geometry::{Bounds2, Point2};
use crate::parts::{Assembly, Group, PartKind};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::units::{Length, Unit};
use std::collections::BTreeMap;

/// Between values of one row.
const SEPARATOR: &str = "; ";

fn table(title: &str, headings: &[&str], rows: Vec<Vec<Cell>>) -> Table {
    Table {
        name: String::new(),
        title: title.to_owned(),
        columns: headings.iter().map(|h| Column::plain(h)).collect(),
        rows,
    }
}

fn spell(design: &Design, mm: f64) -> String {
    design
        .project
        .units
        .spell_with_unit(Length::millimetres(mm))
}

/// What is built, in a few rows.
pub fn island(plan: &Plan, assembly: &Assembly, width: f64) -> Grid {
    let design = &plan.design;
    let row = |what: &str, said: String| vec![Cell::text(what), Cell::text(said)];
    let rows = vec![
        row("frame of runs", runs(design)),
        row("counter", counter(plan)),
        row("frame", frame(design)),
        row("cladding", cladding(design)),
        row(
            "appliances",
            named(design.appliances.iter().map(|a| a.name.as_str())),
        ),
        row("gas", gas(design)),
        row("electricity", electricity(design)),
        row("water", water(design)),
        row("ground", ground(plan)),
        row("people", people(design)),
        row("marks, such as", marks(assembly)),
    ];
    Grid::new(
        &table("The island", &["what", "as the file says"], rows),
        width,
    )
    .with_notes(["– the file does not say."])
}

fn named<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let names: Vec<_> = names.collect();
    if names.is_empty() {
        "none".to_owned()
    } else {
        names.join(", ")
    }
}

fn runs(design: &Design) -> String {
    let runs = design.runs.iter().map(|r| {
        let (length, depth) = (spell(design, r.length.mm()), spell(design, r.depth.mm()));
        format!("{} ({}) {length} × {depth}", r.name.value, r.mark)
    });
    runs.collect::<Vec<_>>().join(SEPARATOR)
}

fn counter(plan: &Plan) -> String {
    let design = &plan.design;
    let b = plan.counter.outline.bounds();
    format!(
        "{} × {} overall, {} thick, top {} above the datum",
        spell(design, b.width()),
        spell(design, b.height()),
        spell(design, design.counter.thickness.mm()),
        spell(design, plan.levels.counter_top)
    )
}

fn frame(design: &Design) -> String {
    let t = &design.trade;
    let spacing = spell(design, t.stud_spacing.mm());
    format!(
        "studs {} at {spacing}, tracks {}",
        t.stud.designator, t.track.designator
    )
}

fn cladding(design: &Design) -> String {
    let t = &design.trade;
    let layers = [
        ("board", t.board_thickness.mm()),
        ("base coat", t.base_coat.mm()),
        ("finish coat", t.finish_coat.mm()),
    ];
    let layers = layers.map(|(name, mm)| format!("{name} {}", spell(design, mm)));
    let tile = design.tile_band.as_ref().map(|_| ", a band of tile");
    format!("{}{}", layers.join(", "), tile.unwrap_or_default())
}

fn gas(design: &Design) -> String {
    let burning = design
        .appliances
        .iter()
        .filter(|a| a.rating.fuel.as_ref().is_some_and(|f| f.is_gas()));
    let burning: Vec<_> = burning.collect();
    let Some(fuel) = design.gas.as_ref().map(|g| g.fuel.value).or_else(|| {
        let first = burning.first()?;
        first.rating.fuel.as_ref().map(|f| f.value)
    }) else {
        return "none".to_owned();
    };
    let heat: Option<f64> = burning
        .iter()
        .map(|a| a.rating.heat_input.as_ref().map(|h| h.w()))
        .sum();
    let heat = heat.filter(|w| *w > 0.0);
    let heat = heat.map_or("–".to_owned(), |w| {
        Unit::Heat.spell(w, design.project.units)
    });
    let supply = design.gas.as_ref();
    let shut_off = supply.and_then(|g| g.shut_off.as_ref());
    let shut_off = shut_off.map_or("–".to_owned(), |s| format!("behind {}", s.value));
    let source = match supply.and_then(|g| g.cylinder.as_ref()) {
        Some(_) => "a cylinder",
        None => entry(design),
    };
    format!(
        "{}, {heat} in all; from {source}; shut-off {shut_off}",
        fuel.name()
    )
}

/// Where the gas comes from, as its first pipe is called.
fn entry(design: &Design) -> &str {
    let pipes = design.gas.iter().flat_map(|g| &g.pipes);
    let mut first = pipes.filter(|p| p.from.is_none());
    first
        .next()
        .map_or("–", |p| p.name.strip_prefix("from ").unwrap_or(&p.name))
}

fn electricity(design: &Design) -> String {
    let fed = design
        .electricity
        .iter()
        .flat_map(|e| &e.feeds)
        .map(|f| f.value.as_str());
    let burnt = design.appliances.iter().filter(|a| {
        a.rating
            .fuel
            .as_ref()
            .is_some_and(|f| f.value == Fuel::Electricity)
    });
    let fed: Vec<_> = fed.chain(burnt.map(|a| a.name.as_str())).collect();
    let wired = [OpeningKind::Receptacle, OpeningKind::Undercounter];
    let boxes = design.openings.iter().any(|o| wired.contains(&o.kind));
    match (&design.electricity, fed.is_empty()) {
        (_, false) => format!("to {}; where it enters: –", fed.join(", ")),
        (None, true) if !boxes => "none in the file".to_owned(),
        _ => "–".to_owned(),
    }
}

fn water(design: &Design) -> String {
    let wet = design
        .appliances
        .iter()
        .filter(|a| a.is_sink() || a.holds_ice() || a.rating.drain.is_some());
    let wet: Vec<_> = wet.map(|a| a.name.as_str()).collect();
    if wet.is_empty() {
        "none".to_owned()
    } else {
        format!("{}; where it enters: –", wet.join(", "))
    }
}

fn ground(plan: &Plan) -> String {
    let freezing = match plan.design.site.freezing.as_ref().map(|f| f.value) {
        Some(true) => "it freezes",
        Some(false) => "no frost",
        None => "frost: –",
    };
    let said = |name| crate::drawing::notes::value(plan, name).unwrap_or_default();
    format!("{}; on it {}; {freezing}", said("ground"), said("surface"))
        .replace(" (not in the file)", "")
}

fn people(design: &Design) -> String {
    let seats = design.people.seats.as_ref();
    let seats = seats.map_or("seats: –".to_owned(), |s| format!("{} seats", s.value));
    let access = match design.people.accessible.as_ref().map(|a| a.value) {
        Some(true) => "a part for wheelchairs",
        Some(false) => "no part for wheelchairs",
        None => "use from a wheelchair: –",
    };
    format!("{seats}; {access}")
}

/// Heights above the datum.
pub fn levels(plan: &Plan, width: f64) -> Grid {
    let l = &plan.levels;
    let rows = [
        ("top of the counter", l.counter_top),
        ("underside of the slab", l.slab_bottom),
        ("top of the frame", l.frame_top),
        ("bottom of the frame", l.frame_bottom),
        ("datum: highest point of the ground under the island", 0.0),
    ];
    let rows = rows.map(|(what, mm)| {
        let spelt = plan.design.project.units.spell(Length::millimetres(mm));
        vec![Cell::text(what), Cell::text(spelt)]
    });
    Grid::new(
        &table("Levels", &["level", "above datum"], rows.to_vec()),
        width,
    )
}

/// Everything that the file says stands around; a row of dashes where it says nothing.
pub fn around(plan: &Plan, width: f64) -> Grid {
    let objects = plan.design.site.objects.as_ref();
    let rows = objects
        .iter()
        .flat_map(|o| o.value.iter())
        .map(|o| object(plan, o));
    let mut rows: Vec<_> = rows.collect();
    if rows.is_empty() {
        rows.push(vec![Cell::Empty; 5]);
    }
    let note = match objects {
        None => "The file does not say what stands around: look before you build.",
        Some(o) if o.value.is_empty() => "The file says that nothing stands around.",
        Some(_) => "Away: level, from the finished faces. – not overhead, or not said.",
    };
    let headings = ["what", "kind", "can burn", "away", "over counter"];
    Grid::new(&table("What stands around", &headings, rows), width).with_notes([note])
}

fn object(plan: &Plan, object: &SiteObject) -> Vec<Cell> {
    let burns = match object.combustible.as_ref().map(|c| c.value) {
        Some(true) => "yes",
        Some(false) => "no",
        None => "",
    };
    let ground = Bounds2 {
        low: Point2::new(object.low[0], object.low[1]),
        high: Point2::new(object.high[0], object.high[1]),
    };
    let away = distance::between(&finished_corners(plan), &ground);
    let spell = |mm: f64| plan.design.project.units.spell(Length::millimetres(mm));
    let over = matches!(object.kind, ObjectKind::Roof | ObjectKind::Beam);
    let above = object.low[2] - plan.levels.counter_top;
    vec![
        Cell::text(&object.name),
        Cell::text(object.kind.name()),
        Cell::text(burns),
        Cell::text(match away {
            away if away >= 1.0 => spell(away),
            _ if over => "over it".to_owned(),
            _ => "touches".to_owned(),
        }),
        if over {
            Cell::text(spell(above))
        } else {
            Cell::Empty
        },
    ]
}

/// For every kind of member the first mark as an example, and that of the counter's first side.
fn marks(assembly: &Assembly) -> String {
    let mut kinds: BTreeMap<PartKind, &str> = BTreeMap::new();
    for part in assembly.parts.iter().filter(|p| p.group == Group::Framing) {
        kinds.entry(part.kind).or_insert(&part.mark);
    }
    let members = kinds
        .iter()
        .map(|(kind, mark)| format!("{mark} {}", kind.name()));
    let edge = format!("{} side of the counter", edge_mark(0));
    members.chain([edge]).collect::<Vec<_>>().join(", ")
}

/// The sheets of the set: number, title, scale.
pub fn sheets(rows: &[(usize, String, String)], width: f64) -> Grid {
    let cells = rows.iter().map(|(number, title, scale)| {
        let number = Cell::count(u32::try_from(*number).unwrap_or(u32::MAX));
        vec![number, Cell::text(title), Cell::text(scale)]
    });
    Grid::new(
        &table("Sheets", &["no", "title", "scale"], cells.collect()),
        width,
    )
}
