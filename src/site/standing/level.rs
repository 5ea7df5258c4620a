//! Which corner stands low.

use crate::design::FrameCorner;
use crate::plan::Plan;

/// A corner whose height was taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raise {
    /// Number of its run.
    pub run: usize,
    /// The corner.
    pub corner: FrameCorner,
    /// Its height over the mark, millimetres.
    pub height: f64,
    /// How far it must be raised to stand as high as the highest, millimetres.
    pub by: f64,
}

/// Every corner whose height was taken, with how far it must be raised. All heights are from one mark.
pub fn raises(plan: &Plan) -> Vec<Raise> {
    let Some(as_built) = &plan.design.as_built else {
        return Vec::new();
    };
    let taken = as_built.runs.iter().flat_map(|m| {
        let corners = FrameCorner::ALL.into_iter().zip(&m.heights);
        corners.filter_map(|(corner, h)| Some((m.run, corner, h.as_ref()?.value.mm())))
    });
    let taken: Vec<_> = taken.collect();
    let highest = taken.iter().map(|t| t.2).fold(f64::NEG_INFINITY, f64::max);
    taken
        .into_iter()
        .map(|(run, corner, height)| Raise {
            run,
            corner,
            height,
            by: highest - height,
        })
        .collect()
}
