//! One chain of dimensions.

use crate::units::{Chain, Length, Notation};

/// A chain: where its stations are on the sheet, and what stands in its gaps.
///
/// Invariant: stations rise; there is one text less than stations; the texts add up to their overall.
#[derive(Clone, Debug, PartialEq)]
pub struct Tier {
    /// Along the side of the view, millimetres on the sheet.
    pub stations: Vec<f64>,
    /// The gaps as built, millimetres.
    pub built: Vec<f64>,
    /// The spelt gaps.
    pub texts: Vec<String>,
    /// What the chain measures, lettered at its end; may be empty.
    pub name: String,
    /// Stations that need no extension line, because what they measure to crosses the chain itself.
    pub bare: Vec<f64>,
    /// Where extension lines begin, beyond the usual gap; negative when they begin farther in.
    pub from: f64,
}

impl Tier {
    /// A chain of stations given as built, in any order; `sheet` says where on the sheet each is. Stations that round
    /// to the same length are one. `None` when fewer than two are left.
    pub fn new(
        notation: Notation,
        name: &str,
        built: &[f64],
        sheet: impl Fn(f64) -> f64,
    ) -> Option<Self> {
        let mut built: Vec<f64> = built.iter().copied().filter(|b| b.is_finite()).collect();
        built.sort_by(f64::total_cmp);
        let first = *built.first()?;
        let last = *built.last()?;
        let step = |b: f64| notation.steps(Length::millimetres(b - first));
        let mut kept: Vec<f64> = Vec::with_capacity(built.len());
        for b in built {
            if kept.last().is_none_or(|k| step(*k) != step(b)) {
                kept.push(b);
            }
        }
        // The overall length is exact on the sheet: its last station is the last one given.
        if let Some(end) = kept.last_mut() {
            *end = last;
        }
        let lengths: Vec<_> = kept.iter().map(|b| Length::millimetres(*b)).collect();
        let mut gaps: Vec<f64> = kept.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let mut stations: Vec<f64> = kept.into_iter().map(sheet).collect();
        let mut texts = Chain::new(notation, &lengths).gaps();
        if stations.len() < 2 {
            return None;
        }
        if stations.first() > stations.last() {
            stations.reverse();
            texts.reverse();
            gaps.reverse();
        }
        Some(Self {
            stations,
            built: gaps,
            texts,
            name: name.to_owned(),
            bare: Vec::new(),
            from: 0.0,
        })
    }
}

impl Tier {
    /// Millimetres on the sheet for one built.
    pub fn scale(&self) -> f64 {
        let ends = self.stations.first().zip(self.stations.last());
        let drawn = ends.map_or(0.0, |(first, last)| last - first);
        let built: f64 = self.built.iter().sum();
        if built > 0.0 { drawn / built } else { 1.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chain_adds_up_and_drops_what_rounds_away() {
        let built = [0.0, 333.4, 333.6, 666.7, 1000.2];
        let tier = Tier::new(Notation::Metric, "", &built, |b| b / 10.0).unwrap();
        assert_eq!(tier.texts, ["333", "1", "333", "333"]);
        assert!((tier.stations[4] - 100.02).abs() < 1e-12);
        let tier = Tier::new(Notation::Metric, "", &[0.0, 0.2, 500.0], |b| b).unwrap();
        assert_eq!(tier.texts, ["500"]);
        assert_eq!(Tier::new(Notation::Metric, "", &[3.0, 3.1], |b| b), None);
    }

    #[test]
    fn a_side_seen_from_the_other_end_is_turned_round() {
        let tier = Tier::new(Notation::Metric, "", &[0.0, 100.0, 300.0], |b| 500.0 - b).unwrap();
        assert_eq!(tier.stations, [200.0, 400.0, 500.0]);
        assert_eq!(tier.texts, ["200", "100"]);
    }
}
