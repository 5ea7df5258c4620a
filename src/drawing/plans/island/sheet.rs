//! The plan of the island as it will stand: counter, appliances, what opens, what stands around.

use super::around::{self, Around};
use super::clearance;
use super::dimensions;
use super::names;
use super::openings;
use super::seats;
use super::services;
use crate::drawing::fit::Fit;
use crate::drawing::outline::finished_corners;
use crate::drawing::page::Page;
use crate::drawing::plans::chains::Lanes;
use crate::drawing::plans::face_marks;
use crate::drawing::plans::key::Entry;
use crate::drawing::plans::layout::Layout;
use crate::drawing::plans::style::{EDGE, FINE, HIDDEN, LIMIT, LYING};
use crate::drawing::plans::{chains, section_marks, walls};
use crate::drawing::set::{Drawn, Set};
use crate::geometry::{Bounds2, Outline};
use crate::plan::{Face, Plan};
use crate::units::Length;

/// Draws the plan of the island.
pub fn island(set: &Set, title: &str) -> Drawn {
    let Set { plan, frame, .. } = *set;
    let corners = finished_corners(plan);
    let finished = Outline::polygon(&corners);
    let counter = plan.counter.outline.bounds();
    let opened = openings::all(plan);
    let rooms = clearance::rooms(plan);
    let seats = seats::seats(plan);
    let grounds = opened.iter().map(|o| o.ground(plan));
    let limits = rooms.iter().map(|r| r.limit(plan));
    let own = grounds
        .chain(limits)
        .chain(seats.ground())
        .fold(finished.bounds().union(counter), Bounds2::union);
    let around = Around::new(plan, &finished.bounds(), own, around::REACH);
    let chains = dimensions::world_chains(plan, &finished.bounds(), &counter);
    let lanes = Lanes::round(&counter, &around.shown);
    let notes = notes();
    let entries = entries(plan, &rooms, !seats.stools.is_empty());
    let layout = Layout {
        plan,
        built: around.shown,
        room: frame.room(&notes),
        lanes,
        entries: &entries,
        table: None,
    };
    let laid = layout.lay(chains);
    let fit = laid.fit.clone();
    let mut page = frame.page(title, &fit.scale, &notes);
    laid.draw(&mut page, &layout);
    around.draw(&mut page, &fit);
    draw_island(&mut page, plan, &fit, &finished, &around);
    for opening in &opened {
        opening.draw(&mut page, plan, &fit);
    }
    for room in &rooms {
        room.draw(&mut page, plan, &fit);
    }
    seats.draw(&mut page, &fit);
    services::draw(&mut page, plan, &fit);
    chains::draw(&mut page, plan, &fit, (&around.shown, &lanes), &laid.chains);
    section_marks::draw(&mut page, set, &fit);
    around.measure(&mut page, plan, &fit, &corners);
    let views = face_marks::views(set, "Finished elevations");
    face_marks::draw(&mut page, plan, &fit, &views, |face| edge_of(plan, face));
    for room in &rooms {
        room.letter(&mut page, plan, &fit);
    }
    names::letter(&mut page, plan, &fit, &seats, laid.small);
    around.name(&mut page, plan, &fit);
    (page, fit.scale)
}

fn notes() -> Vec<String> {
    let text = "Seen from above. Dimensions to finished faces and to the edge of the counter, as the chains are named; cutouts by the appliances' own instructions. Framing has a plan of its own.";
    vec![text.to_owned()]
}

/// What the key explains: only what is drawn.
fn entries(plan: &Plan, rooms: &[clearance::Room], stools: bool) -> Vec<Entry> {
    let below = if plan.cutouts.is_empty() {
        "finished face below it"
    } else {
        "below it: finished face, opening, cutout"
    };
    let mut entries = vec![
        Entry::line(EDGE, "edge of the counter"),
        Entry::line(HIDDEN, below),
    ];
    if !plan.cutouts.is_empty() {
        entries.push(Entry::line(
            LYING,
            "flange of an appliance; door or drawer open",
        ));
    }
    if !rooms.is_empty() {
        let rooms: Vec<_> = rooms.iter().map(|r| r.words(plan)).collect();
        let text = format!(
            "nothing that can burn within, by the appliances' own instructions: {}",
            rooms.join("; ")
        );
        entries.push(Entry::line(LIMIT, text));
    }
    if let Some(letters) = section_marks::words(plan) {
        entries.push(Entry::symbol(section_marks::symbol, letters));
    }
    entries.extend(services::entries(plan));
    if stools {
        let notation = plan.design.project.units;
        let text = format!(
            "stool, {} of counter each, room behind: published kitchen planning guidelines",
            notation.spell_with_unit(Length::millimetres(seats::SEAT))
        );
        entries.push(Entry::symbol(stool_symbol, text));
    }
    entries
}

fn stool_symbol(page: &mut Page, area: &Bounds2) {
    FINE.circle(page, area.centre(), area.height() / 2.0);
}

/// Counter, faces below it, cutouts and flanges.
fn draw_island(page: &mut Page, plan: &Plan, fit: &Fit, finished: &Outline, around: &Around) {
    walls::draw(page, plan, fit, |face| !around.has_wall_at(face));
    EDGE.closed(page, fit.outline(&plan.counter.outline));
    HIDDEN.closed(page, fit.outline(finished));
    for cutout in &plan.counter.cutouts {
        if !cutout.open {
            HIDDEN.closed(page, fit.outline(&cutout.outline));
        }
        LYING.closed(page, fit.outline(&cutout.flange));
    }
}

/// How far outside a face of the frame the counter ends.
fn edge_of(plan: &Plan, face: &Face) -> f64 {
    let sides = plan.counter.sides.iter();
    let own = sides.filter(|s| plan.faces.get(s.face).is_some_and(|f| f.mark == face.mark));
    let outs = own.map(|s| (s.start - face.start).dot(&face.outward));
    outs.fold(0.0, f64::max)
}
