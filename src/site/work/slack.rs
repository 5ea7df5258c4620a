//! How far each step can slip before the end of the work moves, in this order of hands.

use super::calendar::Stretch;
use super::network::{Link, Minutes, Network};
use super::schedule::{Calendars, Kind, Scheduled, Task};

/// Minutes of work that each step can begin later; 0 for the steps that decide the end.
///
/// Calendars, waits and who comes before whom stay as they are: a step that waited for the hands of another waits for it again.
/// That the weather would be another later is not reckoned.
pub fn slack(
    tasks: &[Task],
    stretches: &[Vec<Stretch>],
    links: &[Link],
    calendars: &Calendars,
) -> Vec<Minutes> {
    let network = Network {
        takes: tasks.iter().map(|t| t.takes).collect(),
        links: links.to_vec(),
    };
    let ends = stretches.iter().filter_map(|s| s.last());
    let end = ends.map(|s| s.1).max().unwrap_or(0);
    let mut latest: Vec<Minutes> = vec![0; tasks.len()];
    let mut slack = vec![0; tasks.len()];
    let order = network.in_order().unwrap_or_default();
    for &step in order.iter().rev() {
        let Some(&(begin, _)) = stretches[step].first() else {
            continue;
        };
        let after = network.links.iter().filter(|l| l.from == step);
        let after = after.filter(|l| !stretches[l.to].is_empty());
        let by = after.map(|l| latest[l.to] - l.wait).fold(end, Minutes::min);
        let late = begin_by(tasks[step], calendars, by)
            .unwrap_or(begin)
            .max(begin);
        latest[step] = late;
        let calendar = tasks[step].calendar(calendars);
        slack[step] = calendar.unwrap_or(&calendars.crew).between(begin, late);
    }
    slack
}

fn begin_by(task: Task, calendars: &Calendars, end: Minutes) -> Option<Minutes> {
    match task.calendar(calendars) {
        Some(calendar) if task.at_once => calendar.begin_at_once_by(end, task.takes),
        Some(calendar) => calendar.begin_by(end, task.takes),
        None => Some(end - task.takes),
    }
}

/// The links, and those that want of hands makes.
pub fn with_hands(tasks: &[Task], done: &Scheduled, crew: u32) -> Vec<Link> {
    let own = done.links.iter().copied();
    own.chain(of_hands(tasks, done, crew)).collect()
}

/// Steps that cannot be done at once for want of hands, one after the other as they are.
fn of_hands(tasks: &[Task], done: &Scheduled, crew: u32) -> Vec<Link> {
    let ends = |s: &[Stretch]| Some((s.first()?.0, s.last()?.1));
    let held = |i: &usize| tasks[*i].kind != Kind::Trades && tasks[*i].hands > 0;
    let own: Vec<usize> = (0..tasks.len()).filter(held).collect();
    let mut links = Vec::new();
    for &from in &own {
        for &to in &own {
            let both = tasks[from].hands.saturating_add(tasks[to].hands);
            let (Some(first), Some(second)) =
                (ends(&done.stretches[from]), ends(&done.stretches[to]))
            else {
                continue;
            };
            // Two steps of no length at one moment would wait for each other.
            let is_before =
                first.1 <= second.0 && (first.0, first.1, from) < (second.0, second.1, to);
            if from != to && both > crew && is_before {
                links.push(Link { from, to, wait: 0 });
            }
        }
    }
    links
}
