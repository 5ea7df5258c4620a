//! What shops sell.

use super::Need;
use crate::diagnostics::Place;
use crate::units::{Area, Length, Mass, Money, Volume};

/// One thing that a shop sells.
#[derive(Clone, Debug, PartialEq)]
pub struct Supply {
    /// What the shop calls it. What serves several needs is there once for each.
    pub name: String,
    /// What it serves.
    pub need: Need,
    /// The unit in which it is sold.
    pub form: Form,
    /// Width and height of its cross-section or face, where it serves only that size: a sleeper, a tile, a base channel.
    pub size: Option<(Length, Length)>,
    /// How long a screw or how high a standoff is, where it serves only designs that ask for it.
    pub length: Option<Length>,
    /// Where one buys it.
    pub shop: String,
    /// What one unit costs, before tax; `None` when that is not known.
    pub price: Option<Money>,
    /// True when the price is an invented example.
    pub example: bool,
    /// Where it stands in the parameter file; not known of trade data.
    pub place: Place,
}

/// The unit in which something is sold.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// A length to cut pieces from.
    Stick {
        /// Its length.
        length: Length,
    },
    /// A sheet to cut pieces from, or to lay.
    Sheet {
        /// The long side, along the grain where there is one.
        length: Length,
        /// The short side.
        width: Length,
        /// Its thickness; zero for mesh.
        thickness: Length,
    },
    /// A bag of dry mix.
    Bag {
        /// What it weighs.
        mass: Mass,
        /// How far it goes.
        gives: Gives,
        /// Water to mix it with.
        water: Option<Volume>,
        /// Colour that goes into one bag, as written; empty for none.
        colour: String,
    },
    /// A roll.
    Roll {
        /// Its length.
        length: Length,
        /// Its width.
        width: Length,
    },
    /// A can, tub or bottle that covers so much in one coat.
    Can {
        /// What it covers.
        covers: Area,
    },
    /// A box of so many.
    Pack {
        /// How many.
        count: u32,
    },
    /// One.
    Each,
}

/// How far a bag goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Gives {
    /// So much mixed volume.
    Volume(Volume),
    /// So much area covered.
    Area(Area),
}

/// Everything that is sold, in the order it was given.
///
/// Invariant: no two have both name and need in common, and all prices are in one currency.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Supplies {
    list: Vec<Supply>,
}

impl Supplies {
    /// What serves a need, in the order given.
    pub fn of<'a>(&'a self, need: &'a Need) -> impl Iterator<Item = &'a Supply> {
        self.list.iter().filter(move |s| s.need == *need)
    }

    /// All of them.
    pub fn all(&self) -> &[Supply] {
        &self.list
    }

    /// Adds a supply; one of the same name for the same need is replaced.
    pub fn put(&mut self, supply: Supply) {
        let same = |s: &&mut Supply| s.name == supply.name && s.need == supply.need;
        match self.list.iter_mut().find(same) {
            Some(known) => *known = supply,
            None => self.list.push(supply),
        }
    }
}

impl FromIterator<Supply> for Supplies {
    /// Keeps the order; no two may have both name and need in common.
    fn from_iter<I: IntoIterator<Item = Supply>>(supplies: I) -> Self {
        Self {
            list: supplies.into_iter().collect(),
        }
    }
}
