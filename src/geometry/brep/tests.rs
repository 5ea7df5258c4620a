//! Boundaries counted and measured on paper.

use super::{Boundary, Curve, Surface};
use crate::geometry::{
    Bend, CornerShape, EndPlane, Extrusion, Outline, Point2, Point3, ProfilePoint, Region, Slab,
    SlabEdge, Solid, Vector3,
};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// Corners − edges + faces − holes in faces: 2 less two for each way through the solid (Euler and Poincaré).
fn characteristic(b: &Boundary) -> i64 {
    let holes: usize = b.faces.iter().map(|f| f.bounds.len() - 1).sum();
    let count = |n: usize| i64::try_from(n).unwrap();
    count(b.points.len()) - count(b.edges.len()) + count(b.faces.len()) - count(holes)
}

fn count(b: &Boundary, is: impl Fn(&Surface) -> bool) -> usize {
    b.faces.iter().filter(|f| is(&f.surface)).count()
}

#[test]
fn a_box_has_six_faces_twelve_edges_and_eight_corners() {
    let b = Solid::cuboid(30.0, 40.0, 50.0).boundary().unwrap();
    assert_eq!((b.faces.len(), b.edges.len(), b.points.len()), (6, 12, 8));
    assert!((b.plane_volume().unwrap() - 60_000.0).abs() < 1e-9);
}

#[test]
fn holes_go_through() {
    let plate = Region {
        outer: Outline::rounded_rectangle(0.0, 0.0, 600.0, 400.0, 25.0),
        holes: vec![
            Outline::rounded_rectangle(100.0, 100.0, 300.0, 300.0, 100.0),
            Outline::rectangle(350.0, 100.0, 550.0, 300.0),
        ],
    };
    let b = Solid::extrusion(plate, 16.0).boundary().unwrap();
    // Eight sides outside, a round hole of two halves, a square one, two ends.
    assert_eq!(b.faces.len(), 8 + 2 + 4 + 2);
    assert_eq!(count(&b, |s| matches!(s, Surface::Cylinder { .. })), 4 + 2);
    assert_eq!(characteristic(&b), 2 - 2 * 2);
}

#[test]
fn a_round_bar_cut_askew_ends_in_an_ellipse() {
    // Radius 20, a slope of 3 in 4: the longer half axis is 20 · √(1 + 0.75²) = 25, along (0.8, 0, 0.6).
    let bar = Extrusion {
        profile: Region::solid(Outline::rounded_rectangle(-20.0, -20.0, 20.0, 20.0, 20.0)),
        start: EndPlane::square(0.0),
        end: EndPlane {
            offset: 100.0,
            slope: [0.75, 0.0],
        },
        slots: vec![],
    };
    let b = Solid::Extrusion(bar).boundary().unwrap();
    let ovals = b.edges.iter().filter_map(|e| match e.curve {
        Curve::Oval(oval) if !oval.is_circle() => Some(oval),
        _ => None,
    });
    let ovals: Vec<_> = ovals.collect();
    assert_eq!(ovals.len(), 4);
    for oval in ovals {
        assert!((oval.centre - Point3::new(0.0, 0.0, 100.0)).norm() < 1e-9);
        assert!(
            (oval.first.norm() - 25.0).abs() < 1e-9 && (oval.second.norm() - 20.0).abs() < 1e-9
        );
        let along = Vector3::new(0.8, 0.0, 0.6);
        assert!((oval.first.normalize().dot(&along).abs() - 1.0).abs() < 1e-12);
        assert!(
            oval.first.cross(&oval.second).z > 0.0,
            "it is travelled counter-clockwise"
        );
    }
}

#[test]
fn a_turned_circle_is_a_torus_or_a_spindle_and_a_slope_a_cone() {
    let turned = |profile: Outline, angle: f64| {
        let b = Solid::Bend(Bend { profile, angle }).boundary().unwrap();
        assert_eq!(characteristic(&b), if angle > 6.0 { 0 } else { 2 });
        b
    };
    let ring = Outline::rounded_rectangle(80.0, -20.0, 120.0, 20.0, 20.0);
    let b = turned(ring, TAU);
    let tori = |s: &Surface| matches!(s, Surface::Torus { radius, tube, .. } if (radius - 100.0).abs() < 1e-9 && (tube - 20.0).abs() < 1e-9);
    assert_eq!((count(&b, tori), b.faces.len()), (8, 8));
    // 50 to 70 over 30 up: tan 2/3 from the axis.
    let sloping = Outline::polygon(&[[50.0, 0.0].into(), [90.0, 0.0].into(), [70.0, 30.0].into()]);
    let b = turned(sloping, FRAC_PI_2);
    let cones = |s: &Surface| matches!(s, Surface::Cone { half_angle, .. } if (half_angle.tan() - 2.0 / 3.0).abs() < 1e-12);
    assert_eq!((count(&b, cones), b.faces.len()), (2, 5));
}

fn slab(shape: CornerShape, edge: &[(f64, f64, f64)]) -> Slab {
    let corners = [(0.0, 0.0), (2000.0, 0.0), (2000.0, 700.0), (0.0, 700.0)];
    let edges = corners.map(|(x, y)| SlabEdge {
        corner: Point2::new(x, y),
        shape,
        profile: edge
            .iter()
            .map(|(a, z, b)| ProfilePoint::bent(*a, *z, *b))
            .collect(),
    });
    Slab {
        edges: edges.to_vec(),
        thickness: 50.0,
        cutouts: vec![Outline::rounded_rectangle(
            700.0, 150.0, 1300.0, 550.0, 30.0,
        )],
    }
}

#[test]
fn the_underside_of_a_turndown_is_one_face_all_round() {
    let edge = [
        (0.0, 50.0, 0.0),
        (0.0, -40.0, 0.0),
        (60.0, -40.0, 0.0),
        (60.0, 0.0, 0.0),
    ];
    for (shape, round) in [(CornerShape::Sharp, 0), (CornerShape::Rounded(40.0), 4)] {
        let b = Solid::Slab(slab(shape, &edge)).boundary().unwrap();
        // Four sides outside and inside, the rim's underside, top, underside, eight sides of the cutout, round corners.
        assert_eq!(b.faces.len(), 4 + 4 + 1 + 2 + 8 + round);
        let rims = b.faces.iter().filter(|f| f.bounds.len() == 2).count();
        assert_eq!(
            rims, 3,
            "top, underside and the rim's underside have a hole each"
        );
        assert_eq!(characteristic(&b), 0);
    }
}

#[test]
fn half_rounds_are_cylinders_along_the_sides_and_balls_or_spindles_at_the_corners() {
    let quarter = (PI / 8.0).tan();
    let edge = [
        (25.0, 50.0, quarter),
        (0.0, 25.0, quarter),
        (25.0, 0.0, 0.0),
    ];
    let kinds = |shape: CornerShape| {
        let b = Solid::Slab(slab(shape, &edge)).boundary().unwrap();
        let cylinders = |s: &Surface| matches!(s, Surface::Cylinder { radius, .. } if (radius - 25.0).abs() < 1e-9);
        let balls = |s: &Surface| matches!(s, Surface::Sphere { radius, .. } if (radius - 25.0).abs() < 1e-9);
        let spindles = |s: &Surface| matches!(s, Surface::Spindle { radius, .. } if (radius - 15.0).abs() < 1e-9);
        let tori = |s: &Surface| matches!(s, Surface::Torus { radius, .. } if (radius - 75.0).abs() < 1e-9);
        [
            count(&b, cylinders),
            count(&b, balls),
            count(&b, spindles),
            count(&b, tori),
        ]
    };
    assert_eq!(kinds(CornerShape::Sharp), [8, 0, 0, 0]);
    assert_eq!(kinds(CornerShape::Rounded(25.0)), [8, 8, 0, 0]);
    assert_eq!(kinds(CornerShape::Rounded(40.0)), [8, 0, 8, 0]);
    assert_eq!(kinds(CornerShape::Rounded(100.0)), [8, 0, 0, 8]);
}

#[test]
fn a_torn_boundary_is_not_closed() {
    let whole = Solid::cuboid(1.0, 2.0, 3.0).boundary().unwrap();
    let mut torn = whole.clone();
    torn.faces.pop();
    assert!(!torn.is_closed());
    let mut turned = whole.clone();
    turned.faces[0].bounds[0].reverse();
    assert!(!turned.is_closed());
    let mut moved = whole.clone();
    moved.points[0].x -= 1e-3;
    assert!(!moved.is_closed());
    assert!(whole.is_closed());
}

#[test]
fn what_contradicts_itself_has_no_boundary() {
    let bend = |profile: Outline, angle: f64| Solid::Bend(Bend { profile, angle }).boundary();
    let square = |x: f64| Outline::rectangle(x, 0.0, x + 10.0, 10.0);
    assert!(bend(square(-5.0), 1.0).is_none(), "it passes the axis");
    assert!(bend(square(5.0), 0.0).is_none(), "it is not turned");
    assert!(Solid::cuboid(f64::NAN, 1.0, 1.0).boundary().is_none());
    let mut odd = slab(CornerShape::Sharp, &[(0.0, 50.0, 0.0), (0.0, 0.0, 0.0)]);
    for point in &mut odd.edges[1].profile {
        point.inset = 5.0;
    }
    assert!(Solid::Slab(odd).boundary().is_none());
}
