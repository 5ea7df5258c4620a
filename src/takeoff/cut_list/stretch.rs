//! A stick from end to end: pieces, scraps between them, and the offcut.

use super::{CutList, CutStick, Placed};

/// What a stretch of a stick becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum What {
    /// A piece.
    Piece(Placed),
    /// What is cut out before a piece, so that its foot stands where it must.
    Scrap,
    /// What is left at the far end.
    Offcut,
}

/// A stretch of a stick, in steps from its marked end; what the cut beyond it takes is in no stretch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stretch {
    pub what: What,
    pub from: u32,
    pub to: u32,
}

impl CutList {
    /// All stretches of a stick in the order they are cut off.
    ///
    /// A gap wider than a cut is a scrap: its own cut ends where the next piece begins. One narrower than two cuts goes to
    /// dust, and is a scrap of no length, since the second cut is still made.
    pub(super) fn stretches(&self, stick: &CutStick) -> Vec<Stretch> {
        let mut found = Vec::new();
        let mut free = 0;
        for cut in &stick.cuts {
            if cut.start > free {
                let to = cut.start.saturating_sub(self.kerf);
                found.push(Stretch {
                    what: What::Scrap,
                    from: free.min(to),
                    to,
                });
            }
            let end = cut.start + self.pieces[cut.piece].length;
            found.push(Stretch {
                what: What::Piece(*cut),
                from: cut.start,
                to: end,
            });
            free = end + self.kerf;
        }
        if stick.offcut > 0 {
            let end = self.stock[stick.stock].steps;
            found.push(Stretch {
                what: What::Offcut,
                from: end - stick.offcut.min(end),
                to: end,
            });
        }
        found
    }
}
