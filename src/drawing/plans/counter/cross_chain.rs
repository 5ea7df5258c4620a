//! Dimensions across the counter, beside each cutout: front edge, cutout, back edge.

use super::reinforcement;
use crate::design::Side as RunSide;
use crate::drawing::dimension::{Axis, Side, Tier, draw_stack};
use crate::drawing::fit::Fit;
use crate::drawing::occupancy::pieces;
use crate::drawing::page::Page;
use crate::geometry::{Bounds2, Point2};
use crate::plan::{CounterCutout, Plan, SideKind};

/// From the chain's line to the far side of its letters, and to the near side of its strokes, millimetres.
const LETTERED: (f64, f64) = (5.0, 1.5);
/// Chains stand so far from their cutout at most.
const FARTHEST: u32 = 60;
/// Where the first dimension line stands off the edge of an axis.
const FIRST: f64 = 10.0;

/// A run's counter beside one cutout, on the sheet. Its p runs along the run: x of the sheet for a run that lies across
/// it, y for one that lies up it.
struct Beside<'a> {
    plan: &'a Plan,
    fit: &'a Fit,
    /// True when the run lies across the sheet and the chain stands upright.
    upright: bool,
    /// From where to where along p both edges of the counter run past.
    stretch: (f64, f64),
    /// The cutout along p.
    cutout: (f64, f64),
    /// Flanges along p that the chain keeps clear of, this cutout's own among them.
    flanges: Vec<(f64, f64)>,
    /// Bars along p that the chain would cross: it keeps clear of them where it can.
    bars: Vec<(f64, f64)>,
}

/// Draws the chain where there is room; false when there is none.
pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit, cutout: &CounterCutout) -> bool {
    let Some((beside, tier)) = Beside::new(plan, fit, cutout) else {
        return false;
    };
    let (low, high) = beside.cutout;
    let tries = (0..FARTHEST).flat_map(|d| [high + f64::from(d), low - f64::from(d)]);
    let open: Vec<f64> = tries.filter(|p| beside.is_open(*p)).collect();
    let (clear, crossing): (Vec<f64>, Vec<f64>) =
        open.into_iter().partition(|p| beside.misses_bars(*p));
    for p in clear.into_iter().chain(crossing) {
        let (axis, from) = beside.axis(p);
        let tier = Tier {
            from,
            ..tier.clone()
        };
        if page.attempt_clear(|page| draw_stack(page, axis, &[tier]).1 == 0) {
            return true;
        }
    }
    false
}

impl<'a> Beside<'a> {
    fn new(plan: &'a Plan, fit: &'a Fit, cutout: &CounterCutout) -> Option<(Self, Tier)> {
        let run = plan.runs.get(cutout.run)?;
        let (working, front) = edge(plan, cutout.run, RunSide::Working)?;
        let (seating, back) = edge(plan, cutout.run, RunSide::Seating)?;
        let upright = run.along.x.abs() > 0.5;
        let (low, high) = (working.0.max(seating.0), working.1.min(seating.1));
        let p = |b: &Bounds2| {
            let area = fit.area(b);
            if upright {
                (area.low.x, area.high.x)
            } else {
                (area.low.y, area.high.y)
            }
        };
        let points = [run.point(low, front), run.point(high, back)];
        let around = |points: [Point2; 2]| Bounds2 {
            low: points[0].inf(&points[1]),
            high: points[0].sup(&points[1]),
        };
        let others = plan.counter.cutouts.iter().filter(|c| c.run == cutout.run);
        let ground = around(points);
        let bars = reinforcement::bars(plan).into_iter().map(around);
        let beside = Self {
            plan,
            fit,
            upright,
            stretch: p(&around(points)),
            cutout: p(&cutout.outline.bounds()),
            flanges: others.map(|c| p(&c.flange.bounds())).collect(),
            bars: bars
                .filter(|b| b.overlaps(&ground, 0.0))
                .map(|b| p(&b))
                .collect(),
        };
        let across = |b: Bounds2| {
            if upright {
                [b.low.y, b.high.y]
            } else {
                [b.low.x, b.high.x]
            }
        };
        let (edges, own) = (across(around(points)), across(cutout.outline.bounds()));
        let sheet = |v: f64| if upright { fit.y(v) } else { fit.x(v) };
        let stations = [edges[0], own[0], own[1], edges[1]];
        let mut tier = Tier::new(plan.design.project.units, "", &stations, sheet)?;
        tier.bare = edges.map(sheet).to_vec();
        Some((beside, tier))
    }

    /// The room along p that a chain at p takes with its letters.
    fn window(&self, p: f64) -> (f64, f64) {
        // Letters stand above their line as read from below or from the right.
        if self.upright {
            (p - LETTERED.0, p + LETTERED.1)
        } else {
            (p - LETTERED.1, p + LETTERED.0)
        }
    }

    /// True when a chain at p crosses the counter from edge to edge and meets nothing that runs along it.
    fn is_open(&self, p: f64) -> bool {
        let (low, high) = self.window(p);
        let inside = low > self.stretch.0 + 1.0 && high < self.stretch.1 - 1.0;
        let clear = self
            .flanges
            .iter()
            .all(|(from, to)| high < *from || low > *to);
        inside && clear && !self.runs_along(low, high)
    }

    /// True when a chain at p crosses no bar.
    fn misses_bars(&self, p: f64) -> bool {
        let (low, high) = self.window(p);
        self.bars.iter().all(|(from, to)| high < *from || low > *to)
    }

    /// True when a piece of the turndown's line runs along the chain within its room.
    fn runs_along(&self, low: f64, high: f64) -> bool {
        let lines = self.plan.counter.turndown.iter();
        let mut all =
            lines.flat_map(|line| pieces(&self.fit.vertices(&line.vertices), line.closed));
        all.any(|[a, b]| {
            let (along, p) = if self.upright {
                ((b.x - a.x).abs() < 0.5 && (b.y - a.y).abs() > 1.0, a.x)
            } else {
                ((b.y - a.y).abs() < 0.5 && (b.x - a.x).abs() > 1.0, a.y)
            };
            along && p > low && p < high
        })
    }

    /// The side on which a chain at p stands, and where its extension lines begin: at the cutout.
    fn axis(&self, p: f64) -> (Axis, f64) {
        let after = p > self.cutout.1;
        let side = match (self.upright, after) {
            (true, true) => Side::Right,
            (true, false) => Side::Left,
            (false, true) => Side::Above,
            (false, false) => Side::Below,
        };
        let (edge, from) = if after {
            (p - FIRST, self.cutout.1 - (p - FIRST))
        } else {
            (p + FIRST, p + FIRST - self.cutout.0)
        };
        (Axis { side, edge }, from)
    }
}

/// From where to where along u a run's counter has an edge on a side, and where that edge is in v.
fn edge(plan: &Plan, number: usize, side: RunSide) -> Option<((f64, f64), f64)> {
    let run = plan.runs.get(number)?;
    let own = |face: usize| {
        let face = plan.faces.get(face);
        face.is_some_and(|f| f.run == number && f.side == side)
    };
    let sides = plan.counter.sides.iter();
    let mut sides = sides.filter(|s| own(s.face) && !matches!(s.kind, SideKind::Notch(_)));
    let first = sides.next()?;
    let span = |s: &crate::plan::CounterSide| {
        let (a, b) = (run.local(s.start).x, run.local(s.end).x);
        (a.min(b), a.max(b))
    };
    let whole = sides
        .map(span)
        .fold(span(first), |(low, high), (a, b)| (low.min(a), high.max(b)));
    Some((whole, run.local(first.start).y))
}
