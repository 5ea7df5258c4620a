//! What drawings say of a counter that follows the frame as measured.

use crate::design::Taped;
use crate::plan::{FrameAsBuilt, Plan};
use crate::units::Length;

/// In one sentence, with what differs from the plan; `None` where the counter is as planned.
pub fn followed(plan: &Plan) -> Option<String> {
    let frame = plan.as_built.as_ref().filter(|f| f.planned().is_some())?;
    let said = plan.design.runs.iter().enumerate().filter_map(|(i, run)| {
        let off = differences(plan, frame, i)?;
        Some(format!("{}: {off}", run.name.value))
    });
    let said: Vec<String> = said.collect();
    let said = if said.is_empty() {
        "its sides are as long, its corners not square".to_owned()
    } else {
        said.join("; ")
    };
    Some(format!(
        "Follows the frame as measured, against the plan: {said}."
    ))
}

/// The sides of a run that differ by a step of the drawings or more.
fn differences(plan: &Plan, frame: &FrameAsBuilt, run: usize) -> Option<String> {
    let units = plan.design.project.units;
    let built = frame.runs.get(run).filter(|r| r.solved)?;
    let sides = Taped::ALL.into_iter().filter(|t| !t.is_diagonal());
    let off = sides.filter_map(|taped| {
        let by = Length::millimetres(built.length(taped).difference());
        let sign = match units.steps(by) {
            0 => return None,
            steps if steps < 0 => "−",
            _ => "+",
        };
        Some(format!(
            "{} {sign}{}",
            taped.name(),
            units.spell_with_unit(by.abs())
        ))
    });
    let off: Vec<String> = off.collect();
    (!off.is_empty()).then(|| off.join(", "))
}
