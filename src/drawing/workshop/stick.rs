//! Sticks as the workshop needs them told.

use crate::units::Length;

/// All sticks of one section.
#[derive(Clone, Debug, PartialEq)]
pub struct StickSet {
    /// The section and how many sticks of which length, as a heading.
    pub title: String,
    /// The sticks in cutting order.
    pub sticks: Vec<Stick>,
}

/// One stick and its pieces.
///
/// Invariant: pieces stand in order and none reaches past the stick.
#[derive(Clone, Debug, PartialEq)]
pub struct Stick {
    /// Its number in the cut list.
    pub number: u32,
    /// Its length.
    pub length: Length,
    /// Its pieces from the marked end on.
    pub cuts: Vec<StickCut>,
    /// What is left at the far end.
    pub offcut: Length,
}

/// One piece on a stick.
#[derive(Clone, Debug, PartialEq)]
pub struct StickCut {
    /// Where it begins, from the stick's marked end.
    pub from: Length,
    /// Where it ends, from the stick's marked end.
    pub to: Length,
    /// Its mark.
    pub mark: String,
    /// How its two ends are made.
    pub ends: [CutEnd; 2],
    /// Which end its punch-outs are counted from; `None` where that is the same.
    pub foot: Option<Foot>,
}

/// How an end of a piece is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutEnd {
    /// Cut square.
    Square,
    /// Flanges slit, web folded into a tab.
    Tab,
    /// Cut at an angle.
    Mitre,
}

/// Which end of a piece is its foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foot {
    /// The end nearer to the stick's marked end.
    Near,
    /// The other one.
    Far,
}

impl StickCut {
    /// Its length.
    pub fn length(&self) -> Length {
        self.to - self.from
    }
}
