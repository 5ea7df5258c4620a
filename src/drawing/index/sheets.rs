//! The sheets of the index.

use super::layout::{Layout, Row, layout};
use super::north;
use crate::drawing::border::Frame;
use crate::drawing::page::{LARGE, LETTERS, Page, wrap};
use crate::drawing::plans::SitePlan;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::drawing::{Align, Layer, Scale};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::parts::Assembly;
use crate::plan::Plan;

/// What the sheets are titled.
const TITLE: &str = "Index";
/// Height of the site plan's heading with one line of words.
const HEADING: f64 = 11.5;
/// From one line of them to the next.
const LINE: f64 = 4.0;
/// A scale as long as any: rows are broken for it before the scales are known.
const LONGEST: &str = "1 1/2\" = 1'-0\"";

/// Its first sheet: there is always one. How many more there are is known when all others are, see [`complete`].
pub fn planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    vec![one()]
}

fn one() -> Planned {
    Planned {
        stem: "index".to_owned(),
        title: TITLE.to_owned(),
        ..Planned::default()
    }
}

/// All sheets of the index of a set with these other sheets.
pub fn complete(
    plan: &Plan,
    assembly: &Assembly,
    frame: &Frame,
    others: &[String],
) -> Vec<Planned> {
    let needed = |count: usize| {
        let own = (0..count).map(|_| TITLE);
        let titles = own.chain(others.iter().map(String::as_str)).enumerate();
        let rows: Vec<Row> = titles
            .map(|(i, title)| (i + 1, title.to_owned(), LONGEST.to_owned()))
            .collect();
        layout(plan, assembly, frame, &rows).sheets
    };
    // A sheet more is a row more, which may take a sheet more: a few turns at most.
    let mut count = 1;
    for _ in 0..8 {
        let more = needed(count);
        if more <= count {
            break;
        }
        count = more;
    }
    (0..count).map(|_| one()).collect()
}

/// The index laid out for all of its sheets.
#[derive(Clone, Debug)]
pub struct Index {
    laid: Layout,
    /// That of the site plan.
    scale: Scale,
}

impl Index {
    /// Lays it out with the list of the set's sheets; to be called when their scales are known.
    pub fn new(set: &Set) -> Self {
        // The scale of the site plan does not hang on the rows.
        let scale = site(set, &laid(set, &Scale::none())).scale().clone();
        Self {
            laid: laid(set, &scale),
            scale,
        }
    }
}

fn site<'a>(set: &Set<'a>, layout: &Layout) -> SitePlan<'a> {
    SitePlan::new(set.plan, &site_room(set, layout))
}

/// Draws one of them.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let Index { laid, scale } = set.index();
    let scale = scale.clone();
    let own = if number == 0 { scale } else { Scale::none() };
    let mut page = set.frame.page(TITLE, &own, &[]);
    if number == 0 {
        heading(&mut page, set, &laid.site, &own);
        site(set, laid).draw(&mut page);
    }
    for place in laid.laid.iter().filter(|l| l.sheet == number) {
        laid.blocks
            .get(place.block)?
            .draw(&mut page, place.at, place.part);
    }
    Some((page, own))
}

/// The layout with the list of the set's sheets.
fn laid(set: &Set, first: &Scale) -> Layout {
    let rows: Vec<Row> = set
        .contents
        .entries
        .iter()
        .enumerate()
        .map(|(i, entry)| {
            let known = set.scales.get(i).filter(|s| !s.is_empty());
            let own = if entry.within == 0 {
                first.name.clone()
            } else {
                Scale::none().name
            };
            let scale = known.cloned().unwrap_or(own);
            (entry.number, entry.planned.title.clone(), scale)
        })
        .collect();
    layout(set.plan, set.assembly, set.frame, &rows)
}

/// The room of the site plan itself: below its heading, beside the north arrow where there is one.
fn site_room(set: &Set, layout: &Layout) -> Bounds2 {
    let lines = words(set, &layout.site, LONGEST).len().max(1);
    let heading = HEADING + LINE * (lines - 1) as f64;
    Bounds2 {
        low: layout.site.low,
        high: layout.site.high - Vector2::new(arrow(set), heading),
    }
}

/// The room that the north arrow takes, across.
fn arrow(set: &Set) -> f64 {
    set.plan.design.drawings.north.map_or(0.0, |_| north::SIDE)
}

/// What stands below the site plan's title, in lines.
fn words(set: &Set, area: &Bounds2, scale: &str) -> Vec<String> {
    let north = match set.plan.design.drawings.north {
        Some(_) => "",
        None => "; north not given in the file",
    };
    let words = format!("scale {scale}; dashed below the counter: finished faces{north}");
    wrap(&words, LETTERS, area.width() - arrow(set))
}

/// Title and scale of the site plan, and where north is.
fn heading(page: &mut Page, set: &Set, area: &Bounds2, scale: &Scale) {
    let corner = Point2::new(area.low.x, area.high.y);
    let title = corner - Vector2::new(0.0, 1.08 * LARGE);
    page.text(Layer::Table, "Site plan", LARGE, (title, Align::Left, 0.0));
    let mut base = title - Vector2::new(0.0, 1.7 + 1.08 * LETTERS);
    for line in words(set, area, &scale.name) {
        page.text(Layer::Table, &line, LETTERS, (base, Align::Left, 0.0));
        base.y -= LINE;
    }
    if let Some(angle) = set.plan.design.drawings.north {
        let middle = area.high - Vector2::repeat(north::SIDE / 2.0);
        north::draw(page, middle, angle);
    }
}
