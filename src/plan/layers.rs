//! The layers of the cladding and where they end at corners.

use super::Face;
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
    /// no hollow is left at a corner. Pieces are cut square; at a corner that is not square they touch in one line. Empty when there is no such face.
    pub fn ends(self, faces: &[Face], index: usize) -> (f64, f64) {
        let Some(face) = faces.get(index) else {
            return (0.0, 0.0);
        };
        let before = &faces[(index + faces.len() - 1) % faces.len()];
        let after = &faces[(index + 1) % faces.len()];
        let back = if before.wall { 0.0 } else { self.outer };
        let front = if after.wall { 0.0 } else { self.inner };
        // Pieces are cut square. Where a corner is not square they touch at their front or at their back, whichever comes
        // first, and stand apart at the other by less than the joint's mortar: thickness times the cosine.
        let depths = [self.inner, self.outer];
        let (sine, cosine) = before.turn_to(face);
        let start = depths.map(|depth| (depth * cosine - back) / sine);
        let (sine, cosine) = face.turn_to(after);
        let end = depths.map(|depth| (front - depth * cosine) / sine);
        let (start, end) = (start[0].max(start[1]), end[0].min(end[1]));
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
    use crate::plan::Corner;

    fn face(along: Vector2, wall: bool) -> Face {
        Face {
            run: 0,
            side: Side::Working,
            mark: "CW".to_owned(),
            name: String::new(),
            start: Point2::origin(),
            along,
            outward: Vector2::new(along.y, -along.x),
            length: 1000.0,
            wall,
            corner: Corner::Convex,
            openings: Vec::new(),
        }
    }

    /// A base coat 6 mm thick on a board of 12 mm.
    const LAYER: Layer = Layer {
        inner: 12.0,
        outer: 18.0,
    };

    #[test]
    fn ends_are_those_worked_on_paper() {
        let (out, inwards) = (Vector2::y(), -Vector2::y());
        let ends = |before: Vector2, before_wall, next: Vector2, next_wall| {
            let faces = [
                face(before, before_wall),
                face(Vector2::x(), false),
                face(next, next_wall),
            ];
            LAYER.ends(&faces, 1)
        };
        // The outline turns left at outward corners: from -y to x to y.
        assert_eq!(ends(inwards, false, out, false), (-18.0, 1012.0));
        assert_eq!(ends(out, false, inwards, false), (18.0, 988.0));
        assert_eq!(ends(inwards, true, out, false), (0.0, 1012.0));
        assert_eq!(ends(inwards, false, inwards, true), (-18.0, 1000.0));
        assert_eq!(LAYER.ends(&[], 0), (0.0, 0.0));
    }

    #[test]
    fn at_a_corner_out_of_square_pieces_touch_in_one_line() {
        // Turned by 80 degrees only: sin .98481, cos .17365. The next face's layer has its back 12 in front of it; at its own
        // front, 18 out, this layer must stop at (12 - 18 · .17365) / .98481 = 9.0111 past the corner.
        let next = Vector2::new(10f64.to_radians().sin(), 10f64.to_radians().cos());
        let faces = [
            face(-Vector2::y(), false),
            face(Vector2::x(), false),
            face(next, false),
        ];
        let (_, end) = LAYER.ends(&faces, 1);
        assert!((end - 1009.0111).abs() < 1e-3, "{end}");
        // The next one starts where its front, 18 out, meets the front of this layer: (18 · .17365 - 18) / .98481 = -15.1037.
        let (start, _) = LAYER.ends(&faces, 2);
        assert!((start + 15.1037).abs() < 1e-3, "{start}");
    }
}
