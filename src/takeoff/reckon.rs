//! The takeoff as a whole.

use super::cut_list::{CutList, cut_lists};
use super::order::{Order, by_amount, order, sticks};
use super::{Quantity, cut_list, quantities};
use crate::diagnostics::Finding;
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::table::Table;

/// Everything that is reckoned of an island's parts.
#[derive(Clone, Debug, PartialEq)]
pub struct Takeoff {
    /// How much of everything, without spare.
    pub quantities: Vec<Quantity>,
    /// What to cut from which stick.
    pub cut_lists: Vec<CutList>,
    /// What to buy.
    pub order: Order,
    /// What could not be reckoned; the rest is.
    pub findings: Vec<Finding>,
}

/// Reckons quantities, cuts, bags and money from the parts.
pub fn reckon(plan: &Plan, assembly: &Assembly) -> Takeoff {
    let design = &plan.design;
    let mut findings = Vec::new();
    let quantities = quantities::quantities(plan, assembly);
    let cut_lists = cut_lists(design, assembly, &mut findings);
    let mut purchases: Vec<_> = cut_lists.iter().flat_map(|l| sticks(design, l)).collect();
    purchases.extend(by_amount(design, &quantities));
    Takeoff {
        order: order(design, purchases),
        quantities,
        cut_lists,
        findings,
    }
}

/// The takeoff as tables, in the order they are printed.
pub fn tables(plan: &Plan, takeoff: &Takeoff) -> Vec<Table> {
    vec![
        quantities::table(plan, &takeoff.quantities),
        cut_list::summary(plan, &takeoff.cut_lists),
        cut_list::table(plan, &takeoff.cut_lists),
        super::order::table(&takeoff.order),
        super::order::totals(plan, &takeoff.order),
    ]
}
