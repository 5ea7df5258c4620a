//! What every solid has to pass in tests, wherever it is built.

use super::cut::proof::{prove_cut, prove_cuts};
use super::{Placement, Solid, Vector3};
use std::f64::consts::FRAC_PI_2;

/// Panics unless the solid's triangles are sound and have its volume and its box, at several tolerances, and again when
/// they are moved and turned; and unless a plane cuts them into sound halves.
pub(crate) fn prove(solid: &Solid) {
    for tolerance in [1.0, 0.1, 0.02] {
        let faceted = solid.faceted(tolerance);
        if let Err(fault) = faceted.check_against(solid, tolerance) {
            panic!("at {tolerance} mm {fault}: {solid:?}");
        }
        let turn = Vector3::new(0.3, -1.1, 2.2);
        let upright = faceted.moved(&Placement::rotation(Vector3::x() * FRAC_PI_2));
        let moved = faceted.moved(&Placement::new(Vector3::new(1234.5, -987.6, 45.0), turn));
        assert_eq!(moved.check(), Ok(()), "moved, at {tolerance} mm: {solid:?}");
        let volume = faceted.volume();
        assert!(
            (moved.volume() - volume).abs() < 1e-9 * volume,
            "moved: {solid:?}"
        );
        if tolerance < 1.0 {
            continue;
        }
        prove_cuts(&upright);
        prove_cut(&moved, moved.points[0].z + 10.0);
    }
    prove_boundary(solid);
    // With chords fine for its size, the volume is the exact one to a thousandth.
    let bounds = solid.bounds();
    let fine = 2e-4 * (bounds.high - bounds.low).min();
    let (fine, exact) = (solid.faceted(fine).volume(), solid.volume());
    assert!(
        (fine - exact).abs() < 1e-3 * exact,
        "{fine} mm³ for {exact}: {solid:?}"
    );
}

/// Panics unless the solid has a boundary representation that is closed, whose plane faces face out of it, whose corners
/// lie in its box, and which encloses its volume where all of its faces are plane.
pub(crate) fn prove_boundary(solid: &Solid) {
    let boundary = solid
        .boundary()
        .unwrap_or_else(|| panic!("no boundary: {solid:?}"));
    assert!(boundary.is_closed(), "{solid:?}");
    assert!(boundary.faces_out(), "{solid:?}");
    let bounds = solid.bounds();
    for p in &boundary.points {
        let outside = (bounds.low - p).max().max((p - bounds.high).max());
        assert!(
            outside < 1e-6,
            "{p} is out of the box by {outside}: {solid:?}"
        );
    }
    if let Some(volume) = boundary.plane_volume() {
        let exact = solid.volume();
        assert!(
            (volume - exact).abs() < 1e-9 * exact,
            "{volume} mm³ for {exact}: {solid:?}"
        );
    }
}

#[cfg(test)]
mod random {
    use super::prove;
    use crate::catalog::SteelSection;
    use crate::geometry::{
        Bend, EndPlane, Extrusion, Outline, Point2, Region, Slot, Solid, Tab, Tabbed, Vertex,
    };
    use crate::units::Length;
    use proptest::prelude::*;
    use std::f64::consts::TAU;

    /// A closed curve round a centre: corners at equal angles, so that no side crosses another.
    fn star(reach: std::ops::Range<f64>, centre: Point2) -> impl Strategy<Value = Outline> {
        let corner = (reach, prop_oneof![Just(0.0), -0.15..0.15f64]);
        prop::collection::vec(corner, 5..13).prop_map(move |corners| {
            let step = TAU / corners.len() as f64;
            let vertices = corners.iter().enumerate().map(|(i, (r, bulge))| {
                let (s, c) = (step * i as f64).sin_cos();
                Vertex::bent(centre.x + r * c, centre.y + r * s, *bulge)
            });
            Outline::new(vertices.collect())
        })
    }

    fn end_plane(offset: f64) -> impl Strategy<Value = EndPlane> {
        let slope = prop_oneof![Just([0.0; 2]), [-0.5..0.5f64, -0.5..0.5f64]];
        slope.prop_map(move |slope| EndPlane { offset, slope })
    }

    /// A lipped C with up to four slots in a row along its web.
    fn member() -> impl Strategy<Value = (Extrusion, SteelSection)> {
        let sizes = (
            90.0..250.0f64,
            32.0..70.0f64,
            12.0..20.0f64,
            0.4..2.5f64,
            0.2..4.0f64,
        );
        let slots =
            prop::collection::vec((0.1..0.9f64, 5.0..40.0f64, 5.0..90.0f64, 0.0..1.0f64), 0..5);
        (sizes, slots, any::<bool>()).prop_map(|((depth, flange, lip, t, r), slots, track)| {
            let name = if track { "362T125-33" } else { "362S125-33" };
            let mut section = SteelSection::from_designator(name).unwrap();
            section.depth = Length::millimetres(depth);
            section.flange = Length::millimetres(flange);
            section.lip = Length::millimetres(if track { 0.0 } else { lip });
            section.thickness = Length::millimetres(t);
            section.radius = Length::millimetres(r);
            let web = section.web().frame(&section.profile()).unwrap().length;
            let slots = slots
                .iter()
                .enumerate()
                .map(|(i, (at, width, length, round))| {
                    let (u, z) = (40.0 + (web - 80.0) * at, 100.0 * (i + 1) as f64);
                    let (w, h) = (width.min(79.0) / 2.0, length / 2.0);
                    let outline =
                        Outline::rounded_rectangle(u - w, z - h, u + w, z + h, round * w.min(h));
                    Slot {
                        wall: section.web(),
                        outline,
                    }
                });
            let extrusion = Extrusion {
                profile: section.profile(),
                start: EndPlane::square(0.0),
                end: EndPlane::square(600.0),
                slots: slots.collect(),
            };
            (extrusion, section)
        })
    }

    fn tab() -> impl Strategy<Value = Option<Tab>> {
        prop::option::of(
            (0.1..5.0f64, 5.0..60.0f64).prop_map(|(radius, length)| Tab { radius, length }),
        )
    }

    /// A rectangle whose sides carry points in the middle, with a row of such holes, all turned by an angle: what is in
    /// line on paper is not quite so in numbers.
    fn board() -> impl Strategy<Value = Region> {
        let cuts = prop::collection::vec(0.01..0.99f64, 0..6);
        (cuts, 0..4usize, -3.0..3.0f64).prop_map(|(cuts, holes, angle)| {
            let turn = nalgebra::Isometry2::rotation(angle);
            let dotted = |x0: f64, x1: f64, y0: f64, y1: f64| {
                let corners = [[x0, y0], [x1, y0], [x1, y1], [x0, y1]].map(Point2::from);
                let sides = (0..4).flat_map(|i| {
                    let (p, q) = (corners[i], corners[(i + 1) % 4]);
                    let mut along: Vec<f64> =
                        cuts.iter().map(|c| (c * 50.0).round() / 50.0).collect();
                    along.extend([0.0]);
                    along.sort_by(f64::total_cmp);
                    along.dedup();
                    along
                        .into_iter()
                        .filter(|a| *a < 1.0)
                        .map(move |a| p + (q - p) * a)
                        .collect::<Vec<_>>()
                });
                Outline::polygon(&sides.map(|p| turn * p).collect::<Vec<_>>())
            };
            Region {
                outer: dotted(0.0, 1200.0, 0.0, 900.0),
                holes: (0..holes)
                    .map(|i| 100.0 + 250.0 * i as f64)
                    .map(|x| dotted(x, x + 150.0, 300.0, 600.0))
                    .collect(),
            }
        })
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(96))]

        #[test]
        fn any_profile_cut_askew_is_sound(
            outer in star(60.0..100.0, Point2::origin()),
            hole in prop::option::of(star(10.0..25.0, Point2::new(3.0, -4.0))),
            (start, end) in (end_plane(0.0), end_plane(300.0)),
        ) {
            let profile = Region { outer, holes: hole.into_iter().collect() };
            prove(&Solid::Extrusion(Extrusion { profile, start, end, slots: vec![] }));
        }

        #[test]
        fn any_punched_member_is_sound((extrusion, _) in member()) {
            prove(&Solid::Extrusion(extrusion));
        }

        #[test]
        fn any_tabbed_member_is_sound((body, section) in member(), start in tab(), end in tab()) {
            prove(&Solid::Tabbed(Tabbed { body, wall: section.web(), start, end }));
        }

        #[test]
        fn any_board_with_points_in_line_is_sound(region in board()) {
            prove(&Solid::extrusion(region, 12.7));
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]

        #[test]
        fn any_turned_profile_is_sound(
            profile in star(6.0..10.0, Point2::new(15.0, 0.0)),
            angle in prop_oneof![Just(TAU), 0.05..6.2f64],
        ) {
            prove(&Solid::Bend(Bend { profile, angle }));
        }
    }
}
