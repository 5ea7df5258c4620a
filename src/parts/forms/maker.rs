//! Form pieces from their sections.

use super::section::Strip;
use crate::geometry::{
    EndPlane, Extrusion, Outline, Placement, Point2, Region, Solid, Vector2, Vector3,
};
use crate::parts::{Group, Part, PartKind, Piece, SolidId};
use crate::plan::Plan;
use crate::units::Length;
use nalgebra::{Rotation3, Translation3, UnitQuaternion};

/// Makes edge forms and counts their marks.
pub(super) struct Maker<'a> {
    /// The plan they are made for.
    pub plan: &'a Plan,
    count: usize,
}

impl<'a> Maker<'a> {
    pub(super) fn new(plan: &'a Plan) -> Self {
        Self { plan, count: 0 }
    }

    /// A straight strip along an edge that starts at `at`; the planes are measured along it from there. `None` when
    /// nothing is left between them.
    pub(super) fn straight(
        &mut self,
        side: usize,
        name: &str,
        section: Outline,
        (at, inward): (Point2, Vector2),
        [start, end]: [EndPlane; 2],
    ) -> Option<Piece> {
        let lengths = section
            .vertices()
            .iter()
            .map(|v| end.z(v.at.x, v.at.y) - start.z(v.at.x, v.at.y));
        let (least, most) = lengths.fold((f64::INFINITY, 0.0), |(low, high): (f64, f64), l| {
            (low.min(l), high.max(l))
        });
        if least < 1e-3 {
            return None;
        }
        let (inward, up) = (Vector3::new(inward.x, inward.y, 0.0), Vector3::z());
        let turn = Rotation3::from_basis_unchecked(&[inward, up, inward.cross(&up)]);
        let placement = Placement::from_parts(
            Translation3::new(at.x, at.y, self.plan.levels.slab_bottom),
            UnitQuaternion::from_rotation_matrix(&turn),
        );
        let bounds = section.bounds();
        let solid = Solid::Extrusion(Extrusion {
            profile: Region::solid(section),
            start,
            end,
            slots: Vec::new(),
        });
        Some(self.piece(
            side,
            name,
            (bounds.width(), bounds.height()),
            most,
            placement,
            solid,
        ))
    }

    /// A piece with the next mark.
    pub(super) fn piece(
        &mut self,
        side: usize,
        name: &str,
        (width, height): (f64, f64),
        length: f64,
        placement: Placement,
        solid: Solid,
    ) -> Piece {
        self.count += 1;
        let face = self.plan.counter.sides[side].face;
        let units = self.plan.design.project.units;
        let spell = |mm: f64| units.spell_with_unit(Length::millimetres(mm));
        Piece {
            part: Part {
                mark: format!("F-{:02}", self.count),
                kind: PartKind::EdgeForm,
                group: Group::Forms,
                run: Some(self.plan.faces[face].run),
                face: Some(face),
                material: "plywood".to_owned(),
                section: format!("{name} {} × {}", spell(width), spell(height)),
                length: Length::millimetres(length),
                solid: SolidId(0),
                placement,
            },
            solid,
        }
    }
}

/// The planes that cut a strip from `start` to `end` by how they stand to its two corners.
pub(super) fn planes(length: f64, start: super::cut::Cut, end: super::cut::Cut) -> [EndPlane; 2] {
    [
        EndPlane {
            offset: start.offset,
            slope: [start.slope, 0.0],
        },
        EndPlane {
            offset: length - end.offset,
            slope: [-end.slope, 0.0],
        },
    ]
}

/// The section of every strip that a side takes.
pub(super) fn strips(plan: &Plan, side: usize) -> Vec<(Strip, Outline)> {
    Strip::ALL
        .into_iter()
        .filter_map(|strip| Some((strip, super::section::section(plan, side, strip)?)))
        .collect()
}
