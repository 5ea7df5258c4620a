//! Axis-aligned boxes.

use super::{Point2, Point3};

macro_rules! bounds {
    ($(#[$doc:meta])* $name:ident, $point:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name {
            /// The smallest coordinates.
            pub low: $point,
            /// The largest coordinates.
            pub high: $point,
        }

        impl $name {
            /// The smallest box round some points; `None` without a point.
            pub fn around(points: impl IntoIterator<Item = $point>) -> Option<Self> {
                let mut points = points.into_iter();
                let first = points.next()?;
                Some(points.fold(Self { low: first, high: first }, |b, p| Self {
                    low: b.low.inf(&p),
                    high: b.high.sup(&p),
                }))
            }

            /// The smallest box round two boxes.
            pub fn union(self, other: Self) -> Self {
                Self {
                    low: self.low.inf(&other.low),
                    high: self.high.sup(&other.high),
                }
            }

            /// True when the boxes share more than `tolerance` in every direction.
            pub fn overlaps(&self, other: &Self, tolerance: f64) -> bool {
                (0..self.low.len()).all(|i| {
                    self.low[i] + tolerance < other.high[i] && other.low[i] + tolerance < self.high[i]
                })
            }
        }
    };
}

bounds!(
    /// A rectangle along the axes, millimetres.
    Bounds2, Point2
);
bounds!(
    /// A box along the axes, millimetres.
    Bounds3, Point3
);

impl Bounds3 {
    /// Its eight corners.
    pub fn corners(&self) -> [Point3; 8] {
        let pick = |bit: usize, low: f64, high: f64| if bit == 0 { low } else { high };
        std::array::from_fn(|n| {
            Point3::new(
                pick(n & 1, self.low.x, self.high.x),
                pick(n & 2, self.low.y, self.high.y),
                pick(n & 4, self.low.z, self.high.z),
            )
        })
    }
}

impl Bounds2 {
    /// Width along x.
    pub fn width(&self) -> f64 {
        self.high.x - self.low.x
    }

    /// Height along y.
    pub fn height(&self) -> f64 {
        self.high.y - self.low.y
    }

    /// The middle.
    pub fn centre(&self) -> Point2 {
        nalgebra::center(&self.low, &self.high)
    }
}
