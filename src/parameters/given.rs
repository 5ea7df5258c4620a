//! A value of the file together with its place.

use crate::diagnostics::Place;
use serde::de::{Deserialize, Deserializer, SeqAccess, Visitor};
use std::fmt;
use std::marker::PhantomData;

/// What the file says for one key: nothing, something that cannot be read, or a value at a place.
///
/// A bad value has its finding already.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Given<T> {
    /// The key is not there, or has no value.
    #[default]
    No,
    /// The value could not be read.
    Bad(Place),
    /// The value and where it stands.
    Yes(T, Place),
}

impl<T> Given<T> {
    /// The value, where there is one.
    pub fn value(&self) -> Option<&T> {
        match self {
            Self::Yes(value, _) => Some(value),
            Self::No | Self::Bad(_) => None,
        }
    }

    /// Where it stands; the unknown place when it is not there.
    pub fn place(&self) -> Place {
        match self {
            Self::Yes(_, place) | Self::Bad(place) => place.clone(),
            Self::No => Place::default(),
        }
    }

    /// True when the key is not there.
    pub fn is_absent(&self) -> bool {
        matches!(self, Self::No)
    }

    /// True when the value could not be read.
    pub fn is_bad(&self) -> bool {
        matches!(self, Self::Bad(_))
    }
}

impl<T> Given<Vec<Given<T>>> {
    /// The entries of a list that could be read, each with its place.
    pub fn entries(&self) -> impl Iterator<Item = (&T, &Place)> {
        self.value().into_iter().flatten().filter_map(|entry| {
            if let Given::Yes(value, place) = entry {
                Some((value, place))
            } else {
                None
            }
        })
    }
}

/// The name by which a [`Given`] asks its deserializer for the place beside the value.
pub(super) const MARKER: &str = "$given";

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Given<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_option(Outer(PhantomData))
    }
}

struct Outer<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Outer<T> {
    type Value = Given<T>;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a value")
    }

    fn visit_none<E>(self) -> Result<Given<T>, E> {
        Ok(Given::No)
    }

    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<Given<T>, D::Error> {
        deserializer.deserialize_tuple_struct(MARKER, 2, Inner(PhantomData))
    }
}

struct Inner<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Inner<T> {
    type Value = Given<T>;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a place and a value")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Given<T>, A::Error> {
        let (line, column, length, key) = seq
            .next_element::<(usize, usize, usize, String)>()?
            .unwrap_or_default();
        let place = Place {
            line,
            column,
            length,
            key,
        };
        // The tree's cursor has put down the finding before the error comes here.
        Ok(match seq.next_element::<T>() {
            Ok(Some(value)) => Given::Yes(value, place),
            Ok(None) | Err(_) => Given::Bad(place),
        })
    }
}

impl<T: schemars::JsonSchema> schemars::JsonSchema for Given<T> {
    fn inline_schema() -> bool {
        T::inline_schema()
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        T::schema_name()
    }

    fn schema_id() -> std::borrow::Cow<'static, str> {
        T::schema_id()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        T::json_schema(generator)
    }
}
