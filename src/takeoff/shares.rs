//! How much of something goes to which run.

use crate::design::Design;

/// An amount in any one measure, by run; what belongs to no single run is kept apart.
#[derive(Clone, Debug, PartialEq)]
pub struct Shares {
    /// One number a run, then what belongs to none.
    by_run: Vec<f64>,
}

impl Shares {
    /// Nothing to any run.
    pub(super) fn none(design: &Design) -> Self {
        Self {
            by_run: vec![0.0; design.runs.len() + 1],
        }
    }

    /// Gives so much to a run, or to none.
    pub(super) fn add(&mut self, run: Option<usize>, amount: f64) {
        let last = self.by_run.len() - 1;
        self.by_run[run.unwrap_or(last).min(last)] += amount;
    }

    /// Adds what goes to the runs in another one, in the same measure.
    pub(super) fn join(&mut self, other: &Self) {
        for (sum, more) in self.by_run.iter_mut().zip(&other.by_run) {
            *sum += more;
        }
    }

    /// Everything together.
    pub fn sum(&self) -> f64 {
        self.by_run.iter().sum()
    }

    /// One number a run, then what belongs to none.
    pub fn by_run(&self) -> &[f64] {
        &self.by_run
    }
}
