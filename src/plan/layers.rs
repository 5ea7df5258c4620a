//! The layers of the cladding and where they end at corners.

use super::{Corner, Face};
use crate::design::Trade;
use crate::units::Length;

/// One layer: from so far in front of the frame's face to so far, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// Its back.
    pub inner: f64,
    /// Its front.
    pub outer: f64,
}

/// The layers on every face that is not a wall, from the frame outwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layers {
    /// Cement board, on the frame.
    pub board: Layer,
    /// Base coat, on the board.
    pub base: Layer,
    /// Finish coat, on the base coat.
    pub finish: Layer,
}

impl Layer {
    /// From back to front.
    pub fn thickness(self) -> f64 {
        self.outer - self.inner
    }

    /// Another one in front of this one.
    pub fn followed_by(self, thickness: Length) -> Self {
        Self {
            inner: self.outer,
            outer: self.outer + thickness.mm(),
        }
    }

    /// Where this layer begins and ends along a face, in the face's s.
    ///
    /// Corners are lapped one consistent way. At an outward corner the face that ends there stops at the back of its
    /// layer's continuation, and the face that starts there covers its edge; at an inward corner the face that ends there
    /// runs on to the next face's layer. Beside a wall a layer stops with the frame. So no two layers share volume and
    /// no hollow is left at a corner. Empty when there is no such face.
    pub fn ends(self, faces: &[Face], index: usize) -> (f64, f64) {
        let Some(face) = faces.get(index) else {
            return (0.0, 0.0);
        };
        let before = &faces[(index + faces.len() - 1) % faces.len()];
        let after = &faces[(index + 1) % faces.len()];
        let start = match face.corner {
            _ if before.wall => 0.0,
            Corner::Convex => -self.outer,
            Corner::Reflex => self.outer,
        };
        let end = match after.corner {
            _ if after.wall => 0.0,
            Corner::Convex => self.inner,
            Corner::Reflex => -self.inner,
        };
        (start, face.length + end)
    }
}

impl Layers {
    /// The layers that the trade choices make.
    pub fn of(trade: &Trade) -> Self {
        let frame = Layer {
            inner: 0.0,
            outer: 0.0,
        };
        let board = frame.followed_by(trade.board_thickness.value);
        let base = board.followed_by(trade.base_coat.value);
        let finish = base.followed_by(trade.finish_coat.value);
        Self {
            board,
            base,
            finish,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Side;
    use crate::geometry::{Point2, Vector2};

    fn face(corner: Corner, wall: bool) -> Face {
        Face {
            run: 0,
            side: Side::Working,
            mark: "CW".to_owned(),
            name: String::new(),
            start: Point2::origin(),
            along: Vector2::x(),
            outward: -Vector2::y(),
            length: 1000.0,
            wall,
            corner,
            openings: Vec::new(),
        }
    }

    #[test]
    fn ends_are_those_worked_on_paper() {
        use Corner::{Convex, Reflex};
        // A base coat 6 mm thick on a board of 12 mm.
        let layer = Layer {
            inner: 12.0,
            outer: 18.0,
        };
        let ends = |before_wall, corner, next, next_wall| {
            let faces = [
                face(Convex, before_wall),
                face(corner, false),
                face(next, next_wall),
            ];
            layer.ends(&faces, 1)
        };
        assert_eq!(ends(false, Convex, Convex, false), (-18.0, 1012.0));
        assert_eq!(ends(false, Reflex, Reflex, false), (18.0, 988.0));
        assert_eq!(ends(true, Convex, Convex, false), (0.0, 1012.0));
        assert_eq!(ends(false, Convex, Reflex, true), (-18.0, 1000.0));
        assert_eq!(layer.ends(&[], 0), (0.0, 0.0));
    }
}
