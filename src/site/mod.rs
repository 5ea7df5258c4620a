//! The site: the ground under the island, the frame as it stands, the pour and the order of work.

pub mod ground;
pub mod pour;
pub mod standing;
pub mod work;

use crate::parts::Assembly;
use crate::plan::Plan;

/// Everything that is reckoned of the site.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Site {
    /// The ground, where it was measured.
    pub ground: Option<ground::Ground>,
    /// How the frame is set out, and how it stands where it was measured.
    pub standing: standing::Standing,
    /// How the concrete and the coats are mixed, when they are placed and how they set.
    pub pour: pour::PourPlan,
    /// What is done when.
    pub work: work::Order,
}

/// Reckons the site; `mixed` is what is mixed of the bags that are bought.
pub fn reckon(plan: &Plan, assembly: &Assembly, mixed: &[pour::Mixed]) -> Site {
    let pour = pour::reckon(plan, mixed);
    let work = work::reckon(plan, assembly, &pour);
    Site {
        ground: ground::reckon(plan, assembly),
        standing: standing::reckon(plan),
        pour,
        work,
    }
}
