//! The models that are looked at: another reader opens the GLB, and every view takes in what it shows.

use gltf::camera::Projection;
use gltf::{Gltf, Node};
use islandwright::geometry::Point3;
use islandwright::mesh::{Model, SHOWN_TOLERANCE, Showing};
use islandwright::parts::Assembly;
use islandwright::plan::Plan;
use islandwright::write;
use nalgebra::{Matrix4, Vector3};
use std::collections::BTreeSet;

/// What is wrong with them.
pub fn faults(plan: &Plan, assembly: &Assembly) -> Vec<String> {
    let model = match Model::new(assembly, SHOWN_TOLERANCE) {
        Ok(model) => model,
        Err(defects) => return defects.iter().map(ToString::to_string).collect(),
    };
    let showing = Showing::of(plan, assembly, &model);
    let mut faults = Vec::new();
    if let Err(error) = write::usdz(&showing) {
        faults.push(format!("USDZ: {error}"));
    }
    let bytes = write::glb(&showing);
    let file = match Gltf::from_slice(&bytes) {
        Ok(file) => file,
        Err(error) => return vec![format!("GLB: {error}")],
    };
    let with_shape = file.nodes().filter(|n| n.mesh().is_some()).count();
    if with_shape != assembly.parts.len() {
        faults.push(format!(
            "{with_shape} shapes for {} parts",
            assembly.parts.len()
        ));
    }
    let parts = file.nodes().filter(|n| n.mesh().is_some());
    let names: BTreeSet<_> = parts.filter_map(|n| n.name().map(str::to_owned)).collect();
    if names.len() != with_shape {
        faults.push("two parts of one name".to_owned());
    }
    faults.extend(views(&file, plan));
    faults
}

/// Every node of a scene in its place, with the names above it.
fn placed<'a>(
    node: Node<'a>,
    outer: Matrix4<f64>,
    above: &[String],
) -> Vec<(Node<'a>, Matrix4<f64>, Vec<String>)> {
    let own = Matrix4::from(node.transform().matrix()).cast::<f64>();
    let here = outer * own;
    let mut names = above.to_vec();
    names.push(node.name().unwrap_or_default().to_owned());
    let below = node
        .children()
        .flat_map(|child| placed(child, here, &names))
        .collect::<Vec<_>>();
    [(node, here, names)].into_iter().chain(below).collect()
}

/// Views that miss a part of what they show.
fn views(file: &Gltf, plan: &Plan) -> Vec<String> {
    let Some(scene) = file.default_scene() else {
        return vec!["no scene".to_owned()];
    };
    let nodes: Vec<_> = scene
        .nodes()
        .flat_map(|n| placed(n, Matrix4::identity(), &[]))
        .collect();
    let cameras = nodes.iter().filter(|(n, ..)| n.camera().is_some());
    let mut faults = Vec::new();
    let mut count = 0;
    for (node, at, _) in cameras {
        count += 1;
        let name = node.name().unwrap_or_default();
        let run = name.strip_suffix(", front");
        let shown = nodes
            .iter()
            .filter(|(_, _, above)| run.is_none_or(|r| above.iter().any(|a| a == r)));
        let corners = shown.flat_map(|(n, place, _)| corners(n, place));
        let Some(inverse) = at.try_inverse() else {
            faults.push(format!("{name}: no place"));
            continue;
        };
        let missed = corners
            .filter(|c| !sees(node, &inverse.transform_point(c)))
            .count();
        if missed > 0 {
            faults.push(format!("{name}: {missed} corners are not seen"));
        }
    }
    if count != plan.runs.len() + 2 {
        faults.push(format!("{count} views for {} runs", plan.runs.len()));
    }
    faults
}

/// The corners of the box round a node's shape, in the world.
fn corners(node: &Node, place: &Matrix4<f64>) -> Vec<Point3> {
    let Some(mesh) = node.mesh() else {
        return Vec::new();
    };
    let boxes = mesh.primitives().map(|p| p.bounding_box());
    boxes
        .flat_map(|b| {
            (0..8).map(move |n: usize| {
                let pick = |i: usize| if n >> i & 1 == 0 { b.min[i] } else { b.max[i] };
                Point3::from(Vector3::new(pick(0), pick(1), pick(2)).cast::<f64>())
            })
        })
        .map(|p| place.transform_point(&p))
        .collect()
}

/// Whether a camera sees a point given in its own axes; a hair's breadth for single precision.
fn sees(node: &Node, at: &Point3) -> bool {
    let Some(camera) = node.camera() else {
        return false;
    };
    let (edge_x, edge_y, far) = match camera.projection() {
        Projection::Perspective(p) => {
            let edge = f64::from(p.yfov() / 2.0).tan() * -at.z;
            (edge, edge, p.zfar().map_or(f64::MAX, f64::from))
        }
        Projection::Orthographic(o) => (
            f64::from(o.xmag()),
            f64::from(o.ymag()),
            f64::from(o.zfar()),
        ),
    };
    at.z < 0.0 && -at.z < far && at.x.abs() < edge_x && at.y.abs() < edge_y
}
