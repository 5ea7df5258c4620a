//! The plan of the counter.

use super::{brackets, cross_chain, edges, facts, fall, joints, reinforcement};
use crate::drawing::border::Frame;
use crate::drawing::fit::Fit;
use crate::drawing::marks::place_lines;
use crate::drawing::outline::frame_corners;
use crate::drawing::page::Page;
use crate::drawing::plans::chains::{self, Lanes, WorldChain};
use crate::drawing::plans::key::Entry;
use crate::drawing::plans::labels;
use crate::drawing::plans::layout::Layout;
use crate::drawing::plans::style::{CUT, EDGE, HIDDEN, LIMIT};
use crate::drawing::schedule::{Grid, edge_notes, edge_schedule};
use crate::drawing::set::{Drawn, Set};
use crate::geometry::{Bounds2, Outline, Point2};
use crate::plan::{CounterCutout, Plan};
use crate::units::Length;

/// What the sheet is laid out for, before anything is drawn.
struct Prepared {
    drawn: Bounds2,
    notes: Vec<String>,
    entries: Vec<Entry>,
    schedule: Grid,
}

impl Prepared {
    fn new(plan: &Plan) -> Self {
        Self {
            drawn: plan.counter.outline.bounds(),
            notes: facts::notes(plan),
            entries: facts::entries(plan),
            schedule: Grid::new(&edge_schedule(plan), SCHEDULE).with_notes(edge_notes(plan)),
        }
    }

    fn layout<'a>(&'a self, plan: &'a Plan, frame: &Frame) -> Layout<'a> {
        Layout {
            plan,
            built: self.drawn,
            room: frame.room(&self.notes),
            lanes: Lanes::round(&self.drawn, &self.drawn),
            entries: &self.entries,
            table: Some(&self.schedule),
        }
    }
}

/// The widest edge schedule, millimetres.
const SCHEDULE: f64 = 190.0;

/// True when the plan of the counter has room for the edge schedule.
pub fn has_edge_schedule(plan: &Plan, frame: &Frame) -> bool {
    let prepared = Prepared::new(plan);
    let chains = world_chains(plan, &prepared.drawn);
    prepared.layout(plan, frame).lay(chains).has_table()
}

/// Draws the plan of the counter.
pub fn counter(set: &Set, title: &str) -> Drawn {
    let Set { plan, frame, .. } = *set;
    let prepared = Prepared::new(plan);
    let (drawn, notes) = (prepared.drawn, &prepared.notes);
    let layout = prepared.layout(plan, frame);
    let laid = layout.lay(world_chains(plan, &drawn));
    let fit = laid.fit.clone();
    let mut page = frame.page(title, &fit.scale, notes);
    laid.draw(&mut page, &layout);
    draw_slab(&mut page, plan, &fit);
    joints::draw(&mut page, plan, &fit);
    brackets::draw(&mut page, plan, &fit);
    reinforcement::draw_bars(&mut page, plan, &fit);
    chains::draw(&mut page, plan, &fit, (&drawn, &layout.lanes), &laid.chains);
    for cutout in plan.counter.cutouts.iter().filter(|_| !laid.small) {
        cross_chain::draw(&mut page, plan, &fit, cutout);
    }
    edges::letter(&mut page, plan, &fit);
    for cutout in &plan.counter.cutouts {
        letter(&mut page, plan, &fit, cutout, laid.small);
    }
    brackets::measure(&mut page, plan, &fit);
    fall::draw(&mut page, plan, &fit);
    reinforcement::draw_mesh(&mut page, plan, &fit);
    (page, fit.scale)
}

/// Its edge, cutouts, flanges and the line of the turndown.
fn draw_slab(page: &mut Page, plan: &Plan, fit: &Fit) {
    let counter = &plan.counter;
    EDGE.closed(page, fit.outline(&counter.outline));
    for cutout in &counter.cutouts {
        if !cutout.open {
            CUT.closed(page, fit.outline(&cutout.outline));
        }
        let flange = fit.outline(&cutout.flange);
        if cutout.open {
            LIMIT.open(page, flange);
        } else {
            LIMIT.closed(page, flange);
        }
    }
    for line in &counter.turndown {
        let points = fit.vertices(&line.vertices);
        if line.closed {
            HIDDEN.closed(page, points);
        } else {
            HIDDEN.open(page, points);
        }
    }
}

/// For each run chains of its cutouts and of its joints from edge to edge of the counter, and overall.
fn world_chains(plan: &Plan, drawn: &Bounds2) -> Vec<WorldChain> {
    let frame = Outline::polygon(&frame_corners(plan)).bounds();
    let mut found: Vec<WorldChain> = Vec::new();
    for number in 0..plan.runs.len() {
        let cutouts = plan.counter.cutouts.iter().filter(|c| c.run == number);
        let edges: Vec<Point2> = cutouts
            .flat_map(|c| {
                let b = c.outline.bounds();
                [b.low, b.high]
            })
            .collect();
        let Some(ends) = ends_of_run(plan, number) else {
            continue;
        };
        if !edges.is_empty() {
            found.push(WorldChain {
                side: chains::side_of_run(plan, number, &frame),
                name: "cutouts".to_owned(),
                stations: ends.into_iter().chain(edges).collect(),
            });
        }
        found.extend(joints::chain(plan, number, ends, &frame));
    }
    let whole = chains::overall(&found, "counter", drawn);
    found.extend(whole);
    chains::merged(plan, found)
}

/// Where the counter over a run begins and ends along it.
fn ends_of_run(plan: &Plan, number: usize) -> Option<[Point2; 2]> {
    let run = plan.runs.get(number)?;
    let sides = plan.counter.sides.iter();
    let own = sides.filter(|side| plan.faces.get(side.face).is_some_and(|f| f.run == number));
    let us: Vec<f64> = own
        .flat_map(|s| [run.local(s.start).x, run.local(s.end).x])
        .collect();
    let low = us.iter().copied().fold(f64::INFINITY, f64::min);
    let high = us.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    (low < high).then(|| [run.point(low, 0.0), run.point(high, 0.0)])
}

/// Name, size and corner radius inside a cutout.
fn letter(page: &mut Page, plan: &Plan, fit: &Fit, cutout: &CounterCutout, small: bool) {
    let Some(appliance) = plan.design.appliances.get(cutout.appliance) else {
        return;
    };
    let spell = |length: Length| plan.design.project.units.spell(length);
    let size = format!(
        "{} × {}",
        spell(appliance.cutout_width.value),
        spell(appliance.cutout_depth.value)
    );
    let mut lines = vec![appliance.name.clone(), size];
    if appliance.corner_radius.mm() > 0.0 {
        lines.push(format!("R {}", spell(appliance.corner_radius.value)));
    }
    let area = fit.area(&cutout.outline.bounds());
    if !labels::stacked(page, &lines, &area) && !small {
        place_lines(page, &area, &lines);
    }
}
