//! The drawing set: which sheets there are, in which order, and how they are numbered.

use super::border::Frame;
use super::elevation::{self, PanelView};
use super::page::{Page, plain};
use super::plans;
use super::scene::Scene;
use super::{Scale, Sheet};
use crate::parts::Assembly;
use crate::plan::{PanelOf, Plan};
use std::collections::BTreeSet;

/// What one sheet shows; numbers are those of faces, for a bulkhead that of its panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Subject {
    Island,
    Counter,
    Finished(usize),
    Framing(usize),
    Bulkhead(usize),
}

/// One sheet to draw.
#[derive(Clone, Debug)]
struct Task {
    subject: Subject,
    name: String,
    title: String,
}

/// Draws the whole set: the plan of the island, the plan of the counter, then for each face the finished look and the
/// framing behind it, and at last the framing of bulkheads. A wall has no finished look.
///
/// The same plan gives the same sheets, however many cores draw them.
pub fn sheets(plan: &Plan, assembly: &Assembly) -> Vec<Sheet> {
    let scene = Scene::new(assembly);
    let frame = Frame::new(&plan.design.project);
    let tasks = tasks(plan);
    let draw = |number: usize, task: &Task| {
        let (mut page, scale) = view(plan, &scene, &frame, task)?;
        frame.draw_foot(&mut page, &task.title, (number + 1, tasks.len()), &scale);
        let letter = format!("A-{}", number + 1);
        Some(page.finish(task.name.clone(), task.title.clone(), letter, scale))
    };
    let workers = std::thread::available_parallelism().map_or(1, |n| n.get().min(8));
    let mut drawn: Vec<(usize, Option<Sheet>)> = std::thread::scope(|scope| {
        let (draw, tasks) = (&draw, &tasks);
        let threads: Vec<_> = (0..workers)
            .map(|worker| {
                scope.spawn(move || {
                    let share = tasks.iter().enumerate().skip(worker).step_by(workers);
                    share
                        .map(|(i, task)| (i, draw(i, task)))
                        .collect::<Vec<_>>()
                })
            })
            .collect();
        let finished = threads.into_iter().map(|thread| match thread.join() {
            Ok(sheets) => sheets,
            Err(panic) => std::panic::resume_unwind(panic),
        });
        finished.flatten().collect()
    });
    drawn.sort_by_key(|(number, _)| *number);
    drawn.into_iter().filter_map(|(_, sheet)| sheet).collect()
}

fn view(plan: &Plan, scene: &Scene, frame: &Frame, task: &Task) -> Option<(Page, Scale)> {
    match task.subject {
        Subject::Finished(face) => elevation::finished(plan, scene, frame, face, &task.title),
        Subject::Island => plans::island(plan, scene, frame, &task.title),
        Subject::Counter => Some(plans::counter(plan, frame, &task.title)),
        Subject::Framing(face) => {
            let of = PanelView::of_face(plan, face)?;
            elevation::framing(plan, scene, frame, &of, &task.title)
        }
        Subject::Bulkhead(panel) => {
            let of = PanelView::of_bulkhead(plan, panel)?;
            elevation::framing(plan, scene, frame, &of, &task.title)
        }
    }
}

/// The sheets in order, each with a file name of its own.
fn tasks(plan: &Plan) -> Vec<Task> {
    let mut names = BTreeSet::new();
    let mut tasks = Vec::new();
    let mut add = |subject: Subject, stem: &str, title: String| {
        let mut name = stem.to_owned();
        let mut count = 1;
        while !names.insert(name.clone()) {
            count += 1;
            name = format!("{stem}-{count}");
        }
        tasks.push(Task {
            subject,
            name,
            title,
        });
    };
    add(
        Subject::Island,
        "plan-island",
        "Plan of the island".to_owned(),
    );
    add(
        Subject::Counter,
        "plan-counter",
        "Plan of the counter".to_owned(),
    );
    for (number, face) in plan.faces.iter().enumerate() {
        let mark = file_part(&face.mark);
        let name = capitalised(&plain(&face.name));
        if !face.wall {
            let stem = format!("elevation-{mark}-finished");
            add(
                Subject::Finished(number),
                &stem,
                format!("{name}: finished"),
            );
        }
        let stem = format!("elevation-{mark}-framing");
        add(Subject::Framing(number), &stem, format!("{name}: framing"));
    }
    for (number, panel) in plan.panels.iter().enumerate() {
        let (PanelOf::Bulkhead(count), Some(run)) = (panel.of, plan.design.runs.get(panel.run))
        else {
            continue;
        };
        let count = count + 1;
        let stem = format!(
            "elevation-{}-bulkhead-{count}-framing",
            file_part(&run.mark)
        );
        let name = capitalised(&plain(&run.name.value));
        let title = format!("{name} run, bulkhead {count}: framing");
        add(Subject::Bulkhead(number), &stem, title);
    }
    tasks
}

/// What of a mark is safe in a file name everywhere.
fn file_part(mark: &str) -> String {
    let kept = mark
        .chars()
        .filter(|c| c.is_ascii_alphanumeric() || *c == '-');
    kept.collect()
}

fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}
