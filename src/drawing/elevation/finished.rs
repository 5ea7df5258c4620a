//! A face as finished: what one sees standing in front of it.

use super::{cut, heights};
use crate::drawing::border::Frame;
use crate::drawing::dimension::{Axis, Side, Tier, draw_stack};
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::hidden::{Stroke, View};
use crate::drawing::marks::{Mark, place_inside};
use crate::drawing::outline::finished_corners;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::scene::{Scene, Sight};
use crate::drawing::{Layer, Pen, Scale};
use crate::geometry::{Bounds2, Bounds3, Point2};
use crate::parts::{Group, Part, PartKind};
use crate::plan::{Face, Plan};

/// Room round the view for its chains, millimetres.
const MARGINS: Margins = Margins {
    left: 32.0,
    right: heights::LEVELS,
    below: 44.0,
    above: 34.0,
};

/// The viewer stands at least so far before the face, millimetres; what is nearer to the face belongs to it.
const ROOM: f64 = 300.0;

/// Where more than this is seen past a face and its overhangs, millimetres built, an overall chain says how much.
const FARTHER: f64 = 500.0;

/// Draws face `number` as finished; `None` for a wall, in front of which nobody stands.
pub fn finished(
    plan: &Plan,
    scene: &Scene,
    frame: &Frame,
    number: usize,
    title: &str,
) -> Option<(Page, Scale)> {
    let face = plan.faces.get(number).filter(|f| !f.wall)?;
    let view = View::of_face(face);
    let cuts = if is_hidden_by_a_leg(face, scene, &view) {
        cut::through(plan, number)
    } else {
        Vec::new()
    };
    let screens: Vec<_> = cuts.iter().map(cut::screen).collect();
    // The counter is one piece: it is drawn whole.
    let before = |part: &Part| scene.bounds(&view, part).is_some_and(|b| b.low.z > ROOM);
    let sight = scene.look(&view, &screens, |part| {
        let cut_away = !cuts.is_empty() && part.group != Group::Counter && before(part);
        is_shown(part) && !cut_away
    });
    let built = Bounds2 {
        low: Point2::new(0.0, 0.0),
        high: Point2::new(face.length, plan.levels.counter_top),
    };
    let seen = sight.bounds()?.union(built);
    let hatched =
        "Hatched: the run that joins this one to the leg at the viewer's back, cut between them.";
    let notes: Vec<_> = cuts
        .first()
        .map(|_| hatched.to_owned())
        .into_iter()
        .collect();
    let fit = Fit::new(
        plan.design.project.units,
        &seen,
        &frame.room(&notes),
        MARGINS,
    );
    let mut page = frame.page(title, &fit.scale, &notes);
    draw_parts(&mut page, scene, &sight, &fit, number);
    for section in &cuts {
        cut::hatch(&mut page, &fit, section);
    }
    heights::draw_ground(&mut page, &fit, &seen);
    let area = fit.area(&seen);
    draw_chains(&mut page, plan, number, &fit, &seen);
    heights::draw_heights(
        &mut page,
        plan,
        face,
        &fit,
        area.low.x,
        plan.levels.counter_top,
    );
    heights::draw(&mut page, plan, &fit, area.high.x);
    name_openings(&mut page, face, &fit);
    Some((page, fit.scale))
}

/// Everything but forms and the steel behind the boards.
fn is_shown(part: &Part) -> bool {
    match part.group {
        Group::Forms => false,
        Group::Framing => part.kind == PartKind::Sleeper,
        Group::Boards | Group::Coats | Group::Counter | Group::Appliances => true,
    }
}

/// True where another leg stands right before the face, as in a U: the viewer stands between the two, and has that leg
/// at the back.
fn is_hidden_by_a_leg(face: &Face, scene: &Scene, view: &View) -> bool {
    let hides = |b: Bounds3| {
        let beside = b.high.x < ROOM / 2.0 || b.low.x > face.length - ROOM / 2.0;
        b.low.z > ROOM && !beside
    };
    let cladding = scene.parts().iter().filter(|p| p.group == Group::Coats);
    let mut bounds = cladding.filter_map(|part| scene.bounds(view, part));
    bounds.any(hides)
}

fn draw_parts(page: &mut Page, scene: &Scene, sight: &Sight, fit: &Fit, face: usize) {
    let weight = |part: Option<&Part>| match part {
        None => 3,
        Some(part) if part.kind == PartKind::Tile => 0,
        Some(part) if part.kind == PartKind::Slab || part.face == Some(face) => 2,
        Some(_) => 1,
    };
    let strokes: Vec<_> = sight
        .lines
        .iter()
        .map(|line| Stroke {
            from: line.from,
            to: line.to,
            weight: weight(scene.parts().get(line.of)),
        })
        .collect();
    let pens = [
        (Layer::Detail, Pen::Fine),
        (Layer::Detail, Pen::Thin),
        (Layer::Outline, Pen::Medium),
        (Layer::Outline, Pen::Thick),
    ];
    fit.draw(page, &strokes, &pens);
}

/// Openings and overall of the finished face below, cutouts and overall of the counter above.
fn draw_chains(page: &mut Page, plan: &Plan, number: usize, fit: &Fit, seen: &Bounds2) -> usize {
    let area = fit.area(seen);
    let face = &plan.faces[number];
    let notation = plan.design.project.units;
    let chain = |name: &str, built: &[f64]| Tier::new(notation, name, built, |s| fit.x(s));
    let Some(ends) = finished_ends(plan, number) else {
        return 0;
    };
    let edges = face.openings.iter().flat_map(|o| [o.s0, o.s1]);
    let openings: Vec<f64> = ends.into_iter().chain(edges).collect();
    let below: Vec<_> = [
        chain("openings", &openings).filter(|t| t.stations.len() > 2),
        chain("finished face", &ends),
        chain("overall", &[seen.low.x, seen.high.x])
            .filter(|_| seen.width() > ends[1] - ends[0] + FARTHER),
    ]
    .into_iter()
    .flatten()
    .collect();
    let counter = counter_ends(plan, face, number);
    let cutouts = cutouts(plan, face);
    let above: Vec<_> = counter
        .map(|ends| {
            let all: Vec<f64> = ends.into_iter().chain(cutouts).collect();
            let cut = chain("cutouts", &all).filter(|t| t.stations.len() > 2);
            [cut, chain("counter", &ends)]
        })
        .into_iter()
        .flatten()
        .flatten()
        .collect();
    let stack = |page: &mut Page, side, edge, tiers: &[Tier]| {
        draw_stack(page, Axis { side, edge }, tiers).1
    };
    stack(page, Side::Below, area.low.y, &below) + stack(page, Side::Above, area.high.y, &above)
}

/// From corner to corner of the finished face.
fn finished_ends(plan: &Plan, number: usize) -> Option<[f64; 2]> {
    let face = plan.faces.get(number)?;
    let corners = finished_corners(plan);
    let s = |corner: usize| Some((corners.get(corner)? - face.start).dot(&face.along));
    Some([s(number)?, s((number + 1) % corners.len().max(1))?])
}

/// From where to where the counter's edge over this face runs.
fn counter_ends(plan: &Plan, face: &Face, number: usize) -> Option<[f64; 2]> {
    let s = |p: Point2| (p - face.start).dot(&face.along);
    let sides = plan.counter.sides.iter().filter(|side| side.face == number);
    let (low, high) = sides
        .flat_map(|side| [s(side.start), s(side.end)])
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), s| {
            (low.min(s), high.max(s))
        });
    (low < high).then_some([low, high])
}

/// The edges of the cutouts behind a working face.
fn cutouts(plan: &Plan, face: &Face) -> Vec<f64> {
    if face.side != crate::design::Side::Working {
        return Vec::new();
    }
    let run = &plan.runs[face.run];
    let s = |u: f64| (run.point(u, 0.0) - face.start).dot(&face.along);
    let cutouts = plan.cutouts.iter().filter(|c| c.run == face.run);
    cutouts.flat_map(|c| [s(c.u0), s(c.u1)]).collect()
}

fn name_openings(page: &mut Page, face: &Face, fit: &Fit) {
    for opening in &face.openings {
        let area = fit.area(&Bounds2 {
            low: Point2::new(opening.s0, opening.z0),
            high: Point2::new(opening.s1, opening.z1),
        });
        let mark = Mark {
            text: opening.name.clone(),
            area,
        };
        place_inside(page, &mark, LETTERS);
    }
}
