//! How far each piece is moved for the model to be seen taken apart: levels upwards, pieces of one level from each other.

use super::prints::{Level, Prints};
use crate::geometry::{Bounds3, Point3, Vector3};

/// Pieces of one level are moved from its middle by so much of their own distance from it.
const SPREAD: f64 = 0.14;
/// Between two levels, as a share of the model's height.
const BETWEEN: f64 = 0.3;

/// The move of each piece, and the levels as they are moved, millimetres built.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Moves {
    pieces: Vec<Vector3>,
    /// The lowest and the highest point of each level that is there, moved, from the ground up.
    levels: Vec<(Level, f64, f64)>,
}

impl Moves {
    /// For some prints.
    pub(super) fn new(prints: &Prints) -> Self {
        let boxes: Vec<Option<Bounds3>> = prints
            .pieces
            .iter()
            .map(|p| p.built(prints.scale))
            .collect();
        let of_level = |level: Level| {
            let own = prints.pieces.iter().zip(&boxes);
            let own = own.filter(move |(p, _)| p.level == level);
            own.filter_map(|(_, b)| *b).reduce(Bounds3::union)
        };
        let whole = boxes.iter().flatten().copied().reduce(Bounds3::union);
        let gap = whole.map_or(0.0, |b| b.high.z - b.low.z) * BETWEEN;
        let mut moves = Self {
            pieces: vec![Vector3::zeros(); boxes.len()],
            levels: Vec::new(),
        };
        let mut top: Option<f64> = None;
        for level in Level::ALL {
            let Some(bounds) = of_level(level) else {
                continue;
            };
            let up = top.map_or(0.0, |top| top + gap - bounds.low.z);
            top = Some(bounds.high.z + up);
            moves
                .levels
                .push((level, bounds.low.z + up, bounds.high.z + up));
            let middle = centre(&bounds);
            let pieces = prints.pieces.iter().zip(&boxes).zip(&mut moves.pieces);
            for ((piece, own), moved) in pieces {
                if let (true, Some(own)) = (piece.level == level, own) {
                    let apart = (centre(own) - middle) * SPREAD;
                    *moved = Vector3::new(apart.x, apart.y, up);
                }
            }
        }
        moves
    }

    /// How far a piece is moved.
    pub(super) fn of(&self, piece: usize) -> Vector3 {
        self.pieces.get(piece).copied().unwrap_or_default()
    }

    /// Each level with the one above it: the levels, the lower one's top and the upper one's foot, moved.
    pub(super) fn steps(&self) -> impl Iterator<Item = ([Level; 2], f64, f64)> {
        let pairs = self.levels.iter().zip(self.levels.iter().skip(1));
        pairs.map(|(lower, upper)| ([lower.0, upper.0], lower.2, upper.1))
    }
}

fn centre(bounds: &Bounds3) -> Point3 {
    nalgebra::center(&bounds.low, &bounds.high)
}
