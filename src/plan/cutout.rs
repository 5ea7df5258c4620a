//! Cutouts: the holes in the counter.

use super::RunPlan;
use crate::design::{Appliance, Design, Front};
use crate::diagnostics::Finding;
use crate::units::Length;

/// The hole that an appliance drops into, a rectangle in its run's coordinates, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cutout {
    /// Number of the appliance in the design.
    pub appliance: usize,
    /// Number of its run.
    pub run: usize,
    /// Left edge.
    pub u0: f64,
    /// Right edge.
    pub u1: f64,
    /// Edge nearest the cook; for an open front the counter's front edge.
    pub v0: f64,
    /// Edge farthest from the cook.
    pub v1: f64,
    /// Radius of its corners; an open front has only the two far ones.
    pub radius: f64,
    /// True when it is open to the counter's front edge.
    pub open: bool,
}

/// Places every cutout and refuses those that leave their run or meet the steel of its panels.
pub(super) fn place(design: &Design, runs: &[RunPlan], findings: &mut Vec<Finding>) -> Vec<Cutout> {
    let cutouts: Vec<_> = design
        .appliances
        .iter()
        .enumerate()
        .map(|(i, a)| one(design, runs, i, a))
        .collect();
    for cutout in &cutouts {
        check_sides(design, runs, cutout, findings);
        check_depth(design, runs, cutout, findings);
        check_body(design, cutout, findings);
    }
    check_pairs(design, &cutouts, findings);
    cutouts
}

fn one(design: &Design, runs: &[RunPlan], index: usize, a: &Appliance) -> Cutout {
    let middle = a.station.along(runs[a.run].length);
    let half = a.cutout_width.mm() / 2.0;
    let (v0, v1, open) = match &a.front {
        Front::Closed { setback } => (setback.mm(), setback.mm() + a.cutout_depth.mm(), false),
        Front::Open { reach, .. } => (
            -(design.trade.cladding() + design.counter.overhang.working.value).mm(),
            reach.mm(),
            true,
        ),
    };
    Cutout {
        appliance: index,
        run: a.run,
        u0: middle - half,
        u1: middle + half,
        v0,
        v1,
        radius: a.corner_radius.mm().min(half),
        open,
    }
}

/// A cutout stays between the end panels of its run's frame.
fn check_sides(design: &Design, runs: &[RunPlan], cutout: &Cutout, findings: &mut Vec<Finding>) {
    let a = &design.appliances[cutout.appliance];
    let panel = design.trade.track.depth.mm();
    let (low, high) = runs[cutout.run].framed;
    let (low, high) = (low + panel, high - panel);
    let spell = |mm: f64| {
        design
            .project
            .units
            .spell_with_unit(Length::millimetres(mm))
    };
    if cutout.u1 - cutout.u0 > high - low {
        findings.push(
            Finding::error(
                "plan-cutout-end",
                &a.cutout_width.place,
                format!(
                    "the cutout of '{}' is wider than the {} clear between the ends of its run",
                    a.name,
                    spell((high - low).max(0.0))
                ),
            )
            .hint("choose a longer run or a smaller appliance"),
        );
    } else if cutout.u0 < low - 1e-6 || cutout.u1 > high + 1e-6 {
        let half = (cutout.u1 - cutout.u0) / 2.0;
        findings.push(
            Finding::error(
                "plan-cutout-end",
                &a.station.place,
                format!(
                    "the cutout of '{}' passes the end or the corner of its run",
                    a.name
                ),
            )
            .hint(format!(
                "its middle must stand between {} and {} from the left end",
                spell(low + half),
                spell(high - half)
            )),
        );
    }
}

/// A cutout stays between the long panels.
fn check_depth(design: &Design, runs: &[RunPlan], cutout: &Cutout, findings: &mut Vec<Finding>) {
    let a = &design.appliances[cutout.appliance];
    let panel = design.trade.track.depth.mm();
    let back = runs[cutout.run].depth - panel;
    let spell = |mm: f64| {
        design
            .project
            .units
            .spell_with_unit(Length::millimetres(mm))
    };
    if let Front::Closed { setback } = &a.front
        && cutout.v0 < panel - 1e-6
    {
        findings.push(
            Finding::error(
                "plan-cutout-rail",
                &setback.place,
                format!(
                    "the cutout of '{}' meets the frame of the working side",
                    a.name
                ),
            )
            .hint(format!("set it back {} or more", spell(panel))),
        );
    }
    if cutout.v1 > back + 1e-6 {
        let place = match &a.front {
            Front::Closed { .. } => &a.cutout_depth.place,
            Front::Open { reach, .. } => &reach.place,
        };
        findings.push(
            Finding::error(
                "plan-cutout-rail",
                place,
                format!(
                    "the cutout of '{}' meets the frame of the seating side",
                    a.name
                ),
            )
            .hint(format!(
                "it may reach {} from the working face of the frame",
                spell(back)
            )),
        );
    }
}

/// What drops in must pass the hole.
fn check_body(design: &Design, cutout: &Cutout, findings: &mut Vec<Finding>) {
    let a = &design.appliances[cutout.appliance];
    if a.body_width.mm() > a.cutout_width.mm() + 1e-6 {
        findings.push(
            Finding::error(
                "plan-body",
                &a.body_width.place,
                format!("the body of '{}' is wider than its cutout", a.name),
            )
            .hint("a drop-in body passes its cutout: check both against the maker's sheet"),
        );
    }
    if !cutout.open && a.body_depth.mm() > a.cutout_depth.mm() + 1e-6 {
        findings.push(
            Finding::error(
                "plan-body",
                &a.body_depth.place,
                format!("the body of '{}' is deeper than its cutout", a.name),
            )
            .hint("a drop-in body passes its cutout: check both against the maker's sheet"),
        );
    }
}

/// Two cutouts of a run leave room for a trimmer between them.
fn check_pairs(design: &Design, cutouts: &[Cutout], findings: &mut Vec<Finding>) {
    let flange = design.trade.stud.flange.mm();
    for (i, a) in cutouts.iter().enumerate() {
        for b in &cutouts[i + 1..] {
            let apart = (b.u0 - a.u1).max(a.u0 - b.u1);
            if a.run != b.run || apart >= flange - 1e-6 {
                continue;
            }
            let (first, second) = (
                &design.appliances[a.appliance],
                &design.appliances[b.appliance],
            );
            let found = if apart <= 0.0 {
                format!(
                    "the cutouts of '{}' and '{}' overlap",
                    first.name, second.name
                )
            } else {
                format!(
                    "between the cutouts of '{}' and '{}' no rail is left that a trimmer could carry",
                    first.name, second.name
                )
            };
            findings.push(
                Finding::error("plan-overlap", &second.station.place, found).hint(format!(
                    "move them {} farther apart",
                    design
                        .project
                        .units
                        .spell_with_unit(Length::millimetres(flange - apart))
                )),
            );
        }
    }
}
