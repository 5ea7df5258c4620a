//! A layer before it is cut to the bed and laid down.

use super::{Bar, Layer};
use crate::design::Printer;
use crate::mesh::body::{Body, on_grid};

/// The sizes that every layer is made by, millimetres of the print.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sizes {
    /// How many times smaller than the island.
    pub(super) scale: f64,
    /// The thinnest wall.
    pub(super) wall: f64,
    /// The gap on each side between pieces that go into each other.
    pub(super) clearance: f64,
}

impl Sizes {
    pub(super) fn of(printer: &Printer, scale: f64) -> Self {
        // A wall rounded to the grid must not be thinner than what was asked for.
        let wall = (printer.wall.mm() * crate::mesh::body::GRID).ceil() / crate::mesh::body::GRID;
        Self {
            scale,
            wall,
            clearance: on_grid(printer.clearance.mm()),
        }
    }

    /// A length of the island on the print's grid.
    pub(super) fn scaled(&self, millimetres: f64) -> f64 {
        on_grid(millimetres / self.scale)
    }
}

/// A layer in the model's place: its coordinates are the island's, as many times smaller.
pub(super) struct Rough {
    pub(super) layer: Layer,
    pub(super) body: Body,
    /// The members in it, for a frame.
    pub(super) bars: Vec<Bar>,
}
