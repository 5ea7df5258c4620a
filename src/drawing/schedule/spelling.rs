//! How the cells of schedules are spelt.

use crate::design::Placed;
use crate::plan::Plan;
use crate::table::Cell;
use crate::units::{Length, Notation, Unit};

/// Spells the values of one plan in its units.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spelling {
    units: Notation,
}

impl Spelling {
    /// As the project's units say.
    pub(super) fn of(plan: &Plan) -> Self {
        Self {
            units: plan.design.project.units,
        }
    }

    /// True for feet and inches.
    pub(super) fn is_imperial(self) -> bool {
        self.units == Notation::Imperial
    }

    /// A length without its unit, as on a drawing.
    pub(super) fn bare(self, length: Length) -> String {
        self.units.spell(length)
    }

    /// A length with its unit.
    pub(super) fn length(self, length: Length) -> String {
        self.units.spell_with_unit(length)
    }

    /// Lengths with × between them.
    pub(super) fn size(self, lengths: &[Length]) -> Cell {
        let spelt: Vec<_> = lengths.iter().map(|l| self.bare(*l)).collect();
        Cell::text(spelt.join(" × "))
    }

    /// A length that the file may not have said.
    pub(super) fn perhaps(self, length: Option<&Placed<Length>>) -> Cell {
        length.map_or(Cell::Empty, |l| Cell::text(self.bare(l.value)))
    }

    /// An amount of this unit, in the unit's base, with its sign.
    pub(super) fn amount(self, unit: Unit, value: f64) -> String {
        unit.spell(value, self.units)
    }

    /// What the lengths of a schedule are in, as a sentence.
    pub(super) fn lengths_are(self) -> &'static str {
        match self.units {
            Notation::Imperial => "Lengths in feet, inches and fractions.",
            Notation::Metric => "Lengths in millimetres.",
        }
    }
}
