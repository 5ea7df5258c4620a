//! The island from above with its counter left off.

use super::chains::{self, WorldChain};
use super::openings;
use super::outline::{finished_corners, frame_corners};
use crate::drawing::border::Frame;
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::hidden::{Stroke, View};
use crate::drawing::marks::{Mark, place_inside, place_marks};
use crate::drawing::page::{LARGE, LETTERS, Page};
use crate::drawing::scene::{Scene, Sight};
use crate::drawing::{Dash, Layer, Pen, Scale};
use crate::geometry::{Bounds2, Outline, Point2};
use crate::parts::{Group, PartKind};
use crate::plan::{BodyOf, Plan};

/// Room round the view for its chains, millimetres.
const MARGINS: Margins = Margins {
    left: 38.0,
    right: 38.0,
    below: 36.0,
    above: 36.0,
};

/// Draws the plan of the island. `None` for an island without faces, which there is not.
pub fn island(plan: &Plan, scene: &Scene, frame: &Frame, title: &str) -> Option<(Page, Scale)> {
    let finished = Outline::polygon(&finished_corners(plan));
    let opened = openings::all(plan);
    let grounds = opened.iter().map(|o| o.ground(plan));
    let drawn = grounds.fold(
        finished.bounds().union(plan.counter.outline.bounds()),
        Bounds2::union,
    );
    let fit = Fit::new(plan.design.project.units, &drawn, &frame.room(), MARGINS);
    let notes = [
        "Seen from above without counter and substrate. The phantom line is the edge of the counter.".to_owned(),
        format!(
            "Dimensions are of the steel frame, out to out; finished faces stand {} outside it.",
            plan.design.project.units.spell_with_unit(plan.design.trade.cladding())
        ),
    ];
    let mut page = frame.page(title, &fit.scale, &notes);
    let sight = scene.look(&View::from_above(), |part| part.group == Group::Framing);
    draw_steel(&mut page, &sight, &fit);
    draw_walls(&mut page, plan, &fit);
    let points = fit.outline(&finished);
    page.path(
        Layer::Outline,
        Some(Pen::Thick),
        Dash::Solid,
        points,
        true,
        None,
    );
    let points = fit.outline(&plan.counter.outline);
    page.path(
        Layer::Detail,
        Some(Pen::Thin),
        Dash::Phantom,
        points,
        true,
        None,
    );
    for opening in &opened {
        opening.draw(&mut page, plan, &fit);
    }
    draw_bodies(&mut page, plan, &fit);
    chains::draw(
        &mut page,
        plan,
        &fit,
        &drawn,
        &world_chains(plan, &finished.bounds()),
    );
    letter(&mut page, plan, scene, &sight, &fit);
    Some((page, fit.scale))
}

fn draw_steel(page: &mut Page, sight: &Sight, fit: &Fit) {
    let strokes: Vec<_> = sight
        .lines
        .iter()
        .map(|line| Stroke {
            from: line.from,
            to: line.to,
            weight: 0,
        })
        .collect();
    fit.draw(page, &strokes, &[(Layer::Outline, Pen::Thin)]);
}

/// Walls: a heavy line in their plane with strokes behind it.
fn draw_walls(page: &mut Page, plan: &Plan, fit: &Fit) {
    let stroke = 2.5;
    for face in plan.faces.iter().filter(|f| f.wall) {
        let (from, to) = (
            fit.point(face.point(0.0, 0.0)),
            fit.point(face.point(face.length, 0.0)),
        );
        page.line(Layer::Detail, Pen::Heavy, Dash::Solid, from, to);
        let count = ((to - from).norm() / stroke).floor().min(2000.0) as u32;
        for i in 0..count {
            let foot = from + (to - from) * ((f64::from(i) + 0.5) / f64::from(count));
            let head = foot + (face.outward + face.along) * (stroke * 0.7);
            page.line(Layer::Detail, Pen::Fine, Dash::Solid, foot, head);
        }
    }
}

/// Appliances as they hang in the frame: the edge of the cutout, and the body.
fn draw_bodies(page: &mut Page, plan: &Plan, fit: &Fit) {
    for cutout in &plan.counter.cutouts {
        let points = fit.outline(&cutout.outline);
        page.path(
            Layer::Cut,
            Some(Pen::Thin),
            Dash::Dashed,
            points,
            true,
            None,
        );
    }
    for body in plan
        .bodies
        .iter()
        .filter(|b| matches!(b.of, BodyOf::Appliance(_)))
    {
        let bounds = body.bounds(&plan.runs);
        let (low, high) = (bounds.low.xy(), bounds.high.xy());
        let points = fit.outline(&Outline::rectangle(low.x, low.y, high.x, high.y));
        page.path(
            Layer::Detail,
            Some(Pen::Fine),
            Dash::Solid,
            points,
            true,
            None,
        );
    }
}

/// Names first where they belong, then the marks of what lies under the counter.
fn letter(page: &mut Page, plan: &Plan, scene: &Scene, sight: &Sight, fit: &Fit) {
    for cutout in &plan.counter.cutouts {
        if let Some(appliance) = plan.design.appliances.get(cutout.appliance) {
            let mark = Mark {
                text: appliance.name.clone(),
                area: fit.area(&cutout.outline.bounds()),
            };
            place_inside(page, &mark, LETTERS);
        }
    }
    for (run, named) in plan.runs.iter().zip(&plan.design.runs) {
        let mark = Mark {
            text: format!("{} run", named.name.value),
            area: fit.area(&run.rectangle(run.framed, (0.0, run.depth))),
        };
        place_inside(page, &mark, LARGE);
    }
    let crossings = [PartKind::Tie, PartKind::Trimmer, PartKind::Blocking];
    let marks: Vec<_> = sight
        .seen_parts()
        .into_iter()
        .map(|(number, seen)| (&scene.parts()[number], seen))
        .filter(|(part, _)| crossings.contains(&part.kind) && part.face.is_none())
        .map(|(part, seen)| Mark {
            text: part.mark.clone(),
            area: fit.area(&seen),
        })
        .collect();
    place_marks(page, &marks);
    let names: Vec<_> = openings::all(plan)
        .iter()
        .filter(|o| o.opening.kind.is_some())
        .map(|o| Mark {
            text: o.opening.name.clone(),
            area: fit.area(&o.hole(plan)),
        })
        .collect();
    place_marks(page, &names);
}

fn world_chains(plan: &Plan, finished: &Bounds2) -> Vec<WorldChain> {
    let frame = Outline::polygon(&frame_corners(plan)).bounds();
    let mut found: Vec<WorldChain> = Vec::new();
    for (number, run) in plan.runs.iter().enumerate() {
        let side = chains::side_of_run(plan, number, &frame);
        let ends = [run.point(0.0, 0.0), run.point(run.length, 0.0)];
        let cutouts = plan.cutouts.iter().filter(|c| c.run == number);
        let edges: Vec<Point2> = cutouts
            .flat_map(|c| [run.point(c.u0, 0.0), run.point(c.u1, 0.0)])
            .collect();
        let name = &plan.design.runs[number].name.value;
        if !edges.is_empty() {
            found.push(WorldChain {
                side,
                name: "cutouts".to_owned(),
                stations: ends.into_iter().chain(edges).collect(),
            });
        }
        found.push(WorldChain {
            side,
            name: format!("{name} run"),
            stations: ends.to_vec(),
        });
    }
    found.extend(depths(plan));
    let whole = chains::overall(&found, "finished", finished);
    found.extend(whole);
    found
}

/// The depth of a run at each free end of the island.
fn depths(plan: &Plan) -> Vec<WorldChain> {
    let first = plan.runs.first().map(|run| (run, 0.0, -run.along));
    let last = plan.runs.last().map(|run| (run, run.length, run.along));
    let ends = [first, last.filter(|_| plan.runs.len() > 1)];
    ends.into_iter()
        .flatten()
        .map(|(run, u, out)| WorldChain {
            side: chains::side_towards(out),
            name: "depth".to_owned(),
            stations: vec![run.point(u, 0.0), run.point(u, run.depth)],
        })
        .collect()
}
