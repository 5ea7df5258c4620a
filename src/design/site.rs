//! The site: the ground, the weather, what stands around, and who uses the island.

use super::{Placed, Survey};
use crate::diagnostics::Place;
use crate::geometry::LeaningBox;
use crate::units::{Length, Stress};

/// The ground that carries the island, by the classes of presumptive bearing values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// Crystalline bedrock.
    Bedrock,
    /// Sedimentary or foliated rock.
    SedimentaryRock,
    /// Sandy gravel or gravel.
    Gravel,
    /// Sand, silty sand, clayey sand, silty or clayey gravel.
    Sand,
    /// Clay, sandy clay, silt and the like.
    Clay,
}

/// What lies on the ground under the island.
#[derive(Clone, Debug, PartialEq)]
pub enum Surface {
    /// Nothing: the sleepers stand on the ground.
    Bare,
    /// A slab of concrete.
    Slab {
        /// Its thickness.
        thickness: Placed<Length>,
    },
    /// Pavers on bedding.
    Pavers {
        /// The shorter side of one.
        size: Placed<Length>,
        /// Its thickness.
        thickness: Placed<Length>,
    },
    /// A deck of wood on joists.
    Deck,
}

/// What an object of the site is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ObjectKind {
    /// A post.
    Post,
    /// A beam.
    Beam,
    /// A wall.
    Wall,
    /// A fence or hedge.
    Fence,
    /// A roof or ceiling.
    Roof,
    /// A way that people walk.
    Walkway,
    /// Anything else that stands in the way.
    Other,
}

impl ObjectKind {
    /// Its name in messages.
    pub fn name(self) -> &'static str {
        match self {
            Self::Post => "post",
            Self::Beam => "beam",
            Self::Wall => "wall",
            Self::Fence => "fence",
            Self::Roof => "roof",
            Self::Walkway => "walkway",
            Self::Other => "object",
        }
    }
}

/// Something that stands around the island: a box, upright or leaning, in world coordinates (x along the first run from its left end, y away
/// from its working side, z up from the datum), millimetres.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteObject {
    /// Its name, unique.
    pub name: String,
    /// Its entry in the file.
    pub place: Place,
    /// What it is.
    pub kind: ObjectKind,
    /// Whether it can burn; `None` where the file does not say.
    pub combustible: Option<Placed<bool>>,
    /// Its corner with the smallest coordinates; where it leans, that of the upright box round it.
    pub low: [f64; 3],
    /// Its corner with the largest coordinates, likewise.
    pub high: [f64; 3],
    /// It as it stands.
    pub stands: LeaningBox,
}

/// The site. What the file does not say is `None`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Site {
    /// Its group in the file.
    pub place: Place,
    /// The ground.
    pub ground: Option<Placed<Ground>>,
    /// What the ground bears, where it is known better than by its class.
    pub bearing: Option<Placed<Stress>>,
    /// What lies on it.
    pub surface: Option<Placed<Surface>>,
    /// The ground as it was measured; `None` where it was not.
    pub survey: Option<Survey>,
    /// Whether it freezes there.
    pub freezing: Option<Placed<bool>>,
    /// What stands around; `None` where the file says nothing, an empty list where nothing stands there.
    pub objects: Option<Placed<Vec<SiteObject>>>,
}

/// Who uses the island. What the file does not say is `None`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct People {
    /// Its group in the file.
    pub place: Place,
    /// How many sit at the seating side, all runs together.
    pub seats: Option<Placed<u32>>,
    /// Whether people pass behind the seats: nobody, edging past, or walking past.
    pub behind_seats: Option<Placed<Passage>>,
    /// Whether a part of the counter is to be used from a wheelchair.
    pub accessible: Option<Placed<bool>>,
}

/// How people pass behind those who sit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passage {
    /// Nobody passes.
    Nobody,
    /// People edge past.
    Edging,
    /// People walk past.
    Walking,
}
