//! From outlines to one binary STL file: distinct steel members with their bends, and many equal ones.
//!
//! Peers on the same 150 distinct members: a boundary-representation kernel 0.80 s, a mesh-extrusion library 0.047 s.
//! The aim is 40 ms on one core: `taskset -c 0 cargo bench --bench members`.

use islandwright::catalog::SteelSection;
use islandwright::geometry::{
    EndPlane, Extrusion, Outline, Placement, Region, Slot, Solid, Vector3,
};
use islandwright::mesh::Model;
use islandwright::parts::{Assembly, Group, Part, PartKind, Piece, SolidId};
use islandwright::units::Length;
use islandwright::write;

fn main() {
    divan::main();
}

/// Four chords for each bend of 33 mil steel.
const FOUR_CHORDS: f64 = 0.055;

fn piece(number: usize, solid: Solid, length: f64) -> Piece {
    let part = Part {
        mark: format!("M{number}"),
        kind: PartKind::Stud,
        group: Group::Framing,
        run: None,
        face: None,
        material: "steel".to_owned(),
        section: "C".to_owned(),
        length: Length::millimetres(length),
        solid: SolidId(0),
        placement: Placement::new(
            Vector3::new(number as f64 * 50.0, 0.0, 0.0),
            Vector3::zeros(),
        ),
    };
    Piece { part, solid }
}

/// A lipped C whose depth and length belong to its number alone.
fn member(number: usize) -> (Region, f64) {
    let mut section = SteelSection::from_designator("362S162-33").expect("a section that is made");
    section.depth = Length::millimetres(80.0 + 0.1 * number as f64);
    (section.profile(), 700.0 + number as f64)
}

#[divan::bench]
fn distinct_150_from_outline_to_stl(bencher: divan::Bencher) {
    let outlines: Vec<_> = (0..150).map(member).collect();
    let vertices = outlines[0].0.outer.flatten(FOUR_CHORDS).len();
    assert_eq!(
        vertices,
        12 + 8 * 4,
        "the bends do not have four chords each"
    );
    bencher.bench(|| {
        let pieces = outlines.iter().enumerate().map(|(i, (profile, length))| {
            piece(i, Solid::extrusion(profile.clone(), *length), *length)
        });
        let assembly = Assembly::new(pieces);
        let model = Model::new(&assembly, FOUR_CHORDS).expect("sound surfaces");
        write::stl(&model.selection(&assembly, None))
    });
}

#[divan::bench]
fn distinct_150_punched_from_outline_to_stl(bencher: divan::Bencher) {
    let section = SteelSection::from_designator("362S162-33").expect("a section that is made");
    let slot = |z: f64| Slot {
        wall: section.web(),
        outline: Outline::rounded_rectangle(25.0, z, 63.0, z + 100.0, 19.0),
    };
    let outlines: Vec<_> = (0..150).map(member).collect();
    bencher.bench(|| {
        let pieces = outlines.iter().enumerate().map(|(i, (profile, length))| {
            let solid = Solid::Extrusion(Extrusion {
                profile: profile.clone(),
                start: EndPlane::square(0.0),
                end: EndPlane::square(*length),
                slots: vec![slot(100.0), slot(400.0)],
            });
            piece(i, solid, *length)
        });
        let assembly = Assembly::new(pieces);
        let model = Model::new(&assembly, FOUR_CHORDS).expect("sound surfaces");
        write::stl(&model.selection(&assembly, None))
    });
}

#[divan::bench(args = [1_000, 10_000])]
fn equal_to_stl(bencher: divan::Bencher, count: usize) {
    let pieces = (0..count).map(|i| {
        let (profile, length) = member(i % 10);
        piece(i, Solid::extrusion(profile, length), length)
    });
    let assembly = Assembly::new(pieces);
    bencher.bench(|| {
        let model = Model::new(&assembly, FOUR_CHORDS).expect("sound surfaces");
        write::stl(&model.selection(&assembly, None))
    });
}
