//! The framing of a face: its panels as one sees them from outside before the boards go on.

use super::heights;
use crate::drawing::border::Frame;
use crate::drawing::dimension::{Axis, Side, Tier, draw_stack};
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::hidden::{Stroke, View};
use crate::drawing::marks::{Mark, place_inside, place_marks};
use crate::drawing::page::Page;
use crate::drawing::scene::{Scene, Sight};
use crate::drawing::{Layer, Pen, Scale};
use crate::geometry::{Bounds2, Point2};
use crate::parts::{Group, Part, PartKind};
use crate::plan::{Face, FaceOpening, Plan};
use crate::units::Length;

/// Room round the view for its chains, millimetres.
const MARGINS: Margins = Margins {
    left: 32.0,
    right: heights::LEVELS,
    below: 48.0,
    above: 8.0,
};

/// Draws the framing of face `number`; the sheet's heading and foot are the frame's.
pub fn framing(
    plan: &Plan,
    scene: &Scene,
    frame: &Frame,
    number: usize,
    title: &str,
) -> Option<(Page, Scale)> {
    let face = plan.faces.get(number)?;
    let view = View::of_face(face);
    let sight = scene.look(&view, |part| is_shown(plan, scene, &view, number, part));
    let built = Bounds2 {
        low: Point2::new(0.0, 0.0),
        high: Point2::new(face.length, plan.levels.frame_top),
    };
    let seen = sight.bounds()?.union(built);
    let fit = Fit::new(plan.design.project.units, &seen, &frame.room(), MARGINS);
    let mut page = frame.page(title, &fit.scale);
    draw_steel(&mut page, scene, &sight, &fit, number);
    heights::draw_ground(&mut page, &fit, &seen);
    let area = fit.area(&seen);
    draw_chains(&mut page, plan, number, &fit, &area);
    heights::draw_heights(
        &mut page,
        plan,
        face,
        &fit,
        area.low.x,
        plan.levels.frame_top,
    );
    heights::draw(&mut page, plan, &fit, area.high.x);
    name_openings(&mut page, plan, face, &fit);
    mark_members(&mut page, scene, &sight, &fit, number);
    Some((page, fit.scale))
}

/// Steel and sleepers of the face itself, and the ends of what meets it.
fn is_shown(plan: &Plan, scene: &Scene, view: &View, face: usize, part: &Part) -> bool {
    if part.group != Group::Framing {
        return false;
    }
    if part.face == Some(face) {
        return true;
    }
    let length = plan.faces[face].length;
    scene.bounds(view, part).is_some_and(|b| {
        let near = b.high.z > -plan.sizes.panel + 1.0 && b.low.z < 1.0;
        near && b.low.x > -1.0 && b.high.x < length + 1.0
    })
}

fn draw_steel(page: &mut Page, scene: &Scene, sight: &Sight, fit: &Fit, face: usize) {
    let strokes: Vec<_> = sight
        .lines
        .iter()
        .map(|line| Stroke {
            from: line.from,
            to: line.to,
            weight: u8::from(scene.parts()[line.of].face == Some(face)),
        })
        .collect();
    let pens = [(Layer::Detail, Pen::Thin), (Layer::Outline, Pen::Medium)];
    fit.draw(page, &strokes, &pens);
}

/// Three tiers below: centre lines of uprights, edges of openings, overall.
fn draw_chains(page: &mut Page, plan: &Plan, number: usize, fit: &Fit, area: &Bounds2) -> usize {
    let face = &plan.faces[number];
    let notation = plan.design.project.units;
    let ends = [0.0, face.length];
    let panels = plan.panels.iter().filter(|p| p.face == Some(number));
    let middles = panels.flat_map(|panel| {
        let middle = |p0: f64, p1: f64| {
            let (s0, s1) = panel.on_face(face, p0, p1);
            f64::midpoint(s0, s1)
        };
        panel.uprights.iter().map(move |u| middle(u.p0, u.p1))
    });
    let grid: Vec<f64> = ends.into_iter().chain(middles).collect();
    let edges = face.openings.iter().flat_map(|o| [o.s0, o.s1]);
    let openings: Vec<f64> = ends.into_iter().chain(edges).collect();
    let tiers: Vec<_> = [
        Tier::new(notation, "centres of uprights", &grid, |s| fit.x(s)),
        Tier::new(notation, "openings", &openings, |s| fit.x(s)).filter(|t| t.stations.len() > 2),
        Tier::new(notation, "frame overall", &ends, |s| fit.x(s)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let axis = Axis {
        side: Side::Below,
        edge: area.low.y,
    };
    draw_stack(page, axis, &tiers).1
}

/// The name and clear size of every framed opening, inside it.
fn name_openings(page: &mut Page, plan: &Plan, face: &Face, fit: &Fit) {
    let notation = plan.design.project.units;
    let spell = |mm: f64| notation.spell(Length::millimetres(mm));
    for opening in &face.openings {
        let FaceOpening { s0, s1, z0, z1, .. } = *opening;
        let area = fit.area(&Bounds2 {
            low: Point2::new(s0, z0),
            high: Point2::new(s1, z1),
        });
        let middle = area.centre().y;
        let (mut upper, mut lower) = (area, area);
        upper.low.y = middle;
        lower.high.y = middle;
        let size = format!("{} × {} clear", spell(s1 - s0), spell(z1 - z0));
        let texts = [(opening.name.clone(), upper), (size, lower)];
        for (text, area) in texts {
            place_inside(page, &Mark { text, area }, crate::drawing::page::LETTERS);
        }
    }
}

/// Marks on the members of the face, tracks first, then from left to right.
fn mark_members(page: &mut Page, scene: &Scene, sight: &Sight, fit: &Fit, face: usize) -> usize {
    let mut marks: Vec<(PartKind, Mark)> = sight
        .seen_parts()
        .into_iter()
        .filter(|(number, _)| scene.parts()[*number].face == Some(face))
        .map(|(number, seen)| {
            let part = &scene.parts()[number];
            let mark = Mark {
                text: part.mark.clone(),
                area: fit.area(&seen),
            };
            (part.kind, mark)
        })
        .collect();
    marks.sort_by(|a, b| {
        (a.0, a.1.area.low.x, a.1.area.low.y)
            .partial_cmp(&(b.0, b.1.area.low.x, b.1.area.low.y))
            .unwrap_or(std::cmp::Ordering::Equal)
    });
    let marks: Vec<_> = marks.into_iter().map(|(_, mark)| mark).collect();
    place_marks(page, &marks)
}
