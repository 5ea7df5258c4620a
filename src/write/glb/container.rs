//! The whole file: a head, the JSON, the numbers.

use super::buffer::pad;
use super::camera;
use super::document::{Asset, Document, Material, Scene, Surface};
use super::tree::Tree;
use crate::mesh::{Appearance, Showing};

/// `glTF`, `JSON` and `BIN\0` as little-endian numbers.
const MAGIC: u32 = 0x4654_6c67;
const JSON: u32 = 0x4e4f_534a;
const BIN: u32 = 0x004e_4942;

/// Writes the island as GLB.
///
/// The scene that opens is the island as it stands, frame and all; a second scene holds the forms alone, in their place.
pub fn glb(showing: &Showing) -> Vec<u8> {
    let (document, bytes) = document(showing);
    let mut json = serde_json::to_vec(&document).unwrap_or_default();
    pad(&mut json, b' ');
    let mut bytes = bytes;
    pad(&mut bytes, 0);
    let mut file = Vec::with_capacity(28 + json.len() + bytes.len());
    let word = |file: &mut Vec<u8>, word: u32| file.extend(word.to_le_bytes());
    let chunks = if bytes.is_empty() { 20 } else { 28 };
    word(&mut file, MAGIC);
    word(&mut file, 2);
    word(&mut file, (chunks + json.len() + bytes.len()) as u32);
    word(&mut file, json.len() as u32);
    word(&mut file, JSON);
    file.extend(json);
    if !bytes.is_empty() {
        word(&mut file, bytes.len() as u32);
        word(&mut file, BIN);
        file.extend(bytes);
    }
    file
}

fn document<'a>(showing: &'a Showing) -> (Document<'a>, Vec<u8>) {
    let mut tree = Tree::new(showing);
    let mut scenes = Vec::new();
    let island = tree.of_parts(showing.title, &showing.built);
    let views = tree.of_views(showing);
    let forms = tree.of_parts("forms", &showing.forms);
    scenes.push(Scene {
        name: "island",
        nodes: island.into_iter().chain(views).collect(),
    });
    if let Some(forms) = forms {
        scenes.push(Scene {
            name: "forms",
            nodes: vec![forms],
        });
    }
    let looks = tree.shapes.materials.iter();
    let looks = looks.filter_map(|m| showing.appearances.all().get(*m));
    let materials = looks.map(material).collect();
    let meshes = tree.shapes.meshes;
    let (bytes, buffer_views, buffers, accessors) = tree.shapes.buffer.joined();
    let document = Document {
        asset: Asset {
            version: "2.0",
            generator: "islandwright",
        },
        scene: 0,
        scenes,
        nodes: tree.nodes,
        cameras: showing.views.iter().map(camera::camera).collect(),
        meshes,
        materials,
        accessors,
        buffer_views,
        buffers,
    };
    (document, bytes)
}

fn material(look: &Appearance) -> Material {
    let [red, green, blue] = look.colour;
    Material {
        name: look.name,
        pbr_metallic_roughness: Surface {
            colour: [red, green, blue, 1.0],
            metallic: look.metallic,
            roughness: look.roughness,
        },
    }
}
