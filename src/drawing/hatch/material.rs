//! What things are made of, as far as hatches tell it apart.

use crate::parts::{Part, PartKind};

/// A material with a hatch of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Material {
    /// Studs, tracks, channels.
    Steel,
    /// Cement board.
    Board,
    /// The coat on the board.
    BaseCoat,
    /// The coat one sees.
    FinishCoat,
    /// Tile with its bed.
    Tile,
    /// The counter, and slabs on the ground.
    Concrete,
    /// A sheet of plies.
    Plywood,
    /// Sleepers, decks.
    Timber,
    /// The ground.
    Earth,
    /// Pavers.
    Pavers,
}

impl Material {
    /// What a part is made of; `None` for envelopes, which are not cut.
    pub fn of(part: &Part) -> Option<Self> {
        match part.kind {
            PartKind::Stud
            | PartKind::Jamb
            | PartKind::Cripple
            | PartKind::BottomTrack
            | PartKind::TopTrack
            | PartKind::Header
            | PartKind::Sill
            | PartKind::Tie
            | PartKind::Trimmer
            | PartKind::Blocking
            | PartKind::BaseChannel => Some(Self::Steel),
            PartKind::Sleeper => Some(Self::Timber),
            PartKind::Board => Some(Self::Board),
            PartKind::BaseCoat => Some(Self::BaseCoat),
            PartKind::FinishCoat => Some(Self::FinishCoat),
            PartKind::Tile => Some(Self::Tile),
            PartKind::Substrate => Some(Self::of_sheet(&part.material)),
            PartKind::Slab => Some(Self::Concrete),
            PartKind::EdgeForm | PartKind::CutoutForm => Some(Self::Plywood),
            PartKind::Body | PartKind::Flange | PartKind::Leaf => None,
        }
    }

    /// A sheet as the file names it: wood, or board.
    fn of_sheet(name: &str) -> Self {
        let name = name.to_lowercase();
        let wood = ["ply", "wood", "osb", "strand"];
        if wood.iter().any(|word| name.contains(word)) {
            Self::Plywood
        } else {
            Self::Board
        }
    }
}
