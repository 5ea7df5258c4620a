//! The assembly made ready for drawing, and what a view of some of its parts shows.

use super::hidden::{self, Line, Placed, Shape, View};
use crate::geometry::{Bounds2, Bounds3, Placement, Point3};
use crate::parts::{Assembly, Part};

/// How far chords may stray from curves on drawings, millimetres built: fine enough that a bend of sheet steel is two
/// chords, and less than a pen's width at every scale.
const TOLERANCE: f64 = 0.25;

/// All parts with the edges of their shapes: made once for all sheets.
#[derive(Clone, Debug)]
pub struct Scene<'a> {
    assembly: &'a Assembly,
    shapes: Vec<Shape>,
    bounds: Vec<Bounds3>,
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
            bounds: solids.iter().map(crate::geometry::Solid::bounds).collect(),
        }
    }

    /// The parts, in their order.
    pub fn parts(&self) -> &'a [Part] {
        &self.assembly.parts
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
        let numbers: Vec<usize> = (0..self.parts().len())
            .filter(|&i| pick(&self.parts()[i]))
            .collect();
        let parts = numbers.iter().filter_map(|&i| {
            let part = &self.parts()[i];
            Some(Placed {
                shape: self.shapes.get(part.solid.0)?,
                motion: view.of_part(&part.placement),
            })
        });
        let screened = screens.iter().map(|shape| Placed {
            shape,
            motion: Placement::identity(),
        });
        let placed: Vec<Placed> = parts.chain(screened).collect();
        let wanted = |of: usize| {
            let part = numbers.get(of).and_then(|&i| self.parts().get(i));
            part.is_some_and(&behind)
        };
        let mut lines = hidden::with_hidden(&placed, wanted);
        let count = self.parts().len();
        for line in &mut lines {
            let past = line.of.saturating_sub(numbers.len());
            line.of = numbers.get(line.of).copied().unwrap_or(count + past);
        }
        Sight { lines }
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
