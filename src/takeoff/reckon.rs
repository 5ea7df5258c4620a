//! The takeoff as a whole.

use super::cut_list::{CutList, cut_lists};
use super::mixes::{Mix, mixes};
use super::order::{Order, bags, by_amount, order, sheets, sticks};
use super::sheets::{Laying, SheetList, sheet_lists};
use super::unasked::unasked;
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
    /// What to cut from which sheet.
    pub sheet_lists: Vec<SheetList>,
    /// How many bags.
    pub mixes: Vec<Mix>,
    /// What to buy.
    pub order: Order,
    /// What could not be reckoned; the rest is.
    pub findings: Vec<Finding>,
}

/// Reckons quantities, cuts, bags and money from the parts.
pub fn reckon(plan: &Plan, assembly: &Assembly) -> Takeoff {
    let design = &plan.design;
    let mut findings = Vec::new();
    let laying = Laying::of(plan, assembly);
    let quantities = quantities::quantities(plan, assembly, &laying);
    let cut_lists = cut_lists(plan, assembly, &mut findings);
    let sheet_lists = sheet_lists(plan, assembly, &laying, &mut findings);
    findings.extend(unasked(design, &quantities));
    let mixes = mixes(design, &quantities);
    let mut purchases: Vec<_> = cut_lists.iter().flat_map(|l| sticks(design, l)).collect();
    purchases.extend(sheet_lists.iter().flat_map(|l| sheets(design, l)));
    purchases.extend(mixes.iter().map(|m| bags(design, m)));
    purchases.extend(by_amount(design, &quantities));
    Takeoff {
        order: order(design, purchases),
        quantities,
        cut_lists,
        sheet_lists,
        mixes,
        findings,
    }
}

/// The takeoff as tables, in the order they are printed.
pub fn tables(plan: &Plan, takeoff: &Takeoff) -> Vec<Table> {
    vec![
        quantities::table(plan, &takeoff.quantities),
        cut_list::summary(plan, &takeoff.cut_lists),
        cut_list::table(plan, &takeoff.cut_lists),
        super::sheets::summary(plan, &takeoff.sheet_lists),
        super::sheets::table(plan, &takeoff.sheet_lists),
        super::mixes::table(&plan.design, &takeoff.mixes),
        super::order::table(&takeoff.order),
        super::order::totals(plan, &takeoff.order),
    ]
}
