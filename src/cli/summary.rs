//! What a build says at its end.

use crate::pipeline::OutputGroup;
use comfy_table::{CellAlignment, Table, presets};
use std::fmt::Write;
use std::path::Path;
use std::time::Duration;

/// A short table of what was written and how to use it, one row a folder.
pub(super) fn table(folder: &Path, groups: &[OutputGroup]) -> String {
    let mut table = Table::new();
    table.load_style(presets::NOTHING);
    table.set_header(["folder", "files", "kB", "use"]);
    for group in groups.iter().filter(|g| !g.files.is_empty()) {
        let bytes: usize = group.files.iter().map(|f| f.bytes.len()).sum();
        table.add_row([
            name(group),
            group.files.len().to_string(),
            bytes.div_ceil(1000).to_string(),
            group.about.to_owned(),
        ]);
    }
    for right in [1, 2] {
        if let Some(column) = table.column_mut(right) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    let mut text = format!("wrote to {}\n", folder.display());
    for line in table.lines() {
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}

/// The folder, or the file where it is one.
fn name(group: &OutputGroup) -> String {
    let is_file = group.files.iter().any(|f| f.path == group.folder);
    let slash = if is_file { "" } else { "/" };
    format!("{}{slash}", group.folder)
}

/// How long each stage took.
pub(super) fn timings(stages: &[(&'static str, Duration)]) -> String {
    let mut text = String::new();
    let spell = |d: Duration| format!("{:9.2} ms", d.as_secs_f64() * 1e3);
    for (name, took) in stages {
        let _ = writeln!(text, "{} {name}", spell(*took));
    }
    let all = stages.iter().map(|s| s.1).sum();
    let _ = writeln!(text, "{} together", spell(all));
    text
}
