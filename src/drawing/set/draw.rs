//! Drawing all sheets of the set.

use super::Told;
use super::contents::{Contents, Entry};
use super::families::FAMILIES;
use crate::drawing::border::Frame;
use crate::drawing::index::Index;
use crate::drawing::page::Page;
use crate::drawing::scene::{Look, Scene};
use crate::drawing::schedule::Schedules;
use crate::drawing::{Scale, Sheet, index};
use crate::parts::Assembly;
use crate::plan::Plan;
use std::sync::OnceLock;

/// A sheet without its foot, and the scale its title block names.
pub type Drawn = (Page, Scale);

/// What every sheet is drawn from.
#[derive(Clone, Debug)]
pub struct Set<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// All parts.
    pub assembly: &'a Assembly,
    /// The parts ready for drawing.
    pub scene: &'a Scene<'a>,
    /// Border, title block and room.
    pub frame: &'a Frame<'a>,
    /// All sheets of the set.
    pub contents: &'a Contents,
    /// The scale of each sheet in the order of the contents, once it is drawn; empty before.
    pub scales: &'a [String],
    /// What lies over several sheets, laid out when the first of them is drawn.
    laid: Laid,
}

#[derive(Clone, Debug, Default)]
struct Laid {
    schedules: OnceLock<Schedules>,
    index: OnceLock<Index>,
}

impl Set<'_> {
    /// The entry of a sheet by its chapter and its place in it.
    pub fn entry(&self, chapter: &str, within: usize) -> Option<&Entry> {
        let mut entries = self.contents.entries.iter();
        entries.find(|e| e.chapter == chapter && e.within == within)
    }

    /// The schedules laid out.
    pub fn schedules(&self) -> &Schedules {
        let laid = &self.laid.schedules;
        laid.get_or_init(|| Schedules::new(self.plan, self.assembly, self.frame))
    }

    /// The index laid out; to be asked for when all other sheets are drawn.
    pub fn index(&self) -> &Index {
        self.laid.index.get_or_init(|| Index::new(self))
    }
}

/// Draws the whole set; what is told beside the plan has sheets of its own and a place among the general notes.
///
/// The same plan gives the same sheets, however many cores draw them.
pub fn sheets(plan: &Plan, assembly: &Assembly, told: &Told) -> Vec<Sheet> {
    let scene = Scene::new(assembly);
    let frame = Frame::new(&plan.design).with_told(told);
    let contents = Contents::new(plan, assembly, &frame);
    let mut set = Set {
        plan,
        assembly,
        scene: &scene,
        frame: &frame,
        contents: &contents,
        scales: &[],
        laid: Laid::default(),
    };
    let entries = contents.entries.iter();
    // The index names the scales of all others: it is drawn last.
    let (first, others): (Vec<_>, Vec<_>) = entries.partition(|e| e.chapter == index::CHAPTER);
    let mut drawn = all(&set, &others);
    let scales: Vec<String> = (contents.entries.iter())
        .map(|e| {
            let sheet = drawn.iter().find(|(number, _)| *number == e.number);
            sheet.map_or_else(String::new, |(_, sheet)| sheet.scale.name.clone())
        })
        .collect();
    set.scales = &scales;
    drawn.extend(all(&set, &first));
    drawn.sort_by_key(|(number, _)| *number);
    drawn.into_iter().map(|(_, sheet)| sheet).collect()
}

/// Every view that the set is drawn from, sheet by sheet: the sheet's name, its scale and what was looked at. For those
/// who check what is hidden.
pub fn looks(plan: &Plan, assembly: &Assembly) -> Vec<(String, Scale, Vec<Look>)> {
    let scene = Scene::recording(assembly);
    let frame = Frame::new(&plan.design);
    let contents = Contents::new(plan, assembly, &frame);
    let set = Set {
        plan,
        assembly,
        scene: &scene,
        frame: &frame,
        contents: &contents,
        scales: &[],
        laid: Laid::default(),
    };
    let sheets = contents.entries.iter().filter_map(|entry| one(&set, entry));
    let looked = sheets.map(|sheet| (sheet.name, sheet.scale, scene.take_looks()));
    looked.filter(|(.., looks)| !looks.is_empty()).collect()
}

/// Draws sheets on all cores.
fn all(set: &Set, entries: &[&Entry]) -> Vec<(usize, Sheet)> {
    let workers = std::thread::available_parallelism().map_or(1, |n| n.get().min(8));
    std::thread::scope(|scope| {
        let threads: Vec<_> = (0..workers)
            .map(|worker| {
                scope.spawn(move || {
                    let share = entries.iter().skip(worker).step_by(workers);
                    let drawn = share.filter_map(|entry| Some((entry.number, one(set, entry)?)));
                    drawn.collect::<Vec<_>>()
                })
            })
            .collect();
        let finished = threads.into_iter().map(|thread| match thread.join() {
            Ok(sheets) => sheets,
            Err(panic) => std::panic::resume_unwind(panic),
        });
        finished.flatten().collect()
    })
}

fn one(set: &Set, entry: &Entry) -> Option<Sheet> {
    let family = FAMILIES.iter().find(|f| f.chapter == entry.chapter)?;
    let (mut page, scale) = (family.draw)(set, entry.within)?;
    let title = &entry.planned.title;
    let number = (entry.number, set.contents.entries.len());
    set.frame.draw_foot(&mut page, title, number, &scale);
    let page = page.with_ink(set.plan.design.drawings.ink);
    let number = entry.number.to_string();
    Some(Sheet {
        chapter: entry.chapter,
        ..page.finish(entry.name.clone(), title.clone(), number, scale)
    })
}
