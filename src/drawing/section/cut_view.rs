//! A cut drawn: any plane, the whole of it or a window.
//!
//! ```text
//! let view = section::across(run, u);                       // or level_at(z), behind_face(face, depth), View::onto(..)
//! let cut = CutView::new(scene, &view, &Reach { depth: 500.0, window: Some(bounds) }, |part| ..);
//! let fit = Fit::at(scale, &bounds, &place.view);
//! cut.draw(&mut page, &fit);                                // hatches, what lies beyond, bold cut edges
//! ```

use super::window::on_border;
use crate::drawing::fit::Fit;
use crate::drawing::hatch::{self, Material, Patch};
use crate::drawing::hidden::{self, Line, Placed, Shape, Stroke, View};
use crate::drawing::page::Page;
use crate::drawing::scene::Scene;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Outline, Placement, Region};
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

/// Parts that a view shows, ready for the removal of hidden lines.
#[derive(Default)]
struct Bodies<'a> {
    /// Beyond the plane, whole.
    whole: Vec<(usize, &'a Shape, Placement)>,
    /// The kept halves of what is cut.
    halves: Vec<(usize, Shape)>,
    /// Numbers of envelopes, whose edges are not drawn.
    envelopes: Vec<usize>,
}

impl CutView {
    /// Cuts the parts that are picked; the plane is z = 0 of the view, the eye on the side of positive z.
    pub fn new(scene: &Scene, view: &View, reach: &Reach, pick: impl Fn(&Part) -> bool) -> Self {
        let mut bodies = Bodies::default();
        let mut pieces = Vec::new();
        let picked = scene.parts().iter().enumerate().filter(|(_, p)| pick(p));
        for (number, part) in picked {
            let Some(bounds) = scene.bounds(view, part) else {
                continue;
            };
            let flat = Bounds2 {
                low: bounds.low.xy(),
                high: bounds.high.xy(),
            };
            let outside = reach.window.is_some_and(|w| !w.overlaps(&flat, 0.0));
            if outside || bounds.low.z > -1e-3 || bounds.high.z < -reach.depth {
                continue;
            }
            let motion = view.of_part(&part.placement);
            let material = Material::of(part);
            if bounds.high.z < 0.0 {
                bodies
                    .whole
                    .extend(scene.shape(part).map(|s| (number, s, motion)));
            } else if let Some(solid) = scene.solid(part) {
                let cut = solid.faceted(TOLERANCE).moved(&motion).cut_at(0.0);
                bodies.halves.push((number, Shape::new(&cut.kept)));
                pieces.push(Piece {
                    part: Some(number),
                    material,
                    regions: cut.region,
                });
            }
            if material.is_none() {
                bodies.envelopes.push(number);
            }
        }
        let mut cut = Self {
            pieces,
            beyond: bodies.visible(),
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

    /// The box round all that is shown; `None` when nothing is.
    pub fn bounds(&self) -> Option<Bounds2> {
        let cut = self.pieces.iter().flat_map(|p| &p.regions);
        let cut = cut.map(|r| r.outer.bounds()).reduce(Bounds2::union);
        let beyond = Bounds2::around(self.beyond.iter().flat_map(|l| [l.from, l.to]));
        [cut, beyond].into_iter().flatten().reduce(Bounds2::union)
    }

    /// The cut pieces of the parts that are picked.
    pub fn of<'a>(
        &'a self,
        scene: &'a Scene,
        pick: impl Fn(&Part) -> bool + 'a,
    ) -> impl Iterator<Item = &'a Piece> + 'a {
        self.pieces.iter().filter(move |piece| {
            let part = piece.part.and_then(|n| scene.parts().get(n));
            part.is_some_and(&pick)
        })
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
    if material == Some(Material::Earth) {
        return Some(1);
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

impl Bodies<'_> {
    /// The visible edges; `of` is the number of the part.
    fn visible(&self) -> Vec<Line> {
        let whole = self.whole.iter().map(|(number, shape, motion)| {
            let motion = *motion;
            (*number, Placed { shape, motion })
        });
        let halves = self.halves.iter().map(|(number, shape)| {
            let motion = Placement::identity();
            (*number, Placed { shape, motion })
        });
        let (numbers, placed): (Vec<usize>, Vec<Placed>) = whole.chain(halves).unzip();
        let mut lines = hidden::visible(&placed);
        for line in &mut lines {
            line.of = numbers.get(line.of).copied().unwrap_or(line.of);
        }
        lines.retain(|line| !self.envelopes.contains(&line.of));
        lines
    }
}
