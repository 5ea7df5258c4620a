//! The command line: what it writes, what it refuses to touch, how it ends.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use assert_cmd::Command;
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

const GOOD: &str = "project: {title: Trial}\nruns: [{name: cook, length: 6 ft, depth: 30 in}]\n";

struct Place(tempfile::TempDir);

impl Place {
    fn new() -> Self {
        let place = Self(tempfile::tempdir().unwrap());
        place.write("kitchen.yaml", GOOD);
        place
    }

    fn path(&self, below: &str) -> PathBuf {
        self.0.path().join(below)
    }

    fn write(&self, below: &str, text: &str) {
        fs::create_dir_all(self.path(below).parent().unwrap()).unwrap();
        fs::write(self.path(below), text).unwrap();
    }

    /// Runs a command; gives its exit code and all it said.
    fn run(&self, args: &[&str]) -> (i32, String) {
        let mut run = Command::cargo_bin("islandwright").unwrap();
        let output = run.current_dir(&self.0).args(args).output().unwrap();
        let text = String::from_utf8([&output.stdout[..], &output.stderr[..]].concat()).unwrap();
        assert!(!text.contains("panicked"), "{text}");
        (output.status.code().unwrap(), text)
    }

    fn build(&self, more: &[&str]) -> (i32, String) {
        self.run(&[&["build", "kitchen.yaml"], more].concat())
    }

    fn manifest(&self) -> Value {
        let text = fs::read(self.path("out/kitchen/manifest.json")).unwrap();
        serde_json::from_slice(&text).unwrap()
    }
}

/// All files below a folder, by their names.
fn names(folder: &Path) -> Vec<String> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        if path.is_dir() {
            found.extend(names(&path).into_iter().map(|n| format!("{name}/{n}")));
        } else {
            found.push(name);
        }
    }
    found.sort();
    found
}

#[test]
fn a_build_writes_what_its_manifest_lists() {
    let place = Place::new();
    let (code, said) = place.build(&[]);
    assert_eq!(code, 0, "{said}");
    assert!(
        said.contains("wrote to out/kitchen") && said.contains("models/"),
        "{said}"
    );
    let manifest = place.manifest();
    let files = manifest["files"].as_array().unwrap();
    let mut listed: Vec<_> = files
        .iter()
        .map(|f| f["file"].as_str().unwrap().to_owned())
        .collect();
    listed.push("manifest.json".to_owned());
    listed.sort();
    assert_eq!(listed, names(&place.path("out/kitchen")));
    assert_eq!(manifest["source"], "kitchen.yaml");
    assert_eq!(manifest["version"], env!("CARGO_PKG_VERSION"));
    for file in files {
        let path = place
            .path("out/kitchen")
            .join(file["file"].as_str().unwrap());
        assert_eq!(
            fs::metadata(path).unwrap().len(),
            file["bytes"].as_u64().unwrap()
        );
    }
}

#[test]
fn a_foreign_file_in_the_way_stops_the_build_before_anything_is_written() {
    let place = Place::new();
    place.write("out/kitchen/models/framing.stl", "mine");
    let (code, said) = place.build(&[]);
    assert_eq!(code, 2, "{said}");
    assert!(
        said.contains("framing.stl was not written by this program"),
        "{said}"
    );
    assert_eq!(names(&place.path("out/kitchen")), ["models/framing.stl"]);
    assert_eq!(
        fs::read(place.path("out/kitchen/models/framing.stl")).unwrap(),
        b"mine"
    );
}

#[test]
fn a_foreign_file_beside_the_outputs_stays() {
    let place = Place::new();
    place.build(&[]);
    place.write("out/kitchen/models/notes.txt", "mine");
    place.write("kitchen.yaml", &GOOD.replace("6 ft", "5 ft"));
    assert_eq!(place.build(&[]).0, 0);
    assert_eq!(
        fs::read(place.path("out/kitchen/models/notes.txt")).unwrap(),
        b"mine"
    );
}

#[test]
fn an_output_that_was_changed_since_is_not_overwritten() {
    let place = Place::new();
    place.build(&[]);
    place.write("out/kitchen/models/parts.json", "changed");
    let (code, said) = place.build(&[]);
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("parts.json was not written by this program, or was changed since"));
    assert_eq!(
        fs::read(place.path("out/kitchen/models/parts.json")).unwrap(),
        b"changed"
    );
}

#[test]
fn a_foreign_manifest_or_one_that_points_outside_stops_the_build() {
    for text in [
        "{}",
        "not json",
        r#"{"program": "islandwright", "version": "0", "source": "a", "files": [{"file": "../../kitchen.yaml", "bytes": 1, "sha256": ""}]}"#,
    ] {
        let place = Place::new();
        place.write("out/kitchen/manifest.json", text);
        let (code, said) = place.build(&[]);
        assert_eq!(code, 2, "{said}");
        assert!(
            said.contains("manifest.json was not written by this program"),
            "{said}"
        );
        assert!(place.path("kitchen.yaml").exists());
    }
}

#[test]
fn a_stale_output_goes_only_when_it_is_still_ours() {
    // A manifest of an earlier build that also wrote two files which no build writes now.
    let place = Place::new();
    place.build(&[]);
    let mut manifest = place.manifest();
    for (name, hash) in [
        // SHA-256 of "abc", FIPS 180-2; the second file does not have it any more.
        ("models/old.stl", "abc"),
        ("models/edited.stl", "abcd"),
    ] {
        place.write(&format!("out/kitchen/{name}"), hash);
        let entry = serde_json::json!({"file": name, "bytes": 3,
            "sha256": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"});
        manifest["files"].as_array_mut().unwrap().push(entry);
    }
    place.write("out/kitchen/manifest.json", &manifest.to_string());
    assert_eq!(place.build(&[]).0, 0);
    assert!(!place.path("out/kitchen/models/old.stl").exists());
    assert!(place.path("out/kitchen/models/edited.stl").exists());
}

#[test]
fn only_what_was_asked_for_changes() {
    let place = Place::new();
    place.build(&[]);
    let kept = || -> Vec<String> {
        let all = names(&place.path("out/kitchen")).into_iter();
        all.filter(|n| !n.starts_with("template/")).collect()
    };
    let all = kept();
    let before = fs::read(place.path("out/kitchen/models/parts.json")).unwrap();
    place.write("kitchen.yaml", &GOOD.replace("6 ft", "5 ft"));
    let (code, said) = place.build(&["--only", "template"]);
    assert_eq!(code, 0, "{said}");
    assert_eq!(
        fs::read(place.path("out/kitchen/models/parts.json")).unwrap(),
        before
    );
    assert_eq!(kept(), all);
    assert_eq!(place.build(&[]).0, 0);
    assert_ne!(
        fs::read(place.path("out/kitchen/models/parts.json")).unwrap(),
        before
    );
}

#[test]
fn a_second_build_changes_nothing() {
    let place = Place::new();
    place.build(&[]);
    let stamp = |p: &str| fs::metadata(place.path(p)).unwrap().modified().unwrap();
    let files = [
        "out/kitchen/manifest.json",
        "out/kitchen/models/assembly.stl",
    ];
    let before = files.map(stamp);
    assert_eq!(place.build(&[]).0, 0);
    assert_eq!(files.map(stamp), before);
}

#[test]
fn an_out_that_cannot_be_written_is_said() {
    let place = Place::new();
    place.write("taken", "a file");
    let (code, said) = place.build(&["--out", "taken"]);
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("taken"), "{said}");
    assert_eq!(fs::read(place.path("taken")).unwrap(), b"a file");
    // /proc takes no folders, whoever asks.
    if cfg!(target_os = "linux") {
        let (code, said) = place.build(&["--out", "/proc/islandwright"]);
        assert_eq!(code, 2, "{said}");
        assert!(said.contains("cannot be made"), "{said}");
    }
}

#[test]
fn a_folder_in_the_place_of_an_output_stops_the_build_and_leaves_no_parts() {
    let place = Place::new();
    place.build(&[]);
    let stl = "out/kitchen/models/assembly.stl";
    fs::remove_file(place.path(stl)).unwrap();
    fs::create_dir(place.path(stl)).unwrap();
    place.write("kitchen.yaml", &GOOD.replace("6 ft", "5 ft"));
    let (code, said) = place.build(&[]);
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("is not a plain file"), "{said}");
    assert!(
        names(&place.path("out"))
            .iter()
            .all(|n| !n.contains(".part"))
    );
}

#[test]
fn new_writes_a_starter_that_checks_and_never_overwrites() {
    let place = Place::new();
    for shape in ["straight", "corner", "u"] {
        for units in ["imperial", "metric"] {
            let file = format!("{shape}-{units}.yaml");
            let (code, said) = place.run(&["new", &file, "--shape", shape, "--units", units]);
            assert_eq!(code, 0, "{said}");
            assert_eq!(place.run(&["check", &file]).0, 0);
            let text = fs::read_to_string(place.path(&file)).unwrap();
            assert!(text.contains(&format!("units: {units}")));
            assert!(text.starts_with("# yaml-language-server: $schema="));
        }
    }
    let (code, said) = place.run(&["new", "kitchen.yaml"]);
    assert_eq!(code, 2);
    assert!(said.contains("kitchen.yaml exists already"), "{said}");
    assert_eq!(
        fs::read_to_string(place.path("kitchen.yaml")).unwrap(),
        GOOD
    );
    assert_eq!(place.run(&["new", "no/such/folder/a.yaml"]).0, 2);
}

#[test]
fn check_speaks_to_people_and_to_programs() {
    let place = Place::new();
    let (code, said) = place.run(&["check", "kitchen.yaml", "--format", "json"]);
    let json: Value = serde_json::from_str(&said).unwrap();
    let findings = json["findings"].as_array().unwrap();
    let count = |word: &str| findings.iter().filter(|f| f["verdict"] == word).count();
    assert_eq!((code, count("fail"), count("error")), (0, 0, 0), "{said}");
    assert!(count("pass") > 0);
    let (code, said) = place.run(&["check", "kitchen.yaml"]);
    let last = said.lines().last().unwrap();
    assert!(code == 0 && last.starts_with("kitchen.yaml: "), "{said}");
    // What passes is told only when it is asked for.
    assert!(!said.contains("pass: "), "{said}");
    let (_, said) = place.run(&["check", "kitchen.yaml", "--all"]);
    assert_eq!(
        said.matches("\npass: ").count() + usize::from(said.starts_with("pass: ")),
        count("pass")
    );
    let (code, said) = place.run(&["explain", "fit-flange-cover"]);
    assert!(code == 0 && said.contains("flange"), "{said}");
    let (code, said) = place.run(&["explain", "fit-flange-covr"]);
    assert!(
        code == 2 && said.contains("did you mean 'fit-flange-cover'?"),
        "{said}"
    );
    place.write("kitchen.yaml", &GOOD.replace("6 ft", "72"));
    let (code, said) = place.run(&["check", "kitchen.yaml"]);
    // Worked by hand: `runs: [{name: cook, length: 72` puts the number in column 29.
    let expected = "error[bad-value]: a length has no unit\n --> kitchen.yaml:2:29\n  |\n\
        2 | runs: [{name: cook, length: 72, depth: 30 in}]\n  |                             ^^ runs[1].length\n  |\n  \
        = help: write the unit, such as 24 in, 3' 6-1/2\", 610 mm or 1.2 m\n\nkitchen.yaml: 1 error\n";
    assert_eq!((code, said.as_str()), (2, expected));
}

#[test]
fn wrong_arguments_end_with_two_and_help_with_none() {
    let place = Place::new();
    for args in [
        &["build"][..],
        &["build", "kitchen.yaml", "--tolerance", "0.1"],
        &["build", "kitchen.yaml", "--tolerance", "2 m"],
        &["build", "kitchen.yaml", "--only", "roof"],
        &["bild", "kitchen.yaml"],
        &[],
    ] {
        assert_eq!(place.run(args).0, 2, "{args:?}");
    }
    for args in [&["--help"][..], &["--version"], &["build", "--help"]] {
        assert_eq!(place.run(args).0, 0, "{args:?}");
    }
    assert!(!place.path("out").exists());
}

#[test]
fn completions_and_schema_are_printed() {
    let place = Place::new();
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"] {
        let (code, said) = place.run(&["completions", shell]);
        assert!(
            code == 0 && said.contains("islandwright") && said.contains("tolerance"),
            "{shell}"
        );
    }
    let (_, schema) = place.run(&["schema"]);
    assert_eq!(schema, include_str!("../docs/islandwright.schema.json"));
    let (_, schema) = place.run(&["schema", "--of", "trade"]);
    assert_eq!(schema, include_str!("../docs/trade.schema.json"));
    let (_, page) = place.run(&["schema", "--format", "markdown"]);
    assert_eq!(page, include_str!("../docs/parameter-file.md"));
}

#[test]
fn timings_name_every_stage() {
    let (code, said) = Place::new().build(&["--timings"]);
    assert_eq!(code, 0);
    for stage in [
        "read", "plan", "parts", "models", "drawings", "template", "takeoff", "write",
    ] {
        assert!(said.contains(&format!(" ms {stage}\n")), "{stage}: {said}");
    }
}

#[test]
fn the_takeoff_is_printed_for_people_spreadsheets_and_programs() {
    let place = Place::new();
    let (code, said) = place.run(&["takeoff", "kitchen.yaml"]);
    assert_eq!(code, 0, "{said}");
    assert!(
        said.contains("Order list") && said.contains("C-S01"),
        "{said}"
    );
    let (code, said) = place.run(&["takeoff", "kitchen.yaml", "--format", "json"]);
    let json: Value = serde_json::from_str(&said).unwrap();
    assert_eq!(code, 0);
    let rows = json["cut_list"]["rows"].as_array().unwrap();
    assert_eq!(json["cut_list"]["units"]["length_mm"], "mm");
    // The starter's run is 6 ft long and lies on two sleepers: one along each side.
    let sleepers: Vec<_> = rows.iter().filter(|r| r["kind"] == "sleeper").collect();
    assert!(
        sleepers.iter().filter(|r| r["length_mm"] == 1828.8).count() == 2,
        "{sleepers:?}"
    );
    let one = [
        "takeoff",
        "kitchen.yaml",
        "--table",
        "cut-list",
        "--format",
        "csv",
    ];
    let (code, said) = place.run(&one);
    assert_eq!(code, 0);
    assert_eq!(said.matches("\r\n").count(), rows.len() + 1);
    assert!(
        said.starts_with("section,stick,") && !said.contains("\r\n\r\n"),
        "{said}"
    );
    let (_, all) = place.run(&["takeoff", "kitchen.yaml", "--format", "csv"]);
    assert!(
        all.contains(&format!("\r\n\r\ncut-list\r\n{said}")),
        "{all}"
    );
}

#[test]
fn a_table_that_is_not_there_and_a_broken_file_end_with_two() {
    let place = Place::new();
    let (code, said) = place.run(&["takeoff", "kitchen.yaml", "--table", "roof"]);
    assert_eq!(code, 2);
    assert!(
        said.contains("no table roof") && said.contains("cut-list"),
        "{said}"
    );
    place.write("broken.yaml", &GOOD.replace("6 ft", "72"));
    let (code, said) = place.run(&["takeoff", "broken.yaml"]);
    assert_eq!(code, 2);
    assert!(said.contains("a length has no unit"), "{said}");
    for pair in [
        ["kitchen.yaml", "broken.yaml"],
        ["broken.yaml", "kitchen.yaml"],
    ] {
        let (code, said) = place.run(&["compare", pair[0], pair[1]]);
        assert_eq!(code, 2);
        assert!(said.contains("broken.yaml:2:29"), "{said}");
    }
    assert_eq!(place.run(&["compare", "kitchen.yaml", "none.yaml"]).0, 2);
}

#[test]
fn compare_tells_what_differs_and_nothing_else() {
    let place = Place::new();
    place.write("longer.yaml", &GOOD.replace("6 ft", "8 ft"));
    let (code, said) = place.run(&["compare", "kitchen.yaml", "kitchen.yaml"]);
    assert_eq!(
        (code, said.as_str()),
        (0, "kitchen.yaml and kitchen.yaml: nothing differs\n")
    );
    let (code, said) = place.run(&["compare", "kitchen.yaml", "longer.yaml"]);
    assert_eq!(code, 0, "{said}");
    assert!(
        said.lines().count() > 1 && said.lines().all(|l| l.contains(" → ")),
        "{said}"
    );
    let (_, json) = place.run(&["compare", "kitchen.yaml", "longer.yaml", "--format", "json"]);
    let json: Value = serde_json::from_str(&json).unwrap();
    let rows = json["differences"]["rows"].as_array().unwrap();
    assert_eq!(rows.len(), said.lines().count());
    assert!(rows.iter().all(|r| r["first"] != r["second"]), "{rows:?}");
}

#[test]
fn the_takeoff_folder_holds_tables_sheets_and_labels() {
    let place = Place::new();
    let (code, said) = place.build(&["--only", "takeoff"]);
    assert_eq!(code, 0, "{said}");
    let files = names(&place.path("out/kitchen"));
    assert!(
        files
            .iter()
            .all(|f| f.starts_with("takeoff/") || f == "manifest.json"),
        "{files:?}"
    );
    for file in [
        "takeoff.xlsx",
        "takeoff.json",
        "cut-list.csv",
        "order.csv",
        "sticks-1.svg",
        "labels.pdf",
    ] {
        assert!(
            files.contains(&format!("takeoff/{file}")),
            "{file}: {files:?}"
        );
    }
}

#[test]
fn a_trade_file_adds_to_what_is_known_and_a_later_one_counts() {
    let place = Place::new();
    let entry = |price: &str| {
        format!(
            "supplies:\n  - name: yard strip\n    for: sleeper\n    sold: {{stick: {{length: 12 ft}}}}\n    \
             shop: corner yard\n    price: {price}\n"
        )
    };
    place.write("first.yaml", &entry("3.10 USD"));
    place.write("second.yaml", &entry("$2.25"));
    let order = |more: &[&str]| {
        let all = ["takeoff", "kitchen.yaml", "--table", "order"];
        place.run(&[&all[..], more].concat())
    };
    let (code, said) = order(&[]);
    assert!(code == 0 && !said.contains("yard strip"), "{said}");
    let (code, said) = order(&["--trade", "first.yaml"]);
    assert!(code == 0 && said.contains("corner yard"), "{said}");
    assert!(
        said.contains("yard strip") && said.contains("3.10"),
        "{said}"
    );
    let (_, said) = order(&["--trade", "first.yaml", "--trade", "second.yaml"]);
    assert!(said.contains("2.25") && !said.contains("3.10"), "{said}");
    for command in ["check", "build"] {
        let args = [command, "kitchen.yaml", "--trade", "first.yaml"];
        assert_eq!(place.run(&args).0, 0);
    }
    let compare = [
        "compare",
        "kitchen.yaml",
        "kitchen.yaml",
        "--trade",
        "first.yaml",
    ];
    assert_eq!(place.run(&compare).0, 0);
}

#[test]
fn a_bad_trade_file_is_named_with_its_own_lines() {
    let place = Place::new();
    place.write(
        "soft.yaml",
        "supplies:\n  - {name: strip, for: sleeper, sold: {stick: {length: 12 ft}}, price: 3.10}\n",
    );
    place.write("hard.yaml", "supplies:\n  - {nam: strip}\n");
    // Worked by hand: the price begins in column 72 of line 2, the key `nam` in column 6.
    for command in ["check", "build", "takeoff"] {
        let (code, said) = place.run(&[command, "kitchen.yaml", "--trade", "soft.yaml"]);
        assert_eq!(code, 1, "{command}: {said}");
        assert!(said.contains("'3.10' has no currency"), "{command}: {said}");
        assert!(said.contains("soft.yaml:2:72"), "{command}: {said}");
        let (code, said) = place.run(&[command, "kitchen.yaml", "--trade", "hard.yaml"]);
        assert_eq!(code, 2, "{command}: {said}");
        assert!(said.contains("hard.yaml:2:6"), "{command}: {said}");
        let (code, said) = place.run(&[command, "kitchen.yaml", "--trade", "none.yaml"]);
        assert!(
            code == 2 && said.contains("none.yaml cannot be read"),
            "{said}"
        );
    }
    let args = [
        "check",
        "kitchen.yaml",
        "--format",
        "json",
        "--trade",
        "soft.yaml",
    ];
    let json: Value = serde_json::from_str(&place.run(&args).1).unwrap();
    assert_eq!(json["file"], "kitchen.yaml");
    assert_eq!(json["verdict"], "fail");
    assert_eq!(json["findings"][0]["file"], "soft.yaml");
    assert_eq!(json["findings"][0]["line"], 2);
}

#[test]
fn a_title_block_of_ones_own_is_drawn_and_a_bad_one_is_named_with_its_lines() {
    let place = Place::new();
    place.write(
        "own.yaml",
        "rows:\n  - - {field: sheet, label: leaf, width: 60 mm}\n    - {field: scale, width: 60 mm}\n    \
         - {field: title, label: drawing of, width: 60 mm}\n",
    );
    place.write(
        "bad.yaml",
        "rows:\n  - - {field: sheet, width: 60}\n    - {feld: scale, width: 60 mm}\n",
    );
    let build = |form: &str| {
        let all = ["build", "kitchen.yaml", "--only", "drawings"];
        place.run(&[&all[..], &["--title-block", form]].concat())
    };
    let (code, said) = build("own.yaml");
    assert_eq!(code, 0, "{said}");
    let sheet =
        std::fs::read_to_string(place.0.path().join("out/kitchen/drawings/plan-island.svg"))
            .unwrap();
    assert!(sheet.contains(">leaf<") && sheet.contains(">drawing of<"));
    assert!(!sheet.contains(">drawn by<"));
    // Worked by hand: the number begins in column 29 of line 2, the key `feld` in column 8 of line 3.
    let (code, said) = build("bad.yaml");
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("bad.yaml:2:29"), "{said}");
    assert!(
        said.contains("bad.yaml:3:8") && said.contains("'field'"),
        "{said}"
    );
    let (code, said) = build("none.yaml");
    assert!(
        code == 2 && said.contains("none.yaml cannot be read"),
        "{said}"
    );
}

#[test]
fn the_pour_plan_is_printed_for_any_moment() {
    let text = include_str!("../params/garden-corner.yaml");
    let place = Place::new();
    place.write("corner.yaml", text);
    let (code, said) = place.run(&["pour", "corner.yaml"]);
    assert_eq!(code, 0, "{said}");
    for word in [
        "±40 %",
        "Fri 2027-05-14 05:00",
        "trowel with steel",
        "respirator",
    ] {
        assert!(said.contains(word), "{word}: {said}");
    }
    let hot = ["pour", "corner.yaml", "--at", "2027-05-14T15:00"];
    let (code, said) = place.run(&hot);
    assert_eq!(code, 1, "{said}");
    assert!(said.contains("fail[weather-evaporation]"), "{said}");
    let (code, said) = place.run(&[&hot[..], &["--format", "json"]].concat());
    assert_eq!(code, 1);
    assert!(said.contains("\"setting_clock\""), "{said}");
    let (code, said) = place.run(&["pour", "corner.yaml", "--at", "yesterday"]);
    assert_eq!(code, 2);
    assert!(
        said.contains("--at") && said.contains("is not a date and a time"),
        "{said}"
    );
    let (code, said) = place.run(&["pour", "corner.yaml", "--at", "2027-07-01"]);
    assert_eq!(code, 1);
    assert!(said.contains("outside-forecast"), "{said}");
    place.write(
        "mild.csv",
        "time,air °F,humidity %,wind mph\n2027-07-01T05:00,60,80,2\n2027-07-01T06:00,61,80,2\n2027-07-01T07:00,62,80,2\n2027-07-01T08:00,64,80,2\n2027-07-01T09:00,64,80,2\n",
    );
    let own = [
        "pour",
        "corner.yaml",
        "--at",
        "2027-07-01T05:00",
        "--forecast",
        "mild.csv",
    ];
    let (code, said) = place.run(&own);
    assert_eq!(code, 0, "{said}");
    let (_, csv) = place.run(&[&own[..], &["--table", "pour-hours", "--format", "csv"]].concat());
    assert!(csv.contains("2027-07-01T09:00,64.0,80.0"), "{csv}");
}
