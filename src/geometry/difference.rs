//! Taking holes out of a region of straight sides.

use super::{Outline, Point2, Region};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{IntOverlayOptions, Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::core::solver::Solver;
use i_overlay::i_float::int::point::IntPoint;

/// Steps of the grid in a millimetre: a power of two, so that going to the grid and back costs no digit, and finer
/// than anything that is built.
const STEPS: f64 = 1_048_576.0;

/// Beyond this the grid has no room, millimetres: a thousand kilometres.
const FARTHEST: f64 = 1e9;

type Path = Vec<IntPoint<i64>>;

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
        let xs = coordinates(self, holes, |p| p.x);
        let ys = coordinates(self, holes, |p| p.y);
        let mut subject = vec![path(&self.outer)];
        subject.extend(self.holes.iter().map(|hole| {
            let mut turned = path(hole);
            turned.reverse();
            turned
        }));
        let clip: Vec<Path> = holes.iter().map(path).collect();
        let mut overlay = Overlay::<i64>::new_custom(
            subject.iter().chain(&clip).map(Vec::len).sum(),
            IntOverlayOptions::ogc(),
            Solver::default(),
        );
        overlay.add_source(&subject, ShapeType::Subject);
        overlay.add_source(&clip, ShapeType::Clip);
        let shapes = overlay.overlay(OverlayRule::Difference, FillRule::NonZero);
        let mut pieces: Vec<Region> = shapes
            .iter()
            .filter_map(|contours| {
                let mut outlines = contours.iter().map(|c| back(c, &xs, &ys));
                let outer = outlines.next()?;
                let mut holes: Vec<Outline> = outlines.collect();
                holes.sort_by(by_first_corner);
                Some(Region { outer, holes })
            })
            .collect();
        pieces.sort_by(|a, b| by_first_corner(&a.outer, &b.outer));
        pieces
    }
}

/// Left to right, then upwards, by the first corner.
fn by_first_corner(a: &Outline, b: &Outline) -> std::cmp::Ordering {
    let key = |o: &Outline| {
        o.vertices()
            .first()
            .map_or((0.0, 0.0), |v| (v.at.x, v.at.y))
    };
    let (a, b) = (key(a), key(b));
    a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))
}

fn to_grid(x: f64) -> i64 {
    (x.clamp(-FARTHEST, FARTHEST) * STEPS).round() as i64
}

fn path(outline: &Outline) -> Path {
    let corners = outline.vertices().iter();
    corners
        .map(|v| IntPoint::new(to_grid(v.at.x), to_grid(v.at.y)))
        .collect()
}

/// The input's coordinates in one direction by their place on the grid, in rising order.
fn coordinates(
    region: &Region,
    holes: &[Outline],
    pick: impl Fn(&Point2) -> f64,
) -> Vec<(i64, f64)> {
    let outlines = std::iter::once(&region.outer)
        .chain(&region.holes)
        .chain(holes);
    let mut all: Vec<(i64, f64)> = outlines
        .flat_map(Outline::vertices)
        .map(|v| (to_grid(pick(&v.at)), pick(&v.at)))
        .collect();
    all.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    all.dedup_by_key(|c| c.0);
    all
}

/// A contour of the result in millimetres, counter-clockwise, its leftmost, then lowest corner first.
fn back(contour: &[IntPoint<i64>], xs: &[(i64, f64)], ys: &[(i64, f64)]) -> Outline {
    let points: Vec<Point2> = contour
        .iter()
        .map(|p| Point2::new(off_grid(p.x, xs), off_grid(p.y, ys)))
        .collect();
    let mut corners = Outline::polygon(&points).vertices().to_vec();
    let key = |i: &usize| (to_grid(corners[*i].at.x), to_grid(corners[*i].at.y));
    let first = (0..corners.len()).min_by_key(key).unwrap_or(0);
    corners.rotate_left(first);
    Outline::new(corners)
}

/// The input's coordinate at that place of the grid, or the place itself where lines of the input crossed.
fn off_grid(place: i64, known: &[(i64, f64)]) -> f64 {
    known
        .binary_search_by_key(&place, |c| c.0)
        .map_or(place as f64 / STEPS, |i| known[i].1)
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
