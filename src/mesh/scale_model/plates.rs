//! Pieces put on beds.

use super::fit::Room;
use super::{Piece, Plate};
use crate::geometry::{Placement, Vector3};

/// The least gap between two prints on one bed, millimetres: common practice.
const APART: f64 = 5.0;

/// A bed being filled, row by row from the front.
struct Bed {
    plate: Plate,
    /// How much of the row at hand is taken.
    along: f64,
    /// Where that row begins.
    row: f64,
    /// Where the next one begins.
    next: f64,
    /// How far the prints reach along the rows, and away from the front.
    reach: (f64, f64),
}

/// The fewest beds that rows of pieces come to, the deepest piece first.
pub(super) fn plates(pieces: &[Piece], room: &Room) -> Vec<Plate> {
    let size = |i: usize| {
        let bounds = pieces.get(i).and_then(|p| p.surface.bounds());
        bounds.map_or_else(Vector3::zeros, |b| b.high - b.low)
    };
    let mut order: Vec<usize> = (0..pieces.len()).collect();
    order.sort_by(|a, b| size(*b).y.total_cmp(&size(*a).y));
    let mut beds: Vec<Bed> = Vec::new();
    for i in order {
        let size = size(i);
        if !beds.iter_mut().any(|b| b.takes(i, &size, room)) {
            let mut bed = Bed::new();
            bed.takes(i, &size, room);
            beds.push(bed);
        }
    }
    beds.into_iter().map(|b| b.centred(room)).collect()
}

impl Bed {
    fn new() -> Self {
        Self {
            plate: Plate { pieces: Vec::new() },
            along: 0.0,
            row: 0.0,
            next: 0.0,
            reach: (0.0, 0.0),
        }
    }

    /// Its prints in the middle of the bed, where it is flattest and a brim has room.
    fn centred(self, room: &Room) -> Plate {
        let free = (room.x - self.reach.0, room.y - self.reach.1);
        let shift = Placement::translation(free.0.max(0.0) / 2.0, free.1.max(0.0) / 2.0, 0.0);
        let pieces = self.plate.pieces.into_iter();
        Plate {
            pieces: pieces.map(|(piece, at)| (piece, shift * at)).collect(),
        }
    }

    /// Puts a piece into the row at hand or the next one, where there is room; true when there was.
    fn takes(&mut self, piece: usize, size: &Vector3, room: &Room) -> bool {
        let fits = |x: f64, y: f64| x + size.x <= room.x + 1e-9 && y + size.y <= room.y + 1e-9;
        let (x, y) = if fits(self.along, self.row) {
            (self.along, self.row)
        } else if fits(0.0, self.next) {
            (0.0, self.next)
        } else {
            return false;
        };
        self.row = y;
        self.along = x + size.x + APART;
        self.next = self.next.max(y + size.y + APART);
        self.reach = (self.reach.0.max(x + size.x), self.reach.1.max(y + size.y));
        self.plate
            .pieces
            .push((piece, Placement::translation(x, y, 0.0)));
        true
    }
}
