//! Punch-outs of studs.

/// Where the holes in a stud's web are, millimetres.
///
/// 1-1/2 × 4 in at 24 in on centre where the web is deeper than 2-1/2 in (industry guide); the first one's middle 12 in
/// from the marked end and none nearer than 10 in to the other (values from memory).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PunchOuts {
    /// Sections whose web is not deeper than this have none.
    pub deeper_than: f64,
    /// Across the web.
    pub width: f64,
    /// Along the stud.
    pub height: f64,
    /// From the marked end to the middle of the first.
    pub first: f64,
    /// From middle to middle.
    pub pitch: f64,
    /// From the middle of the last to the far end, at least.
    pub last: f64,
}

/// The usual ones.
pub const PUNCH_OUTS: PunchOuts = PunchOuts {
    deeper_than: 63.5,
    width: 38.1,
    height: 101.6,
    first: 304.8,
    pitch: 609.6,
    last: 254.0,
};
