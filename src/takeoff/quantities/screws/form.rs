//! Screws of forms.

use super::super::row::points;
use super::super::tally::{At, Tally, count, many};
use crate::catalog::Need;
use crate::parts::PartKind;
use crate::plan::{FORM_THICKNESS, SideKind};
use crate::takeoff::asked::{Asked, screw};

/// Form strips are screwed no farther apart, millimetres: 8 in, common practice.
const SPACING: f64 = 203.2;
/// The first and last screw of a strip, from its end, millimetres: 1 in, common practice.
const FROM_END: f64 = 25.4;
/// Screws at each corner of the edge form; common practice.
const CORNER: usize = 2;
/// Screws that hold a cutout's plug down; common practice.
const PLUG: usize = 4;
/// How deep they bite beyond a form strip, millimetres: 3/4 in, common practice.
const BITE: f64 = 19.05;

/// By run: edge form strips and their corners, then cutout forms.
pub(super) fn reckon(tally: &mut Tally) {
    let length = screw(tally.units(), FORM_THICKNESS, BITE, f64::INFINITY);
    let long = tally.spell(length.mm());
    let spacing = tally.spell(SPACING);
    for run in 0..tally.plan.runs.len() {
        let strips: Vec<f64> = tally
            .parts(PartKind::EdgeForm)
            .filter(|p| p.run == Some(run))
            .map(|p| p.length.mm())
            .collect();
        let corners = corners(tally, run);
        let along: usize = strips.iter().map(|l| points(*l, FROM_END, SPACING)).sum();
        let reckoned = format!(
            "{} at {spacing} at most and {CORNER} more at each of {}; {long} long",
            many(strips.len(), "strip"),
            many(corners, "corner")
        );
        let amount = count(along + CORNER * corners);
        tally.add(
            Asked::long(Need::FormScrew, length),
            "form screw, edge forms",
            At::run(run),
            amount,
            reckoned,
        );
        let found = cutouts(tally, run);
        let reckoned = format!(
            "{PLUG} down through each plug; frame strips at {spacing} at most and {CORNER} at each corner; {long} long"
        );
        tally.add(
            Asked::long(Need::FormScrew, length),
            "form screw, cutout forms",
            At::run(run),
            count(found),
            reckoned,
        );
    }
}

/// Corners between two exposed edges where the second belongs to a run.
fn corners(tally: &Tally, run: usize) -> usize {
    let sides = &tally.plan.counter.sides;
    let n = sides.len();
    let exposed = |i: usize| sides[i % n].kind == SideKind::Exposed;
    let own = |i: &usize| tally.plan.faces[sides[*i].face].run == run;
    (0..n)
        .filter(own)
        .filter(|i| exposed(*i) && exposed(i + n - 1))
        .count()
}

/// Screws of a run's cutout forms: four strips of a frame have four corners, so each strip brings one.
fn cutouts(tally: &Tally, run: usize) -> usize {
    let forms = tally.parts(PartKind::CutoutForm);
    forms
        .filter(|p| p.run == Some(run))
        .map(|p| {
            if p.section.starts_with("cutout frame") {
                points(p.length.mm(), FROM_END, SPACING) + CORNER
            } else {
                PLUG
            }
        })
        .sum()
}
