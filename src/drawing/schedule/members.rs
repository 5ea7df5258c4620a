//! The schedule of the frame's members.

use super::spelling::Spelling;
use crate::parts::{Assembly, Group, Part, PartKind};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use std::collections::BTreeMap;

/// The most marks and ranges of marks in one row; what has more goes on in the next.
const MARKS: usize = 24;

/// Equal members: section, kind, cut length in steps, longest first.
type Key<'a> = (&'a str, PartKind, std::cmp::Reverse<i64>);

/// Every member of the frame, equal ones in one row: what it is, section, cut length, how many, which.
///
/// Invariant: the counts add up to the members of the assembly.
pub fn stud_schedule(plan: &Plan, assembly: &Assembly) -> Table {
    let units = plan.design.project.units;
    let mut equal: BTreeMap<Key, Vec<&Part>> = BTreeMap::new();
    for part in assembly.parts.iter().filter(|p| p.group == Group::Framing) {
        let steps = std::cmp::Reverse(units.steps(part.length));
        equal
            .entry((&part.section, part.kind, steps))
            .or_default()
            .push(part);
    }
    let rows = equal
        .into_iter()
        .flat_map(|((section, kind, steps), parts)| {
            let length = units.spell_steps(steps.0);
            let rows = ranges(&parts);
            rows.into_iter().map(move |(count, marks)| {
                vec![
                    Cell::text(kind.name()),
                    Cell::text(section),
                    Cell::text(&length),
                    Cell::count(u32::try_from(count).unwrap_or(u32::MAX)),
                    Cell::text(marks),
                ]
            })
        });
    Table {
        name: "stud-schedule".to_owned(),
        title: "Members of the frame".to_owned(),
        columns: ["member", "section", "cut length", "count", "marks"]
            .map(Column::plain)
            .to_vec(),
        rows: rows.collect(),
    }
}

/// What stands below it.
pub fn stud_notes(plan: &Plan) -> Vec<String> {
    vec![format!(
        "{} Cut lengths, tabs that are folded included. Gloves on: cut steel is sharp.",
        Spelling::of(plan).lengths_are()
    )]
}

/// The marks of equal members in their order, consecutive ones as a range, in rows: how many members, and their marks.
fn ranges(parts: &[&Part]) -> Vec<(usize, String)> {
    let marks: Vec<&str> = parts.iter().map(|p| p.mark.as_str()).collect();
    let runs: Vec<&[&str]> = marks.chunk_by(|a, b| follows(a, b)).collect();
    let spell = |run: &&[&str]| match run {
        [first, .., last] if run.len() > 2 => format!("{first} to {last}"),
        few => few.join(", "),
    };
    let rows = runs.chunks(MARKS).map(|chunk| {
        let spelt: Vec<String> = chunk.iter().map(spell).collect();
        (chunk.iter().map(|run| run.len()).sum(), spelt.join(", "))
    });
    rows.collect()
}

/// True when a mark is the next one after another.
fn follows(before: &str, after: &str) -> bool {
    let split = |mark: &str| {
        let digits = mark.trim_end_matches(|c: char| c.is_ascii_digit()).len();
        let (stem, number) = mark.split_at(digits);
        number.parse::<u64>().ok().map(|n| (stem.to_owned(), n))
    };
    match (split(before), split(after)) {
        (Some((a, m)), Some((b, n))) => a == b && m.checked_add(1) == Some(n),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn consecutive_marks_are_a_range() {
        assert!(follows("C-S09", "C-S10"));
        assert!(!follows("C-S09", "B-S10"));
        assert!(!follows("C-S09", "C-J10"));
        assert!(!follows("C-S09", "C-S11"));
        assert!(!follows("C-S", "C-S"));
    }
}
