//! The sheets of general notes.

use super::columns::{Block, Columns};
use super::{text, values};
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;

/// What every sheet of notes is titled.
const TITLE: &str = "General notes";

/// Which sheets there are: as many as the notes take.
pub fn planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    let columns = Columns::new(&frame.room(&[]));
    let shared = columns.share(&blocks(plan, &frame.told().cautions, columns));
    let one = |_| Planned {
        stem: "general-notes".to_owned(),
        title: TITLE.to_owned(),
        ..Planned::default()
    };
    (0..columns.sheets(shared.len())).map(one).collect()
}

/// Draws one of them; `None` for a sheet that there is not.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let columns = Columns::new(&set.frame.room(&[]));
    let shared = columns.share(&blocks(set.plan, &set.frame.told().cautions, columns));
    if number >= columns.sheets(shared.len()) {
        return None;
    }
    let scale = Scale::none();
    let mut page = set.frame.page(TITLE, &scale, &[]);
    columns.draw(&mut page, &shared, number);
    Some((page, scale))
}

/// Headings and notes that hold for an island, filled in and numbered through, and the cautions of the checks.
fn blocks(plan: &Plan, cautions: &[String], columns: Columns) -> Vec<Block> {
    let mut blocks = Vec::new();
    let mut number = 0;
    let mut add = |heading: &str, notes: &mut dyn Iterator<Item = String>| {
        for (i, note) in notes.enumerate() {
            if i == 0 {
                blocks.push(Block::Heading(heading.to_owned()));
            }
            number += 1;
            blocks.push(Block::Note(number, columns.lines(&note)));
        }
    };
    for chapter in text::chapters() {
        let holds = |note: &&text::Note| {
            let word = note.holds_for.as_ref();
            word.is_none_or(|w| values::holds(plan, w).unwrap_or(true))
        };
        let notes = chapter.notes.iter().filter(holds);
        add(
            &chapter.heading,
            &mut notes.map(|n| values::filled(plan, &n.text)),
        );
    }
    add(
        "Cautions of the checks",
        &mut cautions.iter().map(|c| sentence(c)),
    );
    blocks
}

/// A caution as a sentence.
fn sentence(caution: &str) -> String {
    let ended = if caution.ends_with('.') { "" } else { "." };
    format!("{caution}{ended}")
}
