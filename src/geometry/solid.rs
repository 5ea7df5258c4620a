//! The solids that members, boards and forms are made of, described exactly.

use super::{Bounds3, Faceted, Outline, Region, Slab};

/// A solid shape in its own coordinates, described exactly; equal shapes are equal values.
#[derive(Clone, Debug, PartialEq)]
pub enum Solid {
    /// A profile drawn out along z.
    Extrusion(Extrusion),
    /// A drawn-out profile whose web runs on past its ends and is folded there.
    Tabbed(Tabbed),
    /// A profile turned about an axis: an edge form round a corner.
    Bend(Bend),
    /// The counter slab.
    Slab(Slab),
}

/// A plane that cuts the end of an extrusion: `z = offset + slope · (x, y)`.
///
/// A slope of (1, 0) is a mitre of 45 degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndPlane {
    /// z where the plane crosses the z axis, millimetres.
    pub offset: f64,
    /// Rise of z per millimetre of x and of y.
    pub slope: [f64; 2],
}

impl EndPlane {
    /// A square cut at z.
    pub fn square(offset: f64) -> Self {
        Self {
            offset,
            slope: [0.0, 0.0],
        }
    }

    /// z of the plane over a point of the profile.
    pub fn z(&self, x: f64, y: f64) -> f64 {
        self.offset + self.slope[0] * x + self.slope[1] * y
    }
}

/// A profile in the xy plane drawn out along z between two end planes.
///
/// Invariant: `start` lies below `end` over the whole profile. Slots do not touch each other or the ends.
#[derive(Clone, Debug, PartialEq)]
pub struct Extrusion {
    /// The cross-section.
    pub profile: Region,
    /// Where it begins.
    pub start: EndPlane,
    /// Where it ends.
    pub end: EndPlane,
    /// Holes through a wall of the profile, such as punch-outs.
    pub slots: Vec<Slot>,
}

/// Two straight, parallel, facing sides of the profile's outer outline: the two skins of a sheet wall.
///
/// Both are segment numbers. The wall's own coordinates are u along `outer` from that segment's start, and z.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wall {
    /// The outer skin.
    pub outer: usize,
    /// The inner skin.
    pub inner: usize,
}

/// A hole through a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    /// Which wall.
    pub wall: Wall,
    /// Its outline in the wall's coordinates: x is u along the outer skin, y is z along the member.
    pub outline: Outline,
}

/// A tab: the wall runs on past the end, folded through a quarter turn towards the inner skin.
///
/// The fold begins at the body's end plane: the body is the part whose flanges are not slit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tab {
    /// The inside radius of the fold, millimetres.
    pub radius: f64,
    /// The straight length beyond the fold, millimetres.
    pub length: f64,
}

/// An extrusion with square ends whose one wall goes on into folded tabs.
///
/// With sheet thickness t, a tab's outer face stands `radius + t` beyond the body's end, and the tab reaches
/// `radius + t + length` from the wall's outer skin.
#[derive(Clone, Debug, PartialEq)]
pub struct Tabbed {
    /// The part with its flanges.
    pub body: Extrusion,
    /// The wall that is folded.
    pub wall: Wall,
    /// The tab at the start, if any.
    pub start: Option<Tab>,
    /// The tab at the end, if any.
    pub end: Option<Tab>,
}

/// A profile in the (x, z) half plane with x > 0 turned about the z axis from the x axis towards y.
#[derive(Clone, Debug, PartialEq)]
pub struct Bend {
    /// The cross-section; its x is the distance from the axis, its y is height.
    pub profile: Outline,
    /// The angle turned, radians, at most a full turn.
    pub angle: f64,
}

impl Solid {
    /// A profile drawn from z = 0 to `length` with square ends.
    pub fn extrusion(profile: Region, length: f64) -> Self {
        Self::Extrusion(Extrusion {
            profile,
            start: EndPlane::square(0.0),
            end: EndPlane::square(length),
            slots: Vec::new(),
        })
    }

    /// A box from the origin to (x, y, z).
    pub fn cuboid(x: f64, y: f64, z: f64) -> Self {
        Self::extrusion(Region::solid(Outline::rectangle(0.0, 0.0, x, y)), z)
    }
}

impl Solid {
    /// The exact volume, mm³.
    pub fn volume(&self) -> f64 {
        match self {
            Self::Extrusion(s) => s.volume(),
            Self::Tabbed(s) => s.volume(),
            Self::Bend(s) => s.volume(),
            Self::Slab(s) => s.volume(),
        }
    }

    /// The exact box round it, in its own coordinates.
    pub fn bounds(&self) -> Bounds3 {
        match self {
            Self::Extrusion(s) => s.bounds(),
            Self::Tabbed(s) => s.bounds(),
            Self::Bend(s) => s.bounds(),
            Self::Slab(s) => s.bounds(),
        }
    }

    /// Its surface as triangles whose chords stay within a tolerance (millimetres) of its curves.
    ///
    /// A description that contradicts itself gives a surface without triangles: [`Faceted::check`] refuses it.
    pub fn faceted(&self, tolerance: f64) -> Faceted {
        match self {
            Self::Extrusion(s) => s.faceted(tolerance),
            Self::Tabbed(s) => s.faceted(tolerance),
            Self::Bend(s) => s.faceted(tolerance),
            Self::Slab(s) => s.faceted(tolerance),
        }
    }
}
