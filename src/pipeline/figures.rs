//! The few numbers that one looks at first: what the island costs and what it weighs.

use crate::plan::Plan;
use crate::takeoff::{Amount, Takeoff, quantities::DEAD_WEIGHT};
use crate::units::Mass;
use crate::write::Figure;

/// What the order comes to, and what stays there weighs.
pub(super) fn figures(plan: &Plan, takeoff: &Takeoff) -> Vec<Figure> {
    vec![cost(takeoff), weight(plan, takeoff)]
}

/// What everything on the order list costs with tax, and what is not in it.
fn cost(takeoff: &Takeoff) -> Figure {
    let order = &takeoff.order;
    let mut notes = vec!["with tax".to_owned()];
    match order.unpriced().count() {
        0 => {}
        1 => notes.push("one line without a price".to_owned()),
        n => notes.push(format!("{n} lines without a price")),
    }
    if order.has_examples() {
        notes.push("example prices among them".to_owned());
    }
    Figure {
        id: "cost",
        name: "To buy",
        value: format!("{} {}", order.total, order.currency),
        note: notes.join(", "),
    }
}

/// Dead weight of all runs.
fn weight(plan: &Plan, takeoff: &Takeoff) -> Figure {
    let rows = takeoff.quantities.iter().filter(|q| q.item == DEAD_WEIGHT);
    let kg: f64 = rows
        .map(|q| match q.amount {
            Amount::Mass(mass) => mass.kg(),
            _ => 0.0,
        })
        .sum();
    Figure {
        id: "weight",
        name: "Weight",
        value: Amount::Mass(Mass::kilograms(kg)).spell(plan.design.project.units),
        note: "dry, without appliances and what fills openings".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parts;
    use crate::pipeline::TradeData;
    use crate::units::Money;

    #[test]
    fn the_weight_is_that_of_all_runs_and_the_cost_says_what_is_not_in_it() {
        let text = include_str!("../../params/garden-corner.yaml");
        let plan = crate::pipeline::check(text, &TradeData::default()).unwrap();
        let mut takeoff = crate::takeoff::reckon(&plan, &parts::build(&plan));
        let rows = takeoff.quantities.iter_mut();
        for (row, kg) in rows
            .filter(|q| q.item == DEAD_WEIGHT)
            .zip([400.0, 53.592_37])
        {
            row.amount = Amount::Mass(Mass::kilograms(kg));
        }
        // 453.592 37 kg are a thousand pounds (NIST SP 811).
        assert_eq!(figures(&plan, &takeoff)[1].value, "1000.0 lb");
        for line in &mut takeoff.order.lines {
            (line.count, line.price) = (Some(1), Some(Money::ZERO));
        }
        assert!(!cost(&takeoff).note.contains("without a price"));
        takeoff.order.lines[0].price = None;
        assert!(cost(&takeoff).note.contains("one line without a price"));
        takeoff.order.lines[1].count = None;
        assert!(cost(&takeoff).note.contains("2 lines without a price"));
    }
}
