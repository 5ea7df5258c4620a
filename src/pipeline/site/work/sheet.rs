//! What the sheets of the order of work show.

use crate::drawing::site::work::{Bar, Task, WorkSheet};
use crate::plan::Plan;
use crate::site::work::{Order, Source, Step, Waiting};
use crate::units::TimeSpan;

/// The sheets, where the file asks for them.
pub fn sheet(_: &Plan, order: &Order) -> Option<WorkSheet> {
    order.is_asked.then(|| WorkSheet {
        tasks: (0..order.steps.len())
            .filter_map(|i| task(order, i))
            .collect(),
        span: order.span,
        crew: order.crew,
        notes: order.notes.clone(),
    })
}

fn task(order: &Order, number: usize) -> Option<Task> {
    let step: &Step = order.steps.get(number)?;
    let bar = step.times.as_ref().map(|t| Bar {
        stretches: t.stretches.clone(),
        is_critical: t.is_critical,
        float: t.float,
    });
    Some(Task {
        name: step.what.name.to_owned(),
        id: step.what.id.to_owned(),
        chapter: step.what.phase.name().to_owned(),
        is_hold: step.what.is_hold,
        by: step.what.by.name().to_owned(),
        is_own: step.what.by == crate::catalog::work::Doer::Crew,
        hands: step.hands,
        is_short_of_hands: order.is_short_of_hands(step),
        takes: step.takes,
        source: if step.source == Source::File {
            ""
        } else {
            step.source.name()
        }
        .to_owned(),
        weather: step.what.fitness.name().to_owned(),
        tools: step.what.tools.join(", "),
        pieces: step.pieces.join(", "),
        cautions: step.cautions.clone(),
        checks: step.checks.clone(),
        waits: waits(order, number),
        bar,
    })
}

/// The waits that begin with the end of a step: how long, and for what.
fn waits(order: &Order, number: usize) -> Vec<(TimeSpan, String)> {
    let own = order
        .waits
        .iter()
        .filter(|w| w.from == number && w.wait.in_hours() > 0.0);
    let said = |w: &Waiting| (w.wait, format!("before step {}: {}", w.to + 1, w.why));
    own.map(said).collect()
}
