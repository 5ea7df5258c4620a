//! The faces of a turned profile.

use super::Boundary;
use super::sketch::{Loop, enclose, plane, sides};
use crate::geometry::Bend;
use std::f64::consts::{FRAC_PI_2, TAU};
use truck_modeling::{
    BSplineSurface, Edge, EuclideanSpace, Face, InnerSpace, KnotVec, Matrix4, NurbsSurface, Point3,
    Rad, Surface, Vector4, Wire, builder,
};

/// The motion that puts the xy plane into the half plane at an angle from the x axis.
fn half_plane(angle: f64) -> Matrix4 {
    let upright = Matrix4::new(
        1.0, 0.0, 0.0, 0.0, //
        0.0, 0.0, 1.0, 0.0, //
        0.0, -1.0, 0.0, 0.0, //
        0.0, 0.0, 0.0, 1.0,
    );
    Matrix4::from_angle_z(Rad(angle)) * upright
}

impl Bend {
    /// See [`crate::geometry::Solid::boundary`].
    ///
    /// The turn is made of patches of a quarter at most, each an exact rational surface: surfaces of revolution from the
    /// modelling library are closed too, but its tessellation loses faces of them.
    pub fn boundary(&self) -> Option<Boundary> {
        let whole = self.angle > TAU - 1e-9;
        let patches = (self.angle / FRAC_PI_2 - 1e-9).ceil().clamp(1.0, 4.0) as usize;
        let step = self.angle / patches as f64;
        // Against its order: so the profile faces the way it is turned.
        let profile = sides(&self.profile, false);
        let stations = patches + usize::from(!whole);
        let rings: Vec<Loop> = (0..stations)
            .map(|i| Loop::new(&profile, &half_plane(step * i as f64)))
            .collect();
        let mut faces = Vec::new();
        for i in 0..patches {
            let pair = [&rings[i], &rings[(i + 1) % stations]];
            faces.extend(patch(pair, step * i as f64, step)?);
        }
        if !whole {
            faces.push(plane(&[rings.first()?.wire().inverse()])?);
            faces.push(plane(&[rings.last()?.wire()])?);
        }
        enclose(faces)
    }
}

/// The faces between two stations of the turn.
fn patch([low, high]: [&Loop; 2], from: f64, step: f64) -> Option<Vec<Face>> {
    let middle = Matrix4::from_angle_z(Rad(step / 2.0));
    let arcs: Vec<Edge> = low
        .edges
        .iter()
        .zip(&high.edges)
        .map(|(l, h)| {
            let via = middle * l.front().point().to_vec().extend(1.0);
            builder::circle_arc(l.front(), h.front(), Point3::from_vec(via.truncate()))
        })
        .collect();
    let n = arcs.len();
    let faces = (0..n).map(|i| {
        let (l, h) = (&low.edges[i], &high.edges[i]);
        let rim: Wire = [
            l.clone(),
            arcs[(i + 1) % n].clone(),
            h.inverse(),
            arcs[i].inverse(),
        ]
        .into_iter()
        .collect();
        Face::try_new(vec![rim], turned(l, from, step)).ok()
    });
    faces.collect()
}

/// The surface of an edge, which lies at an angle `from`, turned on by a step.
fn turned(edge: &Edge, from: f64, step: f64) -> Surface {
    let curve = edge.oriented_curve().lift_up();
    let half = (step / 2.0).cos();
    let rows = curve.control_points().iter().map(|p| {
        let reach = p.truncate().truncate().magnitude();
        let at = |angle: f64, weight: f64| {
            let (s, c) = (from + angle).sin_cos();
            Vector4::new(reach * c, reach * s, p.z * weight, p.w * weight)
        };
        vec![at(0.0, 1.0), at(step / 2.0, half), at(step, 1.0)]
    });
    let knots = (curve.knot_vec().clone(), KnotVec::bezier_knot(2));
    Surface::NurbsSurface(NurbsSurface::new(BSplineSurface::new(
        knots,
        rows.collect(),
    )))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Outline;
    use truck_modeling::BoundedSurface;

    /// The volume under the turned faces by the divergence theorem, midpoint rule. The two ends add nothing: their
    /// planes go through the origin.
    ///
    /// Not by tessellation: that of the modelling library runs out of memory on some of these faces.
    fn volume_by_integration(boundary: &Boundary) -> f64 {
        const N: usize = 60;
        let shell = &boundary.boundaries()[0];
        let turned = shell
            .face_iter()
            .filter_map(|f| match f.oriented_surface() {
                Surface::NurbsSurface(surface) => Some(surface),
                _ => None,
            });
        turned
            .map(|s| {
                let ((u0, u1), (v0, v1)) = s.range_tuple();
                let (du, dv) = ((u1 - u0) / N as f64, (v1 - v0) / N as f64);
                let cell = |i: usize| {
                    let u = u0 + du * ((i / N) as f64 + 0.5);
                    let v = v0 + dv * ((i % N) as f64 + 0.5);
                    s.subs(u, v).to_vec().dot(s.uder(u, v).cross(s.vder(u, v))) / 3.0
                };
                (0..N * N).map(cell).sum::<f64>() * du * dv
            })
            .sum()
    }

    #[test]
    fn the_faces_enclose_the_volume_of_the_turn() {
        for profile in [
            Outline::rectangle(150.0, 0.0, 169.0, 80.0),
            Outline::rounded_rectangle(150.0, 0.0, 169.0, 80.0, 6.0),
            Outline::rounded_rectangle(80.0, -20.0, 120.0, 20.0, 20.0),
        ] {
            for angle in [0.02, FRAC_PI_2, 2.0, TAU] {
                let profile = profile.clone();
                let bend = Bend { profile, angle };
                let boundary = bend.boundary().unwrap();
                let (found, exact) = (volume_by_integration(&boundary), bend.volume());
                assert!(
                    (found - exact).abs() < 1e-4 * exact,
                    "{found} for {exact} at {angle}"
                );
            }
        }
    }
}
