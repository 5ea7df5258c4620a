use super::layer::layer;
use super::usdz;
use crate::mesh::Model;
use crate::parts::{Group, PartKind};
use crate::write::glb::tests::showing;
use crate::write::stl::tests::two_posts_and_a_board;

#[test]
fn only_what_one_sees_is_there() {
    let mut assembly = two_posts_and_a_board();
    // The studs stay inside; the sheet becomes tile, and the last post a sleeper.
    assembly.parts[1].group = Group::Coats;
    assembly.parts[1].kind = PartKind::Tile;
    assembly.parts[2].kind = PartKind::Sleeper;
    let model = Model::new(&assembly, 0.1).unwrap();
    let text = layer(&showing(&assembly, &model));
    assert!(!text.contains("\"S1\"") && text.contains("def \"S2\"") && text.contains("def \"B1\""));
    assert!(!text.contains("galvanised") && text.contains("def Material \"tile\""));
    assert!(text.contains("rel material:binding = </Island/Materials/sleeper>"));
    assert!(text.contains("string title = \"Trial \\\"one\\\"\""));
    // S2 lies at x = 300 mm with its z along x: a quarter turn about y in the island, about −z in the viewer.
    assert!(text.contains("quatf xformOp:orient = (0.70710677, 0, 0, -0.70710677)"));
    assert!(text.contains("double3 xformOp:translate = (0.3, 0, 0)"));
}

#[test]
fn equal_parts_refer_to_one_shape() {
    let mut assembly = two_posts_and_a_board();
    for part in &mut assembly.parts {
        part.kind = PartKind::Sleeper;
        part.group = Group::Framing;
    }
    let model = Model::new(&assembly, 0.1).unwrap();
    let text = layer(&showing(&assembly, &model));
    assert_eq!(text.matches("def Mesh").count(), 2);
    assert_eq!(text.matches("references = </Shapes/Shape_0>").count(), 2);
    assert!(text.contains("float3[] extent = [(0, 0, -0.05), (0.03, 0.1, 0)]"));
}

#[test]
fn the_layer_stands_as_it_is_at_a_multiple_of_64_bytes() {
    let assembly = two_posts_and_a_board();
    let model = Model::new(&assembly, 0.1).unwrap();
    let bytes = usdz(&showing(&assembly, &model)).unwrap();
    let at = bytes.windows(9).position(|w| w == b"#usda 1.0").unwrap();
    assert_eq!(at % 64, 0);
    assert_eq!(usdz(&showing(&assembly, &model)).unwrap(), bytes);
}
