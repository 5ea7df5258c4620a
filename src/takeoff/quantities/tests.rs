//! A straight run reckoned on paper, in inches.

use super::quantities;
use crate::catalog::{Need, Supplies};
use crate::takeoff::sheets::Laying;
use crate::takeoff::{Amount, Quantity};
use crate::{design, parts, plan};

/// 8 ft by 30 in, a door in the working side, a sink in the counter; the same frame as in `tests/straight_run.rs`.
pub(in crate::takeoff) const FILE: &str = r"
project: {title: Bench on paper}
trade:
  stud: 362S125-33
  track: 362T125-33
  stud_spacing: 16 in
  tab: 2 in
  board: {length: 5 ft, width: 3 ft, thickness: 1/2 in, gap: 1/8 in}
  base_coat: 1/4 in
  finish_coat: 1/8 in
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
    cutout: {width: 14 in, depth: 15 in, corner_radius: 0 in}
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
  overhang: {working: 2 in, seating: 10 in, left: 2 in, right: 2 in}
  turndown: {depth: 1 in, width: 1-1/2 in}
  edge: {square: {eased: 0 in}}
";

/// The quantities of a parameter file, whatever the shops sell.
pub(in crate::takeoff) fn of_file(text: &str) -> Vec<Quantity> {
    let mut design = design::from_text(text).unwrap();
    design.supplies = Supplies::default();
    let plan = plan::lay_out(design).unwrap();
    let assembly = parts::build(&plan);
    quantities(&plan, &assembly, &Laying::of(&plan, &assembly))
}

/// The sum of an item, over one face or all, in inches to its power, pounds or pieces.
fn sum(list: &[Quantity], item: &str, face: Option<usize>) -> f64 {
    let own = list
        .iter()
        .filter(|q| q.item == item && (face.is_none() || q.face == face));
    own.map(|q| match q.amount {
        Amount::Length(l) => l.mm() / 25.4,
        Amount::Area(a) => a.mm2() / 645.16,
        Amount::Volume(v) => v.mm3() / 16_387.064,
        Amount::Mass(m) => m.kg() / 0.453_592_37,
        Amount::Count(n) => f64::from(n),
    })
    .sum()
}

fn check(list: &[Quantity], paper: &[(&str, Option<usize>, f64)]) {
    for (item, face, expected) in paper {
        let found = sum(list, item, *face);
        let near = (found - expected).abs() <= 2e-4 * expected.abs().max(0.01);
        assert!(near, "{item} {face:?}: {found}, on paper {expected}");
    }
}

/// Steel: 19 studs and 2 jambs of 31.4308, cripples of 4.9308 and 6.4308, 4 ties and 2 trimmers of 22.4587 and 58 mm of
/// tabs, 2 blocking of 14 and 58 mm: 852.428. Tracks 4 × 96 + 4 × 22.4587, header and sill of 24: 521.835.
/// Sleepers 2 × 96 + 2 × 23; shims each 24: five and two under each.
#[test]
fn framing_is_that_on_paper() {
    let list = of_file(FILE);
    check(
        &list,
        &[
            ("362S125-33", None, 852.428),
            ("362T125-33", None, 521.835),
            ("sleeper", None, 238.0),
            ("shim", None, 14.0),
            ("sink", None, 1.0),
            ("door", None, 1.0),
        ],
    );
    let kinds = "19 studs, 2 jambs, 2 cripples, 4 ties, 2 trimmers, 2 blocking, cut lengths";
    assert!(list.iter().any(|q| q.reckoned == kinds), "{list:#?}");
}

/// Faces are 31.5 high: from 2 to 33.5. A layer passes its first corner by its front and its last by its back: boards
/// 96.5 and 30.5 long, base coat 97.25 and 31.25, finish coat 97.625 and 31.625 and 3/8 less high for the channel's lip.
/// The door takes 400; both long faces have one joint of 1/8, at 48: on the working side through the door, 11.5 long.
#[test]
fn cladding_is_that_on_paper() {
    let list = of_file(FILE);
    check(
        &list,
        &[
            ("board", Some(0), 96.5 * 31.5 - 400.0 - 11.5 / 8.0),
            ("board", Some(1), 30.5 * 31.5),
            ("board", Some(2), 96.5 * 31.5 - 31.5 / 8.0),
            ("board", Some(3), 30.5 * 31.5),
            ("base coat", Some(0), 97.25 * 31.5 - 400.0),
            ("base coat", Some(3), 31.25 * 31.5),
            ("base coat, mixed", Some(2), 97.25 * 31.5 / 4.0),
            ("bonding adhesive", Some(0), 97.25 * 31.5 - 400.0),
            ("finish coat", Some(0), 97.625 * 31.125 - 400.0),
            ("finish coat, mixed", Some(1), 31.625 * 31.125 / 8.0),
            ("joint tape", Some(0), 11.5),
            ("joint tape", Some(2), 31.5),
            ("joint tape", None, 43.0),
            ("corner mesh", None, 4.0 * 31.5),
            ("weight of boards", None, 7595.625 * 0.5 / 1728.0 * 72.0),
        ],
    );
}

/// Boards of 7595.625 in² at 3 psf of half an inch are 158.242 lb; the whole is what its clause names.
#[test]
fn dead_weight_is_the_sum_of_what_its_clause_names() {
    let list = of_file(FILE);
    let own: Vec<_> = list.iter().filter(|q| q.item == "dead weight").collect();
    assert_eq!(own.len(), 1);
    let named = own[0].reckoned.split(';').next().unwrap_or_default();
    assert!(named.contains("boards 158.2 lb, "), "{named}");
    let pounds = named
        .split(" lb")
        .filter_map(|n| n.rsplit(' ').next()?.parse::<f64>().ok());
    let pounds: Vec<_> = pounds.collect();
    // Steel, sleepers, boards, coats, substrate, slab: each rounded to a tenth.
    assert_eq!(pounds.len(), 6, "{named}");
    let whole = sum(&list, "dead weight", None);
    assert!(
        (pounds.iter().sum::<f64>() - whole).abs() < 0.3,
        "{named}: {whole}"
    );
    assert!(!list.iter().any(|q| q.item == "weight of steel"));
}

/// The slab is 96 + 2 × 2.875 = 101.75 by 30 + 2.875 + 10.875 = 43.75, its cutout 14 × 15. Turndown: 1 deep under the
/// ring between that and 98.75 × 40.75.
#[test]
fn counter_is_that_on_paper() {
    let list = of_file(FILE);
    // 26.2598 psf × 4.88243 kg/m² = 128.21. One run is the whole, and no weight is told in the other unit's area.
    let fresh: Vec<_> = list
        .iter()
        .filter(|q| q.item.starts_with("slab, fresh"))
        .collect();
    assert_eq!(fresh.len(), 2);
    assert!(fresh[1].reckoned.ends_with("; 128.2 kg/m²"), "{fresh:#?}");
    let (whole, inside, cutout) = (101.75 * 43.75, 98.75 * 40.75, 210.0);
    let slab = (whole - cutout) * 2.0 + (whole - inside);
    check(
        &list,
        &[
            ("slab", None, slab),
            ("counter area", None, whole - cutout),
            ("slab, fresh", None, slab / 1728.0 * 150.0),
            ("slab, dried", None, slab / 1728.0 * 145.0),
            ("slab, fresh, each ft² of counter", None, 26.2598),
            ("substrate", None, inside - cutout),
            // Two joints right across it, both on ties.
            ("joint tape, substrate", None, 2.0 * 40.75),
            ("blocking, substrate", None, 0.0),
            // Top, and edges of 2 + 1 all round, twice.
            (
                "sealer, counter",
                None,
                2.0 * (whole - cutout + 3.0 * 291.0),
            ),
            // Cover 1, half the slab: 99.75 × 41.75, cutout in; sheets of 84 × 42 reach across, one lap of 8 along.
            ("reinforcing mesh", None, (99.75 + 8.0) * 41.75),
            // Six by three less the one at (77.9, 19.0), in the cutout.
            ("standoff", None, 17.0),
            ("edge, square with turndown", None, 291.0),
            ("edge corner, outward", None, 4.0),
            // Walls and floors at both ends, the upstand on the seating side.
            ("form mitre", None, 18.0),
        ],
    );
}

/// | connection | on paper | screws |
/// | --- | --- | --- |
/// | uprights | 21 studs and jambs, 2 cripples: 46 ends × 2 | 92 |
/// | tabs | header, sill, 4 ties, 2 trimmers, 2 blocking: 20 × 2 | 40 |
/// | panel corners | 4 webs on studs of 31.43: (31.43 − 2)/12 = 2.5, so 4 each | 16 |
/// | sleepers | tracks of 96: 92/24 = 3.8, so 5; of 22.46: 2; two each | 14 |
/// | boards, working | each board: 4 uprights × 5 (30.4/8 = 3.8), cripples 2 + 2; between them on each track 1 + 1 + 0 + 1, on header and sill 1 each: 32; twice | 64 |
/// | boards, seating | each board: 4 studs × 5; on each track 3: 26; twice | 52 |
/// | boards, ends | two webs and three studs × 5, one more on each track | 27 each |
/// | substrate | sheets of 60 × 36 across, joints on the ties at 32 and 64: long tracks thrice 5 each (31/8 = 3.9); ends, 4 ties, 2 trimmers 3 each between lines 26.2 apart, 3 more on each tie with a joint; blocking of 14: 3 each | 66 |
/// | edge forms | walls and floors 103.25: 14 each, 45.25: 7 each; upstand 98.75: 14; corners 2 each | 106 |
/// | cutout frame | strips of 14 and 13.5: 3 each; corners 2 each | 20 |
#[test]
fn screws_are_those_counted_on_paper() {
    check(
        &of_file(FILE),
        &[
            ("steel screw, uprights", None, 92.0),
            ("steel screw, tabs", None, 40.0),
            ("steel screw, panel corners", None, 16.0),
            ("steel screw, studs back to back", None, 0.0),
            ("steel screw, track blocking", None, 0.0),
            ("sleeper screw", None, 14.0),
            ("board screw, boards", Some(0), 64.0),
            ("board screw, boards", Some(2), 52.0),
            ("board screw, boards", Some(1), 27.0),
            ("board screw, boards", Some(3), 27.0),
            ("board screw, substrate", None, 66.0),
            ("form screw, edge forms", None, 106.0),
            ("form screw, cutout forms", None, 20.0),
        ],
    );
}

/// Sheets of 17 are too narrow to stand and make two courses, the joint at 2 + 17 + 1/16. It is backed between all studs but in the door: on the
/// seating side between seven studs, six pieces; at the ends between three, two each; on the working side between the
/// studs and jambs at 0, 16, 32, 37, 58, 64, 80 and 95, six less the door.
#[test]
fn blocking_behind_a_course_joint_is_screwed_at_both_ends() {
    let text = FILE.replace("width: 3 ft, thickness", "width: 17 in, thickness");
    let list = of_file(&text);
    let pieces = 6.0 + 2.0 * 2.0 + 6.0;
    check(
        &list,
        &[("steel screw, track blocking", None, 4.0 * pieces)],
    );
    let courses = list
        .iter()
        .find(|q| q.item == "joint tape" && q.face == Some(1));
    // The end's board is 30.5 long and in one piece: only the joint between courses.
    assert!(
        courses.is_some_and(|q| (q.amount.size() - 30.5 * 25.4).abs() < 1e-6),
        "{courses:?}"
    );
}

/// A bench and a bar that butts against it: the corner square is the bench's.
#[test]
fn the_slab_of_an_angle_is_shared_as_on_paper() {
    let text = FILE.replace(
        "depth: 30 in}\nappliances",
        "depth: 30 in}\n  - {name: bar, length: 84 in, depth: 30 in, turn: right, passes: earlier}\nappliances",
    );
    let text = text
        .replace("distance: 75 in", "distance: 40 in")
        .replace("distance: 48 in", "distance: 40 in");
    let list = of_file(&text);
    let share = |item: &str, run: usize| {
        let own: Vec<_> = list
            .iter()
            .filter(|q| q.run == Some(run))
            .cloned()
            .collect();
        sum(&own, item, None)
    };
    let near =
        |found: f64, paper: f64| assert!((found / paper - 1.0).abs() < 1e-9, "{found} for {paper}");
    // The bench: 2.875 past its left end, 10.875 past the bar's seating side; 43.75 deep. The bar goes on from the
    // bench's front edge, 30 + 2.875 from its own start, to 84 + 2.875; 43.75 deep too.
    let bench = 96.0 + 2.875 + 10.875;
    let bar = 84.0 + 2.875 - 32.875;
    near(share("counter area", 0), bench * 43.75 - 210.0);
    near(share("counter area", 1), bar * 43.75);
    // The whole: both, and 1 × 1.5 all round; the line in the middle of the turndown is 4 × 1.5 shorter than the edge.
    let round = 2.0 * (bench + 43.75 + bar) - 4.0 * 1.5;
    let whole = (bench * 43.75 - 210.0 + bar * 43.75) * 2.0 + 1.5 * round;
    near(share("slab", 0) + share("slab", 1), whole);
    near(sum(&list, "slab", None), whole);
    // Of the corners' −9 each run gets what its share of the edge is: the bar's is two sides and an end.
    let edge = round + 6.0;
    let own = 2.0 * bar + 43.75;
    near(
        share("slab", 1),
        bar * 43.75 * 2.0 + 1.5 * own - 9.0 * own / edge,
    );
    // Webs on studs of 31.43, four screws each: at both ends of the bench its end panel, of the bar its end panel, and the
    // bar's long panels on the bench, where one pair of studs stands back to back for them.
    assert_eq!(share("steel screw, panel corners", 0), 16.0);
    assert_eq!(share("steel screw, panel corners", 1), 16.0);
    assert_eq!(sum(&list, "steel screw, studs back to back", None), 4.0);
    // Of several runs the slab is weighed as a whole too.
    near(
        sum(&list, "slab, dried, all runs", None),
        whole / 1728.0 * 145.0,
    );
    // One inner corner, five outer ones.
    assert!((sum(&list, "corner mesh", None) - 5.0 * 31.5).abs() < 1e-6);
    assert_eq!(sum(&list, "edge corner, outward", None), 5.0);
    assert_eq!(sum(&list, "edge corner, inward", None), 1.0);
    let things = list
        .iter()
        .filter(|q| matches!(q.need, Some(Need::Thing(_))));
    assert_eq!(things.count(), 2);
}

#[test]
fn an_eased_edge_takes_a_bead_and_long_strips_take_cleats() {
    // Over boards and coats of 7/8 in and overhangs of 2, 2, 2 and 10 the counter is 101-3/4 × 43-3/4 in. The walls stand
    // 3/4 in outside it, mitred: 103-1/4 and 45-1/4 to the tips, together 297. Sheets are 96 in long: wall and floor of
    // both long sides are butted, and the upstand of the seating side, 101-3/4 less a turndown at each end, 98-3/4.
    // The working side has no room for one.
    let list = of_file(&FILE.replace("eased: 0 in", "eased: 1/8 in"));
    assert!((sum(&list, "sealant bead", None) - 297.0).abs() < 1e-6);
    assert!((sum(&list, "form cleat", None) - 5.0).abs() < 1e-9);
    let sharp = of_file(FILE);
    assert!(sharp.iter().all(|q| q.item != "sealant bead"));
}
