//! How the cursor hands over lists, keys, variants and places.

use super::cursor::Cursor;
use super::fault::Fault;
use super::tree::Node;
use serde::de::value::{StrDeserializer, StringDeserializer, UsizeDeserializer};
use serde::de::{
    DeserializeSeed, EnumAccess, IntoDeserializer, MapAccess, SeqAccess, VariantAccess, Visitor,
};

/// The items of a list in turn.
pub(super) struct Items<'a> {
    parent: Cursor<'a>,
    items: std::iter::Enumerate<std::slice::Iter<'a, Node>>,
}

impl<'a> Items<'a> {
    pub(super) fn new(parent: Cursor<'a>, items: &'a [Node]) -> Self {
        Self {
            parent,
            items: items.iter().enumerate(),
        }
    }
}

impl<'de, 'a: 'de> SeqAccess<'de> for Items<'a> {
    type Error = Fault;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Fault> {
        let Some((number, node)) = self.items.next() else {
            return Ok(None);
        };
        let step = format!("[{}]", number + 1);
        seed.deserialize(self.parent.below(node, &step)).map(Some)
    }
}

/// The keys of a struct in turn.
pub(super) struct Entries<'a> {
    parent: Cursor<'a>,
    rest: std::vec::IntoIter<(&'a str, &'a Node)>,
    current: Option<(&'a str, &'a Node)>,
}

impl<'a> Entries<'a> {
    pub(super) fn new(parent: Cursor<'a>, entries: Vec<(&'a str, &'a Node)>) -> Self {
        Self {
            parent,
            rest: entries.into_iter(),
            current: None,
        }
    }

    pub(super) fn none(parent: Cursor<'a>) -> Self {
        Self::new(parent, Vec::new())
    }
}

impl<'de, 'a: 'de> MapAccess<'de> for Entries<'a> {
    type Error = Fault;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Fault> {
        self.current = self.rest.next();
        self.current
            .map(|(word, _)| seed.deserialize(StrDeserializer::new(word)))
            .transpose()
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Fault> {
        let Some((word, node)) = self.current.take() else {
            return Err(Fault::Said("a value without a key".to_owned()));
        };
        seed.deserialize(self.parent.below(node, word))
    }
}

/// One variant of an enum, with what stands below its key.
pub(super) struct Variant<'a> {
    parent: Cursor<'a>,
    name: &'static str,
    value: Option<&'a Node>,
}

impl<'a> Variant<'a> {
    pub(super) fn new(parent: Cursor<'a>, name: &'static str, value: Option<&'a Node>) -> Self {
        Self {
            parent,
            name,
            value,
        }
    }

    fn inner(&self) -> Option<Cursor<'a>> {
        self.value.map(|node| self.parent.below(node, self.name))
    }
}

impl<'de, 'a: 'de> EnumAccess<'de> for Variant<'a> {
    type Error = Fault;
    type Variant = Self;

    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Result<(V::Value, Self), Fault> {
        let name: StrDeserializer<Fault> = self.name.into_deserializer();
        Ok((seed.deserialize(name)?, self))
    }
}

impl<'de, 'a: 'de> VariantAccess<'de> for Variant<'a> {
    type Error = Fault;

    fn unit_variant(self) -> Result<(), Fault> {
        match self.inner() {
            Some(cursor) if !matches!(cursor.node.content, super::tree::Content::Null) => {
                Err(cursor.mismatch("no value here", format!("write only '{}'", self.name)))
            }
            _ => Ok(()),
        }
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Fault> {
        if let Some(cursor) = self.inner() {
            return seed.deserialize(cursor);
        }
        let hint = format!("write {}: and its value", self.name);
        Err(self.parent.mismatch("a value as well", hint))
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Result<V::Value, Fault> {
        Err(Fault::Said("a list does not belong here".to_owned()))
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        match self.inner() {
            Some(cursor) => visitor.visit_map(cursor.entries(fields)?),
            None => visitor.visit_map(Entries::none(self.parent)),
        }
    }
}

/// The place of a value, then the value: what a `Given` asks for.
pub(super) struct PlaceAndValue<'a> {
    cursor: Cursor<'a>,
    step: usize,
}

impl<'a> PlaceAndValue<'a> {
    pub(super) fn new(cursor: Cursor<'a>) -> Self {
        Self { cursor, step: 0 }
    }
}

impl<'de, 'a: 'de> SeqAccess<'de> for PlaceAndValue<'a> {
    type Error = Fault;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Fault> {
        self.step += 1;
        match self.step {
            1 => {
                let place = self.cursor.place();
                let numbers = [place.line, place.column, place.length];
                let parts = PlaceParts {
                    numbers,
                    key: Some(place.key),
                    next: 0,
                };
                let parts = serde::de::value::SeqAccessDeserializer::new(parts);
                seed.deserialize(parts).map(Some)
            }
            2 => {
                // A type that judges a text after it was handed over has not been heard yet.
                let result = seed.deserialize(self.cursor.clone());
                self.cursor.settle(result).map(Some)
            }
            _ => Ok(None),
        }
    }
}

/// Line, column, length and key of a place.
struct PlaceParts {
    numbers: [usize; 3],
    key: Option<String>,
    next: usize,
}

impl<'de> SeqAccess<'de> for PlaceParts {
    type Error = Fault;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Fault> {
        if let Some(number) = self.numbers.get(self.next) {
            self.next += 1;
            let number: UsizeDeserializer<Fault> = (*number).into_deserializer();
            return seed.deserialize(number).map(Some);
        }
        self.key
            .take()
            .map(|key| seed.deserialize(StringDeserializer::new(key)))
            .transpose()
    }
}
