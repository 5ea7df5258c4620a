//! The island from above with its counter left off.

use super::chains::{self, WorldChain};
use super::openings;
use crate::drawing::border::Frame;
use crate::drawing::fit::Fit;
use crate::drawing::hidden::{Stroke, View};
use crate::drawing::marks::{Mark, place_inside, place_led, place_marks};
use crate::drawing::outline::{finished_corners, frame_corners};
use crate::drawing::page::{LARGE, LETTERS, Page};
use crate::drawing::scene::{Scene, Sight};
use crate::drawing::{Dash, Layer, Pen, Scale};
use crate::geometry::{Bounds2, Outline, Point2};
use crate::parts::{Group, PartKind};
use crate::plan::{BodyOf, Layers, Plan};

/// Draws the plan of the island; `views` names the sheets that show each face.
pub fn island(
    plan: &Plan,
    scene: &Scene,
    frame: &Frame,
    title: &str,
    views: &[(usize, String)],
) -> (Page, Scale) {
    let finished = Outline::polygon(&finished_corners(plan));
    let opened = openings::all(plan);
    let grounds = opened.iter().map(|o| o.ground(plan));
    let drawn = grounds.fold(
        finished.bounds().union(plan.counter.outline.bounds()),
        Bounds2::union,
    );
    let notes = [format!(
        "Seen from above without counter and substrate; the phantom line is the edge of the counter. Dimensions are of the steel frame, out to out; finished faces stand {} outside it.",
        plan.design
            .project
            .units
            .spell_with_unit(plan.design.trade.cladding())
    )];
    let chains = world_chains(plan, &finished.bounds());
    let room = frame.room(&notes);
    let fit = Fit::new(
        plan.design.project.units,
        &drawn,
        &room,
        chains::margins(&chains),
    );
    let mut page = frame.page(title, &fit.scale, &notes);
    let sight = scene.look(&View::from_above(), &[], |part| {
        part.group == Group::Framing
    });
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
    chains::draw(&mut page, plan, &fit, &drawn, &chains);
    name_what_is_there(&mut page, plan, &fit);
    mark_crossings(&mut page, scene, &sight, &fit);
    name_views(&mut page, plan, &fit, views);
    (page, fit.scale)
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

/// Names of appliances, runs and openings, where they belong.
fn name_what_is_there(page: &mut Page, plan: &Plan, fit: &Fit) {
    for cutout in &plan.counter.cutouts {
        let area = fit.area(&cutout.outline.bounds());
        if let Some(appliance) = plan.design.appliances.get(cutout.appliance) {
            let text = appliance.name.clone();
            place_inside(page, &Mark { text, area }, LETTERS);
        }
        // Nothing else is lettered where it would seem to name the appliance.
        page.reserve(area);
    }
    let inner = plan.sizes.panel;
    for (run, named) in plan.runs.iter().zip(&plan.design.runs) {
        let mark = Mark {
            text: format!("{} run", named.name.value),
            area: fit.area(&run.rectangle(run.framed, (inner, run.depth - inner))),
        };
        place_inside(page, &mark, LARGE);
    }
    for (names, opened) in named_openings(plan) {
        let mark = |bounds: Bounds2| Mark {
            text: names.join(", "),
            area: fit.area(&bounds),
        };
        let in_front = mark(opened.ground(plan));
        if in_front.area.width().min(in_front.area.height()) > LARGE {
            place_inside(page, &in_front, LETTERS);
        } else {
            place_marks(page, &[mark(opened.hole(plan))]);
        }
    }
}

/// Openings with their names; those that lie one above the other are named together.
fn named_openings(plan: &Plan) -> Vec<(Vec<&str>, openings::InPlan<'_>)> {
    let mut found: Vec<(Vec<&str>, openings::InPlan)> = Vec::new();
    let named = openings::all(plan).into_iter();
    for opened in named.filter(|o| o.opening.kind.is_some()) {
        let hole = opened.hole(plan);
        let same =
            |b: Bounds2| (b.low - hole.low).norm() < 1.0 && (b.high - hole.high).norm() < 1.0;
        match found.iter_mut().find(|(_, other)| same(other.hole(plan))) {
            Some((names, _)) => names.push(&opened.opening.name),
            None => found.push((vec![&opened.opening.name], opened)),
        }
    }
    found
}

/// Marks of what lies under the counter: no elevation shows it.
fn mark_crossings(page: &mut Page, scene: &Scene, sight: &Sight, fit: &Fit) -> usize {
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
    place_marks(page, &marks)
}

/// For each face the sheets that show it, led to its middle.
fn name_views(page: &mut Page, plan: &Plan, fit: &Fit, views: &[(usize, String)]) {
    let out = Layers::of(&plan.design.trade).finish.outer;
    let marks: Vec<_> = views
        .iter()
        .filter_map(|(number, text)| {
            let face = plan.faces.get(*number)?;
            let out = if face.wall { 0.0 } else { out };
            let middle = face.point(face.length / 2.0, out);
            Some(Mark {
                text: text.clone(),
                area: fit.area(&Bounds2 {
                    low: middle,
                    high: middle,
                }),
            })
        })
        .collect();
    place_led(page, &marks);
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
