//! A problem made ready: sides with their kerf, and what fits on what.

use super::{Demand, Problem, Stock};

/// A width along x and a height along y, each with a kerf added.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Size {
    pub w: u64,
    pub h: u64,
}

impl Size {
    pub fn holds(self, other: Self) -> bool {
        other.w <= self.w && other.h <= self.h
    }

    /// Exact, and saturating for sizes that no shop has.
    pub fn area(self) -> u64 {
        self.w.saturating_mul(self.h)
    }

    pub fn turned(self) -> Self {
        Self {
            w: self.h,
            h: self.w,
        }
    }
}

/// One rectangle to be cut.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rectangle {
    /// Which demand.
    pub demand: usize,
    pub size: Size,
    pub may_turn: bool,
}

impl Rectangle {
    /// As it may lie: as it is, then turned where that is another way.
    pub fn ways(&self) -> impl Iterator<Item = (Size, bool)> + use<> {
        let turned = self.may_turn && self.size.w != self.size.h;
        [(self.size, false), (self.size.turned(), true)]
            .into_iter()
            .take(if turned { 2 } else { 1 })
    }
}

/// A sheet that is for sale.
#[derive(Clone, Copy, Debug)]
pub(super) struct Blank {
    /// Which of the stock.
    pub stock: usize,
    pub size: Size,
    pub cost: u64,
}

/// What can be cut, from what.
///
/// Invariant: every rectangle fits on one of the blanks; no side is nothing.
#[derive(Clone, Debug)]
pub(super) struct Shop {
    pub rectangles: Vec<Rectangle>,
    pub blanks: Vec<Blank>,
    pub kerf: u64,
    /// Room narrower than this holds nothing.
    pub narrowest: u64,
    /// Demands that cannot be cut.
    pub too_large: Vec<usize>,
}

impl Shop {
    pub fn new(problem: &Problem) -> Self {
        let kerf = u64::from(problem.kerf);
        let blanks: Vec<_> = (0..problem.stock.len())
            .filter_map(|i| blank(i, &problem.stock[i], kerf))
            .collect();
        let (rectangles, too_large): (Vec<_>, Vec<_>) = problem
            .demands
            .iter()
            .enumerate()
            .map(|(i, d)| rectangle(i, d, kerf))
            .partition(|r| r.size.w > kerf && r.size.h > kerf && fits_any(r, &blanks));
        Self {
            narrowest: rectangles
                .iter()
                .map(|r| r.size.w.min(r.size.h))
                .min()
                .unwrap_or(1),
            too_large: too_large.iter().map(|r| r.demand).collect(),
            rectangles,
            blanks,
            kerf,
        }
    }

    /// Whether a rectangle fits on a blank.
    pub fn fits(rectangle: &Rectangle, blank: &Blank) -> bool {
        rectangle.ways().any(|(size, _)| blank.size.holds(size))
    }

    /// What a blank's room is worth without the kerf, in square steps.
    pub fn clear_area(&self, size: Size) -> u64 {
        let clear = |side: u64| side.saturating_sub(self.kerf);
        clear(size.w).saturating_mul(clear(size.h))
    }
}

fn fits_any(rectangle: &Rectangle, blanks: &[Blank]) -> bool {
    blanks.iter().any(|b| Shop::fits(rectangle, b))
}

fn rectangle(demand: usize, d: &Demand, kerf: u64) -> Rectangle {
    Rectangle {
        demand,
        size: Size {
            w: u64::from(d.length) + kerf,
            h: u64::from(d.width) + kerf,
        },
        may_turn: d.may_turn,
    }
}

fn blank(stock: usize, s: &Stock, kerf: u64) -> Option<Blank> {
    let size = Size {
        w: u64::from(s.length) + kerf,
        h: u64::from(s.width) + kerf,
    };
    (s.length > 0 && s.width > 0).then_some(Blank {
        stock,
        size,
        cost: s.cost,
    })
}
