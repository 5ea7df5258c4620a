//! The island at full size as a 3MF document.

use super::document::{Document, Item, Material, Object};
use crate::geometry::{Bounds3, Placement, Point3, Vector3};
use crate::mesh::{Instance, Selection};
use crate::parts::{Part, PartKind, SolidId};
use std::collections::BTreeMap;

/// Less than this below zero is the noise of turning a part, millimetres.
const NOISE: f64 = 1e-6;

/// The chosen parts, each under its mark; equal shapes of one kind share a mesh.
///
/// Everything is moved so that no coordinate is below zero, as the format recommends; the description says how far.
pub fn island<'a>(
    selection: &Selection<'a>,
    title: &'a str,
    material: impl Fn(&Part) -> Material,
) -> Document<'a> {
    let shift = into_positive(selection);
    let mut numbers: BTreeMap<(SolidId, PartKind), usize> = BTreeMap::new();
    let mut objects = Vec::new();
    let mut items = Vec::new();
    for Instance { part, mesh } in selection.instances() {
        let object = *numbers.entry((part.solid, part.kind)).or_insert_with(|| {
            objects.push(Object {
                name: name(part),
                mesh,
                material: material(part),
            });
            objects.len() - 1
        });
        items.push(Item {
            name: &part.mark,
            object,
            placement: Placement::from(shift) * part.placement,
        });
    }
    Document {
        title,
        description: description(shift),
        objects,
        items,
    }
}

/// Kind, and section where there is one.
fn name(part: &Part) -> String {
    let (kind, section) = (part.kind.name(), part.section.as_str());
    match section {
        "" => kind.to_owned(),
        section => format!("{kind} {section}"),
    }
}

/// How far everything is moved for no coordinate to be below zero.
fn into_positive(selection: &Selection) -> Vector3 {
    let corners = selection.instances().iter().flat_map(|instance| {
        let points = instance.mesh.points.iter();
        points.map(|p| instance.part.placement * p)
    });
    let low = Bounds3::around(corners).map_or_else(Point3::origin, |b| b.low);
    low.coords.map(|c| if c < -NOISE { -c } else { 0.0 })
}

fn description(shift: Vector3) -> String {
    let base = "Millimetres, z up";
    if shift == Vector3::zeros() {
        return format!("{base}, zero where the drawings have it");
    }
    let [x, y, z] = [shift.x, shift.y, shift.z];
    format!("{base}; the drawings' zero is at x {x:.3}, y {y:.3}, z {z:.3}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mesh::Model;
    use crate::write::stl::tests::two_posts_and_a_board;

    fn grey(part: &Part) -> Material {
        Material {
            name: part.material.clone(),
            srgb: [128; 3],
        }
    }

    #[test]
    fn equal_parts_share_an_object_and_nothing_is_below_zero() {
        let assembly = two_posts_and_a_board();
        let model = Model::new(&assembly, 0.1).unwrap();
        let made = island(&model.selection(&assembly, None), "Two posts", grey);
        let names: Vec<_> = made.objects.iter().map(|o| o.name.as_str()).collect();
        assert_eq!(names, ["stud 30 × 50", "board 30 × 50"]);
        let items: Vec<_> = made.items.iter().map(|i| (i.name, i.object)).collect();
        assert_eq!(items, [("S1", 0), ("B1", 1), ("S2", 0)]);
        // S2 is laid down about y: its 30 mm side reaches from z −30 to 0.
        assert!((made.items[0].placement.translation.z - 30.0).abs() < 1e-9);
        assert!((made.items[2].placement.translation.x - 300.0).abs() < 1e-9);
        assert_eq!(
            made.description,
            "Millimetres, z up; the drawings' zero is at x 0.000, y 0.000, z 30.000"
        );
    }
}
