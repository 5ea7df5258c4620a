//! How the drawing set is drawn.

use super::Placed;
use crate::catalog::Paper;
use crate::units::Length;

/// With what sheets are drawn. Nothing on them relies on colour: black ink loses nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ink {
    /// Black on white: for any printer.
    #[default]
    Black,
    /// Each layer in its colour.
    Colour,
}

/// A section that the file asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct AskedCut {
    /// Number of the run it crosses.
    pub run: usize,
    /// From the run's left end to the plane.
    pub at: Placed<Length>,
}

/// What a cell of the title block holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// What is built.
    Project,
    /// Where.
    Place,
    /// By whom drawn.
    DrawnBy,
    /// The date as the file has it.
    Date,
    /// The revision.
    Revision,
    /// What the sheet shows.
    Title,
    /// Its number, and of how many.
    Sheet,
    /// Its scale.
    Scale,
    /// How lengths are spelt.
    Units,
    /// Nothing: room for a hand-written entry or a stamp.
    Blank,
}

/// One cell of the title block.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// What it holds.
    pub field: Field,
    /// The words over it; may be empty.
    pub label: String,
    /// How wide it is.
    pub width: Length,
}

/// The form of the title block: rows of cells from the top.
///
/// Invariant: at least one row; every row is as wide as the block.
#[derive(Clone, Debug, PartialEq)]
pub struct TitleBlock {
    /// How wide it is.
    pub width: Length,
    /// How high a row is.
    pub row_height: Length,
    /// The rows.
    pub rows: Vec<Vec<Cell>>,
}

impl TitleBlock {
    /// How high the whole block is.
    pub fn height(&self) -> Length {
        self.row_height * self.rows.len() as f64
    }
}

/// How the drawing set is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawings {
    /// The paper, lying.
    pub paper: Placed<Paper>,
    /// With what.
    pub ink: Ink,
    /// Degrees clockwise, seen from above, from the direction away from the cook of the first run to north; `None` where
    /// the file does not say.
    pub north: Option<f64>,
    /// Sections beside the usual ones.
    pub sections: Vec<AskedCut>,
    /// The title block.
    pub title_block: TitleBlock,
}
