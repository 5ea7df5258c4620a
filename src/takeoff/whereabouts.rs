//! Where something goes, in words.

use crate::plan::Plan;

/// The face by its name, else the run, else the island.
pub fn whereabouts(plan: &Plan, run: Option<usize>, face: Option<usize>) -> String {
    let face = face.and_then(|f| plan.faces.get(f));
    let run = run.and_then(|r| plan.design.runs.get(r));
    match (face, run) {
        (Some(face), _) => face.name.clone(),
        (None, Some(run)) => format!("{} run", run.name.value),
        (None, None) => "island".to_owned(),
    }
}
