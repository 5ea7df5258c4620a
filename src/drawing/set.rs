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
    let views = views(plan, &tasks);
    let draw = |number: usize, task: &Task| {
        let (mut page, scale) = view(plan, &scene, &frame, task, &views)?;
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

/// For each face the sheets that show it.
fn views(plan: &Plan, tasks: &[Task]) -> Vec<(usize, String)> {
    let shows = |task: &Task, face: usize| {
        task.subject == Subject::Finished(face) || task.subject == Subject::Framing(face)
    };
    let sheets = |face: usize| {
        let numbers = tasks
            .iter()
            .enumerate()
            .filter(|(_, task)| shows(task, face));
        let numbers: Vec<_> = numbers.map(|(i, _)| (i + 1).to_string()).collect();
        let word = if numbers.len() == 1 {
            "sheet"
        } else {
            "sheets"
        };
        format!("{word} {}", numbers.join(", "))
    };
    (0..plan.faces.len())
        .map(|face| (face, sheets(face)))
        .collect()
}

fn view(
    plan: &Plan,
    scene: &Scene,
    frame: &Frame,
    task: &Task,
    views: &[(usize, String)],
) -> Option<(Page, Scale)> {
    match task.subject {
        Subject::Finished(face) => elevation::finished(plan, scene, frame, face, &task.title),
        Subject::Island => Some(plans::island(plan, scene, frame, &task.title, views)),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Item, Layer, check};
    use std::sync::LazyLock;

    struct Example {
        path: String,
        plan: Plan,
        assembly: Assembly,
        sheets: Vec<Sheet>,
    }

    /// Every example that is shipped, drawn once.
    static EXAMPLES: LazyLock<Vec<Example>> = LazyLock::new(examples);

    fn examples() -> Vec<Example> {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/params");
        let mut paths: Vec<_> = std::fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().path())
            .filter(|path| path.extension().is_some_and(|e| e == "yaml"))
            .collect();
        paths.sort();
        assert!(paths.len() >= 4);
        let load = |path: std::path::PathBuf| {
            let text = std::fs::read_to_string(&path).unwrap();
            let plan = crate::plan::lay_out(crate::design::from_text(&text).unwrap()).unwrap();
            let assembly = crate::parts::build(&plan);
            let sheets = sheets(&plan, &assembly);
            Example {
                path: path.display().to_string(),
                plan,
                assembly,
                sheets,
            }
        };
        paths.into_iter().map(load).collect()
    }

    fn texts(sheet: &Sheet) -> Vec<&str> {
        let texts = sheet.items.iter().filter_map(|item| match item {
            Item::Text { text, .. } => Some(text.as_str()),
            Item::Path { .. } => None,
        });
        texts.collect()
    }

    #[test]
    fn on_every_sheet_of_every_example_texts_keep_clear() {
        for Example { path, sheets, .. } in EXAMPLES.iter() {
            for sheet in sheets {
                if let Err(fault) = check::texts_are_clear(sheet) {
                    panic!("{path}: {fault}");
                }
            }
        }
    }

    #[test]
    fn every_member_of_the_frame_is_marked_on_a_sheet() {
        for Example {
            path,
            assembly,
            sheets,
            ..
        } in EXAMPLES.iter()
        {
            let lettered: BTreeSet<&str> = sheets.iter().flat_map(texts).collect();
            let framing = assembly.parts.iter();
            let framing = framing.filter(|p| p.group == crate::parts::Group::Framing);
            let missing: Vec<_> = framing
                .map(|p| p.mark.as_str())
                .filter(|mark| !lettered.contains(mark))
                .collect();
            assert!(missing.is_empty(), "{path}: no sheet shows {missing:?}");
        }
    }

    #[test]
    fn the_overall_dimension_of_a_framing_is_the_design_at_scale() {
        for Example {
            path, plan, sheets, ..
        } in EXAMPLES.iter()
        {
            // The first run's working face: its panel is as long as the run's frame.
            let name = format!("elevation-{}-framing", plan.faces[0].mark);
            let sheet = sheets.iter().find(|s| s.name == name).unwrap();
            let lines = sheet.items.iter().filter(|item| {
                matches!(item, Item::Path { layer: Layer::Dimension, points, .. }
                    if points.iter().all(|p| (p.at.y - points[0].at.y).abs() < 1e-9))
            });
            let longest = lines.map(check::extent).fold(0.0, f64::max);
            let (low, high) = plan.runs[0].framed;
            let built = longest / sheet.scale.factor;
            assert!(
                (built - (high - low)).abs() < 0.1,
                "{path}: {built} for {}",
                high - low
            );
        }
    }

    #[test]
    fn sheets_are_numbered_through_and_named_once() {
        for Example { sheets, .. } in EXAMPLES.iter() {
            let names: BTreeSet<_> = sheets.iter().map(|s| &s.name).collect();
            assert_eq!(names.len(), sheets.len());
            for (i, sheet) in sheets.iter().enumerate() {
                let number = format!("{} of {}", i + 1, sheets.len());
                assert!(
                    texts(sheet).contains(&number.as_str()),
                    "{}: {number}",
                    sheet.name
                );
            }
        }
    }

    #[test]
    fn the_same_plan_gives_the_same_sheets() {
        for example in EXAMPLES.iter() {
            assert_eq!(sheets(&example.plan, &example.assembly), example.sheets);
        }
    }
}
