//! Areas, centroids and second moments of outlines and regions, exact with arcs.

use super::{Arc, Outline, Point2, Region, Segment, Vector2};
use std::ops::{Add, Sub};

/// The moments of an area about the origin, in millimetres to the power they have.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Moments {
    /// ∫ dA.
    pub area: f64,
    /// ∫ x dA and ∫ y dA.
    pub first: Vector2,
    /// ∫ x² dA, the second moment about the y axis.
    pub xx: f64,
    /// ∫ y² dA, the second moment about the x axis.
    pub yy: f64,
    /// ∫ x·y dA.
    pub xy: f64,
}

impl Add for Moments {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            area: self.area + other.area,
            first: self.first + other.first,
            xx: self.xx + other.xx,
            yy: self.yy + other.yy,
            xy: self.xy + other.xy,
        }
    }
}

impl Sub for Moments {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + Self {
            area: -other.area,
            first: -other.first,
            xx: -other.xx,
            yy: -other.yy,
            xy: -other.xy,
        }
    }
}

impl Moments {
    /// The middle of the area; the origin when there is no area.
    pub fn centroid(&self) -> Point2 {
        if self.area == 0.0 {
            return Point2::origin();
        }
        Point2::from(self.first / self.area)
    }

    /// The same area's moments about its own centroid.
    pub fn about_centroid(&self) -> Self {
        let c = self.centroid();
        Self {
            area: self.area,
            first: Vector2::zeros(),
            xx: self.xx - self.area * c.x * c.x,
            yy: self.yy - self.area * c.y * c.y,
            xy: self.xy - self.area * c.x * c.y,
        }
    }

    /// The triangle from the origin to a straight side, signed.
    fn triangle(p: Point2, q: Point2) -> Self {
        let area = (p.x * q.y - q.x * p.y) / 2.0;
        Self {
            area,
            first: (p.coords + q.coords) * (area / 3.0),
            xx: area * (p.x * p.x + p.x * q.x + q.x * q.x) / 6.0,
            yy: area * (p.y * p.y + p.y * q.y + q.y * q.y) / 6.0,
            xy: area * (2.0 * p.x * p.y + p.x * q.y + q.x * p.y + 2.0 * q.x * q.y) / 12.0,
        }
    }

    /// The bow between an arc and its chord, signed like the arc's sweep.
    fn bow(arc: &Arc) -> Self {
        let Arc {
            centre: o,
            radius: r,
            start,
            sweep,
        } = *arc;
        let (s, c) = (sweep / 2.0).sin_cos();
        let (my, mx) = (start + sweep / 2.0).sin_cos();
        let area = r * r * (sweep - sweep.sin()) / 2.0;
        // About the arc's centre: first moment along the middle spoke, second moments along and across it (sector less
        // triangle).
        let pull = 2.0 / 3.0 * r.powi(3) * s.powi(3);
        let along = r.powi(4) * ((sweep + sweep.sin()) / 8.0 - s * c.powi(3) / 2.0);
        let across = r.powi(4) * ((sweep - sweep.sin()) / 8.0 - s.powi(3) * c / 6.0);
        let first = Vector2::new(mx, my) * pull;
        Self {
            area,
            first: o.coords * area + first,
            xx: o.x * o.x * area + 2.0 * o.x * first.x + mx * mx * along + my * my * across,
            yy: o.y * o.y * area + 2.0 * o.y * first.y + my * my * along + mx * mx * across,
            xy: o.x * o.y * area + o.x * first.y + o.y * first.x + mx * my * (along - across),
        }
    }

    fn side(side: &Segment) -> Self {
        let straight = Self::triangle(side.from, side.to);
        side.arc().map_or(straight, |a| straight + Self::bow(&a))
    }
}

impl Outline {
    /// The exact moments of the area enclosed.
    pub fn moments(&self) -> Moments {
        self.segments()
            .fold(Moments::default(), |sum, s| sum + Moments::side(&s))
    }

    /// The exact middle of the area enclosed.
    pub fn centroid(&self) -> Point2 {
        self.moments().centroid()
    }
}

impl Region {
    /// The exact moments of the area.
    pub fn moments(&self) -> Moments {
        self.holes
            .iter()
            .fold(self.outer.moments(), |sum, hole| sum - hole.moments())
    }

    /// The exact middle of the area.
    pub fn centroid(&self) -> Point2 {
        self.moments().centroid()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::SteelSection;
    use crate::geometry::Vertex;
    use crate::units::Length;
    use std::f64::consts::PI;

    fn near(found: f64, expected: f64) {
        let scale = expected.abs().max(1.0);
        assert!(
            (found - expected).abs() < 1e-9 * scale,
            "{found} for {expected}"
        );
    }

    #[test]
    fn a_half_disc_agrees_with_the_handbook() {
        // Radius 6 over the x axis, moved to (10, 20): area πr²/2, centroid 4r/3π up; I about the base line πr⁴/8 both
        // ways.
        let disc = Outline::new(vec![
            Vertex::bent(16.0, 20.0, 1.0),
            Vertex::sharp(4.0, 20.0),
        ]);
        let m = disc.moments();
        let area = PI * 18.0;
        near(m.area, area);
        near(m.centroid().x, 10.0);
        near(m.centroid().y, 20.0 + 8.0 / PI);
        near(m.about_centroid().xx, PI * 162.0);
        near(
            m.about_centroid().yy,
            PI * 162.0 - area * (8.0 / PI).powi(2),
        );
        near(m.about_centroid().xy, 0.0);
    }

    #[test]
    fn a_ring_turned_askew_keeps_its_moments() {
        // Circles of radius 5 and 3 cut at an odd angle into unequal arcs: I = π/4 (R⁴ − r⁴) about any diameter.
        let circle = |r: f64| {
            let at = |a: f64| (3.0 + r * a.cos(), -7.0 + r * a.sin());
            let (p, q) = (at(0.4), at(0.4 + 4.0));
            let (b, c) = ((1.0f64).tan(), ((2.0 * PI - 4.0) / 4.0).tan());
            Outline::new(vec![Vertex::bent(p.0, p.1, b), Vertex::bent(q.0, q.1, c)])
        };
        let ring = Region {
            outer: circle(5.0),
            holes: vec![circle(3.0)],
        };
        let m = ring.moments();
        near(m.area, PI * 16.0);
        near(m.centroid().x, 3.0);
        near(m.centroid().y, -7.0);
        near(m.about_centroid().xx, PI / 4.0 * (625.0 - 81.0));
        near(m.about_centroid().yy, PI / 4.0 * (625.0 - 81.0));
        near(m.about_centroid().xy, 0.0);
    }

    #[test]
    fn a_stud_agrees_with_finite_elements() {
        // design.md, by a finite-element section library with t .0346 and inside radius .0765, in inches:
        // 3.625 × 1.25 × .188: A .2145741, Ixx .420859, Iyy .0367130; 3.5 × 1.25 × .5: A .2318395, Ixx .430471,
        // Iyy .0529219.
        let inch = 25.4f64;
        for (depth, lip, area, ixx, iyy) in [
            (3.625, 0.188, 0.214_574_1, 0.420_859, 0.036_713_0),
            (3.5, 0.5, 0.231_839_5, 0.430_471, 0.052_921_9),
        ] {
            let mut section = SteelSection::from_designator("362S125-33").unwrap();
            section.depth = Length::inches(depth);
            section.lip = Length::inches(lip);
            section.radius = Length::inches(0.0765);
            let m = section.profile().moments().about_centroid();
            let close = |found: f64, expected: f64| (found / expected - 1.0).abs() < 2e-5;
            assert!(close(m.area / inch.powi(2), area));
            assert!(close(m.yy / inch.powi(4), ixx));
            assert!(close(m.xx / inch.powi(4), iyy), "{}", m.xx / inch.powi(4));
        }
    }
}
