//! The faces of a counter slab.

use super::sewing::{Ring, Sewing, back};
use super::sides::{Frame, hole_sides};
use super::slab_corner::{Met, meet};
use super::{Along, Boundary};
use crate::geometry::{Point3, Slab, Vector3};

/// One end of a side: its corners along the profile from the top, and the edges of each stretch, downwards.
#[derive(Clone, Debug, Default)]
pub(super) struct SideEnd {
    pub corners: Vec<usize>,
    pub stretches: Vec<Vec<Along>>,
}

/// What bounds the level faces so far: counter-clockwise as seen from above.
#[derive(Default)]
struct Levels {
    top: Vec<Along>,
    under: Vec<Along>,
}

impl Slab {
    /// See [`crate::geometry::Solid::boundary`].
    pub fn boundary(&self) -> Option<Boundary> {
        self.clone().checked().ok()?;
        let n = self.edges.len();
        let mut sewing = Sewing::default();
        let met: Vec<Met> = (0..n)
            .map(|i| meet(self, &mut sewing, i))
            .collect::<Option<_>>()?;
        let mut levels = Levels::default();
        for (i, here) in met.iter().enumerate() {
            let next = &met[(i + 1) % n];
            let [first, last] = self.sew_side(&mut sewing, i, &here.start, &next.end)?;
            levels.top.push(first);
            levels.top.extend(&next.top);
            levels.under.push(last);
            levels.under.extend(&next.under);
        }
        self.sew_level(&mut sewing, levels)?;
        sewing.finish_merged()
    }

    /// Sews the outer faces of a side between its two ends; gives its edges on the top face and on the underside.
    fn sew_side(
        &self,
        sewing: &mut Sewing,
        i: usize,
        start: &SideEnd,
        end: &SideEnd,
    ) -> Option<[Along; 2]> {
        let corner = self.corner(i);
        let inward = Vector3::new(corner.after.x, corner.after.y, 0.0);
        let frame = Frame {
            origin: Point3::new(corner.at.x, corner.at.y, 0.0),
            x: inward,
            y: Vector3::z(),
            z: inward.cross(&Vector3::z()),
        };
        let pairs = start.corners.iter().zip(&end.corners);
        let lines: Vec<Along> = pairs.map(|(s, e)| sewing.line(*s, *e)).collect();
        for (k, stretch) in self.edges[i].stretches().enumerate() {
            let mut rim = start.stretches.get(k)?.clone();
            rim.push(*lines.get(k + 1)?);
            rim.extend(back(end.stretches.get(k)?));
            rim.push(lines[k].back());
            sewing.face(frame.drawn(&stretch), vec![rim]);
        }
        Some([*lines.first()?, *lines.last()?])
    }

    /// Sews top, underside and the walls of the cutouts.
    fn sew_level(&self, sewing: &mut Sewing, levels: Levels) -> Option<()> {
        let (mut top, mut under) = (vec![levels.top], vec![back(&levels.under)]);
        let world = Frame::world();
        for cutout in &self.cutouts {
            let outline = hole_sides(cutout);
            let [low, high]: [Ring; 2] =
                [0.0, self.thickness].map(|z| sewing.ring(&outline, &world.lay(z)));
            sewing.sleeve(&outline, &world, [&low, &high], |_| Vec::new());
            under.push(low.back());
            top.push(high.bound());
        }
        sewing.plane(Vector3::z(), top)?;
        sewing.plane(-Vector3::z(), under)
    }
}
