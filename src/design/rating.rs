//! What an appliance's own instructions say of it: what it burns, how hot, how heavy, how far from what burns.

use super::{Appliance, Placed};
use crate::units::{Length, Mass, Power};

/// What an appliance runs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fuel {
    /// Natural gas, lighter than air.
    NaturalGas,
    /// Propane, heavier than air.
    Propane,
    /// Charcoal.
    Charcoal,
    /// Wood.
    Wood,
    /// Electricity.
    Electricity,
    /// Nothing, such as a sink or an ice well.
    Nothing,
}

impl Fuel {
    /// Its name in messages.
    pub fn name(self) -> &'static str {
        match self {
            Self::NaturalGas => "natural gas",
            Self::Propane => "propane",
            Self::Charcoal => "charcoal",
            Self::Wood => "wood",
            Self::Electricity => "electricity",
            Self::Nothing => "nothing",
        }
    }

    /// True for natural gas and propane.
    pub fn is_gas(self) -> bool {
        matches!(self, Self::NaturalGas | Self::Propane)
    }

    /// True where something is burnt.
    pub fn burns(self) -> bool {
        !matches!(self, Self::Electricity | Self::Nothing)
    }
}

/// Distances to what can burn that an appliance's own instructions ask for; `None` where the file does not say.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Clearances {
    /// Behind its body.
    pub back: Option<Placed<Length>>,
    /// Beside its body.
    pub sides: Option<Placed<Length>>,
    /// Above the counter.
    pub above: Option<Placed<Length>>,
    /// Below its body.
    pub below: Option<Placed<Length>>,
}

/// A drain pipe from a sink or an ice well.
#[derive(Clone, Debug, PartialEq)]
pub struct Drain {
    /// Its nominal diameter.
    pub size: Placed<Length>,
    /// How long it runs before it drops into what takes the water.
    pub length: Placed<Length>,
    /// How much it falls over that length.
    pub fall: Placed<Length>,
    /// True when it has a trap.
    pub trapped: Option<Placed<bool>>,
}

/// What is known of an appliance beyond its sizes. What the file does not say is `None`: the rules that need it say
/// `not checked`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rating {
    /// What it runs on.
    pub fuel: Option<Placed<Fuel>>,
    /// How much heat its burners put out at most.
    pub heat_input: Option<Placed<Power>>,
    /// How heavy it is.
    pub weight: Option<Placed<Mass>>,
    /// The air that its instructions ask for between body and cutout, on each side.
    pub gap: Option<Placed<Length>>,
    /// Distances to what can burn.
    pub clearance: Clearances,
    /// Its drain.
    pub drain: Option<Placed<Drain>>,
}

/// Words that tell what an appliance is for, as they occur in its kind.
const COOKING: [&str; 9] = [
    "grill", "burner", "griddle", "oven", "smoker", "wok", "hob", "cooktop", "fryer",
];

impl Appliance {
    /// True when it gives off heat: by what it burns, or by its kind.
    pub fn cooks(&self) -> bool {
        let burns = self.rating.fuel.as_ref().is_some_and(|f| f.burns());
        burns || self.is_one_of(&COOKING)
    }

    /// True for sinks.
    pub fn is_sink(&self) -> bool {
        self.is_one_of(&["sink"])
    }

    /// True for ice wells and the like, which collect water too.
    pub fn holds_ice(&self) -> bool {
        self.is_one_of(&["ice", "cooler", "chiller"])
    }

    /// True when one of these words stands in its kind.
    fn is_one_of(&self, words: &[&str]) -> bool {
        let kind = self.kind.to_lowercase();
        kind.split(|c: char| !c.is_alphanumeric()).any(|w| {
            words
                .iter()
                .any(|k| w == *k || w.strip_suffix('s') == Some(k))
        })
    }
}
