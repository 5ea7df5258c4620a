//! What an axonometric names, and where a leader may point so that it meets what it names.

use super::corner;
use crate::drawing::figure::{Beside, LeaderNote, NotesColumn, notes_height, place_notes};
use crate::drawing::fit::Fit;
use crate::drawing::hidden::{Corner, Depths, View};
use crate::drawing::page::Page;
use crate::geometry::{Bounds2, Point2, Point3};
use crate::plan::{Band, Face, FaceOpening, Layers, Plan};

/// How far before or behind the point a surface may be that still belongs to what is pointed at, millimetres: flanges,
/// the thickness of a plate or a stud.
const ON_IT: f64 = 60.0;

/// A name and places on the thing in the world, the best first.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::drawing) struct Named {
    /// What is lettered.
    pub text: String,
    /// Where it may point.
    pub places: Vec<Point3>,
}

/// Fractions of a width or height at which a leader may meet a thing.
const ACROSS: [f64; 5] = [0.5, 0.3, 0.7, 0.12, 0.88];

/// Everything worth a name on the finished island: appliances, openings, the tile band, the counter and the finish.
pub(super) fn of_finished(plan: &Plan, seen_from: Corner) -> Vec<Named> {
    let faces = || plan.faces.iter().filter(|f| corner::shows(f, seen_from));
    let openings = faces().flat_map(|face| {
        let closed = face.openings.iter().filter(|o| o.kind.is_some());
        closed.map(|o| Named {
            text: o.name.clone(),
            places: on_opening(plan, face, o),
        })
    });
    let appliances = plan.counter.cutouts.iter().filter_map(|cutout| {
        let appliance = plan.design.appliances.get(cutout.appliance)?;
        let area = cutout.flange.bounds();
        Some(Named {
            text: appliance.name.clone(),
            places: on_level(&area, plan.levels.counter_top),
        })
    });
    let layers = Layers::of(&plan.design.trade);
    let band = Band::of(&plan.design, &plan.levels).filter(|b| !b.rows.is_empty());
    let foot = plan.levels.frame_bottom;
    let tiles = band.as_ref().and_then(|band| {
        let (low, high) = *band.rows.get(band.rows.len() / 2)?;
        let z = f64::midpoint(low, high);
        Some(Named {
            text: "tile band".to_owned(),
            places: faces()
                .flat_map(|f| along(f, band.layer.outer, z))
                .collect(),
        })
    });
    let upper = band.as_ref().map_or(plan.levels.frame_top, |b| b.foot);
    let finish = Named {
        text: "finish coat on base coat and cement board".to_owned(),
        places: faces()
            .flat_map(|f| along(f, layers.finish.outer, foot + (upper - foot) * 0.3))
            .collect(),
    };
    let counter = Named {
        text: "concrete counter".to_owned(),
        places: on_counter(plan, plan.levels.counter_top),
    };
    openings
        .chain(appliances)
        .chain([counter])
        .chain(tiles)
        .chain([finish])
        .collect()
}

/// Places over the runs at a height, clear of cutouts and flanges.
pub(super) fn on_counter(plan: &Plan, z: f64) -> Vec<Point3> {
    let places = plan.runs.iter().flat_map(|run| on_level(&run.bounds(), z));
    let covered = |p: &Point3| {
        let mut flanges = plan.counter.cutouts.iter().map(|c| c.flange.bounds());
        flanges.any(|b| {
            let (low, high) = (p.xy() - b.low, b.high - p.xy());
            low.min() > -10.0 && high.min() > -10.0
        })
    };
    places.filter(|p| !covered(p)).collect()
}

fn on_opening(plan: &Plan, face: &Face, opening: &FaceOpening) -> Vec<Point3> {
    let out = Layers::of(&plan.design.trade).finish.outer;
    let FaceOpening { s0, s1, z0, z1, .. } = *opening;
    let at = |f: f64, g: f64| {
        let p = face.point(s0 + (s1 - s0) * f, out);
        Point3::new(p.x, p.y, z0 + (z1 - z0) * g)
    };
    let rows = ACROSS.iter();
    rows.flat_map(|&g| ACROSS.map(|f| at(f, g))).collect()
}

fn on_level(area: &Bounds2, z: f64) -> Vec<Point3> {
    let at = |f: f64, g: f64| {
        let p = area.low + nalgebra::Vector2::new(area.width() * f, area.height() * g);
        Point3::new(p.x, p.y, z)
    };
    let rows = ACROSS.iter();
    rows.flat_map(|&g| ACROSS.map(|f| at(f, g))).collect()
}

/// Places along a face beside its openings.
fn along(face: &Face, out: f64, z: f64) -> Vec<Point3> {
    let shares = [0.06, 0.2, 0.35, 0.5, 0.65, 0.8, 0.94];
    let opened = |s: f64| {
        let mut openings = face.openings.iter();
        openings.any(|o| {
            (o.s0 - BESIDE..o.s1 + BESIDE).contains(&s)
                && (o.z0 - BESIDE..o.z1 + BESIDE).contains(&z)
        })
    };
    let free = shares.map(|share| face.length * share).into_iter();
    let at = |s: f64| {
        let p = face.point(s, out);
        Point3::new(p.x, p.y, z)
    };
    free.filter(|s| !opened(*s)).map(at).collect()
}

/// Flanges reach so far past openings at most, millimetres.
const BESIDE: f64 = 60.0;

/// Letters names in columns to the left and to the right of a view, each name on the side where it is; what is not
/// seen is not named.
pub(in crate::drawing) fn letter(
    page: &mut Page,
    names: &[Named],
    view: &View,
    depths: &Depths,
    fit: &Fit,
    columns: &[NotesColumn; 2],
) -> usize {
    let notes = names.iter().filter_map(|named| {
        let places = named.places.iter().map(|at| view.point(*at));
        let seen = places.filter(|p| is_seen(depths, p, p.xy()));
        let (clear, cramped): (Vec<Point3>, Vec<Point3>) =
            seen.partition(|p| is_seen_about(depths, p));
        let best = clear.iter().chain(&cramped);
        let feet: Vec<Point2> = best.map(|p| fit.point(p.xy())).take(6).collect();
        (!feet.is_empty()).then(|| LeaderNote {
            text: named.text.clone(),
            feet,
        })
    });
    let middle = f64::midpoint(columns[0].edge, columns[1].edge);
    let (left, right): (Vec<LeaderNote>, Vec<LeaderNote>) =
        notes.partition(|n| n.feet.first().is_some_and(|f| f.x < middle));
    let lettered = [left, right].into_iter().zip(columns);
    lettered
        .map(|(mut notes, column)| {
            let room = column.height.1 - column.height.0;
            while notes_height(notes.iter().map(|n| n.text.as_str()), column.width) > room {
                notes.pop();
            }
            place_notes(page, column, &notes)
        })
        .sum()
}

/// True where the thing at a point of the view is seen at another one near it.
fn is_seen(depths: &Depths, thing: &Point3, at: Point2) -> bool {
    depths
        .at(at)
        .is_some_and(|d| (d - thing.z).abs() < ON_IT + 2.0 * (at - thing.xy()).norm())
}

/// True where a thing is seen all round a point, not through a gap.
fn is_seen_about(depths: &Depths, thing: &Point3) -> bool {
    let ring = [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)];
    ring.iter().all(|&(x, y)| {
        let at = thing.xy() + nalgebra::Vector2::new(x, y) * ROUND;
        is_seen(depths, thing, at)
    })
}

/// How far round a foot it is looked whether the thing is seen there too, millimetres built.
const ROUND: f64 = 40.0;

/// Columns of a width at both sides of a room, and what is left between them.
pub(in crate::drawing) fn columns(room: &Bounds2, width: f64) -> ([NotesColumn; 2], Bounds2) {
    let column = |beside, edge| NotesColumn {
        beside,
        edge,
        width,
        height: (room.low.y + 2.0, room.high.y - 2.0),
    };
    let between = Bounds2 {
        low: Point2::new(room.low.x + width + GAP, room.low.y),
        high: Point2::new(room.high.x - width - GAP, room.high.y),
    };
    let left = column(Beside::Left, room.low.x + width);
    let right = column(Beside::Right, room.high.x - width);
    ([left, right], between)
}

/// Between a column and the view, millimetres.
const GAP: f64 = 4.0;
