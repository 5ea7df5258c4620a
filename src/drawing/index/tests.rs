//! The first sheets of every example.

use crate::drawing::{Item, Sheet, check};
use crate::plan::Plan;

fn index_of(text: &str) -> (Plan, Vec<Sheet>, Vec<Sheet>) {
    let plan = crate::plan::lay_out(crate::design::from_text(text).unwrap()).unwrap();
    let assembly = crate::parts::build(&plan);
    let sheets = crate::drawing::sheets(&plan, &assembly, &crate::drawing::Told::default());
    let (index, others) = sheets.into_iter().partition(|s: &Sheet| s.title == "Index");
    (plan, index, others)
}

fn texts(sheets: &[Sheet]) -> Vec<String> {
    let items = sheets.iter().flat_map(|s| &s.items);
    let texts = items.filter_map(|item| match item {
        Item::Text { text, .. } => Some(text.clone()),
        _ => None,
    });
    texts.collect()
}

/// The corner with another group `drawings`.
fn corner_with(drawings: &str) -> String {
    let lines = CORNER.lines().collect::<Vec<_>>();
    let start = lines
        .iter()
        .position(|l| l.starts_with("drawings:"))
        .unwrap();
    let ends = |l: &&str| !l.starts_with([' ', '#']) && !l.is_empty();
    let rest = lines[start + 1..].iter().position(ends).unwrap() + start + 1;
    let kept = [&lines[..start], &lines[rest..]].concat();
    format!("{}\n{drawings}\n", kept.join("\n"))
}

const CORNER: &str = include_str!("../../../params/garden-corner.yaml");

#[test]
fn the_index_lists_every_sheet_and_what_stands_around() {
    let (plan, index, others) = index_of(&corner_with(""));
    let texts = texts(&index);
    let all = texts.join(" ");
    for sheet in &others {
        assert!(texts.contains(&sheet.number), "{}", sheet.number);
        // A long title goes on in the next line, which comes next.
        assert!(all.contains(&sheet.title), "{}", sheet.title);
    }
    for object in &plan.design.site.objects.as_ref().unwrap().value {
        assert!(
            texts.iter().any(|t| t.starts_with(&object.name)),
            "{}",
            object.name
        );
    }
    assert!(all.contains("north not given"));
}

#[test]
fn on_small_paper_the_index_takes_more_sheets_and_stays_clear() {
    for paper in ["a4", "letter", "a1"] {
        let text = corner_with(&format!("drawings: {{paper: {paper}, north: 20 deg}}"));
        let (_, index, others) = index_of(&text);
        assert!(
            (index.len() > 1) == (paper != "a1"),
            "{paper}: {}",
            index.len()
        );
        for sheet in &index {
            check::texts_are_clear(sheet).unwrap();
        }
        let texts = texts(&index);
        assert!(texts.iter().any(|t| t == "N"));
        for sheet in &others {
            assert!(texts.contains(&sheet.number), "{paper}: {}", sheet.number);
        }
    }
}
