//! A stretch of an elevation that one sheet shows; long elevations go on from sheet to sheet.

use crate::drawing::dimension::Tier;
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::scene::Sight;
use crate::geometry::{Bounds2, Bounds3, Point2, Vector2};
use crate::plan::Face;
use crate::units::{Length, Notation};

/// Beyond all that an elevation can show, millimetres.
const FAR: f64 = 1e7;

/// From where to where an elevation shows something, in its view's x.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Its left end.
    pub low: f64,
    /// Its right end.
    pub high: f64,
    /// True at the end where it is broken off though there is more to see.
    pub goes_on: [bool; 2],
}

impl Reach {
    /// All that there is to see.
    pub fn all(low: f64, high: f64) -> Self {
        Self {
            low,
            high,
            goes_on: [false; 2],
        }
    }

    /// How long it is.
    pub fn length(&self) -> f64 {
        self.high - self.low
    }
}

/// What of an elevation one sheet shows: a stretch of the view's x between match lines.
///
/// Invariant: `number` counts from 1 to `of`; the stretches of an elevation follow each other without a gap, the first
/// and the last reach past all that is seen, or to where the elevation is broken off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Which of the parts.
    pub number: usize,
    /// How many there are.
    pub of: usize,
    low: f64,
    high: f64,
    /// How wide the widest of the parts is, millimetres built: all are drawn at one scale.
    widest: f64,
}

impl Window {
    /// All of an elevation.
    pub fn whole() -> Self {
        Self {
            number: 1,
            of: 1,
            low: -FAR,
            high: FAR,
            widest: 0.0,
        }
    }

    /// The parts of what an elevation reaches over, parted at `cuts`.
    pub(super) fn parted(reach: &Reach, cuts: &[f64]) -> Vec<Self> {
        let ends: Vec<f64> = [reach.low]
            .into_iter()
            .chain(cuts.iter().copied())
            .collect();
        let highs = cuts.iter().copied().chain([reach.high]);
        let parts: Vec<(f64, f64)> = ends.into_iter().zip(highs).collect();
        let widest = parts.iter().map(|(a, b)| b - a).fold(0.0, f64::max);
        let of = parts.len();
        let widest = if of == 1 { 0.0 } else { widest };
        let [left, right] = reach.goes_on;
        let numbered = parts.into_iter().zip(1..);
        numbered
            .map(|((low, high), number)| Self {
                number,
                of,
                low: if number == 1 && !left { -FAR } else { low },
                high: if number == of && !right { FAR } else { high },
                widest,
            })
            .collect()
    }

    /// True when no part is wider than this.
    pub(super) fn is_within(&self, most: f64) -> bool {
        self.widest <= most
    }

    /// True for an elevation on a single sheet.
    pub fn is_whole(&self) -> bool {
        self.of == 1
    }

    /// How a title goes on: empty for a whole elevation.
    pub fn title(&self) -> String {
        if self.is_whole() {
            return String::new();
        }
        format!(" (part {} of {})", self.number, self.of)
    }

    /// The match line at its left end.
    pub fn left(&self) -> Option<f64> {
        (self.number > 1).then_some(self.low)
    }

    /// The match line at its right end.
    pub fn right(&self) -> Option<f64> {
        (self.number < self.of).then_some(self.high)
    }

    /// Where the elevation is broken off at its left and at its right end.
    pub fn breaks(&self) -> [Option<f64>; 2] {
        [
            (self.number == 1 && self.low > -FAR).then_some(self.low),
            (self.number == self.of && self.high < FAR).then_some(self.high),
        ]
    }

    /// True for a box of the view of which something may be seen in it.
    pub fn meets(&self, area: &Bounds3) -> bool {
        area.low.x < self.high && area.high.x > self.low
    }

    /// What is seen in it.
    pub fn sight(&self, sight: Sight) -> Sight {
        if self.low <= -FAR && self.high >= FAR {
            return sight;
        }
        let area = Bounds2 {
            low: Point2::new(self.low, -FAR),
            high: Point2::new(self.high, FAR),
        };
        let lines = sight.lines.into_iter();
        Sight {
            lines: lines.filter_map(|l| l.inside(&area)).collect(),
        }
    }

    /// A box cut off at the match lines.
    pub fn clipped(&self, area: &Bounds2) -> Bounds2 {
        let x = |x: f64| x.clamp(self.low, self.high);
        Bounds2 {
            low: Point2::new(x(area.low.x), area.low.y),
            high: Point2::new(x(area.high.x), area.high.y),
        }
    }

    /// The face with the openings of which something is seen in it.
    pub fn face(&self, face: &Face) -> Face {
        let openings = face.openings.iter();
        let seen = openings.filter(|o| o.s0 < self.high - 1.0 && o.s1 > self.low + 1.0);
        Face {
            openings: seen.cloned().collect(),
            ..face.clone()
        }
    }

    /// A chain of stations as built, which may lie anywhere on the elevation. Cut at the match lines; what stands in its
    /// gaps is rounded as in the whole chain, so that the parts on all sheets add up to the overall.
    pub fn chain(&self, notation: Notation, name: &str, built: &[f64], fit: &Fit) -> Option<Tier> {
        let inner = built
            .iter()
            .fold((FAR, -FAR), |(low, high), b| (low.min(*b), high.max(*b)));
        let cuts = [self.left(), self.right()].into_iter().flatten();
        let cuts = cuts.filter(|c| *c > inner.0 && *c < inner.1);
        let all: Vec<f64> = built.iter().copied().chain(cuts).collect();
        let tier = Tier::new(notation, name, &all, |s| fit.x(s))?;
        if self.is_whole() {
            return Some(tier);
        }
        let total = notation.spell(Length::millimetres(inner.1 - inner.0));
        let inside = |x: f64| x >= fit.x(self.low) - 1e-6 && x <= fit.x(self.high) + 1e-6;
        let kept: Vec<usize> = (0..tier.stations.len())
            .filter(|i| inside(tier.stations[*i]))
            .collect();
        let (first, last) = (*kept.first()?, *kept.last()?);
        (last > first).then(|| Tier {
            stations: tier.stations[first..=last].to_vec(),
            built: tier.built[first..last].to_vec(),
            texts: tier.texts[first..last].to_vec(),
            name: if built.len() == 2 {
                format!("{name}, part of {total}")
            } else {
                name.to_owned()
            },
            ..tier
        })
    }

    /// The place of a view on its sheet: all parts at the scale at which the widest fits, each in the middle.
    pub fn fit(&self, notation: Notation, seen: &Bounds2, room: &Bounds2, margins: Margins) -> Fit {
        let mut widest = *seen;
        widest.high.x = widest.high.x.max(widest.low.x + self.widest);
        let fit = Fit::new(notation, &widest, room, margins);
        let free = Bounds2 {
            low: room.low + Vector2::new(margins.left, margins.below),
            high: room.high - Vector2::new(margins.right, margins.above),
        };
        Fit::at(fit.scale, seen, &free)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Scale;

    fn fit() -> Fit {
        let area = Bounds2 {
            low: Point2::new(0.0, 0.0),
            high: Point2::new(1000.0, 100.0),
        };
        Fit::at(Scale::full(), &area, &area)
    }

    #[test]
    fn an_elevation_on_one_sheet_is_not_cut() {
        let parts = Window::parted(&Reach::all(0.0, 3000.0), &[]);
        assert_eq!(parts, [Window::whole()]);
        assert_eq!((parts[0].left(), parts[0].right()), (None, None));
        assert_eq!(parts[0].title(), "");
    }

    #[test]
    fn parts_of_a_chain_add_up_to_the_whole() {
        // 1000.4 in gaps that each round down: the whole chain is 333, 334, 333 to the whole 1000; cut at 500 and 700.
        let built = [0.0, 333.4, 666.8, 1000.4];
        let parts = Window::parted(&Reach::all(0.0, 1000.4), &[500.0, 700.0]);
        let texts: Vec<Vec<String>> = (parts.iter())
            .map(|w| {
                w.chain(Notation::Metric, "studs", &built, &fit())
                    .unwrap()
                    .texts
            })
            .collect();
        assert_eq!(texts, [vec!["333", "167"], vec!["167", "33"], vec!["300"]]);
        let total: u32 = texts
            .iter()
            .flatten()
            .map(|t| t.parse::<u32>().unwrap())
            .sum();
        assert_eq!(total, 1000);
        let overall = parts[1]
            .chain(Notation::Metric, "frame overall", &[0.0, 1000.4], &fit())
            .unwrap();
        assert_eq!(overall.texts, ["200"]);
        assert_eq!(overall.name, "frame overall, part of 1000");
    }
}
