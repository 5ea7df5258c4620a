//! One page of the template.

use super::furniture::{self, Heading};
use super::grid::{Grid, Map, Place};
use super::ink::Ink;
use super::key_map::KeyMap;
use super::labels::{self, Seen};
use super::layout::Layout;
use super::scene::{Kind, Scene};
use super::trace::{Trace, contains};
use crate::drawing::{Dash, Item, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vector2};

/// A page's drawing and the crosses on it.
pub(super) struct Drawn {
    pub(super) items: Vec<Item>,
    pub(super) map: Map,
    pub(super) crosses: Vec<Point2>,
}

/// Draws one page of a set.
pub(super) fn draw(
    scene: &Scene,
    layout: &Layout,
    grid: &Grid,
    kept: &[Place],
    here: Place,
    (heading, key): (&Heading, Option<&KeyMap>),
) -> Drawn {
    let (window, cell) = (grid.window(here), grid.cell(here));
    let paper = layout.window();
    let map = Map {
        from: window.low,
        to: paper.low,
        scale: layout.scale,
    };
    let mut ink = Ink::new(paper);
    lines(&mut ink, scene, &map, &window);
    let crosses = furniture::edges(&mut ink, layout, grid, kept, here);
    write(&mut ink, scene, &map, &cell);
    furniture::strip(&mut ink, layout, heading);
    if let Some(key) = key {
        key.draw(&mut ink, grid, kept.len(), Some(here));
    }
    Drawn {
        items: ink.into_items(),
        map,
        crosses,
    }
}

/// Draws what of the scene lies in the window.
fn lines(ink: &mut Ink, scene: &Scene, map: &Map, window: &Bounds2) {
    for (number, line) in scene.lines.iter().enumerate() {
        let style = (line.kind.layer(), line.kind.pen(), line.kind.dash());
        for part in line.inside(window) {
            ink.line(style, map.path(&part), part.closed, number);
        }
        let (first, last) = (line.trace.points.first(), line.trace.points.last());
        if let (Some(first), Some(last)) = (first, last) {
            let ends = [
                (line.arrows.0, first.at, first.at - last.at),
                (line.arrows.1, last.at, last.at - first.at),
            ];
            for (arrow, tip, out) in ends {
                if arrow && contains(window, tip) && out.norm() > 8.0 {
                    ink.arrow(map.point(tip), out.normalize());
                }
            }
        }
    }
    for spot in scene.spots.iter().filter(|s| contains(window, s.at)) {
        let at = map.point(spot.at);
        for arm in [Vector2::new(3.0, 0.0), Vector2::new(0.0, 3.0)] {
            ink.straight(
                (Layer::Centre, Pen::Thin, Dash::Solid),
                at - arm,
                at + arm,
                usize::MAX,
            );
        }
    }
}

/// Writes dimensions, radii and names beside what lies in the page's own cell: dimensions first.
fn write(ink: &mut Ink, scene: &Scene, map: &Map, cell: &Bounds2) {
    let seen: Vec<_> = scene
        .lines
        .iter()
        .enumerate()
        .map(|(number, line)| {
            let parts = line.inside(cell).into_iter();
            Seen {
                kind: line.kind,
                label: &line.label,
                line: number,
                parts: parts
                    .map(|p| Trace {
                        points: map.path(&p),
                        closed: p.closed,
                    })
                    .collect(),
            }
        })
        .filter(|s| !s.parts.is_empty())
        .collect();
    seen.iter()
        .filter(|s| s.kind == Kind::Dimension)
        .for_each(|s| labels::figure(ink, s));
    for spot in scene.spots.iter().filter(|s| contains(cell, s.at)) {
        labels::point(ink, map.point(spot.at), &spot.label);
    }
    for kind in [
        Kind::Cut,
        Kind::Slab,
        Kind::Flange,
        Kind::Turndown,
        Kind::Centre,
    ] {
        seen.iter()
            .filter(|s| s.kind == kind)
            .for_each(|s| labels::name(ink, s));
    }
}
