//! Points in a row.

/// How many points stand in a row on a length: the outer ones `inset` from its ends, and none farther apart than
/// `spacing`. A length that is shorter than two insets takes one.
pub(super) fn points(length: f64, inset: f64, spacing: f64) -> usize {
    let between = length - 2.0 * inset;
    if length <= 0.0 || !length.is_finite() || spacing <= 0.0 {
        0
    } else if between <= 0.0 {
        1
    } else {
        (between / spacing - 1e-9).ceil() as usize + 1
    }
}

/// How many points stand between two that are there already.
pub(super) fn between(gap: f64, spacing: f64) -> usize {
    points(gap, 0.0, spacing).saturating_sub(2)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_counted_as_on_paper() {
        // 48 in at 8 in, half an inch in: 47 / 8 = 5.9, six gaps, seven points.
        assert_eq!(points(48.0, 0.5, 8.0), 7);
        assert_eq!(points(17.0, 0.5, 8.0), 3);
        assert_eq!(points(1.0, 0.5, 8.0), 1);
        assert_eq!(points(0.0, 0.5, 8.0), 0);
        assert_eq!(
            (between(8.0, 8.0), between(8.1, 8.0), between(16.0, 8.0)),
            (0, 1, 1)
        );
    }
}
