//! The counter in plan.

use super::cross_chain;
use crate::design::{EdgeProfile, PlanCorner, Side as RunSide};
use crate::drawing::fit::Fit;
use crate::drawing::marks::place_lines;
use crate::drawing::page::Page;
use crate::drawing::plans::chains::{self, WorldChain};
use crate::drawing::set::{Drawn, Set};
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2};
use crate::plan::{CounterCutout, Plan};
use crate::units::Length;

/// Draws the plan of the counter.
pub fn counter(set: &Set, title: &str) -> Drawn {
    let Set { plan, frame, .. } = *set;
    let counter = &plan.counter;
    let drawn = counter.outline.bounds();
    let notes = notes(plan);
    let chains = world_chains(plan, &drawn);
    let room = frame.room(&notes);
    let fit = Fit::new(
        plan.design.project.units,
        &drawn,
        &room,
        chains::margins(&chains),
    );
    let mut page = frame.page(title, &fit.scale, &notes);
    let points = fit.outline(&counter.outline);
    page.path(
        Layer::Outline,
        Some(Pen::Thick),
        Dash::Solid,
        points,
        true,
        None,
    );
    for cutout in &counter.cutouts {
        if !cutout.open {
            let points = fit.outline(&cutout.outline);
            page.path(
                Layer::Cut,
                Some(Pen::Medium),
                Dash::Solid,
                points,
                true,
                None,
            );
        }
        let points = fit.outline(&cutout.flange);
        page.path(
            Layer::Detail,
            Some(Pen::Fine),
            Dash::Phantom,
            points,
            !cutout.open,
            None,
        );
    }
    for line in &counter.turndown {
        let points = fit.vertices(&line.vertices);
        page.path(
            Layer::Hidden,
            Some(Pen::Thin),
            Dash::Dashed,
            points,
            line.closed,
            None,
        );
    }
    chains::draw(&mut page, plan, &fit, &drawn, &chains);
    for cutout in &counter.cutouts {
        cross_chain::draw(&mut page, plan, &fit, cutout);
    }
    for cutout in &counter.cutouts {
        letter(&mut page, plan, &fit, cutout);
    }
    (page, fit.scale)
}

/// What the slab is, in words.
fn notes(plan: &Plan) -> Vec<String> {
    let counter = &plan.design.counter;
    let spell = |length: Length| plan.design.project.units.spell_with_unit(length);
    let turndown = counter
        .turndown
        .as_ref()
        .map_or("no turndown".to_owned(), |t| {
            format!(
                "turndown edge {} below the slab, {} wide (dashed)",
                spell(t.depth.value),
                spell(t.width.value)
            )
        });
    let profile = match counter.profile.value {
        EdgeProfile::Square { eased } if eased.mm() <= 0.0 => "square".to_owned(),
        EdgeProfile::Square { eased } => format!("square, arris eased {}", spell(eased)),
        EdgeProfile::Chamfer { size } => format!("chamfer {}", spell(size)),
        EdgeProfile::HalfRound => "half round".to_owned(),
        EdgeProfile::QuarterRound { radius } => format!("quarter round {}", spell(radius)),
        EdgeProfile::Cove { radius } => format!("cove {}", spell(radius)),
    };
    let corners = match counter.corners.value {
        PlanCorner::Sharp => "outward corners sharp".to_owned(),
        PlanCorner::Chamfered(size) => format!("outward corners cut off {}", spell(size)),
        PlanCorner::Rounded(radius) => format!("outward corners radius {}", spell(radius)),
    };
    let overhangs: Vec<_> = RunSide::ALL
        .iter()
        .map(|side| {
            format!(
                "{} {}",
                side.name(),
                spell(counter.overhang.of(*side).value)
            )
        })
        .collect();
    vec![
        format!(
            "Slab {} on {} substrate; {turndown}; edge {profile}; {corners}.",
            spell(counter.thickness.value),
            spell(plan.design.trade.substrate_thickness.value)
        ),
        format!(
            "Overhang past the finished face: {}; none at walls. Phantom lines are appliance flanges: check every cutout against the maker's sheet.",
            overhangs.join(", ")
        ),
    ]
}

/// For each run a chain of its cutouts from edge to edge of the counter, and overall.
fn world_chains(plan: &Plan, drawn: &Bounds2) -> Vec<WorldChain> {
    let frame = plan.runs.iter().map(crate::plan::RunPlan::bounds);
    let frame = frame.reduce(Bounds2::union).unwrap_or(*drawn);
    let mut found: Vec<WorldChain> = Vec::new();
    for number in 0..plan.runs.len() {
        let cutouts = plan.counter.cutouts.iter().filter(|c| c.run == number);
        let edges: Vec<Point2> = cutouts
            .flat_map(|c| {
                let b = c.outline.bounds();
                [b.low, b.high]
            })
            .collect();
        let Some(ends) = ends_of_run(plan, number).filter(|_| !edges.is_empty()) else {
            continue;
        };
        found.push(WorldChain {
            side: chains::side_of_run(plan, number, &frame),
            name: "cutouts".to_owned(),
            stations: ends.into_iter().chain(edges).collect(),
        });
    }
    let whole = chains::overall(&found, "counter", drawn);
    found.extend(whole);
    found
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
fn letter(page: &mut Page, plan: &Plan, fit: &Fit, cutout: &CounterCutout) {
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
    place_lines(page, &area, &lines);
}
