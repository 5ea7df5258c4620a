//! Corners from above: where two runs meet, and where the island turns outwards.

use super::content::{Chain, Content, Note, Window};
use super::plane;
use super::words::Words;
use crate::design::Passes;
use crate::drawing::dimension::Side;
use crate::geometry::{Bounds2, Point2};
use crate::parts::{Group, PartKind};
use crate::plan::{Face, Layers, Plan};

/// How far from the corner one sees, millimetres.
const REACH: f64 = 88.0;
/// How much of the frame one sees past the panel there.
const PAST: f64 = 25.0;

/// The inward corner that a face begins at.
pub(super) fn inward(plan: &Plan, face: usize) -> Option<Content> {
    let corner = At::new(plan, face)?;
    let (panel, clad) = (plan.sizes.panel, corner.clad);
    let area = Bounds2 {
        low: Point2::new(-panel - PAST, -REACH),
        high: Point2::new(REACH, panel + PAST),
    };
    let chains = vec![
        Chain::new(Side::Below, "", &[-panel, 0.0, clad]),
        Chain::new(Side::Left, "", &[-clad, 0.0, panel]),
    ];
    let mut notes = corner.notes();
    notes.push(Note::whole(format!(
        "Boards and coats on the {} go on into the corner; those on the {} butt against them. Tape the joint.",
        corner.before.name, corner.face.name
    )));
    Some(corner.content(area, chains, notes))
}

/// The outward corner that a face begins at.
pub(super) fn outward(plan: &Plan, face: usize) -> Option<Content> {
    let corner = At::new(plan, face)?;
    let (panel, clad) = (plan.sizes.panel, corner.clad);
    let area = Bounds2 {
        low: Point2::new(-clad - 14.0, -clad - 14.0),
        high: Point2::new(panel + 50.0, panel + 50.0),
    };
    let chains = vec![
        Chain::new(Side::Below, "", &[-clad, 0.0, panel]),
        Chain::new(Side::Left, "", &[-clad, 0.0, panel]),
    ];
    let mut notes = corner.notes();
    notes.push(Note::whole(format!(
        "Boards and coats on the {} stop at the corner; those on the {} cover their edge. A corner bead in the base coat keeps it straight (common practice).",
        corner.before.name, corner.face.name
    )));
    Some(corner.content(area, chains, notes))
}

/// A corner of the island; x is s along the face that begins there.
struct At<'a> {
    plan: &'a Plan,
    face: &'a Face,
    before: &'a Face,
    /// From the frame to the finished face.
    clad: f64,
}

impl<'a> At<'a> {
    fn new(plan: &'a Plan, number: usize) -> Option<Self> {
        let count = plan.faces.len();
        Some(Self {
            plan,
            face: plan.faces.get(number)?,
            before: plan.faces.get((number + count.checked_sub(1)?) % count)?,
            clad: Layers::of(&plan.design.trade).finish.outer,
        })
    }

    fn content(&self, area: Bounds2, chains: Vec<Chain>, notes: Vec<Note>) -> Content {
        let levels = &self.plan.levels;
        let z = levels.frame_bottom + 0.45 * (levels.frame_top - levels.frame_bottom);
        Content {
            view: plane::level(self.face, z),
            window: Window { area, deep: 20.0 },
            shows: |part| !matches!(part.group, Group::Appliances | Group::Forms),
            extras: Vec::new(),
            chains,
            notes,
        }
    }

    fn notes(&self) -> Vec<Note> {
        let words = Words(self.plan);
        let mut notes = vec![
            Note::on(
                PartKind::Stud,
                format!(
                    "{}; studs that touch are screwed web to web (common practice)",
                    words.stud("corner stud")
                ),
            ),
            Note::on(PartKind::Board, words.board()),
            Note::on(PartKind::BaseCoat, words.base_coat()),
            Note::on(PartKind::FinishCoat, words.finish_coat()),
        ];
        notes.extend(self.passing());
        notes
    }

    /// Which run's frame goes through, where two runs meet here.
    fn passing(&self) -> Option<Note> {
        let (a, b) = (
            self.face.run.min(self.before.run),
            self.face.run.max(self.before.run),
        );
        let runs = &self.plan.design.runs;
        let (earlier, later) = (runs.get(a)?, runs.get(b)?);
        if a == b {
            return None;
        }
        let (through, butts) = match later.passes {
            Passes::Earlier => (earlier, later),
            Passes::Later => (later, earlier),
        };
        Some(Note::whole(format!(
            "The frame of the {} run goes through; that of the {} run butts against it.",
            through.name.value, butts.name.value
        )))
    }
}
