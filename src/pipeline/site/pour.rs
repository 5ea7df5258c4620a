//! The pour.

mod facts;
mod sheet;
mod spelling;
mod tables;

use crate::catalog::{Form, Gives};
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::site::pour::Mixed;
use crate::takeoff::mixes::{Bags, Mix, mixes};
use crate::takeoff::{quantities, sheets::Laying};
use crate::units::Volume;

pub(super) use sheet::sheet;
pub(super) use tables::tables;

/// What is mixed of the bags that the takeoff buys.
pub(super) fn mixed(plan: &Plan, assembly: &Assembly) -> Vec<Mixed> {
    let laying = Laying::of(plan, assembly);
    let quantities = quantities::quantities(plan, assembly, &laying);
    let mixes = mixes(&plan.design, &quantities);
    mixes.iter().filter_map(|m| one(plan, m)).collect()
}

fn one(plan: &Plan, mix: &Mix) -> Option<Mixed> {
    let notation = plan.design.project.units;
    let bags: &Bags = mix.bags.as_ref()?;
    let batch = bags.batch?;
    let Form::Bag { mass, gives, .. } = &bags.supply.form else {
        return None;
    };
    let volume = match gives {
        Gives::Volume(each) => Some(*each * bags.exact),
        Gives::Area(_) => None,
    };
    let water = bags.batch_water;
    Some(Mixed {
        need: mix.need.clone(),
        bag: bags.supply.name.clone(),
        weight: Some(*mass),
        needed: mix.needed.spell(notation),
        volume,
        exact: bags.exact,
        net: bags.net,
        count: bags.count,
        bags_a_batch: f64::from(batch.bags) / f64::from(batch.parts.max(1)),
        batch: batch.spell(),
        water: water.map(|w| w.volume),
        mark: water.map_or_else(String::new, |w| w.spell_mark(notation)),
        batches: bags.batches,
    })
}

/// Litres or United States quarts.
pub(super) fn water(imperial: bool, volume: Volume) -> (f64, &'static str) {
    if imperial {
        (volume.mm3() / (57.75 * 16_387.064), "qt")
    } else {
        (volume.mm3() / 1.0e6, "L")
    }
}
