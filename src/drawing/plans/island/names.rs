//! Names on the plan of the island: runs, appliances with what they burn, openings, the room behind seats.

use super::openings;
use super::seats::Seats;
use super::services;
use crate::drawing::fit::Fit;
use crate::drawing::marks::{Mark, place_inside, place_led, place_lines};
use crate::drawing::page::{LARGE, LETTERS, Page};
use crate::drawing::plans::labels;
use crate::geometry::{Bounds2, Point2};
use crate::plan::Plan;
use crate::units::Length;

/// Letters everything; what finds no room is left out, and on a `small` plan what finds none without a leader.
pub(super) fn letter(page: &mut Page, plan: &Plan, fit: &Fit, seats: &Seats, small: bool) {
    appliances(page, plan, fit, small);
    runs(page, plan, fit);
    if !small {
        openings_by_place(page, plan, fit);
    }
    behind_seats(page, plan, fit, seats);
}

/// Each appliance's name and what it burns, in its cutout.
fn appliances(page: &mut Page, plan: &Plan, fit: &Fit, small: bool) {
    for cutout in &plan.counter.cutouts {
        let area = fit.area(&cutout.outline.bounds());
        let Some(appliance) = plan.design.appliances.get(cutout.appliance) else {
            continue;
        };
        let mut lines = vec![appliance.name.clone()];
        lines.extend(services::heat(plan, cutout.appliance));
        if !labels::stacked(page, &lines, &area) && !small {
            place_lines(page, &area, &lines);
        }
        // Nothing else is lettered where it would seem to name the appliance.
        page.reserve(area);
    }
}

fn runs(page: &mut Page, plan: &Plan, fit: &Fit) {
    let inner = plan.sizes.panel;
    for (run, named) in plan.runs.iter().zip(&plan.design.runs) {
        let area = fit.area(&run.rectangle(run.framed, (inner, run.depth - inner)));
        labels::inside(page, &format!("{} run", named.name.value), LARGE, &area);
    }
}

/// In front of the face where it opens into room enough, else beside it or at the end of a leader.
fn openings_by_place(page: &mut Page, plan: &Plan, fit: &Fit) {
    for (names, opened) in named_openings(plan) {
        let mark = |bounds: Bounds2| Mark {
            text: names.join(", "),
            area: fit.area(&bounds),
        };
        let in_front = mark(opened.ground(plan));
        if in_front.area.width().min(in_front.area.height()) > LARGE {
            place_inside(page, &in_front, LETTERS);
        } else {
            place_led(page, &[mark(opened.through(plan))]);
        }
    }
}

/// Openings with their names; those that lie one above the other are named together.
fn named_openings(plan: &Plan) -> Vec<(Vec<&str>, openings::InPlan<'_>)> {
    let mut found: Vec<(Vec<&str>, openings::InPlan)> = Vec::new();
    let named = openings::all(plan).into_iter();
    for opened in named.filter(|o| o.opening.is_some()) {
        let through = opened.through(plan);
        let near = |a: Point2, b: Point2| (a - b).norm() < 1.0;
        let same = |b: Bounds2| near(b.low, through.low) && near(b.high, through.high);
        match found
            .iter_mut()
            .find(|(_, other)| same(other.through(plan)))
        {
            Some((names, _)) => names.push(&opened.hole.name),
            None => found.push((vec![&opened.hole.name], opened)),
        }
    }
    found
}

/// How deep the room behind those who sit is, along its limit.
fn behind_seats(page: &mut Page, plan: &Plan, fit: &Fit, seats: &Seats) {
    let Some((depth, who)) = seats.room else {
        return;
    };
    let notation = plan.design.project.units;
    let text = format!(
        "room behind seats {}: {who}",
        notation.spell_with_unit(Length::millimetres(depth))
    );
    let limits = seats.limits().iter();
    labels::along_first(page, &text, limits.map(|l| l.map(|p| fit.point(p))));
}
