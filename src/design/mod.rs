//! The design: the parameter file resolved. Every default is filled, every reference followed, nothing is optional
//! that every island has.
//!
//! Frame dimensions: a run's `length` and `depth` are those of its steel frame, out to out. Boards and coats come on
//! top, outside them. Heights are above the survey datum.

mod as_built;
mod buying;
mod counter;
mod drawings;
mod hardware;
mod lever;
mod making;
mod openings;
mod pour;
mod project;
mod rating;
mod resolve;
mod runs;
#[cfg(test)]
pub(crate) mod sample;
mod scale_model;
mod services;
mod site;
mod survey;
mod work;

pub use crate::parameters::Change;
pub use as_built::{AsBuilt, FrameCorner, MeasuredRun, Taped};
pub use buying::{Buying, LabelPaper, Spare};
pub use counter::{Counter, EdgeProfile, Overhang, PlanCorner, Turndown};
pub use drawings::{AskedCut, Cell, Drawings, Field, Ink, TitleBlock};
pub use hardware::{BoxFill, Cover, Hardware, Hinge, Protection};
pub use lever::{Lever, Turns, is_lever, levers};
pub use making::{Backing, Bracing, Brackets, Casting, Making, OwnLimit, Reinforcement};
pub use openings::{Appliance, Front, Opening, OpeningKind, Station};
pub use pour::{Forecast, Hour, Pour};
pub use project::{Lettered, Levels, Printing, Project, TileBand, Trade};
pub use rating::{Clearances, Drain, Fuel, Rating};
pub use resolve::{
    TITLE_BLOCK, add_trade, from_text, from_text_changed, from_text_with, resolve,
    shipped_title_block, shipped_trade, title_block,
};
pub use runs::{Passes, Run, Side, Turn};
pub use scale_model::{Printer, ScaleModel};
pub use services::{
    Compartment, Cylinder, Electricity, EnclosureEdition, Gas, GasPipe, PipeMaterial,
};
pub use site::{Ground, ObjectKind, Passage, People, Site, SiteObject, Surface};
pub use survey::{SpotLevel, Survey};
pub use work::{Earlier, Shift, StepChange, Work};

use crate::catalog::Supplies;
use crate::diagnostics::{Finding, Place};

/// Everything the file says, with nothing left open.
#[derive(Clone, Debug, PartialEq)]
pub struct Design {
    /// Names and dates for the title block.
    pub project: Project,
    /// What it is built of.
    pub trade: Trade,
    /// Heights.
    pub levels: Levels,
    /// The runs in order along the chain; at least one.
    pub runs: Vec<Run>,
    /// What drops into the counter.
    pub appliances: Vec<Appliance>,
    /// Holes in the faces.
    pub openings: Vec<Opening>,
    /// The counter.
    pub counter: Counter,
    /// The tile band, where there is one.
    pub tile_band: Option<TileBand>,
    /// How the template is printed.
    pub printing: Printing,
    /// How the drawing set is drawn.
    pub drawings: Drawings,
    /// The printable scale model.
    pub scale_model: ScaleModel,
    /// Choices of the trade that only the checks read.
    pub making: Making,
    /// Closed compartments inside; none where the whole inside is one.
    pub compartments: Vec<Compartment>,
    /// The gas supply, where the file has one.
    pub gas: Option<Gas>,
    /// The electric supply, where the file has one.
    pub electricity: Option<Electricity>,
    /// The site.
    pub site: Site,
    /// Who uses the island.
    pub people: People,
    /// Limits that the file sets otherwise than the rules do.
    pub limits: Vec<OwnLimit>,
    /// The frame as it stands, where it was measured.
    pub as_built: Option<AsBuilt>,
    /// How the concrete is mixed and placed, and the weather.
    pub pour: Pour,
    /// Who works when, and how fast.
    pub work: Work,
    /// How it is bought and cut.
    pub buying: Buying,
    /// What the shops sell: the trade data, and what the file adds to it.
    pub supplies: Supplies,
    /// What is wrong with buying and supplies: it is said, and the rest is still reckoned.
    pub findings: Vec<Finding>,
}

/// A value with the place in the file that it came from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Placed<T> {
    /// The value.
    pub value: T,
    /// Where it stands.
    pub place: Place,
}

impl<T> Placed<T> {
    /// Another value at the same place.
    pub fn map<U>(self, f: impl FnOnce(T) -> U) -> Placed<U> {
        Placed {
            value: f(self.value),
            place: self.place,
        }
    }
}

impl<T> std::ops::Deref for Placed<T> {
    type Target = T;
    fn deref(&self) -> &T {
        &self.value
    }
}
