//! Reinforcing mesh and its standoffs by run.

use super::share::shares;
use super::tally::{At, Tally, area, count, many};
use crate::catalog::{Form, Need};
use crate::geometry::{Bounds2, Outline, Region};
use crate::plan::Plan;
use crate::takeoff::asked::{Asked, standoff};
use crate::takeoff::order::whole;

/// The mesh stands so far inside every edge and cutout, millimetres: 1-1/2 in, or half of a thinner slab (common
/// practice).
const COVER: f64 = 38.1;
/// The squares of the mesh, millimetres: 6 in (common practice).
const SQUARE: f64 = 152.4;
/// Sheets lap by a square and 2 in, millimetres (common practice).
const LAP: f64 = SQUARE + 50.8;
/// A sheet where none is in the supplies, millimetres: 84 × 42 in (common practice).
const SHEET: (f64, f64) = (2133.6, 1066.8);
/// Standoffs are no farther apart, millimetres: 24 in (common practice).
const STANDOFF: f64 = 609.6;

/// Mesh with its laps, then standoffs.
pub(super) fn reckon(tally: &mut Tally) {
    let plan = tally.plan;
    let cover = COVER.min(plan.counter.slab.thickness / 2.0);
    let field = field(plan, cover);
    let bounds = shares(plan);
    let net: Vec<f64> = bounds
        .iter()
        .map(|own| field.iter().map(|r| r.area_within(own)).sum())
        .collect();
    for (run, (laps, count)) in cheapest_laps(plan, &bounds, cover, net.iter().sum())
        .into_iter()
        .enumerate()
    {
        let with = match count {
            0 => String::new(),
            _ => format!(", and {} of {}", many(count, "lap"), tally.spell(LAP)),
        };
        let reckoned = format!(
            "slab less {} at edges and cutouts{with}",
            tally.spell(cover)
        );
        let whole = area(if net[run] > 0.0 { net[run] + laps } else { 0.0 });
        let need = Some(Need::ReinforcingMesh);
        tally.add(need, "reinforcing mesh", At::run(run), whole, reckoned);
    }
    let high = standoff(tally.units(), plan.counter.slab.thickness);
    for (run, own) in bounds.iter().enumerate() {
        let found = standoffs(&field, own, cover);
        let reckoned = format!(
            "a grid of {} at most over the mesh; {} high",
            tally.spell(STANDOFF),
            tally.spell(high.mm())
        );
        let need = Asked::long(Need::Standoff, high);
        tally.add(need, "standoff", At::run(run), count(found), reckoned);
    }
}

/// The area and the number of laps of each run with the sheets that come cheapest; the first where none has a price, the
/// usual ones where there are none.
fn cheapest_laps(plan: &Plan, bounds: &[Bounds2], cover: f64, net: f64) -> Vec<(f64, usize)> {
    let laid = |sheet: (f64, f64)| -> Vec<(f64, usize)> {
        let runs = bounds.iter().enumerate();
        runs.map(|(i, own)| laps(own, cover, sheet, LAP, i + 1 < bounds.len()))
            .collect()
    };
    let sold = plan.design.supplies.of(&Need::ReinforcingMesh);
    let laid_out = sold.filter_map(|supply| {
        let Form::Sheet { length, width, .. } = supply.form else {
            return None;
        };
        let laps = laid((length.mm(), width.mm()));
        let area = net + laps.iter().map(|l| l.0).sum::<f64>();
        let sheets = whole(area / (length.mm() * width.mm()));
        let cost = supply.price.map(|p| p.times(sheets));
        Some(((cost.is_none(), cost), laps))
    });
    let least = laid_out.min_by_key(|(cost, _)| *cost);
    least.map_or_else(|| laid(SHEET), |(_, laps)| laps)
}

/// Where mesh lies: the slab less a strip along each side and round each cutout, cut straight.
fn field(plan: &Plan, cover: f64) -> Vec<Region> {
    let counter = &plan.counter;
    let whole = Outline::polygon(&counter.outline.flatten(0.1));
    let strips = counter.sides.iter().map(|s| {
        let (low, high) = (s.start.inf(&s.end), s.start.sup(&s.end));
        let (low, high) = (low.coords.add_scalar(-cover), high.coords.add_scalar(cover));
        Outline::rectangle(low.x, low.y, high.x, high.y)
    });
    let holes = counter.slab.cutouts.iter().map(|hole| {
        let b = hole.bounds();
        Outline::rectangle(
            b.low.x - cover,
            b.low.y - cover,
            b.high.x + cover,
            b.high.y + cover,
        )
    });
    Region::solid(whole).minus(&strips.chain(holes).collect::<Vec<_>>())
}

/// The area that overlaps where sheets lie along a run, and how many laps that is; the lap onto the next run is among
/// them.
fn laps(own: &Bounds2, cover: f64, sheet: (f64, f64), lap: f64, goes_on: bool) -> (f64, usize) {
    let long = own.width().max(own.height()) - 2.0 * cover;
    let deep = own.width().min(own.height()) - 2.0 * cover;
    let more = |room: f64, sheet: f64| {
        if sheet > lap + 1.0 && room > sheet {
            ((room - sheet) / (sheet - lap) - 1e-9).ceil()
        } else {
            0.0
        }
    };
    let onto_next = f64::from(u8::from(goes_on));
    let (across, along) = (more(long, sheet.0) + onto_next, more(deep, sheet.1));
    (
        across * lap * deep.max(0.0) + along * lap * long.max(0.0),
        (across + along) as usize,
    )
}

/// The points of an even grid over a run's share that lie on mesh.
fn standoffs(field: &[Region], own: &Bounds2, cover: f64) -> usize {
    let line = |low: f64, high: f64| -> Vec<f64> {
        // A hair inside, so that the outer points are on the mesh.
        let (low, high) = (low + cover + 0.01, high - cover - 0.01);
        let gaps = ((high - low) / STANDOFF - 1e-9).ceil().max(1.0);
        (0..=gaps as usize)
            .map(|i| low + (high - low) * i as f64 / gaps)
            .collect()
    };
    let rows = line(own.low.y, own.high.y);
    let on_mesh = |x: f64, y: f64| {
        field.iter().any(|r| {
            let stretches = super::coverage::stretches(r, 0, y);
            stretches.iter().any(|s| s.0 <= x && x <= s.1)
        })
    };
    line(own.low.x, own.high.x)
        .iter()
        .map(|x| rows.iter().filter(|y| on_mesh(*x, **y)).count())
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point2;

    #[test]
    fn laps_are_those_worked_on_paper() {
        // 120 × 30 in with 1 in of cover: 118 × 28; sheets of 84 × 42 and laps of 8: 84 + 76 reach, so one lap of 8 × 28.
        let inches = 25.4;
        let own = Bounds2 {
            low: Point2::origin(),
            high: Point2::new(120.0 * inches, 30.0 * inches),
        };
        let sheet = (84.0 * inches, 42.0 * inches);
        let (found, count) = laps(&own, inches, sheet, 8.0 * inches, false);
        assert_eq!(count, 1);
        assert!((found - 224.0 * inches * inches).abs() < 1e-6);
        // On sheets 24 wide a second row laps 8 × 118 more: 24 + 16 reach 28.
        let (found, count) = laps(
            &own,
            inches,
            (84.0 * inches, 24.0 * inches),
            8.0 * inches,
            false,
        );
        assert_eq!(count, 2);
        assert!((found - (224.0 + 944.0) * inches * inches).abs() < 1e-6);
    }
}
