//! A track lying flat, its flanges up: bent about its weak axis, the free edges of its flanges compressed.

use super::effective_width::{effective_width, unstiffened_k};
use super::properties::{Flats, gross};
use super::steel_grade::Grade;
use crate::catalog::SteelSection;

const SAFETY: f64 = 1.67;

/// The moment that a track lying flat may carry, N·mm: yield of the free edges on the section without what buckles away of
/// the flanges at that stress (k = 0.43 as if compressed evenly, which is cautious), divided by 1.67.
pub fn flat_track_strength(section: &SteelSection, grade: Grade) -> f64 {
    let g = gross(section);
    let flats = Flats::of(section);
    let edge = section.flange.mm();
    let compressed = (edge - g.centroid).min(flats.flange);
    let lost = compressed - effective_width(compressed, flats.t, unstiffened_k(), grade.fy);
    // The free ends of both flanges are lost; the axis moves towards the web.
    let gone = 2.0 * lost * flats.t;
    let at = edge - lost / 2.0;
    let area = g.area - gone;
    let axis = (g.area * g.centroid - gone * at) / area;
    let own = 2.0 * flats.t * lost.powi(3) / 12.0;
    let about_web = g.iy + g.area * g.centroid * g.centroid - own - gone * at * at;
    let inertia = about_web - area * axis * axis;
    let farthest = (edge - lost - axis).max(axis);
    inertia / farthest * grade.fy / SAFETY
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stocky_track_yields_whole_and_thin_ones_less() {
        let grade = Grade::STRUCTURAL_33;
        let track = |name: &str| SteelSection::from_designator(name).unwrap();
        // 97 mil: w/t is 11, nothing buckles: M = Fy Iy / (b - x) / 1.67.
        let stocky = track("362T125-97");
        let g = gross(&stocky);
        let whole = g.iy / (stocky.flange.mm() - g.centroid) * grade.fy / 1.67;
        assert!((flat_track_strength(&stocky, grade) / whole - 1.0).abs() < 1e-9);
        let mut last = 0.0;
        for mils in [18, 27, 30, 33, 43, 54, 68, 97] {
            let now = flat_track_strength(&track(&format!("362T125-{mils}")), grade);
            assert!(now > last, "{mils}");
            last = now;
        }
    }
}
