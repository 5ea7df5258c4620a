//! The layers of the island taken apart, in isometric projection.

use super::layers::{LayerOf, Moves};
use super::names::{self, Named};
use super::{corner, lines};
use crate::drawing::fit::Fit;
use crate::drawing::hidden::{Line, Shape, View};
use crate::drawing::outline::frame_corners;
use crate::drawing::page::Page;
use crate::drawing::set::{Drawn, Set};
use crate::drawing::{Dash, Layer, Pen, Scale};
use crate::geometry::{Point3, Vector3};
use crate::parts::PartKind;
use crate::plan::Plan;

/// Width of the columns of names, millimetres.
const NAMES: f64 = 52.0;
/// Above and below the view, millimetres.
const AIR: f64 = 3.0;

/// Draws the sheet; `None` where there is nothing to see.
pub(super) fn draw(set: &Set, title: &str) -> Option<Drawn> {
    let (plan, scene) = (set.plan, set.scene);
    let seen_from = corner::best(plan);
    let view = View::isometric(seen_from);
    let moves = Moves::new(plan, seen_from);
    let wires = Shape::wires(&ways(plan, &moves, &view));
    let place = |part: &_| moves.of_part(part);
    let sight = scene.look_at_moved(&view, std::slice::from_ref(&wires), place, |_| false);
    let bounds = sight.bounds()?;
    let notes = notes();
    let room = set.frame.room(&notes);
    let (columns, between) = names::columns(&room, NAMES);
    let fits = |built: f64, room: f64| room / built.max(1.0);
    let factor = fits(bounds.width(), between.width())
        .min(fits(bounds.height(), between.height() - 2.0 * AIR));
    let drawn = Scale {
        factor,
        ..Scale::none()
    };
    let fit = Fit::at(drawn, &bounds, &between);
    let mut page = set.frame.page(title, &Scale::none(), &notes);
    let depths = scene.depths(&view, place);
    let count = scene.parts().len();
    let (parts, ways): (Vec<Line>, Vec<Line>) = sight.lines.iter().partition(|l| l.of < count);
    let range = |of: usize| lines::range(scene.parts().get(of));
    let strokes = lines::weighed(&parts, &depths, &fit, range);
    fit.draw(&mut page, &strokes, &lines::PENS);
    draw_ways(&mut page, &fit, &ways);
    let named = named(set, &moves);
    names::letter(&mut page, &named, &view, &depths, &fit, &columns);
    Some((page, Scale::none()))
}

fn notes() -> Vec<String> {
    vec![
        "Isometric, not to scale. The numbers are the order of building; phantom lines show how the layers go together. Boards, coats and fronts of far sides, and of those before which another run stands, are left out."
            .to_owned(),
    ]
}

/// Lines in the view along which layers go together: at the frame's corners that stand free before the eye, from the
/// coats through the boards to the frame and up to the counter, and from each cutout up to its appliance.
fn ways(plan: &Plan, moves: &Moves, view: &View) -> Vec<[Point3; 2]> {
    let count = plan.faces.len();
    let corners = frame_corners(plan).into_iter().enumerate();
    let shown = corners.filter(|&(i, _)| moves.shows(i) || moves.shows((i + count - 1) % count));
    let top = plan.levels.frame_top;
    let outwards = shown.map(|(_, at)| {
        let at = Point3::new(at.x, at.y, top);
        [at + moves.of(LayerOf::Coats), at + moves.of(LayerOf::Slab)].map(|p| (at, p))
    });
    let outwards = outwards.flat_map(|ends| ends.map(|(from, to)| [from, to]));
    let cutouts = plan.counter.cutouts.iter().map(|cutout| {
        let at = Point3::new(cutout.centre.x, cutout.centre.y, plan.levels.counter_top);
        [
            at + moves.of(LayerOf::Slab),
            at + moves.of(LayerOf::Appliances),
        ]
    });
    outwards
        .chain(cutouts)
        .map(|way| way.map(|p| view.point(p)))
        .collect()
}

fn draw_ways(page: &mut Page, fit: &Fit, ways: &[Line]) {
    for way in ways {
        let (from, to) = (fit.point(way.from), fit.point(way.to));
        page.line(Layer::Symbol, Pen::Fine, Dash::Phantom, from, to);
    }
}

/// The names of the layers, numbered in building order, and where they are seen.
fn named(set: &Set, moves: &Moves) -> Vec<Named> {
    let parts = set.scene.parts();
    let tiled = parts.iter().any(|p| p.kind == PartKind::Tile);
    let on_plate = |z: f64, shift: Vector3| -> Vec<Point3> {
        let places = names::on_counter(set.plan, z).into_iter();
        places.map(|p| p + shift).collect()
    };
    let names = LayerOf::ALL.into_iter().filter_map(|layer| {
        let own = parts.iter().filter(|p| LayerOf::of(p) == Some(layer));
        let middles = own.filter_map(|part| {
            let shift: Vector3 = moves.of_part(part)?;
            let b = set.scene.bounds(&View::from_above(), part)?;
            Some(nalgebra::center(&b.low, &b.high) + shift)
        });
        let middles: Vec<Point3> = middles.collect();
        let places = match layer {
            LayerOf::Substrate => on_plate(set.plan.levels.frame_top, moves.of(layer)),
            LayerOf::Slab => on_plate(set.plan.levels.counter_top, moves.of(layer)),
            _ => middles.clone(),
        };
        (!middles.is_empty()).then_some((layer, places))
    });
    let numbered = names.zip(1..);
    let named = numbered.map(|((layer, places), number)| Named {
        text: format!("{number}  {}", layer.name(tiled)),
        places,
    });
    named.collect()
}
