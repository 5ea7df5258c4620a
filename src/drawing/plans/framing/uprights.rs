//! Studs and jambs as a plan cut half way up shows them: small sections in their tracks.

use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::plans::style::{STEEL, sharp};
use crate::geometry::{Bounds2, Point2};
use crate::plan::{Panel, Plan, Upright};

/// Draws the uprights of every panel that are cut half way up the frame.
pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit) {
    let middle = f64::midpoint(plan.sizes.frame_bottom, plan.sizes.frame_top);
    for panel in &plan.panels {
        let cut = panel
            .uprights
            .iter()
            .filter(|u| u.z0 < middle && u.z1 > middle);
        for upright in cut {
            let points = section(plan, panel, upright).map(|p| fit.point(p));
            STEEL.open(page, sharp(&points));
        }
    }
}

/// Web and flanges of an upright: from the tip of one flange round to that of the other, in the world.
fn section(plan: &Plan, panel: &Panel, upright: &Upright) -> [Point2; 4] {
    let thickness = plan.sizes.track_thickness;
    let (near, far) = (thickness, plan.sizes.panel - thickness);
    let (web, tips) = if upright.web_high {
        (upright.p1, upright.p0)
    } else {
        (upright.p0, upright.p1)
    };
    [(tips, near), (web, near), (web, far), (tips, far)].map(|(p, v)| panel.point(p, v))
}

/// Where a panel stands, in the world.
pub(super) fn ground(plan: &Plan, panel: &Panel) -> Bounds2 {
    let (a, b) = (
        panel.point(0.0, 0.0),
        panel.point(panel.length, plan.sizes.panel),
    );
    Bounds2 {
        low: a.inf(&b),
        high: a.sup(&b),
    }
}
