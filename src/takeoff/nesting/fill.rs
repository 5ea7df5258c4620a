//! Pieces put one after the other into the open room where each fits best.

use super::laid::{Laid, Split};
use super::shop::{Rectangle, Shop, Size};
use std::cmp::Reverse;

/// Which piece comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Order {
    Area,
    LongSide,
    ShortSide,
    AcrossGrain,
    Girth,
}

impl Order {
    pub const ALL: [Self; 5] = [
        Self::Area,
        Self::LongSide,
        Self::ShortSide,
        Self::AcrossGrain,
        Self::Girth,
    ];

    /// Sorts the largest first.
    pub fn sort(self, shop: &Shop, pieces: &mut [usize]) {
        pieces.sort_by_key(|p| (Reverse(self.rank(shop.rectangles[*p].size)), *p));
    }

    fn rank(self, size: Size) -> (u64, u64) {
        let (long, short) = (size.w.max(size.h), size.w.min(size.h));
        match self {
            Self::Area => (size.area(), long),
            Self::LongSide => (long, short),
            Self::ShortSide => (short, long),
            Self::AcrossGrain => (size.h, size.w),
            Self::Girth => (long + short, long),
        }
    }
}

/// Which room fits best.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fit {
    /// The smallest.
    Area,
    /// The one with the least over on its tighter side.
    Tight,
    /// The one with the least over on its looser side.
    Loose,
}

impl Fit {
    pub const ALL: [Self; 3] = [Self::Area, Self::Tight, Self::Loose];

    /// The less the better.
    fn score(self, room: Size, piece: Size) -> (u64, u64) {
        let (w, h) = (room.w - piece.w, room.h - piece.h);
        match self {
            Self::Area => (room.area(), w.min(h)),
            Self::Tight => (w.min(h), w.max(h)),
            Self::Loose => (w.max(h), w.min(h)),
        }
    }
}

/// How the rest is parted from a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Parting {
    LargerRest,
    SmallerRest,
    Always(Split),
}

impl Parting {
    pub const ALL: [Self; 4] = [
        Self::LargerRest,
        Self::SmallerRest,
        Self::Always(Split::Rip),
        Self::Always(Split::Crosscut),
    ];

    fn split(self, room: Size, piece: Size) -> Split {
        match self {
            Self::LargerRest => Split::larger_rest(room, piece),
            Self::SmallerRest => Split::larger_rest(room, piece).other(),
            Self::Always(split) => split,
        }
    }
}

/// Which sheet is begun when no room is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Buy {
    /// The cheapest that could hold all that is still to come, or else the one with the cheapest area.
    Enough,
    /// This one where the piece fits on it.
    Blank(usize),
}

/// The rules of one filling.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rules {
    pub fit: Fit,
    pub parting: Parting,
    pub buy: Buy,
}

/// An open room of a sheet.
#[derive(Clone, Copy)]
struct Open {
    sheet: usize,
    room: usize,
    size: Size,
}

/// Adds pieces, in the order given, to what is laid; `steps` counts the rooms looked at.
pub(super) fn fill(
    shop: &Shop,
    laid: &mut Vec<Laid>,
    pieces: &[usize],
    rules: &Rules,
    steps: &mut u64,
) {
    let mut open: Vec<Open> = Vec::new();
    for (sheet, l) in laid.iter().enumerate() {
        open.extend(l.open_rooms().map(|room| Open {
            sheet,
            room,
            size: l.rooms[room].size,
        }));
    }
    open.retain(|o| o.size.w.min(o.size.h) >= shop.narrowest);
    let area = |p: usize| shop.rectangles[p].size.area();
    let mut to_come = pieces
        .iter()
        .fold(0, |sum: u64, p| sum.saturating_add(area(*p)));
    for &piece in pieces {
        let rectangle = &shop.rectangles[piece];
        *steps += open.len() as u64 + 4;
        let best = best_room(rectangle, &open, rules.fit).or_else(|| {
            let blank = to_buy(shop, rectangle, rules.buy, to_come)?;
            open.push(Open {
                sheet: laid.len(),
                room: 0,
                size: shop.blanks[blank].size,
            });
            laid.push(Laid::new(shop, blank));
            best_room(rectangle, &open[open.len() - 1..], rules.fit)
                .map(|(_, way)| (open.len() - 1, way))
        });
        to_come = to_come.saturating_sub(area(piece));
        let Some((at, way)) = best else {
            continue;
        };
        let Open { sheet, room, size } = open.swap_remove(at);
        let split = rules.parting.split(size, way.0);
        let rests = laid[sheet].place(shop, room, piece, way, split);
        for room in rests.into_iter().flatten() {
            let size = laid[sheet].rooms[room].size;
            if size.w.min(size.h) >= shop.narrowest {
                open.push(Open { sheet, room, size });
            }
        }
    }
}

/// The open room that a piece fits best, and how it lies there; the earliest of equals.
fn best_room(rectangle: &Rectangle, open: &[Open], fit: Fit) -> Option<(usize, (Size, bool))> {
    let mut best = None;
    let mut least = (u64::MAX, u64::MAX);
    for way in rectangle.ways() {
        for (i, o) in open.iter().enumerate() {
            if o.size.holds(way.0) {
                let score = fit.score(o.size, way.0);
                if score < least || best.is_none() {
                    least = score;
                    best = Some((i, way));
                }
            }
        }
    }
    best
}

/// The blank to begin for a piece.
fn to_buy(shop: &Shop, rectangle: &Rectangle, buy: Buy, to_come: u64) -> Option<usize> {
    let fitting = || (0..shop.blanks.len()).filter(|b| Shop::fits(rectangle, &shop.blanks[*b]));
    let wanted = match buy {
        Buy::Blank(blank) => fitting().find(|b| *b == blank),
        Buy::Enough => fitting()
            .filter(|b| shop.blanks[*b].size.area() >= to_come)
            .min_by_key(|b| (shop.blanks[*b].cost, *b)),
    };
    wanted.or_else(|| {
        fitting().min_by(|a, b| {
            let [a_blank, b_blank] = [a, b].map(|i| &shop.blanks[*i]);
            let rate = |cost: u64, other: Size| u128::from(cost) * u128::from(other.area());
            rate(a_blank.cost, b_blank.size)
                .cmp(&rate(b_blank.cost, a_blank.size))
                .then(b_blank.size.area().cmp(&a_blank.size.area()))
                .then(a.cmp(b))
        })
    })
}
