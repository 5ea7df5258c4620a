//! Trade choices and printing as the file writes them.

use super::{Backing, Bracing, ColourText, Dimension, Given};
use schemars::JsonSchema;
use serde::Deserialize;

/// What the island is built of.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Trade {
    /// Studs, jambs, cripples, ties and trimmers, by designation. Usual: 362S125-33.
    #[serde(default)]
    pub stud: Given<String>,
    /// Tracks, headers and sills, by designation; its depth must be the stud's. Usual: 362T125-33.
    #[serde(default)]
    pub track: Given<String>,
    /// Studs on centre, at most. Usual: 16 in, or 400 mm.
    #[serde(default)]
    pub stud_spacing: Given<Dimension>,
    /// How far a header's or tie's web is folded onto what it meets. Usual: 2 in, or 50 mm.
    #[serde(default)]
    pub tab: Given<Dimension>,
    /// The cement board.
    #[serde(default)]
    pub board: Given<Board>,
    /// Thickness of the base coat on the board. Usual: 1/4 in, or 6 mm.
    #[serde(default)]
    pub base_coat: Given<Dimension>,
    /// Thickness of the finish coat. Usual: 1/8 in, or 3 mm.
    #[serde(default)]
    pub finish_coat: Given<Dimension>,
    /// Colour of the finish coat in the models: a word such as sand, or '#' and six figures, in quotes. Usual: cream.
    #[serde(default)]
    pub finish_colour: Given<ColourText>,
    /// The rot-proof strip that lifts the frame off the ground.
    #[serde(default)]
    pub sleeper: Given<Sleeper>,
    /// The screw that joins the steel, as text.
    #[serde(default)]
    pub fastener: Given<String>,
    /// The sheet the counter is cast on.
    #[serde(default)]
    pub substrate: Given<Substrate>,
    /// The mix of the counter slab, as text.
    #[serde(default)]
    pub slab_mix: Given<String>,
    /// What keeps the frame from leaning.
    #[serde(default)]
    pub bracing: Given<Bracing>,
    /// Depth of the base channel that receives board and base coat.
    #[serde(default)]
    pub base_channel: Given<Dimension>,
    /// What the coats lie on.
    #[serde(default)]
    pub backing: Given<Backing>,
    /// From one movement joint in the coats to the next, at most.
    #[serde(default)]
    pub coat_joints: Given<Dimension>,
}

/// The cement board.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Board {
    /// Long side of a sheet. Usual: 5 ft, or 1200 mm.
    #[serde(default)]
    pub length: Given<Dimension>,
    /// Short side of a sheet. Usual: 3 ft, or 900 mm.
    #[serde(default)]
    pub width: Given<Dimension>,
    /// Thickness. Usual: 1/2 in, or 12 mm.
    #[serde(default)]
    pub thickness: Given<Dimension>,
    /// The gap left at joints. Usual: 1/8 in, or 3 mm.
    #[serde(default)]
    pub gap: Given<Dimension>,
}

/// The sleeper.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Sleeper {
    /// Across. Usual: 3-1/2 in, or 90 mm.
    #[serde(default)]
    pub width: Given<Dimension>,
    /// Up; not more than the base gap. Usual: 1-1/2 in, or 40 mm.
    #[serde(default)]
    pub height: Given<Dimension>,
}

/// The sheet the counter is cast on.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Substrate {
    /// What it is, as text. Usual: cement board.
    #[serde(default)]
    pub material: Given<String>,
    /// Thickness. Usual: 1/2 in, or 12 mm.
    #[serde(default)]
    pub thickness: Given<Dimension>,
}

/// How the full-size template is printed.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Printing {
    /// The paper. Usual: letter, or a4 with metric units.
    #[serde(default)]
    pub paper: Given<PaperName>,
    /// True when the paper lies on its long side. Usual: false.
    #[serde(default)]
    pub landscape: Given<bool>,
    /// The border the printer leaves white, all round. Usual: 1/2 in, or 12 mm.
    #[serde(default)]
    pub margin: Given<Dimension>,
    /// How much neighbouring pages share. Usual: 1/2 in, or 12 mm.
    #[serde(default)]
    pub overlap: Given<Dimension>,
    /// What the two bars of the calibration page measure on your own print; leave it out until you have measured.
    #[serde(default)]
    pub bars: Given<Bars>,
}

/// The two bars of the calibration page.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bars {
    /// The bar across the page.
    #[serde(default)]
    pub x: Given<Bar>,
    /// The bar up the page.
    #[serde(default)]
    pub y: Given<Bar>,
}

/// One bar as drawn and as measured.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bar {
    /// The length it was drawn with. Usual: 6 in, or 150 mm.
    #[serde(default)]
    pub drawn: Given<Dimension>,
    /// The length a rule shows on the print.
    pub measured: Given<Dimension>,
}

/// A paper by name, or a roll.
#[derive(Clone, Debug, PartialEq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum PaperName {
    /// 210 × 297 mm.
    A4,
    /// 297 × 420 mm.
    A3,
    /// 420 × 594 mm.
    A2,
    /// 594 × 841 mm.
    A1,
    /// 8.5 × 11 in.
    Letter,
    /// 11 × 17 in.
    Tabloid,
    /// 18 × 24 in.
    ArchC,
    /// 24 × 36 in.
    ArchD,
    /// A roll: one page, as long as the counter needs.
    Roll {
        /// Width of the roll.
        width: Given<Dimension>,
    },
}
