//! What the pour sheet shows.

use crate::drawing::site::pour::PourSheet;
use crate::plan::Plan;
use crate::site::pour::PourPlan;

/// What the pour sheet shows.
pub(in crate::pipeline) fn sheet(_: &Plan, _: &PourPlan) -> Option<PourSheet> {
    None
}
