//! What the parts of a takeoff come to in purchases.

use super::choice::{cheapest, unit_name};
use super::line::Purchase;
use crate::catalog::Need;
use crate::design::Design;
use crate::takeoff::cut_list::CutList;
use crate::takeoff::suits::suits;
use crate::takeoff::{Amount, Quantity};
use std::collections::BTreeMap;

/// The sticks of a cut list, a line a length. Their cost goes to the runs by the length of their pieces.
pub(in crate::takeoff) fn sticks(design: &Design, list: &CutList) -> Vec<Purchase> {
    let notation = design.project.units;
    let bought = list.stock.iter().enumerate();
    let bought = bought.filter(|(i, _)| list.counts[*i] > 0);
    bought
        .map(|(i, stick)| {
            let mut shares = vec![0.0; design.runs.len() + 1];
            let mut needed = 0.0;
            let sticks = list.sticks.iter().filter(|s| s.stock == i);
            for cut in sticks.flat_map(|s| &s.cuts) {
                let piece = &list.pieces[cut.piece];
                needed += f64::from(piece.length);
                shares[piece.run.unwrap_or(design.runs.len())] += f64::from(piece.length);
            }
            Purchase {
                need: list.need.clone(),
                name: stick.name.clone(),
                shop: stick.shop.clone(),
                unit: "stick".to_owned(),
                count: Some(list.counts[i]),
                needed: notation.spell_with_unit(notation.step() * needed),
                price: stick.price,
                example: stick.example,
                shares,
            }
        })
        .collect()
}

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
    let mut shares = vec![0.0; design.runs.len() + 1];
    for quantity in group {
        shares[quantity.run.unwrap_or(design.runs.len())] += quantity.amount.size();
    }
    let first = group.first()?.amount;
    let needed: f64 = shares.iter().sum();
    let amount = first.resized(needed * (1.0 + spare(design, need)));
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
