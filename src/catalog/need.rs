//! What an island needs from a shop.

use std::fmt;

/// A kind of material or thing that is bought.
///
/// A supply says which need it serves by the need's name.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Need {
    /// A steel section by its designation, in sticks.
    Steel(String),
    /// The rot-proof strip under the frame, in sticks.
    Sleeper,
    /// Shims that pack the sleepers to level.
    Shim,
    /// The channel in which board and base coat stand, in sticks.
    BaseChannel,
    /// Cement board, in sheets.
    Board,
    /// What the counter is cast on, in sheets.
    Substrate,
    /// Plywood for edge forms and cutout forms, in sheets.
    FormPlywood,
    /// Welded wire mesh in the slab, in sheets.
    ReinforcingMesh,
    /// What holds the mesh off the substrate.
    Standoff,
    /// The slab's mix, in bags.
    Concrete,
    /// The coat on the board, in bags.
    BaseCoat,
    /// The coat one sees, in bags.
    FinishCoat,
    /// Goes on the board before the base coat.
    BondingAdhesive,
    /// Alkali-resistant tape over board joints, in rolls.
    JointTape,
    /// Mesh angle on outer corners, in sticks or rolls.
    CornerMesh,
    /// Tiles of the band.
    Tile,
    /// What tiles are set in, in bags.
    Thinset,
    /// What fills their joints, in bags.
    Grout,
    /// Seals counter and finish coat, in cans.
    Sealer,
    /// Joins steel to steel.
    SteelScrew,
    /// Joins board and substrate to steel.
    BoardScrew,
    /// Joins forms to each other and to the frame.
    FormScrew,
    /// Joins bottom tracks to sleepers.
    SleeperScrew,
    /// An appliance or what fills an opening, by its name in the parameter file.
    Thing(String),
}

/// Every need that has a fixed name.
const NAMED: [(Need, &str); 22] = [
    (Need::Sleeper, "sleeper"),
    (Need::Shim, "shim"),
    (Need::BaseChannel, "base channel"),
    (Need::Board, "board"),
    (Need::Substrate, "substrate"),
    (Need::FormPlywood, "form plywood"),
    (Need::ReinforcingMesh, "reinforcing mesh"),
    (Need::Standoff, "standoff"),
    (Need::Concrete, "concrete"),
    (Need::BaseCoat, "base coat"),
    (Need::FinishCoat, "finish coat"),
    (Need::BondingAdhesive, "bonding adhesive"),
    (Need::JointTape, "joint tape"),
    (Need::CornerMesh, "corner mesh"),
    (Need::Tile, "tile"),
    (Need::Thinset, "thinset"),
    (Need::Grout, "grout"),
    (Need::Sealer, "sealer"),
    (Need::SteelScrew, "steel screw"),
    (Need::BoardScrew, "board screw"),
    (Need::FormScrew, "form screw"),
    (Need::SleeperScrew, "sleeper screw"),
];

impl Need {
    /// The need of a fixed name.
    pub fn named(name: &str) -> Option<Self> {
        NAMED
            .iter()
            .find(|(_, n)| *n == name)
            .map(|(need, _)| need.clone())
    }

    /// All fixed names.
    pub fn names() -> impl Iterator<Item = &'static str> {
        NAMED.iter().map(|(_, name)| *name)
    }
}

impl fmt::Display for Need {
    /// Its name, as a supply writes it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Steel(name) | Self::Thing(name) => f.write_str(name),
            _ => {
                let found = NAMED.iter().find(|(need, _)| need == self);
                f.write_str(found.map_or("", |(_, name)| name))
            }
        }
    }
}
