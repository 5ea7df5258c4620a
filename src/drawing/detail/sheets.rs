//! Which detail lies on which sheet.

use super::content::Content;
use super::list::{Detail, Subject, details};
use super::{corner, cutout, drawing, edge, foot, opening, tile};
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::dimension::Side;
use crate::drawing::figure::{Caption, Kind, Sheets, Shown, Wishes};
use crate::drawing::fit::Margins;
use crate::drawing::page::Page;
use crate::drawing::scale::Series;
use crate::drawing::scene::Scene;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::geometry::Bounds2;
use crate::parts::Assembly;
use crate::plan::Plan;

/// Every sheet may hold but one: the largest scale comes first.
const PER_SHEET: usize = 1;
/// Room for the first chain beside a view, and for each further one, millimetres on the paper.
const CHAIN: (f64, f64) = (19.0, 10.0);

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Details";

const KIND: Kind = Kind {
    one: "Detail",
    many: CHAPTER,
    beside: 5.0,
    columns: &[62.0, 90.0],
};

/// A detail with what it shows.
#[derive(Clone, Debug)]
pub(super) struct Pictured {
    pub detail: Detail,
    pub content: Content,
}

/// All details laid out.
pub(super) fn layout(plan: &Plan, frame: &Frame) -> Sheets<Pictured> {
    let pictured = details(plan).into_iter().filter_map(|detail| {
        let content = content(plan, &detail.subject)?;
        Some(Pictured { detail, content })
    });
    let wishes = Wishes {
        series: Series::details(plan.design.project.units),
        per_sheet: PER_SHEET,
        largest_base: 1.0,
    };
    Sheets::new(KIND, pictured.collect(), frame.room(&notes()), &wishes)
}

/// What is said on every sheet of details.
fn notes() -> Vec<String> {
    vec!["Cut through the parts as they are made; steel is drawn black. What is marked common practice is no code.".to_owned()]
}

fn content(plan: &Plan, subject: &Subject) -> Option<Content> {
    match *subject {
        Subject::Edge(spot, side) => edge::content(plan, spot, side),
        Subject::Base(spot) => foot::foot(plan, spot),
        Subject::Track(spot) => foot::track(plan, spot),
        Subject::Fold(face, number) => opening::fold(plan, face, number),
        Subject::Jamb(face, number) => opening::jamb(plan, face, number),
        Subject::Head(face, number) => opening::head(plan, face, number),
        Subject::Cutout(number) => cutout::content(plan, number),
        Subject::Inward(face) => corner::inward(plan, face),
        Subject::Outward(face) => corner::outward(plan, face),
        Subject::Tile(spot) => tile::content(plan, spot),
    }
}

impl Shown for Pictured {
    fn sign(&self) -> String {
        self.detail.number.to_string()
    }

    fn area(&self) -> Bounds2 {
        self.content.window.area
    }

    fn margins(&self) -> Margins {
        let chains = &self.content.chains;
        let room = |side: Side| match chains.iter().filter(|c| c.side == side).count() {
            0 => 2.0,
            count => CHAIN.0 + CHAIN.1 * (count - 1) as f64,
        };
        Margins {
            left: room(Side::Left),
            right: 0.0,
            below: room(Side::Below),
            above: room(Side::Above),
        }
    }

    fn texts(&self) -> Vec<String> {
        self.content.notes.iter().map(|n| n.text.clone()).collect()
    }

    fn caption(&self, scale: &Scale) -> Caption {
        Caption {
            sign: self.sign(),
            title: self.detail.title.clone(),
            note: scale.name.clone(),
        }
    }
}

/// Which sheets there are.
pub fn planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    layout(plan, frame).planned()
}

/// Draws one of them.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let layout = layout(set.plan, set.frame);
    let scale = layout.scale(number);
    let title = &set.entry(CHAPTER, number)?.planned.title;
    let mut page = set.frame.page(title, &scale, &notes());
    draw_all(&mut page, set.plan, set.scene, (&layout, number));
    Some((page, scale))
}

/// Draws the details of a sheet; says how many texts found no place.
pub(super) fn draw_all(
    page: &mut Page,
    plan: &Plan,
    scene: &Scene,
    (layout, number): (&Sheets<Pictured>, usize),
) -> usize {
    let notation = plan.design.project.units;
    layout.draw(page, number, |page, pictured, (fit, column)| {
        drawing::draw(page, scene, &pictured.content, (notation, fit, column))
    })
}
