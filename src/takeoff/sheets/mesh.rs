//! Reinforcing mesh in rectangles that sheets can hold.

use super::layout::problem;
use super::piece::SheetPiece;
use super::stock::{StockSheet, stock};
use super::zones::butts;
use crate::catalog::{Form, Need};
use crate::design::Design;
use crate::geometry::{Bounds2, Outline, Region};
use crate::plan::Plan;
use crate::takeoff::nesting;
use crate::takeoff::territory::territories;
use crate::units::Length;

/// The mesh stands so far inside every edge and cutout, millimetres: 1-1/2 in, or half of a thinner slab (common
/// practice).
const COVER: f64 = 38.1;
/// The squares of the mesh, millimetres: 6 in (common practice).
const SQUARE: f64 = 152.4;
/// Sheets lap by a square and 2 in, millimetres (common practice).
pub(in crate::takeoff) const LAP: f64 = SQUARE + 50.8;

/// How far the mesh stands inside every edge and cutout, millimetres.
pub(in crate::takeoff) fn cover(plan: &Plan) -> f64 {
    COVER.min(plan.counter.slab.thickness / 2.0)
}

/// True when mesh is laid out on sheets: unless shops sell it in rolls alone.
pub(in crate::takeoff) fn is_laid_out(design: &Design) -> bool {
    let mut sold = design.supplies.of(&Need::ReinforcingMesh).peekable();
    sold.peek().is_none() || sold.any(|s| matches!(s.form, Form::Sheet { .. }))
}

/// The rectangles of mesh run by run, with their laps: parted for the sheet and the way of laying it whose layout comes
/// cheapest; of equal ones the fewest pieces. Cutouts are snipped out later: nobody buys a sheet with its hole.
pub(super) fn pieces(plan: &Plan) -> Vec<SheetPiece> {
    let sheets = stock(&plan.design, &Need::ReinforcingMesh);
    let rectangles = rectangles(plan);
    let mut ways: Vec<Vec<SheetPiece>> = Vec::new();
    for way in sheets.iter().flat_map(|s| sides(plan, s)) {
        let found = parted(plan, &rectangles, &sheets, way);
        if !ways.contains(&found) {
            ways.push(found);
        }
    }
    if ways.len() < 2 {
        return ways.pop().unwrap_or_default();
    }
    let least = ways.into_iter().min_by_key(|pieces| {
        let answer = nesting::solve(&problem(pieces, &sheets, 0));
        (answer.too_large.len(), answer.cost, pieces.len())
    });
    least.unwrap_or_default()
}

/// A sheet's sides in whole steps, millimetres, as it may lie along a run.
fn sides(plan: &Plan, sheet: &StockSheet) -> [(f64, f64); 2] {
    let step = plan.design.project.units.step().mm();
    let (l, w) = (
        f64::from(sheet.steps.0) * step,
        f64::from(sheet.steps.1) * step,
    );
    [(l, w), (w, l)]
}

/// The rectangle of mesh of every run in the run's own coordinates: its share of the counter less the cover. A run that
/// butts against another reaches so far into it that their meshes lap.
fn rectangles(plan: &Plan) -> Vec<Bounds2> {
    let cover = cover(plan);
    let shares = territories(plan);
    let runs = plan.runs.iter().zip(&shares).enumerate();
    runs.map(|(index, (run, share))| {
        let (a, b) = (run.local(share.low), run.local(share.high));
        let (mut low, mut high) = (a.inf(&b), a.sup(&b));
        let (before, after) = butts(plan, index);
        let past = |joins: bool| if joins { -cover - LAP } else { cover };
        low.x += past(before);
        high.x -= past(after);
        low.y += cover;
        high.y -= cover;
        Bounds2 { low, high }
    })
    .collect()
}

fn parted(
    plan: &Plan,
    rectangles: &[Bounds2],
    sheets: &[StockSheet],
    way: (f64, f64),
) -> Vec<SheetPiece> {
    let holds = |b: &Bounds2| {
        let fits = |(l, w): (f64, f64)| b.width() <= l && b.height() <= w;
        sheets.iter().any(|s| sides(plan, s).into_iter().any(fits))
    };
    let mut found = Vec::new();
    for (run, whole) in rectangles.iter().enumerate() {
        if whole.width() <= 0.0 || whole.height() <= 0.0 {
            continue;
        }
        let (l, w) = if holds(whole) {
            (f64::INFINITY, f64::INFINITY)
        } else {
            way
        };
        for v in stretches(whole.low.y, whole.high.y, w) {
            for u in stretches(whole.low.x, whole.high.x, l) {
                found.push(piece(plan, run, (u, v), found.len() + 1, whole));
            }
        }
    }
    found
}

/// A stretch in parts no longer than a sheet, each lapping the next; the last is no shorter than two laps.
fn stretches(from: f64, to: f64, sheet: f64) -> Vec<(f64, f64)> {
    let room = to - from;
    if room <= sheet || sheet < 3.0 * LAP {
        return vec![(from, to)];
    }
    let count = ((room - LAP) / (sheet - LAP) - 1e-9).ceil();
    let last = room - (count - 1.0) * (sheet - LAP);
    let short = (2.0 * LAP - last).max(0.0);
    (0..count as usize)
        .map(|i| {
            let start = from + i as f64 * (sheet - LAP);
            let left = count as usize - i;
            match left {
                1 => (to - last - short, to),
                2 => (start, start + sheet - short),
                _ => (start, start + sheet),
            }
        })
        .collect()
}

type Spans = ((f64, f64), (f64, f64));

fn piece(plan: &Plan, run: usize, (u, v): Spans, number: usize, whole: &Bounds2) -> SheetPiece {
    let notation = plan.design.project.units;
    let world = plan.runs[run].rectangle(u, v);
    let laps = u.1 - u.0 < whole.width() || v.1 - v.0 < whole.height() || plan.runs.len() > 1;
    let lap = Length::millimetres(LAP);
    let lapped = laps.then(|| format!("lap {}", notation.spell_with_unit(lap)));
    let cutout = plan.counter.slab.cutouts.iter().any(|hole| {
        let b = hole.bounds();
        let apart = |k: usize| b.high[k] <= world.low[k] || world.high[k] <= b.low[k];
        !apart(0) && !apart(1)
    });
    let snipped = cutout.then(|| "snip out the cutouts in place".to_owned());
    let (w, h) = (u.1 - u.0, v.1 - v.0);
    let outline = Outline::rectangle(world.low.x, world.low.y, world.high.x, world.high.y);
    SheetPiece {
        run: Some(run),
        note: lapped
            .into_iter()
            .chain(snipped)
            .collect::<Vec<_>>()
            .join("; "),
        region: Some(Region::solid(outline)),
        ..SheetPiece::of_no_part(notation, format!("MESH-{number}"), (w.max(h), w.min(h)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stretches_lap_and_the_last_is_not_short() {
        // In inches: 118 on sheets of 84 with laps of 8: 84, then from 76 to the end.
        let inches = |found: Vec<(f64, f64)>| -> Vec<(f64, f64)> {
            let round = |mm: f64| (mm / 25.4 * 1e6).round() / 1e6;
            found.iter().map(|s| (round(s.0), round(s.1))).collect()
        };
        let of = |to: f64, sheet: f64| inches(stretches(0.0, to * 25.4, sheet * 25.4));
        assert_eq!(of(84.0, 84.0), [(0.0, 84.0)]);
        assert_eq!(of(118.0, 84.0), [(0.0, 84.0), (76.0, 118.0)]);
        // 86 would leave 10; two laps are 16, so the first gives up 6.
        assert_eq!(of(86.0, 84.0), [(0.0, 78.0), (70.0, 86.0)]);
        assert_eq!(of(160.0, 84.0), [(0.0, 84.0), (76.0, 160.0)]);
    }
}
