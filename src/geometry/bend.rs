//! A profile turned about an axis: its volume, its box and its triangles.

use super::faceting::{Ring, Shell, triangulate};
use super::{Bend, Bounds3, Faceted, Point3, Segment};
use std::f64::consts::{FRAC_PI_2, TAU};

impl Bend {
    /// True when the end meets the start.
    fn closed(&self) -> bool {
        (self.angle - TAU).abs() < 1e-9
    }

    /// The exact volume, mm³: the profile's area times the way of its centroid.
    pub fn volume(&self) -> f64 {
        self.angle * self.profile.moments().first.x
    }

    /// The exact box round it.
    pub fn bounds(&self) -> Bounds3 {
        let flat = self.profile.bounds();
        let quarters = (1..4)
            .map(|k| f64::from(k) * FRAC_PI_2)
            .filter(|a| *a < self.angle);
        let corners = [0.0, self.angle].into_iter().chain(quarters).flat_map(|a| {
            [flat.low, flat.high].map(|p| Point3::new(p.x * a.cos(), p.x * a.sin(), p.y))
        });
        Bounds3::around(corners).unwrap_or(Bounds3 {
            low: Point3::origin(),
            high: Point3::origin(),
        })
    }

    /// Its triangles; none when the description contradicts itself.
    ///
    /// Half of the tolerance goes to the profile's arcs, half to the turn, for the two add up.
    pub fn faceted(&self, tolerance: f64) -> Faceted {
        let ring = Ring::new(&self.profile, tolerance / 2.0);
        let points: Vec<_> = ring.points.iter().map(|p| [p.x, p.y]).collect();
        let sound =
            self.angle > 0.0 && self.angle < TAU + 1e-9 && points.iter().all(|p| p[0] > 0.0);
        let (true, Some(cap)) = (sound, triangulate(&points, &[])) else {
            return Faceted::default();
        };
        let steps = self.steps(tolerance / 2.0);
        let mut shell = Shell::default();
        let mut rows: Vec<Vec<u32>> = (0..steps + usize::from(!self.closed()))
            .map(|i| {
                let (s, c) = (self.angle * i as f64 / steps as f64).sin_cos();
                shell.row(
                    ring.points
                        .iter()
                        .map(|p| Point3::new(p.x * c, p.x * s, p.y)),
                )
            })
            .collect();
        if self.closed() {
            rows.push(rows[0].clone());
        } else {
            shell.patch(&cap, &rows[0], false);
            shell.patch(&cap, &rows[steps], true);
        }
        // Seen along the turn the profile runs clockwise, for x × z points against y.
        for side in 0..ring.sides() {
            shell.side(&ring, side, &rows, true);
        }
        shell.finish()
    }

    /// How many chords the turn takes.
    fn steps(&self, tolerance: f64) -> usize {
        let reach = self.profile.bounds().high.x;
        let quarter = Segment {
            from: [reach, 0.0].into(),
            to: [0.0, reach].into(),
            bulge: (FRAC_PI_2 / 4.0).tan(),
        };
        let share = (self.angle / FRAC_PI_2).max(0.0);
        (quarter.chords(tolerance) as f64 * share - 1e-9)
            .ceil()
            .max(2.0) as usize
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::proof::prove;
    use crate::geometry::{Outline, Solid};
    use std::f64::consts::PI;

    #[test]
    fn a_torus_agrees_with_the_handbook() {
        // R = 100, r = 20: V = 2π² R r².
        let profile = Outline::rounded_rectangle(80.0, -20.0, 120.0, 20.0, 20.0);
        let torus = Bend {
            profile,
            angle: TAU,
        };
        assert!((torus.volume() - 2.0 * PI * PI * 100.0 * 400.0).abs() < 1e-6);
        prove(&Solid::Bend(torus));
    }

    #[test]
    fn an_edge_form_round_a_corner_is_proved() {
        for angle in [0.02, FRAC_PI_2, 2.0, PI, 5.0] {
            let profile = Outline::rounded_rectangle(150.0, 0.0, 169.0, 80.0, 6.0);
            prove(&Solid::Bend(Bend { profile, angle }));
        }
    }

    #[test]
    fn a_quarter_ring_has_the_box_of_its_quarter() {
        let profile = Outline::rectangle(50.0, 0.0, 60.0, 10.0);
        let bounds = Bend {
            profile,
            angle: FRAC_PI_2,
        }
        .bounds();
        assert!((bounds.high.x - 60.0).abs() < 1e-9 && bounds.low.x.abs() < 1e-9);
        assert!((bounds.high.y - 60.0).abs() < 1e-9 && bounds.low.y.abs() < 1e-9);
    }

    #[test]
    fn a_profile_over_the_axis_gives_no_surface() {
        let profile = Outline::rectangle(-5.0, 0.0, 60.0, 10.0);
        assert!(
            Bend {
                profile,
                angle: 1.0
            }
            .faceted(0.1)
            .check()
            .is_err()
        );
    }
}
