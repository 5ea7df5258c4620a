//! The triangles of a slab.

use super::validity::{Joint, Which};
use super::{Slab, SlabCorner, SlabEdge};
use crate::geometry::faceting::{Ring, Shell};
use crate::geometry::{Faceted, Point2, Point3, Segment, Vector2};

/// A profile flattened to chords.
struct Chain {
    /// Insets and heights, from the top.
    points: Vec<Point2>,
    /// The stretch of the profile that each chord belongs to.
    stretch: Vec<usize>,
    /// Where each point of the profile stands among `points`.
    at: Vec<usize>,
}

impl Chain {
    /// Flattens a profile; a straight drop past the underside gets a point there, so that what meets it there fits.
    fn new(edge: &SlabEdge, tolerance: f64) -> Self {
        let mut chain = Self {
            points: Vec::new(),
            stretch: Vec::new(),
            at: Vec::new(),
        };
        for (i, s) in edge.stretches().enumerate() {
            chain.at.push(chain.points.len());
            let chords = s.chords(tolerance);
            chain.points.push(s.from);
            chain
                .points
                .extend((1..chords).map(|k| s.at(k as f64 / chords as f64)));
            if s.bulge == 0.0 && s.from.x == 0.0 && s.to.x == 0.0 && s.from.y > 0.0 && s.to.y < 0.0
            {
                chain.points.push(Point2::origin());
            }
            chain.stretch.resize(chain.points.len(), i);
        }
        chain.at.push(chain.points.len());
        chain
            .points
            .extend(edge.profile.last().map(|p| Point2::new(p.inset, p.z)));
        chain
    }
}

/// One end of a side: what stands there at each point of its chain.
#[derive(Clone, Default)]
struct End {
    points: Vec<u32>,
    /// The line in which the last strip ends, downwards: more than two points where a neighbour ends in it.
    last: Vec<u32>,
}

/// The corners put on so far.
struct Corners {
    starts: Vec<End>,
    ends: Vec<End>,
    top: Vec<u32>,
    under: Vec<u32>,
}

fn in_space(p: Point2, z: f64) -> Point3 {
    Point3::new(p.x, p.y, z)
}

impl Slab {
    /// Its triangles; none when the description contradicts itself.
    ///
    /// Half of the tolerance goes to the profile's arcs, half to the corners', for the two add up.
    pub fn faceted(&self, tolerance: f64) -> Faceted {
        let mut shell = Shell::default();
        let sound = self.clone().checked().is_ok();
        match sound.then(|| self.build(&mut shell, tolerance)).flatten() {
            Some(()) => shell.finish(),
            None => Faceted::default(),
        }
    }

    fn build(&self, shell: &mut Shell, tolerance: f64) -> Option<()> {
        let n = self.edges.len();
        let chains: Vec<_> = self
            .edges
            .iter()
            .map(|e| Chain::new(e, tolerance / 2.0))
            .collect();
        let mut corners = Corners {
            starts: vec![End::default(); n],
            ends: vec![End::default(); n],
            top: Vec::new(),
            under: Vec::new(),
        };
        for i in 0..n {
            let before = (i + n - 1) % n;
            match self.joint(i)? {
                Joint::Mitre => {
                    let rows = self.mitre(shell, i, &chains[i], tolerance / 2.0);
                    corners.starts[i] = End::mitred(rows.iter().filter_map(|r| r.last()));
                    corners.ends[before] = End::mitred(rows.iter().filter_map(|r| r.first()));
                    corners.top.extend(rows.first()?);
                    corners.under.extend(rows.last()?);
                }
                Joint::Ends { plain, shared } => {
                    let ending = if plain == Which::Before { i } else { before };
                    let (own, plain_end, under) =
                        self.flush(shell, i, plain, &chains[ending], shared)?;
                    corners.top.extend(own.points.first());
                    corners.under.extend(under);
                    let (start, end) = match plain {
                        Which::Before => (own, plain_end),
                        Which::After => (plain_end, own),
                    };
                    corners.starts[i] = start;
                    corners.ends[before] = end;
                }
            }
        }
        for (i, chain) in chains.iter().enumerate() {
            self.side(shell, i, chain, &corners)?;
        }
        self.level(shell, &corners, tolerance)
    }

    /// The rows of points round a mitred or eased corner, and the surfaces of its easing.
    fn mitre(&self, shell: &mut Shell, i: usize, chain: &Chain, tolerance: f64) -> Vec<Vec<u32>> {
        let corner = self.corner(i);
        let chords = corner.easing.filter(|e| e.round).map_or(1, |e| {
            let widest = chain
                .points
                .iter()
                .map(|p| e.share(p.x))
                .fold(1.0, f64::max);
            let arc = Segment {
                from: e.first,
                to: e.last,
                bulge: (corner.turn / 4.0).tan(),
            };
            arc.chords(tolerance / widest)
        });
        let rows: Vec<_> = chain
            .points
            .iter()
            .map(|p| {
                shell.row(
                    corner
                        .points(p.x, chords)
                        .into_iter()
                        .map(|q| in_space(q, p.y)),
                )
            })
            .collect();
        if corner.easing.is_some() {
            let mut surface = None;
            for (k, pair) in rows.windows(2).enumerate() {
                let number = match surface {
                    Some((stretch, number)) if stretch == chain.stretch[k] => number,
                    _ => shell.surface(),
                };
                surface = Some((chain.stretch[k], number));
                between(shell, &pair[1], &pair[0], number);
            }
        }
        rows
    }

    /// The points of a corner where a side ends in the plane of a plain one: the ends of both sides there, and the
    /// corner's points on the underside.
    fn flush(
        &self,
        shell: &mut Shell,
        i: usize,
        plain: Which,
        chain: &Chain,
        shared: usize,
    ) -> Option<(End, End, Vec<u32>)> {
        let corner = self.corner(i);
        let from = chain.at[shared.saturating_sub(1)];
        let place = |(k, p): (usize, &Point2)| {
            let q = match plain {
                _ if shared > 0 && k <= from => corner.meet(p.x, p.x),
                Which::Before => corner.meet(0.0, p.x),
                Which::After => corner.meet(p.x, 0.0),
            };
            in_space(q, p.y)
        };
        let ids = shell.row(chain.points.iter().enumerate().map(place));
        let own = End::mitred(&ids);
        // At an inward corner what hangs below the underside is seen from the other way than the plain side.
        let hangs = chain.points.iter().any(|p| p.y < 0.0);
        let passing = chain.points.iter().position(|p| p.x == 0.0 && p.y == 0.0);
        let (last, under) = match passing {
            Some(m) if hangs && !corner.is_convex() => {
                cap(shell, &corner, plain, &ids[m..])?;
                let mut under = vec![*ids.last()?, ids[m]];
                if plain == Which::Before {
                    under.reverse();
                }
                (ids[from..=m].to_vec(), under)
            }
            _ => (ids[from..].to_vec(), vec![*ids.last()?]),
        };
        let mut points = ids[..=from].to_vec();
        points.push(*last.last()?);
        Some((own, End { points, last }, under))
    }

    fn side(&self, shell: &mut Shell, i: usize, chain: &Chain, corners: &Corners) -> Option<()> {
        let (start, end) = (&corners.starts[i], &corners.ends[i]);
        let strips = chain.stretch.len();
        if start.points.len() != strips + 1 || end.points.len() != strips + 1 {
            return None;
        }
        let whole = start.last.len() == 2 && end.last.len() == 2;
        let mut surface = None;
        for k in 0..strips - usize::from(!whole) {
            let number = match surface {
                Some((stretch, number)) if stretch == chain.stretch[k] => number,
                _ => shell.surface(),
            };
            surface = Some((chain.stretch[k], number));
            let row = |k: usize| [start.points[k], end.points[k]];
            shell.strip(&row(k + 1), &row(k), number, false);
        }
        if whole {
            return Some(());
        }
        let mut ring = start.last.clone();
        ring.extend(end.last.iter().rev());
        let inward = self.corner(i).after;
        let along = Vector2::new(inward.y, -inward.x);
        let origin = self.edges[i].corner;
        shell.polygon(&[ring], |p| [(p.xy() - origin).dot(&along), p.z], false)
    }

    /// Top, underside and the walls of the cutouts.
    fn level(&self, shell: &mut Shell, corners: &Corners, tolerance: f64) -> Option<()> {
        let (mut top, mut under) = (vec![corners.top.clone()], vec![corners.under.clone()]);
        for cutout in &self.cutouts {
            let ring = Ring::new(cutout, tolerance);
            let rows = [0.0, self.thickness]
                .map(|z| shell.row(ring.points.iter().map(|p| in_space(*p, z))));
            for side in 0..ring.sides() {
                shell.side(&ring, side, &rows, true);
            }
            let [low, high] = rows;
            under.push(low);
            top.push(high);
        }
        shell.polygon(&top, |p| [p.x, p.y], false)?;
        shell.polygon(&under, |p| [p.x, p.y], true)
    }
}

impl End {
    fn mitred<'a>(points: impl IntoIterator<Item = &'a u32>) -> Self {
        let points: Vec<u32> = points.into_iter().copied().collect();
        let last = points[points.len().saturating_sub(2)..].to_vec();
        Self { points, last }
    }
}

/// The end of what hangs below the underside, at an inward corner.
fn cap(shell: &mut Shell, corner: &SlabCorner, plain: Which, ids: &[u32]) -> Option<()> {
    let inward = match plain {
        Which::After => corner.before,
        Which::Before => -corner.after,
    };
    shell.polygon(
        &[ids.to_vec()],
        |p| [p.xy().coords.dot(&inward), p.z],
        false,
    )
}

/// Triangles between two rows round an eased corner, either of which may have shrunk to a point.
fn between(shell: &mut Shell, low: &[u32], high: &[u32], surface: u32) {
    match (low, high) {
        ([_], [_]) => {}
        ([point], row) => {
            for w in row.windows(2) {
                shell.triangle([*point, w[1], w[0]], surface);
            }
        }
        (row, [point]) => {
            for w in row.windows(2) {
                shell.triangle([w[0], w[1], *point], surface);
            }
        }
        _ => shell.strip(low, high, surface, false),
    }
}
