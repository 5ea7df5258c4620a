//! Gas, electricity and the closed compartments they stand in.

use super::{Fuel, Placed};
use crate::diagnostics::Place;
use crate::units::{Length, Mass, Stress};

/// A stretch of a run that is closed off from the rest inside, such as the room for a cylinder. Where the file names none,
/// the whole inside of the island is one compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct Compartment {
    /// Its name, unique.
    pub name: String,
    /// Its entry in the file.
    pub place: Place,
    /// Number of its run.
    pub run: usize,
    /// Where it begins, from the run's left end.
    pub from: Placed<Length>,
    /// Where it ends, from the run's left end.
    pub to: Placed<Length>,
    /// Its floor above the datum.
    pub floor: Placed<Length>,
}

/// Which edition of the standard for cylinder enclosures holds; both are in circulation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EnclosureEdition {
    /// Openings on opposite sides at valve level and at the floor.
    A,
    /// Openings near the top, 90 degrees apart, and at the floor.
    B,
}

/// A propane cylinder in the island.
#[derive(Clone, Debug, PartialEq)]
pub struct Cylinder {
    /// How much propane it holds.
    pub capacity: Placed<Mass>,
    /// The name of the compartment it stands in; `None` when it stands outside the island.
    pub compartment: Option<Placed<String>>,
    /// Height of its valve above its foot.
    pub valve: Placed<Length>,
}

/// Of what a gas pipe is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PipeMaterial {
    /// Schedule 40 steel.
    Steel,
    /// Corrugated flexible tubing: sized only by its maker's tables.
    Corrugated,
}

/// One stretch of gas pipe between two branchings.
#[derive(Clone, Debug, PartialEq)]
pub struct GasPipe {
    /// Its name, unique among the pipes.
    pub name: String,
    /// Its entry in the file.
    pub place: Place,
    /// The number of the pipe it branches from; `None` for the one that starts at the supply.
    pub from: Option<usize>,
    /// Its length.
    pub length: Placed<Length>,
    /// Its nominal size, as it is called: 1/2, 3/4, 1 or 1-1/4 in.
    pub size: Placed<Length>,
    /// Of what it is.
    pub material: Placed<PipeMaterial>,
    /// The number of the appliance at its end.
    pub serves: Option<Placed<usize>>,
}

/// The gas supply.
#[derive(Clone, Debug, PartialEq)]
pub struct Gas {
    /// Its group in the file.
    pub place: Place,
    /// Natural gas or propane.
    pub fuel: Placed<Fuel>,
    /// The drop in pressure that may be used up from the supply to the farthest appliance.
    pub allowed_drop: Option<Placed<Stress>>,
    /// The pipes; each comes after the one that it branches from.
    pub pipes: Vec<GasPipe>,
    /// The cylinder, where there is one.
    pub cylinder: Option<Placed<Cylinder>>,
    /// Which edition of the enclosure standard holds.
    pub edition: Option<Placed<EnclosureEdition>>,
    /// The name of the opening through which the main shut-off valve is reached.
    pub shut_off: Option<Placed<String>>,
    /// How far behind the face of that opening the valve is.
    pub shut_off_depth: Option<Placed<Length>>,
    /// True when each pipe has a sleeve or bushing where it passes through steel.
    pub sleeves: Option<Placed<bool>>,
}

/// The electric supply within the island.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Electricity {
    /// Its group in the file.
    pub place: Place,
    /// The outside diameter of the conduit or cable.
    pub conduit: Option<Placed<Length>>,
    /// The height of its path above the datum.
    pub height: Option<Placed<Length>>,
    /// True when there are bushings where it passes through steel.
    pub bushings: Option<Placed<bool>>,
    /// The names of the openings that it feeds in order, as it runs through the frame.
    pub feeds: Vec<Placed<String>>,
}
