//! The exact volume and box of a slab.

use super::validity::{Joint, Which};
use super::{Slab, SlabCorner, SlabEdge};
use crate::geometry::{Bounds3, Outline, Point2, Point3, Segment, Vector2};

/// Abscissas and weights of the eight-point rule of Gauss and Legendre on −1 … 1, from the handbook tables.
const GAUSS: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_5),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_3),
];

/// ∫ f(inset) dz, downwards, along one stretch of a profile.
///
/// `f` is a polynomial of second degree, and the sum is taken over quarters of the stretch: good to the last digits.
fn down(stretch: Segment, f: impl Fn(f64) -> f64) -> f64 {
    let arc = stretch.arc();
    let fall = |t: f64| {
        arc.map_or(stretch.from.y - stretch.to.y, |a| {
            -a.radius * a.sweep * (a.start + a.sweep * t).cos()
        })
    };
    let node = |middle: f64, (x, w): (f64, f64)| {
        [-x, x]
            .map(|x| middle + x / 8.0)
            .map(|t| w / 8.0 * f(stretch.at(t).x) * fall(t))
            .iter()
            .sum::<f64>()
    };
    [0.125, 0.375, 0.625, 0.875]
        .into_iter()
        .flat_map(|middle| GAUSS.map(|g| node(middle, g)))
        .sum()
}

/// The line in which a side's outer surface ends at one of its corners: stretches of a profile, and where each of their
/// insets stands.
struct EndLine {
    corner: SlabCorner,
    side: Which,
    mitred: Vec<Segment>,
    /// What goes on in the plane of the plain side: of this side's own profile, or of its neighbour's.
    flush: Vec<Segment>,
    plain: Option<Which>,
}

impl EndLine {
    /// Where a mitred point stands.
    fn mitre(&self, inset: f64) -> Point2 {
        let (end, start) = self.corner.ends(inset, inset);
        if self.side == Which::Before {
            end
        } else {
            start
        }
    }

    /// Where a point of the ending profile stands in the plain side's plane.
    fn flush(&self, inset: f64) -> Point2 {
        match self.plain {
            Some(Which::Before) => self.corner.meet(0.0, inset),
            _ => self.corner.meet(inset, 0.0),
        }
    }

    /// ∫ (p · outward)(p · along) dz downwards over the line, seen from `origin`.
    fn moment(&self, inward: Vector2, along: Vector2, origin: Point2) -> f64 {
        let product = |p: Point2| -(p - origin).dot(&inward) * (p - origin).dot(&along);
        let mitred: f64 = self
            .mitred
            .iter()
            .map(|s| down(*s, |a| product(self.mitre(a))))
            .sum();
        let flush: f64 = self
            .flush
            .iter()
            .map(|s| down(*s, |a| product(self.flush(a))))
            .sum();
        mitred + flush
    }
}

impl Slab {
    fn end_line(&self, corner: usize, side: Which) -> EndLine {
        let n = self.edges.len();
        let edge = match side {
            Which::Before => &self.edges[(corner + n - 1) % n],
            Which::After => &self.edges[corner],
        };
        let whole: Vec<_> = edge.stretches().collect();
        let (mitred, flush, plain) = match self.joint(corner) {
            Some(Joint::Ends { plain, shared }) => {
                let from = shared.saturating_sub(1);
                let rest = self.ending(corner, plain).stretches().skip(from).collect();
                (whole[..from.min(whole.len())].to_vec(), rest, Some(plain))
            }
            _ => (whole, Vec::new(), None),
        };
        EndLine {
            corner: self.corner(corner),
            side,
            mitred,
            flush,
            plain,
        }
    }

    /// The exact volume, mm³.
    ///
    /// By the divergence theorem with (x, y, 0) / 2: each side's surface gives the difference of its two end lines,
    /// each eased corner its arc or short side, and what is level gives nothing.
    pub fn volume(&self) -> f64 {
        let n = self.edges.len();
        if n < 3 {
            return 0.0;
        }
        let origin = self.edges[0].corner;
        let sides: f64 = (0..n)
            .map(|i| {
                let corner = self.corner(i);
                let (inward, along) = (corner.after, Vector2::new(corner.after.y, -corner.after.x));
                let [start, end] = [(i, Which::After), ((i + 1) % n, Which::Before)]
                    .map(|(c, side)| self.end_line(c, side).moment(inward, along, origin));
                (end - start) / 2.0
            })
            .sum();
        let corners: f64 = (0..n).map(|i| self.eased_part(i, origin)).sum();
        let holes: f64 = self.cutouts.iter().map(Outline::area).sum();
        sides + corners - holes * self.thickness
    }

    /// What the easing of a corner adds to the volume's integral.
    fn eased_part(&self, i: usize, origin: Point2) -> f64 {
        let corner = self.corner(i);
        let Some(easing) = corner.easing else {
            return 0.0;
        };
        let (first, last) = (easing.first - easing.centre, easing.last - easing.centre);
        let straight = (easing.centre - origin).perp(&(last - first));
        let own = if easing.round {
            first.norm_squared() * corner.turn
        } else {
            first.perp(&last)
        };
        let integrand = |a: f64| {
            let share = easing.share(a);
            share * (straight + own * share) / 2.0
        };
        self.edges[i].stretches().map(|s| down(s, integrand)).sum()
    }

    /// The exact box round it.
    pub fn bounds(&self) -> Bounds3 {
        let plan = self.outline().bounds();
        let (low, high) = self
            .edges
            .iter()
            .flat_map(SlabEdge::stretches)
            .map(SlabEdge::box_of)
            .fold((0.0, self.thickness), |(low, high): (f64, f64), b| {
                (low.min(b.low.y), high.max(b.high.y))
            });
        Bounds3 {
            low: Point3::new(plan.low.x, plan.low.y, low),
            high: Point3::new(plan.high.x, plan.high.y, high),
        }
    }
}
