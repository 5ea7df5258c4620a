//! What one section shows, before it is drawn.

use super::{Cut, across};
use crate::design::{Side, Surface};
use crate::drawing::hatch::Material;
use crate::drawing::hidden::View;
use crate::geometry::{Bounds2, Outline, Point2};
use crate::plan::{Body, BodyOf, CounterCutout, Cutout, Layers, Plan, RunPlan, SideKind};

/// How far one looks beyond the plane, millimetres: the next studs and ties, no more.
pub(super) const DEPTH: f64 = 500.0;
/// How much of the ground shows below what lies on it.
const EARTH: f64 = 75.0;
/// How much of it shows beside the counter.
const BESIDE: f64 = 45.0;
/// Room over the counter, for flanges.
const ABOVE: f64 = 12.0;

/// A cut with what is known of it from the plan. In its view x is −v: the working side is on the right.
#[derive(Clone, Debug)]
pub(super) struct Subject<'a> {
    pub plan: &'a Plan,
    pub cut: Cut,
    pub run: &'a RunPlan,
}

impl<'a> Subject<'a> {
    pub fn all(plan: &'a Plan) -> Vec<Self> {
        let cuts = super::cuts(plan).into_iter();
        cuts.filter_map(|cut| {
            Some(Self {
                plan,
                run: plan.runs.get(cut.run)?,
                cut,
            })
        })
        .collect()
    }

    pub fn view(&self) -> View {
        across(self.run, self.cut.u)
    }

    /// What is drawn, in the view.
    pub fn window(&self) -> Bounds2 {
        let (near, far) = self.plan.counter_across(self.cut.run);
        Bounds2 {
            low: Point2::new(-far - BESIDE, -self.paved() - EARTH),
            high: Point2::new(-near + BESIDE, self.plan.levels.counter_top + ABOVE),
        }
    }

    /// How thick what lies on the ground is; 0 where the file names nothing with a thickness.
    fn paved(&self) -> f64 {
        match self.plan.design.site.surface.as_ref().map(|s| &s.value) {
            Some(Surface::Slab { thickness } | Surface::Pavers { thickness, .. }) => {
                thickness.mm().max(0.0)
            }
            Some(Surface::Bare | Surface::Deck) | None => 0.0,
        }
    }

    /// The ground at its highest point, and what lies on it, from the top.
    pub fn ground(&self) -> Vec<(Material, Outline)> {
        let area = self.window();
        let paved = self.paved();
        let strip = |low: f64, high: f64| Outline::rectangle(area.low.x, low, area.high.x, high);
        let surface = self.plan.design.site.surface.as_ref().map(|s| &s.value);
        let mut found = Vec::new();
        match surface {
            Some(Surface::Slab { .. }) if paved > 1.0 => {
                found.push((Material::Concrete, strip(-paved, 0.0)));
            }
            Some(Surface::Pavers { size, .. }) if paved > 1.0 => {
                found.extend(pavers(&area, paved, size.mm()));
            }
            // What carries a deck is not known here.
            Some(Surface::Deck) => return found,
            _ => {}
        }
        found.push((Material::Earth, strip(area.low.y, -paved)));
        found
    }

    /// The cutout that the plane passes.
    pub fn cutout(&self) -> Option<(&'a Cutout, &'a CounterCutout)> {
        let passes = |c: &&Cutout| c.run == self.cut.run && self.cut.u > c.u0 && self.cut.u < c.u1;
        let cutout = self.plan.cutouts.iter().find(passes)?;
        let mut shaped = self.plan.counter.cutouts.iter();
        Some((cutout, shaped.find(|c| c.appliance == cutout.appliance)?))
    }

    /// The bodies that the plane passes, with their names.
    pub fn bodies(&self) -> Vec<(&'a str, &'a Body)> {
        let passes = |b: &&Body| b.run == self.cut.run && self.cut.u > b.u.0 && self.cut.u < b.u.1;
        let design = &self.plan.design;
        let named = self.plan.bodies.iter().filter(passes).filter_map(|body| {
            let name = match body.of {
                BodyOf::Appliance(i) => design.appliances.get(i).map(|a| a.name.as_str()),
                BodyOf::Opening(i) => design.openings.get(i).map(|o| o.name.as_str()),
            };
            Some((name?, body))
        });
        named.collect()
    }

    /// From the working face of the frame: the finished faces on both sides; a wall has none.
    pub fn finished(&self) -> [f64; 2] {
        let out = Layers::of(&self.plan.design.trade).finish.outer;
        let wall = |side: Side| {
            let mut own = self.plan.faces.iter().filter(|f| f.run == self.cut.run);
            own.any(|f| f.side == side && f.wall)
        };
        let at = |side| if wall(side) { 0.0 } else { out };
        [-at(Side::Working), self.run.depth + at(Side::Seating)]
    }

    /// From where to where the counter reaches here, away from the working face of the frame, and on which of its two
    /// edges it has a turndown.
    pub fn counter(&self) -> [(f64, bool); 2] {
        let (near, far) = self.plan.counter_across(self.cut.run);
        let dropped = |wanted: Side| {
            let mut sides = self.plan.counter.sides.iter();
            sides.any(|s| {
                let face = self.plan.faces.get(s.face);
                let own = face.is_some_and(|f| f.run == self.cut.run && f.side == wanted);
                own && s.dropped && !matches!(s.kind, SideKind::Notch(_))
            })
        };
        [
            (near, dropped(Side::Working)),
            (far, dropped(Side::Seating)),
        ]
    }

    /// From where to where the slab is cut, `cover` off its ends, the widest piece first.
    pub fn slab(&self, cover: f64) -> Vec<(f64, f64)> {
        let [(near, _), (far, _)] = self.counter();
        let mut spans = vec![(-far + cover, -near - cover)];
        if let Some((hole, _)) = self.cutout() {
            spans = vec![
                (-far + cover, -hole.v1 - cover),
                (-hole.v0 + cover, -near - cover),
            ];
        }
        spans.retain(|(low, high)| high - low > 20.0);
        spans.sort_by(|a, b| (b.1 - b.0).total_cmp(&(a.1 - a.0)));
        spans
    }

    /// Where the mesh lies: its height, and from where to where; `None` where the file gives no cover.
    pub fn mesh(&self) -> Option<(f64, Vec<(f64, f64)>)> {
        let steel = &self.plan.design.counter.casting.reinforcement;
        let (mesh, cover) = (steel.mesh.as_ref()?.mm(), steel.cover.as_ref()?.mm());
        let spans = self.slab(cover);
        Some((self.plan.levels.counter_top - cover - mesh / 2.0, spans))
    }
}

/// Pavers side by side over the whole width, one joint in the middle.
fn pavers(area: &Bounds2, thick: f64, size: f64) -> Vec<(Material, Outline)> {
    const JOINT: f64 = 8.0;
    let size = size.max(area.width() / 60.0);
    let middle = area.centre().x;
    let first = ((area.low.x - middle) / size).floor() as i64;
    let last = ((area.high.x - middle) / size).ceil() as i64;
    let stones = (first..last).map(|i| {
        let left = middle + i as f64 * size;
        let (low, high) = (left.max(area.low.x), (left + size - JOINT).min(area.high.x));
        (low, high)
    });
    let stones = stones.filter(|(low, high)| high - low > JOINT);
    stones
        .map(|(low, high)| (Material::Pavers, Outline::rectangle(low, -thick, high, 0.0)))
        .collect()
}
