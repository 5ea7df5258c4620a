//! The schema and the reference page: committed as the program prints them, complete, and true.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use islandwright::{design, parameters};
use serde_json::Value;

#[test]
fn the_committed_schema_is_the_one_of_the_types() {
    let committed = std::fs::read_to_string("docs/islandwright.schema.json").unwrap();
    assert!(
        committed == parameters::schema_text().unwrap(),
        "renew it: cargo run -- schema > docs/islandwright.schema.json"
    );
}

#[test]
fn the_committed_schema_of_trade_files_is_the_one_of_the_types() {
    let committed = std::fs::read_to_string("docs/trade.schema.json").unwrap();
    assert!(
        committed == parameters::trade_schema_text().unwrap(),
        "renew it: cargo run -- schema --of trade > docs/trade.schema.json"
    );
}

#[test]
fn the_committed_page_is_made_from_the_schema() {
    let committed = std::fs::read_to_string("docs/parameter-file.md").unwrap();
    assert!(
        committed == parameters::reference(),
        "renew it: cargo run -- schema --format markdown > docs/parameter-file.md"
    );
}

/// Every key below a schema with whether it has a description.
fn keys(schema: &Value, path: &str, found: &mut Vec<(String, bool)>) {
    if let Some(properties) = schema.get("properties").and_then(Value::as_object) {
        for (key, inner) in properties {
            let path = format!("{path}.{key}");
            // The word of a choice is described beside it, not in it.
            let described = inner.get("description").is_some()
                || schema.get("description").is_some() && properties.len() == 1;
            found.push((path.clone(), described));
            keys(inner, &path, found);
        }
    }
    for choice in schema
        .get("oneOf")
        .and_then(Value::as_array)
        .into_iter()
        .flatten()
    {
        found.push((
            format!("{path}, a choice"),
            choice.get("description").is_some(),
        ));
        keys(choice, path, found);
    }
}

#[test]
fn every_key_is_described() {
    let schema: Value = serde_json::from_str(&parameters::schema_text().unwrap()).unwrap();
    let mut found = Vec::new();
    keys(&schema, "file", &mut found);
    for (name, group) in schema["$defs"].as_object().unwrap() {
        found.push((name.clone(), group.get("description").is_some()));
        keys(group, name, &mut found);
    }
    assert!(found.len() > 100);
    let bare: Vec<_> = found.iter().filter(|f| !f.1).collect();
    assert!(bare.is_empty(), "{bare:?}");
}

/// Takes away one key of the file at a time and says what the program says.
fn without(file: &serde_yaml::Value, at: &[serde_yaml::Value], key: &str) -> Vec<String> {
    let mut file = file.clone();
    let mut group = &mut file;
    for step in at {
        group = match step.as_u64() {
            Some(number) => &mut group[number as usize],
            None => &mut group[step.as_str().unwrap()],
        };
    }
    group.as_mapping_mut().unwrap().remove(key).unwrap();
    let text = serde_yaml::to_string(&file).unwrap();
    // What only takeoff and checks read is said beside a design that can be built.
    let findings = design::from_text(&text).map_or_else(|f| f, |design| design.findings);
    findings
        .into_iter()
        .map(|f| format!("{} {}", f.code, f.place.key))
        .collect()
}

/// Walks file and schema together.
fn walk(
    file: &serde_yaml::Value,
    at: &mut Vec<serde_yaml::Value>,
    schema: &Value,
    group: &Value,
    tried: &mut usize,
) {
    let mut here = file;
    for step in at.iter() {
        here = match step.as_u64() {
            Some(number) => &here[number as usize],
            None => &here[step.as_str().unwrap()],
        };
    }
    let needed: Vec<&str> = group["required"]
        .as_array()
        .map_or(Vec::new(), |r| r.iter().filter_map(Value::as_str).collect());
    for (key, value) in here.as_mapping().unwrap() {
        let key = key.as_str().unwrap();
        // What others are placed by, what a second run needs, or what a survey may have as a grid instead, is needed
        // without the schema saying so.
        let by_others = matches!(
            key,
            "turn"
                | "run"
                | "appliances"
                | "side"
                | "from"
                | "distance"
                | "in_line_with"
                | "points"
        );
        if !by_others {
            let said = without(file, at, key);
            let missing = said
                .iter()
                .any(|s| s.starts_with("missing-key") && s.ends_with(key));
            assert_eq!(missing, needed.contains(&key), "{at:?} {key}: {said:?}");
            // Others may refer by name to what is gone.
            let refers = |s: &&String| s.starts_with("unknown-n");
            let said_of_itself = said.iter().any(|s| !refers(&s));
            assert_eq!(said_of_itself, missing, "{at:?} {key}: {said:?}");
            *tried += 1;
        }
        let mut inner = &group["properties"][key];
        let items = inner.get("items").is_some();
        if items {
            inner = &inner["items"];
        }
        let Some(name) = inner.get("$ref").and_then(Value::as_str) else {
            continue;
        };
        let inner = &schema["$defs"][name.trim_start_matches("#/$defs/")];
        if inner.get("properties").is_none() {
            continue;
        }
        at.push(key.into());
        if items {
            for i in 0..value.as_sequence().unwrap().len() {
                at.push(i.into());
                walk(file, at, schema, inner, tried);
                at.pop();
            }
        } else {
            walk(file, at, schema, inner, tried);
        }
        at.pop();
    }
}

#[test]
fn what_the_schema_calls_required_is_what_the_program_misses() {
    let schema: Value = serde_json::from_str(&parameters::schema_text().unwrap()).unwrap();
    let text = std::fs::read_to_string("params/garden-corner.yaml").unwrap();
    let file: serde_yaml::Value = serde_yaml::from_str(&text).unwrap();
    let mut tried = 0;
    walk(&file, &mut Vec::new(), &schema, &schema, &mut tried);
    assert!(tried > 100, "{tried}");
}
