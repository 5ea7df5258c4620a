//! Prints solids of every sort as one STEP file with their exact volumes, as JSON. The outside readers run it.
//!
//! `cargo run --example exact_solids`

use islandwright::catalog::SteelSection;
use islandwright::geometry::{
    Bend, CornerShape, EndPlane, Extrusion, Outline, Placement, Point2, ProfilePoint, Region, Slab,
    SlabEdge, Slot, Solid, Tab, Tabbed,
};
use islandwright::parts::{Assembly, Group, Part, PartKind, Piece, SolidId};
use islandwright::units::Length;
use islandwright::write::{StepTitles, step};
use serde_json::json;
use std::f64::consts::{FRAC_PI_2, PI, TAU};

type Profile = Vec<ProfilePoint>;

/// A quarter of a circle as a bulge.
fn quarter() -> f64 {
    (PI / 8.0).tan()
}

fn profile(points: &[(f64, f64, f64)]) -> Profile {
    let points = points.iter();
    points
        .map(|(a, z, b)| ProfilePoint::bent(*a, *z, *b))
        .collect()
}

/// Edges of a slab 50 thick, with turndowns 40 deep and 60 wide.
fn edges() -> Vec<(&'static str, Profile)> {
    let q = quarter();
    let drop = [(60.0, -40.0, 0.0), (60.0, 0.0, 0.0)];
    let with_drop = |points: &[(f64, f64, f64)]| profile(&[points, &drop[..]].concat());
    vec![
        ("plain", SlabEdge::plain_profile(50.0)),
        ("square", with_drop(&[(0.0, 50.0, 0.0), (0.0, -40.0, 0.0)])),
        (
            "eased",
            with_drop(&[
                (6.0, 50.0, q),
                (0.0, 44.0, 0.0),
                (0.0, -34.0, q),
                (6.0, -40.0, 0.0),
            ]),
        ),
        (
            "arris",
            profile(&[(6.0, 50.0, q), (0.0, 44.0, 0.0), (0.0, 0.0, 0.0)]),
        ),
        (
            "chamfer",
            profile(&[(6.0, 50.0, 0.0), (0.0, 44.0, 0.0), (0.0, 0.0, 0.0)]),
        ),
        (
            "half-round",
            profile(&[(25.0, 50.0, q), (0.0, 25.0, q), (25.0, 0.0, 0.0)]),
        ),
        (
            "half-round-drop",
            with_drop(&[(45.0, 50.0, q), (0.0, 5.0, q), (45.0, -40.0, 0.0)]),
        ),
        (
            "cove",
            with_drop(&[(0.0, 50.0, 0.0), (0.0, -10.0, -q), (30.0, -40.0, 0.0)]),
        ),
    ]
}

fn slab(
    corners: &[(f64, f64, CornerShape)],
    profiles: &[&Profile],
    cutouts: Vec<Outline>,
) -> Solid {
    let edges = corners
        .iter()
        .zip(profiles)
        .map(|((x, y, shape), p)| SlabEdge {
            corner: Point2::new(*x, *y),
            shape: *shape,
            profile: (*p).clone(),
        });
    Solid::Slab(Slab {
        edges: edges.collect(),
        thickness: 50.0,
        cutouts,
    })
}

/// An L with equal edges all round; its inner corner is as given.
fn l_slab(shape: CornerShape, inner: CornerShape, edge: &Profile) -> Solid {
    let at = [
        (0.0, 0.0),
        (2400.0, 0.0),
        (2400.0, 1800.0),
        (1700.0, 1800.0),
        (1700.0, 700.0),
        (0.0, 700.0),
    ];
    let corners: Vec<_> = at
        .into_iter()
        .enumerate()
        .map(|(i, (x, y))| (x, y, if i == 4 { inner } else { shape }))
        .collect();
    let sink = Outline::rounded_rectangle(700.0, 150.0, 1300.0, 550.0, 30.0);
    let cooker = Outline::rounded_rectangle(1900.0, 900.0, 2200.0, 1200.0, 150.0);
    slab(&corners, &[edge; 6], vec![sink, cooker])
}

fn slabs() -> Vec<(String, Solid)> {
    let shapes = [
        ("sharp", CornerShape::Sharp),
        ("rounded-50", CornerShape::Rounded(50.0)),
        ("rounded-120", CornerShape::Rounded(120.0)),
        ("chamfered", CornerShape::Chamfered(50.0)),
    ];
    let edges = edges();
    let mut found = Vec::new();
    for (name, edge) in &edges {
        for (corner, shape) in &shapes {
            let solid = l_slab(*shape, CornerShape::Sharp, edge);
            found.push((format!("slab {name} {corner}"), solid));
        }
        let inner = l_slab(CornerShape::Sharp, CornerShape::Rounded(80.0), edge);
        found.push((format!("slab {name} rounded inside"), inner));
    }
    let ball = l_slab(CornerShape::Rounded(25.0), CornerShape::Sharp, &edges[5].1);
    found.push(("slab half-round with balls".to_owned(), ball));
    found.extend(flush_slabs(&edges));
    found
}

/// Slabs whose turndowns end at plain sides, at outward and inward corners and in a notch.
fn flush_slabs(edges: &[(&'static str, Profile)]) -> Vec<(String, Solid)> {
    let plain = &edges[0].1;
    let s = CornerShape::Sharp;
    let straight = [
        (0.0, 0.0, s),
        (2000.0, 0.0, s),
        (2000.0, 700.0, s),
        (0.0, 700.0, s),
    ];
    let l = [
        (0.0, 0.0, s),
        (2400.0, 0.0, s),
        (2400.0, 1800.0, s),
        (1700.0, 1800.0, s),
        (1700.0, 700.0, s),
        (0.0, 700.0, s),
    ];
    let mut found = Vec::new();
    for (name, edge) in &edges[1..] {
        let front = slab(&straight, &[edge, plain, plain, edge], vec![]);
        found.push((format!("slab {name} front and left"), front));
        if *name == "half-round-drop" || *name == "half-round" {
            continue;
        }
        for (way, sides) in [
            ("after a wall", [plain, plain, plain, plain, edge, plain]),
            ("before a wall", [plain, plain, plain, edge, plain, plain]),
        ] {
            found.push((
                format!("slab {name} inside {way}"),
                slab(&l, &sides, vec![]),
            ));
        }
    }
    let r = CornerShape::Rounded(30.0);
    let notched = [
        (0.0, 0.0, s),
        (800.0, 0.0, s),
        (800.0, 450.0, r),
        (1300.0, 450.0, r),
        (1300.0, 0.0, s),
        (2000.0, 0.0, s),
        (2000.0, 700.0, s),
        (0.0, 700.0, s),
    ];
    let edge = &edges[2].1;
    let sides = [edge, plain, plain, plain, edge, edge, plain, edge];
    found.push(("slab notched".to_owned(), slab(&notched, &sides, vec![])));
    found
}

/// Straight strips with arcs in their section, cut square and askew; sheets with holes.
fn extrusions() -> Vec<(String, Solid)> {
    let strip = |start: [f64; 2], end: [f64; 2]| {
        Solid::Extrusion(Extrusion {
            profile: Region::solid(Outline::rounded_rectangle(0.0, 0.0, 19.0, 80.0, 6.0)),
            start: EndPlane {
                offset: 0.0,
                slope: start,
            },
            end: EndPlane {
                offset: 600.0,
                slope: end,
            },
            slots: vec![],
        })
    };
    let plate = Region {
        outer: Outline::rounded_rectangle(0.0, 0.0, 600.0, 400.0, 25.0),
        holes: vec![
            Outline::rounded_rectangle(100.0, 100.0, 300.0, 300.0, 100.0),
            Outline::rectangle(350.0, 100.0, 550.0, 300.0),
        ],
    };
    vec![
        ("strip square".to_owned(), strip([0.0; 2], [0.0; 2])),
        ("strip mitred".to_owned(), strip([1.0, 0.0], [-1.0, 0.0])),
        ("strip askew".to_owned(), strip([0.3, -0.2], [0.5, 0.4])),
        ("plate".to_owned(), Solid::extrusion(plate, 16.0)),
    ]
}

/// Steel members with punch-outs and with tabs at either end.
fn members() -> Vec<(String, Solid)> {
    let mut found = Vec::new();
    for designator in ["362S125-33", "362T125-33", "600S162-43"] {
        let Ok(section) = SteelSection::from_designator(designator) else {
            continue;
        };
        let profile = section.profile();
        let Some(frame) = section.web().frame(&profile) else {
            continue;
        };
        let punch_out = |z: f64| Slot {
            wall: section.web(),
            outline: Outline::rounded_rectangle(
                frame.length / 2.0 - 19.05,
                z - 50.8,
                frame.length / 2.0 + 19.05,
                z + 50.8,
                19.05,
            ),
        };
        let body = Extrusion {
            profile: profile.clone(),
            start: EndPlane::square(0.0),
            end: EndPlane::square(700.0),
            slots: vec![punch_out(200.0), punch_out(500.0)],
        };
        let tab = Some(Tab {
            radius: section.radius.mm(),
            length: 20.0,
        });
        for (ends, start, end) in [("start", tab, None), ("end", None, tab), ("both", tab, tab)] {
            let tabbed = Tabbed {
                body: body.clone(),
                wall: section.web(),
                start,
                end,
            };
            found.push((format!("{designator} tab {ends}"), Solid::Tabbed(tabbed)));
        }
        found.push((format!("{designator} punched"), Solid::Extrusion(body)));
    }
    found
}

fn bends() -> Vec<(String, Solid)> {
    let q = quarter();
    let spindle = Outline::new(vec![
        islandwright::geometry::Vertex::sharp(5.0, 0.0),
        islandwright::geometry::Vertex::bent(5.0, -20.0, q),
        islandwright::geometry::Vertex::sharp(25.0, 0.0),
    ]);
    let sloping = Outline::polygon(&[[50.0, 0.0].into(), [90.0, 0.0].into(), [70.0, 30.0].into()]);
    let profiles = [
        ("box", Outline::rectangle(150.0, 0.0, 169.0, 80.0)),
        (
            "rounded",
            Outline::rounded_rectangle(150.0, 0.0, 169.0, 80.0, 6.0),
        ),
        (
            "ring",
            Outline::rounded_rectangle(80.0, -20.0, 120.0, 20.0, 20.0),
        ),
        ("spindle", spindle),
        ("sloping", sloping),
    ];
    let mut found = Vec::new();
    for (name, profile) in profiles {
        for angle in [0.3, FRAC_PI_2, 4.0, TAU] {
            let profile = profile.clone();
            let solid = Solid::Bend(Bend { profile, angle });
            found.push((format!("bend {name} {angle:.1}"), solid));
        }
    }
    found
}

fn main() -> Result<(), String> {
    let all = [slabs(), extrusions(), members(), bends()].concat();
    let volumes: Vec<_> = all
        .iter()
        .map(|(name, s)| json!([name, s.volume()]))
        .collect();
    let assembly = Assembly::new(all.into_iter().enumerate().map(|(i, (name, solid))| {
        let along = islandwright::geometry::Vector3::new(0.0, 3000.0 * i as f64, 0.0);
        let part = Part {
            mark: name,
            kind: PartKind::Stud,
            group: Group::Framing,
            run: Some(0),
            face: None,
            material: "steel".to_owned(),
            section: String::new(),
            length: Length::millimetres(100.0),
            solid: SolidId(0),
            placement: Placement::new(along, islandwright::geometry::Vector3::zeros()),
        };
        Piece { part, solid }
    }));
    let titles = StepTitles {
        island: "Solids — Prüfstücke",
        runs: &["all"],
    };
    let text = step(&assembly, &titles)?;
    println!("{}", json!({ "step": text, "volumes": volumes }));
    Ok(())
}
