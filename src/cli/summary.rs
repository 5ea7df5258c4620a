//! What a build says at its end.

use crate::pipeline::OutputFile;
use comfy_table::{CellAlignment, Table, presets};
use std::fmt::Write;
use std::path::Path;
use std::time::Duration;

/// A short table of what was written and how to use it: files of one use in one folder share a row.
pub(super) fn table(folder: &Path, outputs: &[OutputFile]) -> String {
    let mut rows: Vec<(String, &str, usize, usize)> = Vec::new();
    for output in outputs {
        let (within, bare) = output.path.rsplit_once('/').unwrap_or(("", &output.path));
        let row = rows
            .iter_mut()
            .find(|r| r.1 == output.about && r.0.rsplit_once('/').map_or("", |s| s.0) == within);
        match row {
            Some(row) => {
                row.0 = format!("{within}/*{}", ending(bare));
                row.2 += 1;
                row.3 += output.bytes.len();
            }
            None => rows.push((output.path.clone(), output.about, 1, output.bytes.len())),
        }
    }
    let mut table = Table::new();
    table.load_preset(presets::NOTHING);
    table.set_header(["file", "files", "kB", "use"]);
    for (file, about, count, bytes) in rows {
        let kilobytes = bytes.div_ceil(1000).to_string();
        table.add_row([file, count.to_string(), kilobytes, about.to_owned()]);
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

fn ending(name: &str) -> &str {
    name.rfind('.').map_or("", |dot| &name[dot..])
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
