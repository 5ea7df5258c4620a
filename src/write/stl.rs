//! Binary STL, in millimetres.

use crate::geometry::{Faceted, Vector3};
use crate::mesh::{Facet, Selection};
use stl_io::{Triangle, Vector};

/// The text at the head of each file; it must not begin with `solid`, by which some readers know the text form.
const HEADER: [u8; 80] = {
    let text = b"binary STL, millimetres";
    let mut header = [b' '; 80];
    let mut i = 0;
    while i < text.len() {
        header[i] = text[i];
        i += 1;
    }
    header
};

/// Triangles that are made as they are written: a large island has too many to hold twice.
struct Counted<I> {
    facets: I,
    left: usize,
}

impl<I: Iterator<Item = Facet>> Iterator for Counted<I> {
    type Item = Triangle;

    fn next(&mut self) -> Option<Triangle> {
        let facet = self.facets.next()?;
        self.left = self.left.saturating_sub(1);
        let single = |v: Vector3| Vector::new([v.x as f32, v.y as f32, v.z as f32]);
        Some(Triangle {
            normal: single(facet.normal),
            vertices: facet.corners.map(|p| single(p.coords)),
        })
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        (self.left, Some(self.left))
    }
}

impl<I: Iterator<Item = Facet>> ExactSizeIterator for Counted<I> {}

/// Writes the chosen parts as one binary STL file, part after part, each a closed surface of its own.
///
/// # Panics
/// Never: writing to memory does not fail.
pub fn stl(selection: &Selection) -> Vec<u8> {
    written(selection.facets(), selection.triangle_count())
}

/// Writes one surface as one binary STL file.
///
/// # Panics
/// Never: writing to memory does not fail.
pub fn stl_of(surface: &Faceted) -> Vec<u8> {
    let facets = surface.triangles.iter().map(|t| {
        let corners = surface.corners(t);
        let [a, b, c] = corners;
        let across = (b - a).cross(&(c - a));
        let normal = across.try_normalize(0.0).unwrap_or(across);
        Facet { normal, corners }
    });
    written(facets, surface.triangles.len())
}

fn written(facets: impl Iterator<Item = Facet>, count: usize) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(84 + 50 * count);
    let triangles = Counted {
        facets,
        left: count,
    };
    stl_io::write_stl(&mut bytes, triangles).expect("memory takes every byte");
    bytes[..HEADER.len()].copy_from_slice(&HEADER);
    bytes
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::geometry::{Placement, Solid};
    use crate::mesh::Model;
    use crate::parts::{Assembly, Group, Part, PartKind, Piece, SolidId};
    use crate::units::Length;
    use std::f64::consts::FRAC_PI_2;

    /// Two equal posts, one of them laid on its side, and a board between them in the list.
    pub(in crate::write) fn two_posts_and_a_board() -> Assembly {
        let piece = |mark: &str, size: [f64; 3], shift: [f64; 3], turn: [f64; 3]| {
            let stud = mark.starts_with('S');
            let part = Part {
                mark: mark.to_owned(),
                kind: if stud {
                    PartKind::Stud
                } else {
                    PartKind::Board
                },
                group: if stud { Group::Framing } else { Group::Boards },
                run: Some(0),
                face: None,
                material: "pine".to_owned(),
                section: "30 × 50".to_owned(),
                length: Length::millimetres(100.0),
                solid: SolidId(0),
                placement: Placement::new(Vector3::from(shift), Vector3::from(turn)),
            };
            let solid = Solid::cuboid(size[0], size[1], size[2]);
            Piece { part, solid }
        };
        let post = [30.0, 50.0, 100.0];
        Assembly::new([
            piece("S1", post, [0.0; 3], [0.0; 3]),
            piece("B1", [200.0, 10.0, 100.0], [0.0, 50.0, 0.0], [0.0; 3]),
            piece("S2", post, [300.0, 0.0, 0.0], [0.0, FRAC_PI_2, 0.0]),
        ])
    }

    fn read(bytes: &[u8]) -> stl_io::IndexedMesh {
        stl_io::read_stl(&mut std::io::Cursor::new(bytes)).unwrap()
    }

    #[test]
    fn another_reader_finds_each_part_in_its_place() {
        let assembly = two_posts_and_a_board();
        let model = Model::new(&assembly, 0.1).unwrap();
        let mesh = read(&stl(&model.selection(&assembly, None)));
        assert_eq!(mesh.faces.len(), 36);
        // S2: z goes to +x, x to −z: x from 300 to 400, z from −30 to 0.
        let corners = mesh.faces[24..]
            .iter()
            .flat_map(|f| f.vertices)
            .map(|v| mesh.vertices[v]);
        let far: Vec<f32> = corners.flat_map(|v| [v[0] - 300.0, -v[2]]).collect();
        let near = |a: f32, b: f32| (a - b).abs() < 1e-3;
        assert!(far.chunks(2).all(
            |p| (near(p[0], 0.0) || near(p[0], 100.0)) && (near(p[1], 0.0) || near(p[1], 30.0))
        ));
    }

    #[test]
    fn each_group_is_closed_for_another_reader_and_its_normals_agree() {
        let assembly = two_posts_and_a_board();
        let model = Model::new(&assembly, 0.1).unwrap();
        for group in [Group::Framing, Group::Boards] {
            let mesh = read(&stl(&model.selection(&assembly, Some(group))));
            mesh.validate().unwrap();
            for face in &mesh.faces {
                let vector = |v: [f32; 3]| Vector3::from(v.map(f64::from));
                let [a, b, c] = face.vertices.map(|v| vector(mesh.vertices[v].0));
                let across = (b - a).cross(&(c - a)).normalize();
                assert!((across - vector(face.normal.0)).norm() < 1e-5);
            }
        }
    }

    #[test]
    fn nothing_chosen_is_a_file_without_triangles() {
        let assembly = two_posts_and_a_board();
        let model = Model::new(&assembly, 0.1).unwrap();
        let bytes = stl(&model.selection(&assembly, Some(Group::Coats)));
        assert_eq!(bytes.len(), 84);
        assert!(!bytes.starts_with(b"solid"));
    }
}
