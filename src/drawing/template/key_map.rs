//! The key map: the counter small, with its pages.

use super::furniture::FURNITURE;
use super::grid::{Grid, Map, Place};
use super::ink::Ink;
use super::scene::{Kind, Scene};
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vector2, Vertex};
use std::collections::BTreeSet;

/// With more pages than this a page's map shows the counter and that page only: smaller cells could not be told apart.
const MOST_CELLS: usize = 150;

/// What the map of every page of a set has in common, worked out once; in millimetres on the page.
pub(super) struct KeyMap {
    /// From the template's plane to the map.
    pub(super) map: Map,
    cells: Vec<[Point2; 2]>,
    lines: Vec<(Pen, Vec<Vertex>, bool)>,
}

impl KeyMap {
    /// The map that fits a room; `None` without a page.
    pub(super) fn new(room: Bounds2, scene: &Scene, grid: &Grid, kept: &[Place]) -> Option<Self> {
        let all = kept
            .iter()
            .map(|p| grid.window(*p))
            .reduce(Bounds2::union)?;
        let (width, height) = (room.width() - 4.0, room.height() - 4.0);
        let factor = (width / all.width()).min(height / all.height());
        let size = Vector2::new(all.width(), all.height()) * factor;
        let map = Map {
            from: all.low,
            to: room.centre() - size / 2.0,
            scale: Vector2::new(factor, factor),
        };
        let lines = scene
            .lines
            .iter()
            .filter(|l| matches!(l.kind, Kind::Slab | Kind::Cut))
            .map(|line| {
                let pen = if line.kind == Kind::Cut {
                    Pen::Medium
                } else {
                    Pen::Thin
                };
                (pen, map.path(&line.trace), line.trace.closed)
            })
            .collect();
        Some(Self {
            cells: cell_lines(grid, kept, &map),
            lines,
            map,
        })
    }

    /// Draws the map with all its pages, or for a page with that page filled.
    pub(super) fn draw(&self, ink: &mut Ink, grid: &Grid, kept: usize, here: Option<Place>) {
        if let Some(here) = here {
            let cell = grid.cell(here);
            let cell = Bounds2 {
                low: self.map.point(cell.low),
                high: self.map.point(cell.high),
            };
            ink.block(cell, Layer::Border, None, Some(0.6));
        }
        if here.is_none() || kept <= MOST_CELLS {
            let style = (Layer::Border, Pen::Fine, Dash::Solid);
            for [from, to] in &self.cells {
                ink.straight(style, *from, *to, FURNITURE);
            }
        }
        for (pen, path, closed) in &self.lines {
            let style = (Layer::Note, *pen, Dash::Solid);
            ink.line(style, path.clone(), *closed, FURNITURE);
        }
    }
}

/// The lines between the cells of the kept pages, each as long as can be.
fn cell_lines(grid: &Grid, kept: &[Place], map: &Map) -> Vec<[Point2; 2]> {
    let kept: BTreeSet<_> = kept.iter().copied().collect();
    let count = [grid.columns, grid.rows];
    let mut lines = Vec::new();
    for axis in 0..2 {
        let across = 1 - axis;
        let is_kept = |k: usize, along: usize| {
            kept.contains(&if axis == 0 { (k, along) } else { (along, k) })
        };
        let point = |k: usize, along: usize| {
            let mut p = Point2::origin();
            p[axis] = grid.parting(axis, k);
            p[across] = grid.parting(across, along);
            map.point(p)
        };
        for k in 0..=count[axis] {
            let drawn = |a: usize| is_kept(k, a) || (k > 0 && is_kept(k - 1, a));
            let mut from = None;
            for a in 0..=count[across] {
                if a < count[across] && drawn(a) {
                    from = from.or(Some(a));
                } else if let Some(first) = from.take() {
                    lines.push([point(k, first), point(k, a)]);
                }
            }
        }
    }
    lines
}
