//! Where the sleepers lie.

use super::{Panel, PanelOf, Plan};
use crate::design::Side;
use crate::geometry::Point2;

/// The strip under a panel, in the panel's own coordinates, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sleeper {
    /// Number of its panel.
    pub panel: usize,
    /// From where to where along the panel; a cross sleeper passes both ends of its panel.
    pub p: (f64, f64),
    /// From where to where inwards from the panel's outer plane.
    pub inwards: (f64, f64),
}

impl Sleeper {
    /// The strip under a panel: flush with the frame's face under outer panels, in the middle under bulkheads. Cross
    /// sleepers fit between the long ones. `None` where nothing is left of it.
    pub(super) fn under(panel: &Panel, number: usize, width: f64, thickness: f64) -> Option<Self> {
        // A cross sleeper reaches from long sleeper to long sleeper, not from panel to panel.
        let reach = match panel.of {
            PanelOf::Side(Side::Working | Side::Seating) => 0.0,
            _ => thickness - width,
        };
        let inwards = match panel.of {
            PanelOf::Bulkhead(_) => (thickness - width) / 2.0,
            PanelOf::Side(_) => 0.0,
        };
        let length = panel.length + 2.0 * reach;
        (width > 0.0 && length > 0.0).then_some(Self {
            panel: number,
            p: (-reach, length - reach),
            inwards: (inwards, inwards + width),
        })
    }

    /// Its length.
    pub fn length(&self) -> f64 {
        self.p.1 - self.p.0
    }

    /// The world point in its middle line, so far along its panel.
    pub fn point(&self, panel: &Panel, p: f64) -> Point2 {
        panel.point(p, f64::midpoint(self.inwards.0, self.inwards.1))
    }
}

impl Plan {
    /// The sleeper under a panel.
    pub fn sleeper(&self, panel: usize) -> Option<Sleeper> {
        let trade = &self.design.trade;
        let width = trade.sleeper_width.mm();
        let there = trade.sleeper_height.mm() > 0.0;
        let sleeper = Sleeper::under(self.panels.get(panel)?, panel, width, self.sizes.panel);
        sleeper.filter(|_| there)
    }

    /// All sleepers, in the order of their panels: run by run.
    pub fn sleepers(&self) -> impl Iterator<Item = Sleeper> {
        (0..self.panels.len()).filter_map(|panel| self.sleeper(panel))
    }
}
