//! The ground under the island, and what stands around it.

use crate::plan::Plan;

/// The ground as it was measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ground {}

/// Reckons the ground; `None` where it was not measured.
pub fn reckon(plan: &Plan) -> Option<Ground> {
    plan.design.site.survey.as_ref().map(|_| Ground {})
}
