//! The plan: where everything stands, before anything is a solid. Datums that several parts share live here.
//!
//! World coordinates are millimetres: x along the first run, y away from its working side, z up from the datum. The
//! first run's working face of the frame is y = 0, its left end x = 0.

mod face;
mod level;
mod run;

pub use face::{Corner, Face, FaceOpening, Steel};
pub use level::PlanLevels;
pub use run::RunPlan;

use crate::design::Design;

/// The planned island.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What was asked for.
    pub design: Design,
    /// Heights.
    pub levels: PlanLevels,
    /// The runs, in the order of the design.
    pub runs: Vec<RunPlan>,
    /// The faces in counter-clockwise order round the island, starting with the first run's working face. There are
    /// two for each run and the two ends. Each face begins where the one before it ends.
    pub faces: Vec<Face>,
}
