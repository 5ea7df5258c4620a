//! Sheets of board and plywood as the workshop needs them told.

use crate::units::Length;

/// All sheets of one material.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardSet {
    /// The material and how many sheets of which size, as a heading.
    pub title: String,
    /// Whether its grain runs along the long side.
    pub grain: bool,
    /// The sheets in the order they are cut.
    pub boards: Vec<Board>,
}

/// One sheet and its pieces.
///
/// Invariant: no piece and no offcut overlaps another or reaches past the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Board {
    /// Its number in the list of sheets.
    pub number: u32,
    /// The long side, along x.
    pub length: Length,
    /// The short side, along y.
    pub width: Length,
    /// The pieces.
    pub pieces: Vec<BoardPiece>,
    /// What is left over.
    pub offcuts: Vec<Rectangle>,
    /// The cuts in the order they are made.
    pub cuts: Vec<BoardCut>,
}

/// A rectangle of a sheet, from its lower left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rectangle {
    /// Left edge.
    pub x: Length,
    /// Lower edge.
    pub y: Length,
    /// Along x.
    pub dx: Length,
    /// Along y.
    pub dy: Length,
}

/// One piece.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardPiece {
    /// Where it lies.
    pub area: Rectangle,
    /// Its mark.
    pub mark: String,
    /// What else is to be done to it, such as an opening; may be empty.
    pub note: String,
}

/// One straight cut, from edge to edge of what it parts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoardCut {
    /// Where it begins.
    pub from: (Length, Length),
    /// Where it ends.
    pub to: (Length, Length),
}
