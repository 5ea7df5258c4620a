//! What is hatched, and which way.

use super::{Material, pattern};
use crate::drawing::occupancy::grown;
use crate::drawing::page::Page;
use crate::geometry::{Bounds2, Outline, Region};

/// Pieces nearer to each other than this touch, millimetres on paper.
const TOUCH: f64 = 0.25;

/// A piece that is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Patch {
    /// What it is made of.
    pub material: Material,
    /// Where it is cut, on the sheet, with straight sides.
    pub regions: Vec<Region>,
}

impl Patch {
    fn bounds(&self) -> Option<Bounds2> {
        let all = self.regions.iter().map(|r| r.outer.bounds());
        all.reduce(Bounds2::union)
    }
}

/// Hatches pieces in the order given; one that touches earlier ones of its material is turned the other way.
pub fn draw(page: &mut Page, patches: &[Patch]) {
    let mut done: Vec<(Material, Bounds2, bool)> = Vec::new();
    for patch in patches {
        let Some(bounds) = patch.bounds() else {
            continue;
        };
        let near = grown(&bounds, TOUCH);
        let touching = |m: Material, b: &Bounds2| m == patch.material && b.overlaps(&near, 0.0);
        let beside = done.iter().filter(|(m, b, _)| touching(*m, b));
        // One more straight than turned ones beside it: it is turned.
        let balance: i32 = beside
            .map(|(_, _, turned)| if *turned { -1 } else { 1 })
            .sum();
        let turn = balance > 0;
        for region in &patch.regions {
            pattern::draw(page, patch.material, region, turn);
        }
        done.push((patch.material, bounds, turn));
    }
}

/// How thick a region is, as a strip of its area and circumference, in the region's unit.
pub fn thickness(region: &Region) -> f64 {
    let holes: f64 = region.holes.iter().map(Outline::perimeter).sum();
    let around = region.outer.perimeter() + holes;
    // A strip l long and t thick: area l t, circumference 2 (l + t).
    let half = around / 4.0;
    let area = region.area().max(0.0);
    half - (half * half - area).max(0.0).sqrt()
}
