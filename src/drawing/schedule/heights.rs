//! Heights of rows, added up once: how high some of them are, and how many fit, is then found without going through them.

/// Rows of a table that are drawn in one place: from `from` up to, not with, `to`; notes below where it ends there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Part {
    /// The first row.
    pub from: usize,
    /// The row after the last one.
    pub to: usize,
}

/// The heights of rows one below the other.
///
/// Invariant: `feet` begins with 0 and never falls; the foot of row `i` lies at `feet[i + 1]` below the first row's top.
#[derive(Clone, Debug)]
pub struct Heights {
    feet: Vec<f64>,
}

impl FromIterator<f64> for Heights {
    fn from_iter<I: IntoIterator<Item = f64>>(heights: I) -> Self {
        let mut foot = 0.0;
        let below = heights.into_iter().map(|height| {
            foot += height.max(0.0);
            foot
        });
        Self {
            feet: std::iter::once(0.0).chain(below).collect(),
        }
    }
}

impl Heights {
    /// How high some of the rows are; rows past the last one count nothing.
    pub fn of(&self, part: Part) -> f64 {
        let last = self.feet.len() - 1;
        let foot = |row: usize| self.feet.get(row.min(last)).copied().unwrap_or(0.0);
        (foot(part.to) - foot(part.from)).max(0.0)
    }

    /// The most rows from `from` on that fit, at least one; `fits` must be false of all that is longer than what does not
    /// fit. It is asked as often as the count of rows can be halved.
    pub fn last_that_fits(&self, from: usize, fits: impl Fn(Part) -> bool) -> Option<Part> {
        let (mut fitting, mut past) = (from, self.feet.len());
        while past.saturating_sub(fitting) > 1 {
            let to = usize::midpoint(fitting, past);
            if fits(Part { from, to }) {
                fitting = to;
            } else {
                past = to;
            }
        }
        (fitting > from).then_some(Part { from, to: fitting })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cell::Cell;

    #[test]
    fn some_rows_are_as_high_as_they_are_together() {
        let heights: Heights = [4.0, 8.0, 4.0].into_iter().collect();
        let of = |from, to| heights.of(Part { from, to });
        assert_eq!(
            (of(0, 3), of(1, 2), of(1, 3), of(2, 2)),
            (16.0, 8.0, 12.0, 0.0)
        );
        assert_eq!((of(2, 9), of(7, 9)), (4.0, 0.0));
    }

    #[test]
    fn as_many_rows_as_fit_are_found_with_few_questions() {
        // 1000 rows 5 high: 20 of them in 103, wherever they begin; 1000 can be halved ten times.
        let heights: Heights = std::iter::repeat_n(5.0, 1000).collect();
        let asked = Cell::new(0);
        let fits = |part: Part| {
            asked.set(asked.get() + 1);
            heights.of(part) <= 103.0
        };
        let to = |from| heights.last_that_fits(from, fits).map(|part| part.to);
        assert_eq!((to(0), to(990), to(1000)), (Some(20), Some(1000), None));
        assert!(asked.get() <= 20, "{}", asked.get());
        assert_eq!(
            heights.last_that_fits(0, |part| heights.of(part) < 5.0),
            None
        );
    }
}
