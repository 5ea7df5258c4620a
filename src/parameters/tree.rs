//! The file as a tree of nodes with their places, before anything is known about its keys.

use crate::diagnostics::Place;
use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_saphyr::{Location, Spanned};
use std::fmt;

/// One value of the file.
#[derive(Debug)]
pub(super) struct Node {
    /// What it is.
    pub(super) content: Content,
    /// Where it is used; the key is empty here.
    pub(super) place: Place,
}

/// What a node holds.
#[derive(Debug)]
pub(super) enum Content {
    /// Nothing.
    Null,
    /// A single value as it is written, without its quotes.
    Scalar(String),
    /// A list.
    List(Vec<Node>),
    /// Keys and values in the order of the file, duplicates included.
    Map(Vec<(Key, Node)>),
}

/// One key.
#[derive(Debug)]
pub(super) struct Key {
    /// Its word.
    pub(super) word: String,
    /// Where it stands.
    pub(super) place: Place,
}

impl Content {
    /// What it is, in a message.
    pub(super) fn describe(&self) -> String {
        match self {
            Self::Null => "nothing".to_owned(),
            Self::Scalar(text) => format!("'{}'", shorten(text)),
            Self::List(_) => "a list".to_owned(),
            Self::Map(_) => "a group of keys".to_owned(),
        }
    }
}

/// A text cut to what a message can hold, its control characters made visible.
pub(super) fn shorten(text: &str) -> String {
    let mut short: String = text
        .chars()
        .take(40)
        .flat_map(|c| {
            let plain = !c.is_control();
            plain
                .then_some(c)
                .into_iter()
                .chain((!plain).then(|| c.escape_default()).into_iter().flatten())
        })
        .collect();
    if text.chars().count() > 40 {
        short.push('…');
    }
    short
}

/// A node as the YAML library hands it over.
pub(super) struct Raw(Spanned<RawContent>);

enum RawContent {
    Null,
    /// A boolean or a number: its spelling is in the source.
    Plain,
    Text(String),
    List(Vec<Raw>),
    Map(Vec<(Spanned<String>, Raw)>),
}

impl Raw {
    /// Fills in the spelling of plain values from the source text.
    pub(super) fn into_node(self, source: &str) -> Node {
        let place = place_of(&self.0.referenced);
        let content = match self.0.value {
            RawContent::Null => Content::Null,
            RawContent::Text(text) => Content::Scalar(text),
            RawContent::Plain => Content::Scalar(spelling(source, &self.0.defined)),
            RawContent::List(items) => {
                Content::List(items.into_iter().map(|i| i.into_node(source)).collect())
            }
            RawContent::Map(entries) => Content::Map(
                entries
                    .into_iter()
                    .map(|(key, value)| {
                        let place = place_of(&key.referenced);
                        let word = key.value;
                        (Key { word, place }, value.into_node(source))
                    })
                    .collect(),
            ),
        };
        Node { content, place }
    }
}

/// The place of a location of the YAML library.
pub(super) fn place_of(location: &Location) -> Place {
    Place {
        line: location.line() as usize,
        column: location.column() as usize,
        length: location.span().len() as usize,
        key: String::new(),
    }
}

fn spelling(source: &str, location: &Location) -> String {
    let span = location.span();
    let (Some(start), Some(length)) = (span.byte_offset(), span.byte_len()) else {
        return String::new();
    };
    let (start, length) = (start as usize, length as usize);
    source
        .get(start..start.saturating_add(length))
        .unwrap_or_default()
        .trim()
        .to_owned()
}

impl<'de> Deserialize<'de> for Raw {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Spanned::<RawContent>::deserialize(deserializer).map(Self)
    }
}

impl<'de> Deserialize<'de> for RawContent {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(RawVisitor)
    }
}

struct RawVisitor;

impl<'de> Visitor<'de> for RawVisitor {
    type Value = RawContent;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a value")
    }

    fn visit_unit<E>(self) -> Result<RawContent, E> {
        Ok(RawContent::Null)
    }

    fn visit_none<E>(self) -> Result<RawContent, E> {
        Ok(RawContent::Null)
    }

    fn visit_bool<E>(self, _: bool) -> Result<RawContent, E> {
        Ok(RawContent::Plain)
    }

    fn visit_i64<E>(self, _: i64) -> Result<RawContent, E> {
        Ok(RawContent::Plain)
    }

    fn visit_u64<E>(self, _: u64) -> Result<RawContent, E> {
        Ok(RawContent::Plain)
    }

    fn visit_i128<E>(self, _: i128) -> Result<RawContent, E> {
        Ok(RawContent::Plain)
    }

    fn visit_u128<E>(self, _: u128) -> Result<RawContent, E> {
        Ok(RawContent::Plain)
    }

    fn visit_f64<E>(self, _: f64) -> Result<RawContent, E> {
        Ok(RawContent::Plain)
    }

    fn visit_str<E>(self, text: &str) -> Result<RawContent, E> {
        Ok(RawContent::Text(text.to_owned()))
    }

    fn visit_string<E>(self, text: String) -> Result<RawContent, E> {
        Ok(RawContent::Text(text))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<RawContent, A::Error> {
        let mut items = Vec::new();
        while let Some(item) = seq.next_element()? {
            items.push(item);
        }
        Ok(RawContent::List(items))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<RawContent, A::Error> {
        let mut entries = Vec::new();
        while let Some(entry) = map.next_entry()? {
            entries.push(entry);
        }
        Ok(RawContent::Map(entries))
    }
}

#[cfg(test)]
mod tests {
    use super::super::read::tree;
    use super::*;
    use serde_yaml::Value;

    /// The same tree from a library that nobody here wrote and that shares no code with ours.
    fn same(node: &Node, other: &Value) -> bool {
        match (&node.content, other) {
            (Content::Null, Value::Null) => true,
            (Content::Scalar(text), Value::String(other)) => text == other,
            (Content::Scalar(text), Value::Bool(other)) => *text == other.to_string(),
            (Content::Scalar(text), Value::Number(other)) => *text == other.to_string(),
            (Content::List(items), Value::Sequence(others)) => {
                items.len() == others.len() && items.iter().zip(others).all(|(a, b)| same(a, b))
            }
            (Content::Map(entries), Value::Mapping(others)) => {
                entries.len() == others.len()
                    && entries.iter().all(|(key, value)| {
                        others
                            .get(key.word.as_str())
                            .is_some_and(|o| same(value, o))
                    })
            }
            _ => false,
        }
    }

    #[test]
    fn another_library_reads_the_same_from_every_shipped_file() {
        let mut count = 0;
        for folder in ["params", "params/trade", "templates"] {
            for entry in std::fs::read_dir(folder).unwrap() {
                let path = entry.unwrap().path();
                if path.extension().is_none_or(|e| e != "yaml") {
                    continue;
                }
                let text = std::fs::read_to_string(&path).unwrap();
                let other: Value = serde_yaml::from_str(&text).unwrap();
                assert!(same(&tree(&text).unwrap(), &other), "{}", path.display());
                count += 1;
            }
        }
        assert!(count >= 15);
    }
}
