//! Setting out, and the frame as it stands.

mod as_built;
mod setting_out;
mod sheet;

use crate::drawing::site::setting_out::SettingOut;
use crate::plan::Plan;
use crate::site::standing::Standing;
use crate::table::Table;

/// What the setting-out sheet shows.
pub(super) fn sheet(plan: &Plan, standing: &Standing) -> SettingOut {
    sheet::sheet(plan, standing)
}

/// Its tables.
pub(super) fn tables(plan: &Plan, standing: &Standing) -> Vec<Table> {
    let mut tables = setting_out::tables(plan, standing);
    if let Some(frame) = &plan.as_built {
        tables.extend(as_built::tables(plan, frame, &standing.raises));
    }
    tables
}
