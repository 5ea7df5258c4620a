//! Water in the bucket, and batches.

use crate::catalog::{Form, Gives};
use crate::design::Buying;
use crate::units::{Length, Notation, Volume};
use std::f64::consts::PI;

/// Mixed volume of a kilogram of dry mix where a bag tells only the area it covers: half a litre, common practice.
const LITRES_PER_KILOGRAM: f64 = 0.5;

/// Water for one bag or one batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water {
    /// How much.
    pub volume: Volume,
    /// How high it stands in the bucket, rounded to 1/8 in or 1 mm.
    pub mark: Length,
}

/// What is mixed at once: so many bags of which each is divided into so many parts.
///
/// Invariant: one of the two is 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Batch {
    /// Whole bags.
    pub bags: u32,
    /// Into how many equal parts a bag is divided.
    pub parts: u32,
}

impl Water {
    /// So much water in the bucket of the file; `None` without a bucket.
    pub(super) fn of(volume: Volume, buying: &Buying, notation: Notation) -> Option<Self> {
        let radius = buying.bucket_diameter.mm() / 2.0;
        let step = match notation {
            Notation::Imperial => 25.4 / 8.0,
            Notation::Metric => 1.0,
        };
        let height = volume.mm3() / (PI * radius * radius);
        let mark = Length::millimetres((height / step).round() * step);
        mark.is_finite().then_some(Self { volume, mark })
    }
}

impl Batch {
    /// As many bags as go into a mixer or bucket at once, and no more than `most`; or the fewest equal parts of a bag that
    /// do.
    pub(super) fn of(bag: &Form, capacity: Volume, most: u32) -> Option<Self> {
        let Form::Bag { mass, gives, .. } = bag else {
            return None;
        };
        let mixed = match gives {
            Gives::Volume(volume) => *volume,
            Gives::Area(_) => Volume::cubic_millimetres(mass.kg() * LITRES_PER_KILOGRAM * 1e6),
        };
        let fits = capacity / mixed;
        if !fits.is_finite() || fits <= 0.0 {
            return None;
        }
        let whole = |x: f64| x.clamp(1.0, 1e6) as u32;
        Some(if fits >= 1.0 {
            Self {
                bags: whole((fits + 1e-9).floor()).min(most.max(1)),
                parts: 1,
            }
        } else {
            Self {
                bags: 1,
                parts: whole((1.0 / fits - 1e-9).ceil()),
            }
        })
    }

    /// How many batches so many bags are; the last one may be smaller.
    pub(super) fn count(self, bags: f64) -> u32 {
        let batches = bags * f64::from(self.parts) / f64::from(self.bags);
        (batches - 1e-9).ceil().clamp(0.0, 1e9) as u32
    }

    /// What goes with so many bags, by what goes with one.
    pub(super) fn share(self, of_bag: Volume) -> Volume {
        of_bag * (f64::from(self.bags) / f64::from(self.parts))
    }

    /// In words: `2 bags`, `1/2 bag`.
    pub fn spell(self) -> String {
        match (self.bags, self.parts) {
            (1, 1) => "1 bag".to_owned(),
            (bags, 1) => format!("{bags} bags"),
            (bags, parts) => format!("{bags}/{parts} bag"),
        }
    }
}
