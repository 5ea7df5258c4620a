//! One piece.

use super::SolidId;
use crate::geometry::Placement;
use crate::units::Length;

/// What a part is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartKind {
    /// A full-height upright on the grid, at an end or at a corner.
    Stud,
    /// The upright beside an opening.
    Jamb,
    /// A short upright above or below an opening.
    Cripple,
    /// The channel the studs stand in.
    BottomTrack,
    /// The channel on top of them.
    TopTrack,
    /// The channel above an opening, or below the panel of an appliance.
    Header,
    /// The channel below an opening.
    Sill,
    /// Front to back under the counter.
    Tie,
    /// A tie at the edge of a cutout.
    Trimmer,
    /// Between trimmers under a cutout's end, or behind a board joint.
    Blocking,
    /// Under the bottom tracks.
    Sleeper,
    /// Receives board and coats at the bottom.
    BaseChannel,
    /// Cement board.
    Board,
    /// The coat on the board.
    BaseCoat,
    /// The coat one sees.
    FinishCoat,
    /// One tile of the band.
    Tile,
    /// What the counter is cast on.
    Substrate,
    /// The counter.
    Slab,
    /// Shapes the slab's edge.
    EdgeForm,
    /// Keeps a cutout open during the pour.
    CutoutForm,
    /// Envelope of an appliance below the counter.
    Body,
    /// Envelope of an appliance's flange on the counter or of an opening's flange on the face.
    Flange,
    /// Envelope of a door, drawer front, hatch, vent or receptacle cover.
    Leaf,
}

impl PartKind {
    /// Its name in lists.
    pub fn name(self) -> &'static str {
        match self {
            Self::Stud => "stud",
            Self::Jamb => "jamb",
            Self::Cripple => "cripple",
            Self::BottomTrack => "bottom track",
            Self::TopTrack => "top track",
            Self::Header => "header",
            Self::Sill => "sill",
            Self::Tie => "tie",
            Self::Trimmer => "trimmer",
            Self::Blocking => "blocking",
            Self::Sleeper => "sleeper",
            Self::BaseChannel => "base channel",
            Self::Board => "board",
            Self::BaseCoat => "base coat",
            Self::FinishCoat => "finish coat",
            Self::Tile => "tile",
            Self::Substrate => "substrate",
            Self::Slab => "slab",
            Self::EdgeForm => "edge form",
            Self::CutoutForm => "cutout form",
            Self::Body => "body",
            Self::Flange => "flange",
            Self::Leaf => "leaf",
        }
    }
}

/// Which model a part is written to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// Steel, sleepers.
    Framing,
    /// Base channel and boards.
    Boards,
    /// Base coat, finish coat, tile.
    Coats,
    /// Substrate and slab.
    Counter,
    /// Edge forms and cutout forms: gone when the island is done.
    Forms,
    /// Envelopes of appliances, doors and the like.
    Appliances,
}

impl Group {
    /// All groups in the order they are built.
    pub const ALL: [Self; 6] = [
        Self::Framing,
        Self::Boards,
        Self::Coats,
        Self::Counter,
        Self::Forms,
        Self::Appliances,
    ];

    /// Its name in file names.
    pub fn name(self) -> &'static str {
        match self {
            Self::Framing => "framing",
            Self::Boards => "boards",
            Self::Coats => "coats",
            Self::Counter => "counter",
            Self::Forms => "forms",
            Self::Appliances => "appliances",
        }
    }
}

/// One piece of the island.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its mark, unique in the island and stable between builds, such as `C-S07`.
    pub mark: String,
    /// What it is.
    pub kind: PartKind,
    /// Which model it belongs to.
    pub group: Group,
    /// Number of its run; `None` when it spans several.
    pub run: Option<usize>,
    /// Number of the face it belongs to, where it belongs to one: what a drawing of that face shows.
    pub face: Option<usize>,
    /// What it is made of, such as `galvanised steel`.
    pub material: String,
    /// Its section or sheet, such as `362S125-33`; for envelopes, what it stands for.
    pub section: String,
    /// Its length to cut; for sheets the long side.
    pub length: Length,
    /// Its shape.
    pub solid: SolidId,
    /// Where the shape stands.
    pub placement: Placement,
}
