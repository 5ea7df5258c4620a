//! What shops sell, as the file writes it.

use super::{AreaText, CountText, Dimension, Given, MassText, PriceText, Units, VolumeText};
use schemars::JsonSchema;
use serde::Deserialize;

/// A trade file: what shops sell, beside or instead of what the program knows.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "TradeFile")]
pub struct TradeFile {
    /// The units of the parameter files that it is for. Left out, it is for all.
    #[serde(default)]
    pub units: Given<Units>,
    /// What shops sell. An entry takes the place of an earlier one of the same name.
    pub supplies: Given<Vec<Given<Supply>>>,
}

/// One thing that a shop sells.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Supply {
    /// What the shop calls it. It takes the place of anything of the same name that is known already.
    pub name: Given<String>,
    /// What it serves, one or several: sleeper, shim, base channel, board, substrate, form plywood, reinforcing mesh,
    /// standoff, concrete, base coat, finish coat, bonding adhesive, joint tape, corner mesh, tile, thinset, grout,
    /// sealer, steel screw, board screw, form screw, sleeper screw; a steel section by its designation; or an
    /// appliance or opening of this file by its name.
    #[serde(rename = "for")]
    pub serves: Given<Serves>,
    /// The unit in which it is sold.
    pub sold: Given<Sold>,
    /// Its cross-section or face, where it serves only that size: a sleeper, a tile, a base channel.
    #[serde(default)]
    pub size: Given<Size>,
    /// How long a screw or how high a standoff is. With it, it serves only what asks for that length; without, any.
    #[serde(default)]
    pub length: Given<Dimension>,
    /// Where one buys it.
    #[serde(default)]
    pub shop: Given<String>,
    /// What one unit costs, before tax. Leave it out when it is not known: the order list says so.
    #[serde(default)]
    pub price: Given<PriceText>,
    /// True when the price is an invented example. Usual: false.
    #[serde(default)]
    pub example: Given<bool>,
}

/// One need, or a list of several.
#[derive(Clone, Debug, PartialEq, JsonSchema)]
#[schemars(untagged)]
pub enum Serves {
    /// One.
    One(String),
    /// Several.
    Several(Vec<Given<String>>),
}

impl<'de> Deserialize<'de> for Serves {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(ServesVisitor)
    }
}

struct ServesVisitor;

impl<'de> serde::de::Visitor<'de> for ServesVisitor {
    type Value = Serves;

    fn expecting(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        f.write_str("a name or a list of names")
    }

    fn visit_str<E>(self, text: &str) -> Result<Serves, E> {
        Ok(Serves::One(text.to_owned()))
    }

    fn visit_seq<A: serde::de::SeqAccess<'de>>(self, mut seq: A) -> Result<Serves, A::Error> {
        let mut names = Vec::new();
        while let Some(name) = seq.next_element()? {
            names.push(name);
        }
        Ok(Serves::Several(names))
    }
}

/// A cross-section or a face.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Size {
    /// Across, or along the face.
    pub width: Given<Dimension>,
    /// Up.
    pub height: Given<Dimension>,
}

/// The unit in which something is sold.
#[derive(Clone, Debug, PartialEq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Sold {
    /// A length to cut pieces from.
    Stick {
        /// Its length.
        length: Given<Dimension>,
    },
    /// A sheet to cut pieces from, or to lay.
    Sheet {
        /// The long side, along the grain where there is one.
        length: Given<Dimension>,
        /// The short side.
        width: Given<Dimension>,
        /// Its thickness; left out for mesh.
        #[serde(default)]
        thickness: Given<Dimension>,
    },
    /// A bag of dry mix. It says either what it yields or what it covers.
    Bag {
        /// What it weighs.
        weight: Given<MassText>,
        /// The mixed volume it gives.
        #[serde(default)]
        yields: Given<VolumeText>,
        /// The area it covers.
        #[serde(default)]
        covers: Given<AreaText>,
        /// Water to mix one bag with.
        #[serde(default)]
        water: Given<VolumeText>,
        /// Colour that goes into one bag, as text.
        #[serde(default)]
        colour: Given<String>,
    },
    /// A roll.
    Roll {
        /// Its length.
        length: Given<Dimension>,
        /// Its width.
        width: Given<Dimension>,
    },
    /// A can, tub or bottle.
    Can {
        /// What it covers in one coat.
        covers: Given<AreaText>,
    },
    /// A box of so many.
    Pack {
        /// How many.
        count: Given<CountText>,
    },
    /// One by one.
    Each,
}
