//! The build book: one page that shows everything, in one file that needs nothing else.
//!
//! What the page is poured into lies in `templates/book`: its frame, its style, and its script in modules, which are put
//! one behind the other here.

mod island;
mod packed;
mod page;
mod script;
mod spot;

pub use island::{IslandData, island_data};
pub use page::{BookError, build_book, findings_fragment};

use crate::diagnostics::Finding;
use crate::geometry::Point2;
use crate::mesh::{Appearances, Instance, Viewpoint};
use crate::table::Table;
use crate::units::Notation;

/// The island in three dimensions, as far as the page shows it.
#[derive(Clone, Debug)]
pub struct Shown<'a> {
    /// Every part with its surface; findings name them by their place in this list.
    pub parts: Vec<Instance<'a>>,
    /// What the parts look like.
    pub appearances: &'a Appearances,
    /// From where to look.
    pub views: &'a [Viewpoint],
    /// The names of the groups and what people call them, in the order they are built.
    pub groups: Vec<(&'static str, &'static str)>,
    /// For each face the direction out of the island.
    pub outwards: Vec<[f64; 2]>,
    /// Where a part stands, in words, such as `cook run, working side`.
    pub wheres: Vec<String>,
    /// How lengths are spelt.
    pub notation: Notation,
}

/// A drawing that opens when it is asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Leaf {
    /// Its number in its set; may be empty.
    pub number: String,
    /// What it shows.
    pub title: String,
    /// The kind of sheets it belongs to; may be empty.
    pub chapter: String,
    /// The drawing.
    pub svg: String,
}

/// One finding and the parts it is about.
#[derive(Clone, Debug)]
pub struct Found<'a> {
    /// The finding.
    pub finding: &'a Finding,
    /// Numbers of the parts.
    pub parts: Vec<usize>,
}

/// One step of a checklist.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tick {
    /// A name that stays the same between builds.
    pub id: String,
    /// What is done.
    pub name: String,
    /// When, how long, by how many; may be empty.
    pub when: String,
    /// What to be careful of.
    pub cautions: Vec<String>,
    /// What is ticked off within it: for each a name that stays the same, and what it says.
    pub checks: Vec<(String, String)>,
    /// True where work stops until somebody has looked.
    pub hold: bool,
}

/// A chapter of lists.
#[derive(Clone, Debug, Default)]
pub struct Lists<'a> {
    /// Its anchor.
    pub id: &'static str,
    /// Its heading.
    pub title: &'static str,
    /// A sentence under the heading; may be empty.
    pub about: String,
    /// Its checklist.
    pub steps: Vec<Tick>,
    /// Its tables.
    pub tables: Vec<&'a Table>,
    /// Its sheets.
    pub sheets: Vec<Leaf>,
}

/// A folder of files beside the page.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Beside {
    /// The folder.
    pub folder: String,
    /// What it is for.
    pub about: String,
    /// Paths and sizes in bytes.
    pub files: Vec<(String, usize)>,
}

/// A number that one looks at first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// Its anchor.
    pub id: &'static str,
    /// What it is.
    pub name: &'static str,
    /// The number with its unit.
    pub value: String,
    /// What is in it and what is not.
    pub note: String,
}

/// Everything the page shows.
#[derive(Clone, Debug)]
pub struct BuildBook<'a> {
    /// What is built.
    pub title: &'a str,
    /// Place, drawer, revision and date: what is known of them.
    pub facts: Vec<String>,
    /// What it costs and weighs.
    pub figures: Vec<Figure>,
    /// The island.
    pub shown: Shown<'a>,
    /// The line round the island's frame, for the little pictures of where a finding is.
    pub outline: Vec<Point2>,
    /// What was found, in the order of the file.
    pub findings: Vec<Found<'a>>,
    /// The cautions that stand over the findings.
    pub cautions: Vec<String>,
    /// The drawing set.
    pub drawings: Vec<Leaf>,
    /// Which of the drawings are shown where there is no picture in three dimensions, by their chapter.
    pub drawn_views: &'static str,
    /// How to print the template, a sentence each.
    pub printing: Vec<String>,
    /// The template's key and the like.
    pub template: Vec<Leaf>,
    /// The chapters of lists.
    pub lists: Vec<Lists<'a>>,
    /// What lies beside the page.
    pub beside: Vec<Beside>,
    /// What the live view adds; `None` for the build book.
    pub live: Option<&'a Live>,
}

/// What the page of the live view has beside the build book's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Live {
    /// What must come with every write.
    pub token: String,
    /// The file's values.
    pub inputs: Vec<InputGroup>,
}

/// Inputs that belong together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InputGroup {
    /// Their heading.
    pub title: String,
    /// The inputs.
    pub inputs: Vec<Input>,
}

/// A value of the file that can be written otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Its key.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// What it means.
    pub about: String,
    /// What the file says.
    pub value: String,
    /// The words that may stand there; empty where any text of its kind may.
    pub choices: Vec<String>,
}
