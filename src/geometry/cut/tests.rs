//! Cuts worked on paper.

use super::proof::prove_cut;
use crate::catalog::SteelSection;
use crate::geometry::{
    CornerShape, EndPlane, Extrusion, Faceted, Outline, Placement, Point2, ProfilePoint, Region,
    Slab, SlabEdge, Solid, Tab, Tabbed, Vector3,
};
use crate::units::Length;
use std::f64::consts::{FRAC_PI_2, PI};

fn area(regions: &[Region]) -> f64 {
    regions.iter().map(Region::area).sum()
}

fn near(found: f64, expected: f64) {
    assert!(
        (found - expected).abs() < 1e-6 * expected.abs().max(1.0),
        "{found} for {expected}"
    );
}

/// So turned that the plane y = `at` of a solid is level at z = 0, what lies beyond it below.
fn across(solid: &Faceted, at: f64) -> Faceted {
    let turn = Placement::rotation(Vector3::x() * FRAC_PI_2);
    solid.moved(&(Placement::translation(0.0, 0.0, -at) * turn))
}

fn body(section: &SteelSection, length: f64) -> Extrusion {
    Extrusion {
        profile: section.profile(),
        start: EndPlane::square(0.0),
        end: EndPlane::square(length),
        slots: Vec::new(),
    }
}

#[test]
fn a_box_is_cut_into_two_boxes() {
    let cuboid = Solid::cuboid(30.0, 20.0, 10.0).faceted(0.1);
    let cut = cuboid.cut_at(4.0);
    near(cut.kept.volume(), 30.0 * 20.0 * 4.0);
    assert_eq!(
        cut.region,
        [Region::solid(Outline::rectangle(0.0, 0.0, 30.0, 20.0))]
    );
    prove_cut(&cuboid, 4.0);
    // The cap is a surface of its own: one that the box has not.
    let cap = cuboid.triangles.iter().map(|t| t.surface).max().unwrap() + 1;
    let lid = cut.kept.triangles.iter().filter(|t| t.surface == cap);
    let lid = lid.map(|t| cut.kept.corners(t));
    near(
        lid.map(|[a, b, c]| (b - a).cross(&(c - a)).z / 2.0).sum(),
        600.0,
    );
}

#[test]
fn what_touches_the_plane_from_below_is_cut_and_what_stands_on_it_is_not_there() {
    let cuboid = Solid::cuboid(30.0, 20.0, 10.0).faceted(0.1);
    let touching = cuboid.cut_at(10.0);
    near(touching.kept.volume(), 6000.0);
    near(area(&touching.region), 600.0);
    let standing = cuboid.cut_at(0.0);
    assert!(standing.kept.triangles.is_empty() && standing.region.is_empty());
    let clear = cuboid.cut_at(10.5);
    assert_eq!(clear.kept, cuboid);
    assert!(clear.region.is_empty());
    // Rounding does not decide it.
    near(area(&cuboid.cut_at(10.0 + 1e-7).region), 600.0);
    near(area(&cuboid.cut_at(10.0 - 1e-7).region), 600.0);
    prove_cut(&cuboid, 10.0 - 1e-7);
}

#[test]
fn a_corner_or_an_edge_in_the_plane_leaves_no_open_rim() {
    // A roof: its ridge is an edge, its eaves are corners in the plane at the levels asked for.
    let gable = Outline::polygon(&[
        Point2::new(0.0, 0.0),
        Point2::new(40.0, 0.0),
        Point2::new(40.0, 10.0),
        Point2::new(20.0, 30.0),
        Point2::new(0.0, 10.0),
    ]);
    let roof = Solid::extrusion(Region::solid(gable), 100.0).faceted(0.1);
    let roof = roof.moved(&Placement::rotation(Vector3::x() * FRAC_PI_2));
    for level in [0.0, 10.0, 20.0, 30.0] {
        prove_cut(&roof, level);
    }
    near(area(&roof.cut_at(10.0).region), 4000.0);
    near(area(&roof.cut_at(20.0).region), 2000.0);
    assert!(roof.cut_at(30.0).region.is_empty());
    // Cut a hair below its ridge, which is brought up again: 0.004 mm wide.
    let whole = roof.cut_at(30.0).kept.volume();
    assert!((whole - 100.0 * (400.0 + 400.0)).abs() < 5.0, "{whole}");
}

#[test]
fn a_lipped_stud_is_cut_to_the_area_of_its_strip() {
    // 362S125-33: depth 92.075, flange 31.75, lip 4.775 (3/16 in), t 0.8788, inside radius 1.9431 (values of the
    // section itself); the strip along its middle is two lips, two flanges and the web less what five bends save.
    let section = SteelSection::from_designator("362S125-33").unwrap();
    let stud = Solid::Extrusion(body(&section, 600.0)).faceted(0.001);
    let cut = stud.cut_at(250.0);
    let [depth, flange, lip, t, r] = [
        section.depth,
        section.flange,
        section.lip,
        section.thickness,
        section.radius,
    ]
    .map(Length::mm);
    let (corner, bend) = (r + t, PI / 2.0 * (r + t / 2.0));
    let strip =
        (depth - 2.0 * corner) + 2.0 * (flange - 2.0 * corner) + 2.0 * (lip - corner) + 4.0 * bend;
    let found = area(&cut.region);
    assert!(
        (found - strip * t).abs() < 0.05,
        "{found} for {}",
        strip * t
    );
    assert_eq!(cut.region.len(), 1);
    prove_cut(&stud, 250.0);
    // Along the member, half way up, the plane meets the web alone.
    let along = across(&stud, 0.0);
    let web = along.cut_at(0.0);
    near(area(&web.region), t * 600.0);
    prove_cut(&along, 0.0);
}

#[test]
fn a_tabbed_member_is_cut_through_its_folds() {
    let section = SteelSection::from_designator("362T125-33").unwrap();
    let (t, r, tab) = (section.thickness.mm(), 2.0, 38.0);
    let member = Tabbed {
        body: body(&section, 500.0),
        wall: section.web(),
        start: Some(Tab {
            radius: r,
            length: tab,
        }),
        end: Some(Tab {
            radius: r,
            length: tab,
        }),
    };
    let solid = Solid::Tabbed(member).faceted(0.001);
    let along = across(&solid, 0.0);
    // Web, two quarter bends about the middle of the sheet, two flats.
    let strip = 500.0 + 2.0 * (PI / 2.0 * (r + t / 2.0) + tab);
    let cut = along.cut_at(0.0);
    let found = area(&cut.region);
    assert!(
        (found - strip * t).abs() < 0.05,
        "{found} for {}",
        strip * t
    );
    assert_eq!(cut.region.len(), 1);
    prove_cut(&along, 0.0);
}

/// 2000 × 800 × 50, a rim 40 deep and 60 thick all round, and a cutout 400 × 300.
fn slab() -> Faceted {
    let rim = [(0.0, 50.0), (0.0, -40.0), (60.0, -40.0), (60.0, 0.0)];
    let profile: Vec<_> = rim
        .map(|(inset, z)| ProfilePoint::straight(inset, z))
        .to_vec();
    let corners = [(0.0, 0.0), (2000.0, 0.0), (2000.0, 800.0), (0.0, 800.0)];
    let edges = corners.map(|(x, y)| SlabEdge {
        corner: Point2::new(x, y),
        shape: CornerShape::Sharp,
        profile: profile.clone(),
    });
    let slab = Slab {
        edges: edges.to_vec(),
        thickness: 50.0,
        cutouts: vec![Outline::rectangle(800.0, 200.0, 1200.0, 500.0)],
    };
    Solid::Slab(slab.checked().unwrap()).faceted(0.1)
}

#[test]
fn a_slab_is_cut_through_turndown_and_cutout() {
    let slab = slab();
    // Across, through the cutout: two pieces, together 500 × 50 and the two rims of 60 × 40.
    let quarter = Placement::rotation(Vector3::y() * -FRAC_PI_2);
    let through = slab.moved(&quarter);
    let cut = through.cut_at(1000.0);
    assert_eq!(cut.region.len(), 2);
    near(area(&cut.region), 500.0 * 50.0 + 2.0 * 60.0 * 40.0);
    prove_cut(&through, 1000.0);
    // Clear of it: one piece with the whole depth.
    let clear = through.cut_at(400.0);
    assert_eq!(clear.region.len(), 1);
    assert_eq!(clear.region[0].outer.vertices().len(), 8);
    near(area(&clear.region), 800.0 * 50.0 + 2.0 * 60.0 * 40.0);
    // Right along the cutout's edge: the solid side is kept and cut.
    near(
        area(&through.cut_at(800.0).region),
        800.0 * 50.0 + 2.0 * 60.0 * 40.0,
    );
    near(
        area(&through.cut_at(1200.0).region),
        500.0 * 50.0 + 2.0 * 60.0 * 40.0,
    );
    // Level, through the rim: a ring; in its underside's plane: the ring below it; above: the plate with its hole.
    let ring = slab.cut_at(-10.0);
    assert_eq!((ring.region.len(), ring.region[0].holes.len()), (1, 1));
    near(area(&ring.region), 2000.0 * 800.0 - 1880.0 * 680.0);
    near(
        area(&slab.cut_at(0.0).region),
        2000.0 * 800.0 - 1880.0 * 680.0,
    );
    near(
        area(&slab.cut_at(25.0).region),
        2000.0 * 800.0 - 400.0 * 300.0,
    );
}

#[test]
fn the_same_cut_gives_the_same_bytes() {
    assert_eq!(slab().cut_at(20.0), slab().cut_at(20.0));
}
