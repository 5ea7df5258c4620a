//! Bags from quantities.

use super::bucket::mixed;
use super::{Bags, Batch, Mix, Water};
use crate::catalog::{Form, Need, Supply};
use crate::design::Design;
use crate::takeoff::order::{units, whole};
use crate::takeoff::{Amount, Quantity, Shares};
use crate::units::{Area, Volume};

/// What is mixed, in the order of the work.
const MIXED: [Need; 5] = [
    Need::BaseCoat,
    Need::FinishCoat,
    Need::Thinset,
    Need::Grout,
    Need::Concrete,
];

/// Everything that is bought in bags or cans by how far it goes, from quantities without spare.
///
/// Of the supplies that serve a need the one with the least cost is taken, or the first where none has a price. Concrete
/// is bought with its spare share and with no fewer spare bags than the file says, whichever is more.
pub fn mixes(design: &Design, quantities: &[Quantity]) -> Vec<Mix> {
    MIXED
        .iter()
        .filter_map(|need| mix(design, need, quantities))
        .collect()
}

fn mix(design: &Design, need: &Need, quantities: &[Quantity]) -> Option<Mix> {
    let own: Vec<&Quantity> = quantities
        .iter()
        .filter(|q| q.need.as_ref() == Some(need))
        .collect();
    let totals = totals(&own);
    let spare = spare(design, need);
    let served = design
        .supplies
        .of(need)
        .filter_map(|supply| bags(design, supply, &totals, spare));
    let chosen = served.min_by_key(|(bags, _)| {
        let cost = bags.supply.price.map(|p| p.times(bags.count));
        (cost.is_none(), cost)
    });
    let needed = chosen.as_ref().map(|(_, needed)| *needed);
    let needed = needed.or_else(|| totals.last().copied())?;
    Some(Mix {
        need: need.clone(),
        needed,
        spare,
        bags: chosen.map(|(bags, _)| bags),
        shares: shares(design, &own, needed),
    })
}

/// The whole area and the whole volume, where there is any.
fn totals(own: &[&Quantity]) -> Vec<Amount> {
    let kinds = [Amount::Area(Area::ZERO), Amount::Volume(Volume::ZERO)];
    let sum = |kind: Amount| {
        let same = own.iter().filter(|q| alike(q.amount, kind));
        kind.resized(same.map(|q| q.amount.size()).sum())
    };
    kinds
        .map(sum)
        .into_iter()
        .filter(|t| t.size() > 0.0)
        .collect()
}

fn alike(a: Amount, b: Amount) -> bool {
    std::mem::discriminant(&a) == std::mem::discriminant(&b)
}

fn shares(design: &Design, own: &[&Quantity], like: Amount) -> Shares {
    let mut shares = Shares::none(design);
    for quantity in own.iter().filter(|q| alike(q.amount, like)) {
        shares.add(quantity.run, quantity.amount.size());
    }
    shares
}

fn spare(design: &Design, need: &Need) -> f64 {
    let spare = &design.buying.spare;
    match need {
        Need::Concrete => spare.concrete.value,
        Need::BaseCoat | Need::FinishCoat => spare.coats.value,
        _ => spare.mortar.value,
    }
}

/// The bags of one supply, and the amount they are reckoned from; `None` when it is not sold in bags or cans that say
/// how far they go.
fn bags(design: &Design, supply: &Supply, totals: &[Amount], spare: f64) -> Option<(Bags, Amount)> {
    if !matches!(supply.form, Form::Bag { .. } | Form::Can { .. }) {
        return None;
    }
    let found = totals
        .iter()
        .find_map(|t| Some((*t, units(&supply.form, *t)?)));
    let (needed, exact) = found?;
    let net = whole(exact);
    let mut count = whole(exact * (1.0 + spare));
    if supply.need == Need::Concrete {
        count = count.max(net.saturating_add(design.buying.spare.concrete_bags));
    }
    let (buying, notation) = (&design.buying, design.project.units);
    let capacity = match supply.need {
        Need::Concrete => buying.mixer,
        _ => buying.bucket,
    };
    let batch = Batch::of(&supply.form, capacity, exact);
    let tub = mixed(&supply.form).filter(|m| {
        let is_whole = batch.is_some_and(|b| b.parts == 1);
        is_whole && *m > capacity
    });
    let of_bag = match supply.form {
        Form::Bag { water, .. } => water,
        _ => None,
    };
    let in_bucket = |water: Volume| Water::of(water, buying, notation);
    let batch_water = of_bag.zip(batch).map(|(water, batch)| batch.share(water));
    let bags = Bags {
        supply: supply.clone(),
        exact,
        net,
        count: count.max(net),
        water: of_bag.and_then(in_bucket),
        batch,
        tub,
        batch_water: batch_water.and_then(in_bucket),
        batches: batch.map_or(0, |b| b.count(exact)),
    };
    Some((bags, needed))
}
