//! Screws, counted from the connections that are there.

mod board;
mod form;
mod line;
mod panel;
mod steel;

use super::tally::Tally;

/// Steel to steel, tracks to sleepers, boards and substrate to steel, forms; each connection a row.
pub(super) fn reckon(tally: &mut Tally) {
    steel::reckon(tally);
    panel::reckon(tally);
    board::reckon(tally);
    form::reckon(tally);
}
