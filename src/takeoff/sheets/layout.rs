//! Sheets as they are cut.

use super::piece::SheetPiece;
use super::stock::StockSheet;
use crate::takeoff::nesting::{Answer, Demand, Problem, Sheet, Stock};

/// One sheet as it is cut. Everything is in steps from its lower left corner, its length along x.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetLayout {
    /// Which of the stock.
    pub stock: usize,
    /// The pieces on it, in the order that they come free.
    pub pieces: Vec<OnSheet>,
    /// What is left over.
    pub offcuts: Vec<Offcut>,
    /// The cuts in the order they are made, each from edge to edge of what it parts, from point to point along the lower
    /// or left side of the kerf.
    pub cuts: Vec<(u32, u32, u32, u32)>,
}

/// A piece on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnSheet {
    /// Which of the list's pieces.
    pub piece: usize,
    /// Its lower left corner.
    pub at: (u32, u32),
    /// Its sides along and across the sheet.
    pub size: (u32, u32),
    /// Whether it lies turned by a quarter.
    pub turned: bool,
}

/// What is left of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offcut {
    /// Its lower left corner.
    pub at: (u32, u32),
    /// Its sides along and across the sheet.
    pub size: (u32, u32),
}

/// The problem that a list of pieces is; costs are cents, or square steps where a sheet has no price.
pub(super) fn problem(pieces: &[SheetPiece], stock: &[StockSheet], kerf: u32) -> Problem {
    let priced = stock.iter().all(|s| s.price.is_some());
    let cost = |sheet: &StockSheet| match sheet.price {
        Some(price) if priced => price.in_cents().max(0) as u64,
        _ => u64::from(sheet.steps.0) * u64::from(sheet.steps.1),
    };
    Problem {
        stock: stock
            .iter()
            .map(|s| Stock {
                length: s.steps.0,
                width: s.steps.1,
                cost: cost(s),
            })
            .collect(),
        demands: pieces
            .iter()
            .map(|p| Demand {
                length: p.length,
                width: p.width,
                may_turn: p.may_turn,
            })
            .collect(),
        kerf,
    }
}

/// The sheets of an answer whose demands are the list's pieces.
pub(super) fn layouts(answer: &Answer) -> Vec<SheetLayout> {
    answer.sheets.iter().map(layout).collect()
}

fn layout(sheet: &Sheet) -> SheetLayout {
    let mut pieces = Vec::new();
    let mut offcuts = Vec::new();
    for leaf in &sheet.leaves {
        let (at, size) = ((leaf.x, leaf.y), (leaf.dx, leaf.dy));
        match leaf.demand {
            None => offcuts.push(Offcut { at, size }),
            Some(piece) => pieces.push(OnSheet {
                piece,
                at,
                size,
                turned: leaf.turned,
            }),
        }
    }
    SheetLayout {
        stock: sheet.stock,
        pieces,
        offcuts,
        cuts: sheet.cuts.clone(),
    }
}
