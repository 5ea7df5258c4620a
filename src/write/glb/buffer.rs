//! The binary part of a glTF file: corners, then triangles.

use super::document::{Accessor, Buffer, BufferView, CORNERS, FLOAT, INT, SHORT, TRIANGLES};
use crate::mesh::FlatSurface;

/// Bytes of a corner or a normal.
const TRIPLE: usize = 12;

/// Where a surface stands in the accessors.
#[derive(Clone, Copy)]
pub(super) struct Stored {
    pub(super) position: usize,
    pub(super) normal: usize,
    pub(super) indices: usize,
}

/// Numbers of all surfaces, one after another, and the accessors that say where each begins.
///
/// Invariant: every accessor begins at a multiple of four bytes.
#[derive(Default)]
pub(super) struct Numbers {
    corners: Vec<u8>,
    triangles: Vec<u8>,
    pub(super) accessors: Vec<Accessor>,
}

impl Numbers {
    /// Adds a surface; `None` for one without a corner, which the format cannot hold.
    pub(super) fn add(&mut self, surface: &FlatSurface) -> Option<Stored> {
        let [low, high] = surface.extent()?;
        let position = self.triples(&surface.positions);
        self.accessors[position].min = Some(low);
        self.accessors[position].max = Some(high);
        let normal = self.triples(&surface.normals);
        Some(Stored {
            position,
            normal,
            indices: self.indices(&surface.indices, surface.positions.len()),
        })
    }

    fn triples(&mut self, values: &[[f32; 3]]) -> usize {
        let from = self.corners.len();
        let bytes = values.iter().flatten().flat_map(|v| v.to_le_bytes());
        self.corners.extend(bytes);
        self.accessor(0, from, FLOAT, values.len(), "VEC3")
    }

    /// Two bytes for a number where all of them fit; the last of these, 65535, is none in the format.
    fn indices(&mut self, values: &[u32], corners: usize) -> usize {
        let from = self.triangles.len();
        let short = u16::try_from(corners).is_ok();
        for value in values {
            let bytes = value.to_le_bytes();
            self.triangles
                .extend(if short { &bytes[..2] } else { &bytes[..] });
        }
        pad(&mut self.triangles, 0);
        let kind = if short { SHORT } else { INT };
        self.accessor(1, from, kind, values.len(), "SCALAR")
    }

    fn accessor(
        &mut self,
        buffer_view: usize,
        byte_offset: usize,
        component_type: u32,
        count: usize,
        kind: &'static str,
    ) -> usize {
        self.accessors.push(Accessor {
            buffer_view,
            byte_offset,
            component_type,
            count,
            kind,
            min: None,
            max: None,
        });
        self.accessors.len() - 1
    }

    /// The whole buffer, and how it is divided; nothing at all without a surface.
    pub(super) fn joined(self) -> (Vec<u8>, Vec<BufferView>, Vec<Buffer>, Vec<Accessor>) {
        if self.accessors.is_empty() {
            return (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        }
        let (corners, triangles) = (self.corners.len(), self.triangles.len());
        let mut bytes = self.corners;
        bytes.extend(self.triangles);
        let views = vec![
            BufferView {
                buffer: 0,
                byte_offset: 0,
                byte_length: corners,
                byte_stride: Some(TRIPLE),
                target: CORNERS,
            },
            BufferView {
                buffer: 0,
                byte_offset: corners,
                byte_length: triangles,
                byte_stride: None,
                target: TRIANGLES,
            },
        ];
        let byte_length = bytes.len();
        (bytes, views, vec![Buffer { byte_length }], self.accessors)
    }
}

/// Fills up to a multiple of four bytes.
pub(super) fn pad(bytes: &mut Vec<u8>, with: u8) {
    bytes.resize(bytes.len().next_multiple_of(4), with);
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A surface of so many corners of which three make a triangle.
    fn surface(corners: u32) -> FlatSurface {
        FlatSurface {
            positions: (0..corners).map(|i| [i as f32, 0.0, 0.5]).collect(),
            normals: vec![[0.0, 1.0, 0.0]; corners as usize],
            indices: vec![0, 1, corners - 1],
        }
    }

    #[test]
    fn accessors_begin_at_multiples_of_four_and_large_surfaces_take_wide_numbers() {
        let mut numbers = Numbers::default();
        for corners in [3, 65_535, 65_536] {
            numbers.add(&surface(corners)).unwrap();
        }
        assert!(numbers.add(&FlatSurface::default()).is_none());
        let (bytes, views, _, accessors) = numbers.joined();
        assert!(accessors.iter().all(|a| a.byte_offset % 4 == 0));
        let kinds: Vec<_> = accessors
            .iter()
            .skip(2)
            .step_by(3)
            .map(|a| a.component_type)
            .collect();
        assert_eq!(kinds, [SHORT, SHORT, INT]);
        // The last triangle, wide: 0, 1, 65535.
        let last: Vec<u32> = bytes[bytes.len() - 12..]
            .chunks(4)
            .map(|b| u32::from_le_bytes([b[0], b[1], b[2], b[3]]))
            .collect();
        assert_eq!(last, [0, 1, 65_535]);
        assert_eq!(views[0].byte_length + views[1].byte_length, bytes.len());
        assert_eq!(accessors[0].max, Some([2.0, 0.0, 0.5]));
    }
}
