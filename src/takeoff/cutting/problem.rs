//! What is asked and what is answered.

/// A length of stock that can be bought, any number of times.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stick {
    /// Its length in steps.
    pub length: u32,
    /// What one costs, in cents; any other whole measure serves as well, such as its length where nothing is priced.
    pub cost: u64,
}

/// Pieces of one length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Demand {
    /// Length of a piece in steps; pieces of no length are left out.
    pub length: u32,
    /// How many.
    pub count: u32,
    /// Whether the piece's holes must keep their distance from its foot: then its foot lies on a whole multiple of
    /// [`Problem::pitch`] from the stick's marked end, and the piece reaches from there either way.
    pub aligned: bool,
}

/// One cutting-stock problem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// What can be bought.
    pub sticks: Vec<Stick>,
    /// What is needed.
    pub demands: Vec<Demand>,
    /// What a cut takes, in steps: nothing for snips. Between two pieces, and between the last piece and the offcut.
    pub kerf: u32,
    /// What is cut off the far end of every stick, in steps.
    pub trim: u32,
    /// Distance of the punch-outs, in steps; without it, or at nothing, no piece is aligned. Their first lies the same way from the marked end
    /// as a piece's first lies from its foot.
    pub pitch: Option<u32>,
}

/// One piece on a stick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Which demand it serves.
    pub demand: usize,
    /// Where it begins, in steps from the stick's marked end.
    pub start: u32,
    /// Whether its foot is its far end.
    pub reversed: bool,
}

/// One way to cut a stick. Pieces stand in order along it and lie a kerf apart at least.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pattern {
    /// Which of the sticks.
    pub stick: usize,
    /// The pieces in order from the marked end.
    pub cuts: Vec<Cut>,
    /// How many sticks are cut so.
    pub times: u32,
}

/// How good the answer is known to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Proof {
    /// No answer costs less, and none that costs the same takes fewer sticks.
    Proven,
    /// No answer can cost less than `bound`; the search ended at its limit of work.
    Within {
        /// The lower bound of the cost.
        bound: u64,
    },
}

/// The longest piece of stock that is left over, behind the last cut of one stick.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Offcut {
    /// Its length in steps; nothing if there is none.
    pub length: u32,
    /// Whether no answer of the same cost and number of sticks leaves a longer one. The search for it is short.
    pub proven: bool,
}

/// The best that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The ways to cut, in a fixed order; every demand that fits a stick is served exactly.
    pub patterns: Vec<Pattern>,
    /// Demands that no stick is long enough for.
    pub too_long: Vec<usize>,
    /// What the sticks cost together; the largest number there is, if it is more.
    pub cost: u64,
    /// A lower bound of the cost of any answer.
    pub bound: u64,
    /// Whether it is proven.
    pub proof: Proof,
    /// The longest offcut.
    pub offcut: Offcut,
}
