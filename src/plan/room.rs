//! Whether what hangs inside the island finds room between bulkheads and under ties.

use super::crossing::meets;
use super::{Body, BodyOf, Crossing, Cutout, Panel, PanelOf, RunPlan, Sizes};
use crate::design::Design;
use crate::diagnostics::Finding;
use crate::units::Length;

/// Everything inside the island that can be in each other's way.
pub(super) struct Inside<'a> {
    pub(super) design: &'a Design,
    pub(super) runs: &'a [RunPlan],
    pub(super) panels: &'a [Panel],
    pub(super) cutouts: &'a [Cutout],
    pub(super) bodies: &'a [Body],
    pub(super) crossings: &'a [Crossing],
    pub(super) sizes: &'a Sizes,
}

impl Inside<'_> {
    /// Refuses bulkheads in cutouts, bodies or each other, and bodies in ties.
    pub(super) fn check(&self, findings: &mut Vec<Finding>) {
        let bulkheads: Vec<_> = self
            .panels
            .iter()
            .filter_map(|p| match p.of {
                PanelOf::Bulkhead(k) => Some((p.run, k, self.stretch(p))),
                PanelOf::Side(_) => None,
            })
            .collect();
        for (i, &(run, k, u)) in bulkheads.iter().enumerate() {
            let other = bulkheads[..i]
                .iter()
                .any(|&(r, _, v)| r == run && meets(u, v));
            let met = if other {
                Some("another bulkhead".to_owned())
            } else {
                self.met_by(run, u)
            };
            if let Some(met) = met {
                let place = &self.design.runs[run].bulkheads[k].place;
                findings.push(
                    Finding::error(
                        "plan-bulkhead",
                        place,
                        format!(
                            "a bulkhead of run '{}' meets {met}",
                            self.design.runs[run].name.value
                        ),
                    )
                    .hint("move the bulkhead to where the run is free"),
                );
            }
        }
        for body in self.bodies {
            self.check_under_ties(body, findings);
        }
    }

    /// The stretch of its run that a bulkhead takes.
    fn stretch(&self, panel: &Panel) -> (f64, f64) {
        let u = self.runs[panel.run].local(panel.start).x;
        (u, u + self.sizes.panel)
    }

    /// From where to where a bulkhead stands across its run.
    fn clear(&self, run: usize) -> (f64, f64) {
        let panel = self.sizes.panel;
        (panel, self.runs[run].depth - panel)
    }

    fn met_by(&self, run: usize, u: (f64, f64)) -> Option<String> {
        let cutout = self
            .cutouts
            .iter()
            .find(|c| c.run == run && meets(u, (c.u0, c.u1)));
        if let Some(c) = cutout {
            return Some(format!(
                "the cutout of '{}'",
                self.design.appliances[c.appliance].name
            ));
        }
        let body = self
            .bodies
            .iter()
            .find(|b| b.run == run && meets(u, b.u) && meets(self.clear(run), b.v))?;
        Some(match body.of {
            BodyOf::Appliance(i) => format!("the body of '{}'", self.design.appliances[i].name),
            BodyOf::Opening(i) => format!("the body of '{}'", self.design.openings[i].name),
        })
    }

    /// What fills an opening stays under the ties that pass over it.
    fn check_under_ties(&self, body: &Body, findings: &mut Vec<Finding>) {
        let BodyOf::Opening(i) = body.of else { return };
        let underside = self.sizes.frame_top - self.design.trade.stud.depth.mm();
        let met = self
            .crossings
            .iter()
            .any(|c| c.run == body.run && meets(c.u, body.u) && meets(c.v, body.v));
        if !met || body.z.1 <= underside + 1e-6 {
            return;
        }
        let opening = &self.design.openings[i];
        let spell = |mm: f64| {
            self.design
                .project
                .units
                .spell_with_unit(Length::millimetres(mm))
        };
        findings.push(
            Finding::error(
                "plan-body",
                &opening.place,
                format!(
                    "what fills '{}' meets the ties under the counter by {}",
                    opening.name,
                    spell(body.z.1 - underside)
                ),
            )
            .hint(format!(
                "the upper edge of '{}' may be {} above the datum at most",
                opening.name,
                spell(underside)
            )),
        );
    }
}
