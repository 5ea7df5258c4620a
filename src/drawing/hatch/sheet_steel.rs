//! Sheet steel, too thin for a hatch.

use super::patch::thickness;
use crate::drawing::page::Page;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Outline, Point2, Region, Vertex};

/// Thinner sheet is a bold line on paper, millimetres: no gap would show beside it.
const LINE: f64 = 0.3;
/// Half of the light gap between two pieces that touch, millimetres.
const HALF_GAP: f64 = 0.07;

/// Fills a region of sheet steel.
pub(super) fn fill(page: &mut Page, region: &Region) {
    let thick = thickness(region);
    if thick < LINE {
        let pen = if thick < LINE / 2.0 {
            Pen::Medium
        } else {
            Pen::Thin
        };
        solid(page, &region.outer, Some(pen), 0.0);
    } else {
        solid(page, &shrunk(&region.outer, HALF_GAP), None, 0.0);
    }
    // White again: a closed section is a ring.
    for hole in &region.holes {
        solid(page, hole, None, 1.0);
    }
}

fn solid(page: &mut Page, outline: &Outline, pen: Option<Pen>, grey: f64) {
    let points = outline.vertices().to_vec();
    page.path(Layer::Section, pen, Dash::Solid, points, true, Some(grey));
}

/// The outline with its sides moved in, far less than it is wide.
fn shrunk(outline: &Outline, by: f64) -> Outline {
    let corners: Vec<Point2> = outline.vertices().iter().map(|v| v.at).collect();
    let n = corners.len();
    let moved = (0..n).filter_map(|i| {
        let (before, here, after) = (corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n]);
        let inwards = |from: Point2, to: Point2| {
            let side = (to - from).try_normalize(1e-9)?;
            Some(nalgebra::Vector2::new(-side.y, side.x))
        };
        let (a, b) = (inwards(before, here)?, inwards(here, after)?);
        // The mitre of the two sides, held back at sharp corners.
        let mitre = (a + b) / (1.0 + a.dot(&b)).max(0.25);
        let to = here + mitre * by;
        Some(Vertex::sharp(to.x, to.y))
    });
    Outline::new(moved.collect())
}
