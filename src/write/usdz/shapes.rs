//! Each shape once, for parts to refer to.

use super::spelling::{list, triple};
use crate::geometry::Faceted;
use crate::mesh::FlatSurface;
use std::collections::BTreeMap;
use std::fmt::Write;

/// Where the shapes stand: abstract, so that they are not seen by themselves.
const CLASS: &str = "Shapes";

/// Shapes as they are asked for.
pub(super) struct Shapes<'a> {
    surfaces: &'a [Faceted],
    paths: BTreeMap<usize, Option<String>>,
    text: String,
}

impl<'a> Shapes<'a> {
    pub(super) fn new(surfaces: &'a [Faceted]) -> Self {
        Self {
            surfaces,
            paths: BTreeMap::new(),
            text: String::new(),
        }
    }

    /// The path of a shape; `None` for one without a surface.
    pub(super) fn path(&mut self, shape: usize) -> Option<&str> {
        let (surfaces, text) = (self.surfaces, &mut self.text);
        let path = self.paths.entry(shape).or_insert_with(|| {
            let surface = FlatSurface::of(surfaces.get(shape)?);
            let name = format!("Shape_{shape}");
            mesh(text, &surface, &name)?;
            Some(format!("/{CLASS}/{name}"))
        });
        path.as_deref()
    }

    /// As the layer holds them.
    pub(super) fn text(self) -> String {
        format!("\nclass \"{CLASS}\"\n{{\n{}}}\n", self.text)
    }
}

/// A transform with the mesh in it, so that a part can be an instance.
fn mesh(out: &mut String, surface: &FlatSurface, name: &str) -> Option<()> {
    let [low, high] = surface.extent()?;
    let _ = write!(
        out,
        "    class Xform \"{name}\"\n    {{\n        def Mesh \"Surface\"\n        {{\n            float3[] extent = ["
    );
    triple(out, low);
    out.push_str(", ");
    triple(out, high);
    out.push_str("]\n            int[] faceVertexCounts = ");
    let counts = vec![3_u32; surface.indices.len() / 3];
    let whole = |out: &mut String, n: u32| {
        let _ = write!(out, "{n}");
    };
    list(out, &counts, whole);
    out.push_str("\n            int[] faceVertexIndices = ");
    list(out, &surface.indices, whole);
    out.push_str("\n            normal3f[] normals = ");
    list(out, &surface.normals, triple);
    out.push_str(" (\n                interpolation = \"vertex\"\n            )\n            point3f[] points = ");
    list(out, &surface.positions, triple);
    out.push_str("\n            uniform token subdivisionScheme = \"none\"\n        }\n    }\n");
    Some(())
}
