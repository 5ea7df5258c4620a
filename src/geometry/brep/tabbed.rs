//! The faces of a channel with folded tabs.

use super::Boundary;
use super::extrusion::Sleeve;
use super::sketch::{Loop, enclose, plane, side_face};
use crate::geometry::{Tab, Tabbed, WallFrame};
use std::f64::consts::FRAC_1_SQRT_2;
use truck_modeling::{Edge, Face, Point3, Vertex, Wire, builder};

impl Tabbed {
    /// See [`crate::geometry::Solid::boundary`].
    pub fn boundary(&self) -> Option<Boundary> {
        let frame = self.wall.frame(&self.body.profile)?;
        let Sleeve {
            mut faces,
            low,
            high,
        } = self.body.sleeve()?;
        for (tab, ring, at_end) in [
            (&self.start, low.first()?, false),
            (&self.end, high.first()?, true),
        ] {
            let closing = match tab {
                Some(tab) => self.closing(tab, ring, &frame, at_end)?,
                None => vec![plane(&[ring.wire()])?],
            };
            // Built as if the member went up from here; at the start it goes down.
            faces.extend(
                closing
                    .into_iter()
                    .map(|f| if at_end { f } else { f.inverse() }),
            );
        }
        enclose(faces)
    }

    /// The faces that close an end with a tab: both flanges, the fold and the flat.
    fn closing(
        &self,
        tab: &Tab,
        ring: &Loop,
        frame: &WallFrame,
        at_end: bool,
    ) -> Option<Vec<Face>> {
        let n = ring.edges.len();
        let (outer, inner) = (
            ring.edges.get(self.wall.outer)?,
            ring.edges.get(self.wall.inner)?,
        );
        let cuts = [
            builder::line(outer.back(), inner.front()),
            builder::line(inner.back(), outer.front()),
        ];
        let between = |from: usize, to: usize, cut: &Edge| -> Option<Face> {
            let count = (to + n - from - 1) % n;
            let chain = (0..count).map(|i| ring.edges[(from + 1 + i) % n].clone());
            plane(&[chain.chain([cut.inverse()]).collect::<Wire>()])
        };
        let mut faces = vec![
            between(self.wall.outer, self.wall.inner, &cuts[0])?,
            between(self.wall.inner, self.wall.outer, &cuts[1])?,
        ];
        let [first, second] = cuts;
        let start = [outer.clone(), first, inner.clone(), second];
        faces.extend(self.tab_faces(tab, &start, frame, at_end)?);
        Some(faces)
    }

    /// The faces of fold and flat, from the ring of four edges where the fold begins.
    fn tab_faces(
        &self,
        tab: &Tab,
        start: &[Edge; 4],
        frame: &WallFrame,
        at_end: bool,
    ) -> Option<Vec<Face>> {
        let (z, up) = if at_end {
            (self.body.end.offset, 1.0)
        } else {
            (self.body.start.offset, -1.0)
        };
        let radius = tab.radius + frame.thickness;
        let place = |u: f64, depth: f64, rise: f64| -> Point3 {
            let p = frame.at(u, depth, z + up * rise);
            Point3::new(p.x, p.y, p.z)
        };
        let corners = [
            (0.0, radius),
            (frame.length, radius),
            (frame.length, tab.radius),
            (0.0, tab.radius),
        ];
        let [bent, tip] = [0.0, tab.length].map(|run| -> [Vertex; 4] {
            corners.map(|(u, rise)| builder::vertex(place(u, radius + run, rise)))
        });
        let ring = |v: &[Vertex; 4]| [0, 1, 2, 3].map(|i| builder::line(&v[i], &v[(i + 1) % 4]));
        let (after_fold, end) = (ring(&bent), ring(&tip));
        let arcs = [0, 1, 2, 3].map(|i| {
            let (u, r) = corners[i];
            let half = r * FRAC_1_SQRT_2;
            builder::circle_arc(start[i].front(), &bent[i], place(u, radius - half, half))
        });
        let straights = [0, 1, 2, 3].map(|i| builder::line(&bent[i], &tip[i]));
        let mut faces = Vec::with_capacity(9);
        for i in 0..4 {
            let j = (i + 1) % 4;
            if i % 2 == 0 {
                faces.push(side_face(
                    [&start[i], &arcs[j], &after_fold[i], &arcs[i]],
                    &[],
                )?);
            } else {
                let rim = [
                    start[i].clone(),
                    arcs[j].clone(),
                    after_fold[i].inverse(),
                    arcs[i].inverse(),
                ];
                faces.push(plane(&[rim.into_iter().collect::<Wire>()])?);
            }
            faces.push(side_face(
                [&after_fold[i], &straights[j], &end[i], &straights[i]],
                &[],
            )?);
        }
        faces.push(plane(&[end.into_iter().collect::<Wire>()])?);
        Some(faces)
    }
}
