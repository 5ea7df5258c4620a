//! Islands made for measuring: chains of runs that grow.

use std::fmt::Write as _;

/// The parameter file of a chain that goes on in stairs, so that it never meets itself.
pub fn text(runs: usize) -> String {
    let mut text = "project:\n  title: A chain made for measuring\nruns:\n".to_owned();
    for i in 0..runs {
        let turn = ["    turn: right\n", "    turn: left\n"][i % 2];
        let turn = if i == 0 { "" } else { turn };
        let _ = write!(
            text,
            "  - name: run {i}\n    length: 12 ft\n    depth: 30 in\n{turn}"
        );
    }
    text
}
