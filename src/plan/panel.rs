//! Frame panels: flat ladders of track and studs.

use super::{Face, Steel};
use crate::design::Side;
use crate::geometry::{Point2, Vector2};

/// Where a panel stands in its run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PanelOf {
    /// On a side of the frame.
    Side(Side),
    /// Inside, across the run; the number counts from the left end.
    Bulkhead(usize),
}

/// What an upright is called.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum UprightKind {
    /// From track to track.
    Stud,
    /// Beside an opening.
    Jamb,
    /// Above or below an opening.
    Cripple,
}

/// A stud, jamb or cripple in its panel's coordinates, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Upright {
    /// What it is.
    pub kind: UprightKind,
    /// The edge nearer the panel's start.
    pub p0: f64,
    /// The edge nearer the panel's end: one stud flange farther.
    pub p1: f64,
    /// Lower end.
    pub z0: f64,
    /// Upper end.
    pub z1: f64,
    /// True when the web is at `p1` and the section opens towards the panel's start.
    pub web_high: bool,
}

/// What a crosspiece is called.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CrosspieceKind {
    /// Above an opening, or below the panel of an appliance.
    Header,
    /// Below an opening.
    Sill,
}

/// A header or sill: track between two jambs with its web towards the opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crosspiece {
    /// What it is.
    pub kind: CrosspieceKind,
    /// The edge of the opening nearer the panel's start.
    pub p0: f64,
    /// The edge of the opening nearer the panel's end.
    pub p1: f64,
    /// Height of the web's outer skin: the edge of the opening.
    pub z: f64,
    /// True when the flanges point up.
    pub up: bool,
    /// How much longer than the opening it is cut at either end.
    pub tab: f64,
}

/// A flat ladder of track and studs. Its coordinates are p along it and z up; its outer plane is a face of the frame,
/// or for a bulkhead one of its two sides.
#[derive(Clone, Debug, PartialEq)]
pub struct Panel {
    /// Number of its run.
    pub run: usize,
    /// Where it stands.
    pub of: PanelOf,
    /// Number of the face it lies in; bulkheads have none.
    pub face: Option<usize>,
    /// Where p = 0 is on the outer plane.
    pub start: Point2,
    /// The direction of p, a unit vector: from left to right for long panels, away from the working side for others.
    pub along: Vector2,
    /// From the outer plane into the panel, a unit vector.
    pub inward: Vector2,
    /// From end to end.
    pub length: f64,
    /// Studs, jambs and cripples by p, then z.
    pub uprights: Vec<Upright>,
    /// Headers and sills by p, then z.
    pub crosspieces: Vec<Crosspiece>,
    /// Pieces of bottom track, from p to p.
    pub bottom: Vec<(f64, f64)>,
    /// Pieces of top track, from p to p.
    pub top: Vec<(f64, f64)>,
    /// Blocking behind board joints between courses: from p to p at a height.
    pub blocking: Vec<(f64, f64, f64)>,
}

impl Panel {
    /// The world point at p, so far inwards from the outer plane.
    pub fn point(&self, p: f64, inwards: f64) -> Point2 {
        self.start + self.along * p + self.inward * inwards
    }

    /// A stretch of the panel in the coordinates of a face in its plane.
    pub fn on_face(&self, face: &Face, p0: f64, p1: f64) -> (f64, f64) {
        let s = |p: f64| (self.point(p, 0.0) - face.start).dot(&face.along);
        let (a, b) = (s(p0), s(p1));
        (a.min(b), a.max(b))
    }

    /// True when the panel's outer plane is the plane of the face and they share some length.
    pub(super) fn lies_in(&self, face: &Face) -> bool {
        let apart = (self.start - face.start).dot(&face.outward).abs();
        let (s0, s1) = self.on_face(face, 0.0, self.length);
        self.inward.dot(&face.outward) < -0.5
            && apart < 1e-6
            && s1 > 1e-6
            && s0 < face.length - 1e-6
    }

    /// The steel it offers to a face: its own members if it lies in the face, the web of its end stud if it ends there.
    pub(super) fn steel(&self, face: &Face, sizes: &Sizes) -> Vec<Steel> {
        if self.lies_in(face) {
            return self.members_in(face, sizes);
        }
        let ends = [(0.0, -self.along), (self.length, self.along)];
        ends.iter()
            .filter(|(p, out)| {
                let apart = (self.point(*p, 0.0) - face.start).dot(&face.outward).abs();
                out.dot(&face.outward) > 0.5 && apart < 1e-6
            })
            .filter_map(|(p, _)| self.end_web(face, *p, sizes))
            .collect()
    }

    fn end_web(&self, face: &Face, p: f64, sizes: &Sizes) -> Option<Steel> {
        let s = |inwards: f64| (self.point(p, inwards) - face.start).dot(&face.along);
        let (a, b) = (s(0.0), s(sizes.panel));
        let (s0, s1) = (a.min(b), a.max(b));
        (s1 > 1e-6 && s0 < face.length - 1e-6).then_some(Steel {
            s0,
            s1,
            z0: sizes.frame_bottom,
            z1: sizes.frame_top,
            upright: true,
        })
    }

    fn members_in(&self, face: &Face, sizes: &Sizes) -> Vec<Steel> {
        let steel = |p0: f64, p1: f64, z0: f64, z1: f64, upright: bool| {
            let (s0, s1) = self.on_face(face, p0, p1);
            Steel {
                s0,
                s1,
                z0,
                z1,
                upright,
            }
        };
        let (low, high, flange) = (sizes.frame_bottom, sizes.frame_top, sizes.track_flange);
        let uprights = self
            .uprights
            .iter()
            .map(|u| steel(u.p0, u.p1, u.z0, u.z1, true));
        let crosspieces = self.crosspieces.iter().map(|c| {
            let z = if c.up { c.z } else { c.z - flange };
            steel(c.p0, c.p1, z, z + flange, false)
        });
        let bottom = self
            .bottom
            .iter()
            .map(|b| steel(b.0, b.1, low, low + flange, false));
        let top = self
            .top
            .iter()
            .map(|b| steel(b.0, b.1, high - flange, high, false));
        let half = sizes.panel / 2.0;
        let blocking = self
            .blocking
            .iter()
            .map(|b| steel(b.0, b.1, b.2 - half, b.2 + half, false));
        uprights
            .chain(crosspieces)
            .chain(bottom)
            .chain(top)
            .chain(blocking)
            .collect()
    }
}

/// The sizes that panels are laid out by, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sizes {
    /// Thickness of a panel: the track's overall depth.
    pub panel: f64,
    /// Flange of a stud: how long an upright is along its panel.
    pub stud_flange: f64,
    /// Flange of a track: how high it stands.
    pub track_flange: f64,
    /// Thickness of the track.
    pub track_thickness: f64,
    /// Outer radius of a fold in the track.
    pub fold: f64,
    /// The longest tab.
    pub tab: f64,
    /// Studs on centre, at most.
    pub spacing: f64,
    /// Underside of the bottom track.
    pub frame_bottom: f64,
    /// Top of the top track.
    pub frame_top: f64,
}

impl Sizes {
    /// The sizes of a design.
    pub fn of(design: &crate::design::Design, levels: &super::PlanLevels) -> Self {
        let trade = &design.trade;
        let t = trade.track.thickness.mm();
        Self {
            panel: trade.track.depth.mm(),
            stud_flange: trade.stud.flange.mm(),
            track_flange: trade.track.flange.mm(),
            track_thickness: t,
            fold: trade.track.radius.mm() + t,
            tab: trade.tab.mm(),
            spacing: trade.stud_spacing.mm(),
            frame_bottom: levels.frame_bottom,
            frame_top: levels.frame_top,
        }
    }

    /// The least height of a strip between two openings or an opening and a track: two flanges, and the tip of a
    /// screwdriver.
    pub fn least_strip(&self) -> f64 {
        2.0 * self.track_flange + 1.0
    }
}
