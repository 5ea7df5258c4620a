//! The assembly made ready for drawing, and what a view of some of its parts shows.

use super::hidden::{self, Depths, Line, Placed, Shape, View};
use crate::geometry::{Bounds2, Bounds3, Placement, Point3, Solid, Vector3};
use crate::parts::{Assembly, Part};
use nalgebra::Translation3;
use std::sync::{Mutex, PoisonError};

/// How far chords may stray from curves on drawings, millimetres built: fine enough that a bend of sheet steel is two
/// chords, and less than a pen's width at every scale.
const TOLERANCE: f64 = 0.25;

/// All parts with the edges of their shapes: made once for all sheets.
#[derive(Debug)]
pub struct Scene<'a> {
    assembly: &'a Assembly,
    shapes: Vec<Shape>,
    bounds: Vec<Bounds3>,
    /// What was looked at, where somebody wants to know.
    record: Option<Mutex<Vec<Look>>>,
}

/// One view that a sheet was drawn from: what was looked at from where, and what was seen.
#[derive(Clone, Debug)]
pub struct Look {
    /// From where.
    pub view: View,
    /// Numbers of the parts looked at, each with how far it was moved for this view, millimetres in the world.
    pub parts: Vec<(usize, Vector3)>,
    /// Shapes in view coordinates that are no parts.
    pub screens: Vec<Shape>,
    /// What was seen.
    pub lines: Vec<Line>,
}

/// The lines of some parts, visible and, where asked for, hidden; a line's `of` is the number of its part in the
/// assembly.
#[derive(Clone, Debug, Default)]
pub struct Sight {
    /// In view coordinates, part by part.
    pub lines: Vec<Line>,
}

impl<'a> Scene<'a> {
    /// Facets every shape.
    pub fn new(assembly: &'a Assembly) -> Self {
        let solids = &assembly.solids;
        Self {
            assembly,
            shapes: solids
                .iter()
                .map(|s| Shape::new(&s.faceted(TOLERANCE)))
                .collect(),
            bounds: solids.iter().map(Solid::bounds).collect(),
            record: None,
        }
    }

    /// The same, and keeps what is looked at.
    pub fn recording(assembly: &'a Assembly) -> Self {
        Self {
            record: Some(Mutex::default()),
            ..Self::new(assembly)
        }
    }

    /// What was looked at since this was last asked, in that order.
    pub fn take_looks(&self) -> Vec<Look> {
        let looks = self.record.as_ref().map(|record| {
            let mut kept = record.lock().unwrap_or_else(PoisonError::into_inner);
            std::mem::take(&mut *kept)
        });
        looks.unwrap_or_default()
    }

    /// The parts, in their order.
    pub fn parts(&self) -> &'a [Part] {
        &self.assembly.parts
    }

    /// A part's shape, exactly described.
    pub fn solid(&self, part: &Part) -> Option<&'a Solid> {
        self.assembly.solids.get(part.solid.0)
    }

    /// The box round a part in view coordinates; exact for parts that stand square to the view.
    pub fn bounds(&self, view: &View, part: &Part) -> Option<Bounds3> {
        let own = self.bounds.get(part.solid.0)?;
        let motion = view.of_part(&part.placement);
        let corners = (0..8).map(|i| {
            let pick = |axis: usize| {
                if i >> axis & 1 == 1 {
                    own.high[axis]
                } else {
                    own.low[axis]
                }
            };
            motion * Point3::new(pick(0), pick(1), pick(2))
        });
        Bounds3::around(corners)
    }

    /// What a view shows of the parts that are picked, and of `screens`: shapes in view coordinates that are no parts.
    /// The lines of a screen are numbered on from those of the parts. `pick` is asked once for each part, in their order.
    pub fn look(&self, view: &View, screens: &[Shape], pick: impl FnMut(&Part) -> bool) -> Sight {
        self.look_through(view, screens, pick, |_| false)
    }

    /// What [`Scene::look`] gives, and the hidden pieces of the edges of those parts that `behind` takes.
    pub fn look_through(
        &self,
        view: &View,
        screens: &[Shape],
        mut pick: impl FnMut(&Part) -> bool,
        behind: impl Fn(&Part) -> bool,
    ) -> Sight {
        let still = |part: &Part| pick(part).then(Vector3::zeros);
        self.look_at_moved(view, screens, still, behind)
    }

    /// What [`Scene::look_through`] gives with every part moved: `place` says by how much, millimetres in the world, or
    /// `None` to leave it out.
    pub fn look_at_moved(
        &self,
        view: &View,
        screens: &[Shape],
        mut place: impl FnMut(&Part) -> Option<Vector3>,
        behind: impl Fn(&Part) -> bool,
    ) -> Sight {
        let parts = self.parts().iter().enumerate();
        let placed: Vec<(usize, Vector3)> =
            parts.filter_map(|(i, p)| Some((i, place(p)?))).collect();
        let bodies: Vec<Placed> = self.bodies(view, screens, &placed).collect();
        let wanted = |of: usize| {
            let part = placed.get(of).and_then(|&(i, _)| self.parts().get(i));
            part.is_some_and(&behind)
        };
        let mut lines = hidden::with_hidden(&bodies, wanted);
        let count = self.parts().len();
        for line in &mut lines {
            let past = line.of.saturating_sub(placed.len());
            line.of = placed.get(line.of).map_or(count + past, |p| p.0);
        }
        if let Some(record) = &self.record {
            let mut kept = record.lock().unwrap_or_else(PoisonError::into_inner);
            kept.push(Look {
                view: *view,
                parts: placed,
                screens: screens.to_vec(),
                lines: lines.clone(),
            });
        }
        Sight { lines }
    }

    /// How near the parts that `place` moves are at each point of a view.
    pub fn depths(&self, view: &View, place: impl Fn(&Part) -> Option<Vector3>) -> Depths {
        let parts = self.parts().iter().enumerate();
        let placed: Vec<(usize, Vector3)> =
            parts.filter_map(|(i, p)| Some((i, place(p)?))).collect();
        Depths::new(&self.bodies(view, &[], &placed).collect::<Vec<_>>())
    }

    /// Parts where they are moved to, then shapes that are no parts. Every part has a shape: see [`Assembly`].
    fn bodies<'s>(
        &'s self,
        view: &'s View,
        screens: &'s [Shape],
        placed: &'s [(usize, Vector3)],
    ) -> impl Iterator<Item = Placed<'s>> {
        let parts = placed.iter().filter_map(|&(i, shift)| {
            let part = &self.parts()[i];
            Some(Placed {
                shape: self.shapes.get(part.solid.0)?,
                motion: view.of_part(&(Translation3::from(shift) * part.placement)),
            })
        });
        let screened = screens.iter().map(|shape| Placed {
            shape,
            motion: Placement::identity(),
        });
        parts.chain(screened)
    }
}

impl Sight {
    /// The box round all that is seen.
    pub fn bounds(&self) -> Option<Bounds2> {
        Bounds2::around(self.seen().flat_map(|l| [l.from, l.to]))
    }

    /// The visible lines.
    pub fn seen(&self) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(|l| l.seen)
    }

    /// For every part of which something is seen, its number and the box round what is seen, in their order.
    pub fn seen_parts(&self) -> Vec<(usize, Bounds2)> {
        let pieces = self.lines.chunk_by(|a, b| a.of == b.of);
        pieces
            .filter_map(|lines| {
                let seen = lines.iter().filter(|l| l.seen);
                let bounds = Bounds2::around(seen.flat_map(|l| [l.from, l.to]))?;
                Some((lines.first()?.of, bounds))
            })
            .collect()
    }
}
