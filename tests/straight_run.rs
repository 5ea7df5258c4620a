//! A straight run worked on paper: every framing member's mark and cut length.

use islandwright::parts::Group;
use islandwright::{design, parts, plan};
use std::collections::BTreeMap;

/// One run of 8 ft by 30 in, a door in the working side, a sink in the counter.
const FILE: &str = r"
project: {title: Bench on paper}
trade:
  stud: 362S125-33
  track: 362T125-33
  stud_spacing: 16 in
  tab: 2 in
  sleeper: {width: 3-1/2 in, height: 1-1/2 in}
  substrate: {material: cement board, thickness: 1/2 in}
levels: {counter: 36 in, base_gap: 2 in}
runs:
  - {name: bench, length: 96 in, depth: 30 in}
appliances:
  - name: sink
    kind: sink
    run: bench
    at: {from: left, distance: 75 in}
    cutout: {width: 14 in, depth: 15 in}
    body: {width: 13 in, depth: 14 in, height: 7 in}
    flange: 1/2 in
    front: {closed: {setback: 6-1/2 in}}
openings:
  - name: door
    kind: door
    run: bench
    at: {from: left, distance: 48 in}
    width: 20 in
    height: 20 in
    sill: 7 in
counter:
  thickness: 2 in
";

const IN: f64 = 25.4;

/// The cut lengths, worked on paper. Inches unless said otherwise.
///
/// 33 mil: t = 0.0346, R = max(3/32 − t/2, 1.5 t) = 0.07645, so a track is 3.625 + 2t + R = 3.77065 deep over all,
/// which is the thickness of a panel.
///
/// Heights: top of frame 36 − 2 − 1/2 = 33.5, foot 2; studs 33.5 − 2 − 2t = 31.4308.
///
/// Working panel, 96 long: ends at 0 and 96, grid 16, 32, (48 in the door), 64, 80: six studs; jambs at 38 and 58; at 48 a
/// cripple below the sill, 7 − t − (2 + t) = 4.9308, and one above the header, 33.5 − t − (27 + t) = 6.4308. Sill and
/// header 20 + 2 × 2 = 24.
///
/// Seating panel: ends and five on the grid: seven studs. End panels between them, 30 − 2 × 3.77065 = 22.4587 long: ends
/// and one at 16: three studs each.
///
/// Sink from 68 to 82 along and 6.5 to 21.5 deep: two trimmers, blocking near (6.5 − 1.25 clears the panel) and far. Ties
/// at 16, 32, 48, 64; at 80 the sink is in the way, and 3.5 in behind it are too few for a tie. They are 22.4587 clear.
/// Their tabs stay within the flange: 1.25 − 2 (R + t) + π/2 (R + t/2) = 1.1752 = 29.85 mm, 29 mm in whole millimetres.
///
/// Sleepers: 96 under the long panels, 30 − 2 × 3.5 = 23 between them.
fn on_paper() -> BTreeMap<String, f64> {
    let clear = 22.4587 * IN;
    let tabs = 2.0 * 29.0;
    let mut list = BTreeMap::new();
    let mut add = |prefix: &str, lengths: &[f64]| {
        for (i, length) in lengths.iter().enumerate() {
            list.insert(format!("B-{prefix}{:02}", i + 1), *length);
        }
    };
    add("S", &[31.4308 * IN; 6 + 7 + 3 + 3]);
    add("J", &[31.4308 * IN; 2]);
    add("K", &[4.9308 * IN, 6.4308 * IN]);
    add("BT", &[96.0 * IN, 96.0 * IN, clear, clear]);
    add("TT", &[96.0 * IN, 96.0 * IN, clear, clear]);
    add("SI", &[24.0 * IN]);
    add("H", &[24.0 * IN]);
    add("T", &[clear + tabs; 4]);
    add("TR", &[clear + tabs; 2]);
    add("BK", &[14.0 * IN + tabs; 2]);
    add("SL", &[96.0 * IN, 96.0 * IN, 23.0 * IN, 23.0 * IN]);
    list
}

#[test]
fn every_member_has_the_mark_and_the_length_worked_on_paper() {
    let plan = plan::lay_out(design::from_text(FILE).unwrap()).unwrap();
    let assembly = parts::build(&plan);
    let found: BTreeMap<_, _> = assembly
        .parts
        .iter()
        .filter(|p| p.group == Group::Framing)
        .map(|p| (p.mark.clone(), p.length.mm()))
        .collect();
    let paper = on_paper();
    let marks = |list: &BTreeMap<String, f64>| list.keys().cloned().collect::<Vec<_>>();
    assert_eq!(marks(&found), marks(&paper));
    for (mark, length) in &paper {
        assert!(
            (found[mark] - length).abs() < 0.01,
            "{mark}: {} mm, on paper {length} mm",
            found[mark]
        );
    }
}

#[test]
fn members_stand_where_paper_says() {
    let plan = plan::lay_out(design::from_text(FILE).unwrap()).unwrap();
    let assembly = parts::build(&plan);
    let bounds = |mark: &str| {
        let part = assembly.parts.iter().find(|p| p.mark == mark).unwrap();
        let faceted = assembly.solid(part).faceted(0.05);
        let placed = faceted.points.iter().map(|p| part.placement * p);
        islandwright::geometry::Bounds3::around(placed).unwrap()
    };
    // In inches: low x, y, z, high x, y, z. Studs stand in the middle of their panel: 3.77065/2 ± 3.625/2.
    let cases = [
        ("B-BT01", [0.0, 0.0, 2.0, 96.0, 3.770_65, 3.25]),
        ("B-TT02", [0.0, 26.229_35, 32.25, 96.0, 30.0, 33.5]),
        ("B-S01", [0.0, 0.072_825, 2.0346, 1.25, 3.697_825, 33.4654]),
        (
            "B-S02",
            [15.375, 0.072_825, 2.0346, 16.625, 3.697_825, 33.4654],
        ),
        (
            "B-J01",
            [36.75, 0.072_825, 2.0346, 38.0, 3.697_825, 33.4654],
        ),
        (
            "B-J02",
            [58.0, 0.072_825, 2.0346, 59.25, 3.697_825, 33.4654],
        ),
        // The door's header: its web on 27, its flanges 1.25 up, its tabs higher still; the sill hangs from 7.
        ("B-TR01", [66.75, 3.770_65, 29.875, 68.0, 26.229_35, 33.5]),
        ("B-TR02", [82.0, 3.770_65, 29.875, 83.25, 26.229_35, 33.5]),
        ("B-BK01", [68.0, 5.25, 29.875, 82.0, 6.5, 33.5]),
        ("B-SL01", [0.0, 0.0, 0.5, 96.0, 3.5, 2.0]),
        ("B-SL03", [0.0, 3.5, 0.5, 3.5, 26.5, 2.0]),
        ("B-SL04", [92.5, 3.5, 0.5, 96.0, 26.5, 2.0]),
    ];
    for (mark, inches) in cases {
        let b = bounds(mark);
        let found = [b.low.x, b.low.y, b.low.z, b.high.x, b.high.y, b.high.z];
        for (f, i) in found.iter().zip(inches) {
            assert!(
                (f - i * IN).abs() < 0.01,
                "{mark}: {:?} for {inches:?}",
                found.map(|x| x / IN)
            );
        }
    }
    let header = bounds("B-H01");
    assert!((header.low.x - 38.0 * IN).abs() < 0.01 && (header.high.x - 58.0 * IN).abs() < 0.01);
    assert!((header.low.z - 27.0 * IN).abs() < 0.01 && header.high.z < 33.4654 * IN);
    let sill = bounds("B-SI01");
    assert!((sill.high.z - 7.0 * IN).abs() < 0.01 && sill.low.z > 2.0346 * IN);
}
