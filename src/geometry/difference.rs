//! Regions of straight sides less, and in common with, others.

use super::overlay::{Rule, overlay};
use super::{Outline, Point2, Region};

impl Region {
    /// What is left of the region when some outlines are cut out of it; they may overlap each other and reach outside.
    ///
    /// Sides are taken as straight: an arc counts as its chord. Pieces come from left to right, then upwards, and each
    /// begins at its leftmost, then lowest corner. A coordinate of the result that is one of the input's is the same to
    /// the last bit.
    ///
    /// ```
    /// use islandwright::geometry::{Outline, Region};
    /// let sheet = Region::solid(Outline::rectangle(0.0, 0.0, 60.0, 36.0));
    /// let pieces = sheet.minus(&[Outline::rectangle(20.0, -1.0, 30.0, 40.0)]);
    /// assert_eq!(pieces.len(), 2);
    /// ```
    pub fn minus(&self, holes: &[Outline]) -> Vec<Region> {
        overlay(&self.rings(), &rings(holes), Rule::Less)
    }

    /// What of the region lies in any of some outlines, which may overlap each other; straight sides and order as in
    /// [`Region::minus`].
    ///
    /// ```
    /// use islandwright::geometry::{Outline, Region};
    /// let sheet = Region::solid(Outline::rectangle(0.0, 0.0, 60.0, 36.0));
    /// let window = Outline::rectangle(50.0, 30.0, 80.0, 80.0);
    /// assert_eq!(sheet.inside(&[window])[0].area(), 60.0);
    /// ```
    pub fn inside(&self, windows: &[Outline]) -> Vec<Region> {
        overlay(&self.rings(), &rings(windows), Rule::Common)
    }

    /// Its corners, the outer ring counter-clockwise, those of holes clockwise.
    fn rings(&self) -> Vec<Vec<Point2>> {
        let holes = self.holes.iter().map(|hole| {
            let mut turned = corners(hole);
            turned.reverse();
            turned
        });
        std::iter::once(corners(&self.outer)).chain(holes).collect()
    }
}

fn corners(outline: &Outline) -> Vec<Point2> {
    outline.vertices().iter().map(|v| v.at).collect()
}

fn rings(outlines: &[Outline]) -> Vec<Vec<Point2>> {
    outlines.iter().map(corners).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rectangle(x0: f64, y0: f64, x1: f64, y1: f64) -> Outline {
        Outline::rectangle(x0, y0, x1, y1)
    }

    fn box_of(region: &Region) -> [f64; 4] {
        let b = region.outer.bounds();
        [b.low.x, b.low.y, b.high.x, b.high.y]
    }

    #[test]
    fn a_cut_right_across_leaves_two_pieces_with_the_coordinates_of_the_input() {
        // Thirds have no end in binary: what comes back must be the very same numbers.
        let (x, y) = (100.0 / 3.0, 70.0 / 7.0);
        let pieces = Region::solid(rectangle(0.1, y, 3.0 * x, 30.3)).minus(&[rectangle(
            x,
            -5.0,
            2.0 * x,
            99.0,
        )]);
        let boxes: Vec<_> = pieces.iter().map(box_of).collect();
        assert_eq!(boxes, [[0.1, y, x, 30.3], [2.0 * x, y, 3.0 * x, 30.3]]);
    }

    #[test]
    fn a_notch_a_hole_and_overlapping_cuts_have_the_area_worked_on_paper() {
        // 1000 × 500 less a notch 200 × 100 at the foot, a hole 50 × 50, and two cuts of 40 × 40 sharing 20 × 40.
        let pieces = Region::solid(rectangle(0.0, 0.0, 1000.0, 500.0)).minus(&[
            rectangle(300.0, -50.0, 500.0, 100.0),
            rectangle(700.0, 200.0, 750.0, 250.0),
            rectangle(100.0, 300.0, 140.0, 340.0),
            rectangle(120.0, 300.0, 160.0, 340.0),
        ]);
        assert_eq!(pieces.len(), 1);
        assert_eq!(pieces[0].holes.len(), 2);
        assert_eq!(pieces[0].outer.vertices().len(), 8);
        assert_eq!(pieces[0].area(), 500_000.0 - 20_000.0 - 2_500.0 - 2_400.0);
        assert!(pieces[0].holes.iter().all(|h| h.area() > 0.0));
    }

    #[test]
    fn holes_of_the_region_stay_and_grow() {
        let ring = Region {
            outer: rectangle(0.0, 0.0, 100.0, 100.0),
            holes: vec![rectangle(40.0, 40.0, 60.0, 60.0)],
        };
        assert_eq!(ring.minus(&[])[0], ring);
        let grown = ring.minus(&[rectangle(50.0, 50.0, 70.0, 70.0)]);
        assert_eq!(grown[0].holes.len(), 1);
        assert_eq!(grown[0].area(), 10_000.0 - 400.0 - 400.0 + 100.0);
    }

    #[test]
    fn nothing_is_left_under_a_cover() {
        let all = [rectangle(-1.0, -1.0, 11.0, 11.0)];
        assert!(
            Region::solid(rectangle(0.0, 0.0, 10.0, 10.0))
                .minus(&all)
                .is_empty()
        );
    }

    #[test]
    fn a_micrometre_is_kept_on_a_long_sheet() {
        let strip = [rectangle(15_000.0, -1.0, 15_000.001, 10.0)];
        let pieces = Region::solid(rectangle(0.0, 0.0, 30_000.0, 5.0)).minus(&strip);
        let boxes: Vec<_> = pieces.iter().map(box_of).collect();
        assert_eq!(
            boxes,
            [[0.0, 0.0, 15_000.0, 5.0], [15_000.001, 0.0, 30_000.0, 5.0]]
        );
    }

    #[test]
    fn numbers_out_of_bounds_do_no_harm() {
        let bad = [rectangle(f64::NAN, 0.0, f64::INFINITY, 1e300)];
        let _ = Region::solid(rectangle(0.0, 0.0, 1e200, 10.0)).minus(&bad);
    }
}
