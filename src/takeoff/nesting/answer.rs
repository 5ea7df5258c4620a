//! A laid sheet told as pieces, offcuts and cuts.

use super::laid::{Corner, Laid, Room, Split};
use super::shop::Shop;
use super::{Leaf, Sheet};

/// Its pieces, its offcuts and its cuts in the order that one makes them: a part is cut up before the next is begun.
pub(super) fn sheet(shop: &Shop, laid: &Laid) -> Sheet {
    let mut sheet = Sheet {
        stock: shop.blanks[laid.blank].stock,
        leaves: Vec::new(),
        cuts: Vec::new(),
    };
    let mut pending = vec![0];
    while let Some(room) = pending.pop() {
        let room = &laid.rooms[room];
        match &room.corner {
            None => sheet.leaves.push(leaf(shop, room, None)),
            Some(corner) => {
                sheet.leaves.push(leaf(shop, room, Some(corner)));
                sheet.cuts.extend(cuts(shop, room, corner));
                // The part that the second cut left is at hand.
                let later = match corner.split {
                    Split::Rip => [1, 0],
                    Split::Crosscut => [0, 1],
                };
                pending.extend(later.into_iter().filter_map(|i| corner.rests[i]));
            }
        }
    }
    sheet
}

fn steps(value: u64) -> u32 {
    u32::try_from(value).unwrap_or(u32::MAX)
}

fn leaf(shop: &Shop, room: &Room, corner: Option<&Corner>) -> Leaf {
    let size = corner.map_or(room.size, |c| c.size);
    Leaf {
        demand: corner.map(|c| shop.rectangles[c.piece].demand),
        x: steps(room.x),
        y: steps(room.y),
        dx: steps(size.w - shop.kerf),
        dy: steps(size.h - shop.kerf),
        turned: corner.is_some_and(|c| c.turned),
    }
}

/// The cuts that free a piece from its room: none along an edge that it shares with the room.
fn cuts(shop: &Shop, room: &Room, corner: &Corner) -> impl Iterator<Item = (u32, u32, u32, u32)> {
    let clear = |from: u64, size: u64| steps(from + size - shop.kerf);
    let (whole, part) = (room.size, corner.size);
    let [over, beside] = match corner.split {
        Split::Rip => [whole.w, part.h],
        Split::Crosscut => [part.w, whole.h],
    };
    let y = clear(room.y, part.h);
    let x = clear(room.x, part.w);
    let along = (whole.h > part.h).then(|| (steps(room.x), y, clear(room.x, over), y));
    let across = (whole.w > part.w).then(|| (x, steps(room.y), x, clear(room.y, beside)));
    let ordered = match corner.split {
        Split::Rip => [along, across],
        Split::Crosscut => [across, along],
    };
    ordered.into_iter().flatten()
}
