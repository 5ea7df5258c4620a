//! Hidden-line removal in object space: which pieces of which edges an orthographic view shows.
//!
//! Edges worth drawing ([`Shape`]) are the creases between two surfaces and the silhouettes; every one is cut against
//! the triangles that lie nearer to the eye ([`Screen`]), found through a tree of boxes, so that the work grows nearly
//! in proportion to what is in the view. What is left is [`merge`]d: no line is drawn twice. Hidden
//! pieces ([`with_hidden`]) give way to visible lines ([`behind`]).

mod behind;
mod clip;
mod line;
mod look;
mod merge;
mod screen;
mod shape;
mod view;

pub use behind::behind;
pub use line::Line;
pub use look::{Depths, Effort, Placed, effort, visible, with_hidden};
pub use merge::{Stroke, merge};
pub use screen::Screen;
pub use shape::Shape;
pub use view::{Corner, View};
