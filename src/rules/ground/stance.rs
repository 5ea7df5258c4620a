//! How a run stands: what it weighs, on what, and how people push it.

use crate::design::{Placed, Side, Site, Surface};
use crate::geometry::Point2;
use crate::parts::PartKind;
use crate::rules::{Answers, Limit, Subject};
use crate::units::{POUND_FORCE, Unit};

/// Everybody along the edge leaning on it.
pub(in crate::rules) const LEAN: Limit = Limit {
    name: "lean-a-foot",
    what: "load of people who lean on each foot of the seating edge, straight down",
    usual: 50.0 * POUND_FORCE,
    unit: Unit::Force,
    source: "50 lb a foot, as a guard bears by IBC 2018, 1607.8.1, value from memory",
};

/// One who pushes.
pub(in crate::rules) const PUSH: Limit = Limit {
    name: "push",
    what: "a push at the height of the counter, level",
    usual: 200.0 * POUND_FORCE,
    unit: Unit::Force,
    source: "200 lb, as a guard bears by IRC 2015, Table R301.5",
};

/// A run as it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stance {
    /// What it weighs, N.
    pub weight: f64,
    /// From the line of the working face, away from the cook, to where it weighs, mm.
    pub at: f64,
    /// Length of its frame, mm.
    pub length: f64,
    /// Depth of its frame, mm: its long sleepers lie flush with both faces.
    pub depth: f64,
    /// How far the counter passes the seating face of the frame, mm.
    pub out: f64,
    /// Height of the counter, mm.
    pub height: f64,
    /// Width of a sleeper, mm.
    pub sleeper: f64,
}

impl Stance {
    /// The stance of a run.
    pub(super) fn of(subject: &Subject, run: usize) -> Self {
        let plan = subject.plan;
        let own = subject.loads().iter().filter(|l| l.run == Some(run));
        let (mut weight, mut moment) = (0.0, 0.0);
        for load in own {
            let v = plan.runs[run].local(Point2::new(load.at.x, load.at.y)).y;
            weight += load.newtons();
            moment += load.newtons() * v;
        }
        let frame = &plan.runs[run];
        Self {
            weight,
            at: moment / f64::max(weight, 1e-9),
            length: frame.framed.1 - frame.framed.0,
            depth: frame.depth,
            out: plan.counter_across(run).1 - frame.depth,
            height: plan.levels.counter_top,
            sleeper: plan.design.trade.sleeper_width.mm(),
        }
    }

    /// What people who lean along the seating edge weigh on it, N.
    pub(super) fn leaning(&self, subject: &Subject) -> f64 {
        subject.bound(&LEAN).value * self.length / 304.8
    }

    /// The moment that tips it about the outer edge of the seating sleeper, N·mm: people who lean, or one who pushes; as on a
    /// guard, the two are not taken together.
    pub(super) fn tipping(&self, subject: &Subject) -> f64 {
        let lean = self.leaning(subject) * self.out.max(0.0);
        lean.max(subject.bound(&PUSH).value * self.height)
    }

    /// The moment that keeps it from tipping so, N·mm.
    pub(super) fn keeping(&self) -> f64 {
        self.weight * (self.depth - self.at)
    }
}

/// The moment that keeps the whole island from tipping about the seating line of a run, N·mm; `None` when sleepers of other
/// runs stand beyond that line, so that it cannot tip there.
pub(super) fn whole_keeping(subject: &Subject, run: usize) -> Option<f64> {
    let plan = subject.plan;
    let line = plan.runs[run].depth;
    let local = |p: Point2| plan.runs[run].local(p).y;
    let sleepers = subject
        .assembly()
        .parts
        .iter()
        .filter(|p| p.kind == PartKind::Sleeper);
    let beyond = sleepers.filter(|p| p.run != Some(run)).any(|p| {
        let bounds = subject.assembly().solid(p).bounds();
        let ends = [bounds.low, bounds.high].map(|c| p.placement * c);
        ends.iter()
            .any(|e| local(Point2::new(e.x, e.y)) > line + 100.0)
    });
    if beyond {
        return None;
    }
    let loads = subject.loads().iter();
    Some(
        loads
            .map(|l| l.newtons() * (line - local(Point2::new(l.at.x, l.at.y))))
            .sum(),
    )
}

/// True when somebody can stand on the seating side of a run.
pub(super) fn is_seating(subject: &Subject, run: usize) -> bool {
    let faces = subject.plan.faces.iter();
    let mut own = faces.filter(|f| f.run == run && f.side == Side::Seating);
    own.any(|f| !f.wall)
}

/// What lies on the ground under the island, or the answer that it is not known.
pub(super) fn surface_of<'a>(site: &'a Site, answers: &mut Answers) -> Option<&'a Placed<Surface>> {
    if site.surface.is_none() {
        let found = "what lies on the ground under the island";
        answers.missing(&site.place, "surface", found);
    }
    site.surface.as_ref()
}
