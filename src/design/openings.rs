//! Appliances in the counter and openings in the faces.

use super::{Hardware, Placed, Rating, Side};
use crate::diagnostics::Place;
use crate::units::Length;

/// Where along a run the middle of something stands.
#[derive(Clone, Debug, PartialEq)]
pub enum Station {
    /// So far from the run's left end to the middle.
    FromLeft(Length),
    /// So far from the run's right end to the middle.
    FromRight(Length),
}

/// Whether an appliance breaks the working face.
#[derive(Clone, Debug, PartialEq)]
pub enum Front {
    /// The counter goes round it on all sides.
    Closed {
        /// From the working face of the frame to the cutout.
        setback: Placed<Length>,
    },
    /// Its control panel breaks the face: the cutout is open to the counter's front edge.
    Open {
        /// How far the panel reaches below the top of the counter.
        panel_height: Placed<Length>,
        /// From the working face of the frame back to the far edge of the cutout.
        reach: Placed<Length>,
    },
}

/// A drop-in appliance.
#[derive(Clone, Debug, PartialEq)]
pub struct Appliance {
    /// Its name, unique.
    pub name: String,
    /// What it is, as written: grill, sink, ice well …
    pub kind: String,
    /// Its entry in the file.
    pub place: Place,
    /// Number of its run.
    pub run: usize,
    /// Middle of the cutout along the run.
    pub station: Placed<Station>,
    /// Cutout along the run.
    pub cutout_width: Placed<Length>,
    /// Cutout front to back.
    pub cutout_depth: Placed<Length>,
    /// Radius of the cutout's corners.
    pub corner_radius: Placed<Length>,
    /// Body along the run.
    pub body_width: Placed<Length>,
    /// Body front to back.
    pub body_depth: Placed<Length>,
    /// How far the body reaches below the top of the counter.
    pub body_height: Placed<Length>,
    /// How far its flange lies over the counter beyond the cutout.
    pub flange: Placed<Length>,
    /// Whether it breaks the front.
    pub front: Front,
    /// What its instructions say beyond its sizes.
    pub rating: Rating,
}

/// What an opening is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OpeningKind {
    /// One or two leaves.
    Door,
    /// A stack of drawers.
    Drawer,
    /// An access hatch.
    Hatch,
    /// An appliance built in below the counter, such as a refrigerator.
    Undercounter,
    /// A vent.
    Vent,
    /// A receptacle box.
    Receptacle,
}

impl OpeningKind {
    /// True when the opening is framed with jambs, header and sill; a vent or a box is only cut through the board.
    pub fn is_framed(self) -> bool {
        !matches!(self, Self::Vent | Self::Receptacle)
    }

    /// Its name in messages and on drawings.
    pub fn name(self) -> &'static str {
        match self {
            Self::Door => "door",
            Self::Drawer => "drawer",
            Self::Hatch => "hatch",
            Self::Undercounter => "undercounter appliance",
            Self::Vent => "vent",
            Self::Receptacle => "receptacle",
        }
    }
}

/// A hole in a face.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Its name, unique.
    pub name: String,
    /// What it is for.
    pub kind: OpeningKind,
    /// Its entry in the file.
    pub place: Place,
    /// Number of its run.
    pub run: usize,
    /// Which face. On the left and right end, the station is measured along the run's depth: `FromLeft` from the
    /// working side, `FromRight` from the seating side.
    pub side: Side,
    /// Middle of the opening.
    pub station: Placed<Station>,
    /// Clear width of the rough opening.
    pub width: Placed<Length>,
    /// Clear height of the rough opening.
    pub height: Placed<Length>,
    /// Its lower edge above the datum.
    pub sill: Placed<Length>,
    /// How far its flange lies over the finished face beyond the opening.
    pub flange: Placed<Length>,
    /// How far what fills it reaches behind the face; zero for a plain door.
    pub body_depth: Placed<Length>,
    /// What fills it.
    pub hardware: Hardware,
}
