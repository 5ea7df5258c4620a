//! What is bought by its amount alone.

use super::choice::{cheapest, unit_name};
use super::line::Purchase;
use crate::catalog::{Need, Supply};
use crate::design::Design;
use crate::takeoff::cut_list::is_sold_in_sticks;
use crate::takeoff::sheets::mesh;
use crate::takeoff::suits::suits;
use crate::takeoff::{Amount, Quantity, Shares};
use crate::units::{Length, Notation};
use std::collections::BTreeMap;
use std::mem::discriminant;

/// What is bought by its amount alone: everything that is neither cut from sticks or sheets nor mixed from bags.
///
/// Needs that the same goods serve are bought together and rounded up once.
pub(in crate::takeoff) fn by_amount(design: &Design, quantities: &[Quantity]) -> Vec<Purchase> {
    let mut wants: BTreeMap<(&Need, i64), Want> = BTreeMap::new();
    for quantity in quantities {
        if let Some(need) = &quantity.need
            && is_by_amount(design, need)
        {
            let long = quantity
                .length
                .map_or(0, |l| (l.mm() * 1000.0).round() as i64);
            let want = wants
                .entry((need, long))
                .or_insert_with(|| Want::of(design, need, quantity));
            want.shares.add(quantity.run, quantity.amount.size());
        }
    }
    let mut groups: Vec<Want> = Vec::new();
    for want in wants.into_values() {
        match groups.iter_mut().find(|g| g.is_served_by_the_same(&want)) {
            Some(group) => group.join(want),
            None => groups.push(want),
        }
    }
    groups.iter().flat_map(|w| w.purchases(design)).collect()
}

fn is_by_amount(design: &Design, need: &Need) -> bool {
    let is_cut = match need {
        Need::CornerMesh => is_sold_in_sticks(design, need),
        Need::ReinforcingMesh => mesh::is_laid_out(design),
        _ => false,
    };
    !is_cut
        && !matches!(
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

/// What one or several needs ask for, and the goods that serve them.
struct Want<'a> {
    needs: Vec<Need>,
    /// How long, where that matters.
    length: Option<Length>,
    /// Of which kind the amounts are.
    like: Amount,
    /// Without spare.
    shares: Shares,
    spare: f64,
    supplies: Vec<&'a Supply>,
}

impl<'a> Want<'a> {
    fn of(design: &'a Design, need: &Need, quantity: &Quantity) -> Self {
        let all = design.supplies.all().iter();
        let serving = all.filter(|s| s.need == *need && suits(design, s, quantity.length));
        Self {
            needs: vec![need.clone()],
            length: quantity.length,
            like: quantity.amount,
            shares: Shares::none(design),
            spare: spare(design, need),
            supplies: serving.collect(),
        }
    }

    fn is_served_by_the_same(&self, other: &Self) -> bool {
        let names =
            |w: &Self| -> Vec<String> { w.supplies.iter().map(|s| s.name.clone()).collect() };
        !self.supplies.is_empty()
            && names(self) == names(other)
            && discriminant(&self.like) == discriminant(&other.like)
            && self.spare.total_cmp(&other.spare).is_eq()
    }

    fn join(&mut self, other: Self) {
        for need in other.needs {
            if !self.needs.contains(&need) {
                self.needs.push(need);
            }
        }
        self.shares.join(&other.shares);
    }

    /// What it is called where nobody is known to sell it.
    fn name(&self, notation: Notation) -> String {
        let needs = self.needs.iter().map(ToString::to_string);
        let length = self.length.map(|l| notation.spell_with_unit(l));
        needs.chain(length).collect::<Vec<_>>().join(", ")
    }

    fn purchases(&self, design: &Design) -> Vec<Purchase> {
        let notation = design.project.units;
        let needed = self.like.resized(self.shares.sum());
        let spared = self.like.resized(self.shares.sum() * (1.0 + self.spare));
        let chosen = cheapest(&self.supplies, spared);
        let line = Purchase {
            needs: self.needs.clone(),
            name: self.name(notation),
            shop: String::new(),
            unit: String::new(),
            count: None,
            needed: needed.spell(notation),
            spare: share_text(self.spare),
            price: None,
            example: false,
            shares: self.shares.clone(),
        };
        if let (true, Amount::Count(count), [Need::Thing(_)]) =
            (chosen.is_empty(), needed, &self.needs[..])
        {
            let unit = "each".to_owned();
            let count = Some(count);
            return vec![Purchase {
                unit,
                count,
                ..line
            }];
        }
        if chosen.is_empty() {
            return vec![line];
        }
        let several = chosen.len() > 1;
        let bought = chosen.into_iter().map(|(supply, count)| {
            let needed = needed.spell(notation);
            Purchase {
                name: supply.name.clone(),
                shop: supply.shop.clone(),
                unit: unit_name(&supply.form).to_owned(),
                count: Some(count),
                needed: if several {
                    format!("part of {needed}")
                } else {
                    needed
                },
                price: supply.price,
                example: supply.example,
                ..line.clone()
            }
        });
        bought.collect()
    }
}

/// A spare share as text; nothing for none.
pub(super) fn share_text(share: f64) -> String {
    if share > 0.0 {
        let percent = format!("{:.2}", share * 100.0);
        let percent = percent.trim_end_matches('0').trim_end_matches('.');
        format!("{percent} %")
    } else {
        String::new()
    }
}
