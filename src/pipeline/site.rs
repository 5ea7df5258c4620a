//! The site: its tables and its calendar, and what its sheets show.

mod ground;
mod pour;
mod standing;
mod work;

use super::{OutputFile, OutputGroup, checks, file};
use crate::diagnostics::Finding;
use crate::drawing::Told;
use crate::drawing::site::SiteSheets;
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::rules;
use crate::site::{self, Site};
use crate::table::Table;
use crate::write;

/// Reckons the site of an island.
pub fn reckon(plan: &Plan, assembly: &Assembly) -> Site {
    site::reckon(plan, assembly, &pour::mixed(plan, assembly))
}

/// What the drawing set is told beside the plan.
pub fn told(plan: &Plan, assembly: &Assembly) -> Told {
    let checked = rules::check(&rules::Subject::new(plan));
    told_of(plan, &checked, &reckon(plan, assembly))
}

/// The same of a site that is reckoned and findings that are known.
pub(super) fn told_of(plan: &Plan, findings: &[Finding], site: &Site) -> Told {
    let mut cautions: Vec<String> = checks::failures(findings).into_iter().collect();
    cautions.extend(checks::standing_cautions());
    Told {
        cautions,
        site: SiteSheets {
            setting_out: Some(standing::sheet(plan, &site.standing)),
            shims: site.ground.as_ref().map(|g| ground::sheet(plan, g)),
            pour: pour::sheet(plan, &site.pour),
            work: work::sheet(plan, &site.work),
        },
    }
}

/// The tables of the pour alone.
pub(super) fn pour_tables(plan: &Plan, site: &Site) -> Vec<Table> {
    pour::tables(plan, &site.pour)
}

/// All tables of the site, in the order they are printed.
pub(super) fn tables(plan: &Plan, site: &Site) -> Vec<Table> {
    let mut tables = Vec::new();
    tables.extend(site.ground.iter().flat_map(|g| ground::tables(plan, g)));
    tables.extend(standing::tables(plan, &site.standing));
    tables.extend(pour::tables(plan, &site.pour));
    tables.extend(work::tables(plan, &site.work));
    tables
}

/// The site's folder.
pub(super) fn outputs(plan: &Plan, site: &Site) -> OutputGroup {
    let tables = tables(plan, site);
    let mut files = vec![file(
        "site/site.json",
        write::tables_json(&tables).into_bytes(),
    )];
    files.extend(tables.iter().map(|table| OutputFile {
        path: format!("site/{}.csv", table.name),
        bytes: write::csv(table),
    }));
    files.extend(work::files(plan, &site.work));
    OutputGroup {
        folder: "site",
        about: "ground, setting out, pour and order of work as JSON and CSV, and a calendar; their sheets are in the drawing set",
        files,
    }
}
