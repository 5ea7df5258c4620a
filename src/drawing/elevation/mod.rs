//! Elevations: each face as finished, and the framing behind it.

mod finished;
mod framing;
mod heights;

pub use finished::finished;
pub use framing::framing;
