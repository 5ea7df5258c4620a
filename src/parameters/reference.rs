//! The parameter file key by key as a page, made from the schema.

use serde_json::{Map, Value};
use std::fmt::Write;

const HEAD: &str = "\
# The parameter file, key by key

This page is made from the descriptions in the program; `islandwright schema --format markdown` prints it, and a test
compares the two. `islandwright schema` prints the same as a JSON Schema, by which editors complete and check a file.

A length carries its unit: `24 in`, `24\"`, `3' 6-1/2\"`, `3 ft 6 1/2 in`, `610 mm`, `61 cm`, `1.2 m`. What is not
marked as needed may be left out and gets the usual value; where two are given, the first is for an imperial file and
the second for a metric one. Texts are one line without control characters.

Other amounts carry their unit too: an area `20 sq ft` or `1.9 m2`, a volume `0.60 cu ft`, `17 L` or `3 qt`, a weight
`80 lb` or `36 kg`, a share `10 %`, a price `11.80 USD` or `€ 9.50`, a strength or pressure `4,000 psi`, `28 MPa` or `0.5 in w.c.`, heat
`60,000 Btu/h` or `17.5 kW`, a fall `1/8 in per ft`. [supplies.md](supplies.md) says more about buying and supplies.

What only the checks read has no usual value: left out, it is not known, and the checks that need it say `not checked`.
[checks.md](checks.md) documents the checks and names their limits.
";

/// The page as Markdown.
pub fn reference() -> String {
    let schema = super::schema().to_value();
    let mut page = Page {
        text: HEAD.to_owned(),
        groups: schema
            .get("$defs")
            .and_then(Value::as_object)
            .cloned()
            .unwrap_or_default(),
        seen: Vec::new(),
        choices: String::new(),
    };
    page.section("", &schema);
    page.text
}

struct Page {
    text: String,
    groups: Map<String, Value>,
    /// Names of the groups that have a section, with their path.
    seen: Vec<(String, String)>,
    /// What the words of the choices in the section at hand mean.
    choices: String,
}

impl Page {
    /// A section for a group of keys, then those of the groups below it.
    fn section(&mut self, path: &str, group: &Value) {
        let title = if path.is_empty() {
            "The whole file".to_owned()
        } else {
            format!("`{path}`")
        };
        let _ = write!(self.text, "\n## {title}\n\n{}\n", description(group));
        let Some(keys) = group.get("properties").and_then(Value::as_object) else {
            return;
        };
        self.text
            .push_str("\n| key | value | meaning |\n| --- | --- | --- |\n");
        let mut below = Vec::new();
        for (key, schema) in keys {
            let needed = if is_needed(group, key) {
                " **Needed.**"
            } else {
                ""
            };
            let full = if path.is_empty() {
                key.clone()
            } else {
                format!("{path}.{key}")
            };
            let value = self.value(schema, &full, &mut below);
            let about = description(schema);
            let _ = writeln!(self.text, "| `{key}` | {value} | {about}{needed} |");
        }
        self.text.push_str(&std::mem::take(&mut self.choices));
        for (path, name) in below {
            if let Some(group) = self.groups.get(&name).cloned() {
                self.section(&path, &group);
            }
        }
    }

    /// What can stand behind a key; a group that has no section yet is put down to get one.
    fn value(&mut self, schema: &Value, path: &str, below: &mut Vec<(String, String)>) -> String {
        if let Some(items) = schema.get("items") {
            return format!("list: {}", self.value(items, &format!("{path}[]"), below));
        }
        let Some(name) = schema.get("$ref").and_then(Value::as_str) else {
            return match schema.get("type").and_then(Value::as_str) {
                Some("boolean") => "`true` or `false`".to_owned(),
                _ => "text".to_owned(),
            };
        };
        let name = name.trim_start_matches("#/$defs/").to_owned();
        let Some(group) = self.groups.get(&name).cloned() else {
            return name;
        };
        if is_amount(&group) {
            return name.to_lowercase();
        }
        if group.get("anyOf").is_some() {
            return "text, or a list of texts".to_owned();
        }
        if let Some(choices) = group.get("oneOf").and_then(Value::as_array) {
            if self.seen.iter().all(|(n, _)| *n != name) {
                self.explain(path, choices);
                self.seen.push((name, path.to_owned()));
            }
            return choices.iter().map(choice).collect::<Vec<_>>().join(", ");
        }
        if let Some((_, at)) = self.seen.iter().find(|(n, _)| *n == name) {
            return format!("keys as in `{at}`");
        }
        self.seen.push((name.clone(), path.to_owned()));
        below.push((path.to_owned(), name));
        format!("keys, see `{path}`")
    }
}

impl Page {
    /// What each word of a choice means.
    fn explain(&mut self, path: &str, choices: &[Value]) {
        let key = path.trim_end_matches("[]");
        let key = key.rsplit('.').next().unwrap_or(key);
        let _ = write!(self.choices, "\n`{key}`:\n\n");
        for c in choices {
            let _ = writeln!(self.choices, "- {}: {}", choice(c), description(c));
            let inner = c.get("properties").and_then(Value::as_object);
            for (_, group) in inner.into_iter().flatten() {
                let keys = group.get("properties").and_then(Value::as_object);
                for (key, schema) in keys.into_iter().flatten() {
                    let kind = kind(schema);
                    let _ = writeln!(self.choices, "  - `{key}`, {kind}: {}", description(schema));
                }
            }
        }
    }
}

/// True for what is written as one text and read as an amount.
fn is_amount(group: &Value) -> bool {
    group.get("pattern").is_some()
}

/// What stands behind a key of a choice, with its article.
fn kind(schema: &Value) -> String {
    let name = schema.get("$ref").and_then(Value::as_str);
    name.map_or_else(
        || "text".to_owned(),
        |name| {
            let name = name.trim_start_matches("#/$defs/").to_lowercase();
            let article = if name.starts_with('a') { "an" } else { "a" };
            format!("{article} {name}")
        },
    )
}

/// One word of a choice, with the keys that go with it.
fn choice(schema: &Value) -> String {
    if let Some(word) = schema.get("const").and_then(Value::as_str) {
        return format!("`{word}`");
    }
    let words = schema.get("properties").and_then(Value::as_object);
    let spelt = words.into_iter().flatten().map(|(word, inner)| {
        let keys = inner.get("properties").and_then(Value::as_object);
        let keys = keys
            .into_iter()
            .flatten()
            .map(|(key, _)| format!("{key}: …"));
        format!("`{{{word}: {{{}}}}}`", keys.collect::<Vec<_>>().join(", "))
    });
    spelt.collect::<Vec<_>>().join(", ")
}

fn description(schema: &Value) -> String {
    let text = schema.get("description").and_then(Value::as_str);
    text.unwrap_or_default().replace('\n', " ")
}

fn is_needed(group: &Value, key: &str) -> bool {
    let needed = group.get("required").and_then(Value::as_array);
    needed.is_some_and(|n| n.iter().any(|k| k == key))
}
