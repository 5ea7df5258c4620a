//! The chain of steps that decides when all is done.
//!
//! With several calendars a step of that chain need not be without slack: the one after it may begin no sooner because its own
//! hours have not come. So the chain is followed back from the end by what let each step begin when it does.

use super::calendar::Stretch;
use super::network::{Link, Minutes};
use super::schedule::{Calendars, Task};

/// True for the steps of the chain.
pub fn driving(
    tasks: &[Task],
    stretches: &[Vec<Stretch>],
    links: &[Link],
    calendars: &Calendars,
) -> Vec<bool> {
    let ends = |step: usize| stretches[step].last().map(|s| s.1);
    let end = (0..tasks.len()).filter_map(ends).max();
    let mut chain = vec![false; tasks.len()];
    let mut open: Vec<usize> = (0..tasks.len())
        .filter(|i| ends(*i) == end && end.is_some())
        .collect();
    while let Some(step) = open.pop() {
        if std::mem::replace(&mut chain[step], true) {
            continue;
        }
        let before = links.iter().filter(|l| l.to == step);
        let ready: Vec<(usize, Minutes)> = before
            .filter_map(|l| Some((l.from, ends(l.from)? + l.wait)))
            .collect();
        let Some(&(begin, _)) = stretches[step].first() else {
            continue;
        };
        let last = ready.iter().map(|r| r.1).max();
        // Where weather moved it, what came last before it let it begin.
        let drives = |r: &&(usize, Minutes)| {
            Some(r.1) == last || opens(tasks[step], calendars, r.1) == Some(begin)
        };
        open.extend(ready.iter().filter(drives).map(|r| r.0));
    }
    chain
}

/// When a step can begin that is let at some moment.
fn opens(task: Task, calendars: &Calendars, at: Minutes) -> Option<Minutes> {
    match task.calendar(calendars) {
        Some(calendar) => Some(task.work(calendar, at)?.first()?.0),
        None => Some(at),
    }
}
