//! The sheets of schedules.

use super::flow::{Portion, flow};
use super::{Grid, appliances, edge, materials, members, openings};
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::plans::has_edge_schedule;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::table::Table;

/// The short name of the longest schedule.
const MEMBERS: &str = "members of the frame";

/// The short name of the schedule that the plan of the counter has where there is room.
const EDGE: &str = "edge of the counter";

/// A schedule with the short name that sheets are titled by.
type Named = (&'static str, Grid);

/// Which sheets there are: as many as the schedules take.
pub fn planned(plan: &Plan, assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    let named = schedules(plan, assembly, frame);
    let sheets = laid(&named, frame).into_iter();
    sheets
        .map(|portions| planned_one(&named, &portions))
        .collect()
}

/// Draws one of them.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let named = schedules(set.plan, set.assembly, set.frame);
    let portions = laid(&named, set.frame).into_iter().nth(number)?;
    let title = planned_one(&named, &portions).title;
    let scale = Scale::none();
    let mut page = set.frame.page(&title, &scale, &[]);
    for portion in portions {
        let (_, grid) = named.get(portion.grid)?;
        grid.draw(&mut page, portion.at, portion.part);
    }
    Some((page, scale))
}

/// All schedules that have rows, laid out for the sheets' room.
fn schedules(plan: &Plan, assembly: &Assembly, frame: &Frame) -> Vec<Named> {
    let width = frame.room(&[]).width();
    // Narrow and long: two or more of its columns stand side by side.
    let narrow = |name: &str| if name == MEMBERS { width * 0.45 } else { width };
    let edge = !has_edge_schedule(plan, frame);
    let all: [(&'static str, Table, Vec<String>); 6] = [
        (
            "appliances",
            appliances::appliance_schedule(plan),
            appliances::appliance_notes(plan),
        ),
        (
            "appliances",
            appliances::rating_schedule(plan),
            appliances::rating_notes(),
        ),
        (
            "openings",
            openings::opening_schedule(plan),
            openings::opening_notes(plan),
        ),
        (
            MEMBERS,
            members::stud_schedule(plan, assembly),
            members::stud_notes(plan),
        ),
        (
            "materials",
            materials::material_schedule(plan, assembly),
            materials::material_notes(),
        ),
        (EDGE, edge::edge_schedule(plan), edge::edge_notes(plan)),
    ];
    let filled = all
        .into_iter()
        .filter(|(name, table, _)| !table.rows.is_empty() && (edge || *name != EDGE));
    filled
        .map(|(name, table, notes)| (name, Grid::new(&table, narrow(name)).with_notes(notes)))
        .collect()
}

fn laid(named: &[Named], frame: &Frame) -> Vec<Vec<Portion>> {
    let grids: Vec<Grid> = named.iter().map(|(_, grid)| grid.clone()).collect();
    if grids.is_empty() {
        Vec::new()
    } else {
        flow(&grids, &frame.room(&[]))
    }
}

fn planned_one(named: &[Named], portions: &[Portion]) -> Planned {
    let mut names: Vec<&str> = portions
        .iter()
        .filter_map(|p| named.get(p.grid))
        .map(|(name, _)| *name)
        .collect();
    names.dedup();
    Planned {
        stem: "schedules".to_owned(),
        title: format!("Schedules: {}", names.join(", ")),
        ..Planned::default()
    }
}
