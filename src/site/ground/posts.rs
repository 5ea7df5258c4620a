//! What stands around the island as it leans: how far the island keeps from it at every height.

use crate::design::{ObjectKind, SiteObject};
use crate::geometry::{Bounds3, Point3, Vector2};
use crate::plan::Plan;

/// Something that stands around, and how far the island is from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Post {
    /// Its name.
    pub name: String,
    /// What it is.
    pub kind: ObjectKind,
    /// How far its top stands beside its foot, and how high that is, millimetres.
    pub lean: (Vector2, f64),
    /// How far the island is off at the height of its foot, level; `None` where the island has nothing at that height.
    pub at_foot: Option<f64>,
    /// The same at the underside of the counter.
    pub at_underside: Option<f64>,
    /// The same at the top of the counter.
    pub at_top: Option<f64>,
    /// The least at any height, and at which, above the datum.
    pub nearest: (f64, f64),
}

/// The island as the boxes of its runs: of each its frame from the ground to the counter's underside, and the counter over it
/// with its overhangs.
pub fn boxes(plan: &Plan) -> Vec<Bounds3> {
    let levels = &plan.levels;
    let of_run = |number: usize| {
        let frame = plan.runs.get(number)?;
        let across = plan.counter_across(number);
        let tall = |v: (f64, f64), z: (f64, f64)| {
            let flat = frame.rectangle(frame.framed, v);
            Bounds3 {
                low: Point3::new(flat.low.x, flat.low.y, z.0),
                high: Point3::new(flat.high.x, flat.high.y, z.1),
            }
        };
        Some([
            tall((0.0, frame.depth), (0.0, levels.slab_bottom)),
            tall(across, (levels.slab_bottom, levels.counter_top)),
        ])
    };
    (0..plan.runs.len()).filter_map(of_run).flatten().collect()
}

/// Everything that stands around but ways, in the order of the file.
pub(super) fn posts(plan: &Plan) -> Vec<Post> {
    let boxes = boxes(plan);
    let objects = plan.design.site.objects.iter().flat_map(|o| o.value.iter());
    let objects = objects.filter(|o| o.kind != ObjectKind::Walkway);
    objects.map(|o| post(plan, &boxes, o)).collect()
}

fn post(plan: &Plan, boxes: &[Bounds3], object: &SiteObject) -> Post {
    let stands = &object.stands;
    let nearest = boxes.iter().map(|b| stands.nearest(b));
    let nearest = nearest.reduce(|a, b| if b.0 < a.0 { b } else { a });
    let at = |z: f64| {
        let there = (z >= stands.z.0 && z <= stands.z.1).then(|| stands.at(z))?;
        let at_height = boxes.iter().filter(|b| b.low.z <= z && z <= b.high.z);
        let gaps = at_height.map(|b| {
            let gap = |i: usize| (b.low[i] - there.high[i]).max(there.low[i] - b.high[i]);
            gap(0).max(0.0).hypot(gap(1).max(0.0))
        });
        gaps.reduce(f64::min)
    };
    Post {
        name: object.name.clone(),
        kind: object.kind,
        lean: (stands.shift, stands.z.1 - stands.z.0),
        at_foot: at(stands.z.0),
        at_underside: at(plan.levels.slab_bottom),
        at_top: at(plan.levels.counter_top),
        nearest: nearest.unwrap_or_default(),
    }
}
