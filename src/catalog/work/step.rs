//! One step of the work as the trade knows it.

/// A step that an island can take.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WorkStep {
    /// Its name in the file, such as `base-coat`.
    pub id: &'static str,
    /// What is done.
    pub name: &'static str,
    /// Where in the work it belongs.
    pub phase: Phase,
    /// Which islands take it.
    pub when: Case,
    /// What must be done before it.
    pub after: &'static [After],
    /// How long it takes, added up: invented defaults.
    pub paces: &'static [Pace],
    /// How many pairs of hands it needs.
    pub hands: Hands,
    /// Whose hands.
    pub by: Doer,
    /// What weather it needs.
    pub fitness: Fitness,
    /// What must lie ready.
    pub tools: &'static [&'static str],
    /// What it puts in place or takes away.
    pub pieces: &'static [Pieces],
    /// What can hurt.
    pub cautions: &'static [Caution],
    /// What is ticked off.
    pub checks: &'static [Item],
    /// True where nothing goes on before all of it is ticked and signed.
    pub is_hold: bool,
    /// True where it is not left half done over night.
    pub at_once: bool,
}

/// The stages of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Phase {
    /// Setting out and levelling.
    Ground,
    /// The steel.
    Frame,
    /// Gas, electricity, water.
    Services,
    /// What closes the frame.
    Boards,
    /// Forms and concrete.
    Counter,
    /// Coats and tile.
    Coats,
    /// Everything that goes in at the end.
    Last,
}

impl Phase {
    /// Its name as a heading.
    pub fn name(self) -> &'static str {
        match self {
            Self::Ground => "Ground",
            Self::Frame => "Frame",
            Self::Services => "Gas, electricity, water",
            Self::Boards => "Boards",
            Self::Counter => "Counter",
            Self::Coats => "Coats and tile",
            Self::Last => "Last",
        }
    }
}

/// Which islands take a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Case {
    /// All.
    Always,
    /// Those where something burns gas, or with a gas supply.
    Gas,
    /// Those with a receptacle, an electric appliance or an electric supply.
    Electricity,
    /// Those with a sink or a drain.
    Water,
    /// Those with any of these three.
    Services,
    /// Those with an appliance, or something built in that must fit its opening.
    Things,
    /// Those with an appliance in the counter or built in under it.
    Appliances,
    /// Those with doors, drawers, hatches or vents.
    Fronts,
    /// Those with brackets under the overhang.
    Brackets,
    /// Those with mesh or bars in the slab.
    Reinforcement,
    /// Those whose counter is cast in place.
    InPlace,
    /// Those whose counter is cast elsewhere and carried to the frame.
    Elsewhere,
    /// Those with a band of tile.
    TileBand,
    /// Those where something gives off heat.
    Cooks,
}

/// A step that must be done before another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct After {
    /// The earlier one.
    pub step: &'static str,
    /// How long after its end.
    pub wait: Wait,
    /// Where it holds.
    pub when: Case,
}

impl After {
    /// At once.
    pub const fn step(step: &'static str) -> Self {
        Self {
            step,
            wait: Wait::None,
            when: Case::Always,
        }
    }

    /// So many hours later, day and night, for a reason.
    pub const fn hours(step: &'static str, hours: f64, why: &'static str) -> Self {
        Self {
            step,
            wait: Wait::Hours(hours, why),
            when: Case::Always,
        }
    }

    /// When the concrete is so far, for a reason.
    pub const fn due(step: &'static str, due: Due, why: &'static str) -> Self {
        Self {
            step,
            wait: Wait::Due(due, why),
            when: Case::Always,
        }
    }

    /// The same for some islands.
    pub const fn when(self, when: Case) -> Self {
        Self { when, ..self }
    }
}

/// What must pass between two steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wait {
    /// Nothing.
    None,
    /// Hours from the end of the earlier one, with the reason and its source.
    Hours(f64, &'static str),
    /// What the setting clock says, reckoned from the beginning of placing.
    Due(Due, &'static str),
}

/// How far concrete has set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Due {
    /// It bears the float.
    Float,
    /// Its edge stands without the form.
    StripForms,
    /// It can be sanded.
    Sand,
    /// It can be sealed.
    Seal,
}

/// Hours of work a unit, with the hands of the step: an invented default.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pace {
    /// Of what.
    pub of: Measure,
    /// Hours for one, a metre, a square metre or a cubic metre of it.
    pub hours: f64,
}

/// What work is measured by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// The step itself.
    Once,
    /// Runs.
    Runs,
    /// Metres of sleeper.
    Sleepers,
    /// Pieces of steel.
    Members,
    /// Pieces of steel in panels.
    PanelMembers,
    /// Panels.
    Panels,
    /// Ties, trimmers and blocking.
    Crossings,
    /// Appliances and what is built into openings.
    Things,
    /// Metres of gas pipe.
    GasPipe,
    /// Gas appliances.
    GasEnds,
    /// Receptacles and electric appliances.
    ElectricEnds,
    /// Sinks and drains.
    WaterEnds,
    /// Metres of base channel.
    Channel,
    /// Square metres of board.
    Boards,
    /// Pieces of board.
    BoardPieces,
    /// Square metres of substrate.
    Substrate,
    /// Metres of edge form.
    EdgeForms,
    /// Forms of cutouts.
    CutoutForms,
    /// Cubic metres of slab.
    Slab,
    /// Square metres of the counter's top.
    Top,
    /// Brackets.
    Brackets,
    /// Square metres of base coat.
    BaseCoat,
    /// Square metres of finish coat.
    FinishCoat,
    /// Square metres of tile.
    Tile,
    /// Doors, drawers, hatches and vents.
    Fronts,
    /// Appliances.
    Appliances,
}

/// How many pairs of hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hands {
    /// So many.
    Some(u32),
    /// Enough to lift the heaviest thing of a kind, and no fewer than so many.
    Lifting(Heaviest, u32),
    /// Two, or three where the slab is large.
    Pouring,
}

/// The heaviest thing of a kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heaviest {
    /// A frame panel.
    Panel,
    /// A sheet of board as it is bought.
    Board,
    /// An appliance, or what fills an opening.
    Appliance,
    /// A bag of concrete.
    Bag,
    /// The slab.
    Slab,
}

/// Whose hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doer {
    /// The crew's own.
    Crew,
    /// A licensed gas fitter's.
    GasFitter,
    /// A licensed electrician's.
    Electrician,
    /// A plumber's, licensed where the local code asks for it.
    Plumber,
    /// The inspector's, with whoever did the work.
    Inspector,
}

impl Doer {
    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Crew => "own hands",
            Self::GasFitter => "licensed gas fitter",
            Self::Electrician => "licensed electrician",
            Self::Plumber => "plumber, licensed where the code asks",
            Self::Inspector => "inspector, with the licensed trades",
        }
    }
}

/// What weather a step needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fitness {
    /// Any in which people work.
    Any,
    /// No rain.
    Dry,
    /// An hour fit for placing concrete.
    Placing,
    /// As the concrete it follows: it waits for nobody.
    AsSet,
    /// Dry, neither frost nor heat.
    Coat,
}

impl Fitness {
    /// In words; empty where any weather will do.
    pub fn name(self) -> &'static str {
        match self {
            Self::Any => "",
            Self::Dry => "dry",
            Self::Placing => "an hour fit for placing; no rain for a day",
            Self::AsSet => "when the concrete is ready: it waits for nobody",
            Self::Coat => "dry, 40 to 90 °F (4 to 32 °C), no frost the night after",
        }
    }
}

/// What a step handles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pieces {
    /// Sleepers.
    Sleepers,
    /// Uprights, tracks, headers and sills.
    PanelSteel,
    /// Ties, trimmers and blocking.
    Crossings,
    /// Base channel.
    Channel,
    /// Boards.
    Boards,
    /// Substrate.
    Substrate,
    /// Edge forms and cutout forms.
    Forms,
    /// The slab.
    Slab,
    /// Base coat.
    BaseCoat,
    /// Finish coat.
    FinishCoat,
    /// Tiles.
    Tiles,
    /// Doors, drawers, hatches, vents and covers.
    Fronts,
    /// Appliances.
    Appliances,
}

/// What can hurt at a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Caution {
    /// A sentence.
    Say(&'static str),
    /// The weight of the heaviest thing, and how many lift it.
    Lift(Heaviest),
}

/// Something to tick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Item {
    /// A sentence.
    Say(&'static str),
    /// The same where an island has something.
    If(Case, &'static str),
    /// One line for each appliance and each thing built in, with the size of its hole.
    EachThing,
    /// How much concrete must lie ready.
    Concrete,
    /// The hands that must be there at the pour.
    PourHands,
}

impl Measure {
    /// What it counts, as it is said after "per": empty for the step itself.
    pub fn name(self) -> &'static str {
        match self {
            Self::Once => "",
            Self::Runs => "run",
            Self::Sleepers => "m of sleeper",
            Self::Members => "piece of steel",
            Self::PanelMembers => "piece of a panel",
            Self::Panels => "panel",
            Self::Crossings => "tie, trimmer or blocking",
            Self::Things => "thing that must fit",
            Self::GasPipe => "m of gas pipe",
            Self::GasEnds => "gas appliance",
            Self::ElectricEnds => "receptacle or electric appliance",
            Self::WaterEnds => "sink or drain",
            Self::Channel => "m of base channel",
            Self::Boards => "m² of board",
            Self::BoardPieces => "piece of board",
            Self::Substrate => "m² of substrate",
            Self::EdgeForms => "m of edge form",
            Self::CutoutForms => "cutout form",
            Self::Slab => "m³ of slab",
            Self::Top => "m² of counter",
            Self::Brackets => "bracket",
            Self::BaseCoat => "m² of base coat",
            Self::FinishCoat => "m² of finish coat",
            Self::Tile => "m² of tile",
            Self::Fronts => "door, drawer, hatch or vent",
            Self::Appliances => "appliance",
        }
    }
}

impl Hands {
    /// In words.
    pub fn name(self) -> String {
        match self {
            Self::Some(count) => count.to_string(),
            Self::Lifting(_, least) => format!("lift, {least}"),
            Self::Pouring => "pour.crew; else 2, or 3 for more than 0.28 m³".to_owned(),
        }
    }
}
