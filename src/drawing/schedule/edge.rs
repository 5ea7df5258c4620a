//! The schedule of the counter's edge.

use crate::design::EdgeProfile;
use crate::geometry::CornerShape;
use crate::plan::{CounterSide, Plan, SideKind};
use crate::table::{Cell, Column, Table};
use crate::units::{Length, Notation};

/// The mark of a side of the counter, `E1` for the first: what the plan of the counter letters beside it.
pub fn edge_mark(side: usize) -> String {
    format!("E{}", side + 1)
}

/// Every side of the counter, counter-clockwise, one a row: what stands there, its length, overhang, profile, turndown
/// and the corners at its ends. Lengths are of the outermost line, as if its corners were sharp.
pub fn edge_schedule(plan: &Plan) -> Table {
    let sides = plan.counter.sides.iter().enumerate();
    Table {
        name: "edge-schedule".to_owned(),
        title: "Edge of the counter".to_owned(),
        columns: [
            "edge",
            "where",
            "length",
            "overhang",
            "profile",
            "turndown",
            "at its start",
            "at its end",
        ]
        .map(Column::plain)
        .to_vec(),
        rows: sides.map(|(i, side)| row(plan, i, side)).collect(),
    }
}

/// What a reader of the schedule must be told.
pub fn edge_notes(plan: &Plan) -> Vec<String> {
    let unit = match plan.design.project.units {
        Notation::Imperial => "feet and inches",
        Notation::Metric => "millimetres",
    };
    vec![format!(
        "In {unit}. Counter-clockwise from the first run's working side; start and end as one walks that way, the slab \
         to the left. Lengths from corner to corner as if they were sharp; overhang past the finished face; turndown: \
         how far below the slab × how thick."
    )]
}

fn row(plan: &Plan, number: usize, side: &CounterSide) -> Vec<Cell> {
    let spell = |mm: f64| plan.design.project.units.spell(Length::millimetres(mm));
    let exposed = side.kind == SideKind::Exposed;
    let only = |here: bool, text: String| Cell::text(if here { text } else { "none".to_owned() });
    let turndown = format!(
        "{} × {}",
        spell(plan.counter.turndown_depth),
        spell(plan.counter.turndown_width)
    );
    let next = (number + 1) % plan.counter.sides.len().max(1);
    vec![
        Cell::text(edge_mark(number)),
        Cell::text(place(plan, side)),
        Cell::text(spell(side.length())),
        only(exposed, spell(side.overhang)),
        Cell::text(if exposed {
            profile(plan)
        } else {
            "straight down".to_owned()
        }),
        only(side.dropped, turndown),
        Cell::text(corner(plan, number)),
        Cell::text(corner(plan, next)),
    ]
}

/// What stands at a side.
fn place(plan: &Plan, side: &CounterSide) -> String {
    let face = plan.faces.get(side.face).map_or("", |f| &f.name);
    match side.kind {
        SideKind::Exposed => face.to_owned(),
        SideKind::Wall => format!("{face}, at the wall"),
        SideKind::Notch(appliance) => {
            let appliance = plan.design.appliances.get(appliance);
            format!("open front of {}", appliance.map_or("", |a| &a.name))
        }
    }
}

/// The edge profile in words with its size.
pub fn profile(plan: &Plan) -> String {
    let spell = |length: Length| plan.design.project.units.spell_with_unit(length);
    match plan.design.counter.profile.value {
        EdgeProfile::Square { eased } if eased.mm() <= 0.0 => "square".to_owned(),
        EdgeProfile::Square { eased } => format!("square, eased {}", spell(eased)),
        EdgeProfile::Chamfer { size } => format!("chamfer {}", spell(size)),
        EdgeProfile::HalfRound => "half round".to_owned(),
        EdgeProfile::QuarterRound { radius } => format!("quarter round {}", spell(radius)),
        EdgeProfile::Cove { radius } => format!("cove {}", spell(radius)),
    }
}

/// The corner where a side starts.
fn corner(plan: &Plan, side: usize) -> String {
    let slab = &plan.counter.slab;
    let Some(edge) = slab.edges.get(side) else {
        return String::new();
    };
    let spell = |mm: f64| plan.design.project.units.spell(Length::millimetres(mm));
    let inward = if slab.corner(side).is_convex() {
        ""
    } else {
        "inward, "
    };
    match edge.shape {
        CornerShape::Sharp => format!("{inward}sharp"),
        CornerShape::Rounded(radius) => format!("{inward}R {}", spell(radius)),
        CornerShape::Chamfered(leg) => format!("{inward}cut off {}", spell(leg)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_side_of_the_counter_is_a_row() {
        let text = include_str!("../../../params/garden-corner.yaml");
        let plan = crate::plan::lay_out(crate::design::from_text(text).unwrap()).unwrap();
        let table = edge_schedule(&plan);
        assert_eq!(table.rows.len(), plan.counter.sides.len());
        let row: Vec<String> = table.rows[0].iter().map(Cell::spelt).collect();
        // From the left end (2 in overhang, 7/8 in cladding) to the grill's cutout 30 in wide about 28 in: 2.875 + 13.
        let wanted = [
            "E1",
            "cook run, working side",
            "1'-3 7/8\"",
            "2\"",
            "square, eased 1/8\"",
            "1\" × 1 1/2\"",
            "R 2\"",
            "sharp",
        ];
        assert_eq!(row, wanted);
        let notch: Vec<String> = table.rows[1].iter().map(Cell::spelt).collect();
        assert_eq!(notch[1], "open front of grill");
        assert_eq!(notch[3], "none");
        // The seating side has the 10 in of the bar.
        assert!(table.rows.iter().any(|r| r[3].spelt() == "10\""));
    }
}
