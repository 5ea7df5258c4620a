//! Elevations: each face as finished, and the framing behind it.

mod cut;
mod finished;
mod framing;
mod heights;
mod panel_view;

pub use finished::finished;
pub use framing::framing;
pub use panel_view::PanelView;
