//! Broken parameter files, each with what must be said about it.
//!
//! A file of `tests/broken` begins with what is expected, written by hand: `# exit 2`, then for every finding in
//! order `# line:column code: what was found`. Nothing may be left out of it and nothing may be added. Every file is
//! also built over an earlier output, which must stay as it was; where a file can be used all the same (`# exit 1`), it must
//! be built.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use assert_cmd::Command;
use islandwright::rules;
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

const GOOD: &str = "project: {title: Trial}\nruns: [{name: cook, length: 6 ft, depth: 30 in}]\n";

fn program() -> Command {
    Command::cargo_bin("islandwright").unwrap()
}

/// What a file expects: its exit code and its findings.
fn expected(text: &str) -> (i32, Vec<String>) {
    let mut head = text.lines().map_while(|l| l.strip_prefix("# "));
    let code = head.next().unwrap().strip_prefix("exit ").unwrap();
    let findings = head.filter(|l| l.starts_with(|c: char| c.is_ascii_digit()));
    (code.parse().unwrap(), findings.map(str::to_owned).collect())
}

/// Everything below a folder with its contents.
fn tree(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut found = BTreeMap::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                found.insert(path.clone(), std::fs::read(path).unwrap());
            }
        }
    }
    found
}

/// A folder with a good file `case.yaml` built into `out/case`.
fn built() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("case.yaml"), GOOD).unwrap();
    let mut build = program();
    build.current_dir(&dir).args(["build", "case.yaml"]);
    build.assert().code(0);
    assert!(tree(&dir.path().join("out")).len() > 3);
    dir
}

fn said(output: &std::process::Output) -> String {
    let text = [&output.stdout[..], &output.stderr[..]].concat();
    let text = String::from_utf8(text).unwrap();
    assert!(!text.contains("panicked"), "{text}");
    text
}

#[test]
fn every_broken_file_is_refused_with_its_words_and_touches_nothing() {
    let dir = built();
    let out = dir.path().join("out");
    let mut before = tree(&out);
    let mut wrong = Vec::new();
    let mut paths: Vec<_> = std::fs::read_dir("tests/broken")
        .unwrap()
        .map(|e| e.unwrap().path())
        .collect();
    paths.sort();
    assert!(paths.len() >= 60);
    for path in paths {
        let text = std::fs::read_to_string(&path).unwrap();
        let (code, findings) = expected(&text);
        std::fs::write(dir.path().join("case.yaml"), &text).unwrap();
        let mut check = program();
        check
            .current_dir(&dir)
            .args(["check", "case.yaml", "--format", "json"]);
        let check = check.output().unwrap();
        let json: Value = serde_json::from_str(&said(&check)).unwrap();
        let found: Vec<String> = json["findings"]
            .as_array()
            .unwrap()
            .iter()
            // What the rules answer has tests of its own.
            .filter(|f| rules::rule(f["code"].as_str().unwrap()).is_none())
            .map(|f| {
                let words = f["found"].as_str().unwrap();
                format!(
                    "{}:{} {}: {words}",
                    f["line"],
                    f["column"],
                    f["code"].as_str().unwrap()
                )
            })
            .collect();
        let mut build = program();
        build.current_dir(&dir).args(["build", "case.yaml"]);
        let build = build.output().unwrap();
        let words = said(&build);
        let shown = findings.iter().all(|f| {
            let (place, rest) = f.split_once(' ').unwrap();
            let words_of = rest.split_once(": ").unwrap().1;
            words.contains(words_of)
                && (place == "0:0" || words.contains(&format!("case.yaml:{place}\n")))
        });
        let codes = (check.status.code(), build.status.code());
        if found != findings || codes != (Some(code), Some(code)) || !shown {
            wrong.push(format!(
                "{}: {codes:?}, shown {shown}\n  {findings:#?}\n  {found:#?}",
                path.display()
            ));
        }
        if code == 1 {
            assert!(words.contains("wrote to out/case"), "{}", path.display());
            before = tree(&out);
        }
        assert!(
            tree(&out) == before,
            "{} changed the earlier output",
            path.display()
        );
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Checks and builds bytes that cannot be kept as a text file here.
fn refuses(bytes: &[u8], expected: &str) {
    let dir = built();
    let before = tree(&dir.path().join("out"));
    std::fs::write(dir.path().join("case.yaml"), bytes).unwrap();
    for command in ["check", "build"] {
        let mut run = program();
        run.current_dir(&dir).args([command, "case.yaml"]);
        let output = run
            .timeout(std::time::Duration::from_secs(20))
            .output()
            .unwrap();
        let words = said(&output);
        assert!(words.contains(expected), "{command}: {words}");
        assert_eq!(output.status.code(), Some(2), "{command}: {words}");
    }
    assert!(tree(&dir.path().join("out")) == before);
}

#[test]
fn an_empty_file_is_refused() {
    refuses(b"", "the file says nothing");
    refuses(b" \n\n", "the file says nothing");
}

#[test]
fn what_is_not_utf8_is_refused_with_its_line() {
    refuses(
        b"project:\n  title: caf\xe9\n",
        "case.yaml: line 2 is not UTF-8 text",
    );
}

#[test]
fn a_nul_is_refused_with_its_place() {
    refuses(b"project:\n  title: \x00\n", "case.yaml:2:10");
}

#[test]
fn deep_nesting_is_refused_at_once() {
    let open = "[".repeat(100_000);
    refuses(open.as_bytes(), "the file is nested more than 32 deep");
    let groups = "{a: ".repeat(100_000);
    refuses(groups.as_bytes(), "the file is nested more than 32 deep");
    let dashes = "- ".repeat(100_000);
    refuses(dashes.as_bytes(), "the file is nested more than 32 deep");
}

#[test]
fn an_enormous_file_is_refused() {
    let notes = "# a note\n".repeat(600_000);
    refuses(notes.as_bytes(), "case.yaml is larger than 4 MiB");
    let items = format!(
        "project: {{title: Trial}}\nruns: [{}]\n",
        "a, ".repeat(300_000)
    );
    refuses(
        items.as_bytes(),
        "the file is far larger than a parameter file can be",
    );
}

#[test]
fn hundreds_of_errors_are_cut_short() {
    let runs = "  - {nam: x}\n".repeat(300);
    let text = format!("project: {{title: Trial}}\nruns:\n{runs}");
    refuses(
        text.as_bytes(),
        "there are more than 200 errors; the others are not shown",
    );
}

#[test]
fn a_folder_and_a_missing_file_are_refused() {
    let dir = built();
    std::fs::create_dir(dir.path().join("kitchen.yaml")).unwrap();
    for (file, words) in [
        ("kitchen.yaml", "kitchen.yaml is a folder"),
        ("missing.yaml", "missing.yaml cannot be read"),
        ("..", ".. is a folder"),
    ] {
        for command in ["check", "build"] {
            let mut run = program();
            let output = run
                .current_dir(&dir)
                .args([command, file])
                .output()
                .unwrap();
            assert!(said(&output).contains(words), "{}", said(&output));
            assert_eq!(output.status.code(), Some(2));
        }
    }
}

#[test]
fn markup_in_a_title_is_no_error() {
    let dir = built();
    let text = GOOD.replace("Trial", "\"<script>alert(1)</script> & ]]> \\u00e9\"");
    std::fs::write(dir.path().join("case.yaml"), text).unwrap();
    let mut build = program();
    build
        .current_dir(&dir)
        .args(["build", "case.yaml"])
        .assert()
        .code(0);
    for (path, bytes) in tree(&dir.path().join("out")) {
        let text = String::from_utf8_lossy(&bytes);
        let is_markup = path.extension().is_some_and(|e| e == "svg");
        assert!(
            !(is_markup && text.contains("<script")),
            "{}",
            path.display()
        );
    }
}
