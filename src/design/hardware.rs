//! What goes into an opening: leaves, drawers, louvres, boxes.

use super::Placed;
use crate::units::{Length, Mass, Volume};

/// How a leaf is hung, as seen from outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hinge {
    /// On its left edge.
    Left,
    /// On its right edge.
    Right,
    /// Two leaves, each on its outer edge.
    Pair,
    /// On its lower edge.
    Bottom,
    /// On its upper edge.
    Top,
    /// Not at all: it is lifted off.
    None,
}

/// What shuts off a receptacle's circuit when current leaks to earth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Protection {
    /// A ground-fault circuit interrupter, or residual-current device.
    GroundFault,
    /// Nothing.
    None,
}

/// What keeps the weather off a receptacle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cover {
    /// Weatherproof while something is plugged in.
    InUse,
    /// Weatherproof only when shut.
    Flap,
    /// Nothing.
    None,
}

/// What is in a device box.
#[derive(Clone, Debug, PartialEq)]
pub struct BoxFill {
    /// The volume marked in the box.
    pub volume: Placed<Volume>,
    /// The wire's size, American wire gauge.
    pub gauge: Placed<u32>,
    /// Conductors that come in from outside and end or are spliced there, earthing conductors not counted.
    pub conductors: Placed<u32>,
    /// Earthing (grounding) conductors.
    pub grounds: u32,
    /// Receptacles and switches on a yoke.
    pub devices: u32,
    /// True when cable clamps are inside the box.
    pub clamps: bool,
}

/// What is known of what fills an opening. What the file does not say is `None`.
#[derive(Clone, Debug, PartialEq)]
pub struct Hardware {
    /// How wide what fills it is.
    pub body_width: Option<Placed<Length>>,
    /// How high what fills it is.
    pub body_height: Option<Placed<Length>>,
    /// How its leaf is hung.
    pub hinge: Placed<Hinge>,
    /// How far a drawer comes out.
    pub travel: Placed<Length>,
    /// True when it opens without tools.
    pub by_hand: Placed<bool>,
    /// The part of a vent's opening that lets air through.
    pub free_area: Option<Placed<f64>>,
    /// How heavy what fills it is.
    pub weight: Option<Placed<Mass>>,
    /// Protection of a receptacle.
    pub protection: Option<Placed<Protection>>,
    /// Cover of a receptacle.
    pub cover: Option<Placed<Cover>>,
    /// True when a receptacle is of the weather-resistant type.
    pub weather_resistant: Option<Placed<bool>>,
    /// What is in its box.
    pub box_fill: Option<Placed<BoxFill>>,
}

impl Default for Hardware {
    /// Two leaves that open by hand; nothing else known.
    fn default() -> Self {
        Self {
            body_width: None,
            body_height: None,
            hinge: plain(Hinge::Pair),
            travel: plain(Length::ZERO),
            by_hand: plain(true),
            free_area: None,
            weight: None,
            protection: None,
            cover: None,
            weather_resistant: None,
            box_fill: None,
        }
    }
}

fn plain<T>(value: T) -> Placed<T> {
    Placed {
        value,
        place: crate::diagnostics::Place::default(),
    }
}
