//! The sections that framing is cut from, and how a member of them is made into a piece.

use super::mark::Marks;
use crate::catalog::{PUNCH_OUTS, SteelSection};
use crate::design::Design;
use crate::geometry::{EndPlane, Extrusion, Outline, Placement, Region, Slot, Solid, Tab, Tabbed};
use crate::parts::{Group, Part, PartKind, Piece, SolidId};
use crate::units::Length;
use std::f64::consts::FRAC_PI_2;

/// A section with its profile.
pub(super) struct Section {
    pub(super) steel: SteelSection,
    pub(super) profile: Region,
}

/// Stud and track.
pub(super) struct Stock {
    pub(super) stud: Section,
    pub(super) track: Section,
}

impl Stock {
    pub(super) fn of(design: &Design) -> Self {
        let section = |steel: &SteelSection| Section {
            profile: steel.profile(),
            steel: steel.clone(),
        };
        Self {
            stud: section(&design.trade.stud),
            track: section(&design.trade.track),
        }
    }
}

impl Section {
    /// A straight piece with square ends.
    pub(super) fn straight(&self, length: f64) -> Extrusion {
        Extrusion {
            profile: self.profile.clone(),
            start: EndPlane::square(0.0),
            end: EndPlane::square(length),
            slots: Vec::new(),
        }
    }

    /// The same with the punch-outs that a piece of `length` cut from the marked end has; `from` and `to` bound the
    /// stretch whose web is whole enough to show them.
    pub(super) fn punched(&self, length: f64) -> Extrusion {
        let mut piece = self.straight(length);
        if self.steel.nominal_depth.mm() <= PUNCH_OUTS.deeper_than {
            return piece;
        }
        let flat = self.steel.depth.mm() - 2.0 * (self.steel.radius + self.steel.thickness).mm();
        let (left, right) = (
            (flat - PUNCH_OUTS.width) / 2.0,
            f64::midpoint(flat, PUNCH_OUTS.width),
        );
        let mut middle = PUNCH_OUTS.first;
        while middle + PUNCH_OUTS.last <= length {
            piece.slots.push(Slot {
                wall: self.steel.web(),
                outline: Outline::rounded_rectangle(
                    left,
                    middle - PUNCH_OUTS.height / 2.0,
                    right,
                    middle + PUNCH_OUTS.height / 2.0,
                    PUNCH_OUTS.width / 2.0,
                ),
            });
            middle += PUNCH_OUTS.pitch;
        }
        piece
    }

    /// The outer radius of a fold in the web.
    fn fold(&self) -> f64 {
        (self.steel.radius + self.steel.thickness).mm()
    }

    /// The straight part of a tab that is cut so much longer than the member.
    ///
    /// The middle of the sheet keeps its length in a fold: body, two folds and two straights together are as long as the
    /// piece was cut.
    fn straight_of_tab(&self, tab: f64) -> f64 {
        let middle = (self.steel.radius + self.steel.thickness / 2.0).mm();
        tab + self.fold() - FRAC_PI_2 * middle
    }

    /// The longest tab whose folded height stays within the section's flange.
    pub(super) fn tab_within_flange(&self) -> f64 {
        let middle = (self.steel.radius + self.steel.thickness / 2.0).mm();
        (self.steel.flange.mm() - 2.0 * self.fold() + FRAC_PI_2 * middle).floor()
    }

    /// A piece that fills `clear` between two faces and is folded onto both, cut `tab` longer at each end.
    ///
    /// The piece's own z = 0 is the first face. Too short a tab is left off: the end is square.
    pub(super) fn tabbed(&self, body: impl Fn(f64) -> Extrusion, clear: f64, tab: f64) -> Solid {
        let length = self.straight_of_tab(tab);
        let fold = self.fold();
        if length < fold || clear < 4.0 * fold {
            return Solid::Extrusion(body(clear));
        }
        let mut body = body(clear);
        body.start = EndPlane::square(fold);
        body.end = EndPlane::square(clear - fold);
        let tab = Some(Tab {
            radius: self.steel.radius.mm(),
            length,
        });
        Solid::Tabbed(Tabbed {
            body,
            wall: self.steel.web(),
            start: tab,
            end: tab,
        })
    }

    /// The length that a tabbed piece is cut to.
    pub(super) fn cut_length(&self, clear: f64, tab: f64) -> f64 {
        if self.straight_of_tab(tab) < self.fold() || clear < 4.0 * self.fold() {
            clear
        } else {
            clear + 2.0 * tab
        }
    }

    /// A finished member.
    pub(super) fn piece(
        &self,
        kind: PartKind,
        marks: &mut Marks,
        face: Option<usize>,
        cut: f64,
        (solid, placement): (Solid, Placement),
    ) -> Piece {
        Piece {
            part: Part {
                mark: marks.next(kind),
                kind,
                group: Group::Framing,
                run: Some(marks.run()),
                face,
                material: "galvanised steel".to_owned(),
                section: self.steel.designator.clone(),
                length: Length::millimetres(cut),
                solid: SolidId(0),
                placement,
            },
            solid,
        }
    }
}
