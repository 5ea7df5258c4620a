//! The plan of the levels: the ground as it was measured, with its contours, peaks, hollows and fall.

use super::shim_plan::{ground_of, name_datum};
use super::signs;
use crate::drawing::fit::Fit;
use crate::drawing::marks::{Mark, lead_to, place_led};
use crate::drawing::outline::frame_corners;
use crate::drawing::page::{LARGE, Page};
use crate::drawing::plans::chains::Lanes;
use crate::drawing::plans::key::Entry;
use crate::drawing::plans::labels;
use crate::drawing::plans::layout::Layout;
use crate::drawing::plans::style::{EDGE, FINE, HIDDEN, STANDING, corners};
use crate::drawing::set::{Drawn, Set};
use crate::drawing::site::shims::{ContourLine, LeanMark, LevelForm, LevelMark, ShimPlan};
use crate::geometry::{Bounds2, Outline, Point2, Vector2};
use crate::plan::Plan;

/// Levels within this distance of the frame are on the plan, millimetres: 8 ft. The others are in the schedule.
const REACH: f64 = 2438.4;
/// Where there are more levels on the plan, only their heights are lettered; where there are far more, only crosses.
const NAMED: usize = 60;
const LETTERED: usize = 150;
/// What is said of so many levels at most stands in the key.
const SAID: usize = 6;
/// A plan drawn smaller than this has no contours: they would leave the levels no room.
const CONTOURED: f64 = 1.0 / 40.0;
/// Two contours' figures stand no nearer to each other, millimetres on the sheet.
const FIGURES: f64 = 12.0;

/// What is on the plan.
struct View<'a> {
    plan: &'a Plan,
    shown: &'a ShimPlan,
    outline: Outline,
    levels: Vec<&'a LevelMark>,
    leans: Vec<&'a LeanMark>,
    contours: &'a [ContourLine],
    built: Bounds2,
}

impl<'a> View<'a> {
    fn new(plan: &'a Plan, shown: &'a ShimPlan) -> Self {
        let outline = Outline::polygon(&frame_corners(plan));
        let window = crate::drawing::occupancy::grown(&outline.bounds(), REACH);
        let levels = shown.levels.iter().filter(|l| holds(&window, l.at));
        let levels: Vec<_> = levels.collect();
        let leans = shown.leans.iter();
        let leans: Vec<_> = leans.filter(|l| holds(&window, l.foot.centre())).collect();
        let places = Bounds2::around(levels.iter().map(|l| l.at));
        let feet = leans.iter().map(|l| l.foot);
        let built = feet.chain(places).fold(outline.bounds(), Bounds2::union);
        Self {
            plan,
            shown,
            outline,
            levels,
            leans,
            contours: &shown.contours,
            built,
        }
    }

    /// All lines and signs: what is lettered later keeps clear of them.
    fn draw(&self, page: &mut Page, fit: &Fit) {
        for contour in self.contours {
            draw_contour(page, fit, contour, &self.built);
        }
        EDGE.closed(page, fit.outline(&self.outline));
        for sleeper in self.plan.sleepers() {
            HIDDEN.boxed(page, &fit.area(&ground_of(self.plan, &sleeper)));
        }
        for lean in &self.leans {
            let foot = fit.area(&lean.foot);
            page.path(
                STANDING.0,
                None,
                STANDING.2,
                corners(&foot),
                true,
                Some(0.85),
            );
            STANDING.boxed(page, &foot);
            signs::arrow(page, foot.centre(), lean.way, 9.0);
        }
        for level in &self.levels {
            draw_level(page, fit, level);
        }
        if let Some(datum) = self.shown.datum {
            signs::datum(page, fit.point(datum));
        }
    }

    fn entries(&self) -> Vec<Entry> {
        entries(self.shown, self.levels.len(), !self.contours.is_empty())
    }

    fn without_contours(&self) -> Vec<Entry> {
        entries(self.shown, self.levels.len(), false)
    }

    fn letter(&self, page: &mut Page, fit: &Fit) {
        if let Some(datum) = self.shown.datum {
            name_datum(page, fit, datum);
        }
        letter_levels(page, fit, &self.levels);
        for lean in &self.leans {
            let area = fit.area(&lean.foot);
            let text = lean.text.clone();
            place_led(page, &[Mark { text, area }]);
        }
        for (run, named) in self.plan.runs.iter().zip(&self.plan.design.runs) {
            let area = fit.area(&run.rectangle(run.framed, (0.0, run.depth)));
            let text = format!("{} run", named.name.value);
            labels::inside(page, &text, LARGE, &area);
        }
        if let Some(fall) = &self.shown.fall {
            let places = places_for_arrow(&fit.area(&self.built));
            if !signs::fall(page, places, fall.down, &fall.text) {
                page.lose(&fall.text);
            }
        }
        let mut figures = Vec::new();
        for contour in self.contours {
            letter_contour(page, fit, contour, &self.built, &mut figures);
        }
    }
}

/// Draws the plan of the levels.
pub fn level_plan(set: &Set, shown: &ShimPlan, title: &str) -> Drawn {
    let Set { plan, frame, .. } = *set;
    let mut view = View::new(plan, shown);
    let (full, bare) = (view.entries(), view.without_contours());
    let mut layout = Layout {
        plan,
        built: view.built,
        room: frame.room(&shown.level_notes),
        lanes: Lanes::round(&view.built, &view.built),
        entries: &full,
        table: None,
    };
    let mut laid = layout.lay(Vec::new());
    if laid.fit.scale.factor < CONTOURED {
        view.contours = &[];
        layout.entries = &bare;
        laid = layout.lay(Vec::new());
    }
    let fit = laid.fit.clone();
    let mut page = frame.page(title, &fit.scale, &shown.level_notes);
    laid.draw(&mut page, &layout);
    view.draw(&mut page, &fit);
    view.letter(&mut page, &fit);
    (page, fit.scale)
}

fn holds(area: &Bounds2, at: Point2) -> bool {
    (0..2).all(|i| at[i] >= area.low[i] && at[i] <= area.high[i])
}

/// The pieces of a contour on the plan.
fn pieces<'a>(
    contour: &'a ContourLine,
    built: &'a Bounds2,
) -> impl Iterator<Item = &'a [Point2; 2]> {
    // Where a level was taken is rounded a little before contours are drawn.
    let area = crate::drawing::occupancy::grown(built, 1.0);
    let inside = move |piece: &&[Point2; 2]| piece.iter().all(|p| holds(&area, *p));
    contour.pieces.iter().filter(inside)
}

fn draw_contour(page: &mut Page, fit: &Fit, contour: &ContourLine, built: &Bounds2) {
    for [a, b] in pieces(contour, built) {
        FINE.line(page, fit.point(*a), fit.point(*b));
    }
}

/// The height of a contour beside its longest piece that has room for it.
fn letter_contour(
    page: &mut Page,
    fit: &Fit,
    contour: &ContourLine,
    built: &Bounds2,
    figures: &mut Vec<Point2>,
) {
    let mut all: Vec<_> = pieces(contour, built).collect();
    all.sort_by(|p, q| (q[1] - q[0]).norm().total_cmp(&(p[1] - p[0]).norm()));
    for [a, b] in all.into_iter().take(40) {
        let middle = fit.point(nalgebra::center(a, b));
        if figures.iter().any(|f| (f - middle).norm() < FIGURES) {
            continue;
        }
        if signs::beside(page, &contour.text, &signs::square(middle, 0.2)) {
            figures.push(middle);
            return;
        }
    }
}

fn draw_level(page: &mut Page, fit: &Fit, level: &LevelMark) {
    let at = fit.point(level.at);
    signs::level(page, at);
    if level.form != LevelForm::Plain {
        signs::peak(page, at, level.form == LevelForm::Peak);
    }
}

/// Peaks and hollows first: they matter most.
fn letter_levels(page: &mut Page, fit: &Fit, levels: &[&LevelMark]) {
    let (said, others): (Vec<&LevelMark>, Vec<&LevelMark>) =
        levels.iter().partition(|l| !l.words.is_empty());
    let others = others.into_iter().filter(|_| levels.len() <= LETTERED);
    for level in said.into_iter().chain(others) {
        let area = signs::room(fit.point(level.at), level.form == LevelForm::Plain);
        let text = if levels.len() <= NAMED || !level.words.is_empty() {
            format!("{}: {}", level.name, level.text)
        } else {
            level.text.clone()
        };
        let mark = Mark { text, area };
        if !signs::beside(page, &mark.text, &area) && !lead_to(page, &mark) {
            page.lose(&mark.text);
        }
    }
}

/// Middles for the arrow of the fall: the middle of the plan first.
fn places_for_arrow(area: &Bounds2) -> impl Iterator<Item = Point2> + use<> {
    let (low, size) = (area.low, area.high - area.low);
    let share = |k: i32| 0.5 + f64::from(k) / 24.0;
    let mut shares: Vec<(i32, i32)> = (-13..=13)
        .flat_map(|i| (-13..=13).map(move |k| (i, k)))
        .collect();
    shares.sort_by_key(|(i, k)| (i * i + k * k, *i, *k));
    shares
        .into_iter()
        .map(move |(i, k)| low + Vector2::new(size.x * share(i), size.y * share(k)))
}

fn entries(shown: &ShimPlan, on_plan: usize, contoured: bool) -> Vec<Entry> {
    let mut entries = vec![
        Entry::line(EDGE, "frame"),
        Entry::line(HIDDEN, "sleeper"),
        Entry::symbol(signs::level_in_key, "level with its height"),
    ];
    if shown.levels.iter().any(|l| l.form != LevelForm::Plain) {
        let text = "peak; hollow: it stands off the plane among the other levels";
        entries.push(Entry::symbol(signs::peaks_in_key, text));
    }
    if shown.datum.is_some() {
        let text = "datum: the highest ground under the island";
        entries.push(Entry::symbol(signs::datum_in_key, text));
    }
    if contoured {
        let text = format!("line of one height, one every {}", shown.interval);
        entries.push(Entry::line(FINE, text));
    }
    if shown.fall.is_some() {
        entries.push(Entry::symbol(
            signs::arrow_in_key,
            "the way the ground falls, by the best-fit plane",
        ));
    }
    if !shown.leans.is_empty() {
        entries.push(Entry::line(
            STANDING,
            "foot of what leans; its arrow shows the way",
        ));
    }
    let far = shown.levels.len() - on_plan.min(shown.levels.len());
    if far > 0 {
        let text = format!("{far} levels farther off are only in the schedule");
        entries.push(Entry::words(text));
    }
    if on_plan > LETTERED {
        entries.push(Entry::words("heights: see the schedule"));
    }
    let said = shown.levels.iter().filter(|l| !l.words.is_empty());
    let said = said.take(SAID).map(|l| format!("{}: {}", l.name, l.words));
    entries.extend(said.map(Entry::words));
    entries.extend(shown.level_words.iter().map(Entry::words));
    entries
}
