//! What the tops of frame panels carry: the counter's strip over them, and the ties that end at them.

use super::carried::{Carried, carried};
use super::loading::{pressure, turndown};
use super::steel::Load;
use crate::design::Side;
use crate::plan::{CrossingKind, Panel, PanelOf, UprightKind};
use crate::rules::Subject;

/// Loads on the top of one panel, in its own coordinate along it.
pub(super) struct Top<'p> {
    /// The panel.
    pub panel: &'p Panel,
    /// The slab's strip over it with people, and its turndown, N/mm.
    pub even: f64,
    /// The ends of ties and trimmers on it: N and where.
    pub ends: Vec<(f64, f64)>,
}

/// An upright from track to track, and the stretch of the top that rests on it.
pub(super) struct Post {
    /// Its length, mm.
    pub length: f64,
    /// From where to where along the panel.
    pub takes: (f64, f64),
}

/// The tops of all panels.
pub(super) fn tops<'p>(subject: &Subject<'p>) -> Vec<Top<'p>> {
    let plan = subject.plan;
    let members = carried(subject);
    let panels = plan.panels.iter();
    panels
        .map(|panel| Top {
            panel,
            even: even(subject, panel),
            ends: ends(subject, panel, &members),
        })
        .collect()
}

/// The strip of counter over a panel: its thickness, what lies outside it, and inside it half the way to what runs beside
/// it where no tie brings it.
fn even(subject: &Subject, panel: &Panel) -> f64 {
    let plan = subject.plan;
    let out = panel.face.map_or(0.0, |face| {
        let sides = plan.counter.sides.iter().filter(|s| s.face == face);
        let outward = plan.faces[face].outward;
        sides
            .map(|s| (s.start - plan.faces[face].start).dot(&outward))
            .fold(0.0, f64::max)
    });
    // Ties bring a long panel its share; what runs beside an end panel or a bulkhead lies half a spacing away.
    let inside = match panel.of {
        PanelOf::Side(Side::Working | Side::Seating) => 0.0,
        PanelOf::Side(_) => plan.sizes.spacing / 2.0,
        PanelOf::Bulkhead(_) => plan.sizes.spacing,
    };
    let rim = if out > 0.0 { turndown(subject) } else { 0.0 };
    pressure(subject) * (out + plan.sizes.panel + inside) + rim
}

/// The ends of ties and trimmers that hang on a panel.
fn ends(subject: &Subject, panel: &Panel, members: &[Carried]) -> Vec<(f64, f64)> {
    let plan = subject.plan;
    let run = &plan.runs[panel.run];
    let touches = |a: f64, b: f64| (a - b).abs() < 1.0;
    let mut found = Vec::new();
    for member in members {
        let c = &plan.crossings[member.index];
        if c.run != panel.run || c.kind == CrossingKind::Blocking {
            continue;
        }
        let (near, far) = member.spread.reactions();
        let load = match panel.of {
            PanelOf::Side(Side::Working) if touches(c.v.0, plan.sizes.panel) => near,
            PanelOf::Side(Side::Seating) if touches(c.v.1, run.depth - plan.sizes.panel) => far,
            _ => continue,
        };
        let at = run.point(f64::midpoint(c.u.0, c.u.1), 0.0) - panel.start;
        found.push((load, at.dot(&panel.along)));
    }
    found
}

impl Top<'_> {
    /// What rests on a stretch of the top, N.
    pub fn on(&self, (from, to): (f64, f64)) -> f64 {
        let ends = self.ends.iter().filter(|e| e.1 >= from && e.1 <= to);
        self.even * (to - from) + ends.map(|e| e.0).sum::<f64>()
    }

    /// The same as loads on a beam that spans the stretch.
    pub fn loads(&self, (from, to): (f64, f64)) -> Vec<Load> {
        let ends = self.ends.iter().filter(|e| e.1 > from && e.1 < to);
        let mut loads = vec![Load::Along {
            w: self.even,
            from: 0.0,
            to: to - from,
        }];
        loads.extend(ends.map(|e| Load::At {
            p: e.0,
            x: e.1 - from,
        }));
        loads
    }

    /// The uprights from track to track, each with the half of the way to its neighbours.
    pub fn posts(&self, track: f64) -> Vec<Post> {
        let high = self.panel.uprights.iter().map(|u| u.z1).fold(0.0, f64::max);
        let low = self.panel.uprights.iter().map(|u| u.z0);
        let low = low.fold(f64::INFINITY, f64::min);
        let whole = self.panel.uprights.iter().filter(|u| {
            let from_track_to_track = u.z1 > high - track && u.z0 < low + track;
            from_track_to_track && u.kind != UprightKind::Cripple
        });
        let middles: Vec<(f64, f64)> = whole
            .map(|u| (f64::midpoint(u.p0, u.p1), u.z1 - u.z0))
            .collect();
        let at = |i: usize| middles.get(i).map(|m| m.0);
        middles
            .iter()
            .enumerate()
            .map(|(i, &(p, length))| {
                let low = i.checked_sub(1).and_then(at);
                let low = low.map_or(0.0, |l| f64::midpoint(l, p));
                let high = at(i + 1).map_or(self.panel.length, |h| f64::midpoint(h, p));
                Post {
                    length,
                    takes: (low, high),
                }
            })
            .collect()
    }

    /// The name of the panel in words.
    pub fn name(&self, subject: &Subject) -> String {
        let run = &subject.design().runs[self.panel.run].name.value;
        match self.panel.of {
            PanelOf::Side(side) => format!("the {} of run '{run}'", side.name()),
            PanelOf::Bulkhead(k) => format!("bulkhead {} of run '{run}'", k + 1),
        }
    }
}
