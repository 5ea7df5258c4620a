//! What a key of the file means, from the schema.

use serde_json::Value;

/// A key as the schema describes it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Described {
    /// What it is.
    pub about: String,
    /// The words that may stand there; empty where any text of its kind may.
    pub choices: Vec<String>,
}

/// What a key such as `openings[2].sill` means; `None` for one that the schema does not know.
pub fn described(schema: &Value, key: &str) -> Option<Described> {
    let mut at = schema;
    let mut about = "";
    for step in key.split('.') {
        let (word, entries) = step.split_once('[').map_or((step, 0), |(word, rest)| {
            (word, 1 + rest.matches('[').count())
        });
        at = property(schema, resolved(schema, at), word)?;
        about = at
            .get("description")
            .and_then(Value::as_str)
            .unwrap_or(about);
        for _ in 0..entries {
            at = resolved(schema, at).get("items")?;
        }
    }
    let group = resolved(schema, at);
    let words = group.get("oneOf").and_then(Value::as_array);
    let words = words.into_iter().flatten();
    let choices = words.filter_map(|w| w.get("const").and_then(Value::as_str));
    let mut choices: Vec<String> = choices.map(str::to_owned).collect();
    if group.get("type").and_then(Value::as_str) == Some("boolean") {
        choices = ["true", "false"].map(str::to_owned).to_vec();
    }
    Some(Described {
        about: about.replace('\n', " "),
        choices,
    })
}

/// A node, or the one that it refers to.
fn resolved<'s>(schema: &'s Value, node: &'s Value) -> &'s Value {
    let name = node.get("$ref").and_then(Value::as_str);
    let group = name.and_then(|n| schema.get("$defs")?.get(n.trim_start_matches("#/$defs/")));
    group.unwrap_or(node)
}

/// The node of a word in a group, or in that choice of it which has the word.
fn property<'s>(schema: &'s Value, group: &'s Value, word: &str) -> Option<&'s Value> {
    let own = |group: &'s Value| group.get("properties").and_then(|p| p.get(word));
    let choices = ["oneOf", "anyOf"]
        .into_iter()
        .filter_map(|kind| group.get(kind).and_then(Value::as_array))
        .flatten();
    own(group).or_else(|| choices.map(|choice| resolved(schema, choice)).find_map(own))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_described_as_the_schema_has_them() {
        let schema = crate::parameters::schema().to_value();
        let of = |key: &str| described(&schema, key).unwrap();
        assert!(of("runs[2].length").about.len() > 10);
        assert!(of("appliances[1].front.open.panel_height").about.len() > 10);
        assert_eq!(of("project.units").choices, ["imperial", "metric"]);
        assert_eq!(of("counter.drip").choices, ["true", "false"]);
        assert_eq!(described(&schema, "runs[1].lenght"), None);
    }
}
