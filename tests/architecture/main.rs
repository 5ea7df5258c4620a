//! Holds the sources against the borders of the design: who may import whom, who may touch the machine, how long files
//! and functions may be.

mod paths;
mod source;

use paths::paths;
use source::{Source, Token, function_lengths, sources};

/// The foundation that every stage from the design on may use.
const FOUNDATION: &[&str] = &["units", "geometry", "diagnostics", "table"];

/// What each module may import besides itself, from the table in DEVELOPERS.md.
///
/// `catalog` is with all that may read the design: the design's values are of the catalogue's types.
fn may_import(module: &str) -> Option<Vec<&'static str>> {
    let plus = |more: &[&'static str]| Some([FOUNDATION, more].concat());
    match module {
        "units" | "diagnostics" => Some(vec![]),
        "geometry" | "table" => Some(vec!["units"]),
        // A section's cross-section is an outline.
        "catalog" => Some(vec!["units", "diagnostics", "geometry"]),
        "parameters" => Some(vec!["units", "diagnostics"]),
        "design" => plus(&["parameters", "catalog"]),
        "plan" => plus(&["design", "catalog"]),
        "parts" => plus(&["plan", "design", "catalog"]),
        "mesh" | "drawing" | "takeoff" | "site" => plus(&["parts", "plan", "design", "catalog"]),
        "rules" => plus(&["design", "plan", "parts", "takeoff", "site", "catalog"]),
        "write" => Some(vec![
            "mesh",
            "drawing",
            "table",
            "diagnostics",
            "parts",
            "geometry",
            "units",
            "catalog",
        ]),
        "pipeline" => plus(&[
            "catalog",
            "parameters",
            "design",
            "plan",
            "parts",
            "mesh",
            "drawing",
            "takeoff",
            "site",
            "rules",
            "write",
        ]),
        "cli" => Some(vec!["pipeline", "write", "parameters", "diagnostics"]),
        "" => plus(&[
            "catalog",
            "parameters",
            "design",
            "plan",
            "parts",
            "mesh",
            "drawing",
            "takeoff",
            "site",
            "rules",
            "write",
            "pipeline",
            "cli",
        ]),
        _ => None,
    }
}

/// Siblings in `parts` that share nothing but the plan.
const APART: [&str; 5] = ["framing", "cladding", "counter", "forms", "fixtures"];

fn border_faults(source: &Source) -> Vec<String> {
    let own = source.module.first().map_or("", String::as_str);
    let Some(allowed) = may_import(own) else {
        return vec![format!(
            "{}: module `{own}` is not in the table",
            source.path
        )];
    };
    let mut faults = Vec::new();
    for named in paths(source).iter().filter(|p| p.names[0] == "crate") {
        let Some(other) = named.names.get(1) else {
            continue;
        };
        let place = format!("{}:{}: {}", source.path, named.line, named.names.join("::"));
        if may_import(other).is_none() {
            faults.push(format!("{place}: not a module of the table"));
        } else if other != own && !allowed.contains(&other.as_str()) {
            faults.push(format!("{place}: `{own}` may not import `{other}`"));
        }
        if let (Some(mine), Some(theirs), true) = (
            source.module.get(1),
            named.names.get(2),
            own == "parts" && other == own,
        ) && mine != theirs
            && APART.contains(&mine.as_str())
            && APART.contains(&theirs.as_str())
        {
            faults.push(format!("{place}: `{mine}` may not import `{theirs}`"));
        }
    }
    faults
}

#[test]
fn modules_import_only_what_the_table_allows() {
    let faults: Vec<_> = sources().iter().flat_map(border_faults).collect();
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

#[test]
fn only_the_command_line_touches_files_clock_environment_and_terminal() {
    let mut faults = Vec::new();
    for source in sources() {
        if source.module.first().is_some_and(|m| m == "cli") || source.path == "main.rs" {
            continue;
        }
        for named in paths(&source) {
            let machine = ["fs", "env", "time", "process", "net"];
            if named.names[0] == "std"
                && named
                    .names
                    .get(1)
                    .is_some_and(|n| machine.contains(&n.as_str()))
            {
                faults.push(format!(
                    "{}:{}: {}",
                    source.path,
                    named.line,
                    named.names.join("::")
                ));
            }
        }
        let prints = [
            "print",
            "println",
            "eprint",
            "eprintln",
            "env",
            "option_env",
        ];
        for pair in source.tokens.windows(2) {
            if prints.contains(&pair[0].text.as_str()) && pair[1].text == "!" {
                faults.push(format!(
                    "{}:{}: {}!",
                    source.path, pair[0].line, pair[0].text
                ));
            }
        }
    }
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

/// The value that `share` of the sorted numbers do not pass.
fn quantile(sorted: &[usize], share: f64) -> usize {
    sorted[((sorted.len() as f64 * share).ceil() as usize).clamp(1, sorted.len()) - 1]
}

#[test]
fn files_are_short() {
    let sources = sources();
    let mut lengths: Vec<usize> = sources.iter().map(|s| s.lines).collect();
    lengths.sort_unstable();
    let longest: Vec<_> = sources
        .iter()
        .filter(|s| s.lines > 450)
        .map(|s| format!("{} {}", s.path, s.lines))
        .collect();
    let (median, ninth, most) = (
        quantile(&lengths, 0.5),
        quantile(&lengths, 0.9),
        quantile(&lengths, 1.0),
    );
    println!(
        "files {}, median {median}, 90 % {ninth}, longest {most}",
        lengths.len()
    );
    assert!(
        median <= 200 && ninth <= 450 && most <= 700,
        "median {median}, 90 % {ninth}, longest {most}: {longest:?}"
    );
}

#[test]
fn functions_are_short() {
    let mut all: Vec<(usize, String)> = sources()
        .iter()
        .flat_map(|s| {
            function_lengths(&s.tokens)
                .into_iter()
                .map(|(name, n)| (n, format!("{} {name}", s.path)))
        })
        .collect();
    all.sort();
    let lengths: Vec<usize> = all.iter().map(|f| f.0).collect();
    let (median, most) = (quantile(&lengths, 0.5), all.last().unwrap());
    println!("functions {}, median {median}, longest {most:?}", all.len());
    assert!(
        median <= 10 && most.0 <= 80,
        "median {median}, longest {most:?}"
    );
}

#[test]
fn files_are_named_for_what_they_hold() {
    for source in sources() {
        for name in &source.module {
            let empty = ["utils", "util", "common", "helpers", "misc", "stuff"];
            assert!(
                !empty.contains(&name.as_str()),
                "{} names no concept",
                source.path
            );
        }
    }
}

/// A source made up to see the check fail.
fn invented(path: &str, text: &str) -> Source {
    let module = path.split('/').map(str::to_owned).collect();
    let tokens: Vec<Token> = source::tokens(text);
    Source {
        path: path.to_owned(),
        module,
        lines: 1,
        tokens,
    }
}

#[test]
fn a_broken_border_is_seen_however_it_is_spelt() {
    for (path, text, seen) in [
        ("mesh/weld", "use crate::drawing::Sheet;", 1),
        (
            "mesh/weld",
            "use crate::{drawing::Sheet, geometry::Solid, write};",
            2,
        ),
        ("mesh/weld", "fn f(s: &crate::cli::Build) {}", 1),
        ("mesh/weld", "fn f(s: &super::super::drawing::Sheet) {}", 1),
        (
            "mesh/weld",
            "use super::{super::{drawing as d, parts}, own};",
            1,
        ),
        (
            "units/parse",
            "pub use crate::geometry::{self, Outline};",
            2,
        ),
        (
            "parts/framing/panel",
            "use super::super::cladding::Board;",
            1,
        ),
        (
            "parts/framing",
            "use crate::parts::counter::{Slab, Form};",
            2,
        ),
        (
            "mesh/weld",
            "// use crate::drawing::Sheet;\nconst A: &str = \"crate::drawing::Sheet\"; /* crate::cli::x */",
            0,
        ),
        (
            "mesh/weld",
            "use crate::geometry::Solid; const C: char = '\"'; fn f<'a>(x: &'a str) {}",
            0,
        ),
        (
            "parts/framing/panel",
            "use super::super::{Part, Piece}; use crate::plan::Face;",
            0,
        ),
        ("gadgets/x", "", 1),
    ] {
        assert_eq!(
            border_faults(&invented(path, text)).len(),
            seen,
            "{path}: {text}"
        );
    }
}
