//! From where a model is looked at: named views.

use crate::geometry::{Bounds3, Placement, Point3, Vector3};
use crate::plan::Plan;
use nalgebra::{Rotation3, UnitQuaternion};

/// Height of what a view in perspective takes in, as an angle: that of a usual lens, 40 degrees.
pub const FIELD: f64 = 0.698_131_700_797_731_8;
/// A front is looked at from so far above level, radians (25 degrees): over a run that stands opposite.
const FRONT_RISE: f64 = 0.436_332_312_998_582_4;
/// The corner is looked at from so far above level, radians (30 degrees).
const CORNER_RISE: f64 = 0.523_598_775_598_298_8;
/// The corner is looked at from so far beside the working sides, radians (35 degrees).
const CORNER_TURN: f64 = 0.610_865_238_198_015_3;
/// Room round what is looked at, as a share of it.
const AIR: f64 = 1.15;

/// How a view is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lens {
    /// In perspective, [`FIELD`] high and at least as wide.
    Perspective,
    /// Without perspective, so many millimetres from the middle of the picture to its edges.
    Parallel {
        /// To the left and right edge.
        across: f64,
        /// To the lower and upper edge.
        up: f64,
    },
}

/// A named view of the island.
#[derive(Clone, Debug, PartialEq)]
pub struct Viewpoint {
    /// What it shows, such as `cook run, front`; unique.
    pub name: String,
    /// Where the eye is, millimetres.
    pub eye: Point3,
    /// Where it looks, millimetres.
    pub target: Point3,
    /// How it is drawn.
    pub lens: Lens,
    /// From the eye to the farthest that it must see, millimetres.
    pub reach: f64,
}

impl Viewpoint {
    /// The front of each run, one corner and the top, of an island that fills a box. None where there is no island.
    pub fn all(plan: &Plan, island: &Bounds3) -> Vec<Self> {
        let mut all: Vec<_> = (0..plan.runs.len())
            .map(|r| front(plan, r, island))
            .collect();
        all.push(corner(plan, island));
        all.push(top(island));
        all
    }

    /// The place of a camera that looks along its own −z with its own y up.
    pub fn placement(&self) -> Placement {
        let back = self.eye - self.target;
        // Seen from straight above, what is away from the cook of the first run is up on the picture.
        let up = if back.xy().norm() < 1e-6 * back.norm() {
            Vector3::y()
        } else {
            Vector3::z()
        };
        let turned = UnitQuaternion::from_rotation_matrix(&Rotation3::face_towards(&back, &up));
        Placement::from_parts(self.eye.coords.into(), turned)
    }

    /// Looks at the middle of a box from a direction, just so far away that all of it is seen, however narrow the picture.
    fn around(name: String, of: &Bounds3, direction: Vector3, island: &Bounds3) -> Self {
        let target = nalgebra::center(&of.low, &of.high);
        let mut view = Self {
            name,
            eye: target + direction,
            target,
            lens: Lens::Perspective,
            reach: 0.0,
        };
        let camera = view.placement().rotation.inverse();
        let edge = (FIELD / 2.0).tan() / AIR;
        let distance = of
            .corners()
            .into_iter()
            .map(|corner| camera * (corner - target))
            .map(|at| at.z + at.x.abs().max(at.y.abs()) / edge)
            .fold(0.0, f64::max);
        view.eye = target + direction.normalize() * distance;
        let eye = view.eye;
        view.reach = island
            .corners()
            .into_iter()
            .map(|c| (c - eye).norm())
            .fold(0.0, f64::max)
            * AIR;
        view
    }
}

fn front(plan: &Plan, number: usize, island: &Bounds3) -> Viewpoint {
    let run = &plan.runs[number];
    let ground = run.bounds();
    let of = Bounds3 {
        low: Point3::new(ground.low.x, ground.low.y, island.low.z),
        high: Point3::new(ground.high.x, ground.high.y, island.high.z),
    };
    let towards = -run.away;
    let direction = Vector3::new(towards.x, towards.y, FRONT_RISE.tan());
    let name = plan.design.runs.get(number).map_or("", |r| &r.name.value);
    Viewpoint::around(format!("{name} run, front"), &of, direction, island)
}

/// From the side of the working faces, the longer ones counting more, and a little to the right.
fn corner(plan: &Plan, island: &Bounds3) -> Viewpoint {
    let sum = |a: nalgebra::Vector2<f64>, run: &crate::plan::RunPlan| a - run.away * run.length;
    let working = plan.runs.iter().fold(nalgebra::Vector2::zeros(), sum);
    let towards = working
        .try_normalize(1e-6)
        .unwrap_or(-nalgebra::Vector2::y());
    let turned = nalgebra::Rotation2::new(CORNER_TURN) * towards;
    let direction = Vector3::new(turned.x, turned.y, CORNER_RISE.tan());
    Viewpoint::around("corner".to_owned(), island, direction, island)
}

fn top(island: &Bounds3) -> Viewpoint {
    let size = island.high - island.low;
    let view = Viewpoint::around("top".to_owned(), island, Vector3::z(), island);
    Viewpoint {
        lens: Lens::Parallel {
            across: size.x / 2.0 * AIR,
            up: size.y / 2.0 * AIR,
        },
        ..view
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Turn, sample};

    fn l_shaped() -> (Plan, Bounds3) {
        let runs = vec![
            sample::run("ash", 3000.0, None, &[]),
            sample::run("birch", 2000.0, Some(Turn::Right), &[]),
        ];
        let plan = crate::plan::lay_out(sample::design(runs)).unwrap();
        let bounds = Bounds3 {
            low: Point3::new(-50.0, -1300.0, 0.0),
            high: Point3::new(3050.0, 750.0, 900.0),
        };
        (plan, bounds)
    }

    #[test]
    fn each_run_has_a_front_and_the_island_a_corner_and_a_top() {
        let (plan, bounds) = l_shaped();
        let names: Vec<_> = Viewpoint::all(&plan, &bounds)
            .into_iter()
            .map(|v| v.name)
            .collect();
        assert_eq!(
            names,
            ["ash run, front", "birch run, front", "corner", "top"]
        );
    }

    #[test]
    fn the_cook_sees_the_front() {
        let (plan, bounds) = l_shaped();
        let views = Viewpoint::all(&plan, &bounds);
        // The first run's working side looks towards −y; a turn to the right makes the second's look towards −x.
        assert!(views[0].eye.y < -1000.0 && (views[0].eye.x - 1500.0).abs() < 1e-6);
        assert!(views[1].eye.x < 1000.0);
        assert!(views[2].eye.x < 3050.0 && views[2].eye.y < 0.0 && views[2].eye.z > 900.0);
    }

    #[test]
    fn every_view_takes_in_what_it_shows() {
        let (plan, bounds) = l_shaped();
        for view in &Viewpoint::all(&plan, &bounds)[2..] {
            let camera = view.placement();
            for corner in bounds.corners() {
                let seen = camera.inverse() * corner;
                assert!(seen.z < 0.0 && -seen.z < view.reach);
                let (x, y) = match view.lens {
                    Lens::Perspective => {
                        let edge = (FIELD / 2.0).tan() * -seen.z;
                        (seen.x / edge, seen.y / edge)
                    }
                    Lens::Parallel { across, up } => (seen.x / across, seen.y / up),
                };
                assert!(x.abs() < 1.0 && y.abs() < 1.0, "{}: {x}, {y}", view.name);
            }
        }
    }

    #[test]
    fn the_top_has_what_is_away_from_the_cook_at_its_upper_edge() {
        let (plan, bounds) = l_shaped();
        let camera = Viewpoint::all(&plan, &bounds)[3].placement();
        assert!((camera * Vector3::y() - Vector3::y()).norm() < 1e-9);
        assert!((camera * Vector3::z() - Vector3::z()).norm() < 1e-9);
    }
}
