//! The framing plan: tracks, ties, trimmers and blocking from above, the uprights in their tracks.

use super::chains::world_chains;
use super::uprights;
use crate::drawing::elevation::FRAMING;
use crate::drawing::fit::Fit;
use crate::drawing::hidden::{Stroke, View};
use crate::drawing::marks::{Mark, place_inside, place_marks};
use crate::drawing::outline::frame_corners;
use crate::drawing::page::{LARGE, LETTERS, Page};
use crate::drawing::plans::chains::Lanes;
use crate::drawing::plans::key::Entry;
use crate::drawing::plans::layout::Layout;
use crate::drawing::plans::style::{HIDDEN, LIMIT, STEEL, corners};
use crate::drawing::plans::{chains, face_marks, labels, walls};
use crate::drawing::scene::{Scene, Sight};
use crate::drawing::set::{Drawn, Set};
use crate::drawing::{Layer, Pen};
use crate::geometry::{Bounds2, Outline, Point2, Vector2};
use crate::parts::{Group, PartKind};
use crate::plan::{BodyOf, Face, PanelOf, Plan};

/// Draws the framing plan.
pub fn framing_plan(set: &Set, title: &str) -> Drawn {
    let Set {
        plan, scene, frame, ..
    } = *set;
    let built = Outline::polygon(&frame_corners(plan)).bounds();
    let notes = notes(plan);
    let chains = world_chains(plan, &built);
    let entries = entries(plan, scene);
    let lanes = Lanes::round(&built, &built);
    let layout = Layout {
        plan,
        built,
        room: frame.room(&notes),
        lanes,
        entries: &entries,
        table: None,
    };
    let laid = layout.lay(chains);
    let fit = laid.fit.clone();
    let mut page = frame.page(title, &fit.scale, &notes);
    laid.draw(&mut page, &layout);
    let sight = scene.look(&View::from_above(), &[], |part| {
        part.group == Group::Framing
    });
    draw_steel(&mut page, &sight, &fit);
    walls::draw(&mut page, plan, &fit, |_| true);
    for area in sleepers_beside_tracks(plan, scene) {
        draw_sleeper(&mut page, plan, &fit, &area);
    }
    draw_bodies(&mut page, plan, &fit);
    if !laid.small {
        uprights::draw(&mut page, plan, &fit);
    }
    chains::draw(&mut page, plan, &fit, (&built, &lanes), &laid.chains);
    name_appliances(&mut page, plan, &fit, laid.small);
    mark_crossings(&mut page, scene, &sight, &fit, laid.small);
    let views = face_marks::views(set, FRAMING);
    face_marks::draw(&mut page, plan, &fit, &views, |_| 0.0);
    name(&mut page, set, &fit);
    (page, fit.scale)
}

fn notes(plan: &Plan) -> Vec<String> {
    let trade = &plan.design.trade;
    let spell = |length| plan.design.project.units.spell_with_unit(length);
    vec![
        format!(
            "Steel from above, counter and substrate left off. Dimensions of the steel frame, out to out; finished faces stand {} outside it. Studs {}, tracks {}.",
            spell(trade.cladding()),
            trade.stud.designator,
            trade.track.designator,
        ),
        format!(
            "Marks: T tie, TR trimmer, BK blocking, all {} with their tops level with the top track; studs at most {} on centre. Sleepers {} × {} lie under every bottom track.",
            trade.stud.designator,
            spell(trade.stud_spacing.value),
            spell(trade.sleeper_width.value),
            spell(trade.sleeper_height.value),
        ),
    ]
}

fn entries(plan: &Plan, scene: &Scene) -> Vec<Entry> {
    let mut entries = vec![Entry::symbol(
        upright_symbol,
        "stud or jamb in its track, cut half way up; headers and sills are on the framing elevations",
    )];
    if !plan.cutouts.is_empty() {
        entries.push(Entry::line(LIMIT, "body of an appliance"));
    }
    if plan.faces.iter().any(|f| f.wall) {
        let text = "wall that a side stands against: no boards, no overhang";
        entries.push(Entry::symbol(walls::symbol, text));
    }
    if !sleepers_beside_tracks(plan, scene).is_empty() {
        entries.push(Entry::line(HIDDEN, "sleeper under the track"));
    }
    entries
}

fn upright_symbol(page: &mut Page, area: &Bounds2) {
    let at = |x: f64, y: f64| area.centre() + Vector2::new(x, y);
    let points = [at(0.8, 2.0), at(-0.8, 2.0), at(-0.8, -2.0), at(0.8, -2.0)];
    STEEL.open(page, crate::drawing::plans::style::sharp(&points));
}

fn draw_steel(page: &mut Page, sight: &Sight, fit: &Fit) {
    let strokes: Vec<_> = sight
        .lines
        .iter()
        .map(|line| Stroke {
            from: line.from,
            to: line.to,
            weight: 0,
        })
        .collect();
    fit.draw(page, &strokes, &[(Layer::Outline, Pen::Thin)]);
}

/// How far a sleeper must stand out beside its track to be drawn, millimetres: less shows as a thick line.
const BESIDE: f64 = 15.0;

/// The sleepers that are not hidden by their tracks, in plan.
fn sleepers_beside_tracks(plan: &Plan, scene: &Scene) -> Vec<Bounds2> {
    let wider = plan.design.trade.sleeper_width.mm() - plan.sizes.panel;
    if wider < BESIDE {
        return Vec::new();
    }
    let sleepers = scene.parts().iter().filter(|p| p.kind == PartKind::Sleeper);
    sleepers
        .filter_map(|part| scene.bounds(&View::from_above(), part))
        .map(|b| Bounds2 {
            low: b.low.xy(),
            high: b.high.xy(),
        })
        .collect()
}

/// The edges of a sleeper but for those that lie under the frame's own faces.
fn draw_sleeper(page: &mut Page, plan: &Plan, fit: &Fit, area: &Bounds2) {
    let under_face = |a: Point2, b: Point2| {
        let on = |f: &Face, p: Point2| (p - f.start).dot(&f.outward).abs() < 1.0;
        plan.faces.iter().any(|f| on(f, a) && on(f, b))
    };
    let corners: Vec<Point2> = corners(area).iter().map(|v| v.at).collect();
    let next = corners.iter().cycle().skip(1);
    for (a, b) in corners
        .iter()
        .zip(next)
        .filter(|(a, b)| !under_face(**a, **b))
    {
        HIDDEN.line(page, fit.point(*a), fit.point(*b));
    }
}

/// Appliances as they hang in the frame.
fn draw_bodies(page: &mut Page, plan: &Plan, fit: &Fit) {
    for body in &plan.bodies {
        if matches!(body.of, BodyOf::Appliance(_)) {
            let bounds = body.bounds(&plan.runs);
            let area = Bounds2 {
                low: bounds.low.xy(),
                high: bounds.high.xy(),
            };
            LIMIT.boxed(page, &fit.area(&area));
        }
    }
}

fn name_appliances(page: &mut Page, plan: &Plan, fit: &Fit, small: bool) {
    for cutout in &plan.counter.cutouts {
        let area = fit.area(&cutout.outline.bounds());
        if let Some(appliance) = plan.design.appliances.get(cutout.appliance) {
            let text = appliance.name.clone();
            if !labels::inside(page, &text, LETTERS, &area) && !small {
                place_inside(page, &Mark { text, area }, LETTERS);
            }
        }
    }
}

/// Names of bulkheads, with the sheets that show them, and of runs.
fn name(page: &mut Page, set: &Set, fit: &Fit) {
    let plan = set.plan;
    // The elevations of bulkheads come in the order of their panels, after those of faces.
    let entries = set.contents.entries.iter();
    let mut sheets = entries.filter(|e| e.chapter == FRAMING && e.planned.face.is_none());
    for panel in &plan.panels {
        if let PanelOf::Bulkhead(number) = panel.of {
            let sheet = sheets.next().map(|e| format!(", sheet {}", e.number));
            let text = format!("bulkhead {}{}", number + 1, sheet.unwrap_or_default());
            let area = fit.area(&uprights::ground(plan, panel));
            place_marks(page, &[Mark { text, area }], &[]);
        }
    }
    // A run's name would seem to name the appliance.
    for cutout in &plan.counter.cutouts {
        page.reserve(fit.area(&cutout.outline.bounds()));
    }
    let inner = plan.sizes.panel;
    for (run, named) in plan.runs.iter().zip(&plan.design.runs) {
        let area = fit.area(&run.rectangle(run.framed, (inner, run.depth - inner)));
        labels::inside(page, &format!("{} run", named.name.value), LARGE, &area);
    }
}

/// Marks of what lies under the counter: no elevation shows it.
fn mark_crossings(page: &mut Page, scene: &Scene, sight: &Sight, fit: &Fit, small: bool) -> usize {
    let crossings = [PartKind::Tie, PartKind::Trimmer, PartKind::Blocking];
    let seen = sight.seen_parts().into_iter();
    let marks = seen
        .map(|(number, seen)| (&scene.parts()[number], seen))
        .filter(|(part, _)| crossings.contains(&part.kind) && part.face.is_none());
    let missing = marks.filter(|(part, seen)| {
        let area = fit.area(seen);
        let text = part.mark.clone();
        !labels::beside(page, &text, &area)
            && (small || place_marks(page, &[Mark { text, area }], &[]) > 0)
    });
    missing.count()
}
