//! All quantities in their order.

use super::tally::Tally;
use super::{
    coats, counter, forms, framing, joints, screws, slab, things, tiles, weight, wire_mesh,
};
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::takeoff::Quantity;
use crate::takeoff::sheets::Laying;

/// How much of everything the island takes, exact and without spare: framing, cladding, counter, forms, screws, things
/// and weights, each in the order of its faces or runs.
///
/// Rows of one item are of one kind of amount and add up to the whole.
pub fn quantities(plan: &Plan, assembly: &Assembly, laying: &Laying) -> Vec<Quantity> {
    let mut tally = Tally::new(plan, assembly, laying);
    framing::reckon(&mut tally);
    coats::reckon(&mut tally);
    joints::reckon(&mut tally);
    tiles::reckon(&mut tally);
    counter::reckon(&mut tally);
    slab::reckon(&mut tally);
    wire_mesh::reckon(&mut tally);
    forms::reckon(&mut tally);
    screws::reckon(&mut tally);
    things::reckon(&mut tally);
    weight::reckon(&mut tally);
    tally.list
}
