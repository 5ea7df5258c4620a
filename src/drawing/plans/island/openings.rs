//! Openings in plan: how doors swing and how far drawers pull out.

use crate::design::{Hinge, Opening, OpeningKind};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::plans::style::{FINE, HIDDEN, OPEN, sharp};
use crate::geometry::{Bounds2, Point2, Vertex};
use crate::plan::{Face, FaceOpening, Layers, Plan};

/// An opening with its face.
pub(super) struct InPlan<'a> {
    pub face: &'a Face,
    pub hole: &'a FaceOpening,
    /// What the file says of it; `None` for the open front of an appliance.
    pub opening: Option<&'a Opening>,
}

/// What an opening needs in front of its face when it is open.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Moves {
    /// A leaf: from its hinge to its edge along the face.
    Leaf { hinge: f64, edge: f64 },
    /// A drawer or a flap: so far out over its whole width.
    Out(f64),
}

/// All openings of faces that are not walls.
pub(super) fn all(plan: &Plan) -> Vec<InPlan<'_>> {
    let faces = plan.faces.iter().filter(|f| !f.wall);
    let with_face = |face| {
        let holes: &'_ [FaceOpening] = &(face as &Face).openings;
        holes.iter().map(move |hole| InPlan {
            face,
            hole,
            opening: hole.kind.and_then(|_| plan.design.openings.get(hole.index)),
        })
    };
    faces.flat_map(with_face).collect()
}

impl InPlan<'_> {
    fn moves(&self) -> Vec<Moves> {
        let Some(opening) = self.opening else {
            return Vec::new();
        };
        let (s0, s1) = (self.hole.s0, self.hole.s1);
        let middle = f64::midpoint(s0, s1);
        let leaf = |hinge, edge| Moves::Leaf { hinge, edge };
        match (opening.kind, opening.hardware.hinge.value) {
            (OpeningKind::Vent | OpeningKind::Receptacle, _) => Vec::new(),
            (OpeningKind::Drawer, _) => vec![Moves::Out(opening.hardware.travel.mm())],
            (_, Hinge::Left) => vec![leaf(s0, s1)],
            (_, Hinge::Right) => vec![leaf(s1, s0)],
            (_, Hinge::Pair) => vec![leaf(s0, middle), leaf(s1, middle)],
            (_, Hinge::Bottom | Hinge::Top) => vec![Moves::Out(self.hole.z1 - self.hole.z0)],
            (_, Hinge::None) => Vec::new(),
        }
    }

    /// How far in front of the finished face it reaches when it is open.
    fn reach(&self) -> f64 {
        let reaches = self.moves().into_iter().map(|m| match m {
            Moves::Leaf { hinge, edge } => (edge - hinge).abs(),
            Moves::Out(reach) => reach,
        });
        reaches.fold(0.0, f64::max)
    }

    /// The ground it needs in front of the finished face, in the world.
    pub fn ground(&self, plan: &Plan) -> Bounds2 {
        let front = front(plan);
        self.between(front, front + self.reach())
    }

    /// The opening itself through frame and cladding, in the world.
    pub fn through(&self, plan: &Plan) -> Bounds2 {
        self.between(front(plan), 0.0)
    }

    fn between(&self, out: f64, other: f64) -> Bounds2 {
        let a = self.face.point(self.hole.s0, out);
        let b = self.face.point(self.hole.s1, other);
        Bounds2 {
            low: a.inf(&b),
            high: a.sup(&b),
        }
    }

    /// Draws the jambs through the cladding and what opens.
    pub fn draw(&self, page: &mut Page, plan: &Plan, fit: &Fit) {
        let front = front(plan);
        let at = |s: f64, out: f64| fit.point(self.face.point(s, out));
        let (s0, s1) = (self.hole.s0, self.hole.s1);
        for s in [s0, s1] {
            HIDDEN.line(page, at(s, 0.0), at(s, front));
        }
        for moves in self.moves() {
            match moves {
                Moves::Leaf { hinge, edge } => {
                    let width = (edge - hinge).abs();
                    let corners = [at(hinge, front), at(hinge, front + width), at(edge, front)];
                    draw_leaf(page, corners);
                }
                Moves::Out(reach) if reach > 0.0 => {
                    let corners = [
                        at(s0, front),
                        at(s0, front + reach),
                        at(s1, front + reach),
                        at(s1, front),
                    ];
                    OPEN.open(page, sharp(&corners));
                }
                Moves::Out(_) => {}
            }
        }
    }
}

/// From the frame to the finished face.
fn front(plan: &Plan) -> f64 {
    Layers::of(&plan.design.trade).finish.outer
}

/// A leaf that stands open, and the quarter circle its edge swings along.
fn draw_leaf(page: &mut Page, [hinge, open, shut]: [Point2; 3]) {
    OPEN.line(page, hinge, open);
    let turns_left = (open - hinge).perp(&(shut - hinge)) > 0.0;
    let quarter = (std::f64::consts::PI / 8.0).tan();
    let bulge = if turns_left { quarter } else { -quarter };
    let arc = vec![
        Vertex::bent(open.x, open.y, bulge),
        Vertex::sharp(shut.x, shut.y),
    ];
    FINE.open(page, arc);
}
