//! Screws of panels: to each other, and to their sleepers.

use super::super::row::points;
use super::super::tally::{At, Tally, count};
use crate::catalog::Need;
use crate::parts::PartKind;
use crate::plan::{Panel, Sizes};
use crate::takeoff::asked::{Asked, screw};

/// Studs side by side are joined no farther apart, millimetres: 12 in, common practice.
const SIDE_BY_SIDE: f64 = 304.8;
/// The first and last of those screws, from the stud's end, millimetres: 1 in, common practice.
const FROM_END: f64 = 25.4;
/// Where the other panel has no stud: two screws in its bottom track and two in its top track, common practice.
const INTO_TRACKS: usize = 4;
/// Less steel than this behind a web does not hold a screw, millimetres: twice three diameters of a #8 screw.
const LEAST: f64 = 10.0;
/// Bottom tracks are screwed down no farther apart, millimetres: 24 in, common practice.
const TO_SLEEPER: f64 = 609.6;
/// And so far from their ends, millimetres: 2 in, common practice.
const FROM_TRACK_END: f64 = 50.8;
/// How deep a sleeper screw bites, millimetres: 1 in, common practice.
const BITE: f64 = 25.4;
/// So much of the sleeper is left under its tip, millimetres: 1/8 in, common practice.
const LEFT: f64 = 3.175;

/// By run: panel corners, studs back to back, bottom tracks to sleepers.
pub(super) fn reckon(tally: &mut Tally) {
    let plan = tally.plan;
    let sizes = &plan.sizes;
    let screw = plan.design.trade.fastener.as_str();
    let spacing = tally.spell(SIDE_BY_SIDE);
    for run in 0..plan.runs.len() {
        let own: Vec<&Panel> = plan.panels.iter().filter(|p| p.run == run).collect();
        let mut add = |item: &str, found: usize, what: &str| {
            let reckoned = format!("{what} at {spacing} at most; {screw}");
            tally.add(
                Some(Need::SteelScrew),
                item,
                At::run(run),
                count(found),
                reckoned,
            );
        };
        let corners = own.iter().map(|p| to_others(p, &plan.panels, sizes)).sum();
        add(
            "steel screw, panel corners",
            corners,
            "the end stud of each panel that meets another one, into its stud, or where it has none into its tracks",
        );
        let doubled = own.iter().map(|p| back_to_back(p)).sum();
        add("steel screw, studs back to back", doubled, "web to web");
    }
    sleepers(tally);
}

/// Screws at the ends of a panel that meet another panel's plane.
fn to_others(panel: &Panel, all: &[Panel], sizes: &Sizes) -> usize {
    let ends = [(0.0, -panel.along), (panel.length, panel.along)];
    ends.iter()
        .filter_map(|(p, out)| {
            let at = panel.point(*p, sizes.panel / 2.0);
            let meets = |other: &&Panel| {
                let from = at - other.start;
                let (depth, along) = (from.dot(&other.inward), from.dot(&other.along));
                let facing = out.dot(&other.inward);
                let plane = if facing > 0.0 { 0.0 } else { sizes.panel };
                let beside = -1e-6 < along && along < other.length + 1e-6;
                facing.abs() > 0.5 && (depth - plane).abs() < 1e-3 && beside
            };
            let other = all.iter().find(meets)?;
            let along = (at - other.start).dot(&other.along);
            Some(held(
                other,
                (along - sizes.panel / 2.0, along + sizes.panel / 2.0),
            ))
        })
        .sum()
}

/// Screws into the longest upright of a panel that stands behind a web from p to p.
fn held(panel: &Panel, web: (f64, f64)) -> usize {
    let behind = panel
        .uprights
        .iter()
        .filter(|u| u.p1.min(web.1) - u.p0.max(web.0) > LEAST);
    let longest = behind.map(|u| u.z1 - u.z0).fold(0.0, f64::max);
    points(longest, FROM_END, SIDE_BY_SIDE).max(INTO_TRACKS)
}

/// Screws between studs whose webs touch.
fn back_to_back(panel: &Panel) -> usize {
    let pairs = panel.uprights.iter().flat_map(|a| {
        let b = panel.uprights.iter();
        b.filter(move |b| a.web_high && !b.web_high && (b.p0 - a.p1).abs() < 1e-3)
            .map(move |b| a.z1.min(b.z1) - a.z0.max(b.z0))
    });
    pairs
        .map(|shared| points(shared, FROM_END, SIDE_BY_SIDE))
        .sum()
}

fn sleepers(tally: &mut Tally) {
    let plan = tally.plan;
    if tally.parts(PartKind::Sleeper).next().is_none() {
        return;
    }
    let most = plan.design.trade.sleeper_height.mm() - LEFT;
    let length = screw(tally.units(), plan.sizes.track_thickness, BITE, most);
    let long = tally.spell(length.mm());
    let spacing = tally.spell(TO_SLEEPER);
    for run in 0..plan.runs.len() {
        let own = plan.panels.iter().filter(|p| p.run == run);
        let pieces = own.flat_map(|p| &p.bottom);
        let found = pieces
            .map(|b| points(b.1 - b.0, FROM_TRACK_END, TO_SLEEPER))
            .sum();
        let reckoned =
            format!("bottom tracks, near both ends and at {spacing} at most; {long} long");
        let need = Asked::long(Need::SleeperScrew, length);
        tally.add(need, "sleeper screw", At::run(run), count(found), reckoned);
    }
}
