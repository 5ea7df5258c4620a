//! Which detail lies on which sheet.

use super::content::Content;
use super::drawing::{self, BESIDE, NOTES};
use super::list::{Detail, Subject, details};
use super::{corner, cutout, edge, foot, opening, tile};
use crate::drawing::border::Frame;
use crate::drawing::dimension::Side;
use crate::drawing::figure::{Arrangement, Caption, Figure, arrange, notes_height};
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::page::Page;
use crate::drawing::scale::Series;
use crate::drawing::scene::Scene;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;

/// Every sheet may hold but one: the largest scale comes first.
const PER_SHEET: usize = 1;
/// Room for the first chain beside a view, and for each further one, millimetres on the paper.
const CHAIN: (f64, f64) = (19.0, 10.0);

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Details";

/// All details laid out.
pub(super) struct Layout {
    pub(super) details: Vec<(Detail, Content)>,
    pub(super) arranged: Arrangement,
}

impl Layout {
    pub(super) fn new(plan: &Plan, frame: &Frame) -> Self {
        let details: Vec<_> = details(plan)
            .into_iter()
            .filter_map(|d| Some((d.clone(), content(plan, &d.subject)?)))
            .collect();
        let figures: Vec<Figure> = details.iter().map(|(d, c)| figure(d, c)).collect();
        let room = frame.room(&notes());
        let series = Series::details(plan.design.project.units);
        Self {
            details,
            arranged: arrange(&figures, &[room], &series, PER_SHEET),
        }
    }
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

fn caption(detail: &Detail, scale: &str) -> Caption {
    Caption {
        sign: detail.number.to_string(),
        title: detail.title.clone(),
        note: scale.to_owned(),
    }
}

fn figure(detail: &Detail, content: &Content) -> Figure {
    let area = &content.window.area;
    let room = |side: Side| match content.chains.iter().filter(|c| c.side == side).count() {
        0 => 2.0,
        count => CHAIN.0 + CHAIN.1 * (count - 1) as f64,
    };
    Figure {
        built: (area.width(), area.height()),
        margins: Margins {
            left: room(Side::Left),
            right: BESIDE + NOTES,
            below: room(Side::Below),
            above: room(Side::Above),
        },
        least_height: notes_height(content.notes.iter().map(|n| n.text.as_str()), NOTES) + 4.0,
        caption: caption(detail, "1 1/2\" = 1'-0\"").size(),
    }
}

/// Which sheets there are.
pub fn planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    let layout = Layout::new(plan, frame);
    let on = |sheet: usize| {
        let pairs = layout.details.iter().zip(&layout.arranged.places);
        let own = pairs.filter(move |(_, place)| place.sheet == sheet);
        own.map(|((detail, _), _)| detail.number.to_string())
            .collect::<Vec<_>>()
    };
    (0..layout.arranged.sheets)
        .map(|sheet| {
            let figures = on(sheet);
            let title = match figures.as_slice() {
                [one] => format!("Detail {one}"),
                [one, two] => format!("Details {one} and {two}"),
                [first, .., last] => format!("Details {first} to {last}"),
                [] => CHAPTER.to_owned(),
            };
            Planned {
                stem: format!("details-{}", sheet + 1),
                title,
                face: None,
                figures,
            }
        })
        .collect()
}

/// Draws one of them.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let layout = Layout::new(set.plan, set.frame);
    let scale = &layout.arranged.scale;
    let title = &set.entry(CHAPTER, number)?.planned.title;
    let mut page = set.frame.page(title, scale, &notes());
    draw_all(&mut page, set.plan, set.scene, &layout, number);
    Some((page, scale.clone()))
}

/// Draws the details of a sheet; says how many texts found no place.
pub(super) fn draw_all(
    page: &mut Page,
    plan: &Plan,
    scene: &Scene,
    layout: &Layout,
    number: usize,
) -> usize {
    let notation = plan.design.project.units;
    let scale = &layout.arranged.scale;
    let mut missing = 0;
    let pairs = layout.details.iter().zip(&layout.arranged.places);
    for ((detail, content), place) in pairs.filter(|(_, place)| place.sheet == number) {
        caption(detail, &scale.name).draw(page, place.caption);
        let fit = Fit::at(scale.clone(), &content.window.area, &place.view);
        missing += drawing::draw(page, scene, content, (notation, &fit, place));
    }
    missing
}
