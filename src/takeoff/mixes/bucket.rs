//! Water in the bucket, and batches.

use crate::catalog::{Form, Gives};
use crate::design::Buying;
use crate::units::{Length, Notation, Volume};
use std::f64::consts::PI;

/// Mixed volume of a kilogram of dry mix where a bag tells only the area it covers: half a litre, common practice.
const LITRES_PER_KILOGRAM: f64 = 0.5;

/// A bag is divided into no more parts because less of it is needed (common practice).
const MOST_PARTS: f64 = 8.0;

/// Water for one bag or one batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water {
    /// How much.
    pub volume: Volume,
    /// How many full buckets of it there are.
    pub full: u32,
    /// How high the rest stands in the bucket, rounded to 1/8 in or 1 mm.
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
        let full = (volume / buying.bucket + 1e-9).floor();
        let rest = volume.mm3() - full * buying.bucket.mm3();
        let height = rest.max(0.0) / (PI * radius * radius);
        let mark = Length::millimetres((height / step).round() * step);
        let is_told = mark.is_finite() && full.is_finite();
        is_told.then_some(Self {
            volume,
            full: full.clamp(0.0, 1e6) as u32,
            mark,
        })
    }

    /// The mark in words: `3 5/8"`, `2 buckets and 3"`.
    pub fn spell_mark(self, notation: Notation) -> String {
        let mark = notation.spell_with_unit(self.mark);
        let full = match self.full {
            0 => return mark,
            1 => "1 bucket".to_owned(),
            n => format!("{n} buckets"),
        };
        if self.mark > Length::ZERO {
            format!("{full} and {mark}")
        } else {
            full
        }
    }
}

/// What a bag makes when it is mixed; `None` for what is no bag.
pub(super) fn mixed(bag: &Form) -> Option<Volume> {
    let Form::Bag { mass, gives, .. } = bag else {
        return None;
    };
    Some(match gives {
        Gives::Volume(volume) => *volume,
        Gives::Area(_) => Volume::cubic_millimetres(mass.kg() * LITRES_PER_KILOGRAM * 1e6),
    })
}

impl Batch {
    /// As many whole bags as go into a mixer or bucket at once and as are needed, or the fewest equal parts of a bag that
    /// do; where less than a bag is needed the smallest part that is enough, down to an eighth. A bag with a colour of its
    /// own stays whole, for each part would look different.
    pub(super) fn of(bag: &Form, capacity: Volume, needed: f64) -> Option<Self> {
        let Form::Bag { colour, .. } = bag else {
            return None;
        };
        let fits = capacity / mixed(bag)?;
        if !fits.is_finite() || fits <= 0.0 {
            return None;
        }
        let whole = |x: f64| x.clamp(1.0, 1e6) as u32;
        if (fits >= 1.0 && needed >= 1.0) || !colour.is_empty() {
            return Some(Self {
                bags: whole((fits.min(needed) + 1e-9).floor()),
                parts: 1,
            });
        }
        let enough = (1.0 / needed + 1e-9).floor().min(MOST_PARTS);
        let parts = (1.0 / fits - 1e-9).ceil().max(enough);
        Some(Self {
            bags: 1,
            parts: whole(parts),
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
