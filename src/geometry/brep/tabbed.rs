//! The faces of a channel with folded tabs.

use super::sewing::{Ring, Sewing, back};
use super::sides::{Frame, Lay};
use super::{Along, Boundary};
use crate::geometry::{Point2, Segment, Tab, Tabbed, Vector3, WallFrame};
use std::f64::consts::PI;

/// The end of a wall where it goes on into a tab: corners and edges as the tab has them to its left and right when it
/// rises and folds away from the eye.
struct Foot {
    /// Across the sheet, from the outer skin to the inner one, at low and at high.
    cuts: [Along; 2],
    /// Along the inner and the outer skin, from low to high.
    skins: [Along; 2],
    /// The corners of the inner and the outer skin, at low and at high.
    corners: [[usize; 2]; 2],
}

impl Tabbed {
    /// See [`crate::geometry::Solid::boundary`].
    pub fn boundary(&self) -> Option<Boundary> {
        let wall = self.wall.frame(&self.body.profile)?;
        let square = self.body.start.slope == [0.0; 2] && self.body.end.slope == [0.0; 2];
        if !(square && self.body.profile.holes.is_empty()) {
            return None;
        }
        let mut sewing = Sewing::default();
        let ends = self.body.sleeve(&mut sewing)?;
        for (tab, ring, at_end) in [
            (&self.start, ends.low.first()?, false),
            (&self.end, ends.high.first()?, true),
        ] {
            if let Some(tab) = tab {
                self.close(&mut sewing, tab, (ring, at_end), &wall)?;
            } else {
                let bound = if at_end { ring.bound() } else { ring.back() };
                sewing.plane(up(at_end), vec![bound])?;
            }
        }
        sewing.finish()
    }

    /// Sews what closes an end with a tab: both flanges, the fold and the flat.
    fn close(
        &self,
        sewing: &mut Sewing,
        tab: &Tab,
        (ring, at_end): (&Ring, bool),
        wall: &WallFrame,
    ) -> Option<()> {
        let (outer, inner) = (self.wall.outer, self.wall.inner);
        let far = flange(sewing, ring, [outer, inner], at_end)?;
        let near = flange(sewing, ring, [inner, outer], at_end)?;
        let n = ring.corners.len();
        let corner = |side: usize, end: usize| ring.corners[(side + end) % n];
        let (from, to) = (
            [corner(inner, 1), corner(outer, 0)],
            [corner(inner, 0), corner(outer, 1)],
        );
        // At the end of a member its wall runs from near to far, at the start it is seen from the other side.
        let skins = [ring.sides[inner].back(), ring.sides[outer]];
        let foot = if at_end {
            Foot {
                cuts: [near.back(), far],
                skins,
                corners: [[from[0], to[0]], [from[1], to[1]]],
            }
        } else {
            Foot {
                cuts: [far, near.back()],
                skins: skins.map(Along::back),
                corners: [[to[0], from[0]], [to[1], from[1]]],
            }
        };
        self.sew_fold(sewing, tab, &foot, wall, at_end)
    }

    /// Sews the fold and the flat.
    fn sew_fold(
        &self,
        sewing: &mut Sewing,
        tab: &Tab,
        foot: &Foot,
        wall: &WallFrame,
        at_end: bool,
    ) -> Option<()> {
        let inward = Vector3::new(wall.inward.x, wall.inward.y, 0.0);
        let along = Vector3::new(wall.along.x, wall.along.y, 0.0);
        let (z, ends) = if at_end {
            (self.body.end.offset, [0.0, wall.length])
        } else {
            (self.body.start.offset, [wall.length, 0.0])
        };
        let frame = Frame {
            origin: wall.at(ends[0], 0.0, z),
            x: inward,
            y: up(at_end),
            z: if at_end { along } else { -along },
        };
        let chain = section(tab, wall.thickness);
        let [low, high] = [0, 1].map(|k| {
            let lay = frame.lay(wall.length * k as f64);
            hang(sewing, &chain, &lay, foot.corners.map(|c| c[k]))
        });
        let [first, last] = foot.skins;
        let mut risers = vec![first];
        for (l, h) in low.iter().zip(&high).take(chain.len() - 1) {
            risers.push(sewing.line(l.1, h.1));
        }
        risers.push(last);
        for (i, side) in chain.iter().enumerate() {
            let rim = vec![low[i].0, risers[i + 1], high[i].0.back(), risers[i].back()];
            sewing.face(frame.drawn(side), vec![rim]);
        }
        let [low, high] = [low, high].map(|row| row.into_iter().map(|e| e.0).collect::<Vec<_>>());
        sewing.plane(
            -frame.z,
            vec![[back(&low), vec![foot.cuts[0].back()]].concat()],
        )?;
        sewing.plane(frame.z, vec![[vec![foot.cuts[1]], high].concat()])
    }
}

/// Out of the end of a member.
fn up(at_end: bool) -> Vector3 {
    Vector3::z() * if at_end { 1.0 } else { -1.0 }
}

/// Sews what an end shows of one flange, from side to side of the wall; gives the cut that parts it from the wall, from
/// the first side to the second.
fn flange(sewing: &mut Sewing, ring: &Ring, [from, to]: [usize; 2], at_end: bool) -> Option<Along> {
    let n = ring.sides.len();
    let count = (to + n - from - 1) % n;
    if count < 2 {
        return None;
    }
    let mut bound: Vec<Along> = (0..count).map(|i| ring.sides[(from + 1 + i) % n]).collect();
    let cut = sewing.line(*ring.corners.get((from + 1) % n)?, *ring.corners.get(to)?);
    bound.push(cut.back());
    if !at_end {
        bound = back(&bound);
    }
    sewing.plane(up(at_end), vec![bound])?;
    Some(cut)
}

/// Edges of a chain of sides, between corners that are there already, each with the corner where it ends.
fn hang(
    sewing: &mut Sewing,
    chain: &[Segment],
    lay: &Lay,
    [first, last]: [usize; 2],
) -> Vec<(Along, usize)> {
    let mut from = first;
    let n = chain.len();
    let mut edges = Vec::with_capacity(n);
    for (i, side) in chain.iter().enumerate() {
        let to = if i + 1 < n {
            sewing.point(lay.at(side.to))
        } else {
            last
        };
        edges.push((sewing.edge([from, to], lay.curve(side)), to));
        from = to;
    }
    edges
}

/// A tab seen along the fold: depth from the outer skin and rise beyond the body's end, from the inner skin round the
/// tip to the outer one.
fn section(tab: &Tab, thickness: f64) -> Vec<Segment> {
    let (r, outer) = (tab.radius, tab.radius + thickness);
    let tip = outer + tab.length;
    let quarter = (PI / 8.0).tan();
    let points = [
        (thickness, 0.0, -quarter),
        (outer, r, 0.0),
        (tip, r, 0.0),
        (tip, outer, 0.0),
        (outer, outer, quarter),
        (0.0, 0.0, 0.0),
    ];
    points
        .windows(2)
        .map(|w| Segment {
            from: Point2::new(w[0].0, w[0].1),
            to: Point2::new(w[1].0, w[1].1),
            bulge: w[0].2,
        })
        .collect()
}
