//! The parameter file as it is written: a mirror of its keys, the place of every value, and all its errors at once.
//!
//! [`read`] gives a [`File`] in which nothing is checked beyond its form, and a finding for everything that is wrong
//! with the form. A value that could not be read is [`Given::Bad`]: its finding exists already, and later stages say
//! nothing more about it.

mod as_built;
mod buying;
mod change;
mod counter;
mod cursor;
mod described;
mod dimension;
mod drawings;
mod entries;
mod fault;
mod file;
mod given;
mod island;
mod making;
mod nearest;
mod pour;
mod ratings;
mod read;
mod reference;
mod rewrite;
mod scale_model;
mod schema;
mod services;
mod supplies;
mod surroundings;
mod survey;
mod syntax;
mod trade;
mod tree;
mod work;
mod written;

pub use as_built::{AsBuilt, CornerHeights, Diagonals, MeasuredRun};
pub use buying::{Buying, Labels, PunchOuts, Spare};
pub use change::Change;
pub use counter::{Corners, Counter, Edge, Overhang, TileBand, Turndown};
pub use described::{Described, described};
pub use dimension::Dimension;
pub use drawings::{Drawings, Ink, Section, SheetPaper, TitleBlockFile, TitleCell, TitleField};
pub use file::{File, Levels, Project, Units};
pub use given::Given;
pub use island::{
    Appliance, At, Body, Cutout, From, Front, Kind, Opening, Passes, Run, Side, Turn,
};
pub use making::{Backing, Bracing, Brackets, Joint, Reinforcement};
pub use nearest::nearest;
pub use pour::{Forecast, ForecastHour, Pour, PourMaterials};
pub use ratings::{BoxFill, Clearance, Cover, Drain, Fuel, Hinge, Opens, Protection};
pub use read::{Reading, read, read_changed, read_title_block, read_trade};
pub use reference::reference;
pub use rewrite::{Field, NotRewritten, fields, rewritten};
pub use scale_model::{Bed, Printer, ScaleModel};
pub use schema::{schema, schema_text, trade_schema_text};
pub use services::{
    Compartment, Cylinder, Electricity, EnclosureEdition, Gas, GasPipe, PipeMaterial, ShutOff,
};
pub use supplies::{Serves, Size, Sold, Supply, TradeFile};
pub use surroundings::{
    Ground, ObjectKind, OwnLimit, Passage, People, Point, Site, SiteObject, Surface,
};
pub use survey::{Across, LevelGrid, Measured, SpotLevel, Survey};
pub use trade::{Bar, Bars, Board, PaperName, Printing, Sleeper, Substrate, Trade};
pub use work::{StepChange, Trades, Work};
pub use written::{
    AngleText, AreaText, ColourText, CountText, CurrencyText, IrradianceText, LevelText, MassText,
    MomentText, PowerText, PriceText, ScaleText, ShareText, SlopeText, SpeedText, StressText,
    TemperatureText, TimeSpanText, VolumeText,
};
