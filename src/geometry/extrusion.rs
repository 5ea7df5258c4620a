//! A profile drawn out along a line: its volume, its box and its triangles.

use super::faceting::{Ring, Shell, triangulate};
use super::{Bounds3, EndPlane, Extrusion, Faceted, Outline, Point2, Point3, Vector2};

impl Outline {
    /// The smallest and largest reach of the curve in a direction, times that direction's length.
    pub fn reach(&self, direction: Vector2) -> (f64, f64) {
        let size = direction.norm();
        let corners = self.vertices().iter().map(|v| v.at);
        let bows = self.segments().filter_map(|s| s.arc()).flat_map(|a| {
            let angle = direction.y.atan2(direction.x);
            let turns =
                move |k: i32| (angle + f64::from(k) * std::f64::consts::PI - a.start) / a.sweep;
            (-4..=4).filter_map(move |k| {
                let inside = size > 0.0 && (0.0..=1.0).contains(&turns(k));
                let sign = if k % 2 == 0 { 1.0 } else { -1.0 };
                inside.then(|| a.centre + direction * (sign * a.radius / size))
            })
        });
        corners
            .chain(bows)
            .map(|p: Point2| p.coords.dot(&direction))
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), d| {
                (low.min(d), high.max(d))
            })
    }
}

impl EndPlane {
    /// The lowest and highest z of the plane over an outline.
    fn reach(&self, outline: &Outline) -> (f64, f64) {
        let (low, high) = outline.reach(Vector2::from(self.slope));
        (self.offset + low, self.offset + high)
    }
}

/// The sides of an extrusion on their shell: its rings, and the rows of corners at both ends.
pub(super) struct Prism {
    pub(super) rings: Vec<Ring>,
    pub(super) low: Vec<Vec<u32>>,
    pub(super) high: Vec<Vec<u32>>,
}

/// A slot's mouth in one side of the outer outline.
struct Mouth {
    side: usize,
    corners: Vec<u32>,
}

impl Extrusion {
    /// The exact volume, mm³.
    pub fn volume(&self) -> f64 {
        let m = self.profile.moments();
        let c = m.centroid();
        let slots: f64 = self
            .slots
            .iter()
            .filter_map(|s| Some(s.wall.frame(&self.profile)?.thickness * s.outline.area()))
            .sum();
        m.area * (self.end.z(c.x, c.y) - self.start.z(c.x, c.y)) - slots
    }

    /// The exact box round it.
    pub fn bounds(&self) -> Bounds3 {
        let flat = self.profile.outer.bounds();
        let low = self.start.reach(&self.profile.outer).0;
        let high = self.end.reach(&self.profile.outer).1;
        Bounds3 {
            low: Point3::new(flat.low.x, flat.low.y, low),
            high: Point3::new(flat.high.x, flat.high.y, high),
        }
    }

    /// Its triangles; none when the description contradicts itself.
    pub fn faceted(&self, tolerance: f64) -> Faceted {
        let mut shell = Shell::default();
        let whole = self.prism(&mut shell, tolerance).and_then(|prism| {
            let triangles = prism.cap()?;
            shell.patch(&triangles, &prism.low.concat(), true);
            shell.patch(&triangles, &prism.high.concat(), false);
            Some(())
        });
        whole.map_or_else(Faceted::default, |()| shell.finish())
    }

    /// Puts all sides and slots on a shell.
    pub(super) fn prism(&self, shell: &mut Shell, tolerance: f64) -> Option<Prism> {
        let outlines = std::iter::once(&self.profile.outer).chain(&self.profile.holes);
        let rings: Vec<Ring> = outlines.map(|o| Ring::new(o, tolerance)).collect();
        let mut rows = |end: &EndPlane| -> Vec<Vec<u32>> {
            let over = |p: &Point2| Point3::new(p.x, p.y, end.z(p.x, p.y));
            rings
                .iter()
                .map(|r| shell.row(r.points.iter().map(over)))
                .collect()
        };
        let (low, high) = (rows(&self.start), rows(&self.end));
        let mouths = self.slot_walls(shell, tolerance)?;
        for (i, ring) in rings.iter().enumerate() {
            let ends = [low[i].clone(), high[i].clone()];
            for side in 0..ring.sides() {
                let holes: Vec<_> = mouths.iter().filter(|m| i == 0 && m.side == side).collect();
                if holes.is_empty() {
                    shell.side(ring, side, &ends, i > 0);
                } else {
                    pierced(
                        shell,
                        [ring.along(side, &ends[0]), ring.along(side, &ends[1])],
                        &holes,
                    )?;
                }
            }
        }
        Some(Prism { rings, low, high })
    }

    /// Puts the insides of the slots on a shell and names their mouths in both skins.
    fn slot_walls(&self, shell: &mut Shell, tolerance: f64) -> Option<Vec<Mouth>> {
        let mut mouths = Vec::with_capacity(2 * self.slots.len());
        for slot in &self.slots {
            let frame = slot.wall.frame(&self.profile)?;
            let ring = Ring::new(&slot.outline, tolerance);
            let [outer, inner] = [0.0, frame.thickness]
                .map(|d| shell.row(ring.points.iter().map(|p| frame.at(p.x, d, p.y))));
            let rows = [outer, inner];
            for side in 0..ring.sides() {
                shell.side(&ring, side, &rows, false);
            }
            let sides = [slot.wall.outer, slot.wall.inner];
            mouths.extend(
                sides
                    .into_iter()
                    .zip(rows)
                    .map(|(side, corners)| Mouth { side, corners }),
            );
        }
        Some(mouths)
    }
}

/// Puts on a straight side of the outline with the mouths of slots in it.
fn pierced(shell: &mut Shell, [low, high]: [Vec<u32>; 2], mouths: &[&Mouth]) -> Option<()> {
    let origin = shell.at(*low.first()?);
    let along = (shell.at(*low.last()?) - origin).xy().try_normalize(0.0)?;
    let mut rings = vec![low];
    rings[0].extend(high.into_iter().rev());
    rings.extend(mouths.iter().map(|m| m.corners.clone()));
    shell.polygon(&rings, |p| [(p - origin).xy().dot(&along), p.z], false)
}

impl Prism {
    /// The triangles of the whole cross-section, numbered through all its rings.
    fn cap(&self) -> Option<Vec<[usize; 3]>> {
        let mut points = Vec::new();
        let mut holes = Vec::new();
        for ring in &self.rings {
            holes.push(points.len());
            points.extend(ring.points.iter().map(|p| [p.x, p.y]));
        }
        triangulate(&points, &holes[1..])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::SteelSection;
    use crate::geometry::proof::prove;
    use crate::geometry::{Region, Slot, Solid};
    use std::f64::consts::PI;

    fn stud(slots: Vec<Slot>) -> Extrusion {
        let section = SteelSection::from_designator("362S125-33").unwrap();
        Extrusion {
            profile: section.profile(),
            start: EndPlane::square(0.0),
            end: EndPlane::square(800.0),
            slots,
        }
    }

    fn punch_out(z: f64) -> Slot {
        let section = SteelSection::from_designator("362S125-33").unwrap();
        let middle = section.web().frame(&section.profile()).unwrap().length / 2.0;
        let (w, h) = (38.1 / 2.0, 101.6 / 2.0);
        let outline = Outline::rounded_rectangle(middle - w, z - h, middle + w, z + h, w);
        Slot {
            wall: section.web(),
            outline,
        }
    }

    #[test]
    fn a_punched_stud_loses_its_slots() {
        // Slot 1-1/2 × 4 in with round ends: 38.1·63.5 + π·19.05² = 3559.44 mm², through 0.0346 in = 0.87884 mm.
        let whole = Solid::Extrusion(stud(vec![]));
        let punched = Solid::Extrusion(stud(vec![punch_out(150.0), punch_out(650.0)]));
        let lost = whole.volume() - punched.volume();
        let expected = 2.0 * (38.1 * 63.5 + PI * 19.05 * 19.05) * 0.87884;
        assert!((lost - expected).abs() < 1e-6, "{lost} for {expected}");
        prove(&whole);
        prove(&punched);
    }

    #[test]
    fn a_mitred_bar_has_its_length_at_the_centroid() {
        // A 30 × 40 bar from z = 0 to z = 500 + x: length at x = 15 is 515.
        let bar = Extrusion {
            profile: Region::solid(Outline::rectangle(0.0, 0.0, 30.0, 40.0)),
            start: EndPlane::square(0.0),
            end: EndPlane {
                offset: 500.0,
                slope: [1.0, 0.0],
            },
            slots: vec![],
        };
        assert!((bar.volume() - 30.0 * 40.0 * 515.0).abs() < 1e-6);
        assert!((bar.bounds().high.z - 530.0).abs() < 1e-9);
        prove(&Solid::Extrusion(bar));
    }

    #[test]
    fn a_round_bar_cut_askew_reaches_its_highest_point() {
        // Radius 20 about (50, 0), cut at z = 100 + 0.6 x + 0.8 y: highest at 100 + 30 + 20 = 150.
        let bar = Extrusion {
            profile: Region::solid(Outline::rounded_rectangle(30.0, -20.0, 70.0, 20.0, 20.0)),
            start: EndPlane::square(0.0),
            end: EndPlane {
                offset: 100.0,
                slope: [0.6, 0.8],
            },
            slots: vec![],
        };
        assert!((bar.bounds().high.z - 150.0).abs() < 1e-9);
        assert!((bar.volume() - PI * 400.0 * 130.0).abs() < 1e-6);
        prove(&Solid::Extrusion(bar));
    }

    #[test]
    fn a_plate_with_holes_is_proved() {
        let plate = Region {
            outer: Outline::rounded_rectangle(0.0, 0.0, 600.0, 400.0, 25.0),
            holes: vec![
                Outline::rounded_rectangle(100.0, 100.0, 300.0, 300.0, 40.0),
                Outline::rectangle(350.0, 100.0, 550.0, 300.0),
            ],
        };
        let plate = Solid::extrusion(plate, 16.0);
        prove(&plate);
    }

    #[test]
    fn nonsense_gives_no_surface() {
        let bow_tie = Outline::polygon(&[
            [0.0, 0.0].into(),
            [10.0, 10.0].into(),
            [10.0, 0.0].into(),
            [0.0, 5.0].into(),
        ]);
        for solid in [
            Solid::extrusion(Region::solid(bow_tie), 10.0),
            Solid::cuboid(0.0, 10.0, 10.0),
            Solid::cuboid(10.0, 10.0, 0.0),
            Solid::cuboid(10.0, 10.0, -5.0),
            Solid::cuboid(f64::NAN, 10.0, 10.0),
            Solid::extrusion(Region::solid(Outline::new(vec![])), 10.0),
        ] {
            let faceted = solid.faceted(0.1);
            assert!(
                faceted.check_against(&solid, 0.1).is_err(),
                "{solid:?} passed"
            );
        }
    }
}
