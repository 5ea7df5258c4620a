//! Tables stay in their cells and in their area.

use super::*;
use crate::catalog::PaperKind;
use crate::drawing::{Item, Scale, Sheet, check, lettering, occupancy};
use crate::table::Column;
use proptest::prelude::*;

fn area(x0: f64, y0: f64, x1: f64, y1: f64) -> Bounds2 {
    Bounds2 {
        low: Point2::new(x0, y0),
        high: Point2::new(x1, y1),
    }
}

fn page() -> Page {
    Page::new(PaperKind::A3.landscape(), area(10.0, 10.0, 410.0, 287.0))
}

fn sheet(page: Page) -> Sheet {
    page.finish("s".into(), "s".into(), "1".into(), Scale::full())
}

fn table(rows: usize) -> Table {
    let cells = |i: usize| {
        vec![
            Cell::text(format!("C-S{i:02}")),
            Cell::text("stud"),
            Cell::number(i as f64 * 7.0, 1),
            Cell::Empty,
        ]
    };
    Table {
        name: "studs".into(),
        title: "Studs of the cook run".into(),
        columns: vec![
            Column::plain("mark"),
            Column::plain("what it is"),
            Column::with_unit("length", "mm"),
            Column::plain("note"),
        ],
        rows: (0..rows).map(cells).collect(),
    }
}

fn texts(sheet: &Sheet) -> Vec<(&str, Bounds2)> {
    let texts = sheet.items.iter().filter_map(|item| {
        let Item::Text { text, .. } = item else {
            return None;
        };
        Some((text.as_str(), occupancy::box_of(item)?))
    });
    texts.collect()
}

#[test]
fn numbers_end_under_each_other_and_nothing_is_a_dash() {
    let grid = Grid::new(&table(12), 200.0);
    let mut page = page();
    grid.draw(&mut page, Point2::new(50.0, 250.0), grid.whole());
    let sheet = sheet(page);
    check::texts_are_clear(&sheet).unwrap();
    let texts = texts(&sheet);
    let ends = |t: &str| texts.iter().find(|(u, _)| *u == t).unwrap().1.high.x;
    assert!((ends("7.0") - ends("77.0")).abs() < 1e-9);
    assert_eq!(texts.iter().filter(|(t, _)| *t == NOTHING).count(), 12);
    assert!(grid.has_dashes());
}

#[test]
fn a_long_table_goes_on_and_says_so() {
    let grid = Grid::new(&table(40), 200.0).with_notes(["– the file does not say"]);
    let mut from = 0;
    let mut parts = Vec::new();
    while let Some(part) = grid.part_that_fits(from, 100.0) {
        assert!(grid.height_of(part) <= 100.0 + 1e-9);
        parts.push(part);
        from = part.to;
        if from == grid.rows() {
            break;
        }
    }
    // 100 mm less title 6.5 and heading 5.325 hold 16 rows of 5.325.
    let ends: Vec<_> = parts.iter().map(|p| p.to).collect();
    assert_eq!(ends, [16, 32, 40]);
    let mut page = page();
    grid.draw(&mut page, Point2::new(50.0, 250.0), parts[1]);
    let sheet = sheet(page);
    let texts = texts(&sheet);
    assert!(
        texts
            .iter()
            .any(|(t, _)| *t == "Studs of the cook run (continued)")
    );
    assert!(texts.iter().any(|(t, _)| *t == "C-S16"));
    assert!(!texts.iter().any(|(t, _)| *t == "C-S15" || *t == "C-S32"));
    assert!(!texts.iter().any(|(t, _)| t.contains("does not say")));
    assert_eq!(grid.part_that_fits(0, 12.0), None);
}

#[test]
fn a_free_place_is_found_beside_what_is_drawn() {
    let grid = Grid::new(&table(10), 200.0);
    let mut page = page();
    page.reserve(area(200.0, 10.0, 410.0, 200.0));
    let at = grid
        .room_on(&page, &area(10.0, 10.0, 400.0, 280.0), 2.0)
        .unwrap();
    grid.draw(&mut page, at, grid.whole());
    assert!(at.x + grid.width() <= 198.0 || at.y - grid.height() >= 202.0);
    let full = Grid::new(&table(60), 200.0);
    assert!(
        full.room_on(&page, &area(10.0, 10.0, 400.0, 280.0), 2.0)
            .is_none()
    );
}

fn word() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z]{0,9}( [a-zA-Z]{1,14}){0,6}",
        "[0-9]{1,4}(\\.[0-9])?",
        "[A-Z]-[SJK][0-9]{2}",
        "[W]{20,60}",
        Just(String::new()),
    ]
}

proptest! {
    #[test]
    fn tables_never_leave_their_area_and_texts_never_their_cell(
        columns in 1_usize..9,
        words in proptest::collection::vec(word(), 1..160),
        width in 90.0_f64..380.0,
    ) {
        let rows = words.chunks(columns).filter(|c| c.len() == columns);
        let rows: Vec<Vec<Cell>> = rows.map(|c| c.iter().map(Cell::text).collect()).collect();
        let headings = words.iter().cycle().take(columns);
        let table = Table {
            name: "t".into(),
            title: words[0].clone(),
            columns: headings.map(|w| Column::with_unit(w, "mm")).collect(),
            rows,
        };
        let grid = Grid::new(&table, width).with_notes(words.first());
        prop_assert!(grid.width() <= width + 1e-6 && grid.full_width() <= width + 1e-6);
        let mut from = 0;
        loop {
            let Some(part) = grid.part_that_fits(from, 240.0) else {
                return Err(TestCaseError::fail("a row higher than a sheet"));
            };
            let mut page = page();
            let at = Point2::new(20.0, 280.0);
            grid.draw(&mut page, at, part);
            let drawn = sheet(page);
            check::texts_are_clear(&drawn).map_err(TestCaseError::fail)?;
            let allowed = area(20.0, 280.0 - grid.height_of(part), 20.0 + width, 280.0);
            for (text, b) in texts(&drawn) {
                let inside = b.low.x >= allowed.low.x - 0.01 && b.high.x <= allowed.high.x + 0.01
                    && b.low.y >= allowed.low.y - 0.01 && b.high.y <= allowed.high.y + 0.01;
                prop_assert!(inside, "'{text}' leaves the area");
            }
            from = part.to;
            if from >= grid.rows() {
                break;
            }
        }
        prop_assert!(lettering::width("x", LETTERS) > 0.0);
    }
}
