//! Screws of members: uprights in tracks and crosspieces, tabs, blocking.

use super::super::tally::{At, Tally, count, many};
use crate::catalog::{Need, SectionKind, SteelSection};
use crate::parts::{Part, PartKind};
use crate::plan::{Panel, Sizes, Upright};

/// Screws at each end of an upright, one through each flange of the track; common practice.
const UPRIGHT_END: usize = 2;
/// Screws in each tab and at each end of a track blocking; common practice.
const TAB: usize = 2;

/// By run: ends of uprights, tabs, track blocking.
pub(super) fn reckon(tally: &mut Tally) {
    for run in 0..tally.plan.runs.len() {
        let panels = tally.plan.panels.iter().filter(|p| p.run == run);
        let ends: usize = panels.map(|p| ends_held(p, &tally.plan.sizes)).sum();
        let screw = tally.plan.design.trade.fastener.clone();
        let reckoned = format!(
            "{UPRIGHT_END} at each of {} of uprights in tracks, headers and sills; {screw}",
            many(ends, "end")
        );
        let need = Some(Need::SteelScrew);
        let item = "steel screw, uprights";
        tally.add(
            need,
            item,
            At::run(run),
            count(ends * UPRIGHT_END),
            reckoned,
        );
        let (tabs, blocks) = joints(tally, run);
        let reckoned = format!("{TAB} in each of {}; {screw}", many(tabs, "tab"));
        let need = Some(Need::SteelScrew);
        let item = "steel screw, tabs";
        tally.add(need, item, At::run(run), count(tabs * TAB), reckoned);
        let reckoned = format!(
            "{TAB} at both ends of {} behind board joints; {screw}",
            many(blocks, "piece")
        );
        let need = Some(Need::SteelScrew);
        let item = "steel screw, track blocking";
        tally.add(need, item, At::run(run), count(2 * blocks * TAB), reckoned);
    }
}

/// How many ends of a panel's uprights stand in a track, a header or a sill.
fn ends_held(panel: &Panel, sizes: &Sizes) -> usize {
    let held = |u: &Upright| {
        usize::from(foot_held(panel, sizes, u)) + usize::from(top_held(panel, sizes, u))
    };
    panel.uprights.iter().map(held).sum()
}

fn foot_held(panel: &Panel, sizes: &Sizes, upright: &Upright) -> bool {
    let web = upright.z0 - sizes.track_thickness;
    let on_track = (web - sizes.frame_bottom).abs() < 0.1 && covers(&panel.bottom, upright);
    on_track || on_crosspiece(panel, upright, web)
}

fn top_held(panel: &Panel, sizes: &Sizes, upright: &Upright) -> bool {
    let web = upright.z1 + sizes.track_thickness;
    let on_track = (web - sizes.frame_top).abs() < 0.1 && covers(&panel.top, upright);
    on_track || on_crosspiece(panel, upright, web)
}

fn covers(pieces: &[(f64, f64)], upright: &Upright) -> bool {
    let middle = f64::midpoint(upright.p0, upright.p1);
    pieces.iter().any(|p| p.0 < middle && middle < p.1)
}

fn on_crosspiece(panel: &Panel, upright: &Upright, web: f64) -> bool {
    let near = |c: &&crate::plan::Crosspiece| (c.z - web).abs() < 0.1;
    let mut pieces = panel.crosspieces.iter().filter(near);
    pieces.any(|c| covers(&[(c.p0, c.p1)], upright))
}

/// How many tabs a run's members have, and how many pieces of track blocking it has.
///
/// An end that is too short to be folded is held by a clip with as many screws: it counts as a tab.
fn joints(tally: &Tally, run: usize) -> (usize, usize) {
    let kinds = [
        PartKind::Header,
        PartKind::Sill,
        PartKind::Tie,
        PartKind::Trimmer,
    ];
    let own = |p: &&Part| p.run == Some(run);
    let members = kinds
        .iter()
        .flat_map(|k| tally.parts(*k))
        .filter(own)
        .count();
    let is_track = |p: &&Part| {
        SteelSection::from_designator(&p.section).is_ok_and(|s| s.kind == SectionKind::Track)
    };
    let blocking = tally.parts(PartKind::Blocking).filter(own);
    let (track, stud): (Vec<_>, Vec<_>) = blocking.partition(is_track);
    (2 * (members + stud.len()), track.len())
}
