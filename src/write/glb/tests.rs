use super::glb;
use crate::design::sample;
use crate::geometry::Point3;
use crate::mesh::{Appearances, Lens, Model, Showing, Viewpoint};
use crate::parts::{Assembly, Group};
use crate::write::stl::tests::two_posts_and_a_board;
use serde_json::Value;

/// A shown assembly of one run.
pub(in crate::write) fn showing<'a>(assembly: &'a Assembly, model: &'a Model) -> Showing<'a> {
    let design = sample::design(vec![sample::run("ash", 3000.0, None, &[])]);
    Showing {
        title: "Trial \"one\"",
        runs: vec!["ash"],
        meshes: model.meshes(),
        built: model.chosen(assembly, |p| p.group != Group::Forms),
        forms: model.selection(assembly, Some(Group::Forms)),
        appearances: Appearances::of(&design),
        views: vec![Viewpoint {
            name: "front".to_owned(),
            eye: Point3::new(0.0, -3000.0, 0.0),
            target: Point3::origin(),
            lens: Lens::Perspective,
            reach: 4000.0,
        }],
    }
}

/// The JSON and the numbers of a file, by the layout that the specification gives it.
fn opened(file: &[u8]) -> (Value, Vec<u8>) {
    let word = |at: usize| u32::from_le_bytes(file[at..at + 4].try_into().unwrap()) as usize;
    assert_eq!(&file[..4], b"glTF");
    assert_eq!((word(4), word(8)), (2, file.len()));
    let json = word(12);
    assert_eq!(&file[16..20], b"JSON");
    let document = serde_json::from_slice(&file[20..20 + json]).unwrap();
    let Some(rest) = file.get(20 + json..).filter(|r| !r.is_empty()) else {
        return (document, Vec::new());
    };
    assert_eq!(&rest[4..8], b"BIN\0");
    assert_eq!(word(20 + json), rest.len() - 8);
    (document, rest[8..].to_vec())
}

#[test]
fn every_part_is_a_node_under_its_run_and_group() {
    let assembly = two_posts_and_a_board();
    let model = Model::new(&assembly, 0.1).unwrap();
    let (document, _) = opened(&glb(&showing(&assembly, &model)));
    let nodes = document["nodes"].as_array().unwrap();
    let children = |node: &Value| -> Vec<Value> {
        let numbers = node["children"].as_array().cloned().unwrap_or_default();
        numbers
            .iter()
            .map(|n| nodes[n.as_u64().unwrap() as usize].clone())
            .collect()
    };
    let names = |found: &[Value]| -> Vec<String> {
        found
            .iter()
            .map(|n| n["name"].as_str().unwrap().to_owned())
            .collect()
    };
    let roots = document["scenes"][0]["nodes"].as_array().unwrap();
    let island = &nodes[roots[0].as_u64().unwrap() as usize];
    assert_eq!(island["name"], "Trial \"one\"");
    let runs = children(island);
    assert_eq!(names(&runs), ["ash run"]);
    let groups = children(&runs[0]);
    assert_eq!(names(&groups), ["ash run, framing", "ash run, boards"]);
    let posts = children(&groups[0]);
    assert_eq!(names(&posts), ["S1 stud", "S2 stud"]);
    assert_eq!(posts[0]["extras"]["section"], "30 × 50");
    assert_eq!(posts[0]["extras"]["length_mm"], 100.0);
    // Equal posts share a mesh; S1 stands at the origin and needs no place, S2 lies at x = 300.
    assert_eq!(posts[0]["mesh"], posts[1]["mesh"]);
    assert!(posts[0].get("translation").is_none());
    assert_eq!(posts[1]["translation"], serde_json::json!([0.3, 0.0, 0.0]));
    let views = &nodes[roots[1].as_u64().unwrap() as usize];
    assert_eq!(names(&children(views)), ["front"]);
}

#[test]
fn shapes_stand_once_in_the_numbers_and_unseen_materials_not_at_all() {
    let assembly = two_posts_and_a_board();
    let model = Model::new(&assembly, 0.1).unwrap();
    let (document, bytes) = opened(&glb(&showing(&assembly, &model)));
    assert_eq!(document["meshes"].as_array().unwrap().len(), 2);
    // Two boxes, each of 24 corners and normals of 12 bytes and 36 numbers of 2.
    assert_eq!(bytes.len(), 2 * (2 * 24 * 12 + 36 * 2));
    assert_eq!(document["buffers"][0]["byteLength"], bytes.len());
    let materials = document["materials"].as_array().unwrap();
    let names: Vec<_> = materials
        .iter()
        .map(|m| m["name"].as_str().unwrap())
        .collect();
    assert_eq!(names, ["galvanised steel", "cement board"]);
    assert_eq!(
        document["accessors"][0]["max"],
        serde_json::json!([0.03, 0.1, 0.0])
    );
}

#[test]
fn forms_are_a_scene_of_their_own() {
    let mut assembly = two_posts_and_a_board();
    assembly.parts[1].group = Group::Forms;
    let model = Model::new(&assembly, 0.1).unwrap();
    let (document, _) = opened(&glb(&showing(&assembly, &model)));
    let scenes = document["scenes"].as_array().unwrap();
    assert_eq!(
        (scenes.len(), &document["scene"]),
        (2, &serde_json::json!(0))
    );
    let forms = scenes[1]["nodes"][0].as_u64().unwrap();
    assert_eq!(document["nodes"][forms as usize]["name"], "forms");
}

#[test]
fn nothing_at_all_is_still_a_file() {
    let assembly = Assembly::default();
    let model = Model::new(&assembly, 0.1).unwrap();
    let mut empty = showing(&assembly, &model);
    empty.views.clear();
    let (document, bytes) = opened(&glb(&empty));
    assert!(bytes.is_empty());
    assert_eq!(document["nodes"], serde_json::json!([]));
}
