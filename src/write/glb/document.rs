//! The JSON part of a glTF file, as the specification names its properties.

use serde::Serialize;

/// `GL_FLOAT`, `GL_UNSIGNED_SHORT`, `GL_UNSIGNED_INT`, `GL_ARRAY_BUFFER` and `GL_ELEMENT_ARRAY_BUFFER`.
pub(super) const FLOAT: u32 = 5126;
pub(super) const SHORT: u32 = 5123;
pub(super) const INT: u32 = 5125;
pub(super) const CORNERS: u32 = 34962;
pub(super) const TRIANGLES: u32 = 34963;

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Document<'a> {
    pub(super) asset: Asset,
    pub(super) scene: usize,
    pub(super) scenes: Vec<Scene>,
    pub(super) nodes: Vec<Node<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) cameras: Vec<Camera<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) meshes: Vec<Mesh>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) materials: Vec<Material>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) accessors: Vec<Accessor>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) buffer_views: Vec<BufferView>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) buffers: Vec<Buffer>,
}

#[derive(Serialize)]
pub(super) struct Asset {
    pub(super) version: &'static str,
    pub(super) generator: &'static str,
}

#[derive(Serialize)]
pub(super) struct Scene {
    pub(super) name: &'static str,
    pub(super) nodes: Vec<usize>,
}

#[derive(Default, Serialize)]
pub(super) struct Node<'a> {
    pub(super) name: String,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) children: Vec<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) mesh: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) camera: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) translation: Option<[f32; 3]>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) rotation: Option<[f32; 4]>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) extras: Option<Extras<'a>>,
}

/// What is told of a part beside its shape.
#[derive(Serialize)]
pub(super) struct Extras<'a> {
    pub(super) mark: &'a str,
    pub(super) kind: &'static str,
    pub(super) material: &'a str,
    pub(super) section: &'a str,
    /// Its length to cut, millimetres; for sheets the long side.
    pub(super) length_mm: f64,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Camera<'a> {
    pub(super) name: &'a str,
    #[serde(rename = "type")]
    pub(super) kind: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) perspective: Option<Perspective>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) orthographic: Option<Orthographic>,
}

#[derive(Serialize)]
pub(super) struct Perspective {
    pub(super) yfov: f32,
    pub(super) znear: f32,
    pub(super) zfar: f32,
}

#[derive(Serialize)]
pub(super) struct Orthographic {
    pub(super) xmag: f32,
    pub(super) ymag: f32,
    pub(super) znear: f32,
    pub(super) zfar: f32,
}

#[derive(Serialize)]
pub(super) struct Mesh {
    pub(super) primitives: [Primitive; 1],
}

#[derive(Serialize)]
pub(super) struct Primitive {
    pub(super) attributes: Attributes,
    pub(super) indices: usize,
    pub(super) material: usize,
}

#[derive(Serialize)]
#[serde(rename_all = "UPPERCASE")]
pub(super) struct Attributes {
    pub(super) position: usize,
    pub(super) normal: usize,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Material {
    pub(super) name: &'static str,
    pub(super) pbr_metallic_roughness: Surface,
}

#[derive(Serialize)]
pub(super) struct Surface {
    #[serde(rename = "baseColorFactor")]
    pub(super) colour: [f32; 4],
    #[serde(rename = "metallicFactor")]
    pub(super) metallic: f32,
    #[serde(rename = "roughnessFactor")]
    pub(super) roughness: f32,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Accessor {
    pub(super) buffer_view: usize,
    pub(super) byte_offset: usize,
    pub(super) component_type: u32,
    pub(super) count: usize,
    #[serde(rename = "type")]
    pub(super) kind: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) min: Option<[f32; 3]>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) max: Option<[f32; 3]>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct BufferView {
    pub(super) buffer: usize,
    pub(super) byte_offset: usize,
    pub(super) byte_length: usize,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) byte_stride: Option<usize>,
    pub(super) target: u32,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Buffer {
    pub(super) byte_length: usize,
}
