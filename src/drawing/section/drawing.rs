//! A section drawn in its place on a sheet.

use super::subject::{DEPTH, Subject};
use super::{CutView, Reach};
use super::{far_notes, words};
use crate::drawing::detail::{draw_breaks, feet_of};
use crate::drawing::dimension::{Axis, LevelMark, Side, Tier, draw_levels_left, draw_stack};
use crate::drawing::figure::{LeaderNote, NotesColumn, place_notes};
use crate::drawing::fit::Fit;
use crate::drawing::marks::{Mark, place_led, place_only_inside};
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::scene::Scene;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2};
use crate::parts::{Group, Part};
use crate::plan::{Body, BodyOf};
use crate::units::Length;

/// Draws a section; gives what the plane goes through, and how many texts found no place.
pub(super) fn draw(
    page: &mut Page,
    scene: &Scene,
    subject: &Subject,
    (fit, column): (&Fit, &NotesColumn),
) -> (CutView, usize) {
    let cut = cut(scene, subject);
    cut.draw(page, fit);
    draw_breaks(page, fit, &subject.window(), &cut);
    draw_ground_line(page, fit, subject);
    draw_mesh(page, fit, subject);
    let mut missing = chains(page, fit, subject);
    let names = subject.bodies().into_iter();
    let names = names.map(|(name, body)| name_of(fit, name, body));
    let unnamed: Vec<Mark> = names
        .filter(|mark| !place_only_inside(page, mark, LETTERS))
        .collect();
    let notes = far_notes::place(page, fit, subject, notes(fit, subject, &cut, scene));
    missing += clear_heights(page, fit, subject);
    missing += place_notes(page, column, &notes);
    // A name that finds no room inside is led out: it must know where chains and notes are.
    missing += place_led(page, &unnamed);
    (cut, missing)
}

/// What the plane goes through.
pub(super) fn cut(scene: &Scene, subject: &Subject) -> CutView {
    let reach = Reach {
        depth: DEPTH,
        window: Some(subject.window()),
    };
    let view = subject.view();
    let own = |p: &Part| p.run.is_none_or(|run| run == subject.cut.run);
    let cut_too = |p: &Part| scene.bounds(&view, p).is_some_and(|b| b.high.z > 0.0);
    // Of other runs only what the plane itself goes through: round a corner, their frames say nothing here.
    let shows = |p: &Part| p.group != Group::Forms && (own(p) || cut_too(p));
    let mut cut = CutView::new(scene, &view, &reach, shows);
    for (material, outline) in subject.ground() {
        cut.add(material, outline);
    }
    cut
}

/// The ground as a heavy line: what stands on it is measured from there.
fn draw_ground_line(page: &mut Page, fit: &Fit, subject: &Subject) {
    let area = subject.window();
    let [from, to] = [area.low.x, area.high.x].map(|x| fit.point(Point2::new(x, 0.0)));
    page.line(Layer::Section, Pen::Heavy, Dash::Solid, from, to);
}

fn draw_mesh(page: &mut Page, fit: &Fit, subject: &Subject) {
    let Some((z, spans)) = subject.mesh() else {
        return;
    };
    for (low, high) in spans {
        let [from, to] = [low, high].map(|x| fit.point(Point2::new(x, z)));
        page.line(Layer::Section, Pen::Medium, Dash::Dashed, from, to);
    }
}

fn area_of(fit: &Fit, body: &Body, top: f64) -> Bounds2 {
    fit.area(&Bounds2 {
        low: Point2::new(-body.v.1, body.z.0),
        high: Point2::new(-body.v.0, body.z.1.min(top)),
    })
}

fn name_of(fit: &Fit, name: &str, body: &Body) -> Mark {
    Mark {
        text: name.to_owned(),
        area: area_of(fit, body, f64::INFINITY),
    }
}

/// Depths below, the cutout above, heights and levels on the left; says how many texts found no place.
fn chains(page: &mut Page, fit: &Fit, subject: &Subject) -> usize {
    let notation = subject.plan.design.project.units;
    let area = fit.area(&subject.window());
    let [(near, _), (far, _)] = subject.counter();
    let [finished_near, finished_far] = subject.finished();
    let across = |name: &str, stations: &[f64]| {
        let x: Vec<f64> = stations.iter().map(|v| -v).collect();
        Tier::new(notation, name, &x, |x| fit.x(x))
    };
    let faces = [
        near,
        finished_near,
        0.0,
        subject.run.depth,
        finished_far,
        far,
    ];
    let below = [across("", &faces), across("", &[near, far])];
    let above = subject.cutout().and_then(|(hole, _)| {
        let mut stations = vec![near, far, hole.v1];
        stations.extend((!hole.open).then_some(hole.v0));
        across("", &stations)
    });
    let levels = &subject.plan.levels;
    let heights = [
        0.0,
        levels.frame_bottom,
        levels.frame_top,
        levels.slab_bottom,
        levels.counter_top,
    ];
    let left = Tier::new(notation, "", &heights, |z| fit.y(z));
    let stacks = [
        (
            Side::Below,
            area.low.y,
            below.into_iter().flatten().collect::<Vec<_>>(),
        ),
        (Side::Above, area.high.y, above.into_iter().collect()),
        (Side::Left, area.low.x, left.into_iter().collect()),
    ];
    let mut missing = 0;
    let mut reach = 0.0;
    for (side, edge, tiers) in stacks {
        let (out, lost) = draw_stack(page, Axis { side, edge }, &tiers);
        missing += lost;
        reach = out;
    }
    let marks = self::levels(subject).map(|(z, text)| LevelMark { y: fit.y(z), text });
    draw_levels_left(page, area.low.x - reach, &marks);
    missing
}

/// The heights that are marked, with what is lettered there.
pub(super) fn levels(subject: &Subject) -> [(f64, String); 3] {
    let notation = subject.plan.design.project.units;
    let levels = &subject.plan.levels;
    let named = [
        ("datum", 0.0),
        ("frame", levels.frame_top),
        ("counter", levels.counter_top),
    ];
    named.map(|(name, z)| {
        let sign = if z > 0.0 { "+" } else { "±" };
        let height = notation.spell(Length::millimetres(z));
        (z, format!("{sign}{height} {name}"))
    })
}

/// From the ground to the lowest point of each appliance's body; says how many found no place.
fn clear_heights(page: &mut Page, fit: &Fit, subject: &Subject) -> usize {
    let bodies = subject.bodies().into_iter().map(|(_, body)| body);
    let hung = bodies.filter(|b| matches!(b.of, BodyOf::Appliance(_)));
    hung.filter(|body| !clear_height(page, fit, subject, body))
        .count()
}

/// How far inside a view a chain's line is from the edge it is laid out from.
const INSIDE: f64 = 10.0;

/// A chain without extension lines: from the ground to the underside of a body, where there is room for it.
fn clear_height(page: &mut Page, fit: &Fit, subject: &Subject, body: &Body) -> bool {
    let notation = subject.plan.design.project.units;
    let Some(mut tier) = Tier::new(notation, "", &[0.0, body.z.0], |z| fit.y(z)) else {
        return true;
    };
    tier.bare = tier.stations.clone();
    let area = area_of(fit, body, f64::INFINITY);
    let (middle, half) = (area.centre().x, (area.width() / 2.0 - 1.0).max(0.0));
    let steps = (0..=(half / 0.5) as u32).map(|i| 0.5 * f64::from(i));
    let mut tries = steps.flat_map(|d| [middle + d, middle - d]);
    tries.any(|x| {
        let axis = Axis {
            side: Side::Left,
            edge: x + INSIDE,
        };
        page.attempt_clear(|page| draw_stack(page, axis, std::slice::from_ref(&tier)).1 == 0)
    })
}

/// The notes on what is met, with the places that they may lead to.
fn notes(fit: &Fit, subject: &Subject, cut: &CutView, scene: &Scene) -> Vec<LeaderNote> {
    let led = words::notes(subject).into_iter().filter_map(|note| {
        let (mut points, _) = feet_of(&note.target, cut, scene.parts())?;
        // The column stands on the right.
        points.sort_by(|a, b| b.x.total_cmp(&a.x));
        Some(LeaderNote {
            text: note.text,
            feet: points.iter().map(|p| fit.point(*p)).collect(),
        })
    });
    led.collect()
}
