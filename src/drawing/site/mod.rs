//! Sheets for the yard: setting out, shims, the pour and the order of work.
//!
//! What they show is reckoned elsewhere and comes as plain values ([`SiteSheets`]).

pub mod pour;
pub mod setting_out;
pub mod shims;
pub mod work;

/// What the sheets for the yard show; a sheet without values is not drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SiteSheets {
    /// How the frame is set out.
    pub setting_out: Option<setting_out::SettingOut>,
    /// The ground and its shims.
    pub shims: Option<shims::ShimPlan>,
    /// The pour.
    pub pour: Option<pour::PourSheet>,
    /// The order of work.
    pub work: Option<work::WorkSheet>,
}
