//! A detail drawn in its place on a sheet.

use super::content::{Chain, Content, Extra, Note, Stuff};
use super::{breaks, feet, paint};
use crate::drawing::dimension::{Axis, Side, Tier, draw_stack};
use crate::drawing::figure::{LeaderNote, NotesColumn, place_notes};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::scene::Scene;
use crate::drawing::section::CutView;
use crate::drawing::{Dash, Layer};
use crate::geometry::{Outline, Point2, Vector2, Vertex};
use crate::parts::{Part, PartKind};
use crate::units::Notation;

/// Draws a detail; says how many texts found no place.
pub(super) fn draw(
    page: &mut Page,
    scene: &Scene,
    content: &Content,
    (notation, fit, column): (Notation, &Fit, &NotesColumn),
) -> usize {
    let cut = cut(scene, content);
    cut.draw(page, fit);
    for extra in &content.extras {
        paint::extra(page, fit, extra);
    }
    breaks::draw(page, fit, &content.window.area, &cut);
    let missing = chains(page, notation, fit, content);
    missing + notes(page, fit, content, (&cut, scene, column))
}

/// What the detail's plane goes through, its extras among it.
pub(super) fn cut(scene: &Scene, content: &Content) -> CutView {
    let mut cut = CutView::new(scene, &content.view, &content.window.reach(), content.shows);
    for extra in &content.extras {
        match extra {
            Extra::Cut(Stuff::Of(material), outline) => cut.add(*material, outline.clone()),
            Extra::Hollow(kind, outline) => hollow(&mut cut, scene.parts(), *kind, outline),
            _ => {}
        }
    }
    cut
}

/// Takes a hollow out of the parts of a kind.
fn hollow(cut: &mut CutView, parts: &[Part], kind: PartKind, outline: &Outline) {
    let hole = std::slice::from_ref(outline);
    for piece in &mut cut.pieces {
        let part = piece.part.and_then(|number| parts.get(number));
        if part.is_some_and(|p| p.kind == kind) {
            piece.regions = piece.regions.iter().flat_map(|r| r.minus(hole)).collect();
        }
    }
}

/// All chains, side by side; says how many texts found no place.
fn chains(page: &mut Page, notation: Notation, fit: &Fit, content: &Content) -> usize {
    let area = fit.area(&content.window.area);
    let sides = [
        (Side::Below, area.low.y),
        (Side::Above, area.high.y),
        (Side::Left, area.low.x),
    ];
    let tier = |chain: &Chain| {
        let level = matches!(chain.side, Side::Below | Side::Above);
        let sheet = |v: f64| if level { fit.x(v) } else { fit.y(v) };
        Tier::new(notation, chain.name, &chain.stations, sheet)
    };
    let stacks = sides.map(|(side, edge)| {
        let own = content.chains.iter().filter(|c| c.side == side);
        let tiers: Vec<Tier> = own.filter_map(tier).collect();
        (Axis { side, edge }, tiers)
    });
    stacks
        .iter()
        .map(|(axis, tiers)| draw_stack(page, *axis, tiers).1)
        .sum()
}

/// The notes in their column.
fn notes(
    page: &mut Page,
    fit: &Fit,
    content: &Content,
    (cut, scene, column): (&CutView, &Scene, &NotesColumn),
) -> usize {
    let led = content.notes.iter().filter_map(|Note { text, target }| {
        let (points, part) = feet::of(target, cut, scene.parts())?;
        let points = feet::beside_wires(points, &content.extras);
        let section = part.map_or("", |p| p.section.as_str());
        Some(LeaderNote {
            text: text.replace("{part}", section),
            feet: points.iter().map(|p| fit.point(*p)).collect(),
        })
    });
    let led: Vec<LeaderNote> = led.collect();
    place_notes(page, column, &led)
}

/// A closed or open line of corners on the sheet.
pub(super) fn path(points: &[Point2]) -> Vec<Vertex> {
    points.iter().map(|p| Vertex::sharp(p.x, p.y)).collect()
}

/// A filled disc.
pub(super) fn disc(page: &mut Page, at: Point2, radius: f64) {
    let side = Vector2::new(radius, 0.0);
    let points = [at + side, at - side].map(|p| Vertex::bent(p.x, p.y, 1.0));
    page.path(
        Layer::Section,
        None,
        Dash::Solid,
        points.to_vec(),
        true,
        Some(0.0),
    );
}
