//! Cut lists worked on paper.

use super::{CutList, CutPiece, CutStick, End, Placed, cut_lists, table};
use crate::catalog::{Form, Need, Supply};
use crate::design::{Design, Placed as InFile, from_text};
use crate::diagnostics::{Place, Verdict};
use crate::table::Cell;
use crate::takeoff::cutting::Proof;
use crate::units::{Length, Money};
use crate::{parts, plan};

/// The bench of `tests/straight_run.rs` without its door and sink: 96 × 30 in, studs 31.4308 in.
///
/// Long panels: ends and 16, 32, 48, 64, 80: seven studs each. End panels, 22.4587 in long: ends and one at 16: three
/// each. Twenty studs of 31-7/16 in = 503 sixteenths, all with a punch-out 12 in from the foot.
const BENCH: &str = "
project: {title: Bench}
trade: {stud: 362S125-33, track: 362T125-33, stud_spacing: 16 in}
levels: {counter: 36 in, base_gap: 2 in}
runs: [{name: bench, length: 96 in, depth: 30 in}]
counter: {thickness: 2 in}
";

fn stick(feet: f64, cents: i64) -> Supply {
    Supply {
        name: format!("stud {feet} ft"),
        need: Need::Steel("362S125-33".to_owned()),
        form: Form::Stick {
            length: Length::inches(feet * 12.0),
        },
        size: None,
        length: None,
        shop: "yard".to_owned(),
        price: Some(Money::cents(cents)),
        example: true,
        place: Place::default(),
    }
}

/// The bench with only these sticks for its studs.
fn bench(sticks: &[Supply], aligned: bool) -> Design {
    let mut design = from_text(BENCH).unwrap();
    design.supplies = crate::catalog::Supplies::default();
    for stick in sticks {
        design.supplies.put(stick.clone());
    }
    design.buying.aligned = aligned;
    design
}

/// The studs' list, with the ties taken out of it: only what the paper speaks of.
fn studs(design: Design) -> CutList {
    let plan = plan::lay_out(design).unwrap();
    let mut assembly = parts::build(&plan);
    assembly.parts.retain(|p| p.kind == parts::PartKind::Stud);
    let mut findings = Vec::new();
    let mut lists = cut_lists(&plan, &assembly, &mut findings);
    assert!(findings.is_empty() && lists.len() == 1, "{findings:?}");
    lists.remove(0)
}

#[test]
fn feet_stand_on_the_punch_out_grid() {
    // 8 ft is 1536 steps, the grid 384. Three studs end to end are 1509, but their feet must lie on 0, 384, 768, 1152 or
    // 1536: [0, 503] and one of [649, 1152] or [1033, 1536] is all: two a stick, ten sticks; as they fall three, seven.
    let aligned = studs(bench(&[stick(8.0, 1000)], true));
    assert_eq!(aligned.pieces.len(), 20);
    assert!(aligned.pieces.iter().all(|p| p.length == 503 && p.aligned));
    assert_eq!((aligned.sticks.len(), aligned.proof), (10, Proof::Proven));
    let free = studs(bench(&[stick(8.0, 1000)], false));
    assert_eq!((free.sticks.len(), free.proof), (7, Proof::Proven));
}

#[test]
fn the_length_that_costs_least_for_all_is_bought() {
    // 12 ft is six pitches: [0, 503], [649, 1152], [1152, 1655], [1801, 2304]: four a stick, five sticks. At 15.00 they
    // are 75.00; two from each of ten 8 ft sticks at 8.00 would be 80.00. At 17.00 the ten short ones are less.
    let list = studs(bench(&[stick(8.0, 800), stick(12.0, 1500)], true));
    assert_eq!((list.counts.clone(), list.cost), (vec![0, 5], 7500));
    assert_eq!(list.money(), Some(Money::cents(7500)));
    let list = studs(bench(&[stick(8.0, 800), stick(12.0, 1700)], true));
    assert_eq!((list.counts, list.cost), (vec![10, 0], 8000));
}

#[test]
fn a_stick_that_is_too_short_is_said_and_the_rest_is_cut() {
    let mut design = bench(&[stick(2.0, 300)], true);
    design.buying.aligned = false;
    let plan = plan::lay_out(design).unwrap();
    let assembly = parts::build(&plan);
    let mut findings = Vec::new();
    let lists = cut_lists(&plan, &assembly, &mut findings);
    let studs = lists.iter().find(|l| l.section == "362S125-33").unwrap();
    assert!(studs.too_long.len() >= 20 && studs.sticks.is_empty());
    let tracks = lists.iter().find(|l| l.section == "362T125-33").unwrap();
    assert!(tracks.too_long.is_empty() && !tracks.sticks.is_empty());
    assert_eq!(findings.len(), 1);
    assert_eq!(
        (findings[0].code, findings[0].verdict),
        ("piece-long", Verdict::Fail)
    );
    assert_eq!(findings[0].place.key, "runs[1].length");
}

#[test]
fn a_long_channel_is_joined_of_segments_that_add_up() {
    // 96 in of frame, 1/2 in board and 1/4 in base coat at each end, and the lip: more than one 8 ft stick; the second
    // segment is not a sliver.
    let mut design = bench(&[], true);
    design.supplies.put(Supply {
        need: Need::BaseChannel,
        ..stick(8.0, 500)
    });
    let plan = plan::lay_out(design).unwrap();
    let assembly = parts::build(&plan);
    let lists = cut_lists(&plan, &assembly, &mut Vec::new());
    let channel = lists.iter().find(|l| l.need == Need::BaseChannel).unwrap();
    let notation = plan.design.project.units;
    for (number, part) in assembly.parts.iter().enumerate() {
        let of_part: Vec<_> = channel
            .pieces
            .iter()
            .filter(|p| p.kind.part() == Some(number))
            .collect();
        let Some(first) = of_part.first() else {
            continue;
        };
        let sum: u32 = of_part.iter().map(|p| p.length).sum();
        assert_eq!(i64::from(sum), notation.steps(part.length));
        assert!(of_part.iter().all(|p| p.length >= 188), "a sliver");
        assert_eq!(first.ends[0], End::Mitre);
        assert_eq!(of_part[of_part.len() - 1].ends[1], End::Mitre);
        assert_eq!(of_part.len() > 1, part.length > Length::inches(96.0));
    }
    assert!(channel.pieces.iter().any(|p| p.segment == Some((2, 2))));
}

#[test]
fn corner_mesh_is_cut_from_its_sticks_and_no_corner_is_pieced() {
    // Four corners of 31-1/2 in (counter 36, slab and substrate 2-1/2, gap 2): three to a stick of 8 ft, 94-1/2 of 96 in,
    // so two sticks. Of a 5 ft stick comes one: four sticks, though 126 in would be 2.1 by length.
    for (feet, count) in [(8.0, 2), (5.0, 4), (12.0, 1)] {
        let mut design = bench(&[], true);
        design.supplies.put(Supply {
            need: Need::CornerMesh,
            ..stick(feet, 500)
        });
        let plan = plan::lay_out(design).unwrap();
        let assembly = parts::build(&plan);
        let lists = cut_lists(&plan, &assembly, &mut Vec::new());
        let mesh = lists.iter().find(|l| l.need == Need::CornerMesh).unwrap();
        assert_eq!((mesh.pieces.len(), mesh.sticks.len()), (4, count));
        let whole = |p: &CutPiece| p.segment.is_none() && p.kind.part().is_none();
        assert!(mesh.pieces.iter().all(whole));
    }
}

#[test]
fn no_stick_is_longer_than_can_be_carried() {
    // Five of 12 ft would cost less (see above); the car takes 10 ft.
    let mut design = bench(&[stick(8.0, 800), stick(12.0, 1500)], true);
    design.buying.longest_stick = Some(carried(120.0));
    let list = studs(design);
    assert_eq!((list.counts, list.cost), (vec![10], 8000));
}

fn carried(inches: f64) -> InFile<Length> {
    InFile {
        value: Length::inches(inches),
        place: Place {
            key: "buying.longest_stick".to_owned(),
            ..Place::default()
        },
    }
}

/// What is said of a design's lists: the key and the words.
fn said(design: Design) -> Vec<(String, String)> {
    let plan = plan::lay_out(design).unwrap();
    let mut findings = Vec::new();
    cut_lists(&plan, &parts::build(&plan), &mut findings);
    assert!(findings.iter().all(|f| f.verdict == Verdict::Fail));
    let said = findings.into_iter().map(|f| (f.place.key, f.found));
    said.collect()
}

#[test]
fn what_no_stick_is_short_enough_for_is_said_once() {
    let mut design = bench(&[stick(8.0, 800)], true);
    design.buying.longest_stick = Some(carried(24.0));
    let words = "no stick of 362S125-33, 362T125-33, sleeper and base channel is short enough to carry: longest_stick is \
                 2'-0\"";
    let expected = ("buying.longest_stick".to_owned(), words.to_owned());
    assert_eq!(said(design), [expected]);
}

#[test]
fn a_piece_as_long_as_an_untrimmed_stick_is_too_long_by_the_trim() {
    // The long tracks are 96 in, both on two sides; the stick is 8 ft, less 1/2.
    let track = Supply {
        need: Need::Steel("362T125-33".to_owned()),
        ..stick(8.0, 500)
    };
    let mut design = bench(&[track], true);
    design.buying.end_trim = Length::inches(0.5);
    let found = said(design);
    assert_eq!(found.len(), 1, "{found:?}");
    let words = "is 8'-0\" long, and 3 more, and the longest stick of 362T125-33 is 8'-0\", 7'-11 1/2\" once its end_trim \
                 of 1/2\" is off";
    assert!(found[0].1.ends_with(words), "{found:?}");
}

/// What the table says of each row: cut, kind, from, cut at, length.
fn told(list: &CutList) -> Vec<String> {
    let plan = plan::lay_out(bench(&[], true)).unwrap();
    let table = table(&plan, std::slice::from_ref(list));
    assert!(table.rows.iter().all(|r| r.len() == table.columns.len()));
    let words = |cell: &Cell| match cell {
        Cell::Text(text) => text.clone(),
        Cell::Number { value, .. } => value.to_string(),
        Cell::Empty => "-".to_owned(),
    };
    let columns = [3, 5, 9, 10, 7];
    let row = |row: &Vec<Cell>| columns.map(|c| words(&row[c])).join(" | ");
    table.rows.iter().map(row).collect()
}

#[test]
fn the_table_tells_every_cut_and_where_each_piece_begins() {
    // Two studs of 503 steps, 31-7/16 in, on an 8 ft stick with their feet on 0 and 1152, and a saw cut of 2: the scrap
    // reaches from 505 to 647, since the cut behind it ends at 649. 505 is 31-9/16, 647 40-7/16, 649 40-9/16, 142 8-7/8,
    // 1152 72; the offcut is all after 1154, 72-1/8: 382, 23-7/8.
    let mut list = studs(bench(&[stick(8.0, 1000)], true));
    list.kerf = 2;
    let placed = |piece, start| Placed {
        piece,
        start,
        reversed: piece == 1,
    };
    let on = |second| CutStick {
        stock: 0,
        cuts: vec![placed(0, 0), placed(1, second)],
        offcut: 1536 - (second + 503 + 2),
    };
    list.sticks = vec![on(649)];
    let paper = [
        "1 | stud | 0\" | 2'-7 7/16\" | 2'-7 7/16\"",
        "2 | scrap | 2'-7 9/16\" | 3'-4 7/16\" | 8 7/8\"",
        "3 | stud | 3'-4 9/16\" | 6'-0\" | 2'-7 7/16\"",
        "- | offcut | 6'-0 1/8\" | - | 1'-11 7/8\"",
    ];
    assert_eq!(told(&list), paper);
    // One cut lies between pieces that nothing moves apart; a gap of three is gone with the second cut.
    list.sticks = vec![on(505), on(506)];
    let kinds: Vec<_> = told(&list)
        .iter()
        .map(|r| r.split(" | ").nth(1).unwrap_or_default().to_owned())
        .collect();
    let apart = ["stud", "stud", "offcut", "stud", "scrap", "stud", "offcut"];
    assert_eq!(kinds, apart);
    assert_eq!(told(&list)[4], "2 | scrap | 2'-7 1/2\" | 2'-7 1/2\" | 0\"");
    // A first piece that does not begin at the marked end.
    list.sticks[0].cuts = vec![placed(1, 265)];
    assert_eq!(
        told(&list)[0],
        "1 | scrap | 0\" | 1'-4 7/16\" | 1'-4 7/16\""
    );
}

#[test]
fn a_long_stick_without_a_price_serves_what_no_other_can() {
    // The studs fit the 2 ft stick no more than before; the 8 ft one has no price, but is long enough.
    let long = Supply {
        price: None,
        ..stick(8.0, 0)
    };
    let list = studs(bench(&[stick(2.0, 300), long], true));
    assert!(list.too_long.is_empty() && !list.is_priced());
    assert_eq!((list.counts.clone(), list.money()), (vec![0, 10], None));
}
