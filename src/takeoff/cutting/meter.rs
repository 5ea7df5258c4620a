//! The limit of work, in steps and not in time, so that the same problem ends the same way on every machine.

/// Counts steps down to nothing.
///
/// One step is about a nanosecond of a release build, so that a whole limit of work is about two seconds.
#[derive(Debug)]
pub(super) struct Meter {
    left: u64,
}

impl Meter {
    pub(super) fn new(steps: u64) -> Meter {
        Meter { left: steps }
    }

    /// Takes steps off; `None` once there are none left.
    pub(super) fn spend(&mut self, steps: u64) -> Option<()> {
        self.left = self.left.saturating_sub(steps);
        (self.left > 0).then_some(())
    }

    /// A meter for one part of the work, which may take `share` parts in a hundred of what is left.
    pub(super) fn part(&self, share: u64) -> Meter {
        Meter::new(self.left / 100 * share)
    }

    /// Takes off what a part has used of what it was given.
    pub(super) fn settle(&mut self, share: u64, part: &Meter) {
        let used = (self.left / 100 * share).saturating_sub(part.left);
        self.left = self.left.saturating_sub(used);
    }
}
