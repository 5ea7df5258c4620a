//! The clad base as it is printed: boards, coats and tile as one skin, hollow, open at top and bottom.

use super::Layer;
use super::rough::{Rough, Sizes};
use crate::geometry::{Bounds3, Point3};
use crate::mesh::body::Body;
use crate::plan::{Band, Corner, Face, Layers, Plan};

/// The skin of one stretch of heights: from so far to so far in front of the frame, millimetres of the print.
#[derive(Clone, Copy)]
struct Skin {
    inner: f64,
    outer: f64,
    low: f64,
    high: f64,
}

/// What the base is made of, and how much room the frame has in it.
pub(super) struct Base {
    pub(super) rough: Rough,
    /// True when the frame goes into it.
    pub(super) takes_frame: bool,
}

/// The base; `None` when no face is clad.
///
/// Its back stands a clearance in front of the frame. Where the skin would be thinner than the smallest wall, it is thickened
/// towards the inside, and the frame has to stand beside it.
pub(super) fn base(plan: &Plan, sizes: &Sizes) -> Option<Base> {
    let skins = skins(plan, sizes);
    let clad = (0..plan.faces.len()).filter(|i| !plan.faces[*i].wall);
    let plates = clad.flat_map(|i| {
        let skins = skins.iter();
        skins.filter_map(move |skin| Body::cuboid(&plate(plan, i, skin, sizes)))
    });
    let mut body = Body::union_of(plates.collect())?;
    let holes = plan
        .faces
        .iter()
        .flat_map(|f| f.openings.iter().map(move |o| (f, o)))
        .filter_map(|(face, o)| {
            let deep = skins.iter().map(|s| s.outer).fold(0.0, f64::max) + 1.0;
            let top = sizes.scaled(plan.levels.frame_top);
            // An open front reaches the slab.
            let high = if sizes.scaled(o.z1) >= top {
                top + 1.0e3
            } else {
                sizes.scaled(o.z1)
            };
            Body::cuboid(&across(
                face,
                (o.s0, o.s1),
                (-deep, deep),
                (sizes.scaled(o.z0), high),
                sizes,
            ))
        });
    if let Some(holes) = Body::union_of(holes.collect()) {
        body = body.without(&holes);
    }
    Some(Base {
        rough: Rough {
            layer: Layer::Base,
            body,
            bars: Vec::new(),
        },
        takes_frame: skins.iter().all(|s| s.inner >= 0.0),
    })
}

/// The skins from the bottom up: under the tile band, and the band itself where there is one. The top is the slab's
/// underside: the substrate is not printed.
fn skins(plan: &Plan, sizes: &Sizes) -> Vec<Skin> {
    let layers = Layers::of(&plan.design.trade);
    let band = Band::of(&plan.design, &plan.levels);
    let skin = |outer: f64, low: f64, high: f64| {
        let outer = sizes.scaled(outer);
        Skin {
            inner: sizes.clearance.min(outer - sizes.wall),
            outer,
            low: sizes.scaled(low),
            high: sizes.scaled(high),
        }
    };
    let (low, high) = (plan.levels.frame_bottom, plan.levels.slab_bottom);
    let foot = band.as_ref().map_or(high, |b| b.foot);
    let mut skins = vec![skin(layers.finish.outer, low, foot)];
    skins.extend(band.map(|b| skin(b.layer.outer, b.foot, high)));
    // One back for all: a step inside would catch the frame.
    let inner = skins.iter().map(|s| s.inner).fold(f64::INFINITY, f64::min);
    for skin in &mut skins {
        skin.inner = inner;
    }
    skins
}

/// The plate of one skin in front of one face. Plates of two faces lap in an outward corner and end on each other's back in an
/// inward one.
fn plate(plan: &Plan, index: usize, skin: &Skin, sizes: &Sizes) -> Bounds3 {
    let n = plan.faces.len();
    let face = &plan.faces[index];
    let (before, after) = (
        &plan.faces[(index + n - 1) % n],
        &plan.faces[(index + 1) % n],
    );
    let past = |corner: Corner, beside: &Face| match corner {
        _ if beside.wall => 0.0,
        Corner::Convex => skin.outer,
        Corner::Reflex => -skin.inner,
    };
    let along = (-past(face.corner, before), past(after.corner, after));
    let mut found = across(
        face,
        (0.0, face.length),
        (skin.inner, skin.outer),
        (skin.low, skin.high),
        sizes,
    );
    lengthen(&mut found, face, along);
    found
}

/// Moves the ends of a box along a face, millimetres of the print.
fn lengthen(bounds: &mut Bounds3, face: &Face, (start, end): (f64, f64)) {
    for i in 0..2 {
        if face.along[i] > 0.5 {
            bounds.low[i] += start;
            bounds.high[i] += end;
        } else if face.along[i] < -0.5 {
            bounds.low[i] -= end;
            bounds.high[i] -= start;
        }
    }
}

/// A box in front of a face: `s` in millimetres of the island, `out` and heights in millimetres of the print.
fn across(face: &Face, s: (f64, f64), out: (f64, f64), z: (f64, f64), sizes: &Sizes) -> Bounds3 {
    let corner = |s: f64, out: f64, z: f64| {
        let at = face.point(s, 0.0);
        let shift = face.outward * out;
        Point3::new(
            sizes.scaled(at.x) + shift.x,
            sizes.scaled(at.y) + shift.y,
            z,
        )
    };
    let (a, b) = (corner(s.0, out.0, z.0), corner(s.1, out.1, z.1));
    Bounds3 {
        low: a.inf(&b),
        high: a.sup(&b),
    }
}
