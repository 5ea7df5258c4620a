//! What the set is told beside the plan.

use crate::drawing::site::SiteSheets;

/// What the sheets show that is reckoned neither by the plan nor by the drawing itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Told {
    /// What the checks ask to be careful of, a sentence each: the general notes letter it.
    pub cautions: Vec<String>,
    /// What the sheets for the yard show.
    pub site: SiteSheets,
}
