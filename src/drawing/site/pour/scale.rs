//! A scale of values along a panel's height.

/// Values from one to another with steps that people count in: 1, 2 or 5 of a decade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Values {
    /// The lowest.
    pub low: f64,
    /// The highest.
    pub high: f64,
    /// From one mark to the next.
    pub step: f64,
}

impl Values {
    /// A scale that holds two values, with no more than so many steps.
    pub fn over(low: f64, high: f64, most: f64) -> Self {
        let (low, high) = if low.is_finite() && high.is_finite() {
            (low.min(high), low.max(high))
        } else {
            (0.0, 1.0)
        };
        let span = (high - low).clamp(1e-6, 1e9);
        let decade = 10.0_f64.powf((span / most.max(1.0)).log10().floor());
        let steps = [1.0, 2.0, 5.0, 10.0].map(|s| s * decade);
        let step = steps.into_iter().find(|s| span / s <= most);
        let step = step.unwrap_or(span);
        let low = (low / step + 1e-9).floor() * step;
        let high = ((high / step - 1e-9).ceil() * step).max(low + step);
        Self { low, high, step }
    }

    /// Where a value lies, 0 at the foot and 1 at the top; what is beyond lies there.
    pub fn part(self, value: f64) -> f64 {
        ((value - self.low) / (self.high - self.low)).clamp(0.0, 1.0)
    }

    /// The marks with their lettering.
    pub fn marks(self) -> Vec<(f64, String)> {
        let count = ((self.high - self.low) / self.step)
            .round()
            .clamp(1.0, 50.0) as u32;
        let decimals = (-self.step.log10() - 1e-9).ceil().clamp(0.0, 4.0) as usize;
        let mark = |i: u32| {
            let value = self.low + f64::from(i) * self.step;
            (value, format!("{:.decimals$}", value + 0.0))
        };
        (0..=count).map(mark).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_those_people_count_in() {
        let v = Values::over(0.0, 0.33, 5.0);
        assert!((v.step - 0.1).abs() < 1e-12 && (v.high - 0.4).abs() < 1e-12);
        let letters: Vec<_> = v.marks().into_iter().map(|m| m.1).collect();
        assert_eq!(letters, ["0.0", "0.1", "0.2", "0.3", "0.4"]);
        let t = Values::over(55.0, 96.0, 5.0);
        assert!((t.low - 50.0).abs() < 1e-9 && (t.high - 100.0).abs() < 1e-9);
        assert!((t.part(75.0) - 0.5).abs() < 1e-12);
        for odd in [(f64::NAN, 1.0), (5.0, 5.0), (-1e300, 1e300), (1e-12, 2e-12)] {
            let v = Values::over(odd.0, odd.1, 5.0);
            assert!(v.high > v.low && v.marks().len() < 60, "{odd:?}");
        }
    }
}
