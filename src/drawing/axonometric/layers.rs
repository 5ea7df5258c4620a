//! The layers of an island in building order, and how far each is moved when it is taken apart.

use super::corner;
use crate::drawing::hidden::Corner;
use crate::geometry::{Point2, Vector2, Vector3};
use crate::parts::{Group, Part, PartKind};
use crate::plan::{BodyOf, Face, Layers, Plan, RunPlan};

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

    /// What it is called on the sheet; `tiled` where there is a tile band.
    pub fn name(self, tiled: bool) -> &'static str {
        match self {
            Self::Coats if tiled => "base coat, finish coat and tile band",
            Self::Frame => "sleepers and steel frame",
            Self::Boards => "base channels and cement board",
            Self::Coats => "base coat and finish coat",
            Self::Substrate => "substrate",
            Self::Slab => "concrete counter, cast on edge forms",
            Self::Appliances => "appliances",
            Self::Fronts => "doors, drawers, vents and boxes",
        }
    }
}

/// How far layers are moved, millimetres: those of the faces level towards the eye, those of the counter up.
///
/// Faces that are turned away keep nothing on them, nor do those whose cladding would pass through another run on its way.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Moves {
    /// For each face whether its cladding is shown.
    shown: Vec<bool>,
    /// Towards the eye for each step outwards.
    outwards: Vector3,
    substrate: f64,
    slab: f64,
    appliances: f64,
}

/// Fronts are moved so many times as far as boards.
const FRONTS: f64 = 2.6;

/// True when nothing stands where the cladding of a face is moved along.
fn is_free(plan: &Plan, face: &Face, way: Vector2) -> bool {
    let out = Layers::of(&plan.design.trade).finish.outer + 5.0;
    let steps = (way.norm() / STEP).ceil().clamp(1.0, 1000.0) as u32;
    let hits = |at: Point2| {
        let mut runs = plan.runs.iter().map(RunPlan::bounds);
        runs.any(|b| (at - b.low).min() > 1.0 && (b.high - at).min() > 1.0)
    };
    let places = (0..=16).map(|i| face.point(face.length * f64::from(i) / 16.0, out));
    let mut passed = places
        .flat_map(|from| (1..=steps).map(move |i| from + way * (f64::from(i) / f64::from(steps))));
    !passed.any(hits)
}

/// Between the places where it is looked whether something stands in the way, millimetres.
const STEP: f64 = 100.0;

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
        let outwards = Vector3::new(towards.x, towards.y, 0.0);
        let farthest = outwards.xy() * FRONTS;
        let shown = plan.faces.iter();
        let shown = shown.map(|f| corner::shows(f, corner) && is_free(plan, f, farthest));
        let (substrate, slab) = (0.55 * high, 0.95 * high);
        Self {
            shown: shown.collect(),
            outwards,
            substrate,
            slab,
            appliances: slab + deepest + 0.2 * high,
        }
    }

    /// Whether the cladding of a face is shown.
    pub fn shows(&self, face: usize) -> bool {
        self.shown.get(face).is_some_and(|shown| *shown)
    }

    /// How far a layer is moved.
    pub fn of(&self, layer: LayerOf) -> Vector3 {
        let up = |by: f64| Vector3::z() * by;
        match layer {
            LayerOf::Frame => Vector3::zeros(),
            LayerOf::Boards => self.outwards,
            LayerOf::Coats => self.outwards * 2.0,
            LayerOf::Fronts => self.outwards * FRONTS,
            LayerOf::Substrate => up(self.substrate),
            LayerOf::Slab => up(self.slab),
            LayerOf::Appliances => up(self.appliances),
        }
    }

    /// How far a part is moved; `None` for one that is not shown.
    pub fn of_part(&self, part: &Part) -> Option<Vector3> {
        let layer = LayerOf::of(part)?;
        let on_a_face = matches!(layer, LayerOf::Boards | LayerOf::Coats | LayerOf::Fronts);
        let face = part.face.and_then(|f| self.shown.get(f));
        let shows = face.is_none_or(|shown| *shown);
        (shows || !on_a_face).then(|| self.of(layer))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Turn, sample};

    #[test]
    fn cladding_is_not_moved_through_another_leg() {
        let run = |name, turn| sample::run(name, 2600.0, turn, &[]);
        let right = Some(Turn::Right);
        let corner = Corner {
            right: false,
            back: false,
        };
        let shown = |runs| {
            let plan = crate::plan::lay_out(sample::design(runs)).unwrap();
            let moves = Moves::new(&plan, corner);
            let shown = plan.faces.iter().zip(moves.shown);
            let names = shown.filter(|(_, s)| *s).map(|(f, _)| f.mark.clone());
            names.collect::<Vec<_>>()
        };
        // The second leg of a corner runs towards the eye: both working sides open before it.
        let two = shown(vec![run("ash", None), run("birch", right)]);
        assert_eq!(
            two.iter().filter(|m| m.ends_with('W')).count(),
            2,
            "{two:?}"
        );
        // The third leg of a U stands before the first one's working side.
        let three = shown(vec![
            run("ash", None),
            run("birch", right),
            run("cedar", right),
        ]);
        assert!(!three.contains(&"AW".to_owned()), "{three:?}");
        assert!(three.contains(&"CS".to_owned()), "{three:?}");
    }
}
