//! Where things lie on the sheet of a plan: the view with its chains, the key, a table where there is room.

use super::chains::{self, Lanes, WorldChain};
use super::key::{Entry, Key};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::schedule::Grid;
use crate::geometry::{Bounds2, Point2};
use crate::plan::Plan;

/// Between a key, a table and what is drawn, millimetres.
const APART: f64 = 6.0;
/// A plan drawn smaller than 1:50 or 1/4" to the foot is a key plan: it carries only what finds room.
const KEY_PLAN: f64 = 1.0 / 50.0;

/// What a sheet is laid out for.
pub(super) struct Layout<'a> {
    pub plan: &'a Plan,
    /// What is drawn, as built.
    pub built: Bounds2,
    /// The room of the sheet.
    pub room: Bounds2,
    pub lanes: Lanes,
    pub entries: &'a [Entry],
    /// A table that is welcome but not needed.
    pub table: Option<&'a Grid>,
}

/// The sheet laid out.
pub(super) struct Laid {
    pub fit: Fit,
    /// The chains that are drawn.
    pub chains: Vec<WorldChain>,
    /// True for a key plan.
    pub small: bool,
    /// Upper left corner of the key.
    corner: Point2,
    /// True where the key is a strip below the view.
    strip: bool,
    /// That of the table, where a place is kept for it.
    table: Option<Point2>,
}

impl Layout<'_> {
    /// Lays the sheet out at the largest scale; a key plan keeps only its overall chains.
    pub fn lay(&self, mut chains: Vec<WorldChain>) -> Laid {
        let (mut fit, mut corner, mut strip) = self.beside(&chains);
        let small = fit.scale.factor < KEY_PLAN - 1e-9;
        if small {
            chains.retain(|c| c.stations.len() == 2);
            (fit, corner, strip) = self.beside(&chains);
        }
        let tabled = self
            .table
            .and_then(|t| self.over_table(t, &chains, &fit, corner));
        let table = tabled.as_ref().map(|(_, at)| *at);
        Laid {
            fit: tabled.map_or(fit, |(fit, _)| fit),
            chains,
            small,
            corner,
            strip,
            table,
        }
    }

    fn fit(&self, chains: &[WorldChain], room: &Bounds2) -> Fit {
        let margins = chains::margins(chains, &self.lanes);
        Fit::new(self.plan.design.project.units, &self.built, room, margins)
    }

    /// The view with the key in a column to its right, or in a strip below it where it can be drawn larger so: the view's
    /// place, the key's upper left corner, and true for a strip.
    fn beside(&self, chains: &[WorldChain]) -> (Fit, Point2, bool) {
        let room = &self.room;
        let key = Key::column(self.entries);
        let mut column = *room;
        column.high.x -= key.size.x + APART;
        let right = self.fit(chains, &column);
        let low = Key::strip(self.entries, room.width());
        let mut strip = *room;
        strip.low.y += low.size.y + APART;
        let below = self.fit(chains, &strip);
        if below.scale.factor > right.scale.factor + 1e-12 {
            let corner = Point2::new(room.low.x, room.low.y + low.size.y);
            return (below, corner, true);
        }
        let corner = Point2::new(room.high.x - key.size.x, room.low.y + key.size.y + 4.0);
        (right, corner, false)
    }

    /// The view above a table, where it need not be smaller for it and the key stands in its column, and the table's upper
    /// left corner.
    fn over_table(
        &self,
        table: &Grid,
        chains: &[WorldChain],
        fit: &Fit,
        corner: Point2,
    ) -> Option<(Fit, Point2)> {
        let mut column = self.room;
        column.high.x = corner.x - APART;
        if table.full_width() > column.width() {
            return None;
        }
        column.low.y += table.height() + APART;
        let above = self.fit(chains, &column);
        let at = Point2::new(self.room.low.x, self.room.low.y + table.height());
        (above.scale == fit.scale).then_some((above, at))
    }
}

impl Laid {
    /// Draws key and table; to be called before anything else is drawn.
    pub fn draw(&self, page: &mut Page, layout: &Layout) {
        let key = if self.strip {
            Key::strip(layout.entries, layout.room.width())
        } else {
            Key::column(layout.entries)
        };
        key.draw(page, self.corner);
        if let (Some(table), Some(at)) = (layout.table, self.table) {
            table.draw(page, at, table.whole());
        }
    }

    /// True when a place is kept for the table.
    pub fn has_table(&self) -> bool {
        self.table.is_some()
    }
}
