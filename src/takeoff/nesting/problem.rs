//! What is asked and what is answered.

/// A sheet that can be bought, any number of times.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stock {
    /// Its long side, along x, in steps.
    pub length: u32,
    /// Its short side, along y, in steps.
    pub width: u32,
    /// What one costs, in cents; its area where nothing is priced.
    pub cost: u64,
}

/// One rectangle to be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Demand {
    /// Its side along the grain, in steps, more than nothing.
    pub length: u32,
    /// Its side across the grain, in steps, more than nothing.
    pub width: u32,
    /// Whether it may be turned by a quarter: not where the grain must run along its length.
    pub may_turn: bool,
}

/// One layout problem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// What can be bought.
    pub stock: Vec<Stock>,
    /// What is needed, each once.
    pub demands: Vec<Demand>,
    /// What a cut takes, in steps: nothing for score and snap.
    pub kerf: u32,
}

/// A rectangle of a sheet: a piece, or an offcut that is left over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Leaf {
    /// Which demand; `None` for an offcut.
    pub demand: Option<usize>,
    /// Left edge, in steps.
    pub x: u32,
    /// Lower edge, in steps.
    pub y: u32,
    /// Along x.
    pub dx: u32,
    /// Along y.
    pub dy: u32,
    /// Whether the piece lies turned by a quarter.
    pub turned: bool,
}

/// One sheet as it is cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// Which of the stock.
    pub stock: usize,
    /// Pieces and offcuts; none overlaps another, and edge-to-edge cuts part them all.
    pub leaves: Vec<Leaf>,
    /// The cuts in the order they are made, each from edge to edge of what it parts, in
    /// steps, as (x0, y0, x1, y1) along the lower or left side of the kerf.
    pub cuts: Vec<(u32, u32, u32, u32)>,
}

/// The best that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The sheets in a fixed order.
    pub sheets: Vec<Sheet>,
    /// Demands that no sheet is large enough for, and those with a side of nothing.
    pub too_large: Vec<usize>,
    /// What the sheets cost together.
    pub cost: u64,
    /// No layout can cost less: from the areas alone, or better.
    pub bound: u64,
}
