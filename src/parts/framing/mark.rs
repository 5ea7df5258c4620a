//! Part marks of one run's framing.

use crate::parts::PartKind;
use crate::plan::Plan;
use std::collections::BTreeMap;

/// Counts the parts of one run by kind.
pub(super) struct Marks {
    run: usize,
    prefix: String,
    counts: BTreeMap<&'static str, usize>,
}

impl Marks {
    pub(super) fn of_run(plan: &Plan, run: usize) -> Self {
        Self {
            run,
            prefix: plan.design.runs[run].mark.clone(),
            counts: BTreeMap::new(),
        }
    }

    pub(super) fn run(&self) -> usize {
        self.run
    }

    /// The next mark of a kind, such as `C-S07`.
    pub(super) fn next(&mut self, kind: PartKind) -> String {
        let letters = letters(kind);
        let count = self.counts.entry(letters).or_default();
        *count += 1;
        format!("{}-{letters}{count:02}", self.prefix)
    }
}

/// The letters of a kind of framing member.
fn letters(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Stud => "S",
        PartKind::Jamb => "J",
        PartKind::Cripple => "K",
        PartKind::BottomTrack => "BT",
        PartKind::TopTrack => "TT",
        PartKind::Header => "H",
        PartKind::Sill => "SI",
        PartKind::Tie => "T",
        PartKind::Trimmer => "TR",
        PartKind::Blocking => "BK",
        PartKind::Sleeper => "SL",
        _ => "X",
    }
}
