//! Whether a slab can be made.

use super::{ProfilePoint, Slab, SlabEdge};

/// What stands against a slab, and at which of its sides or corners.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SlabFault {
    /// Number of the side, or of the side that starts at the corner.
    pub at: usize,
    /// What is wrong there.
    pub trouble: SlabTrouble,
}

/// What can be wrong with a slab.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SlabTrouble {
    /// It has fewer than three sides, or no thickness.
    Empty,
    /// The side's profile does not lead from the top face by the outermost line to the underside.
    Profile,
    /// The outline goes straight on, or back, at the corner.
    Straight,
    /// The side is used up by its corners at some inset.
    Short,
    /// Two profiles meet that neither match nor end in one another's plane.
    Mismatch,
    /// Two different profiles meet at a corner that is rounded or chamfered.
    EasedMismatch,
    /// The profile slopes or curves farther in than the corner's radius or chamfer reaches.
    Tight,
}

/// Which of the two sides at a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::geometry) enum Which {
    /// The one that ends there.
    Before,
    /// The one that starts there.
    After,
}

/// How two profiles meet at a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::geometry) enum Joint {
    /// They are equal and mitred.
    Mitre,
    /// After `shared` mitred points one side is plain and the other ends in its plane.
    Ends {
        /// The plain side.
        plain: Which,
        /// How many points they have in common.
        shared: usize,
    },
}

impl Slab {
    /// The slab if it can be made.
    ///
    /// # Errors
    /// The first side or corner that cannot be made.
    pub fn checked(self) -> Result<Self, SlabFault> {
        let n = self.edges.len();
        let sizes = self.edges.iter().flat_map(|e| [e.corner.x, e.corner.y]);
        if n < 3 || !(self.thickness > 0.0 && sizes.chain([self.thickness]).all(f64::is_finite)) {
            return Err(SlabFault {
                at: 0,
                trouble: SlabTrouble::Empty,
            });
        }
        let fault = |at, trouble| Err(SlabFault { at, trouble });
        for (i, edge) in self.edges.iter().enumerate() {
            if !edge.is_sound(self.thickness) {
                return fault(i, SlabTrouble::Profile);
            }
            let turn = self.corner(i).turn;
            if !(turn.abs() > 1e-3 && turn.abs() < std::f64::consts::PI - 1e-3) {
                return fault(i, SlabTrouble::Straight);
            }
        }
        for i in 0..n {
            self.check_corner(i)
                .map_err(|trouble| SlabFault { at: i, trouble })?;
        }
        for i in 0..n {
            if self.shortest(i) < 1e-3 {
                return fault(i, SlabTrouble::Short);
            }
        }
        Ok(self)
    }

    fn check_corner(&self, i: usize) -> Result<(), SlabTrouble> {
        let joint = self.joint(i).ok_or(SlabTrouble::Mismatch)?;
        let corner = self.corner(i);
        let Some(easing) = corner.easing else {
            return self.check_end(i, joint);
        };
        if joint != Joint::Mitre {
            return Err(SlabTrouble::EasedMismatch);
        }
        let crosses =
            |low: f64, high: f64| low < easing.vanishes - 1e-9 && high > easing.vanishes + 1e-9;
        let tight = corner.is_convex()
            && self.edges[i]
                .stretches()
                .filter(|s| s.bulge != 0.0 || s.from.y != s.to.y)
                .map(SlabEdge::box_of)
                .any(|b| crosses(b.low.x, b.high.x));
        if tight {
            Err(SlabTrouble::Tight)
        } else {
            Ok(())
        }
    }

    /// At an inward corner what hangs below the underside must pass it on the outermost line: there its end is seen
    /// from the other way than the plain side.
    fn check_end(&self, i: usize, joint: Joint) -> Result<(), SlabTrouble> {
        let Joint::Ends { plain, .. } = joint else {
            return Ok(());
        };
        let ending = self.ending(i, plain);
        let hangs = ending.profile.iter().any(|p| p.z < 0.0);
        let passes = ending.stretches().any(|s| {
            s.bulge == 0.0 && s.from.x == 0.0 && s.to.x == 0.0 && s.from.y > 0.0 && s.to.y < 0.0
        });
        if self.corner(i).is_convex() || !hangs || passes {
            Ok(())
        } else {
            Err(SlabTrouble::Mismatch)
        }
    }

    /// The side at a corner that is not the plain one.
    pub(in crate::geometry) fn ending(&self, i: usize, plain: Which) -> &SlabEdge {
        let n = self.edges.len();
        match plain {
            Which::Before => &self.edges[i],
            Which::After => &self.edges[(i + n - 1) % n],
        }
    }

    /// How the profiles meet at corner `i`; `None` when they cannot.
    pub(in crate::geometry) fn joint(&self, i: usize) -> Option<Joint> {
        let n = self.edges.len();
        let before = &self.edges[(i + n - 1) % n].profile;
        let after = &self.edges[i].profile;
        if before == after {
            return Some(Joint::Mitre);
        }
        // The last shared point may differ in how the profile leaves it.
        let shared = before
            .iter()
            .zip(after)
            .take_while(|(a, b)| a.inset == b.inset && a.z == b.z)
            .count();
        let arcs_differ = (1..shared).any(|k| before[k - 1].bulge != after[k - 1].bulge);
        let plain = |p: &[ProfilePoint]| goes_straight_down_after(p, shared);
        match (arcs_differ, plain(before), plain(after)) {
            (false, true, _) => Some(Joint::Ends {
                plain: Which::Before,
                shared,
            }),
            (false, _, true) => Some(Joint::Ends {
                plain: Which::After,
                shared,
            }),
            _ => None,
        }
    }

    /// The least length that side `i` has at any of its insets.
    fn shortest(&self, i: usize) -> f64 {
        let n = self.edges.len();
        let (start, end) = (self.corner(i), self.corner((i + 1) % n));
        let along = (end.at - start.at).normalize();
        let own = self.edges[i].profile.iter().map(|p| p.inset);
        own.map(|a| {
            let from = self.inset_beside(i, Which::Before, a);
            let to = self.inset_beside(i, Which::After, a);
            (end.ends(a, to).0 - start.ends(from, a).1).dot(&along)
        })
        .fold(f64::INFINITY, f64::min)
    }

    /// The inset of the neighbour that the line at inset `a` of side `i` runs into: the same at a mitre, none at an end.
    fn inset_beside(&self, i: usize, side: Which, a: f64) -> f64 {
        let n = self.edges.len();
        let corner = match side {
            Which::Before => i,
            Which::After => (i + 1) % n,
        };
        match self.joint(corner) {
            Some(Joint::Ends { shared, .. })
                if !self.edges[i].profile[..shared].iter().any(|p| p.inset == a) =>
            {
                0.0
            }
            _ => a,
        }
    }
}

/// True when from the last of `shared` points, or from the top, a profile only goes straight down to the underside.
fn goes_straight_down_after(profile: &[ProfilePoint], shared: usize) -> bool {
    match profile {
        [.., p, q] if profile.len() == shared.max(1) + 1 => {
            p.inset == 0.0 && q.inset == 0.0 && p.bulge == 0.0 && q.z == 0.0
        }
        _ => false,
    }
}

impl SlabEdge {
    fn is_sound(&self, thickness: f64) -> bool {
        let (Some(first), Some(last)) = (self.profile.first(), self.profile.last()) else {
            return false;
        };
        let finite = self.profile.iter().all(|p| {
            p.inset.is_finite() && p.inset >= 0.0 && p.z.is_finite() && p.bulge.is_finite()
        });
        let moves = self.stretches().all(|s| (s.to - s.from).norm() > 1e-6);
        let outermost = self
            .stretches()
            .flat_map(|s| [0.0, 0.25, 0.5, 0.75, 1.0].map(|f| s.at(f).x))
            .fold(f64::INFINITY, f64::min);
        self.profile.len() >= 2
            && first.z == thickness
            && last.z == 0.0
            && finite
            && moves
            && outermost.abs() < 1e-9
    }
}
