//! The ground and the shims under the sleepers: a plan of the packs, a plan of the levels, and their schedules.

mod schedules;

use crate::drawing::border::Frame;
use crate::drawing::plans;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::table::Table;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Shims";

const SHIMS: &str = "Shim plan";
const LEVELS: &str = "Levels of the ground";
const SCHEDULES: &str = "Shims and levels: schedules";

/// What the sheets show. Points are in the world, millimetres; texts are spelt already.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ShimPlan {
    /// What is said above the plan of the packs.
    pub pack_notes: Vec<String>,
    /// What is said above the plan of the levels.
    pub level_notes: Vec<String>,
    /// What the key of the plan of the packs says beside its symbols.
    pub pack_words: Vec<String>,
    /// What that of the levels says.
    pub level_words: Vec<String>,
    /// The packs; without any there is no plan of them.
    pub packs: Vec<PackMark>,
    /// The levels.
    pub levels: Vec<LevelMark>,
    /// The datum.
    pub datum: Option<Point2>,
    /// The way the ground falls, where it does.
    pub fall: Option<FallArrow>,
    /// Where the ground has a round height.
    pub contours: Vec<ContourLine>,
    /// From one of these lines to the next.
    pub interval: String,
    /// What leans.
    pub leans: Vec<LeanMark>,
    /// The schedules, each with its notes.
    pub schedules: Vec<(Table, Vec<String>)>,
}

/// A pack of shims.
#[derive(Clone, Debug, PartialEq)]
pub struct PackMark {
    /// Its number.
    pub number: usize,
    /// The middle of it.
    pub at: Point2,
    /// The way out from the panel over it, a unit vector.
    pub out: Vector2,
    /// Its height.
    pub text: String,
    /// True where the ground is not well known.
    pub unsure: bool,
}

/// A spot level.
#[derive(Clone, Debug, PartialEq)]
pub struct LevelMark {
    /// Its name.
    pub name: String,
    /// Where it was taken.
    pub at: Point2,
    /// Its height.
    pub text: String,
    /// What else is said of it.
    pub words: String,
    /// How it stands to the ground round it.
    pub form: LevelForm,
}

/// How a level stands to the ground round it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LevelForm {
    /// Like the rest.
    Plain,
    /// Above it.
    Peak,
    /// Below it.
    Hollow,
}

/// The way the ground falls.
#[derive(Clone, Debug, PartialEq)]
pub struct FallArrow {
    /// The way down, a unit vector.
    pub down: Vector2,
    /// How much.
    pub text: String,
}

/// A contour line.
#[derive(Clone, Debug, PartialEq)]
pub struct ContourLine {
    /// Its height.
    pub text: String,
    /// Its pieces.
    pub pieces: Vec<[Point2; 2]>,
}

/// Something that leans.
#[derive(Clone, Debug, PartialEq)]
pub struct LeanMark {
    /// The ground it takes at its foot.
    pub foot: Bounds2,
    /// The way it leans, a unit vector.
    pub way: Vector2,
    /// What, and how much.
    pub text: String,
}

/// Which sheets there are.
pub fn planned(_: &Plan, _: &Assembly, frame: &Frame) -> Vec<Planned> {
    let Some(shown) = &frame.told().site.shims else {
        return Vec::new();
    };
    let one = |stem: &str, title: &str| Planned {
        stem: stem.to_owned(),
        title: title.to_owned(),
        ..Planned::default()
    };
    let shims = (!shown.packs.is_empty()).then(|| one("shims", SHIMS));
    let levels = (!shown.levels.is_empty()).then(|| one("ground", LEVELS));
    let count = schedules::laid(frame, shown).1.len();
    let schedules = (0..count).map(|_| one("shim-schedules", SCHEDULES));
    shims.into_iter().chain(levels).chain(schedules).collect()
}

/// Draws one of them; `None` for a sheet that there is not.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let shown = set.frame.told().site.shims.as_ref()?;
    let shims = usize::from(!shown.packs.is_empty());
    let levels = usize::from(!shown.levels.is_empty());
    if number < shims {
        Some(plans::shim_plan(set, shown, SHIMS))
    } else if number < shims + levels {
        Some(plans::level_plan(set, shown, LEVELS))
    } else {
        schedules::draw(set.frame, shown, number - shims - levels, SCHEDULES)
    }
}
