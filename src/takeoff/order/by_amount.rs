//! What is bought by its amount alone.

use super::choice::{cheapest, unit_name};
use super::line::Purchase;
use crate::catalog::Need;
use crate::design::Design;
use crate::takeoff::suits::suits;
use crate::takeoff::{Amount, Quantity, Shares};
use std::collections::BTreeMap;

/// What is bought by its amount alone: everything that is neither cut from sticks or sheets nor mixed from bags.
pub(in crate::takeoff) fn by_amount(design: &Design, quantities: &[Quantity]) -> Vec<Purchase> {
    let mut groups: BTreeMap<&Need, Vec<&Quantity>> = BTreeMap::new();
    for quantity in quantities {
        if let Some(need) = &quantity.need
            && is_by_amount(need)
        {
            groups.entry(need).or_default().push(quantity);
        }
    }
    groups
        .into_iter()
        .filter_map(|(need, group)| purchase(design, need, &group))
        .collect()
}

fn is_by_amount(need: &Need) -> bool {
    !matches!(
        need,
        Need::Steel(_)
            | Need::Sleeper
            | Need::BaseChannel
            | Need::Board
            | Need::Substrate
            | Need::FormPlywood
            | Need::Concrete
            | Need::BaseCoat
            | Need::FinishCoat
            | Need::Thinset
            | Need::Grout
    )
}

/// The spare share of what is bought by its amount.
fn spare(design: &Design, need: &Need) -> f64 {
    let spare = &design.buying.spare;
    match need {
        Need::Tile => spare.tile.value,
        Need::ReinforcingMesh | Need::JointTape | Need::CornerMesh => spare.mesh.value,
        Need::BondingAdhesive | Need::Sealer => spare.liquid.value,
        Need::Thing(_) => 0.0,
        _ => spare.small.value,
    }
}

fn purchase(design: &Design, need: &Need, group: &[&Quantity]) -> Option<Purchase> {
    let mut shares = Shares::none(design);
    for quantity in group {
        shares.add(quantity.run, quantity.amount.size());
    }
    let first = group.first()?.amount;
    let amount = first.resized(shares.sum() * (1.0 + spare(design, need)));
    let supplies = design.supplies.of(need).filter(|s| suits(design, s));
    let chosen = cheapest(supplies, amount);
    let alone = matches!(need, Need::Thing(_));
    let (name, shop, unit) = chosen.map_or_else(
        || (need.to_string(), "", if alone { "each" } else { "" }),
        |(s, _)| (s.name.clone(), s.shop.as_str(), unit_name(&s.form)),
    );
    let count = match (chosen, amount) {
        (Some((_, count)), _) => Some(count),
        (None, Amount::Count(count)) if alone => Some(count),
        _ => None,
    };
    Some(Purchase {
        need: need.clone(),
        name,
        shop: shop.to_owned(),
        unit: unit.to_owned(),
        count,
        needed: amount.spell(design.project.units),
        price: chosen.and_then(|(s, _)| s.price),
        example: chosen.is_some_and(|(s, _)| s.example),
        shares,
    })
}
