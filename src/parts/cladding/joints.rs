//! Where the vertical joints of one course stand.

use crate::plan::{FaceOpening, Steel};

/// A joint keeps so far from the corner of an opening where it can, millimetres: four inches, common practice.
const CORNER_CLEAR: f64 = 101.6;
/// Joints of neighbouring courses stand so far apart where they can, millimetres: six inches, common practice.
const STAGGER: f64 = 152.4;
/// Each board edge bears on so much steel, millimetres: three eighths of an inch, common practice.
pub(super) const BEARING: f64 = 9.525;
/// A piece narrower than this is avoided where it costs no further joint, millimetres: one foot, common practice.
const NARROW: f64 = 304.8;
/// A piece narrower than this cannot be screwed: 3/8 in to an edge on both sides of a screw, published, and 3/8 in of bearing,
/// common practice, millimetres.
const SCREWED: f64 = 3.0 * 9.525;
/// Steel ends within this of each other, and of the board's edges, count as meeting, millimetres.
const SLACK: f64 = 3.0;

/// The price of each thing one would rather not do; each weighs more than any likely sum of those below it.
mod price {
    pub(super) const OFF_STEEL: f64 = 1e9;
    pub(super) const ALIGNED: f64 = 1e6;
    pub(super) const UNSCREWED: f64 = 2e5;
    pub(super) const CORNER: f64 = 1e4;
    pub(super) const PIECE: f64 = 1e2;
    pub(super) const NARROW: f64 = 20.0;
}

/// A stretch of a course without a break: what must be jointed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stretch<'a> {
    /// From where to where along the face.
    pub s: (f64, f64),
    /// Lower and upper edge of its boards.
    pub z: (f64, f64),
    /// The face's openings.
    pub openings: &'a [FaceOpening],
    /// The steel behind the face.
    pub steel: &'a [Steel],
    /// The joints of the course below.
    pub below: &'a [f64],
    /// The longest piece.
    pub longest: f64,
    /// The gap at a joint.
    pub gap: f64,
}

/// A place where a piece may end, and what a joint there costs.
#[derive(Clone, Copy, Debug)]
struct Stop {
    s: f64,
    cost: f64,
}

impl Stretch<'_> {
    /// The joints, rising: on steel, no piece longer than a sheet, clear of the corners of openings and of the joints
    /// below, and then as few as will do, whole sheets first.
    pub fn joints(&self) -> Vec<f64> {
        if self.s.1 - self.s.0 <= self.longest || self.longest <= self.gap {
            return Vec::new();
        }
        let backed = self.backed_stops();
        self.cheapest(&backed)
            .or_else(|| self.cheapest(&self.with_unbacked(backed)))
            .unwrap_or_default()
    }

    /// Middles of uprights that have steel behind the whole height of the joint.
    fn backed_stops(&self) -> Vec<Stop> {
        let mut uprights: Vec<_> = self.steel.iter().filter(|s| s.upright).collect();
        uprights.sort_by(|a, b| a.s0.total_cmp(&b.s0));
        let lying: Vec<_> = self.steel.iter().filter(|s| !s.upright).collect();
        let widest = uprights.iter().map(|u| u.s1 - u.s0).fold(0.0, f64::max);
        let mut stops: Vec<Stop> = Vec::new();
        for upright in &uprights {
            let s = f64::midpoint(upright.s0, upright.s1);
            let new = stops.last().is_none_or(|last| s - last.s > 0.5);
            if !new || s <= self.s.0 + BEARING || s >= self.s.1 - BEARING {
                continue;
            }
            let near = uprights.partition_point(|u| u.s0 < s - widest);
            let beside = uprights[near..].iter().take_while(|u| u.s0 < s);
            if self.is_backed(s, beside.chain(&lying).copied()) {
                stops.push(self.stop(s));
            }
        }
        stops
    }

    /// True when every height of a joint at s that is not in an opening has steel behind both board edges.
    fn is_backed<'b>(&self, s: f64, steel: impl Iterator<Item = &'b Steel>) -> bool {
        let mut covered: Vec<(f64, f64)> = steel
            .filter(|t| t.s0 <= s - BEARING && s + BEARING <= t.s1)
            .map(|t| (t.z0, t.z1))
            .collect();
        let open = self.openings.iter().filter(|o| o.s0 < s && s < o.s1);
        covered.extend(open.map(|o| (o.z0, o.z1)));
        covered.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut reached = self.z.0;
        for (low, high) in covered {
            if low > reached + SLACK {
                break;
            }
            reached = reached.max(high);
        }
        reached >= self.z.1 - SLACK
    }

    fn stop(&self, s: f64) -> Stop {
        let crowded = |clear: f64, d: f64| {
            if d < clear - 1e-6 {
                2.0 - d / clear
            } else {
                0.0
            }
        };
        let corners: f64 = self
            .openings
            .iter()
            .map(|o| {
                let inside = |z: &f64| self.z.0 + 1e-6 < *z && *z < self.z.1 - 1e-6;
                let heights = [o.z0, o.z1].iter().filter(|z| inside(z)).count();
                let near = crowded(CORNER_CLEAR, (s - o.s0).abs())
                    + crowded(CORNER_CLEAR, (s - o.s1).abs());
                heights as f64 * near
            })
            .sum();
        let aligned: f64 = self
            .below
            .iter()
            .map(|b| crowded(STAGGER, (s - b).abs()))
            .sum();
        Stop {
            s,
            cost: corners * price::CORNER + aligned * price::ALIGNED,
        }
    }

    /// The stops with others between them, off the steel: a last resort that keeps pieces within the sheet.
    fn with_unbacked(&self, mut stops: Vec<Stop>) -> Vec<Stop> {
        let step = (self.longest - self.gap) / 2.0;
        let count = ((self.s.1 - self.s.0) / step).ceil().clamp(0.0, 1e5) as usize;
        stops.extend((1..count).map(|i| {
            let stop = self.stop(self.s.0 + i as f64 * step);
            Stop {
                cost: stop.cost + price::OFF_STEEL,
                ..stop
            }
        }));
        stops.sort_by(|a, b| a.s.total_cmp(&b.s));
        stops
    }

    /// The cheapest way from one end to the other; `None` when some piece would be longer than a sheet.
    fn cheapest(&self, stops: &[Stop]) -> Option<Vec<f64>> {
        let ends = |s| Stop { s, cost: 0.0 };
        let mut all = vec![ends(self.s.0)];
        all.extend(stops);
        all.push(ends(self.s.1));
        let last = all.len() - 1;
        let half = |i: usize| {
            if i == 0 || i == last {
                0.0
            } else {
                self.gap / 2.0
            }
        };
        // For each stop the cheapest cost of getting there, and from which one.
        let mut best: Vec<Option<(f64, usize)>> = vec![Some((0.0, 0))];
        for j in 1..=last {
            let mut found: Option<(f64, usize)> = None;
            for i in (0..j).rev() {
                let piece = all[j].s - half(j) - all[i].s - half(i);
                if piece > self.longest + 1e-6 {
                    break;
                }
                let Some((so_far, _)) = best[i] else { continue };
                let cost = so_far + all[j].cost + self.price_of(piece);
                if found.is_none_or(|f| cost < f.0) {
                    found = Some((cost, i));
                }
            }
            best.push(found);
        }
        let mut joints = Vec::new();
        let mut at = best[last]?.1;
        while at > 0 {
            joints.push(all[at].s);
            at = best[at]?.1;
        }
        joints.reverse();
        Some(joints)
    }

    /// What a piece of this length costs; a whole sheet and its rest are cheaper than two halves.
    fn price_of(&self, piece: f64) -> f64 {
        let narrow = (1.0 - piece / NARROW).max(0.0);
        let unscrewed = if piece < SCREWED - 1e-6 {
            price::UNSCREWED
        } else {
            0.0
        };
        let share = piece / self.longest;
        price::PIECE + unscrewed + narrow * price::NARROW - share * share
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Studs 30 wide with their middles at these places, between tracks, 800 high.
    fn steel(middles: &[f64]) -> Vec<Steel> {
        let piece = |s0: f64, s1: f64, z0: f64, z1: f64, upright: bool| Steel {
            s0,
            s1,
            z0,
            z1,
            upright,
        };
        let mut all: Vec<_> = middles
            .iter()
            .map(|m| piece(m - 15.0, m + 15.0, 1.0, 799.0, true))
            .collect();
        all.push(piece(0.0, 3000.0, 0.0, 30.0, false));
        all.push(piece(0.0, 3000.0, 770.0, 800.0, false));
        all
    }

    fn opening(s0: f64, s1: f64) -> FaceOpening {
        FaceOpening {
            name: String::new(),
            kind: None,
            index: 0,
            s0,
            s1,
            z0: 200.0,
            z1: 600.0,
        }
    }

    fn joints(steel: &[Steel], openings: &[FaceOpening], below: &[f64]) -> Vec<f64> {
        let stretch = Stretch {
            s: (0.0, 2400.0),
            z: (0.0, 800.0),
            openings,
            steel,
            below,
            longest: 1200.0,
            gap: 4.0,
        };
        stretch.joints()
    }

    const GRID: [f64; 5] = [400.0, 800.0, 1200.0, 1600.0, 2000.0];

    #[test]
    fn two_whole_sheets_meet_on_the_stud_between_them() {
        assert_eq!(joints(&steel(&GRID), &[], &[]), [1200.0]);
    }

    #[test]
    fn a_joint_beside_the_corner_of_an_opening_is_moved_though_it_costs_a_piece() {
        // At 1200 it would stand 50 from the corner; 1600 to 2400 and 0 to 1200 leave no other single joint.
        let found = joints(&steel(&GRID), &[opening(1250.0, 1500.0)], &[]);
        assert_eq!(found.len(), 2);
        assert!(
            found
                .iter()
                .all(|s| (s - 1250.0).abs() > 100.0 && (s - 1500.0).abs() >= 100.0)
        );
    }

    #[test]
    fn no_joint_leaves_a_strip_that_cannot_be_screwed() {
        // 1210 long: with one joint on a stud at its end, 25 − 2 would be left, less than 28.6; the joint beside the corner
        // of an opening is the lesser evil.
        let steel = steel(&[25.0, 420.0, 800.0, 1185.0]);
        let stretch = Stretch {
            s: (0.0, 1210.0),
            z: (0.0, 800.0),
            openings: &[opening(450.0, 770.0)],
            steel: &steel,
            below: &[],
            longest: 1200.0,
            gap: 4.0,
        };
        let found = stretch.joints();
        assert!(found == [420.0] || found == [800.0], "{found:?}");
    }

    #[test]
    fn a_joint_over_the_joint_below_is_moved() {
        let found = joints(&steel(&GRID), &[], &[1200.0]);
        assert_eq!(found.len(), 2);
        assert!(!found.contains(&1200.0));
    }

    #[test]
    fn a_cripple_carries_a_joint_only_where_it_stands() {
        // The upright at 1200 stops at 500: a joint there would hang free above it.
        let mut steel = steel(&[400.0, 800.0, 1600.0, 2000.0]);
        steel.push(Steel {
            s0: 1185.0,
            s1: 1215.0,
            z0: 1.0,
            z1: 500.0,
            upright: true,
        });
        assert!(!joints(&steel, &[], &[]).contains(&1200.0));
        // Above and below an opening two cripples do.
        steel[6].z1 = 200.0;
        steel.push(Steel {
            z0: 600.0,
            z1: 799.0,
            ..steel[6]
        });
        assert_eq!(joints(&steel, &[opening(1050.0, 1350.0)], &[]), [1200.0]);
    }

    #[test]
    fn without_steel_pieces_still_come_from_sheets() {
        let found = joints(&[], &[], &[]);
        let mut ends = vec![0.0];
        ends.extend(&found);
        ends.push(2400.0);
        assert!(ends.windows(2).all(|p| p[1] - p[0] <= 1204.0), "{found:?}");
    }
}
