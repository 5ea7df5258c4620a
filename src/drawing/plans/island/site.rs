//! The site plan: the island small, with what stands around it.

use super::around::Around;
use super::services;
use crate::drawing::Scale;
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::marks::Mark;
use crate::drawing::marks::place_led;
use crate::drawing::outline::finished_corners;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::plans::labels;
use crate::drawing::plans::style::{EDGE, HIDDEN};
use crate::drawing::plans::walls;
use crate::geometry::{Bounds2, Outline};
use crate::plan::Plan;

/// What stands within this distance of the finished faces is drawn, millimetres: 3.5 m.
const REACH: f64 = 3500.0;
/// Room round the view for names.
const MARGINS: Margins = Margins {
    left: 8.0,
    right: 8.0,
    below: 6.0,
    above: 6.0,
};

/// A counter smaller than this on the sheet has no room for signs and distances in and about it: the table beside the site
/// plan tells them.
const SMALL: f64 = 30.0;

/// The site plan, fitted into an area of a sheet.
pub struct SitePlan<'a> {
    plan: &'a Plan,
    finished: Outline,
    around: Around<'a>,
    fit: Fit,
}

impl<'a> SitePlan<'a> {
    /// At the largest standard scale at which all that stands within reach fits the area.
    pub fn new(plan: &'a Plan, area: &Bounds2) -> Self {
        let finished = Outline::polygon(&finished_corners(plan));
        let own = finished.bounds().union(plan.counter.outline.bounds());
        let around = Around::new(plan, &finished.bounds(), own, REACH);
        let fit = Fit::new(plan.design.project.units, &around.shown, area, MARGINS);
        Self {
            plan,
            finished,
            around,
            fit,
        }
    }

    /// Its scale.
    pub fn scale(&self) -> &Scale {
        &self.fit.scale
    }

    /// Draws it: what stands around with names and distances, the island, where gas and electricity are taken in.
    pub fn draw(&self, page: &mut Page) {
        let Self { plan, fit, .. } = self;
        self.around.draw(page, fit);
        walls::draw(page, plan, fit, |face| !self.around.has_wall_at(face));
        EDGE.closed(page, fit.outline(&plan.counter.outline));
        HIDDEN.closed(page, fit.outline(&self.finished));
        let drawn = fit.area(&plan.counter.outline.bounds());
        if drawn.width().min(drawn.height()) >= SMALL {
            services::draw(page, plan, fit);
            let corners: Vec<_> = self.finished.vertices().iter().map(|v| v.at).collect();
            self.around.measure(page, plan, fit, &corners);
        }
        self.around.name(page, plan, fit);
        for (run, named) in plan.runs.iter().zip(&plan.design.runs) {
            let text = format!("{} run", named.name.value);
            let area = fit.area(&run.rectangle(run.framed, (0.0, run.depth)));
            if !labels::inside(page, &text, LETTERS, &area) {
                place_led(page, &[Mark { text, area }]);
            }
        }
    }
}
