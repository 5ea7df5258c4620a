//! Boundaries as shape entities: true planes, cylinders, cones, spheres, tori, lines, circles and ellipses.

use super::exchange::{Data, Id, List, length, ratio, truth};
use crate::geometry::{Along, Axes, Boundary, Curve, Edge, Face, Oval, Point3, Surface, Vector3};

/// A point.
pub(super) fn point(data: &mut Data, p: &Point3) -> Id {
    let [x, y, z] = [p.x, p.y, p.z].map(length);
    data.shared(format!("CARTESIAN_POINT('',({x},{y},{z}))"))
}

fn direction(data: &mut Data, v: &Vector3) -> Id {
    let [x, y, z] = [v.x, v.y, v.z].map(ratio);
    data.shared(format!("DIRECTION('',({x},{y},{z}))"))
}

/// A place with its axes.
pub(super) fn axes(data: &mut Data, at: &Axes) -> Id {
    let (p, z, x) = (
        point(data, &at.origin),
        direction(data, &at.z),
        direction(data, &at.x),
    );
    data.shared(format!("AXIS2_PLACEMENT_3D('',{p},{z},{x})"))
}

/// The boundary as one solid.
pub(super) fn solid(data: &mut Data, boundary: &Boundary, name: &str) -> Id {
    let corners: Vec<Id> = boundary
        .points
        .iter()
        .map(|p| {
            let at = point(data, p);
            data.add(format_args!("VERTEX_POINT('',{at})"))
        })
        .collect();
    let edges: Vec<Id> = boundary
        .edges
        .iter()
        .map(|e| edge(data, boundary, e, &corners))
        .collect();
    let faces: Vec<Id> = boundary
        .faces
        .iter()
        .map(|f| face(data, f, &edges))
        .collect();
    let shell = data.add(format_args!("CLOSED_SHELL('',{})", List(&faces)));
    data.add(format_args!(
        "MANIFOLD_SOLID_BREP({},{shell})",
        super::exchange::Text(name)
    ))
}

fn edge(data: &mut Data, boundary: &Boundary, edge: &Edge, corners: &[Id]) -> Id {
    let [from, to] = edge.ends;
    let curve = match edge.curve {
        Curve::Line => line(data, &boundary.points[from], &boundary.points[to]),
        Curve::Oval(oval) => curved(data, &oval),
    };
    let (from, to) = (corners[from], corners[to]);
    data.add(format_args!("EDGE_CURVE('',{from},{to},{curve},.T.)"))
}

fn line(data: &mut Data, from: &Point3, to: &Point3) -> Id {
    let (at, along) = (point(data, from), direction(data, &(to - from).normalize()));
    let vector = data.shared(format!("VECTOR('',{along},1.)"));
    data.add(format_args!("LINE('',{at},{vector})"))
}

fn curved(data: &mut Data, oval: &Oval) -> Id {
    let [first, second] = [oval.first, oval.second].map(|v| v.norm());
    let at = Axes {
        origin: oval.centre,
        z: oval.first.cross(&oval.second).normalize(),
        x: oval.first / first,
    };
    let (at, circle) = (axes(data, &at), oval.is_circle());
    let [first, second] = [first, second].map(length);
    if circle {
        data.add(format_args!("CIRCLE('',{at},{first})"))
    } else {
        data.add(format_args!("ELLIPSE('',{at},{first},{second})"))
    }
}

fn face(data: &mut Data, face: &Face, edges: &[Id]) -> Id {
    let bounds: Vec<Id> = face
        .bounds
        .iter()
        .enumerate()
        .map(|(i, along)| bound(data, along, i == 0, edges))
        .collect();
    let on = surface(data, &face.surface);
    let same = truth(face.outward);
    data.add(format_args!(
        "ADVANCED_FACE('',{},{on},{same})",
        List(&bounds)
    ))
}

fn bound(data: &mut Data, along: &[Along], outer: bool, edges: &[Id]) -> Id {
    let row: Vec<Id> = along
        .iter()
        .map(|a| {
            let (edge, forwards) = (edges[a.edge], truth(a.forwards));
            data.add(format_args!("ORIENTED_EDGE('',*,*,{edge},{forwards})"))
        })
        .collect();
    let row = data.add(format_args!("EDGE_LOOP('',{})", List(&row)));
    let kind = if outer {
        "FACE_OUTER_BOUND"
    } else {
        "FACE_BOUND"
    };
    data.add(format_args!("{kind}('',{row},.T.)"))
}

fn surface(data: &mut Data, surface: &Surface) -> Id {
    match surface {
        Surface::Plane(at) => {
            let at = axes(data, at);
            data.shared(format!("PLANE('',{at})"))
        }
        Surface::Cylinder { axes: at, radius } => {
            let (at, r) = (axes(data, at), length(*radius));
            data.add(format_args!("CYLINDRICAL_SURFACE('',{at},{r})"))
        }
        Surface::Cone {
            axes: at,
            radius,
            half_angle,
        } => {
            let (at, r, angle) = (axes(data, at), length(*radius), ratio(*half_angle));
            data.add(format_args!("CONICAL_SURFACE('',{at},{r},{angle})"))
        }
        Surface::Sphere { axes: at, radius } => {
            let (at, r) = (axes(data, at), length(*radius));
            data.add(format_args!("SPHERICAL_SURFACE('',{at},{r})"))
        }
        Surface::Torus {
            axes: at,
            radius,
            tube,
        } => {
            let (at, r, t) = (axes(data, at), length(*radius), length(*tube));
            data.add(format_args!("TOROIDAL_SURFACE('',{at},{r},{t})"))
        }
        Surface::Spindle {
            axes: at,
            radius,
            tube,
        } => spindle(data, at, *radius, *tube),
    }
}

/// The circle turned, for a torus that meets itself is none that all readers know.
fn spindle(data: &mut Data, at: &Axes, radius: f64, tube: f64) -> Id {
    let circle = Oval {
        centre: at.origin + at.x * radius,
        first: at.x * tube,
        second: at.z * tube,
    };
    let circle = curved(data, &circle);
    let (origin, z) = (point(data, &at.origin), direction(data, &at.z));
    let axis = data.add(format_args!("AXIS1_PLACEMENT('',{origin},{z})"));
    data.add(format_args!("SURFACE_OF_REVOLUTION('',{circle},{axis})"))
}
