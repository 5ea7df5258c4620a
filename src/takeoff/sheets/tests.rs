//! Sheet lists worked on paper.

use super::{Laying, SheetList, sheet_lists};
use crate::catalog::{Form, Need, Supply};
use crate::design::sample::{design, mm, placed, run};
use crate::design::{Design, EdgeProfile, Side, Turn, Turndown};
use crate::diagnostics::{Finding, Place, Verdict};
use crate::parts::build;
use crate::plan::{Plan, lay_out};
use crate::units::{Length, Money};

fn lists(design: Design) -> (Plan, Vec<SheetList>, Vec<Finding>) {
    let plan = lay_out(design).unwrap_or_else(|findings| panic!("{findings:?}"));
    let mut findings = Vec::new();
    let assembly = build(&plan);
    let laying = Laying::of(&plan, &assembly);
    let lists = sheet_lists(&plan, &assembly, &laying, &mut findings);
    (plan, lists, findings)
}

fn of(lists: &[SheetList], need: &Need) -> SheetList {
    lists.iter().find(|l| l.need == *need).unwrap().clone()
}

/// The same on a substrate that is no board of the faces.
fn apart(mut d: Design) -> Design {
    d.trade.substrate = "cement backer".to_owned();
    d
}

fn straight() -> Design {
    apart(design(vec![run("cook", 3000.0, None, &[])]))
}

/// Turndown 40 deep and 35 wide on all sides, its edge eased by 4.
fn dropped(mut d: Design) -> Design {
    d.counter.turndown = Some(Turndown {
        depth: mm(40.0),
        width: mm(35.0),
    });
    d.counter.turndown_sides = vec![Side::Working, Side::Seating, Side::Left, Side::Right];
    d.counter.profile = placed(EdgeProfile::Square {
        eased: Length::millimetres(4.0),
    });
    d
}

fn supply(need: Need, length: f64, width: f64, thickness: f64, cents: i64) -> Supply {
    Supply {
        name: format!("{need} {length}"),
        need,
        form: Form::Sheet {
            length: Length::millimetres(length),
            width: Length::millimetres(width),
            thickness: Length::millimetres(thickness),
        },
        size: None,
        length: None,
        shop: "yard".to_owned(),
        price: Some(Money::cents(cents)),
        example: true,
        place: Place::default(),
    }
}

#[test]
fn the_substrate_of_a_straight_run_has_its_joints_on_ties() {
    // Frame 3000 × 900, cladding 22, overhangs 40 and at the seating side 250: 3124 × 1234, u from −62. Deeper than
    // a sheet is wide, so that 2440 × 1220 lies across: three pieces of at most 1220. The first joint lies no farther than
    // 1158 and no nearer than a sheet before the second, the second no nearer than 1842 and on a tie, 400 apart: 800, 2000.
    let (_, lists, findings) = lists(straight());
    assert!(findings.is_empty());
    let list = of(&lists, &Need::Substrate);
    let sides: Vec<_> = list.pieces.iter().map(|p| (p.length, p.width)).collect();
    assert_eq!(sides, [(862, 1234), (1200, 1234), (1062, 1234)]);
    let names: Vec<_> = list.pieces.iter().map(super::SheetPiece::name).collect();
    assert_eq!(names, ["SUBSTRATE-1", "SUBSTRATE-2", "SUBSTRATE-3"]);
    assert!(list.pieces.iter().all(|p| p.note.is_empty()));
    // Each is more than half a sheet.
    assert_eq!((list.counts.clone(), list.kerf), (vec![0, 3], 0));
    assert_eq!(list.cost, list.bound);
}

#[test]
fn plywood_under_the_counter_keeps_its_grain_along_the_run() {
    // Not turned, 1220 is too narrow for 1234: a joint along the run, over the middle of a panel of 92 or so.
    let mut d = straight();
    d.trade.substrate = "exterior plywood".to_owned();
    let (plan, lists, _) = lists(d);
    let list = of(&lists, &Need::Substrate);
    let half = plan.sizes.panel / 2.0;
    let over_working = (62.0 + half).ceil() as u32;
    let over_seating = (272.0 + half).ceil() as u32;
    assert_eq!(list.pieces.len(), 4);
    assert!(
        list.pieces
            .iter()
            .all(|p| !p.may_turn && p.length <= 2440 && p.width <= 1220)
    );
    assert!(
        list.pieces
            .iter()
            .any(|p| [over_working, over_seating].contains(&p.width))
    );
    assert!(list.kerf == 3 && list.too_large.is_empty());
}

#[test]
fn the_substrate_of_a_corner_falls_to_its_runs() {
    let (plan, lists, _) = lists(dropped(apart(design(vec![
        run("cook", 3000.0, None, &[]),
        run("serve", 2600.0, Some(Turn::Right), &[]),
    ]))));
    let list = of(&lists, &Need::Substrate);
    let area: f64 = list
        .pieces
        .iter()
        .filter_map(|p| Some(p.region.as_ref()?.area()))
        .sum();
    assert!((area - plan.counter.substrate.area()).abs() < 1e-3);
    // The second run butts against the first: its first piece begins over the middle of the first one's panel.
    let joint = plan.runs[1].framed.0 - plan.sizes.panel / 2.0;
    let from = list
        .pieces
        .iter()
        .filter(|p| p.run == Some(1))
        .filter_map(|p| p.region.as_ref())
        .flat_map(|r| r.outer.vertices())
        .map(|v| plan.runs[1].local(v.at).x)
        .fold(f64::INFINITY, f64::min);
    assert!((from - joint).abs() < 1e-6, "{from} for {joint}");
}

#[test]
fn form_strips_have_the_sides_worked_on_paper() {
    // As in the forms' own tests: walls and floors 3162.1 and 1272.1, the upstand 3054. Walls are 50 + 40 high, floors
    // 35 + 19.05 wide, the upstand 40 + 19.05 − 12 high. The longest sheet is 2440; 300 are left at least.
    let (_, lists, findings) = lists(dropped(straight()));
    assert!(findings.is_empty());
    let list = of(&lists, &Need::FormPlywood);
    assert_eq!((list.material.as_str(), list.kerf), ("plywood 19 mm", 3));
    let mut sides: Vec<_> = list.pieces.iter().map(|p| (p.width, p.length)).collect();
    sides.sort_unstable();
    let strip =
        |width, lengths: &[u32]| lengths.iter().map(move |l| (width, *l)).collect::<Vec<_>>();
    let expected = [
        strip(48, &[614, 2440]),
        strip(55, &[723, 723, 1273, 1273, 2440, 2440]),
        strip(90, &[723, 723, 1273, 1273, 2440, 2440]),
    ];
    assert_eq!(sides, expected.concat());
    assert!(list.pieces.iter().all(|p| !p.may_turn && p.layer.is_none()));
    let wall = list
        .pieces
        .iter()
        .find(|p| p.width == 90 && p.length == 723)
        .unwrap();
    assert_eq!(wall.segment, Some((2, 2)));
    assert!(wall.note.contains("bead of sealant") && wall.note.contains("mitre"));
    assert_eq!(list.layouts.len(), 1);
}

#[test]
fn a_deep_profile_is_stacked_and_its_joints_do_not_meet() {
    // A half-round of 90 reaches 45 past 19.05: 64.05 are four sheets.
    let mut d = dropped(straight());
    d.counter.profile = placed(EdgeProfile::HalfRound);
    d.counter.turndown.as_mut().unwrap().width = mm(50.0);
    d.counter.overhang.working = mm(60.0);
    d.counter.overhang.left = mm(60.0);
    d.counter.overhang.right = mm(60.0);
    let (_, lists, _) = lists(d);
    let list = of(&lists, &Need::FormPlywood);
    let mark = list
        .pieces
        .iter()
        .find(|p| p.note.contains("shape"))
        .unwrap()
        .mark
        .clone();
    let stack: Vec<_> = list.pieces.iter().filter(|p| p.mark == mark).collect();
    assert_eq!(stack.len(), 8);
    assert_eq!(stack[0].layer, Some((1, 4)));
    assert_eq!(stack[0].length, stack[3].length);
    assert_ne!(stack[0].length, stack[2].length);
    assert_eq!(stack[0].name(), format!("{mark} layer 1/4, 1 of 2"));
}

#[test]
fn a_sheet_smaller_than_a_board_is_said_and_the_rest_is_laid() {
    // The boards are laid out by 1200; of a sheet 1000 long only the shorter ones can be cut.
    let mut d = straight();
    d.supplies
        .put(supply(Need::Board, 1000.0, 860.0, 12.0, 2000));
    d.trade.board_length.place = Place {
        line: 7,
        ..Place::default()
    };
    let (_, lists, findings) = lists(d);
    let list = of(&lists, &Need::Board);
    let laid: usize = list.layouts.iter().map(|l| l.pieces.len()).sum();
    assert!(!list.too_large.is_empty() && laid > 0);
    assert_eq!(laid + list.too_large.len(), list.pieces.len());
    assert!(list.too_large.iter().all(|p| list.pieces[*p].length > 1000));
    let [finding] = &findings[..] else {
        panic!("{findings:?}")
    };
    assert_eq!(
        (finding.code, finding.verdict, finding.place.line),
        ("sheet-small", Verdict::Fail, 7)
    );
}

#[test]
fn only_sheets_of_the_asked_thickness_are_used_and_the_cheaper_ones() {
    let mut d = straight();
    d.supplies.put(supply(Need::Board, 3000.0, 1500.0, 16.0, 1));
    d.supplies
        .put(supply(Need::Board, 1200.0, 900.0, 12.5, 1500));
    d.supplies
        .put(supply(Need::Board, 2400.0, 1200.0, 12.0, 9000));
    let (_, lists, findings) = lists(d);
    let list = of(&lists, &Need::Board);
    assert!(findings.is_empty() && list.stock.len() == 2);
    assert_eq!(list.counts[1], 0);
    assert_eq!(
        list.money(),
        Some(Money::cents(1500 * i64::from(list.counts[0])))
    );
    assert_eq!(list.money().map(|m| m.in_cents() as u64), Some(list.cost));
}

#[test]
fn the_table_names_every_piece_and_offcut_and_what_is_left_out() {
    let mut d = straight();
    d.supplies
        .put(supply(Need::Board, 1000.0, 860.0, 12.0, 2000));
    let (plan, lists, _) = lists(d);
    let table = super::table(&plan, &lists);
    let on_sheets = |l: &SheetList| -> usize {
        let each = l.layouts.iter().map(|s| s.pieces.len() + s.offcuts.len());
        each.sum::<usize>() + l.too_large.len()
    };
    assert_eq!(table.rows.len(), lists.iter().map(on_sheets).sum::<usize>());
    assert!(table.rows.iter().all(|r| r.len() == table.columns.len()));
    // The first board 1062 × 1234 of the substrate on its sheet of 2440 × 1220 lies turned.
    let of_piece = |mark: &str| {
        let row = table.rows.iter().find(|r| r[3].spelt() == mark).unwrap();
        row.iter()
            .map(crate::table::Cell::spelt)
            .collect::<Vec<_>>()
    };
    let row = of_piece("SUBSTRATE-1");
    assert_eq!(row[0], "cement backer 12 mm");
    assert_eq!(row[2], "2440 mm × 1220 mm");
    assert_eq!(row[4..8], ["substrate", "cook run", "862 mm", "1234 mm"]);
    assert_eq!(row[10], "turned");
    assert_eq!(row[12..14], ["862.0", "1234.0"]);
    let sums = super::summary(&plan, &lists);
    assert!(sums.rows.iter().all(|r| r.len() == sums.columns.len()));
    assert_eq!(sums.rows[1][3].spelt(), "3 × 2440 mm × 1220 mm");
}

#[test]
fn a_substrate_of_the_same_board_shares_its_sheets() {
    // Ends of 900: boards of 847 × 900 or so; what a 2440 × 1220 sheet leaves beside a piece of the substrate serves them.
    let mut d = design(vec![run("cook", 3000.0, None, &[])]);
    d.supplies
        .put(supply(Need::Board, 2440.0, 1220.0, 12.0, 3000));
    let mut separate = apart(d.clone());
    separate
        .supplies
        .put(supply(Need::Substrate, 2440.0, 1220.0, 12.0, 3000));
    let (_, shared, _) = lists(d);
    assert!(shared.iter().all(|l| l.need != Need::Substrate));
    let (_, separate, _) = lists(separate);
    let two = of(&separate, &Need::Board).cost + of(&separate, &Need::Substrate).cost;
    let one = of(&shared, &Need::Board);
    assert!(one.cost < two, "{} for {two}", one.cost);
    let both =
        of(&separate, &Need::Board).pieces.len() + of(&separate, &Need::Substrate).pieces.len();
    assert_eq!(one.pieces.len(), both);
}

#[test]
fn mesh_is_parted_with_laps_and_cutouts_stay_in() {
    // 3124 × 1234 less 25 on each side: 3074 × 1184. Sheets of 2000 × 1000 along it, laps of 203.2: 2000 and 3074 − 1796.8;
    // across 387.2 would be left, two laps are 406.4, so 980.8 and 406.4. Across it four sheets would do; along it three
    // do, both narrow strips on one.
    let (_, found, findings) = lists(straight());
    let list = of(&found, &Need::ReinforcingMesh);
    assert!(findings.is_empty());
    let sides: Vec<_> = list.pieces.iter().map(|p| (p.length, p.width)).collect();
    assert_eq!(sides, [(2000, 981), (1278, 981), (2000, 407), (1278, 407)]);
    assert_eq!((list.counts.clone(), list.kerf), (vec![3], 0));
    assert!(list.pieces.iter().all(|p| p.part.is_none() && p.may_turn));
    // One sheet of any thickness that holds it whole; sold in rolls alone it is no sheet list.
    let mut d = straight();
    d.supplies
        .put(supply(Need::ReinforcingMesh, 3100.0, 1200.0, 4.0, 900));
    let list = of(&lists(d).1, &Need::ReinforcingMesh);
    assert_eq!((list.pieces.len(), list.counts.clone()), (1, vec![1]));
    let mut d = straight();
    d.supplies.put(Supply {
        form: Form::Roll {
            length: Length::millimetres(15_000.0),
            width: Length::millimetres(1500.0),
        },
        ..supply(Need::ReinforcingMesh, 1.0, 1.0, 1.0, 900)
    });
    assert!(lists(d).1.iter().all(|l| l.need != Need::ReinforcingMesh));
}

#[test]
fn forms_are_stacked_of_the_sheets_that_are_sold() {
    // The half-round of 40 reaches 20 past 19.05: 39.05 are three sheets of 18, two of 20.
    let stacked = |thickness: f64| {
        let mut d = dropped(straight());
        d.counter.profile = placed(EdgeProfile::HalfRound);
        d.counter.turndown = None;
        d.counter.turndown_sides.clear();
        d.counter.thickness = placed(mm(40.0).value);
        d.supplies
            .put(supply(Need::FormPlywood, 2440.0, 1220.0, thickness, 5000));
        let list = of(&lists(d).1, &Need::FormPlywood);
        let layers = list.pieces.iter().filter_map(|p| Some(p.layer?.1)).max();
        (list.material, layers)
    };
    assert_eq!(stacked(18.0), ("plywood 18 mm".to_owned(), Some(3)));
    assert_eq!(stacked(20.0), ("plywood 20 mm".to_owned(), Some(2)));
}
