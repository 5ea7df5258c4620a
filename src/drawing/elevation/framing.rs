//! The framing of a face: its panels as one sees them from outside before the boards go on. Bulkheads are drawn in the
//! same way.

use super::heights;
use super::panel_view::PanelView;
use super::stretch::Stretch;
use super::window::Window;
use crate::drawing::dimension::{Axis, Side, draw_stack};
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::hidden::Stroke;
use crate::drawing::marks::{Mark, place_lines, place_marks};
use crate::drawing::page::Page;
use crate::drawing::scene::{Scene, Sight};
use crate::drawing::set::{Drawn, Set};
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Outline, Point2};
use crate::parts::Part;
use crate::plan::{Face, FaceOpening, Plan};
use crate::units::Length;

/// Room round the view for its chains, millimetres.
pub(super) const MARGINS: Margins = Margins {
    left: 32.0,
    right: heights::LEVELS,
    below: 44.0,
    above: 18.0,
};

/// Draws a stretch of the framing of the panels that a view is of; the sheet's heading and foot are the frame's. `None`
/// where there is no steel.
pub fn framing(set: &Set, of: &PanelView, sheet: &Stretch, title: &str) -> Option<Drawn> {
    let (plan, scene, frame, window) = (set.plan, set.scene, set.frame, &sheet.window);
    let notation = plan.design.project.units;
    let view = of.view();
    let is_there = |part: &Part| scene.bounds(&view, part).is_some_and(|b| window.meets(&b));
    let sight = scene.look(&view, &[], |part| {
        of.shows(plan, scene, part) && is_there(part)
    });
    let sight = window.sight(sight);
    let (low, high) = of.reach();
    let built = Bounds2 {
        low: Point2::new(low, 0.0),
        high: Point2::new(high, plan.levels.frame_top),
    };
    let seen = sight.bounds()?.union(window.clipped(&built));
    let notes = notes(plan, scene, of, &sight);
    // The counter's level is marked above the steel.
    let mut marked = seen;
    marked.high.y = marked.high.y.max(plan.levels.counter_top);
    let fit = window.fit(notation, &marked, &frame.room(&notes), MARGINS);
    let mut page = frame.page(title, &fit.scale, &notes);
    let face = window.face(&of.face);
    draw_steel(&mut page, plan, scene, of, &sight, &fit);
    draw_cuts(&mut page, plan, &face, &fit, window);
    heights::draw_ground(&mut page, &fit, &seen);
    let area = fit.area(&seen);
    // Above the levels, which are lettered beside the right one.
    let above = fit.y(marked.high.y) + heights::RAISED;
    sheet.draw_match_lines(&mut page, &fit, &area, above);
    draw_chains(&mut page, plan, of, window, &fit, &area);
    let top = plan.levels.frame_top;
    heights::draw_heights(&mut page, plan, &face, &fit, area.low.x, top);
    heights::draw(&mut page, plan, &fit, area.high.x);
    name_openings(&mut page, plan, &face, &fit, window);
    mark_members(&mut page, plan, scene, of, &sight, &fit);
    Some((page, fit.scale))
}

/// What the letters of the marks mean, and what is used.
fn notes(plan: &Plan, scene: &Scene, of: &PanelView, sight: &Sight) -> Vec<String> {
    let trade = &plan.design.trade;
    let mut kinds: Vec<_> = sight
        .seen_parts()
        .into_iter()
        .map(|(number, _)| &scene.parts()[number])
        .filter(|part| of.owns(plan, scene, part))
        .map(|part| (part.kind, letters_of(&part.mark), part.kind.name()))
        .collect();
    kinds.sort_unstable();
    kinds.dedup();
    let spelt: Vec<_> = kinds
        .iter()
        .map(|(_, letters, name)| format!("{letters} {name}"))
        .collect();
    let cut = of.face.openings.iter().any(|o| !o.is_framed(&plan.sizes));
    let dashed = if cut {
        " Dashed: cut through the board only."
    } else {
        ""
    };
    vec![
        format!("Marks: {}.{dashed}", spelt.join(", ")),
        format!(
            "Studs, jambs and cripples {}, tracks, headers and sills {}; studs at most {} on centre, marked ends down so that punch-outs line up.",
            trade.stud.designator,
            trade.track.designator,
            plan.design
                .project
                .units
                .spell_with_unit(trade.stud_spacing.value),
        ),
    ]
}

/// The letters of a mark such as `C-S07`: what stands between the run's letters and the number.
fn letters_of(mark: &str) -> &str {
    let own = mark.rsplit('-').next().unwrap_or(mark);
    own.trim_end_matches(|c: char| c.is_ascii_digit())
}

fn draw_steel(
    page: &mut Page,
    plan: &Plan,
    scene: &Scene,
    of: &PanelView,
    sight: &Sight,
    fit: &Fit,
) {
    let own: Vec<bool> = scene
        .parts()
        .iter()
        .map(|part| of.owns(plan, scene, part))
        .collect();
    let strokes: Vec<_> = sight
        .lines
        .iter()
        .map(|line| Stroke {
            from: line.from,
            to: line.to,
            weight: u8::from(own[line.of]),
        })
        .collect();
    let pens = [(Layer::Detail, Pen::Thin), (Layer::Outline, Pen::Medium)];
    fit.draw(page, &strokes, &pens);
}

/// Vents and boxes are cut through the board only: no steel shows them, so they are drawn dashed.
fn draw_cuts(page: &mut Page, plan: &Plan, face: &Face, fit: &Fit, window: &Window) {
    for opening in face.openings.iter().filter(|o| !o.is_framed(&plan.sizes)) {
        let area = fit.area(&window.clipped(&Bounds2 {
            low: Point2::new(opening.s0, opening.z0),
            high: Point2::new(opening.s1, opening.z1),
        }));
        let (low, high) = (area.low, area.high);
        let outline = Outline::rectangle(low.x, low.y, high.x, high.y);
        let points = outline.vertices().to_vec();
        page.path(
            Layer::Hidden,
            Some(Pen::Thin),
            Dash::Dashed,
            points,
            true,
            None,
        );
    }
}

/// Three tiers below: the stud grid, edges of openings, overall.
fn draw_chains(
    page: &mut Page,
    plan: &Plan,
    of: &PanelView,
    window: &Window,
    fit: &Fit,
    area: &Bounds2,
) -> usize {
    let notation = plan.design.project.units;
    let (low, high) = of.reach();
    let ends = [low, high];
    let grid: Vec<f64> = ends.into_iter().chain(of.grid(plan)).collect();
    let edges = of.face.openings.iter().flat_map(|o| [o.s0, o.s1]);
    let openings: Vec<f64> = ends.into_iter().chain(edges).collect();
    let chain = |name: &str, built: &[f64]| window.chain(notation, name, built, fit);
    let tiers: Vec<_> = [
        chain("stud grid", &grid).filter(|_| grid.len() > 2),
        chain("openings", &openings).filter(|_| openings.len() > 2),
        chain("frame overall", &ends),
    ]
    .into_iter()
    .flatten()
    .collect();
    let axis = Axis {
        side: Side::Below,
        edge: area.low.y,
    };
    draw_stack(page, axis, &tiers).1
}

/// The name and clear size of every opening, inside it.
fn name_openings(page: &mut Page, plan: &Plan, face: &Face, fit: &Fit, window: &Window) {
    let notation = plan.design.project.units;
    let spell = |mm: f64| notation.spell(Length::millimetres(mm));
    for opening in &face.openings {
        let FaceOpening { s0, s1, z0, z1, .. } = *opening;
        let area = fit.area(&window.clipped(&Bounds2 {
            low: Point2::new(s0, z0),
            high: Point2::new(s1, z1),
        }));
        let size = format!("{} × {} clear", spell(s1 - s0), spell(z1 - z0));
        place_lines(page, &area, &[opening.name.clone(), size]);
    }
}

/// Marks on the members, tracks last, each kind from left to right.
fn mark_members(
    page: &mut Page,
    plan: &Plan,
    scene: &Scene,
    of: &PanelView,
    sight: &Sight,
    fit: &Fit,
) -> usize {
    let (own, others): (Vec<_>, Vec<_>) = sight
        .seen_parts()
        .into_iter()
        .partition(|(number, _)| of.owns(plan, scene, &scene.parts()[*number]));
    // A mark on another panel, or in a hole in the boards, would seem to name that.
    let mut others: Vec<_> = others.iter().map(|(_, seen)| fit.area(seen)).collect();
    let cuts = of
        .face
        .openings
        .iter()
        .filter(|o| !o.is_framed(&plan.sizes));
    others.extend(cuts.map(|o| {
        fit.area(&Bounds2 {
            low: Point2::new(o.s0, o.z0),
            high: Point2::new(o.s1, o.z1),
        })
    }));
    let mut marks: Vec<_> = own
        .into_iter()
        .map(|(number, seen)| {
            let part = &scene.parts()[number];
            let mark = Mark {
                text: part.mark.clone(),
                area: fit.area(&trunk(sight, number, &seen)),
            };
            (part.kind, mark)
        })
        .collect();
    marks.sort_by(|(kind, a), (other, b)| {
        kind.cmp(other)
            .then(a.area.low.x.total_cmp(&b.area.low.x))
            .then(a.area.low.y.total_cmp(&b.area.low.y))
    });
    let marks: Vec<_> = marks.into_iter().map(|(_, mark)| mark).collect();
    place_marks(page, &marks, &others)
}

/// What is seen of a member without the tabs folded up or down at its ends: as high as its long level lines reach.
fn trunk(sight: &Sight, number: usize, seen: &Bounds2) -> Bounds2 {
    let long = 0.5 * seen.width();
    if seen.height() > long {
        return *seen;
    }
    let own = sight.lines.iter().filter(|line| line.of == number);
    let heights = own.filter(|line| {
        let way = (line.to - line.from).abs();
        line.seen && way.y < 0.1 && way.x > long
    });
    let (low, high) = heights.fold((seen.high.y, seen.low.y), |(low, high), line| {
        (low.min(line.from.y), high.max(line.from.y))
    });
    if low >= high {
        return *seen;
    }
    Bounds2 {
        low: Point2::new(seen.low.x, low),
        high: Point2::new(seen.high.x, high),
    }
}
