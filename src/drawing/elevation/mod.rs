//! Elevations: each face as finished, and the framing behind it.

mod cut;
mod finished;
mod framing;
mod heights;
mod listed;
mod panel_view;

pub use listed::{finished, finished_planned, framing, framing_planned};
pub use panel_view::PanelView;
