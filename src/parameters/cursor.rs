//! The deserializer that walks the tree: it puts every error into the log and goes on.

use super::entries::{Entries, Items, PlaceAndValue, Variant};
use super::fault::{Fault, Log};
use super::given::MARKER;
use super::nearest;
use super::tree::{Content, Node};
use crate::diagnostics::{Finding, Place};
use serde::Deserializer;
use serde::de::Visitor;
use serde::forward_to_deserialize_any;

/// A node being read, the key it belongs to, and the log.
#[derive(Clone)]
pub(super) struct Cursor<'a> {
    pub(super) node: &'a Node,
    pub(super) key: String,
    pub(super) log: &'a Log,
}

impl<'a> Cursor<'a> {
    /// The place of the node with its key.
    pub(super) fn place(&self) -> Place {
        Place {
            key: self.key.clone(),
            ..self.node.place.clone()
        }
    }

    /// A cursor on a value below this one.
    pub(super) fn below(&self, node: &'a Node, step: &str) -> Self {
        let key = if self.key.is_empty() {
            step.to_owned()
        } else if step.starts_with('[') {
            format!("{}{step}", self.key)
        } else {
            format!("{}.{step}", self.key)
        };
        Self {
            node,
            key,
            log: self.log,
        }
    }

    /// Reports that something else belongs here.
    pub(super) fn mismatch(&self, expected: &str, hint: String) -> Fault {
        let found = format!(
            "expected {expected}, found {}",
            self.node.content.describe()
        );
        self.log
            .put(Finding::error("wrong-type", &self.place(), found).hint(hint));
        Fault::Reported
    }

    /// Puts down what a visitor said about this node.
    pub(super) fn settle<T>(&self, result: Result<T, Fault>) -> Result<T, Fault> {
        self.log.settle(&self.place(), result)
    }

    fn text(&self, expected: &str) -> Result<&'a str, Fault> {
        match &self.node.content {
            Content::Scalar(text) => Ok(text),
            _ => Err(self.mismatch(expected, String::new())),
        }
    }

    /// The entries of a struct: every key known and there once; all others are reported and left out.
    pub(super) fn entries(&self, known: &'static [&'static str]) -> Result<Entries<'a>, Fault> {
        let entries = match &self.node.content {
            Content::Map(entries) => entries,
            Content::Null => return Ok(Entries::none(self.clone())),
            _ => {
                return Err(self.mismatch(
                    "a group of keys",
                    format!("the keys are {}", known.join(", ")),
                ));
            }
        };
        let mut kept: Vec<(&str, &Node)> = Vec::with_capacity(entries.len());
        for (key, value) in entries {
            let place = Place {
                key: self.below(value, &key.word).key,
                ..key.place.clone()
            };
            if !known.contains(&key.word.as_str()) {
                self.log.put(unknown_key(&key.word, &place, known));
            } else if let Some((_, earlier)) = kept.iter().find(|(word, _)| *word == key.word) {
                let found = format!("the key '{}' stands here twice", key.word);
                let hint = format!(
                    "the other is on line {}; keep one of them",
                    earlier.place.line
                );
                self.log
                    .put(Finding::error("duplicate-key", &place, found).hint(hint));
            } else {
                kept.push((&key.word, value));
            }
        }
        Ok(Entries::new(self.clone(), kept))
    }

    /// The variant that a word or a single key names.
    fn variant(&self, known: &'static [&'static str]) -> Result<Variant<'a>, Fault> {
        let choices = || format!("write one of {}", known.join(", "));
        let (word, place, value) = match &self.node.content {
            Content::Scalar(word) => (word.as_str(), self.place(), None),
            Content::Map(entries) => match entries.as_slice() {
                [(key, value)] => (key.word.as_str(), key.place.clone(), Some(value)),
                _ => return Err(self.mismatch("one word or one key", choices())),
            },
            _ => return Err(self.mismatch("a word", choices())),
        };
        if let Some(name) = known.iter().find(|k| **k == word) {
            return Ok(Variant::new(self.clone(), name, value));
        }
        let place = Place {
            key: self.key.clone(),
            ..place
        };
        let hint = nearest(word, known.iter().copied())
            .map_or_else(choices, |n| format!("did you mean '{n}'? {}", choices()));
        let found = format!("'{}' is not known here", super::tree::shorten(word));
        self.log
            .put(Finding::error("unknown-word", &place, found).hint(hint));
        Err(Fault::Reported)
    }
}

fn unknown_key(word: &str, place: &Place, known: &'static [&'static str]) -> Finding {
    let hint = nearest(word, known.iter().copied()).map_or_else(
        || format!("the keys here are {}", known.join(", ")),
        |n| format!("did you mean '{n}'?"),
    );
    let found = format!("the key '{}' is not known here", super::tree::shorten(word));
    Finding::error("unknown-key", place, found).hint(hint)
}

impl<'de, 'a: 'de> Deserializer<'de> for Cursor<'a> {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let result = match &self.node.content {
            Content::Null => visitor.visit_unit(),
            Content::Scalar(text) => visitor.visit_str(text),
            Content::List(items) => visitor.visit_seq(Items::new(self.clone(), items)),
            Content::Map(_) => return Err(self.mismatch("a single value", String::new())),
        };
        self.settle(result)
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let text = self.text("a text")?;
        let result = visitor.visit_str(text);
        self.settle(result)
    }

    /// Only a `Dimension` asks for a borrowed text.
    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let text = self.text("a length such as 24 in")?;
        let result = visitor.visit_str(text);
        self.settle(result)
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match &self.node.content {
            Content::Scalar(text) if text == "true" => visitor.visit_bool(true),
            Content::Scalar(text) if text == "false" => visitor.visit_bool(false),
            _ => Err(self.mismatch("true or false", String::new())),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        if matches!(self.node.content, Content::Null) {
            visitor.visit_none()
        } else {
            visitor.visit_some(self)
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let Content::List(items) = &self.node.content else {
            let hint = "begin each entry with a dash, or write [first, second]";
            return Err(self.mismatch("a list", hint.to_owned()));
        };
        let result = visitor.visit_seq(Items::new(self.clone(), items));
        self.settle(result)
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        _: usize,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        if name == MARKER {
            visitor.visit_seq(PlaceAndValue::new(self))
        } else {
            self.deserialize_seq(visitor)
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        let entries = self.entries(fields)?;
        let result = visitor.visit_map(entries);
        self.settle(result)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        let variant = self.variant(variants)?;
        let result = visitor.visit_enum(variant);
        self.settle(result)
    }

    forward_to_deserialize_any! {
        i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char bytes byte_buf
        unit unit_struct tuple map identifier ignored_any
    }
}
