//! Crossings: the members under the counter that tie the two long panels together and carry the edges of cutouts.

use super::{Cutout, Panel, PanelOf, RunPlan, Sizes};
use crate::design::{Design, Side};

/// What a crossing is called.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CrossingKind {
    /// Front to back on the stud grid.
    Tie,
    /// Front to back at the edge of a cutout.
    Trimmer,
    /// Along the run, under the end of a cutout.
    Blocking,
}

/// A stud section lying under the substrate, its web upright, its top flange level with the top of the frame, both ends
/// tabbed onto what they meet. In its run's coordinates, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossing {
    /// What it is.
    pub kind: CrossingKind,
    /// Number of its run.
    pub run: usize,
    /// From where to where along the run: one flange for ties and trimmers.
    pub u: (f64, f64),
    /// From where to where away from the working face: one flange for blocking.
    pub v: (f64, f64),
    /// True when the web is on the far side of its flange width (at `u.1`, or for blocking at `v.1`).
    pub web_high: bool,
}

/// The shortest tie worth its two tabs, common practice: six inches.
const SHORTEST_TIE: f64 = 152.4;

/// Every crossing, run by run.
pub(super) fn crossings(
    design: &Design,
    runs: &[RunPlan],
    panels: &[Panel],
    cutouts: &[Cutout],
    sizes: &Sizes,
) -> Vec<Crossing> {
    let mut found = Vec::new();
    for (i, run) in runs.iter().enumerate() {
        let mut cutouts: Vec<_> = cutouts.iter().filter(|c| c.run == i).copied().collect();
        cutouts.sort_by(|a, b| a.u0.total_cmp(&b.u0));
        let bay = Bay {
            run: i,
            depth: run.depth,
            sizes,
            walls: walls(design, run, i, panels, sizes),
            cutouts: &cutouts,
        };
        found.extend(bay.crossings(run.framed));
    }
    found
}

/// What stands across a run already, from u to u: end panels and bulkheads.
fn walls(
    design: &Design,
    run: &RunPlan,
    i: usize,
    panels: &[Panel],
    sizes: &Sizes,
) -> Vec<(f64, f64)> {
    panels
        .iter()
        .filter(|p| p.run == i)
        .filter_map(|p| match p.of {
            PanelOf::Side(Side::Left) => Some(run.framed.0),
            PanelOf::Side(Side::Right) => Some(run.framed.1 - sizes.panel),
            PanelOf::Side(_) => None,
            PanelOf::Bulkhead(k) => Some(design.runs[i].bulkheads.get(k)?.mm() - sizes.panel / 2.0),
        })
        .map(|u| (u, u + sizes.panel))
        .collect()
}

/// One run's room under the counter.
struct Bay<'a> {
    run: usize,
    depth: f64,
    sizes: &'a Sizes,
    walls: Vec<(f64, f64)>,
    cutouts: &'a [Cutout],
}

impl Bay<'_> {
    fn crossings(&self, framed: (f64, f64)) -> Vec<Crossing> {
        let mut found = self.trimmers();
        for cutout in self.cutouts {
            found.extend(self.blocking(cutout, &found));
        }
        let blocking = found.clone();
        let half = self.sizes.stud_flange / 2.0;
        let lines = ((framed.1 - framed.0) / self.sizes.spacing).ceil() as usize;
        for k in 1..lines {
            let middle = framed.0 + k as f64 * self.sizes.spacing;
            // A run that butts has no end panel of its own: the next thing is the other run's panel.
            if middle - half < framed.0 || middle + half > framed.1 {
                continue;
            }
            found.extend(self.ties((middle - half, middle + half), &blocking));
        }
        found.sort_by(|a, b| {
            (a.kind, a.u.0, a.v.0)
                .partial_cmp(&(b.kind, b.u.0, b.v.0))
                .unwrap_or(std::cmp::Ordering::Equal)
        });
        found
    }

    /// The clear stretch between the long panels.
    fn clear(&self) -> (f64, f64) {
        (self.sizes.panel, self.depth - self.sizes.panel)
    }

    /// A trimmer on each side of each cutout, unless a panel or another trimmer carries that edge.
    fn trimmers(&self) -> Vec<Crossing> {
        let flange = self.sizes.stud_flange;
        let mut found: Vec<Crossing> = Vec::new();
        for cutout in self.cutouts {
            let sides = [
                (cutout.u0 - flange, cutout.u0, true),
                (cutout.u1, cutout.u1 + flange, false),
            ];
            for (u0, u1, web_high) in sides {
                let taken = self.walls.iter().any(|w| meets(*w, (u0, u1)))
                    || found.iter().any(|t| meets(t.u, (u0, u1)));
                if !taken {
                    found.push(Crossing {
                        kind: CrossingKind::Trimmer,
                        run: self.run,
                        u: (u0, u1),
                        v: self.clear(),
                        web_high,
                    });
                }
            }
        }
        found
    }

    /// Blocking under the near and far end of a cutout where the panel is too far to carry it.
    fn blocking(&self, cutout: &Cutout, trimmers: &[Crossing]) -> Vec<Crossing> {
        let flange = self.sizes.stud_flange;
        let (near, far) = self.clear();
        let u = (
            self.support(cutout.u0, true, trimmers),
            self.support(cutout.u1, false, trimmers),
        );
        let piece = |v0: f64, web_high: bool| Crossing {
            kind: CrossingKind::Blocking,
            run: self.run,
            u,
            v: (v0, v0 + flange),
            web_high,
        };
        let mut found = Vec::new();
        if !cutout.open && cutout.v0 - flange > near + 1.0 {
            found.push(piece(cutout.v0 - flange, true));
        }
        if cutout.v1 + flange < far - 1.0 {
            found.push(piece(cutout.v1, false));
        }
        found
    }

    /// The nearest face that blocking can be tabbed to, left or right of a cutout's edge.
    fn support(&self, edge: f64, left: bool, trimmers: &[Crossing]) -> f64 {
        let faces = trimmers
            .iter()
            .filter(|t| t.kind == CrossingKind::Trimmer)
            .map(|t| t.u)
            .chain(self.walls.iter().copied());
        if left {
            faces
                .map(|u| u.1)
                .filter(|u| *u <= edge + 1e-6)
                .fold(f64::NEG_INFINITY, f64::max)
        } else {
            faces
                .map(|u| u.0)
                .filter(|u| *u >= edge - 1e-6)
                .fold(f64::INFINITY, f64::min)
        }
    }

    /// A tie on a grid line, in two pieces where a cutout is in its way, or none where something stands there.
    fn ties(&self, u: (f64, f64), others: &[Crossing]) -> Vec<Crossing> {
        let in_trimmer = |c: &&Crossing| c.kind == CrossingKind::Trimmer && meets(c.u, u);
        if self.walls.iter().any(|w| meets(*w, u)) || others.iter().any(|c| in_trimmer(&c)) {
            return Vec::new();
        }
        let (near, far) = self.clear();
        let tie = |v: (f64, f64)| Crossing {
            kind: CrossingKind::Tie,
            run: self.run,
            u,
            v,
            web_high: false,
        };
        let Some(cutout) = self.cutouts.iter().find(|c| meets((c.u0, c.u1), u)) else {
            return vec![tie((near, far))];
        };
        let flange = self.sizes.stud_flange;
        let halves = [
            (!cutout.open).then_some((near, cutout.v0 - flange)),
            Some((cutout.v1 + flange, far)),
        ];
        halves
            .into_iter()
            .flatten()
            .filter(|v| v.1 - v.0 >= SHORTEST_TIE)
            .map(tie)
            .collect()
    }
}

/// True when two stretches share more than a point.
pub(super) fn meets(a: (f64, f64), b: (f64, f64)) -> bool {
    a.0 < b.1 - 1e-6 && b.0 < a.1 - 1e-6
}
