//! The drawing set as the file writes it, and the form of the title block.

use super::{AngleText, Dimension, Given};
use schemars::JsonSchema;
use serde::Deserialize;

/// How the drawing set is drawn.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Drawings {
    /// The paper, lying. Usual: tabloid, or a3: what an office printer takes.
    #[serde(default)]
    pub paper: Given<SheetPaper>,
    /// Black, or each layer in a colour of its own. Nothing relies on colour. Usual: black.
    #[serde(default)]
    pub ink: Given<Ink>,
    /// Where north is: the angle clockwise, seen from above, from straight away from the cook of the first run.
    #[serde(default)]
    pub north: Given<AngleText>,
    /// Where sections are cut beside the usual ones, which go through each appliance, the overhang where people sit, and a
    /// plain stretch of studs.
    #[serde(default)]
    pub sections: Given<Vec<Given<Section>>>,
}

/// A vertical plane across a run.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Section {
    /// The name of the run. May be left out when there is only one run.
    #[serde(default)]
    pub run: Given<String>,
    /// From the run's left end to the plane.
    pub at: Given<Dimension>,
}

/// A sheet of paper for drawings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SheetPaper {
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
    /// 17 × 22 in.
    AnsiC,
    /// 22 × 34 in.
    AnsiD,
    /// 34 × 44 in.
    AnsiE,
    /// 9 × 12 in.
    ArchA,
    /// 12 × 18 in.
    ArchB,
    /// 18 × 24 in.
    ArchC,
    /// 24 × 36 in.
    ArchD,
}

/// With what sheets are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Ink {
    /// Black on white.
    Black,
    /// Each layer in its colour.
    Colour,
}

/// A title block's form: rows of cells, from the top.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TitleBlockFile {
    /// How high each row is. Usual: 10 mm.
    #[serde(default)]
    pub row_height: Given<Dimension>,
    /// The rows; all of the same width.
    pub rows: Given<Vec<Given<Vec<Given<TitleCell>>>>>,
}

/// One cell.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TitleCell {
    /// What it holds.
    pub field: Given<TitleField>,
    /// The words over it. Left out, there are none.
    #[serde(default)]
    pub label: Given<String>,
    /// How wide it is.
    pub width: Given<Dimension>,
}

/// What a cell holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TitleField {
    /// What is built.
    Project,
    /// Where.
    Place,
    /// By whom drawn.
    DrawnBy,
    /// The date as the parameter file has it.
    Date,
    /// The revision.
    Revision,
    /// What the sheet shows.
    Title,
    /// The sheet's number, and of how many.
    Sheet,
    /// The sheet's scale.
    Scale,
    /// How lengths are spelt.
    Units,
    /// Nothing: room to write by hand or for a stamp.
    Blank,
}
