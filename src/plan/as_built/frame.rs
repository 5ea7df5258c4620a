//! What is known of the frame once its readings are fitted.

use super::{Push, Slip};
use crate::design::{FrameCorner, Taped};
use crate::geometry::Point2;
use crate::plan::{Face, Panel, RunPlan};

/// The frame as it was measured.
///
/// Invariant: one entry of `runs` for each run of the plan, in its order.
#[derive(Clone, Debug, PartialEq)]
pub struct FrameAsBuilt {
    /// The runs.
    pub runs: Vec<RunAsBuilt>,
    /// The readings that are likely wrong and were set aside, the worst first.
    pub suspects: Vec<Suspect>,
    /// How many readings there are beyond those that give the shape.
    pub redundancy: usize,
    /// The standard deviation that a reading was given, millimetres: one division of the tape.
    pub deviation: f64,
    /// Whether faces and counter follow it.
    pub follow: Follow,
}

/// Whether what is built on the frame follows the frame as measured.
#[derive(Clone, Debug, PartialEq)]
pub enum Follow {
    /// Faces, boards, counter, forms and template follow; the plan's own lines are kept beside them.
    Measured(Box<Planned>),
    /// The frame stands as planned.
    AsPlanned,
    /// No run could be solved.
    Unsolved,
    /// A corner of this run stands so far from where the plan has it that the plan must be changed, millimetres.
    TooFar {
        /// Number of the run.
        run: usize,
        /// How far.
        off: f64,
    },
    /// The counter cannot be made on it; what stands in the way, in words.
    NoCounter(String),
}

/// Runs, faces and panels as they were before they followed.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// The runs.
    pub runs: Vec<RunPlan>,
    /// The faces.
    pub faces: Vec<Face>,
    /// The panels.
    pub panels: Vec<Panel>,
}

/// One run as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct RunAsBuilt {
    /// Its number among the measured runs of the design; `None` where it was not measured.
    pub measured: Option<usize>,
    /// True when its readings gave a shape; otherwise it is taken as planned.
    pub solved: bool,
    /// Its corners in the world, in the order of [`FrameCorner::ALL`].
    pub corners: [Point2; 4],
    /// Its lengths in the order of [`Taped::ALL`].
    pub lengths: [TapedLength; 6],
    /// How far each corner stands from where the plan has it when the run is laid on its own working side, millimetres.
    pub off: [f64; 4],
    /// What squares it.
    pub push: Push,
}

/// A length of a run as it was read, fitted and planned, millimetres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TapedLength {
    /// What the tape read.
    pub read: Option<f64>,
    /// What the fit gives.
    pub adjusted: f64,
    /// What the plan has.
    pub planned: f64,
    /// How much of an error in the reading shows, 0 to 1.
    pub checked: f64,
    /// True when the reading is likely wrong and was set aside.
    pub aside: bool,
}

/// A reading that is likely wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suspect {
    /// Number of its run.
    pub run: usize,
    /// What was taped.
    pub taped: Taped,
    /// What it reads, millimetres.
    pub read: f64,
    /// What the other readings and the plan say, millimetres.
    pub others: f64,
    /// What it looks like.
    pub slip: Option<Slip>,
    /// Another reading that may as well be the wrong one.
    pub rival: Option<(usize, Taped)>,
}

impl FrameAsBuilt {
    /// The plan's own lines, where faces and counter follow the measured ones.
    pub fn planned(&self) -> Option<&Planned> {
        match &self.follow {
            Follow::Measured(planned) => Some(planned),
            _ => None,
        }
    }
}

impl TapedLength {
    /// The fitted length less the reading; `None` without one.
    pub fn residual(&self) -> Option<f64> {
        self.read.map(|r| self.adjusted - r)
    }

    /// The fitted length less the plan's.
    pub fn difference(&self) -> f64 {
        self.adjusted - self.planned
    }
}

impl RunAsBuilt {
    /// A corner in the world.
    pub fn corner(&self, corner: FrameCorner) -> Point2 {
        self.corners[corner as usize]
    }

    /// A length.
    pub fn length(&self, taped: Taped) -> &TapedLength {
        &self.lengths[taped as usize]
    }

    /// The angle inside the run at a corner, radians.
    pub fn angle(&self, corner: FrameCorner) -> f64 {
        let i = corner as usize;
        let (at, next, before) = (
            self.corners[i],
            self.corners[(i + 1) % 4],
            self.corners[(i + 3) % 4],
        );
        let (a, b) = (next - at, before - at);
        a.perp(&b).atan2(a.dot(&b))
    }

    /// By how much its diagonals differ, that from the working side's left corner less the other, millimetres.
    pub fn out_of_square(&self) -> f64 {
        self.length(Taped::FromWorkingLeft).adjusted - self.length(Taped::FromWorkingRight).adjusted
    }

    /// The largest of `off`.
    pub fn farthest_off(&self) -> f64 {
        self.off.iter().copied().fold(0.0, f64::max)
    }
}
