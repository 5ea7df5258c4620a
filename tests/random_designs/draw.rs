//! Parameter files drawn at random: mostly buildable, some not.

use crate::site::{Site, site};
use proptest::collection::vec;
use proptest::prelude::*;
use std::fmt::Write;

/// One run and what stands in it, in fractions of what there is room for.
#[derive(Clone, Debug)]
struct Run {
    length: f64,
    depth: f64,
    left_turn: bool,
    passes_later: bool,
    bulkhead: Option<f64>,
    appliances: Vec<Appliance>,
    openings: Vec<Opening>,
}

/// An appliance in its slot of the run.
#[derive(Clone, Debug)]
struct Appliance {
    shift: f64,
    width: f64,
    depth: f64,
    height: f64,
    radius: f64,
    open: bool,
}

/// An opening in its slot of a face.
#[derive(Clone, Debug)]
struct Opening {
    shift: f64,
    width: f64,
    height: f64,
    sill: f64,
    kind: &'static str,
    side: &'static str,
}

/// The trade choices, levels and counter.
#[derive(Clone, Debug)]
struct Rest {
    section: usize,
    spacing: f64,
    board: usize,
    wall: Option<&'static str>,
    height: f64,
    gap: f64,
    slab: f64,
    overhangs: [f64; 4],
    turndown: (f64, f64),
    turndown_sides: Vec<&'static str>,
    edge: usize,
    corners: usize,
    corner: f64,
    tiles: bool,
    site: Site,
}

/// Stud, track, and about how thick a panel of them is.
const SECTIONS: [(&str, &str, f64); 4] = [
    ("362S125-33", "362T125-33", 96.0),
    ("250S125-18", "250T125-18", 67.0),
    ("362S162-43", "362T125-43", 97.0),
    ("600S162-54", "600T150-54", 158.0),
];
/// Two flanges and something: the strip that a header or sill needs.
const STRIP: f64 = 80.0;
const BOARDS: [(f64, f64, f64); 3] = [
    (1524.0, 914.4, 12.7),
    (2438.4, 1219.2, 12.7),
    (1200.0, 900.0, 10.0),
];
const KINDS: [&str; 6] = [
    "door",
    "drawer",
    "hatch",
    "undercounter",
    "vent",
    "receptacle",
];
const SIDES: [&str; 4] = ["working", "seating", "left", "right"];
/// Most openings are on the working side.
const OPENING_SIDES: [&str; 6] = ["working", "working", "working", "seating", "left", "right"];

fn appliance() -> impl Strategy<Value = Appliance> {
    (
        -0.3..0.3,
        0.2..0.9,
        0.3..1.05,
        0.1..0.5,
        0.0..0.3,
        prop::bool::weighted(0.3),
    )
        .prop_map(|(shift, width, depth, height, radius, open)| Appliance {
            shift,
            width,
            depth,
            height,
            radius,
            open,
        })
}

fn opening() -> impl Strategy<Value = Opening> {
    (
        -0.3..0.3,
        0.1..1.0,
        0.2..1.05,
        -0.1..0.6,
        prop::sample::select(&KINDS[..]),
        prop::sample::select(&OPENING_SIDES[..]),
    )
        .prop_map(|(shift, width, height, sill, kind, side)| Opening {
            shift,
            width,
            height,
            sill,
            kind,
            side,
        })
}

fn run() -> impl Strategy<Value = Run> {
    (
        500.0..3500.0,
        550.0..1100.0,
        any::<bool>(),
        any::<bool>(),
        prop::option::weighted(0.15, 0.2..0.8),
        vec(appliance(), 0..3),
        vec(opening(), 0..4),
    )
        .prop_map(
            |(length, depth, left_turn, passes_later, bulkhead, appliances, openings)| Run {
                length,
                depth,
                left_turn,
                passes_later,
                bulkhead,
                appliances,
                openings,
            },
        )
}

/// Mostly all round, sometimes none or any.
fn turndown_sides() -> impl Strategy<Value = Vec<&'static str>> {
    prop_oneof![
        4 => Just(SIDES.to_vec()),
        1 => Just(Vec::new()),
        1 => prop::sample::subsequence(SIDES.to_vec(), 0..=4),
    ]
}

fn rest() -> impl Strategy<Value = Rest> {
    let trade = (
        0..SECTIONS.len(),
        300.0..620.0,
        0..BOARDS.len(),
        prop::option::weighted(0.2, prop::sample::select(&SIDES[1..])),
    );
    let levels = (820.0..1120.0, 10.0..90.0, 30.0..80.0);
    let counter = (
        [-1.0..40.0, -1.0..280.0, -1.0..40.0, -1.0..40.0],
        (0.0..60.0, 25.0..45.0),
        turndown_sides(),
        0_usize..5,
        0_usize..3,
        5.0..80.0,
        any::<bool>(),
    );
    (trade, levels, counter, site()).prop_map(|(t, l, c, site)| Rest {
        section: t.0,
        spacing: t.1,
        board: t.2,
        wall: t.3,
        height: l.0,
        gap: l.1,
        slab: l.2,
        overhangs: c.0,
        turndown: c.1,
        turndown_sides: c.2,
        edge: c.3,
        corners: c.4,
        corner: c.5,
        tiles: c.6,
        site,
    })
}

/// A parameter file; one in a few is of a kind that cannot be built.
pub fn file() -> impl Strategy<Value = String> {
    (vec(run(), 1..4), rest()).prop_map(|(runs, rest)| spell(&runs, &rest))
}

/// A length to the tenth of a millimetre, as a builder would hardly write it.
fn mm(value: f64) -> String {
    format!("{value:.1} mm")
}

fn spell(runs: &[Run], rest: &Rest) -> String {
    let mut text = String::from("project:\n  title: Drawn at random\n  units: metric\n");
    let first = runs[0].length + corners(runs, 0).1;
    spell_rest(&mut text, rest, first).expect("text can be written");
    spell_runs(&mut text, runs, rest).expect("text can be written");
    spell_appliances(&mut text, runs, rest).expect("text can be written");
    spell_openings(&mut text, runs, rest).expect("text can be written");
    rest.site.spell(&mut text).expect("text can be written");
    text
}

fn spell_rest(text: &mut String, rest: &Rest, first: f64) -> std::fmt::Result {
    let (stud, track, _) = SECTIONS[rest.section];
    let (length, width, thickness) = BOARDS[rest.board];
    writeln!(
        text,
        "trade:\n  stud: {stud}\n  track: {track}\n  stud_spacing: {}",
        mm(rest.spacing)
    )?;
    writeln!(
        text,
        "  board: {{ length: {}, width: {}, thickness: {} }}",
        mm(length),
        mm(width),
        mm(thickness)
    )?;
    writeln!(
        text,
        "  sleeper: {{ width: 90 mm, height: {} }}",
        mm(rest.gap.min(40.0))
    )?;
    writeln!(
        text,
        "levels:\n  counter: {}\n  base_gap: {}",
        mm(rest.height),
        mm(rest.gap)
    )?;
    let (drop, mut rim) = rest.turndown;
    if rest.edge == 2 && !rest.turndown_sides.is_empty() {
        rim = rim.max(f64::midpoint(rest.slab, drop) + 2.0);
    }
    // Mostly wide enough for the turndown to hang in front of the cladding.
    let o = rest.overhangs.map(|o| mm((o + rim).max(0.0)));
    writeln!(text, "counter:\n  thickness: {}", mm(rest.slab))?;
    writeln!(
        text,
        "  overhang: {{ working: {}, seating: {}, left: {}, right: {} }}",
        o[0], o[1], o[2], o[3]
    )?;
    writeln!(
        text,
        "  turndown: {{ depth: {}, width: {}, sides: [{}] }}",
        mm(drop),
        mm(rim),
        rest.turndown_sides.join(", ")
    )?;
    let size = mm(rest.corner.min(15.0));
    match rest.edge {
        0 => writeln!(text, "  edge: {{ square: {{ eased: 3 mm }} }}")?,
        1 => writeln!(text, "  edge: {{ chamfer: {{ size: {size} }} }}")?,
        2 => writeln!(text, "  edge: half-round")?,
        3 => writeln!(text, "  edge: {{ quarter-round: {{ radius: {size} }} }}")?,
        _ => writeln!(text, "  edge: {{ cove: {{ radius: {size} }} }}")?,
    }
    match rest.corners {
        0 => writeln!(text, "  corners: sharp")?,
        1 => writeln!(
            text,
            "  corners: {{ chamfered: {{ size: {} }} }}",
            mm(rest.corner)
        )?,
        _ => writeln!(
            text,
            "  corners: {{ rounded: {{ radius: {} }} }}",
            mm(rest.corner)
        )?,
    }
    rest.site.spell_casting(text, first)?;
    if rest.tiles {
        writeln!(text, "tile_band: {{ height: 100 mm }}")?;
    }
    Ok(())
}

fn spell_runs(text: &mut String, runs: &[Run], rest: &Rest) -> std::fmt::Result {
    writeln!(text, "runs:")?;
    for (i, run) in runs.iter().enumerate() {
        let (start, end) = corners(runs, i);
        let length = run.length + start + end;
        writeln!(
            text,
            "  - name: run {i}\n    length: {}\n    depth: {}",
            mm(length),
            mm(run.depth)
        )?;
        if i > 0 {
            let turn = if run.left_turn { "left" } else { "right" };
            let passes = if run.passes_later { "later" } else { "earlier" };
            writeln!(text, "    turn: {turn}\n    passes: {passes}")?;
        }
        if let Some(share) = run.bulkhead {
            writeln!(text, "    bulkheads: [{}]", mm(start + run.length * share))?;
        }
        let ends = [("left", 0), ("right", runs.len() - 1)];
        let stands = |side: &&str| ends.iter().all(|e| e.0 != *side || e.1 == i);
        if let Some(side) = rest.wall.filter(stands) {
            writeln!(text, "    walls: [{side}]")?;
        }
    }
    Ok(())
}

/// How much of a run the corner squares at its ends take.
fn corners(runs: &[Run], i: usize) -> (f64, f64) {
    let depth = |k: Option<usize>| k.and_then(|k| runs.get(k)).map_or(0.0, |r| r.depth);
    (depth(i.checked_sub(1)), depth(Some(i + 1)))
}

/// The middle and the width of the slot with a number, in a stretch cut into equal slots.
fn slot((from, to): (f64, f64), count: usize, number: usize, shift: f64) -> (f64, f64) {
    let width = (to - from).max(50.0) / count as f64;
    (
        from + width * (number as f64 + 0.5 + shift * 0.15),
        width * 0.85,
    )
}

fn spell_appliances(text: &mut String, runs: &[Run], rest: &Rest) -> std::fmt::Result {
    if runs.iter().all(|r| r.appliances.is_empty()) {
        return Ok(());
    }
    let panel = SECTIONS[rest.section].2;
    writeln!(text, "appliances:")?;
    for (i, run) in runs.iter().enumerate() {
        let (start, _) = corners(runs, i);
        let clear = (start + panel, start + run.length - panel);
        for (k, a) in run.appliances.iter().enumerate() {
            let (middle, room) = slot(clear, run.appliances.len(), k, a.shift);
            let depth = ((run.depth - 2.0 * panel) * a.depth).max(60.0);
            let width = ((room - 100.0) * a.width).max(60.0);
            let height = (rest.height - rest.gap) * a.height + rest.slab;
            writeln!(text, "  - name: appliance {i}{k}\n    run: run {i}")?;
            writeln!(text, "    at: {{ from: left, distance: {} }}", mm(middle))?;
            writeln!(
                text,
                "    cutout: {{ width: {}, depth: {}, corner_radius: {} }}",
                mm(width),
                mm(if a.open { depth + panel } else { depth }),
                mm(depth.min(width) * a.radius)
            )?;
            writeln!(text, "    body: {{ height: {} }}", mm(height))?;
            rest.site.spell_clearance(text)?;
            if a.open {
                let panel_height = mm(height + 20.0);
                writeln!(
                    text,
                    "    front: {{ open: {{ panel_height: {panel_height} }} }}"
                )?;
            } else {
                let setback = mm((run.depth - depth) * 0.5);
                writeln!(text, "    front: {{ closed: {{ setback: {setback} }} }}")?;
            }
        }
    }
    Ok(())
}

/// The stretch of a side that openings may stand in, measured as the file measures it.
fn stretch(runs: &[Run], i: usize, side: &str, panel: f64) -> (f64, f64) {
    let (start, _) = corners(runs, i);
    if matches!(side, "left" | "right") {
        return (panel + 70.0, runs[i].depth - panel - 70.0);
    }
    (start + 2.0 * panel, start + runs[i].length - 2.0 * panel)
}

/// An end of the island is free only where no run joins.
fn side_of(runs: usize, i: usize, side: &'static str) -> &'static str {
    match side {
        "left" if i > 0 => "working",
        "right" if i + 1 < runs => "seating",
        _ => side,
    }
}

fn spell_openings(text: &mut String, runs: &[Run], rest: &Rest) -> std::fmt::Result {
    if runs.iter().all(|r| r.openings.is_empty()) {
        return Ok(());
    }
    writeln!(text, "openings:")?;
    for (i, run) in runs.iter().enumerate() {
        for (k, o) in run.openings.iter().enumerate() {
            spell_opening(text, runs, rest, (i, k), o)?;
        }
    }
    Ok(())
}

fn spell_opening(
    text: &mut String,
    runs: &[Run],
    rest: &Rest,
    (i, k): (usize, usize),
    o: &Opening,
) -> std::fmt::Result {
    let panel = SECTIONS[rest.section].2;
    let side = side_of(runs.len(), i, o.side);
    let count = runs[i].openings.len();
    let (middle, room) = slot(stretch(runs, i, side, panel), count, k, o.shift);
    let from = if matches!(side, "left" | "right") {
        "working"
    } else {
        "left"
    };
    // Below the tallest appliance as often as not.
    let clear = rest.height - rest.gap - rest.slab - 12.0 - 2.0 * STRIP;
    let sill = if o.sill < 0.0 {
        rest.gap
    } else {
        rest.gap + STRIP + clear * o.sill
    };
    let (width, height) = if matches!(o.kind, "vent" | "receptacle") {
        (110.0, 110.0)
    } else {
        let above = rest.gap + STRIP + clear - sill;
        (
            ((room - 100.0) * o.width).max(100.0),
            (above * o.height).max(100.0),
        )
    };
    let kind = o.kind;
    writeln!(
        text,
        "  - name: opening {i}{k}\n    kind: {kind}\n    run: run {i}\n    side: {side}"
    )?;
    writeln!(
        text,
        "    at: {{ from: {from}, distance: {} }}",
        mm(middle.max(1.0))
    )?;
    writeln!(
        text,
        "    width: {}\n    height: {}\n    sill: {}",
        mm(width),
        mm(height),
        mm(sill)
    )?;
    if matches!(kind, "drawer" | "undercounter") {
        writeln!(text, "    body_depth: {}", mm(runs[i].depth * 0.4))?;
    }
    Ok(())
}
