//! The sticks that can be bought.

use crate::catalog::{Form, Need, Supply};
use crate::design::Design;
use crate::takeoff::suits::suits;
use crate::units::{Length, Money, Notation};

/// A stick that can be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct StockStick {
    /// What the shop calls it.
    pub name: String,
    /// Its length.
    pub length: Length,
    /// Its length in whole steps, rounded down.
    pub steps: u32,
    /// What one costs; `None` when that is not known.
    pub price: Option<Money>,
    /// Whether the price is an invented example.
    pub example: bool,
    /// Where one buys it; empty when that is not known.
    pub shop: String,
}

/// Lengths in which steel and wood are usually sold, feet and metres (common practice).
const COMMON: ([f64; 5], [f64; 5]) = ([8.0, 10.0, 12.0, 16.0, 20.0], [2.4, 3.0, 3.6, 4.8, 6.0]);

/// The sticks that serve a need: those with a price where there are any, else all; the common lengths where nobody sells
/// it. None of them is longer than can be carried home.
///
/// Where only a stick without a price is as long as `needed`, in steps, those without a price serve beside the others.
pub(super) fn stock(design: &Design, need: &Need, needed: u32) -> Vec<StockStick> {
    let notation = design.project.units;
    let fitting = design.supplies.of(need).filter(|s| suits(design, s, None));
    let mut found: Vec<_> = fitting
        .filter_map(|supply| stick(notation, supply))
        .collect();
    if found.is_empty() {
        found = common(notation, need);
    }
    if let Some(longest) = &design.buying.longest_stick {
        found.retain(|s| s.length <= longest.value + Length::millimetres(1.0));
    }
    let longest = |priced: bool| {
        let sticks = found.iter().filter(|s| s.price.is_some() == priced);
        sticks.map(|s| s.steps).max()
    };
    let only_without = longest(false).is_some_and(|l| l >= needed) && longest(true) < Some(needed);
    if longest(true).is_some() && !only_without {
        found.retain(|s| s.price.is_some());
    }
    found
}

/// Whether a need is sold in sticks by anybody; corner mesh comes in rolls too.
pub(in crate::takeoff) fn is_sold_in_sticks(design: &Design, need: &Need) -> bool {
    let mut supplies = design.supplies.of(need);
    supplies.any(|s| matches!(s.form, Form::Stick { .. }))
}

fn stick(notation: Notation, supply: &Supply) -> Option<StockStick> {
    let Form::Stick { length } = supply.form else {
        return None;
    };
    Some(StockStick {
        name: supply.name.clone(),
        length,
        steps: steps_down(notation, length),
        price: supply.price,
        example: supply.example,
        shop: supply.shop.clone(),
    })
}

fn common(notation: Notation, need: &Need) -> Vec<StockStick> {
    let lengths = match notation {
        Notation::Imperial => COMMON.0.map(|feet| Length::inches(feet * 12.0)),
        Notation::Metric => COMMON.1.map(|metres| Length::millimetres(metres * 1000.0)),
    };
    let stick = |length: Length| StockStick {
        name: format!("{need}, {}", notation.spell_with_unit(length)),
        length,
        steps: steps_down(notation, length),
        price: None,
        example: false,
        shop: String::new(),
    };
    lengths.into_iter().map(stick).collect()
}

pub(in crate::takeoff) fn steps_down(notation: Notation, length: Length) -> u32 {
    (length / notation.step() + 1e-6).floor().clamp(0.0, 1.0e9) as u32
}

/// A length in whole steps, rounded up.
pub(in crate::takeoff) fn steps_up(notation: Notation, length: Length) -> u32 {
    (length / notation.step() - 1e-6).ceil().clamp(0.0, 1.0e9) as u32
}
