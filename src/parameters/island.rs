//! Runs, appliances and openings as the file writes them.

use super::{
    BoxFill, Clearance, Cover, Dimension, Drain, Fuel, Given, Hinge, MassText, Opens, PowerText,
    Protection, ShareText,
};
use schemars::JsonSchema;
use serde::Deserialize;

/// One straight stretch of the island. Length and depth are those of the steel frame, out to out; boards and coats
/// come on top.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Run {
    /// Its name, by which appliances and openings say where they stand.
    pub name: Given<String>,
    /// The letters its part marks begin with, such as C. Left out, they are made from the name.
    #[serde(default)]
    pub mark: Given<String>,
    /// Length of the frame along its outer side, the corner squares included.
    pub length: Given<Dimension>,
    /// Depth of the frame from the working side to the seating side.
    pub depth: Given<Dimension>,
    /// Sides that stand against a wall: no boards, no overhang there.
    #[serde(default)]
    pub walls: Given<Vec<Given<Side>>>,
    /// Which way the chain turns into this run, a quarter turn seen from above. Every run but the first needs it.
    #[serde(default)]
    pub turn: Given<Turn>,
    /// Which run's frame goes through the corner at this run's start; the other butts against it. Usual: earlier.
    #[serde(default)]
    pub passes: Given<Passes>,
    /// Where extra bulkheads stand inside: distance of their middle from the run's left end.
    #[serde(default)]
    pub bulkheads: Given<Vec<Given<Dimension>>>,
}

/// A side of a run. Left and right are as the cook sees them from the working side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// Where the cook stands.
    Working,
    /// The other long side, where the stools are.
    Seating,
    /// The left end.
    Left,
    /// The right end.
    Right,
}

/// A quarter turn, seen from above, walking from left to right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Turn {
    /// To the left: the cook stands outside the corner.
    Left,
    /// To the right: the cook stands inside the corner.
    Right,
}

/// Which run's frame goes through a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Passes {
    /// The run before the corner.
    Earlier,
    /// The run after the corner.
    Later,
}

/// Where along a run the middle of something stands. Say one of three things: `from` an end with a `distance`,
/// `between` two others, or `in_line_with` another.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct At {
    /// The end that the distance is measured from. For an opening in an end of a run: working or seating.
    #[serde(default)]
    pub from: Given<From>,
    /// From that end of the frame to the middle of the cutout or opening.
    #[serde(default)]
    pub distance: Given<Dimension>,
    /// Two names on the same run (or left-end, right-end): the middle stands in the middle of the clear space
    /// between them.
    #[serde(default)]
    pub between: Given<Vec<Given<String>>>,
    /// A name on the same run whose middle this one shares, such as the sink above a pair of doors.
    #[serde(default)]
    pub in_line_with: Given<String>,
}

/// The end that a distance is measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum From {
    /// The run's left end.
    Left,
    /// The run's right end.
    Right,
    /// The working side; for openings in an end of the run.
    Working,
    /// The seating side; for openings in an end of the run.
    Seating,
}

/// A drop-in appliance. Take its sizes from its own instructions.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Appliance {
    /// Its name, unique in the file.
    pub name: Given<String>,
    /// What it is: grill, side burner, sink, ice well … Left out, its name is used.
    #[serde(default)]
    pub kind: Given<String>,
    /// The name of its run. May be left out when there is only one run.
    #[serde(default)]
    pub run: Given<String>,
    /// Where the middle of the cutout stands along the run.
    pub at: Given<At>,
    /// The hole in the counter.
    pub cutout: Given<Cutout>,
    /// What hangs below the counter.
    pub body: Given<Body>,
    /// How far its flange lies over the counter beyond the cutout. Usual: 3/4 in, or 20 mm.
    #[serde(default)]
    pub flange: Given<Dimension>,
    /// Whether the counter goes round it on all sides, or its control panel breaks the working face.
    pub front: Given<Front>,
    /// What it runs on.
    #[serde(default)]
    pub fuel: Given<Fuel>,
    /// How much heat all its burners put out at most, from its plate.
    #[serde(default)]
    pub heat_input: Given<PowerText>,
    /// How heavy it is.
    #[serde(default)]
    pub weight: Given<MassText>,
    /// The air that its instructions ask for between body and cutout, on each side.
    #[serde(default)]
    pub gap: Given<Dimension>,
    /// Distances to what can burn, from its instructions.
    #[serde(default)]
    pub clearance: Given<Clearance>,
    /// Its drain pipe.
    #[serde(default)]
    pub drain: Given<Drain>,
}

/// The hole in the counter.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Cutout {
    /// Along the run.
    pub width: Given<Dimension>,
    /// Front to back. With an open front it is measured from the frame's working face.
    pub depth: Given<Dimension>,
    /// Radius of its corners. Usual: none.
    #[serde(default)]
    pub corner_radius: Given<Dimension>,
}

/// What hangs below the counter. Left out, width and depth are 1/2 in, or 12 mm, less than the cutout.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Body {
    /// Along the run.
    #[serde(default)]
    pub width: Given<Dimension>,
    /// Front to back.
    #[serde(default)]
    pub depth: Given<Dimension>,
    /// How far it reaches below the top of the counter.
    pub height: Given<Dimension>,
}

/// Whether an appliance breaks the working face.
#[derive(Clone, Debug, PartialEq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Front {
    /// The counter goes round it on all sides.
    Closed {
        /// From the frame's working face to the cutout.
        setback: Given<Dimension>,
    },
    /// Its control panel breaks the working face; the cutout is open to the counter's front edge.
    Open {
        /// How far the panel reaches below the top of the counter.
        panel_height: Given<Dimension>,
    },
}

/// A hole in a face.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Opening {
    /// Its name, unique in the file.
    pub name: Given<String>,
    /// What it is for.
    pub kind: Given<Kind>,
    /// The name of its run. May be left out when there is only one run.
    #[serde(default)]
    pub run: Given<String>,
    /// Which side of the run it is in. Usual: working.
    #[serde(default)]
    pub side: Given<Side>,
    /// Where its middle stands.
    pub at: Given<At>,
    /// Clear width of the rough opening.
    pub width: Given<Dimension>,
    /// Clear height of the rough opening.
    pub height: Given<Dimension>,
    /// Its lower edge above the datum.
    pub sill: Given<Dimension>,
    /// How far its flange lies over the finished face beyond the opening. Usual: 1 in, or 25 mm.
    #[serde(default)]
    pub flange: Given<Dimension>,
    /// How far what fills it reaches behind the frame's face. Usual: nothing for a door, a hatch and a vent,
    /// 20 in (500 mm) for a drawer, 22 in (560 mm) for an appliance, 3 in (75 mm) for a receptacle.
    #[serde(default)]
    pub body_depth: Given<Dimension>,
    /// How wide what fills it is, from its maker; asked of an appliance.
    #[serde(default)]
    pub body_width: Given<Dimension>,
    /// How high what fills it is, from its maker; asked of an appliance.
    #[serde(default)]
    pub body_height: Given<Dimension>,
    /// How its leaf is hung. Usual: a pair when a door is wider than 20 in (500 mm), else left.
    #[serde(default)]
    pub hinge: Given<Hinge>,
    /// How far a drawer comes out. Usual: its body depth.
    #[serde(default)]
    pub travel: Given<Dimension>,
    /// Whether it opens by hand or with tools. Usual: by-hand.
    #[serde(default)]
    pub opens: Given<Opens>,
    /// The part of a vent's opening that lets air through, from its maker.
    #[serde(default)]
    pub free_area: Given<ShareText>,
    /// How heavy what fills it is.
    #[serde(default)]
    pub weight: Given<MassText>,
    /// What protects a receptacle's circuit.
    #[serde(default)]
    pub protection: Given<Protection>,
    /// What keeps the weather off a receptacle.
    #[serde(default)]
    pub cover: Given<Cover>,
    /// Whether a receptacle is of the weather-resistant type.
    #[serde(default)]
    pub weather_resistant: Given<bool>,
    /// What is in a receptacle's box.
    #[serde(rename = "box", default)]
    pub box_fill: Given<BoxFill>,
}

/// What an opening is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// One or two leaves.
    Door,
    /// A stack of drawers.
    Drawer,
    /// An access hatch.
    Hatch,
    /// An appliance built in below the counter, such as a refrigerator.
    Undercounter,
    /// A vent.
    Vent,
    /// A receptacle box.
    Receptacle,
}
