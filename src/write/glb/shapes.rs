//! The meshes of a glTF file: each shape once for each material that it is seen in.

use super::buffer::{Numbers, Stored};
use super::document::{Attributes, Mesh, Primitive};
use crate::geometry::Faceted;
use crate::mesh::{Appearances, FlatSurface};
use crate::parts::Part;
use std::collections::BTreeMap;

/// Meshes as they are asked for.
pub(super) struct Shapes<'a> {
    surfaces: &'a [Faceted],
    stored: BTreeMap<usize, Option<Stored>>,
    numbers: BTreeMap<(usize, usize), usize>,
    /// Which appearances are seen, in the order of their first part.
    pub(super) materials: Vec<usize>,
    pub(super) meshes: Vec<Mesh>,
    pub(super) buffer: Numbers,
}

impl<'a> Shapes<'a> {
    pub(super) fn new(surfaces: &'a [Faceted]) -> Self {
        Self {
            surfaces,
            stored: BTreeMap::new(),
            numbers: BTreeMap::new(),
            materials: Vec::new(),
            meshes: Vec::new(),
            buffer: Numbers::default(),
        }
    }

    /// The number of a part's mesh; `None` for a shape without a surface.
    pub(super) fn of(&mut self, part: &Part) -> Option<usize> {
        let shape = part.solid.0;
        let appearance = Appearances::number(part.kind);
        if let Some(number) = self.numbers.get(&(shape, appearance)) {
            return Some(*number);
        }
        let stored = self.stored(shape)?;
        let material = self.material(appearance);
        self.meshes.push(Mesh {
            primitives: [Primitive {
                attributes: Attributes {
                    position: stored.position,
                    normal: stored.normal,
                },
                indices: stored.indices,
                material,
            }],
        });
        let number = self.meshes.len() - 1;
        self.numbers.insert((shape, appearance), number);
        Some(number)
    }

    /// The number of an appearance among those that are seen.
    fn material(&mut self, appearance: usize) -> usize {
        let known = self.materials.iter().position(|m| *m == appearance);
        known.unwrap_or_else(|| {
            self.materials.push(appearance);
            self.materials.len() - 1
        })
    }

    fn stored(&mut self, shape: usize) -> Option<Stored> {
        let (surfaces, buffer) = (self.surfaces, &mut self.buffer);
        *self.stored.entry(shape).or_insert_with(|| {
            let surface = surfaces.get(shape).map(FlatSurface::of)?;
            buffer.add(&surface)
        })
    }
}
