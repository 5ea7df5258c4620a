//! Everything that the setting-out sheet shows, reckoned.

use super::points::{place, planned, points, side_words};
use super::{Raise, SetPoint, SquareMark, raises};
use crate::design::{Side, Taped};
use crate::geometry::Point2;
use crate::plan::Plan;

/// The frame on the ground.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Standing {
    /// The corner points.
    pub points: Vec<SetPoint>,
    /// What is taped between them.
    pub lengths: Vec<SetLength>,
    /// A right angle at each corner of the frame.
    pub squares: Vec<SquareMark>,
    /// How high the corners stand, where that was measured.
    pub raises: Vec<Raise>,
}

/// A length between two points, as planned.
#[derive(Clone, Debug, PartialEq)]
pub struct SetLength {
    /// What it is.
    pub of: SetLengthOf,
    /// Numbers of its points.
    pub ends: [usize; 2],
    /// How long it is, millimetres.
    pub length: f64,
}

/// What a length between two points is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetLengthOf {
    /// A side or diagonal of a run.
    Run(usize, Taped),
    /// A side of the whole frame that is not a run's own, from corner to corner: its run and side.
    Side(usize, Side),
    /// Across the whole island.
    Overall,
}

impl SetLength {
    /// What it is, in words.
    pub fn words(&self, plan: &Plan) -> String {
        match self.of {
            SetLengthOf::Run(run, taped) => {
                format!("{} run, {}", plan.design.runs[run].name.value, taped.name())
            }
            SetLengthOf::Side(run, side) => {
                format!("{}, to the inner corner", side_words(plan, run, side))
            }
            SetLengthOf::Overall => "across the whole island".to_owned(),
        }
    }
}

/// Reckons how the frame is set out and how it stands.
pub fn reckon(plan: &Plan) -> Standing {
    let points = points(plan);
    Standing {
        lengths: lengths(plan, &points),
        squares: squares(plan, &points),
        raises: raises(plan),
        points,
    }
}

fn lengths(plan: &Plan, points: &[SetPoint]) -> Vec<SetLength> {
    let (runs, faces) = planned(plan);
    let mut found: Vec<SetLength> = Vec::new();
    let mut add = |of: SetLengthOf, from: Point2, to: Point2| {
        let number = |at: Point2| points.iter().position(|p| (p.at - at).norm() < 0.01);
        let (Some(a), Some(b)) = (number(from), number(to)) else {
            return;
        };
        let is_there = found.iter().any(|l| l.ends == [a, b] || l.ends == [b, a]);
        if !is_there && a != b {
            let length = (to - from).norm();
            let ends = [a, b];
            found.push(SetLength { of, ends, length });
        }
    };
    for (i, run) in runs.iter().enumerate() {
        for taped in Taped::ALL {
            let [a, b] = taped.ends().map(|c| place(run, c));
            add(SetLengthOf::Run(i, taped), a, b);
        }
    }
    for face in faces {
        let (from, to) = (face.start, face.point(face.length, 0.0));
        add(SetLengthOf::Side(face.run, face.side), from, to);
    }
    if let (Some(first), Some(last), true) = (runs.first(), runs.last(), runs.len() > 1) {
        let near = [first.point(0.0, 0.0), first.point(0.0, first.depth)];
        let far = [
            last.point(last.length, 0.0),
            last.point(last.length, last.depth),
        ];
        for a in near {
            for b in far {
                add(SetLengthOf::Overall, a, b);
            }
        }
    }
    found
}

/// A mark at each corner of the frame, on the two faces that meet there.
fn squares(plan: &Plan, points: &[SetPoint]) -> Vec<SquareMark> {
    let faces = planned(plan).1;
    let n = faces.len();
    let at = |face: usize| points.iter().position(|p| p.face == Some(face % n));
    let marks = (0..n).filter_map(|i| {
        let before = &faces[(i + n - 1) % n];
        let (here, next, last) = (at(i)?, at(i + 1)?, at(i + n - 1)?);
        let notation = plan.design.project.units;
        SquareMark::new(
            here,
            (next, faces[i].length),
            (last, before.length),
            notation,
        )
    });
    marks.collect()
}
