//! The island as it is shown in a viewer.

use super::{Appearances, Instance, Model, Selection, Viewpoint};
use crate::geometry::{Bounds3, Faceted};
use crate::parts::{Assembly, Group, Part, PartKind};
use crate::plan::Plan;

/// A curve's chords stay this close to it in a model that is only looked at, millimetres: less than an eye sees.
pub const SHOWN_TOLERANCE: f64 = 0.1;

/// Everything that a format for viewers holds: parts with their surfaces, what they look like, and views of them.
#[derive(Clone, Debug)]
pub struct Showing<'a> {
    /// What is built.
    pub title: &'a str,
    /// Names of the runs.
    pub runs: Vec<&'a str>,
    /// The surface of every shape, by number.
    pub meshes: &'a [Faceted],
    /// Every part but the forms.
    pub built: Selection<'a>,
    /// The forms, which are gone when the island is done.
    pub forms: Selection<'a>,
    /// What the parts look like.
    pub appearances: Appearances,
    /// From where to look.
    pub views: Vec<Viewpoint>,
}

impl<'a> Showing<'a> {
    /// The island of a plan.
    pub fn of(plan: &'a Plan, assembly: &'a Assembly, model: &'a Model) -> Self {
        let built = model.chosen(assembly, |p| p.group != Group::Forms);
        let views = bounds(&built).map_or_else(Vec::new, |b| Viewpoint::all(plan, &b));
        Self {
            title: &plan.design.project.title,
            runs: plan.design.runs.iter().map(|r| r.name.as_str()).collect(),
            meshes: model.meshes(),
            built,
            forms: model.selection(assembly, Some(Group::Forms)),
            appearances: Appearances::of(&plan.design),
            views,
        }
    }

    /// What one sees of the finished island: nothing of the frame but the sleepers it stands on, no boards, no bodies behind
    /// doors.
    pub fn seen(&self) -> impl Iterator<Item = &Instance<'a>> {
        self.built.instances().iter().filter(|i| is_seen(i.part))
    }
}

fn is_seen(part: &Part) -> bool {
    match part.group {
        Group::Forms => false,
        Group::Framing => part.kind == PartKind::Sleeper,
        Group::Boards => part.kind == PartKind::BaseChannel,
        Group::Coats | Group::Counter => true,
        Group::Appliances => part.kind != PartKind::Body || part.face.is_none(),
    }
}

/// The box round parts in their places.
fn bounds(selection: &Selection) -> Option<Bounds3> {
    let corners = selection.instances().iter().filter_map(|i| {
        let own = i.mesh.bounds()?.corners();
        Some(own.map(|corner| i.part.placement * corner))
    });
    Bounds3::around(corners.flatten())
}
