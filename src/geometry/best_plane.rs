//! The plane that lies best among points: least squares of the heights.

use super::{Point2, Point3, Vector2};
use nalgebra::{DVector, Matrix2, MatrixXx2};

/// A plane `z = height + slope · (p - middle)` whose heights differ least from those of the points, by the sum of squares.
///
/// Places count as exact, heights as read with errors of one size that do not depend on each other: the usual assumptions
/// of a least-squares fit.
#[derive(Clone, Debug, PartialEq)]
pub struct BestPlane {
    /// The middle of the places.
    pub middle: Point2,
    /// Its height there, millimetres.
    pub height: f64,
    /// How much it rises along x and y, a part of one.
    pub slope: Vector2,
    /// How many points it lies among.
    pub count: usize,
    /// Sum of the squares of the residuals, mm².
    pub squares: f64,
    /// The inverse of the sums of squares and products of the places about their middle, 1/mm².
    inverse: Matrix2<f64>,
}

/// Why there is no best plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPlane {
    /// Fewer than three points, or numbers without end.
    TooFew,
    /// The places lie in one line.
    InLine,
}

/// Places lie in a line when they spread across it by less than this share of their spread along it: a millimetre in ten
/// metres, finer than anybody measures where a level was taken. The size of the survey does not matter.
const IN_LINE: f64 = 1e-4;

impl BestPlane {
    /// The plane among some points: by the QR decomposition of the places about their middle, whose triangular factor has
    /// the same singular values.
    ///
    /// # Errors
    /// When there are too few, or all in one line.
    pub fn through(points: &[Point3]) -> Result<Self, NoPlane> {
        let count = points.len();
        let finite = points.iter().all(|p| p.iter().all(|c| c.is_finite()));
        if count < 3 || !finite {
            return Err(NoPlane::TooFew);
        }
        let sum = points
            .iter()
            .fold(Point3::origin().coords, |s, p| s + p.coords);
        let mean = sum / count as f64;
        let places = MatrixXx2::from_fn(count, |i, k| points[i][k] - mean[k]);
        let heights = DVector::from_fn(count, |i, _| points[i].z - mean.z);
        let qr = places.clone().qr();
        let triangle = qr.r().svd(true, true);
        let (large, small) = (
            triangle.singular_values.max(),
            triangle.singular_values.min(),
        );
        if small.is_nan() || small <= IN_LINE * large {
            return Err(NoPlane::InLine);
        }
        let turned = qr.q().transpose() * &heights;
        let slope = triangle.solve(&turned, 0.0).map_err(|_| NoPlane::InLine)?;
        let inverse = (places.transpose() * &places).try_inverse();
        let residuals = heights - places * slope;
        Ok(Self {
            middle: Point2::new(mean.x, mean.y),
            height: mean.z,
            slope,
            count,
            squares: residuals.norm_squared(),
            inverse: inverse.ok_or(NoPlane::InLine)?,
        })
    }

    /// Its height at a place.
    pub fn at(&self, place: Point2) -> f64 {
        self.height + self.slope.dot(&(place - self.middle))
    }

    /// How much a point stands above it.
    pub fn residual(&self, point: &Point3) -> f64 {
        point.z - self.at(Point2::new(point.x, point.y))
    }

    /// Root mean square of the residuals.
    pub fn root_mean_square(&self) -> f64 {
        (self.squares / self.count as f64).sqrt()
    }

    /// The standard deviation of one level about it, by what more than three points leave over; `None` of three, which
    /// every plane fits.
    pub fn spread(&self) -> Option<f64> {
        (self.count > 3).then(|| (self.squares / (self.count - 3) as f64).sqrt())
    }

    /// The standard error of its height at a place, by the spread; `None` of three points.
    pub fn standard_error(&self, place: Point2) -> Option<f64> {
        Some(self.spread()? * self.leverage(place).sqrt())
    }

    /// How much of the height at a place a level taken there would decide by itself: 1/n in the middle, more outside.
    fn leverage(&self, place: Point2) -> f64 {
        let from = place - self.middle;
        1.0 / self.count as f64 + from.dot(&(self.inverse * from)).max(0.0)
    }

    /// How many of its own standard errors a point stands off the plane among all the *others*: the residual studentised
    /// from outside. `None` where the others are three or fewer, which leave no spread, or where the plane hangs on the
    /// point alone; without end where the others lie on a plane and the point does not.
    pub fn stands_off(&self, point: &Point3) -> Option<f64> {
        let free = 1.0 - self.leverage(Point2::new(point.x, point.y));
        if self.count < 5 || free < 1e-9 {
            return None;
        }
        let residual = self.residual(point);
        let left = (self.squares - residual * residual / free).max(0.0);
        let others = (left / (self.count - 4) as f64).sqrt();
        Some(residual.abs() / (others * free.sqrt()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const IN: f64 = 25.4;

    fn points(of: &[[f64; 3]]) -> Vec<Point3> {
        of.iter().map(|p| Point3::new(p[0], p[1], p[2])).collect()
    }

    #[test]
    fn the_reference_plane_and_its_residuals() {
        // shared reference: (0,0,0) (0,3,.25) (8,0,.5) (8,3,.75) (4,1.5,.6) give z = .0625 x + .08333 y + .045, residuals
        // -.045 four times and +.180. Here x and y are in feet, z in inches, as surveys are written.
        let ft = 12.0 * IN;
        let raw = [
            [0.0, 0.0, 0.0],
            [0.0, 3.0, 0.25],
            [8.0, 0.0, 0.5],
            [8.0, 3.0, 0.75],
            [4.0, 1.5, 0.6],
        ];
        let points = points(&raw.map(|[x, y, z]| [x * ft, y * ft, z * IN]));
        let plane = BestPlane::through(&points).unwrap();
        let slope = plane.slope * ft / IN;
        assert!((slope.x - 0.0625).abs() < 1e-9 && (slope.y - 0.25 / 3.0).abs() < 1e-9);
        assert!((plane.at(Point2::origin()) / IN - 0.045).abs() < 1e-9);
        for (point, expected) in points.iter().zip([-0.045, -0.045, -0.045, -0.045, 0.18]) {
            assert!((plane.residual(point) / IN - expected).abs() < 1e-9);
        }
        // Sum of squares 4 × .045² + .18² = .0405: r.m.s. √(.0405/5) = .09, spread √(.0405/2) = .1423.
        assert!((plane.root_mean_square() / IN - 0.09).abs() < 1e-9);
        assert!((plane.spread().unwrap() / IN - 0.142_302_494_7).abs() < 1e-9);
        // In the middle the standard error is spread/√5.
        let error = plane.standard_error(plane.middle).unwrap();
        assert!((error / IN - 0.142_302_494_7 / 5.0_f64.sqrt()).abs() < 1e-9);
        // The four corners lie on a plane, the middle does not.
        assert!(plane.stands_off(&points[4]).unwrap() > 1e6);
        assert!(plane.stands_off(&points[0]).unwrap() < 1.0);
    }

    #[test]
    fn too_few_and_places_in_line_make_no_plane_at_any_size() {
        assert_eq!(BestPlane::through(&[]), Err(NoPlane::TooFew));
        let line = |size: f64| points(&[1.0, 2.0, 5.0, 9.0].map(|t| [t * size, 0.3 * t * size, t]));
        for size in [1e-3, 1.0, 1e6] {
            assert_eq!(BestPlane::through(&line(size)), Err(NoPlane::InLine));
            let mut off = line(size);
            off[1].x += 0.01 * size;
            assert!(BestPlane::through(&off).is_ok());
        }
        let same = points(&[[7.0, 7.0, 1.0]; 5]);
        assert_eq!(BestPlane::through(&same), Err(NoPlane::InLine));
        let endless = points(&[[f64::NAN, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]]);
        assert_eq!(BestPlane::through(&endless), Err(NoPlane::TooFew));
    }

    fn cloud() -> impl Strategy<Value = Vec<Point3>> {
        let point = (-9000.0..9000.0f64, -9000.0..9000.0f64, -200.0..200.0f64);
        proptest::collection::vec(point.prop_map(|(x, y, z)| Point3::new(x, y, z)), 3..40)
    }

    proptest! {
        #[test]
        fn points_on_a_plane_leave_nothing_over(cloud in cloud(), a in -0.2..0.2f64, b in -0.2..0.2f64, c in -900.0..900.0f64) {
            let on: Vec<Point3> = cloud.iter().map(|p| Point3::new(p.x, p.y, c + a * p.x + b * p.y)).collect();
            if let Ok(plane) = BestPlane::through(&on) {
                for p in &on {
                    prop_assert!(plane.residual(p).abs() < 1e-6);
                }
                prop_assert!((plane.slope - Vector2::new(a, b)).norm() < 1e-6);
            }
        }

        #[test]
        fn turned_and_moved_points_turn_and_move_the_plane(cloud in cloud(), angle in 0.0..6.2f64, dx in -5000.0..5000.0f64, dz in -500.0..500.0f64) {
            let turn = nalgebra::Rotation2::new(angle);
            let moved = |p: &Point3| {
                let q = turn * Point2::new(p.x, p.y) + Vector2::new(dx, -dx);
                Point3::new(q.x, q.y, p.z + dz)
            };
            let there: Vec<Point3> = cloud.iter().map(moved).collect();
            if let (Ok(here), Ok(there)) = (BestPlane::through(&cloud), BestPlane::through(&there)) {
                let size = here.slope.norm().max(1.0);
                prop_assert!((turn * here.slope - there.slope).norm() < 1e-6 * size);
                prop_assert!((here.root_mean_square() - there.root_mean_square()).abs() < 1e-6);
                for p in &cloud {
                    prop_assert!((here.residual(p) - there.residual(&moved(p))).abs() < 1e-5);
                }
            }
        }

        #[test]
        fn residuals_add_up_to_nothing_and_do_not_lean(cloud in cloud()) {
            // The normal equations: the residuals are square to 1, x and y.
            if let Ok(plane) = BestPlane::through(&cloud) {
                let over = |f: &dyn Fn(&Point3) -> f64| cloud.iter().map(|p| plane.residual(p) * f(p)).sum::<f64>();
                prop_assert!(over(&|_| 1.0).abs() < 1e-6);
                prop_assert!(over(&|p| p.x).abs() < 1e-1 && over(&|p| p.y).abs() < 1e-1);
            }
        }
    }
}
