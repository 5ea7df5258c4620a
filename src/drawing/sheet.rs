//! A drawing before it is a file.

use super::dimension::Dimension;
use crate::catalog::Paper;
pub use crate::design::Ink;
use crate::geometry::Vertex;
use std::borrow::Cow;

/// One sheet of drawings: everything on it, in millimetres on the paper, x to the right, y up, from the lower left
/// corner of the paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The stem of its file name, such as `elevation-CW-framing`.
    pub name: String,
    /// What it shows.
    pub title: String,
    /// Its number in the set, such as `A-3`.
    pub number: String,
    /// The kind of sheets of its set that it belongs to, such as `Sections`; empty where the set has but one.
    pub chapter: &'static str,
    /// The paper as it lies.
    pub paper: Paper,
    /// The scale of its views; 1:1 for template pages.
    pub scale: Scale,
    /// With what it is drawn.
    pub ink: Ink,
    /// Everything drawn, in the order drawn.
    pub items: Vec<Item>,
    /// Texts that found no room on it.
    pub lost: Vec<String>,
}

/// The scale of a view: paper millimetres per millimetre built, and how it is spelt.
#[derive(Clone, Debug, PartialEq)]
pub struct Scale {
    /// Such as 0.05 for 1:20.
    pub factor: f64,
    /// Such as `1:20` or `1/2" = 1'-0"`.
    pub name: String,
}

/// Line widths of ISO 128-2, millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pen {
    /// 0.18: dimension and extension lines, hatches.
    Fine,
    /// 0.25: lesser edges.
    Thin,
    /// 0.35: visible edges.
    Medium,
    /// 0.5: outlines.
    Thick,
    /// 0.7: cut edges, the sheet's border.
    Heavy,
}

impl Pen {
    /// All pens.
    pub const ALL: [Self; 5] = [
        Self::Fine,
        Self::Thin,
        Self::Medium,
        Self::Thick,
        Self::Heavy,
    ];

    /// Its width in millimetres.
    pub fn width(self) -> f64 {
        match self {
            Self::Fine => 0.18,
            Self::Thin => 0.25,
            Self::Medium => 0.35,
            Self::Thick => 0.5,
            Self::Heavy => 0.7,
        }
    }
}

/// Line types of ISO 128.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Dash {
    /// Unbroken.
    Solid,
    /// Dashed: hidden edges.
    Dashed,
    /// Long dash, short dash: centre lines.
    Centre,
    /// Long dash, two short dashes: neighbouring parts, limits.
    Phantom,
}

impl Dash {
    /// Lengths of strokes and gaps in turn, in widths of the line: ISO 128-2's, shortened to suit small sheets;
    /// none for an unbroken line.
    fn widths(self) -> &'static [f64] {
        match self {
            Self::Solid => &[],
            Self::Dashed => &[8.0, 4.0],
            Self::Centre => &[24.0, 4.0, 2.0, 4.0],
            Self::Phantom => &[24.0, 4.0, 2.0, 4.0, 2.0, 4.0],
        }
    }

    /// Lengths of strokes and gaps in turn, millimetres; none for an unbroken line. Lines finer than 0.25 mm are
    /// dashed as one of 0.25 mm, so that their gaps still show on a print.
    pub fn pattern(self, pen: Pen) -> Vec<f64> {
        let unit = pen.width().max(Pen::Thin.width());
        self.widths().iter().map(|n| n * unit).collect()
    }
}

/// What an item belongs to; every format keeps the layers apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Layer {
    /// Border and title block.
    Border,
    /// The edges of what is drawn.
    Outline,
    /// Edges of lesser weight, and fills.
    Detail,
    /// Hidden edges.
    Hidden,
    /// Centre lines and crosses.
    Centre,
    /// Cutouts to be cut.
    Cut,
    /// The edges of what a section cuts through.
    Section,
    /// Hatches.
    Hatch,
    /// What stands round the island: posts, walls, ways.
    Site,
    /// Callouts, section marks, match lines, the north arrow.
    Symbol,
    /// Schedules: their rules and lettering.
    Table,
    /// Dimensions.
    Dimension,
    /// Marks and notes.
    Note,
}

impl Layer {
    /// All layers.
    pub const ALL: [Self; 13] = [
        Self::Border,
        Self::Outline,
        Self::Detail,
        Self::Hidden,
        Self::Centre,
        Self::Cut,
        Self::Section,
        Self::Hatch,
        Self::Site,
        Self::Symbol,
        Self::Table,
        Self::Dimension,
        Self::Note,
    ];

    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            Self::Border => "border",
            Self::Outline => "outline",
            Self::Detail => "detail",
            Self::Hidden => "hidden",
            Self::Centre => "centre",
            Self::Cut => "cut",
            Self::Section => "section",
            Self::Hatch => "hatch",
            Self::Site => "site",
            Self::Symbol => "symbol",
            Self::Table => "table",
            Self::Dimension => "dimension",
            Self::Note => "note",
        }
    }
}

/// How a text stands to its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Align {
    /// It begins there.
    Left,
    /// Its middle is there.
    Centre,
    /// It ends there.
    Right,
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A line of straight segments and arcs (see [`Vertex::bulge`]).
    Path {
        /// What it belongs to.
        layer: Layer,
        /// Its points.
        points: Vec<Vertex>,
        /// Whether it returns to its first point.
        closed: bool,
        /// How wide; `None` for a fill without an edge.
        pen: Option<Pen>,
        /// Which line type.
        dash: Dash,
        /// Grey filled in, 0 black to 1 white; `None` leaves what lies below.
        fill: Option<f64>,
    },
    /// One line of lettering.
    Text {
        /// What it belongs to.
        layer: Layer,
        /// The point on the baseline that `align` speaks of.
        at: crate::geometry::Point2,
        /// What it says; any characters, escaped by what writes it.
        text: String,
        /// Height of a capital, millimetres, from the series of ISO 3098.
        height: f64,
        /// How it stands to its point.
        align: Align,
        /// Turned counter-clockwise, degrees.
        angle: f64,
    },
    /// One measured gap of a chain.
    Dimension(Dimension),
}

impl Item {
    /// What it belongs to.
    pub fn layer(&self) -> Layer {
        match self {
            Self::Path { layer, .. } | Self::Text { layer, .. } => *layer,
            Self::Dimension(_) => Layer::Dimension,
        }
    }

    /// The lines and lettering it is drawn with: itself, but for a dimension, which is several.
    pub fn primitives(&self) -> Cow<'_, [Self]> {
        match self {
            Self::Dimension(dimension) => Cow::Owned(dimension.primitives()),
            Self::Path { .. } | Self::Text { .. } => Cow::Borrowed(std::slice::from_ref(self)),
        }
    }
}
