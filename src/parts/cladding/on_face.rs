//! One face and what every layer on it needs to know.

use super::channel::SHEET;
use crate::design::Design;
use crate::parts::plate::Plate;
use crate::parts::{Group, PartKind};
use crate::plan::{Band, Courses, Face, Layer, Layers, Plan, PlanLevels};

/// A face that gets cladding.
///
/// Invariant: `index` is a face of `faces`.
pub(super) struct OnFace<'a> {
    faces: &'a [Face],
    index: usize,
    /// What was asked for.
    pub design: &'a Design,
    /// Heights.
    pub levels: &'a PlanLevels,
    /// The layers.
    pub layers: Layers,
    /// The rows of boards.
    pub courses: Courses,
    /// The tile band, where there is one.
    pub band: Option<Band>,
}

impl<'a> OnFace<'a> {
    pub fn new(plan: &'a Plan, index: usize) -> Self {
        Self {
            faces: &plan.faces,
            index,
            design: &plan.design,
            levels: &plan.levels,
            layers: Layers::of(&plan.design.trade),
            courses: Courses::of(&plan.design.trade, &plan.levels),
            band: Band::of(&plan.design, &plan.levels),
        }
    }

    pub fn face(&self) -> &'a Face {
        &self.faces[self.index]
    }

    /// The face before it, itself and the one after it.
    pub fn neighbours(&self) -> [&'a Face; 3] {
        let n = self.faces.len();
        [n - 1, 0, 1].map(|k| &self.faces[(self.index + k) % n])
    }

    /// Where a layer begins and ends along the face.
    pub fn ends(&self, layer: Layer) -> (f64, f64) {
        layer.ends(self.faces, self.index)
    }

    /// A mark of this face.
    pub fn mark(&self, letters: &str) -> String {
        format!("{}-{letters}", self.face().mark)
    }

    /// True when the finish coat is thick enough to hide the base channel's lip.
    pub fn has_lip(&self) -> bool {
        self.layers.finish.thickness() >= SHEET
    }

    /// What flat pieces of a kind on this face have in common.
    pub fn plate(
        &self,
        kind: PartKind,
        group: Group,
        material: &'a str,
        section: String,
    ) -> Plate<'a> {
        Plate {
            face: self.face(),
            index: self.index,
            kind,
            group,
            material,
            section,
        }
    }
}
