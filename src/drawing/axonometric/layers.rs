//! The layers of an island in building order, and how far each is moved when it is taken apart.

use super::corner;
use crate::drawing::hidden::Corner;
use crate::geometry::Vector3;
use crate::parts::{Group, Part, PartKind};
use crate::plan::{BodyOf, Plan};

/// One layer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum LayerOf {
    /// Sleepers and steel.
    Frame,
    /// Base channels and boards.
    Boards,
    /// Base coat, finish coat, tiles.
    Coats,
    /// What the counter is cast on.
    Substrate,
    /// The counter.
    Slab,
    /// What hangs in the counter.
    Appliances,
    /// What fills the openings of the faces.
    Fronts,
}

impl LayerOf {
    /// All layers in building order.
    pub const ALL: [Self; 7] = [
        Self::Frame,
        Self::Boards,
        Self::Coats,
        Self::Substrate,
        Self::Slab,
        Self::Appliances,
        Self::Fronts,
    ];

    /// The layer that a part belongs to; `None` for what is gone when the island is done, and for bodies that stand
    /// behind a front.
    pub fn of(part: &Part) -> Option<Self> {
        match (part.group, part.kind) {
            (Group::Forms, _) => None,
            (Group::Framing, _) => Some(Self::Frame),
            (Group::Boards, _) => Some(Self::Boards),
            (Group::Coats, _) => Some(Self::Coats),
            (Group::Counter, PartKind::Substrate) => Some(Self::Substrate),
            (Group::Counter, _) => Some(Self::Slab),
            (Group::Appliances, PartKind::Body) if part.face.is_some() => None,
            (Group::Appliances, _) if part.face.is_some() => Some(Self::Fronts),
            (Group::Appliances, _) => Some(Self::Appliances),
        }
    }

    /// What it is called on the sheet.
    pub fn name(self) -> &'static str {
        match self {
            Self::Frame => "sleepers and steel frame",
            Self::Boards => "base channels and cement board",
            Self::Coats => "base coat, finish coat and tile",
            Self::Substrate => "substrate",
            Self::Slab => "concrete counter, cast on edge forms",
            Self::Appliances => "appliances",
            Self::Fronts => "doors, drawers, vents and boxes",
        }
    }
}

/// How far layers are moved, millimetres: those of the faces level towards the eye, those of the counter up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Moves {
    corner: Corner,
    /// Towards the eye for each step outwards.
    outwards: Vector3,
    substrate: f64,
    slab: f64,
    appliances: f64,
}

/// The tangent of the angle at which an isometric view looks down.
const DOWN: f64 = std::f64::consts::FRAC_1_SQRT_2;

impl Moves {
    /// For a plan seen from a corner.
    pub fn new(plan: &Plan, corner: Corner) -> Self {
        let high = plan.levels.frame_top - plan.levels.frame_bottom;
        // One step brings a face's cladding just below the frame on the sheet.
        let step = high / DOWN;
        let towards = corner::towards(corner).normalize() * step;
        let deepest = (plan.bodies.iter())
            .filter(|b| matches!(b.of, BodyOf::Appliance(_)))
            .map(|b| plan.levels.counter_top - b.z.0)
            .fold(0.0, f64::max);
        let (substrate, slab) = (0.55 * high, 0.95 * high);
        Self {
            corner,
            outwards: Vector3::new(towards.x, towards.y, 0.0),
            substrate,
            slab,
            appliances: slab + deepest + 0.2 * high,
        }
    }

    /// How far a layer is moved.
    pub fn of(&self, layer: LayerOf) -> Vector3 {
        let up = |by: f64| Vector3::z() * by;
        match layer {
            LayerOf::Frame => Vector3::zeros(),
            LayerOf::Boards => self.outwards,
            LayerOf::Coats => self.outwards * 2.0,
            LayerOf::Fronts => self.outwards * 2.6,
            LayerOf::Substrate => up(self.substrate),
            LayerOf::Slab => up(self.slab),
            LayerOf::Appliances => up(self.appliances),
        }
    }

    /// How far a part is moved; `None` for one that is not shown: faces that are turned away keep nothing on them.
    pub fn of_part(&self, plan: &Plan, part: &Part) -> Option<Vector3> {
        let layer = LayerOf::of(part)?;
        let on_a_face = matches!(layer, LayerOf::Boards | LayerOf::Coats | LayerOf::Fronts);
        let faces = &plan.faces;
        let turned = part.face.and_then(|f| faces.get(f));
        let shows = turned.is_none_or(|face| corner::shows(face, self.corner));
        (shows || !on_a_face).then(|| self.of(layer))
    }
}
