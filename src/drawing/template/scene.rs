//! What the template shows, at full size in the plane of the counter, seen from above.

use super::trace::{Trace, apart};
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2};
use std::f64::consts::FRAC_PI_2;

/// What a line of the template is, in the order drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Kind {
    /// The outermost edge of the slab.
    Slab,
    /// The inner line of the turndown.
    Turndown,
    /// The edge of an appliance's flange on the counter.
    Flange,
    /// A centre line of a cutout.
    Centre,
    /// A dimension line.
    Dimension,
    /// The edge of a cutout.
    Cut,
}

impl Kind {
    pub(super) fn layer(self) -> Layer {
        match self {
            Self::Slab => Layer::Outline,
            Self::Turndown => Layer::Hidden,
            Self::Flange => Layer::Detail,
            Self::Centre => Layer::Centre,
            Self::Dimension => Layer::Dimension,
            Self::Cut => Layer::Cut,
        }
    }

    pub(super) fn pen(self) -> Pen {
        match self {
            Self::Slab => Pen::Thick,
            Self::Turndown => Pen::Medium,
            Self::Flange | Self::Centre => Pen::Thin,
            Self::Dimension => Pen::Fine,
            Self::Cut => Pen::Heavy,
        }
    }

    pub(super) fn dash(self) -> Dash {
        match self {
            Self::Slab | Self::Dimension | Self::Cut => Dash::Solid,
            Self::Turndown => Dash::Dashed,
            Self::Flange => Dash::Phantom,
            Self::Centre => Dash::Centre,
        }
    }

    /// True for lines whose presence makes a page needed.
    pub(super) fn is_needed(self) -> bool {
        self != Self::Dimension
    }
}

/// One line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Line {
    pub(super) kind: Kind,
    pub(super) trace: Trace,
    /// What is written along it: its name, or a dimension.
    pub(super) label: String,
    /// Whether it begins and ends with an arrow.
    pub(super) arrows: (bool, bool),
    /// The box round it.
    bounds: Option<Bounds2>,
}

impl Line {
    fn new(kind: Kind, trace: Trace, label: String, arrows: (bool, bool)) -> Self {
        let bounds = trace.bounds();
        Self {
            kind,
            trace,
            label,
            arrows,
            bounds,
        }
    }

    /// What of it lies in a window.
    pub(super) fn inside(&self, window: &Bounds2) -> Vec<Trace> {
        let near = self.bounds.is_some_and(|b| !apart(&b, window));
        if near {
            self.trace.inside(window)
        } else {
            Vec::new()
        }
    }
}

/// A marked point: the centre of a corner's radius.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Spot {
    pub(super) at: Point2,
    pub(super) label: String,
}

/// Everything to be shown.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Scene {
    pub(super) lines: Vec<Line>,
    pub(super) spots: Vec<Spot>,
}

impl Scene {
    pub(super) fn add(&mut self, kind: Kind, trace: Trace, label: String) {
        self.lines
            .push(Line::new(kind, trace, label, (false, false)));
    }

    /// A dimension line from one point to another.
    pub(super) fn measure(
        &mut self,
        from: Point2,
        to: Point2,
        label: String,
        arrows: (bool, bool),
    ) {
        let trace = Trace::straight(from, to);
        self.lines
            .push(Line::new(Kind::Dimension, trace, label, arrows));
    }

    /// The box round the lines that need pages.
    pub(super) fn bounds(&self) -> Option<Bounds2> {
        let lines = self.lines.iter().filter(|l| l.kind.is_needed());
        lines
            .filter_map(|l| l.trace.bounds())
            .reduce(Bounds2::union)
    }

    /// The same turned a quarter to the left about the origin: x runs up the page, y to the left.
    pub(super) fn turned(&self) -> Self {
        let motion = nalgebra::Isometry2::new(nalgebra::Vector2::zeros(), FRAC_PI_2);
        let lines = self.lines.iter();
        let spots = self.spots.iter();
        Self {
            lines: lines
                .map(|l| Line::new(l.kind, l.trace.moved(&motion), l.label.clone(), l.arrows))
                .collect(),
            spots: spots
                .map(|s| Spot {
                    at: motion * s.at,
                    label: s.label.clone(),
                })
                .collect(),
        }
    }
}
