//! A face as finished: what one sees standing in front of it.

use super::stretch::Stretch;
use super::window::Window;
use super::{cut, heights, reach};
use crate::drawing::dimension::{Axis, Side, Tier, draw_stack};
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::hidden::{Stroke, View};
use crate::drawing::marks::{Mark, place_inside};
use crate::drawing::outline::finished_corners;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::scene::{Scene, Sight};
use crate::drawing::set::{Drawn, Set};
use crate::drawing::{Layer, Pen};
use crate::geometry::{Bounds2, Bounds3, Point2};
use crate::parts::{Group, Part, PartKind};
use crate::plan::{BodyOf, Face, Plan};

/// Room round the view for its chains, millimetres.
pub(super) const MARGINS: Margins = Margins {
    left: 32.0,
    right: heights::LEVELS,
    below: 44.0,
    above: 34.0,
};

/// The viewer stands at least so far before the face, millimetres; what is nearer to the face belongs to it.
const ROOM: f64 = 300.0;

/// Where more than this is seen past a face and its overhangs, millimetres built, an overall chain says how much.
const FARTHER: f64 = 500.0;

/// Draws a stretch of face `number` as finished; `None` for a wall, in front of which nobody stands.
pub fn finished(set: &Set, number: usize, sheet: &Stretch, title: &str) -> Option<Drawn> {
    let (plan, scene, frame, window) = (set.plan, set.scene, set.frame, &sheet.window);
    let face = plan.faces.get(number).filter(|f| !f.wall)?;
    let view = View::of_face(face);
    let cuts = if is_hidden_by_a_leg(face, scene, &view) {
        cut::through(plan, number)
    } else {
        Vec::new()
    };
    let sight = window.sight(look(scene, &view, (face, window), &cuts));
    let built = Bounds2 {
        low: Point2::new(0.0, 0.0),
        high: Point2::new(face.length, plan.levels.counter_top),
    };
    let seen = sight.bounds()?.union(window.clipped(&built));
    let notation = plan.design.project.units;
    let plain = window.fit(notation, &seen, &frame.room(&[]), MARGINS);
    let dashed = plain.shows_hidden(&strokes(scene, &sight, number), &PENS);
    let broken = sheet.is_broken_off(&seen);
    let notes = notes(dashed, &cuts, broken);
    let fit = window.fit(notation, &seen, &frame.room(&notes), MARGINS);
    let mut page = frame.page(title, &fit.scale, &notes);
    fit.draw(&mut page, &strokes(scene, &sight, number), &PENS);
    for section in &cuts {
        cut::hatch(&mut page, &fit, &window.clipped(section));
    }
    heights::draw_ground(&mut page, &fit, &seen);
    let area = fit.area(&seen);
    let top = draw_chains(&mut page, set, number, window, &fit, &seen);
    sheet.draw_match_lines(&mut page, &fit, &area, area.high.y + top);
    sheet.draw_breaks(&mut page, &fit, &seen);
    let face = window.face(face);
    let top = plan.levels.counter_top;
    heights::draw_heights(&mut page, plan, &face, &fit, area.low.x, top);
    heights::draw(&mut page, plan, &fit, area.high.x);
    name_openings(&mut page, &face, &fit, window);
    if dashed && face.side == crate::design::Side::Working {
        name_bodies(&mut page, plan, &face, &fit, window);
    }
    Some((page, fit.scale))
}

/// What is seen of a face from before it, and, hidden behind it, the bodies of what hangs in the counter. The counter is
/// one piece: it is drawn whole.
fn look(scene: &Scene, view: &View, (face, window): (&Face, &Window), cuts: &[Bounds2]) -> Sight {
    let screens: Vec<_> = cuts.iter().map(cut::screen).collect();
    let is_there = |part: &Part| {
        let cut_away = !cuts.is_empty() && part.group != Group::Counter;
        let bounds = scene.bounds(view, part);
        bounds.is_some_and(|b| window.meets(&b) && !(cut_away && b.low.z > ROOM))
    };
    let shown = |part: &Part| is_shown(part) && is_there(part);
    scene.look_through(view, &screens, shown, |part| is_behind(part, face))
}

/// True for the body of an appliance that hangs right behind a face, which the cook works at.
fn is_behind(part: &Part, face: &Face) -> bool {
    part.kind == PartKind::Body
        && part.face.is_none()
        && part.run == Some(face.run)
        && face.side == crate::design::Side::Working
}

fn notes(hidden: bool, cuts: &[Bounds2], broken: bool) -> Vec<String> {
    let hatched =
        "Hatched: the run that joins this one to the leg at the viewer's back, cut between them.";
    let dashed = "Dashed: bodies of appliances behind the face.";
    let zigzag = "Broken off at the zigzag: what goes on there is on the sheets of its own faces.";
    let notes = [
        (!cuts.is_empty()).then_some(hatched),
        hidden.then_some(dashed),
        broken.then_some(zigzag),
    ];
    let notes: Vec<&str> = notes.into_iter().flatten().collect();
    if notes.is_empty() {
        return Vec::new();
    }
    vec![notes.join(" ")]
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

/// Layer and pen of each weight.
const PENS: [(Layer, Pen); 5] = [
    (Layer::Detail, Pen::Fine),
    (Layer::Detail, Pen::Thin),
    (Layer::Outline, Pen::Medium),
    (Layer::Outline, Pen::Thick),
    (Layer::Hidden, Pen::Thin),
];

fn strokes(scene: &Scene, sight: &Sight, face: usize) -> Vec<Stroke> {
    let weight = |part: Option<&Part>| match part {
        None => 3,
        Some(part) if part.kind == PartKind::Tile => 0,
        Some(part) if part.kind == PartKind::Slab || part.face == Some(face) => 2,
        Some(_) => 1,
    };
    let lines = sight.lines.iter();
    let strokes = lines.map(|line| Stroke {
        from: line.from,
        to: line.to,
        weight: if line.seen {
            weight(scene.parts().get(line.of))
        } else {
            4
        },
    });
    strokes.collect()
}

/// Openings and overall of the finished face below, cutouts and overall of the counter above; says how far those above
/// reach up on the sheet.
fn draw_chains(
    page: &mut Page,
    set: &Set,
    number: usize,
    window: &Window,
    fit: &Fit,
    seen: &Bounds2,
) -> f64 {
    let plan = set.plan;
    let area = fit.area(seen);
    let face = &plan.faces[number];
    let notation = plan.design.project.units;
    let chain = |name: &str, built: &[f64]| window.chain(notation, name, built, fit);
    let Some(ends) = finished_ends(plan, number) else {
        return 0.0;
    };
    let edges = face.openings.iter().flat_map(|o| [o.s0, o.s1]);
    let openings: Vec<f64> = ends.into_iter().chain(edges).collect();
    let reach = reach::of_finished(plan, set.frame, number);
    let whole = reach.filter(|r| r.goes_on == [false; 2]);
    let all = whole.map_or(ends, |r| [seen.low.x.min(r.low), seen.high.x.max(r.high)]);
    let counter = reach::counter_ends(plan, face, number);
    // What the counter's own chain says above need not be said again below.
    let said = counter.filter(|c| (c[0] - all[0]).abs() < 1.0 && (c[1] - all[1]).abs() < 1.0);
    let widest = said.map_or(ends[1] - ends[0], |c| c[1] - c[0]);
    let below = [
        chain("openings", &openings).filter(|_| openings.len() > 2),
        chain("finished face", &ends),
        chain("overall", &all).filter(|_| all[1] - all[0] > widest + FARTHER),
    ];
    let above = counter.map(|ends| {
        let inner = cutouts(plan, face);
        let stations: Vec<f64> = ends.into_iter().chain(inner).collect();
        let cut = chain("cutouts", &stations).filter(|_| stations.len() > 2);
        [cut, chain("counter", &ends)]
    });
    let mut stack = |side, edge, tiers: Vec<Tier>| draw_stack(page, Axis { side, edge }, &tiers).0;
    stack(
        Side::Below,
        area.low.y,
        below.into_iter().flatten().collect(),
    );
    let above = above.into_iter().flatten().flatten().collect();
    stack(Side::Above, area.high.y, above)
}

/// From corner to corner of the finished face.
fn finished_ends(plan: &Plan, number: usize) -> Option<[f64; 2]> {
    let face = plan.faces.get(number)?;
    let corners = finished_corners(plan);
    let s = |corner: usize| Some((corners.get(corner)? - face.start).dot(&face.along));
    Some([s(number)?, s((number + 1) % corners.len().max(1))?])
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

fn name_openings(page: &mut Page, face: &Face, fit: &Fit, window: &Window) {
    for opening in &face.openings {
        let area = fit.area(&window.clipped(&Bounds2 {
            low: Point2::new(opening.s0, opening.z0),
            high: Point2::new(opening.s1, opening.z1),
        }));
        let mark = Mark {
            text: opening.name.clone(),
            area,
        };
        place_inside(page, &mark, LETTERS);
    }
}

/// Names the bodies that hang behind the face, on what of them is below the counter and seen dashed.
fn name_bodies(page: &mut Page, plan: &Plan, face: &Face, fit: &Fit, window: &Window) {
    let under = plan.levels.frame_top;
    let closed = |number: usize| {
        let mut own = plan.counter.cutouts.iter();
        own.any(|c| c.appliance == number && c.run == face.run && !c.open)
    };
    let hung = plan.bodies.iter().filter_map(|body| match body.of {
        BodyOf::Appliance(number) if closed(number) => Some((body, number)),
        _ => None,
    });
    for (body, number) in hung {
        let bounds = body.bounds(&plan.runs);
        let ends = [bounds.low, bounds.high].map(|p| (p.xy() - face.start).dot(&face.along));
        let seen = window.clipped(&Bounds2 {
            low: Point2::new(ends[0].min(ends[1]), bounds.low.z),
            high: Point2::new(ends[0].max(ends[1]), bounds.high.z.min(under)),
        });
        let (size, appliance) = (seen.high - seen.low, plan.design.appliances.get(number));
        if let Some(appliance) = appliance.filter(|_| size.min() > 1.0) {
            let mark = Mark {
                text: appliance.name.clone(),
                area: fit.area(&seen),
            };
            place_inside(page, &mark, LETTERS);
        }
    }
}
