//! Openings in plan: how doors swing and how far drawers pull out.

use crate::design::OpeningKind;
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vertex};
use crate::plan::{Face, FaceOpening, Layers, Plan};

/// A door wider than this has two leaves, common practice: 20 inches, millimetres.
const TWO_LEAVES: f64 = 508.0;

/// An opening with its face.
pub(super) struct InPlan<'a> {
    pub face: &'a Face,
    pub opening: &'a FaceOpening,
}

/// All openings of faces that are not walls.
pub(super) fn all(plan: &Plan) -> Vec<InPlan<'_>> {
    let faces = plan.faces.iter().filter(|f| !f.wall);
    faces
        .flat_map(|face| {
            face.openings
                .iter()
                .map(move |opening| InPlan { face, opening })
        })
        .collect()
}

impl InPlan<'_> {
    /// How far in front of the finished face it reaches when it is open.
    fn reach(&self, plan: &Plan) -> f64 {
        let width = self.opening.s1 - self.opening.s0;
        match self.opening.kind {
            Some(OpeningKind::Door | OpeningKind::Hatch | OpeningKind::Undercounter) => {
                width / f64::from(self.leaves())
            }
            Some(OpeningKind::Drawer) => plan
                .design
                .openings
                .get(self.opening.index)
                .map_or(0.0, |o| o.body_depth.mm()),
            Some(OpeningKind::Vent | OpeningKind::Receptacle) | None => 0.0,
        }
    }

    fn leaves(&self) -> u8 {
        let wide = self.opening.s1 - self.opening.s0 > TWO_LEAVES;
        if wide && self.opening.kind == Some(OpeningKind::Door) {
            2
        } else {
            1
        }
    }

    /// The ground it needs in front of the finished face, in the world.
    pub fn ground(&self, plan: &Plan) -> Bounds2 {
        let front = Layers::of(&plan.design.trade).finish.outer;
        let a = self.face.point(self.opening.s0, front);
        let b = self.face.point(self.opening.s1, front + self.reach(plan));
        Bounds2 {
            low: a.inf(&b),
            high: a.sup(&b),
        }
    }

    /// The opening itself through frame and cladding, in the world.
    pub fn hole(&self, plan: &Plan) -> Bounds2 {
        let front = Layers::of(&plan.design.trade).finish.outer;
        let a = self.face.point(self.opening.s0, front);
        let b = self.face.point(self.opening.s1, 0.0);
        Bounds2 {
            low: a.inf(&b),
            high: a.sup(&b),
        }
    }

    /// Draws the jambs through the cladding and what opens.
    pub fn draw(&self, page: &mut Page, plan: &Plan, fit: &Fit) {
        let front = Layers::of(&plan.design.trade).finish.outer;
        let at = |s: f64, out: f64| fit.point(self.face.point(s, out));
        let (s0, s1) = (self.opening.s0, self.opening.s1);
        for s in [s0, s1] {
            page.line(
                Layer::Outline,
                Pen::Medium,
                Dash::Solid,
                at(s, 0.0),
                at(s, front),
            );
        }
        let reach = self.reach(plan);
        if reach <= 0.0 {
            return;
        }
        if self.opening.kind == Some(OpeningKind::Drawer) {
            let corners = [
                (s0, front),
                (s0, front + reach),
                (s1, front + reach),
                (s1, front),
            ];
            let points = corners.map(|(s, out)| at(s, out));
            let points = points.iter().map(|p| Vertex::sharp(p.x, p.y)).collect();
            page.path(
                Layer::Detail,
                Some(Pen::Fine),
                Dash::Phantom,
                points,
                false,
                None,
            );
            return;
        }
        let middle = f64::midpoint(s0, s1);
        let leaves: &[(f64, f64)] = if self.leaves() == 2 {
            &[(s0, middle), (s1, middle)]
        } else {
            &[(s0, s1)]
        };
        for (hinge, edge) in leaves {
            draw_leaf(
                page,
                [
                    at(*hinge, front),
                    at(*hinge, front + reach),
                    at(*edge, front),
                ],
            );
        }
    }
}

/// A leaf that stands open, and the quarter circle its edge swings along.
fn draw_leaf(page: &mut Page, [hinge, open, shut]: [Point2; 3]) {
    page.line(Layer::Detail, Pen::Thin, Dash::Solid, hinge, open);
    let turns_left = (open - hinge).perp(&(shut - hinge)) > 0.0;
    let quarter = (std::f64::consts::PI / 8.0).tan();
    let bulge = if turns_left { quarter } else { -quarter };
    let points = vec![
        Vertex::bent(open.x, open.y, bulge),
        Vertex::sharp(shut.x, shut.y),
    ];
    page.path(
        Layer::Detail,
        Some(Pen::Fine),
        Dash::Solid,
        points,
        false,
        None,
    );
}
