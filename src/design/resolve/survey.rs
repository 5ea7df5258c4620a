//! The survey resolved: a level that cannot be read or stands where another does is named and left out.

use super::gather::{Gather, Limits, Usual};
use crate::design::{Placed, SpotLevel, Survey};
use crate::diagnostics::Place;
use crate::geometry::{BestPlane, NoPlane, Point3};
use crate::parameters::{self, Given, LevelText, Measured};
use crate::units::{Length, Notation, parse_length};
use std::collections::BTreeMap;

/// Where a level can be taken, and how high it can be.
const NEAR: Limits = Limits(-100_000.0, 100_000.0);
const HIGH: Limits = Limits(-10_000.0, 10_000.0);
/// From one level of a grid to the next.
const STEP: Limits = Limits(10.0, 100_000.0);
/// How finely levels are read, and how thick a shim is.
const FINE: Limits = Limits(0.05, 100.0);
const SHIM: Limits = Limits(0.2, 100.0);
/// What packs and distances can be.
const SOME: Limits = Limits(0.0, 100_000.0);

/// What was measured; `None` where nothing was.
pub(super) fn survey(g: &mut Gather, given: &Given<parameters::Survey>) -> Option<Survey> {
    let Given::Yes(s, place) = given else {
        return None;
    };
    let down = matches!(s.measured.value(), Some(Measured::Down));
    let reading = soft(g, &s.reading, Usual(0.125, 3.0), FINE);
    let sparse_beyond = soft(g, &s.sparse_beyond, Usual(48.0, 1200.0), SOME);
    let shims = shims(g, &s.shims);
    let most_packing = Placed {
        value: soft(g, &s.most_packing, Usual(2.0, 50.0), SOME),
        place: s.most_packing.place(),
    };
    let mut levels = points(g, &s.points);
    levels.extend(grid(g, &s.grid));
    if down {
        for level in &mut levels {
            level.at.z = -level.at.z;
        }
    }
    let levels = apart(g, levels, reading);
    say_what_makes_no_plane(g, place, &levels);
    Some(Survey {
        place: place.clone(),
        levels,
        reading,
        sparse_beyond,
        shims,
        most_packing,
    })
}

/// A length that may be left out; a bad one is named, and the usual one stands for it.
fn soft(
    g: &mut Gather,
    given: &Given<parameters::Dimension>,
    usual: Usual,
    limits: Limits,
) -> Length {
    let usual = g.usual(usual);
    g.soft_length(given, limits).unwrap_or(usual)
}

/// The thicknesses at hand, the thinnest first.
fn shims(g: &mut Gather, given: &Given<Vec<Given<parameters::Dimension>>>) -> Vec<Length> {
    let entries = given.value().into_iter().flatten();
    let mut found: Vec<Length> = entries.filter_map(|e| g.soft_length(e, SHIM)).collect();
    if found.is_empty() {
        found = match g.notation {
            Notation::Imperial => [0.0625, 0.125, 0.25, 0.5].map(Length::inches).to_vec(),
            Notation::Metric => [1.0, 2.0, 5.0, 10.0].map(Length::millimetres).to_vec(),
        };
    }
    found.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
    found.dedup();
    found
}

fn points(g: &mut Gather, given: &Given<Vec<Given<parameters::SpotLevel>>>) -> Vec<SpotLevel> {
    let mut found = Vec::new();
    let entries = given.value().into_iter().flatten().enumerate();
    for (i, entry) in entries {
        let Given::Yes(p, place) = entry else {
            continue;
        };
        for (given, key) in [(&p.x, "x"), (&p.y, "y"), (&p.z, "z")] {
            g.is_there(given, place, key);
        }
        let (x, y) = (level(g, &p.x, NEAR), level(g, &p.y, NEAR));
        let z = level(g, &p.z, HIGH);
        if let (Some(x), Some(y), Some(z)) = (x, y, z) {
            found.push(SpotLevel {
                name: format!("P{}", i + 1),
                at: Point3::new(x, y, z),
                place: place.clone(),
            });
        }
    }
    found
}

/// A level in millimetres; one that cannot be read is named.
fn level(g: &mut Gather, given: &Given<LevelText>, limits: Limits) -> Option<f64> {
    let read = g.written(given, parse_length)?;
    let before = g.findings.len();
    let holds = g.within(read.value, limits, &read.place);
    for finding in &mut g.findings[before..] {
        finding.verdict = crate::diagnostics::Verdict::Fail;
    }
    holds.then_some(read.value.mm())
}

fn grid(g: &mut Gather, given: &Given<parameters::LevelGrid>) -> Vec<SpotLevel> {
    let Given::Yes(grid, place) = given else {
        return Vec::new();
    };
    let from = across(g, &grid.from, place, "from", NEAR);
    let step = across(g, &grid.step, place, "step", STEP);
    g.is_there(&grid.rows, place, "rows");
    let (Some(from), Some(step)) = (from, step) else {
        return Vec::new();
    };
    let wide = usual_width(&grid.rows);
    let mut found = Vec::new();
    let rows = grid.rows.value().into_iter().flatten().enumerate();
    for (r, row) in rows {
        let Given::Yes(cells, place) = row else {
            continue;
        };
        if cells.len() != wide {
            let words = format!(
                "row {} of the grid has {} levels where the others have {wide}",
                r + 1,
                cells.len()
            );
            let hint = "write '-' where no level was taken: without it the row cannot be placed";
            g.fail("ragged-row", place, words, hint);
            continue;
        }
        for (c, cell) in cells.iter().enumerate() {
            if matches!(cell, Given::Yes(LevelText(text), _) if text.trim() == "-") {
                continue;
            }
            if let Some(z) = level(g, cell, HIGH) {
                let at = Point3::new(from.0 + step.0 * c as f64, from.1 + step.1 * r as f64, z);
                found.push(SpotLevel {
                    name: format!("R{}-{}", r + 1, c + 1),
                    at,
                    place: cell.place(),
                });
            }
        }
    }
    found
}

/// How many levels most rows have; of two numbers as frequent, that of the earlier row.
fn usual_width(rows: &Given<Vec<Given<Vec<Given<LevelText>>>>>) -> usize {
    let mut counts: Vec<(usize, usize)> = Vec::new();
    for (row, _) in rows.entries() {
        match counts.iter_mut().find(|(wide, _)| *wide == row.len()) {
            Some((_, count)) => *count += 1,
            None => counts.push((row.len(), 1)),
        }
    }
    let first = counts.first().copied().unwrap_or_default();
    counts
        .into_iter()
        .fold(
            first,
            |best, next| if next.1 > best.1 { next } else { best },
        )
        .0
}

fn across(
    g: &mut Gather,
    given: &Given<parameters::Across>,
    parent: &Place,
    key: &str,
    limits: Limits,
) -> Option<(f64, f64)> {
    g.is_there(given, parent, key);
    let Given::Yes(across, place) = given else {
        return None;
    };
    let x = g.entry_length(&across.x, place, "x", limits);
    let y = g.entry_length(&across.y, place, "y", limits);
    Some((x?.mm(), y?.mm()))
}

/// The levels without those that stand where an earlier one does, to the millimetre; that the two differ by more than they
/// were read to is said.
fn apart(g: &mut Gather, levels: Vec<SpotLevel>, reading: Length) -> Vec<SpotLevel> {
    let mut first: BTreeMap<(i64, i64), usize> = BTreeMap::new();
    let mut kept: Vec<SpotLevel> = Vec::new();
    for level in levels {
        let key = (level.at.x.round() as i64, level.at.y.round() as i64);
        let Some(&earlier) = first.get(&key) else {
            first.insert(key, kept.len());
            kept.push(level);
            continue;
        };
        let differ = Length::millimetres((level.at.z - kept[earlier].at.z).abs());
        if differ.mm() > 2.0 * reading.mm() + 1e-9 {
            let words = format!(
                "{} and {} stand at the same place and differ by {}",
                kept[earlier].name,
                level.name,
                g.spell(differ)
            );
            let hint = "read it again and leave the wrong one out; the first one is taken";
            g.fail("level-twice", &level.place, words, hint);
        }
    }
    kept
}

fn say_what_makes_no_plane(g: &mut Gather, place: &Place, levels: &[SpotLevel]) {
    let points: Vec<Point3> = levels.iter().map(|l| l.at).collect();
    let taken = match levels.len() {
        0 => "no level that counts".to_owned(),
        1 => "one level".to_owned(),
        n => format!("{n} levels"),
    };
    match BestPlane::through(&points) {
        Ok(_) => {}
        Err(NoPlane::TooFew) => g.fail(
            "few-levels",
            place,
            format!("the survey has {taken}: a plane takes three"),
            "take at least three levels, better eight or more round and under the island",
        ),
        Err(NoPlane::InLine) => g.fail(
            "levels-in-line",
            place,
            format!("all {taken} of the survey lie in one line: how the ground falls across it is not known"),
            "take levels to both sides of the line too",
        ),
    }
}
