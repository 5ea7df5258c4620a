//! Title, trade choices, heights, tile band and printing.

use super::Placed;
use crate::catalog::{Paper, SteelSection};
use crate::units::{Colour, Length, Notation};

/// What the title block says; free text from the file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Project {
    /// What is built.
    pub title: String,
    /// Where.
    pub place: String,
    /// By whom drawn.
    pub drawn_by: String,
    /// Which revision.
    pub revision: String,
    /// The date as written; no clock is read.
    pub date: String,
    /// How lengths are spelt.
    pub units: Notation,
}

/// What the island is built of.
#[derive(Clone, Debug, PartialEq)]
pub struct Trade {
    /// Studs, jambs, cripples, ties, trimmers and blocking.
    pub stud: Placed<SteelSection>,
    /// Bottom and top tracks, headers and sills.
    pub track: Placed<SteelSection>,
    /// Studs on centre, at most.
    pub stud_spacing: Placed<Length>,
    /// How far a header's or tie's web is folded onto what it meets.
    pub tab: Placed<Length>,
    /// A board sheet: long side.
    pub board_length: Placed<Length>,
    /// A board sheet: short side.
    pub board_width: Placed<Length>,
    /// Board thickness.
    pub board_thickness: Placed<Length>,
    /// The gap left at board joints.
    pub board_gap: Placed<Length>,
    /// Base coat thickness.
    pub base_coat: Placed<Length>,
    /// Finish coat thickness.
    pub finish_coat: Placed<Length>,
    /// Colour of the finish coat in the models.
    pub finish_colour: Placed<Colour>,
    /// Sleeper, across.
    pub sleeper_width: Placed<Length>,
    /// Sleeper, high.
    pub sleeper_height: Placed<Length>,
    /// The screw that joins the steel, as written.
    pub fastener: String,
    /// What the counter is cast on, as written.
    pub substrate: String,
    /// Its thickness.
    pub substrate_thickness: Placed<Length>,
    /// The slab's mix, as written.
    pub slab_mix: String,
}

impl Trade {
    /// Board and coats together: from the frame to the finished face.
    pub fn cladding(&self) -> Length {
        self.board_thickness.value + self.base_coat.value + self.finish_coat.value
    }
}

/// Heights.
#[derive(Clone, Debug, PartialEq)]
pub struct Levels {
    /// Top of the finished counter above the datum.
    pub counter: Placed<Length>,
    /// From the datum to the underside of the bottom track; sleepers and shims stand in it.
    pub base_gap: Placed<Length>,
}

/// A band of tile at the top of the finished faces.
#[derive(Clone, Debug, PartialEq)]
pub struct TileBand {
    /// Height of the band, downwards from the top of the cladding.
    pub height: Placed<Length>,
    /// A tile along the face.
    pub tile_width: Placed<Length>,
    /// A tile up the face.
    pub tile_height: Placed<Length>,
    /// A tile with its bed, measured from the base coat.
    pub tile_thickness: Placed<Length>,
    /// The joint between tiles.
    pub joint: Placed<Length>,
}

/// How the full-size template is printed.
#[derive(Clone, Debug, PartialEq)]
pub struct Printing {
    /// The paper as it lies in the printer, or [`Paper::roll`].
    pub paper: Placed<Lettered<Paper>>,
    /// Unprintable border, all round.
    pub margin: Placed<Length>,
    /// How much neighbouring pages share.
    pub overlap: Placed<Length>,
    /// The calibration bar across, as drawn and as measured on a print; equal when not measured.
    pub bar_x: (Length, Length),
    /// The calibration bar up the page, likewise.
    pub bar_y: (Length, Length),
}

/// A value together with the name it goes by.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lettered<T> {
    /// Its name, such as `A4`.
    pub name: String,
    /// The value.
    pub value: T,
}
