//! Framing: the steel of panels and crossings, and the sleepers under them.

mod crossing;
mod crosspiece;
mod mark;
mod sleeper;
mod stand;
mod stock;
mod track;
mod upright;

use super::Piece;
use crate::plan::Plan;
use mark::Marks;
use stock::Stock;

/// All framing, run by run: studs and tracks panel by panel, then the crossings, then the sleepers.
pub(super) fn pieces(plan: &Plan) -> Vec<Piece> {
    let stock = Stock::of(&plan.design);
    let mut found = Vec::new();
    for run in 0..plan.runs.len() {
        let mut marks = Marks::of_run(plan, run);
        let panels = plan.panels.iter().enumerate();
        let panels: Vec<_> = panels.filter(|(_, p)| p.run == run).collect();
        for (_, panel) in &panels {
            found.extend(track::tracks(plan, &stock, panel, &mut marks));
            found.extend(upright::uprights(plan, &stock, panel, &mut marks));
            found.extend(crosspiece::crosspieces(&stock, panel, &mut marks));
        }
        let crossings = plan.crossings.iter().filter(|c| c.run == run);
        found.extend(crossings.map(|c| crossing::crossing(plan, &stock, c, &mut marks)));
        for (number, _) in &panels {
            found.extend(sleeper::sleeper(plan, *number, &mut marks));
        }
    }
    found
}
