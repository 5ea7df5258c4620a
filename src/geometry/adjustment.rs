//! Points in a plane fitted to lengths measured between them, by least squares.
//!
//! The usual adjustment of a network of measured lengths (variation of coordinates): Gauss-Newton from given points, each
//! observation weighted by the inverse square of its standard deviation. Nothing tells where the network lies and how it
//! is turned, so each step is the shortest one that serves; the shape does not depend on it.

use super::{Point2, Vector2};
use nalgebra::{DMatrix, DVector};

/// What is measured between points, by their numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measured {
    /// The distance between two points.
    Distance([usize; 2]),
    /// How far the first point lies to the left of the line from the second to the third.
    Offset([usize; 3]),
}

/// One measured value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Observation {
    /// What was measured.
    pub of: Measured,
    /// The value, millimetres.
    pub value: f64,
    /// Its standard deviation, millimetres, more than zero.
    pub deviation: f64,
}

/// Points, roughly where they are, and what was measured between them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Network {
    /// Where the fit starts.
    pub points: Vec<Point2>,
    /// What was measured.
    pub observations: Vec<Observation>,
}

/// A network fitted to its observations.
#[derive(Clone, Debug, PartialEq)]
pub struct Adjusted {
    /// The points, moved as little as may be from where they started.
    pub points: Vec<Point2>,
    /// For each observation its value between the adjusted points less the measured one, millimetres.
    pub residuals: Vec<f64>,
    /// For each observation how much of an error in it shows in its residual: 0 where nothing checks it, 1 where all does.
    /// They add up to the redundancy.
    pub checks: Vec<f64>,
    /// How many observations there are beyond those that give the shape.
    pub redundancy: usize,
    /// The sum of the squares of residuals over deviations.
    pub sum: f64,
}

/// No more steps than this are tried.
const STEPS: usize = 60;
/// A step shorter than this ends the fit, millimetres.
const STILL: f64 = 1e-10;
/// Singular values below this share of the largest are none.
const NOTHING: f64 = 1e-9;

impl Measured {
    /// Its value between points, and how the value changes with each of them.
    fn at(self, points: &[Point2]) -> Option<(f64, [(usize, Vector2); 3])> {
        let point = |i: usize| points.get(i).copied();
        match self {
            Self::Distance([i, j]) => {
                let apart = point(j)? - point(i)?;
                let length = apart.norm();
                let unit = apart.try_normalize(1e-9)?;
                Some((length, [(i, -unit), (j, unit), (j, Vector2::zeros())]))
            }
            Self::Offset([i, a, b]) => {
                let (from, line) = (point(i)? - point(a)?, point(b)? - point(a)?);
                let length = line.norm();
                let unit = line.try_normalize(1e-9)?;
                let left = Vector2::new(-unit.y, unit.x);
                let (along, off) = (from.dot(&unit) / length, from.dot(&left));
                let ends = [(i, left), (a, left * (along - 1.0)), (b, left * -along)];
                Some((off, ends))
            }
        }
    }
}

impl Network {
    /// The points that fit best; `None` where the observations leave the shape open, or lead nowhere.
    pub fn adjust(&self) -> Option<Adjusted> {
        let unknowns = 2 * self.points.len();
        let shape = unknowns.checked_sub(3)?;
        let redundancy = self.observations.len().checked_sub(shape)?;
        let usable = |o: &Observation| o.value.is_finite() && o.deviation > 0.0;
        if !self.observations.iter().all(usable) {
            return None;
        }
        let mut points = self.points.clone();
        let mut sum = self.sum(&points)?;
        for _ in 0..STEPS {
            let (matrix, misfit) = self.linear(&points)?;
            let split = matrix.svd(true, true);
            let largest = split.singular_values.iter().copied().fold(0.0, f64::max);
            let step = split.solve(&misfit, largest * NOTHING).ok()?;
            let (next, less) = self.shortened(&points, &step, sum)?;
            let moved = next.iter().zip(&points);
            let moved = moved.map(|(a, b)| (a - b).norm()).fold(0.0, f64::max);
            (points, sum) = (next, less);
            if moved < STILL {
                break;
            }
        }
        let (matrix, misfit) = self.linear(&points)?;
        let split = matrix.svd(true, false);
        let largest = split.singular_values.iter().copied().fold(0.0, f64::max);
        let counts: Vec<bool> = split
            .singular_values
            .iter()
            .map(|s| *s > largest * NOTHING)
            .collect();
        if counts.iter().filter(|c| **c).count() != shape {
            return None;
        }
        let used = split.u?;
        let checks = (0..self.observations.len()).map(|row| {
            let own = counts.iter().enumerate().filter(|(_, c)| **c);
            let taken: f64 = own.map(|(column, _)| used[(row, column)].powi(2)).sum();
            (1.0 - taken).clamp(0.0, 1.0)
        });
        let residuals = misfit.iter().zip(&self.observations);
        Some(Adjusted {
            checks: checks.collect(),
            residuals: residuals.map(|(m, o)| -m * o.deviation).collect(),
            points,
            redundancy,
            sum,
        })
    }

    /// The step, halved as often as it takes to fit better; the points themselves where no part of it does.
    fn shortened(
        &self,
        points: &[Point2],
        step: &DVector<f64>,
        sum: f64,
    ) -> Option<(Vec<Point2>, f64)> {
        if !step.iter().all(|s| s.is_finite()) {
            return None;
        }
        let mut share = 1.0;
        for _ in 0..30 {
            let moved = points.iter().enumerate().map(|(i, p)| {
                let by = Vector2::new(step[2 * i], step[2 * i + 1]);
                p + by * share
            });
            let next: Vec<_> = moved.collect();
            match self.sum(&next) {
                Some(less) if less <= sum => return Some((next, less)),
                _ => share /= 2.0,
            }
        }
        Some((points.to_vec(), sum))
    }

    /// The sum of the squares of misfits over deviations.
    fn sum(&self, points: &[Point2]) -> Option<f64> {
        let squares = self.observations.iter().map(|o| {
            let (value, _) = o.of.at(points)?;
            Some(((o.value - value) / o.deviation).powi(2))
        });
        squares.sum::<Option<f64>>().filter(|s| s.is_finite())
    }

    /// The linear equations at some points, and by how much the observations miss them, both over the deviations.
    fn linear(&self, points: &[Point2]) -> Option<(DMatrix<f64>, DVector<f64>)> {
        let (rows, columns) = (self.observations.len(), 2 * points.len());
        let mut matrix = DMatrix::zeros(rows, columns);
        let mut misfit = DVector::zeros(rows);
        for (row, o) in self.observations.iter().enumerate() {
            let (value, changes) = o.of.at(points)?;
            misfit[row] = (o.value - value) / o.deviation;
            for (point, change) in changes {
                matrix[(row, 2 * point)] += change.x / o.deviation;
                matrix[(row, 2 * point + 1)] += change.y / o.deviation;
            }
        }
        Some((matrix, misfit))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// All six distances of four points; the sixth is one too many.
    fn quadrilateral(points: [(f64, f64); 4], changed: [f64; 6]) -> Network {
        let points = points.map(|(x, y)| Point2::new(x, y));
        let pairs = [[0, 1], [3, 2], [0, 3], [1, 2], [0, 2], [1, 3]];
        let observed = pairs.iter().zip(changed).map(|(&[i, j], by)| Observation {
            of: Measured::Distance([i, j]),
            value: (points[j] - points[i]).norm() + by,
            deviation: 1.5,
        });
        Network {
            observations: observed.collect(),
            points: [(0.0, 0.0), (3000.0, 0.0), (3000.0, 800.0), (0.0, 800.0)]
                .map(|(x, y)| Point2::new(x, y))
                .to_vec(),
        }
    }

    #[test]
    fn a_square_with_one_diagonal_long_shares_the_misclosure_as_on_paper() {
        // A square of side a: the condition is (sum of sides)·a = (sum of diagonals)·a√2 / ... in small changes
        // Σ da = (de + df)·√2; an error w in e alone, equal weights: each side moves by w·√2/(4 + 2·2) = .17678 w, each diagonal
        // by −w·2/8 = −.25 w.
        let square = [(0.0, 0.0), (1000.0, 0.0), (1000.0, 1000.0), (0.0, 1000.0)];
        let mut network = quadrilateral(square, [0.0, 0.0, 0.0, 0.0, 0.001, 0.0]);
        network.points = square.map(|(x, y)| Point2::new(x, y)).to_vec();
        let fit = network.adjust().unwrap();
        let expected = [0.17678, 0.17678, 0.17678, 0.17678, -0.25, -0.25].map(|v| v * 0.001);
        for (found, expected) in fit.residuals.iter().zip(expected) {
            assert!((found - expected).abs() < 1e-8, "{:?}", fit.residuals);
        }
        // With one observation too many each standardised residual is as large as the others.
        assert_eq!(fit.redundancy, 1);
        let checks = [0.125, 0.125, 0.125, 0.125, 0.25, 0.25];
        for (found, expected) in fit.checks.iter().zip(checks) {
            assert!((found - expected).abs() < 1e-6);
        }
    }

    #[test]
    fn four_sides_alone_leave_the_shape_open() {
        let mut network = quadrilateral([(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0)], [0.0; 6]);
        network.observations.truncate(4);
        assert!(network.adjust().is_none());
        // Five lengths that leave one point hanging on one of them.
        let mut doubled = quadrilateral([(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0)], [0.0; 6]);
        doubled.observations[2] = doubled.observations[0];
        doubled.observations[5] = doubled.observations[0];
        assert!(doubled.adjust().is_none());
    }

    #[test]
    fn a_point_on_a_line_counts_as_measured() {
        // A triangle, and a fourth point in the middle of its base: three distances, two more to the ends, one offset.
        let at = [(0.0, 0.0), (10.0, 0.0), (5.0, 8.0), (5.0, 0.0)].map(|(x, y)| Point2::new(x, y));
        let distance = |i: usize, j: usize| Observation {
            of: Measured::Distance([i, j]),
            value: (at[j] - at[i]).norm(),
            deviation: 1.0,
        };
        let on_line = Observation {
            of: Measured::Offset([3, 0, 1]),
            value: 0.0,
            deviation: 1.0,
        };
        let mut points = at.to_vec();
        points[3] = Point2::new(5.5, 0.7);
        let network = Network {
            points,
            observations: vec![
                distance(0, 1),
                distance(1, 2),
                distance(2, 0),
                distance(0, 3),
                on_line,
            ],
        };
        let fit = network.adjust().unwrap();
        let [a, b, p] = [fit.points[0], fit.points[1], fit.points[3]];
        assert!(((p - a).norm() - 5.0).abs() < 1e-9 && ((p - b).norm() - 5.0).abs() < 1e-9);
    }

    #[test]
    fn nonsense_leads_nowhere_and_does_no_harm() {
        let mut network = quadrilateral([(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0)], [0.0; 6]);
        network.observations[0].value = f64::NAN;
        assert!(network.adjust().is_none());
        network.observations[0].value = 1e300;
        let _ = network.adjust();
        network.observations[0].of = Measured::Distance([0, 9]);
        assert!(network.adjust().is_none());
        network.points = vec![Point2::origin(); 4];
        assert!(network.adjust().is_none());
        assert!(Network::default().adjust().is_none());
    }

    proptest! {
        #[test]
        fn exact_lengths_leave_no_residual(moved in proptest::array::uniform8(-40.0..40.0f64)) {
            let m = moved;
            let points = [
                (m[0], m[1]),
                (3000.0 + m[2], m[3]),
                (3000.0 + m[4], 800.0 + m[5]),
                (m[6], 800.0 + m[7]),
            ];
            let fit = quadrilateral(points, [0.0; 6]).adjust().unwrap();
            prop_assert!(fit.residuals.iter().all(|r| r.abs() < 1e-7), "{:?}", fit.residuals);
        }

        #[test]
        fn a_rigid_motion_changes_nothing(
            errors in proptest::array::uniform6(-3.0..3.0f64),
            turn in -3.0..3.0f64,
            shift in proptest::array::uniform2(-5000.0..5000.0f64),
        ) {
            let at = [(0.0, 0.0), (2990.0, 4.0), (3010.0, 808.0), (-6.0, 795.0)];
            let here = quadrilateral(at, errors);
            let motion = nalgebra::Isometry2::new(Vector2::new(shift[0], shift[1]), turn);
            let mut there = here.clone();
            there.points = here.points.iter().map(|p| motion * p).collect();
            let (a, b) = (here.adjust().unwrap(), there.adjust().unwrap());
            for (x, y) in a.residuals.iter().zip(&b.residuals) {
                prop_assert!((x - y).abs() < 1e-6);
            }
            // The checks add up to the redundancy.
            prop_assert!((a.checks.iter().sum::<f64>() - 1.0).abs() < 1e-9);
        }
    }
}
