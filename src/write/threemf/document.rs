//! What a 3MF file holds, before it is spelt.

use crate::geometry::{Faceted, Placement};

/// Meshes and where they stand.
///
/// Invariant: each item names an object of the list; an item that does not is left out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Document<'a> {
    /// What it shows.
    pub title: &'a str,
    /// More of it in a sentence or two.
    pub description: String,
    /// The distinct meshes.
    pub objects: Vec<Object<'a>>,
    /// What is there, and where.
    pub items: Vec<Item<'a>>,
}

/// One mesh in one material.
#[derive(Clone, Debug, PartialEq)]
pub struct Object<'a> {
    /// What it is.
    pub name: String,
    /// Its surface, millimetres, closed and facing outwards.
    pub mesh: &'a Faceted,
    /// What one sees.
    pub material: Material,
}

/// A name and a colour.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Material {
    /// What it is.
    pub name: String,
    /// Red, green and blue of sRGB (IEC 61966-2-1), 0 to 255.
    pub srgb: [u8; 3],
}

/// An object in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Item<'a> {
    /// Its own name, such as a mark; it may be its object's.
    pub name: &'a str,
    /// Number of the object in the list.
    pub object: usize,
    /// Where it stands, millimetres.
    pub placement: Placement,
}
