//! The corner points that are pegged out.

use crate::design::{FrameCorner, Side};
use crate::geometry::Point2;
use crate::plan::{Face, Plan, RunPlan};

/// A corner point of the frame on the ground.
#[derive(Clone, Debug, PartialEq)]
pub struct SetPoint {
    /// Its letter: `A` is the first run's left corner on the working side; the others follow counter-clockwise round the frame,
    /// then come those that lie within a side.
    pub letter: String,
    /// Where the plan has it.
    pub at: Point2,
    /// The corners of runs that it is.
    pub of: Vec<(usize, FrameCorner)>,
    /// Number of the face that begins there; `None` where it lies within a side.
    pub face: Option<usize>,
}

/// Points nearer to each other than this are one, millimetres.
const ONE: f64 = 0.01;

/// The corners of the frame and of every run's rectangle, as planned.
pub fn points(plan: &Plan) -> Vec<SetPoint> {
    let (runs, faces) = planned(plan);
    let mut found: Vec<SetPoint> = Vec::new();
    for (i, face) in faces.iter().enumerate() {
        add(&mut found, face.start).face = Some(i);
    }
    for (i, run) in runs.iter().enumerate() {
        for corner in FrameCorner::ALL {
            add(&mut found, place(run, corner)).of.push((i, corner));
        }
    }
    found
}

/// Runs and faces as the plan had them before they followed the frame as measured.
pub(super) fn planned(plan: &Plan) -> (&[RunPlan], &[Face]) {
    let before = plan.as_built.as_ref().and_then(|f| f.planned());
    before.map_or((&plan.runs, &plan.faces), |p| (&p.runs, &p.faces))
}

/// Where a corner of a run is.
pub(super) fn place(run: &RunPlan, corner: FrameCorner) -> Point2 {
    match corner {
        FrameCorner::WorkingLeft => run.point(0.0, 0.0),
        FrameCorner::WorkingRight => run.point(run.length, 0.0),
        FrameCorner::SeatingRight => run.point(run.length, run.depth),
        FrameCorner::SeatingLeft => run.point(0.0, run.depth),
    }
}

fn add(found: &mut Vec<SetPoint>, at: Point2) -> &mut SetPoint {
    let known = found.iter().position(|p| (p.at - at).norm() < ONE);
    let number = known.unwrap_or_else(|| {
        found.push(SetPoint {
            letter: letter(found.len()),
            at,
            of: Vec::new(),
            face: None,
        });
        found.len() - 1
    });
    &mut found[number]
}

/// `A` to `Z`, then `A1`, `B1` and so on; without the letters that look like figures.
fn letter(number: usize) -> String {
    const LETTERS: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";
    let letter = char::from(LETTERS[number % LETTERS.len()]);
    match number / LETTERS.len() {
        0 => letter.to_string(),
        round => format!("{letter}{round}"),
    }
}

impl SetPoint {
    /// What it is, in words.
    pub fn words(&self, plan: &Plan) -> String {
        let names: Vec<String> = self
            .of
            .iter()
            .map(|(run, corner)| {
                let name = &plan.design.runs[*run].name.value;
                format!("{name}: {}", corner.name())
            })
            .collect();
        if names.is_empty() {
            return "inner corner".to_owned();
        }
        names.join("; ")
    }

    /// True where the frame turns inwards.
    pub fn is_inner(&self, plan: &Plan) -> bool {
        self.face
            .and_then(|f| plan.faces.get(f))
            .is_some_and(|f| f.corner == crate::plan::Corner::Reflex)
    }
}

/// Which side of a run a face is, in words.
pub(super) fn side_words(plan: &Plan, run: usize, side: Side) -> String {
    format!("{} run, {}", plan.design.runs[run].name.value, side.name())
}
