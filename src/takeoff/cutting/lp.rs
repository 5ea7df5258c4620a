//! What the linear solver is asked in common: an answer or none, and what it took in steps.

use microlp::{Error, Solution, SolveOutcome};

/// The solution, if there is one; every failure of the solver counts as none.
pub(super) fn solved(outcome: Result<SolveOutcome, Error>) -> Option<Solution> {
    outcome.ok()?.into_solution().ok()
}

/// Counts the pivots of one program that grows.
#[derive(Debug, Default)]
pub(super) struct Pivots {
    seen: u64,
}

impl Pivots {
    /// Steps since the last time, for a program of this many rows and columns.
    pub(super) fn steps(&mut self, solution: &Solution, size: usize) -> u64 {
        // Measured: a pivot takes 50 to 100 ns for each row and column.
        const STEPS: u64 = 80;
        let now = solution.stats().lp_iterations;
        let pivots = now.saturating_sub(self.seen);
        self.seen = now;
        STEPS * (pivots + 1) * size as u64
    }
}
