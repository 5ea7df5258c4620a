//! Flat pieces on a face.

use super::{Group, Part, PartKind, Piece, SolidId};
use crate::geometry::{Outline, Placement, Region, Solid, Vertex};
use crate::plan::{Face, Layer};
use crate::units::Length;

/// What flat pieces on one face have in common.
#[derive(Clone, Debug)]
pub(super) struct Plate<'a> {
    /// The face they stand on.
    pub face: &'a Face,
    /// Its number.
    pub index: usize,
    /// What they are.
    pub kind: PartKind,
    /// Which model they belong to.
    pub group: Group,
    /// What they are made of.
    pub material: &'a str,
    /// Their sheet, or what they stand for.
    pub section: String,
}

impl Plate<'_> {
    /// A piece that fills a layer over a region in the face's coordinates (s, z); its shape begins at the lower left
    /// corner, so that equal pieces have equal shapes.
    pub fn piece(&self, mark: String, region: &Region, layer: Layer) -> Piece {
        let bounds = region.outer.bounds();
        let shape = Region {
            outer: shifted(&region.outer, bounds.low.x, bounds.low.y),
            holes: region
                .holes
                .iter()
                .map(|h| shifted(h, bounds.low.x, bounds.low.y))
                .collect(),
        };
        self.placed(
            mark,
            Solid::extrusion(shape, even(layer.thickness())),
            bounds.width().max(bounds.height()),
            self.face.plate(bounds.low.x, bounds.low.y, layer.inner),
        )
    }

    /// A piece of any shape and place.
    pub fn placed(&self, mark: String, solid: Solid, length: f64, placement: Placement) -> Piece {
        let part = Part {
            mark,
            kind: self.kind,
            group: self.group,
            run: Some(self.face.run),
            face: Some(self.index),
            material: self.material.to_owned(),
            section: self.section.clone(),
            length: Length::millimetres(length),
            solid: SolidId(0),
            placement,
        };
        Piece { part, solid }
    }
}

/// The nearest whole nanometre: equal pieces cut from different places must not differ in the last digits.
fn even(x: f64) -> f64 {
    (x * 1e6).round() / 1e6
}

fn shifted(outline: &Outline, x: f64, y: f64) -> Outline {
    let vertices = outline.vertices().iter();
    Outline::new(
        vertices
            .map(|v| Vertex::bent(even(v.at.x - x), even(v.at.y - y), v.bulge))
            .collect(),
    )
}
