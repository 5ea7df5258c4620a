//! The half of a solid below a plane.

use super::cap;
use super::crossing::Crossings;
use crate::geometry::{Faceted, Point3, Region, Triangle};

/// The plane keeps so far from all corners, millimetres: rounding never decides on which side one lies.
const CLEAR: f64 = 1e-3;

/// What a level plane leaves of a solid.
///
/// Where corners lie in the plane, the cut is made a hair below them and brought up to the plane. So a solid that stands
/// on the plane is not there at all, one that touches it from below is whole and cut along the face it touches with,
/// solids side by side are cut alike, and no rim is ever left open.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cut {
    /// What lies below the plane, a closed surface; empty when nothing does.
    ///
    /// The triangles in the plane are a surface of their own, so that its rim is an edge that drawings show.
    pub kept: Faceted,
    /// Where the plane goes through the solid, in the plane's x and y, with straight sides.
    pub region: Vec<Region>,
}

impl Faceted {
    /// Cuts the solid by the plane z = `level` and keeps what is below it.
    ///
    /// ```
    /// use islandwright::geometry::Solid;
    /// let cut = Solid::cuboid(30.0, 20.0, 10.0).faceted(0.1).cut_at(4.0);
    /// assert_eq!(cut.kept.check(), Ok(()));
    /// assert_eq!(cut.region[0].area(), 600.0);
    /// ```
    pub fn cut_at(&self, level: f64) -> Cut {
        let clear = clear_level(&self.points, level);
        let heights: Vec<f64> = self.points.iter().map(|p| p.z - clear).collect();
        if heights.iter().all(|h| *h < 0.0) {
            return Cut {
                kept: self.clone(),
                region: Vec::new(),
            };
        }
        let crossings = Crossings::new(self, &heights, level);
        let mut half = Half {
            points: self.points.clone(),
            triangles: Vec::with_capacity(self.triangles.len()),
            rim: Vec::new(),
        };
        half.points.extend(crossings.points());
        for triangle in &self.triangles {
            half.clip(triangle, &heights, &crossings);
        }
        let cap = self.triangles.iter().map(|t| t.surface + 1).max();
        half.close(cap.unwrap_or(0))
    }
}

/// The next level down that keeps clear of all corners.
fn clear_level(points: &[Point3], level: f64) -> f64 {
    let is_clear = |l: &f64| points.iter().all(|p| (p.z - l).abs() >= CLEAR);
    let mut tries = (0..200).map(|i| level - 2.0 * CLEAR * f64::from(i));
    tries.find(is_clear).unwrap_or(level)
}

/// The half being put together: the solid's corners, and after them those where its edges cross the plane.
struct Half {
    points: Vec<Point3>,
    triangles: Vec<Triangle>,
    /// Sides of the cut region, the region to their left as seen from above.
    rim: Vec<[u32; 2]>,
}

impl Half {
    /// Keeps what of a triangle is below the plane.
    fn clip(&mut self, triangle: &Triangle, heights: &[f64], crossings: &Crossings) {
        let below = triangle.corners.map(|c| heights[c as usize] < 0.0);
        let mut kept: Vec<u32> = Vec::with_capacity(4);
        let (mut leaves, mut enters) = (None, None);
        for i in 0..3 {
            let next = (i + 1) % 3;
            let (from, to) = (triangle.corners[i], triangle.corners[next]);
            if below[i] {
                kept.push(from);
            }
            if below[i] != below[next] {
                let at = crossings.of(from, to);
                kept.extend(at);
                *(if below[i] { &mut leaves } else { &mut enters }) = at;
            }
        }
        kept.dedup();
        if kept.len() > 1 && kept.first() == kept.last() {
            kept.pop();
        }
        if let (Some(leaves), Some(enters)) = (leaves, enters)
            && leaves != enters
        {
            self.rim.push([enters, leaves]);
        }
        self.add(&kept, triangle.surface);
    }

    /// Adds a triangle, or four corners as the two triangles that are less slim.
    fn add(&mut self, kept: &[u32], surface: u32) {
        let halves = match *kept {
            [a, b, c] => vec![[a, b, c]],
            [a, b, c, d] => {
                let (one, other) = ([[a, b, c], [a, c, d]], [[a, b, d], [b, c, d]]);
                let slimmest =
                    |pair: &[[u32; 3]; 2]| self.height(pair[0]).min(self.height(pair[1]));
                if slimmest(&one) < slimmest(&other) {
                    other
                } else {
                    one
                }
                .to_vec()
            }
            _ => Vec::new(),
        };
        self.triangles.extend(
            halves
                .into_iter()
                .map(|corners| Triangle { corners, surface }),
        );
    }

    /// The lowest height of a triangle.
    fn height(&self, corners: [u32; 3]) -> f64 {
        let [a, b, c] = corners.map(|i| self.points[i as usize]);
        let longest = (b - a).norm().max((c - b).norm()).max((a - c).norm());
        (b - a).cross(&(c - a)).norm() / longest.max(f64::MIN_POSITIVE)
    }

    /// Puts the cap on and leaves out corners that are not used.
    fn close(mut self, surface: u32) -> Cut {
        let rim = cap::without_doubles(std::mem::take(&mut self.rim));
        let flat = |i: u32| self.points[i as usize].xy();
        let lid = cap::triangles(&rim, flat);
        let region = cap::region(&rim, flat);
        self.triangles
            .extend(lid.into_iter().map(|corners| Triangle { corners, surface }));
        Cut {
            kept: self.compact(),
            region,
        }
    }

    fn compact(self) -> Faceted {
        let mut numbers: Vec<Option<u32>> = vec![None; self.points.len()];
        let mut points = Vec::new();
        let mut triangles = self.triangles;
        for corner in triangles.iter_mut().flat_map(|t| &mut t.corners) {
            let number = *numbers[*corner as usize].get_or_insert_with(|| {
                points.push(self.points[*corner as usize]);
                points.len() as u32 - 1
            });
            *corner = number;
        }
        Faceted { points, triangles }
    }
}
