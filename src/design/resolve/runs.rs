//! Runs resolved.

use super::gather::{Gather, Limits};
use super::marks;
use crate::design::{Passes, Placed, Run, Side, Turn};
use crate::diagnostics::Place;
use crate::parameters::{self, Given};
use crate::units::Length;

/// More runs than this are not one island.
const MOST_RUNS: usize = 400;

/// The runs in order. Fewer than the file has when some make no sense; the findings are put down.
pub(super) fn runs(
    g: &mut Gather,
    given: &Given<Vec<Given<parameters::Run>>>,
    top: &Place,
) -> Vec<Run> {
    let Some(list) = g.needed(given, top, "runs") else {
        return Vec::new();
    };
    if list.is_empty() {
        let hint = "write one entry for each straight stretch";
        g.error("no-runs", &given.place(), "there is no run", hint);
    }
    if list.len() > MOST_RUNS {
        let found = format!("there are {} runs", list.len());
        g.error(
            "too-many",
            &given.place(),
            found,
            format!("an island can have {MOST_RUNS}"),
        );
        return Vec::new();
    }
    let given_marks: Vec<_> = given
        .entries()
        .map(|(run, _)| (run.name.value(), &run.mark))
        .collect();
    let marks = marks::marks(g, &given_marks);
    let mut runs: Vec<Run> = Vec::new();
    for ((run, place), mark) in given.entries().zip(marks) {
        let first = std::ptr::eq(run, given.entries().next().map_or(run, |(r, _)| r));
        if let Some(run) = one(g, run, place, mark, first) {
            check_name(g, &runs, &run);
            runs.push(run);
        }
    }
    runs
}

fn one(
    g: &mut Gather,
    run: &parameters::Run,
    place: &Place,
    mark: String,
    first: bool,
) -> Option<Run> {
    let name = g.needed(&run.name, place, "name").cloned();
    let length = g.needed_length(&run.length, place, "length", Limits(300.0, 100_000.0));
    let depth = g.needed_length(&run.depth, place, "depth", Limits(150.0, 3000.0));
    let turn = turn(g, run, place, first);
    let walls = run
        .walls
        .entries()
        .map(|(side, _)| side_of(*side))
        .collect();
    let bulkheads = bulkheads(g, run, length.as_ref().map(|l| l.value));
    let name = name?;
    let name_place = run.name.place();
    if !g.is_plain(&name, &name_place, 40) {
        return None;
    }
    Some(Run {
        name: Placed {
            value: name.trim().to_owned(),
            place: name_place,
        },
        mark,
        length: length?,
        depth: depth?,
        walls,
        turn,
        passes: match run.passes.value() {
            Some(parameters::Passes::Later) => Passes::Later,
            _ => Passes::Earlier,
        },
        bulkheads,
    })
}

fn turn(g: &mut Gather, run: &parameters::Run, place: &Place, first: bool) -> Option<Placed<Turn>> {
    if first {
        for (given, key) in [(run.turn.place(), "turn"), (run.passes.place(), "passes")] {
            if given.is_known() {
                let found = format!("the first run has no corner at its start, so no '{key}'");
                let hint = "say it on the run after the corner";
                g.error("first-run", &given, found, hint);
            }
        }
        return None;
    }
    let value = match g.needed(&run.turn, place, "turn")? {
        parameters::Turn::Left => Turn::Left,
        parameters::Turn::Right => Turn::Right,
    };
    Some(Placed {
        value,
        place: run.turn.place(),
    })
}

fn bulkheads(g: &mut Gather, run: &parameters::Run, length: Option<Length>) -> Vec<Placed<Length>> {
    let mut found = Vec::new();
    for (at, place) in run.bulkheads.entries() {
        let inside = at.0 > Length::ZERO && length.is_none_or(|l| at.0 < l);
        if inside {
            found.push(Placed {
                value: at.0,
                place: place.clone(),
            });
        } else {
            let text = format!("a bulkhead at {} stands outside its run", g.spell(at.0));
            let hint = "it is measured from the run's left end to its middle";
            g.error("bulkhead-outside", place, text, hint);
        }
    }
    found
}

fn check_name(g: &mut Gather, runs: &[Run], run: &Run) {
    if run.name.is_empty() {
        g.error(
            "empty-text",
            &run.name.place,
            "the name is empty",
            "give the run a short name",
        );
    }
    if let Some(other) = runs.iter().find(|r| r.name.value == run.name.value) {
        let found = format!("there are two runs named '{}'", run.name.value);
        let hint = format!("the other is on line {}; rename one", other.name.place.line);
        g.error("same-name", &run.name.place, found, hint);
    }
}

/// The design's word for a side of the file.
pub(super) fn side_of(side: parameters::Side) -> Side {
    match side {
        parameters::Side::Working => Side::Working,
        parameters::Side::Seating => Side::Seating,
        parameters::Side::Left => Side::Left,
        parameters::Side::Right => Side::Right,
    }
}
