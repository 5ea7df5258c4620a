//! Elevations: each face as finished, and the framing behind it.

mod cut;
mod finished;
mod framing;
mod heights;
mod listed;
mod panel_view;
mod parts;
mod reach;
mod stretch;
mod window;

pub use listed::{FINISHED, FRAMING, finished, finished_planned, framing, framing_planned};
pub use panel_view::PanelView;
