//! The general notes as they are lettered.

use super::{text, values};
use crate::drawing::{Item, Sheet, Told, check};
use crate::plan::Plan;

fn plan(text: &str) -> Plan {
    crate::plan::lay_out(crate::design::from_text(text).unwrap()).unwrap()
}

const SMALLEST: &str = include_str!("../../../params/smallest.yaml");
const CORNER: &str = include_str!("../../../params/garden-corner.yaml");

fn notes(text: &str, cautions: &[String]) -> Vec<Sheet> {
    let plan = plan(text);
    let assembly = crate::parts::build(&plan);
    let told = Told {
        cautions: cautions.to_vec(),
        ..Told::default()
    };
    let sheets = crate::drawing::sheets(&plan, &assembly, &told);
    sheets
        .into_iter()
        .filter(|s| s.title == "General notes")
        .collect()
}

fn lettered(sheets: &[Sheet]) -> String {
    let items = sheets.iter().flat_map(|s| &s.items);
    let texts = items.filter_map(|item| match item {
        Item::Text { text, .. } => Some(text.as_str()),
        _ => None,
    });
    texts.collect::<Vec<_>>().join(" ")
}

#[test]
fn every_name_and_every_condition_of_the_file_is_known() {
    let plan = plan(SMALLEST);
    for note in text::chapters().iter().flat_map(|c| &c.notes) {
        for name in text::names(&note.text) {
            assert!(values::value(&plan, name).is_some(), "{{{name}}}");
        }
        if let Some(word) = &note.holds_for {
            assert!(values::holds(&plan, word).is_some(), "[{word}]");
        }
        assert!(!values::filled(&plan, &note.text).contains(['{', '}']));
    }
}

#[test]
fn values_come_from_the_design_and_what_is_not_said_is_a_dash() {
    let corner = plan(CORNER);
    let filled = |plan: &Plan, t: &str| values::filled(plan, t);
    assert_eq!(
        filled(&corner, "strength {strength}, cover {cover}."),
        "strength 4,000 psi, cover 3/4\"."
    );
    assert_eq!(
        filled(&corner, "{fuel}; {shut_off}"),
        "natural gas; behind gas hatch"
    );
    assert_eq!(filled(&corner, "{unknown} {cladding}"), "{unknown} 7/8\"");
    let smallest = plan(SMALLEST);
    assert_eq!(filled(&smallest, "{strength}"), "– (not in the file)");
}

#[test]
fn gas_is_spoken_of_where_there_is_gas() {
    let corner = lettered(&notes(CORNER, &[]));
    assert!(corner.contains("natural gas") && !corner.contains("names no gas"));
    let smallest = lettered(&notes(SMALLEST, &[]));
    assert!(smallest.contains("names no gas appliance"));
}

#[test]
fn cautions_are_lettered_whole_however_many_there_are() {
    let caution = |i: usize| format!("caution number {i} says that somebody else decides this");
    let many: Vec<String> = (0..90).map(caution).collect();
    let sheets = notes(SMALLEST, &many);
    assert!(sheets.len() > 1);
    let text = lettered(&sheets);
    for i in 0..90 {
        assert!(text.contains(&format!("caution number {i} says")), "{i}");
    }
    for sheet in &sheets {
        check::texts_are_clear(sheet).unwrap();
    }
}
