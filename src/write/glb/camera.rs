//! Named views as cameras.

use super::document::{Camera, Node, Orthographic, Perspective};
use crate::mesh::{FIELD, Lens, UprightPlace, Viewpoint};

/// Nothing nearer to the eye than this is seen, metres.
const NEAR: f32 = 0.05;

/// The camera of a view.
pub(super) fn camera(view: &Viewpoint) -> Camera<'_> {
    let metres = |mm: f64| (mm / 1000.0) as f32;
    let zfar = metres(view.reach).max(2.0 * NEAR);
    let (perspective, orthographic) = match view.lens {
        Lens::Perspective => {
            let yfov = FIELD as f32;
            let perspective = Perspective {
                yfov,
                znear: NEAR,
                zfar,
            };
            (Some(perspective), None)
        }
        Lens::Parallel { across, up } => {
            let orthographic = Orthographic {
                xmag: metres(across),
                ymag: metres(up),
                znear: NEAR,
                zfar,
            };
            (None, Some(orthographic))
        }
    };
    Camera {
        name: &view.name,
        kind: if perspective.is_some() {
            "perspective"
        } else {
            "orthographic"
        },
        perspective,
        orthographic,
    }
}

/// The node that holds it.
pub(super) fn node<'a>(view: &Viewpoint, number: usize) -> Node<'a> {
    // The eye's own y is up and it looks along its −z, in the island's axes as in the format's: only the world is turned.
    let place = UprightPlace::of_camera(&view.placement());
    Node {
        name: view.name.clone(),
        camera: Some(number),
        translation: Some(place.translation),
        rotation: Some(place.rotation),
        ..Node::default()
    }
}
