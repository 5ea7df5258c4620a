//! The list of sheets, made before anything is drawn: so any sheet can name any other.

use super::families::{FAMILIES, Family};
use crate::drawing::border::Frame;
use crate::drawing::index;
use crate::parts::Assembly;
use crate::plan::Plan;
use std::collections::BTreeSet;

/// What a family of sheets says of one of them before it is drawn.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Planned {
    /// The stem of its file name; one that is taken gets a number.
    pub stem: String,
    /// What it shows.
    pub title: String,
    /// The face it shows, where it shows one.
    pub face: Option<usize>,
    /// The letters or numbers of the figures on it, such as sections or details.
    pub figures: Vec<String>,
}

/// One sheet of the set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its number, counted from 1 through the set.
    pub number: usize,
    /// What kind of sheets it belongs to, such as `Sections`.
    pub chapter: &'static str,
    /// Its place among those of its kind.
    pub within: usize,
    /// The stem of its file name, unique in the set.
    pub name: String,
    /// What it shows, and of what.
    pub planned: Planned,
}

/// All sheets in order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Contents {
    /// The sheets.
    pub entries: Vec<Entry>,
}

impl Contents {
    /// Asks every family for its sheets.
    pub fn new(plan: &Plan, assembly: &Assembly, frame: &Frame) -> Self {
        let mut names = BTreeSet::new();
        let mut entries: Vec<Entry> = Vec::new();
        for (family, sheets) in planned(plan, assembly, frame) {
            for (within, planned) in sheets.into_iter().enumerate() {
                entries.push(Entry {
                    number: entries.len() + 1,
                    chapter: family.chapter,
                    within,
                    name: free_name(&mut names, &planned.stem),
                    planned,
                });
            }
        }
        Self { entries }
    }

    /// The number of the sheet with a figure of a chapter.
    pub fn of_figure(&self, chapter: &str, figure: &str) -> Option<usize> {
        let mut own = self.entries.iter().filter(|e| e.chapter == chapter);
        own.find(|e| e.planned.figures.iter().any(|f| f == figure))
            .map(|e| e.number)
    }
}

/// The sheets of every family. The index lists all others: it comes when they are known.
fn planned(
    plan: &Plan,
    assembly: &Assembly,
    frame: &Frame,
) -> Vec<(&'static Family, Vec<Planned>)> {
    let asked = FAMILIES.iter();
    let mut all: Vec<_> = asked
        .map(|family| (family, (family.plan)(plan, assembly, frame)))
        .collect();
    let others = all.iter().filter(|(f, _)| f.chapter != index::CHAPTER);
    let others: Vec<String> = others
        .flat_map(|(_, sheets)| sheets.iter().map(|s| s.title.clone()))
        .collect();
    for (_, sheets) in all.iter_mut().filter(|(f, _)| f.chapter == index::CHAPTER) {
        *sheets = index::complete(plan, assembly, frame, &others);
    }
    all
}

/// The stem, or the stem with a number where it is taken.
fn free_name(names: &mut BTreeSet<String>, stem: &str) -> String {
    let numbered = (2..).map(|count| format!("{stem}-{count}"));
    let mut tried = std::iter::once(stem.to_owned()).chain(numbered);
    let free = tried.find(|name| !names.contains(name)).unwrap_or_default();
    names.insert(free.clone());
    free
}
