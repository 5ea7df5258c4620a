//! Corners from above: where two runs meet, and where the island turns outwards.

use super::content::{Chain, Content, Note, Window};
use super::plane;
use super::words::Words;
use crate::design::Passes;
use crate::drawing::dimension::Side;
use crate::geometry::{Bounds2, Point2};
use crate::parts::{Group, PartKind};
use crate::plan::{Corner, Face, Layers, Plan};

/// How far from the corner one sees, millimetres.
const REACH: f64 = 88.0;
/// So high over the foot of the studs the cut is, millimetres: over their first punch-out.
const LEVEL: f64 = 400.0;
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
    notes.extend(corner.meeting());
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
        let z = levels.frame_bottom + LEVEL.min(0.6 * (levels.frame_top - levels.frame_bottom));
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
            Note::on(PartKind::Board, words.board()),
            Note::on(PartKind::BaseCoat, words.base_coat()),
            Note::on(PartKind::FinishCoat, words.finish_coat()),
        ];
        if self.face.corner == Corner::Convex {
            notes.push(Note::on(
                PartKind::Stud,
                format!(
                    "{}; studs that touch are screwed together (common practice)",
                    words.stud("corner studs, each")
                ),
            ));
        }
        notes.extend(self.passing());
        notes
    }

    /// The studs where one frame butts against the other.
    fn meeting(&self) -> Vec<Note> {
        let Some([through, butts]) = self.runs() else {
            return Vec::new();
        };
        let words = Words(self.plan);
        let (half, skin) = (
            self.plan.sizes.panel / 2.0,
            self.plan.sizes.track_thickness / 2.0,
        );
        // The doubled webs stand on the line of the other run's face; the butting end beside the first panel.
        let (doubled, end) = if self.before.run == through.0 {
            ((-half, 0.0), (skin, half))
        } else {
            ((0.0, half), (-half, -skin))
        };
        vec![
            Note::at(
                &[doubled],
                format!("two studs, webs back to back, in the {} run", through.1),
            ),
            Note::at(
                &[end],
                format!(
                    "{}; screwed through its web into the flanges of the two studs of the {} run (common practice)",
                    words.stud(&format!("end stud of the {} run,", butts.1)),
                    through.1
                ),
            ),
        ]
    }

    /// The run whose frame goes through, and the one that butts, where two runs meet here: numbers and names.
    fn runs(&self) -> Option<[(usize, &str); 2]> {
        let (a, b) = (
            self.face.run.min(self.before.run),
            self.face.run.max(self.before.run),
        );
        let runs = &self.plan.design.runs;
        let (earlier, later) = (runs.get(a)?, runs.get(b)?);
        let pair = [
            (a, earlier.name.value.as_str()),
            (b, later.name.value.as_str()),
        ];
        let [first, second] = pair;
        let ordered = match later.passes {
            Passes::Earlier => pair,
            Passes::Later => [second, first],
        };
        (a != b).then_some(ordered)
    }

    /// Which run's frame goes through.
    fn passing(&self) -> Option<Note> {
        let [through, butts] = self.runs()?;
        Some(Note::whole(format!(
            "The frame of the {} run goes through; that of the {} run butts against it.",
            through.1, butts.1
        )))
    }
}
