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

/// All schedules that have rows, laid out for the sheets' room.
#[derive(Clone, Debug)]
pub struct Schedules {
    /// The short names that sheets are titled by, one for each table.
    names: Vec<&'static str>,
    grids: Vec<Grid>,
    sheets: Vec<Vec<Portion>>,
}

/// Which sheets there are: as many as the schedules take.
pub fn planned(plan: &Plan, assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    let schedules = Schedules::new(plan, assembly, frame);
    let sheets = schedules.sheets.iter();
    sheets
        .map(|portions| Planned {
            stem: "schedules".to_owned(),
            title: schedules.title(portions),
            ..Planned::default()
        })
        .collect()
}

/// Draws one of them.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let schedules = set.schedules();
    let portions = schedules.sheets.get(number)?;
    let scale = Scale::none();
    let mut page = set.frame.page(&schedules.title(portions), &scale, &[]);
    for portion in portions {
        let grid = schedules.grids.get(portion.grid)?;
        grid.draw(&mut page, portion.at, portion.part);
    }
    Some((page, scale))
}

impl Schedules {
    /// Lays them out.
    pub fn new(plan: &Plan, assembly: &Assembly, frame: &Frame) -> Self {
        let (names, grids): (Vec<_>, Vec<_>) = schedules(plan, assembly, frame).unzip();
        let sheets = if grids.is_empty() {
            Vec::new()
        } else {
            flow(&grids, &frame.room(&[]))
        };
        Self {
            names,
            grids,
            sheets,
        }
    }

    fn title(&self, portions: &[Portion]) -> String {
        let named = portions.iter().filter_map(|p| self.names.get(p.grid));
        let mut names: Vec<&str> = named.copied().collect();
        names.dedup();
        format!("Schedules: {}", names.join(", "))
    }
}

/// All schedules that have rows, each with its short name.
fn schedules(
    plan: &Plan,
    assembly: &Assembly,
    frame: &Frame,
) -> impl Iterator<Item = (&'static str, Grid)> {
    let width = frame.room(&[]).width();
    // Narrow and long: two or more of its columns stand side by side.
    let narrow = move |name: &str| if name == MEMBERS { width * 0.45 } else { width };
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
        .filter(move |(name, table, _)| !table.rows.is_empty() && (edge || *name != EDGE));
    filled
        .map(move |(name, table, notes)| (name, Grid::new(&table, narrow(name)).with_notes(notes)))
}
