//! Setting out, and the frame as it stands.

use crate::drawing::site::setting_out::SettingOut;
use crate::plan::Plan;
use crate::site::standing::Standing;
use crate::table::Table;

/// What the setting-out sheet shows.
pub(super) fn sheet(_: &Plan, _: &Standing) -> Option<SettingOut> {
    None
}

/// Its tables.
pub(super) fn tables(_: &Plan, _: &Standing) -> Vec<Table> {
    Vec::new()
}
