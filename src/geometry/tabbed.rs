//! A channel with folded tabs: its volume, its box and its triangles.

use super::extrusion::Prism;
use super::faceting::Shell;
use super::wall::WallFrame;
use super::{Bounds3, Faceted, Point3, Segment, Tab, Tabbed};
use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};

impl Tab {
    /// The exact volume of fold and flat per millimetre of width.
    fn section(&self, thickness: f64) -> f64 {
        let outer = self.radius + thickness;
        FRAC_PI_4 * (outer * outer - self.radius * self.radius) + self.length * thickness
    }

    /// Rows across the fold and the flat, as (depth from the outer skin, rise beyond the body's end) of the outer and
    /// of the inner skin; the first row is the body's own end and left out.
    fn rows(&self, thickness: f64, tolerance: f64) -> Vec<[[f64; 2]; 2]> {
        let outer = self.radius + thickness;
        let quarter = Segment {
            from: [0.0, 0.0].into(),
            to: [outer, outer].into(),
            bulge: (FRAC_PI_2 / 4.0).tan(),
        };
        let chords = quarter.chords(tolerance);
        let fold = (1..=chords).map(|i| {
            let (s, c) = (FRAC_PI_2 * i as f64 / chords as f64).sin_cos();
            [outer, self.radius].map(|r| [outer - r * c, r * s])
        });
        let flat = [outer, self.radius].map(|r| [outer + self.length, r]);
        fold.chain([flat]).collect()
    }
}

impl Tabbed {
    /// The exact volume, mm³.
    pub fn volume(&self) -> f64 {
        let tabs = self.wall.frame(&self.body.profile).map_or(0.0, |f| {
            let both = self.start.iter().chain(&self.end);
            both.map(|tab| f.length * tab.section(f.thickness)).sum()
        });
        self.body.volume() + tabs
    }

    /// The exact box round it.
    pub fn bounds(&self) -> Bounds3 {
        let body = self.body.bounds();
        let Some(frame) = self.wall.frame(&self.body.profile) else {
            return body;
        };
        let ends = [
            (&self.start, -1.0, self.body.start.offset),
            (&self.end, 1.0, self.body.end.offset),
        ];
        let reach = ends.into_iter().filter_map(|(tab, up, z)| {
            let outer = tab.as_ref()?.radius + frame.thickness;
            let depth = outer + tab.as_ref()?.length;
            let corners = [
                (0.0, 0.0),
                (frame.length, 0.0),
                (0.0, depth),
                (frame.length, depth),
            ];
            Bounds3::around(corners.map(|(u, d)| frame.at(u, d, z + up * outer)))
        });
        reach.fold(body, Bounds3::union)
    }

    /// Its triangles; none when the description contradicts itself.
    pub fn faceted(&self, tolerance: f64) -> Faceted {
        let mut shell = Shell::default();
        let whole = self.assemble(&mut shell, tolerance);
        whole.map_or_else(Faceted::default, |()| shell.finish())
    }

    fn assemble(&self, shell: &mut Shell, tolerance: f64) -> Option<()> {
        let frame = self.wall.frame(&self.body.profile)?;
        let inner = self.body.profile.outer.segments().nth(self.wall.inner)?;
        let even =
            frame.u(&inner.to).abs() < 1e-9 && (frame.u(&inner.from) - frame.length).abs() < 1e-9;
        let square = self.body.start.slope == [0.0; 2] && self.body.end.slope == [0.0; 2];
        if !(even && square && self.body.profile.holes.is_empty()) {
            return None;
        }
        let prism = self.body.prism(shell, tolerance)?;
        for (tab, row, at_end) in [
            (&self.start, &prism.low, false),
            (&self.end, &prism.high, true),
        ] {
            let rest: Vec<Vec<u32>> = match tab {
                None => row.clone(),
                Some(tab) => {
                    let rows = tab.rows(frame.thickness, tolerance);
                    self.fold(shell, &prism, row, &frame, (&rows, at_end));
                    self.flanges(&prism, row).into()
                }
            };
            for ring in rest.into_iter().filter(|r| r.len() > 2) {
                shell.polygon(&[ring], |p| [p.x, p.y], !at_end)?;
            }
        }
        Some(())
    }

    /// The wall's four corners in a row of the body: along the outer skin and back along the inner one.
    fn web(&self, prism: &Prism, row: &[Vec<u32>]) -> Vec<u32> {
        let skins = [self.wall.outer, self.wall.inner];
        skins.map(|s| prism.rings[0].along(s, &row[0])).concat()
    }

    /// What an end of the body shows on either side of the wall: two rings of corners.
    fn flanges(&self, prism: &Prism, row: &[Vec<u32>]) -> [Vec<u32>; 2] {
        let n = row[0].len();
        let starts = [self.wall.outer, self.wall.inner].map(|s| prism.rings[0].start(s));
        [(starts[0], starts[1]), (starts[1], starts[0])].map(|(from, to)| {
            let count = (to + n - from - 1) % n + 1;
            (0..count).map(|i| row[0][(from + 1 + i) % n]).collect()
        })
    }

    /// Puts a fold and its flat on the wall's end.
    fn fold(
        &self,
        shell: &mut Shell,
        prism: &Prism,
        row: &[Vec<u32>],
        frame: &WallFrame,
        (rows, at_end): (&[[[f64; 2]; 2]], bool),
    ) {
        let (z, up) = if at_end {
            (self.body.end.offset, 1.0)
        } else {
            (self.body.start.offset, -1.0)
        };
        let mut tube = vec![self.web(prism, row)];
        for [outer, inner] in rows {
            let corner =
                |u: f64, [depth, rise]: [f64; 2]| -> Point3 { frame.at(u, depth, z + up * rise) };
            let across = [
                (0.0, outer),
                (frame.length, outer),
                (frame.length, inner),
                (0.0, inner),
            ];
            tube.push(shell.row(across.map(|(u, at)| corner(u, *at))));
        }
        let last = tube.len() - 1;
        for side in 0..4 {
            // The outer and inner skin each have a curved and a flat surface; the sheet's edges are plane throughout.
            let surface = shell.surface();
            let flat = if side % 2 == 0 {
                shell.surface()
            } else {
                surface
            };
            for i in 0..last {
                let [low, high] = [i, i + 1].map(|r| [tube[r][side], tube[r][(side + 1) % 4]]);
                shell.strip(
                    &low,
                    &high,
                    if i + 1 < last { surface } else { flat },
                    !at_end,
                );
            }
        }
        shell.patch(&[[0, 1, 2], [0, 2, 3]], &tube[last], !at_end);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::SteelSection;
    use crate::geometry::proof::prove;
    use crate::geometry::{EndPlane, Extrusion, Solid};
    use std::f64::consts::PI;

    fn header(designator: &str, start: Option<Tab>, end: Option<Tab>) -> Tabbed {
        let section = SteelSection::from_designator(designator).unwrap();
        Tabbed {
            body: Extrusion {
                profile: section.profile(),
                start: EndPlane::square(0.0),
                end: EndPlane::square(600.0),
                slots: vec![],
            },
            wall: section.web(),
            start,
            end,
        }
    }

    const TAB: Tab = Tab {
        radius: 2.0,
        length: 36.0,
    };

    #[test]
    fn tabs_add_a_bent_sheet() {
        // 362T125-33: flat web = 3.625 + 2t + r − 2(r + t) = 3.625 − r, r = 3/32 − t/2 = 0.07645 in, so 3.54855 in
        // = 90.13317 mm; t = 0.0346 in = 0.87884 mm. Fold π/4 (2.87884² − 2²), flat 36 · 0.87884.
        let bare = header("362T125-33", None, None).volume();
        let tabbed = header("362T125-33", Some(TAB), Some(TAB));
        let t = 0.87884;
        let strip = PI / 4.0 * ((2.0 + t) * (2.0 + t) - 4.0) + 36.0 * t;
        let expected = 2.0 * 90.13317 * strip;
        assert!((tabbed.volume() - bare - expected).abs() < 1e-6);
        let bounds = tabbed.bounds();
        assert!((bounds.high.z - 602.87884).abs() < 1e-9 && (bounds.low.z + 2.87884).abs() < 1e-9);
        assert!((bounds.high.x - 38.87884).abs() < 1e-9);
    }

    #[test]
    fn tabs_close_on_tracks_and_studs_at_either_end() {
        for designator in ["362T125-33", "600S162-43"] {
            for (start, end) in [
                (None, None),
                (Some(TAB), None),
                (None, Some(TAB)),
                (Some(TAB), Some(TAB)),
            ] {
                prove(&Solid::Tabbed(header(designator, start, end)));
            }
        }
    }

    #[test]
    fn a_slot_goes_with_tabs() {
        let mut sill = header("362T125-33", Some(TAB), Some(TAB));
        sill.body.slots.push(crate::geometry::Slot {
            wall: sill.wall,
            outline: crate::geometry::Outline::rounded_rectangle(20.0, 100.0, 60.0, 140.0, 20.0),
        });
        let sill = Solid::Tabbed(sill);
        prove(&sill);
    }
}
