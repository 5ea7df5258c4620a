//! A cut drawn: any plane, the whole of it or a window.
//!
//! ```text
//! let view = section::across(run, u);                       // or any View::onto(..)
//! let cut = CutView::new(scene, &view, &Reach { depth: 500.0, window: Some(bounds) }, |part| ..);
//! let fit = Fit::at(scale, &bounds, &place.view);
//! cut.draw(&mut page, &fit);                                // hatches, what lies beyond, bold cut edges
//! ```

use super::window::on_border;
use crate::drawing::fit::Fit;
use crate::drawing::hatch::{self, Material, Patch};
use crate::drawing::hidden::{Line, Shape, Stroke, View};
use crate::drawing::page::Page;
use crate::drawing::scene::Scene;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Bounds3, Faceted, Outline, Placement, Region, Vector3};
use crate::parts::Part;

/// How far chords may stray from the curves of what is cut, millimetres built.
const TOLERANCE: f64 = 0.05;

/// How much is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// How far beyond the plane one looks, millimetres: what begins farther away is left out.
    pub depth: f64,
    /// The window, in view coordinates; `None` for all there is.
    pub window: Option<Bounds2>,
}

/// What the plane goes through.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Number of the part in the assembly; `None` for what is no part, such as the ground.
    pub part: Option<usize>,
    /// What it is made of; `None` for the envelope of an appliance, which is not hatched.
    pub material: Option<Material>,
    /// Where it is cut, in view coordinates.
    pub regions: Vec<Region>,
}

/// What a plane through some parts shows: the cut itself and what lies beyond.
///
/// Invariant: nothing reaches past the window; pieces come in the order of the parts.
#[derive(Clone, Debug, Default)]
pub struct CutView {
    /// What is cut.
    pub pieces: Vec<Piece>,
    /// Visible edges of what lies beyond; `of` is the number of the part.
    pub beyond: Vec<Line>,
    window: Option<Bounds2>,
}

/// Parts that a view shows, sorted by how the plane stands to them.
#[derive(Default)]
struct Bodies {
    /// True for each part that lies beyond the plane, whole.
    whole: Vec<bool>,
    /// The kept halves of what is cut, in the view.
    halves: Vec<Shape>,
    /// The number of the part of each.
    numbers: Vec<usize>,
}

impl CutView {
    /// Cuts the parts that are picked; the plane is z = 0 of the view, the eye on the side of positive z.
    pub fn new(scene: &Scene, view: &View, reach: &Reach, pick: impl Fn(&Part) -> bool) -> Self {
        let mut bodies = Bodies::default();
        let mut pieces = Vec::new();
        for (number, part) in scene.parts().iter().enumerate() {
            let material = Material::of(part);
            let place = scene.bounds(view, part).filter(|_| pick(part));
            let place = place.map_or(Place::Out, |b| Place::of(&b, reach));
            // The envelopes of appliances farther away would only hide what stands there.
            bodies
                .whole
                .push(place == Place::Beyond && material.is_some());
            if let (Place::Cut, Some(solid)) = (place, scene.solid(part)) {
                let motion = view.of_part(&part.placement);
                let cut = solid.faceted(TOLERANCE).moved(&motion).cut_at(0.0);
                let near = nearer_than(cut.kept, reach.depth);
                bodies.halves.push(Shape::new(&near));
                bodies.numbers.push(number);
                pieces.push(Piece {
                    part: Some(number),
                    material,
                    regions: cut.region,
                });
            }
        }
        let mut cut = Self {
            pieces,
            beyond: bodies.visible(scene, view),
            window: reach.window,
        };
        cut.clip();
        cut
    }

    /// Adds something that is cut and is no part, such as the ground.
    pub fn add(&mut self, material: Material, outline: Outline) {
        let whole = Region::solid(outline);
        let regions = match &self.window {
            Some(window) => whole.inside(&[rectangle(window)]),
            None => vec![whole],
        };
        self.pieces.push(Piece {
            part: None,
            material: Some(material),
            regions,
        });
    }

    fn clip(&mut self) {
        let Some(window) = self.window else { return };
        let frame = [rectangle(&window)];
        for piece in &mut self.pieces {
            let inside = piece.regions.iter().flat_map(|r| r.inside(&frame));
            piece.regions = inside.collect();
        }
        self.pieces.retain(|p| !p.regions.is_empty());
        let lines = std::mem::take(&mut self.beyond);
        self.beyond = lines
            .into_iter()
            .filter_map(|l| l.inside(&window))
            .collect();
    }

    /// Draws it: hatches, edges beyond, cut edges bold, envelopes as neighbouring parts. Draw chains and notes after it.
    pub fn draw(&self, page: &mut Page, fit: &Fit) {
        let patches: Vec<Patch> = self.pieces.iter().filter_map(|p| patch(p, fit)).collect();
        hatch::draw(page, &patches);
        let mut strokes: Vec<Stroke> = (self.beyond.iter())
            .map(|l| Stroke {
                from: l.from,
                to: l.to,
                weight: 0,
            })
            .collect();
        for piece in self.pieces.iter().filter(|p| p.material.is_some()) {
            strokes.extend(self.edges(piece, fit));
        }
        fit.draw(page, &strokes, &PENS);
        for piece in self.pieces.iter().filter(|p| p.material.is_none()) {
            for region in &piece.regions {
                let points = fit.outline(&region.outer);
                page.path(
                    Layer::Detail,
                    Some(Pen::Thin),
                    Dash::Phantom,
                    points,
                    true,
                    None,
                );
            }
        }
    }

    /// The edges of a piece, as bold as it is thick on paper; none along the window's border, and none for sheet steel
    /// that is filled.
    fn edges(&self, piece: &Piece, fit: &Fit) -> Vec<Stroke> {
        let mut strokes = Vec::new();
        for region in &piece.regions {
            let thick = hatch::thickness(region) * fit.scale.factor;
            let Some(weight) = weight(piece.material, thick) else {
                continue;
            };
            let outlines = std::iter::once(&region.outer).chain(&region.holes);
            let sides = outlines.flat_map(Outline::segments);
            let drawn = sides.filter(|s| !self.window.is_some_and(|w| on_border(s, &w)));
            strokes.extend(drawn.map(|s| Stroke {
                from: s.from,
                to: s.to,
                weight,
            }));
        }
        strokes
    }
}

/// By weight: what lies beyond, then cut edges from thin layers to thick bodies.
const PENS: [(Layer, Pen); 5] = [
    (Layer::Outline, Pen::Thin),
    (Layer::Section, Pen::Fine),
    (Layer::Section, Pen::Thin),
    (Layer::Section, Pen::Medium),
    (Layer::Section, Pen::Thick),
];

/// How bold the edges of a piece are that is so thick on paper: two of them leave at least as much between them as they
/// take themselves.
fn weight(material: Option<Material>, thick: f64) -> Option<u8> {
    if material == Some(Material::Steel) && thick < 0.7 {
        return None;
    }
    match material {
        Some(Material::Earth) => return Some(1),
        Some(Material::Pavers) => return Some(2),
        _ => {}
    }
    Some(match thick {
        t if t < 0.6 => 1,
        t if t < 1.2 => 2,
        t if t < 2.5 => 3,
        _ => 4,
    })
}

fn patch(piece: &Piece, fit: &Fit) -> Option<Patch> {
    let on_sheet = |o: &Outline| Outline::new(fit.outline(o));
    let regions = piece.regions.iter().map(|r| Region {
        outer: on_sheet(&r.outer),
        holes: r.holes.iter().map(on_sheet).collect(),
    });
    Some(Patch {
        material: piece.material?,
        regions: regions.collect(),
    })
}

fn rectangle(b: &Bounds2) -> Outline {
    Outline::rectangle(b.low.x, b.low.y, b.high.x, b.high.y)
}

/// What of a half is no farther beyond the plane than `depth`: a counter goes on round the corner.
fn nearer_than(half: Faceted, depth: f64) -> Faceted {
    if half.points.iter().all(|p| p.z > -depth) {
        return half;
    }
    let turned = Placement::rotation(Vector3::x() * std::f64::consts::PI);
    let near = half.moved(&turned).cut_at(depth).kept;
    near.moved(&turned.inverse())
}

/// How a part stands to the plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Place {
    /// Before the plane, too far beyond it, or beside the window.
    Out,
    /// In the plane.
    Cut,
    /// Beyond it.
    Beyond,
}

impl Place {
    fn of(bounds: &Bounds3, reach: &Reach) -> Self {
        let flat = Bounds2 {
            low: bounds.low.xy(),
            high: bounds.high.xy(),
        };
        let beside = reach.window.is_some_and(|w| !w.overlaps(&flat, 0.0));
        if beside || bounds.low.z > -1e-3 || bounds.high.z < -reach.depth {
            Self::Out
        } else if bounds.high.z < -1e-3 {
            Self::Beyond
        } else {
            Self::Cut
        }
    }
}

impl Bodies {
    /// The visible edges of what is made of something; `of` is the number of the part.
    fn visible(&self, scene: &Scene, view: &View) -> Vec<Line> {
        let mut whole = self.whole.iter();
        let sight = scene.look(view, &self.halves, |_| {
            whole.next().copied().unwrap_or(false)
        });
        let count = scene.parts().len();
        let mut lines = sight.lines;
        for line in &mut lines {
            if let Some(half) = line.of.checked_sub(count) {
                line.of = self.numbers.get(half).copied().unwrap_or(line.of);
            }
        }
        let is_made = |line: &Line| {
            let part = scene.parts().get(line.of);
            part.is_some_and(|p| Material::of(p).is_some())
        };
        lines.retain(is_made);
        lines
    }
}
