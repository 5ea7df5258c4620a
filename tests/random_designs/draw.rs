//! Parameter files drawn at random: mostly buildable, some not.

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
}

const SECTIONS: [(&str, &str); 4] = [
    ("362S125-33", "362T125-33"),
    ("250S125-18", "250T125-18"),
    ("362S162-43", "362T125-43"),
    ("600S162-54", "600T150-54"),
];
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

fn appliance() -> impl Strategy<Value = Appliance> {
    (
        -0.3..0.3,
        0.2..0.8,
        0.3..0.8,
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
        0.1..0.8,
        0.2..0.7,
        0.0..0.5,
        prop::sample::select(&KINDS[..]),
        prop::sample::select(&SIDES[..]),
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
        1000.0..4500.0,
        500.0..1100.0,
        any::<bool>(),
        any::<bool>(),
        prop::option::weighted(0.2, 0.2..0.8),
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

fn rest() -> impl Strategy<Value = Rest> {
    let trade = (
        0..SECTIONS.len(),
        300.0..620.0,
        0..BOARDS.len(),
        prop::option::weighted(0.3, prop::sample::select(&SIDES[..])),
    );
    let levels = (820.0..1120.0, 0.0..90.0, 30.0..80.0);
    let counter = (
        [0.0..60.0, 0.0..310.0, 0.0..60.0, 0.0..60.0],
        (0.0..60.0, 25.0..60.0),
        prop::sample::subsequence(SIDES.to_vec(), 0..=4),
        0_usize..5,
        0_usize..3,
        5.0..80.0,
        any::<bool>(),
    );
    (trade, levels, counter).prop_map(|(t, l, c)| Rest {
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
    spell_rest(&mut text, rest).expect("text can be written");
    spell_runs(&mut text, runs, rest).expect("text can be written");
    spell_appliances(&mut text, runs, rest).expect("text can be written");
    spell_openings(&mut text, runs, rest).expect("text can be written");
    text
}

fn spell_rest(text: &mut String, rest: &Rest) -> std::fmt::Result {
    let (stud, track) = SECTIONS[rest.section];
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
    let o = rest.overhangs.map(mm);
    writeln!(text, "counter:\n  thickness: {}", mm(rest.slab))?;
    writeln!(
        text,
        "  overhang: {{ working: {}, seating: {}, left: {}, right: {} }}",
        o[0], o[1], o[2], o[3]
    )?;
    writeln!(
        text,
        "  turndown: {{ depth: {}, width: {}, sides: [{}] }}",
        mm(rest.turndown.0),
        mm(rest.turndown.1),
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
    if rest.tiles {
        writeln!(text, "tile_band: {{ height: 100 mm }}")?;
    }
    Ok(())
}

fn spell_runs(text: &mut String, runs: &[Run], rest: &Rest) -> std::fmt::Result {
    writeln!(text, "runs:")?;
    for (i, run) in runs.iter().enumerate() {
        writeln!(
            text,
            "  - name: run {i}\n    length: {}\n    depth: {}",
            mm(run.length),
            mm(run.depth)
        )?;
        if i > 0 {
            let turn = if run.left_turn { "left" } else { "right" };
            let passes = if run.passes_later { "later" } else { "earlier" };
            writeln!(text, "    turn: {turn}\n    passes: {passes}")?;
        }
        if let Some(share) = run.bulkhead {
            writeln!(text, "    bulkheads: [{}]", mm(run.length * share))?;
        }
        if let Some(side) = rest.wall {
            writeln!(text, "    walls: [{side}]")?;
        }
    }
    Ok(())
}

/// The middle and the width of the slot with a number, in a length cut into equal slots.
fn slot(length: f64, count: usize, number: usize, shift: f64) -> (f64, f64) {
    let width = length / count as f64;
    (width * (number as f64 + 0.5 + shift * 0.3), width)
}

fn spell_appliances(text: &mut String, runs: &[Run], rest: &Rest) -> std::fmt::Result {
    if runs.iter().all(|r| r.appliances.is_empty()) {
        return Ok(());
    }
    writeln!(text, "appliances:")?;
    for (i, run) in runs.iter().enumerate() {
        for (k, a) in run.appliances.iter().enumerate() {
            let (middle, room) = slot(run.length, run.appliances.len(), k, a.shift);
            let (width, depth) = (
                (room * a.width * 0.8).max(100.0),
                (run.depth - 250.0) * a.depth,
            );
            let height = (rest.height - rest.gap) * a.height + rest.slab;
            writeln!(text, "  - name: appliance {i}{k}\n    run: run {i}")?;
            writeln!(
                text,
                "    at: {{ from: left, distance: {} }}",
                mm(middle.max(1.0))
            )?;
            writeln!(
                text,
                "    cutout: {{ width: {}, depth: {}, corner_radius: {} }}",
                mm(width),
                mm(depth),
                mm(depth * a.radius)
            )?;
            writeln!(text, "    body: {{ height: {} }}", mm(height))?;
            if a.open {
                writeln!(
                    text,
                    "    front: {{ open: {{ panel_height: {} }} }}",
                    mm(height + 20.0)
                )?;
            } else {
                let setback = (run.depth - depth) * 0.5;
                writeln!(
                    text,
                    "    front: {{ closed: {{ setback: {} }} }}",
                    mm(setback)
                )?;
            }
        }
    }
    Ok(())
}

fn spell_openings(text: &mut String, runs: &[Run], rest: &Rest) -> std::fmt::Result {
    if runs.iter().all(|r| r.openings.is_empty()) {
        return Ok(());
    }
    writeln!(text, "openings:")?;
    for (i, run) in runs.iter().enumerate() {
        for (k, o) in run.openings.iter().enumerate() {
            let across = matches!(o.side, "left" | "right");
            let (length, from) = if across {
                (run.depth, "working")
            } else {
                (run.length, "left")
            };
            let (middle, room) = slot(length, run.openings.len(), k, o.shift);
            let small = matches!(o.kind, "vent" | "receptacle");
            let width = if small {
                110.0
            } else {
                (room * o.width * 0.8).max(60.0)
            };
            let clear = rest.height - rest.gap - rest.slab;
            let height = if small { 110.0 } else { clear * o.height };
            writeln!(
                text,
                "  - name: opening {i}{k}\n    kind: {}\n    run: run {i}\n    side: {}",
                o.kind, o.side
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
                mm(rest.gap + clear * o.sill)
            )?;
            if matches!(o.kind, "drawer" | "undercounter") {
                writeln!(text, "    body_depth: {}", mm(run.depth * 0.5))?;
            }
        }
    }
    Ok(())
}
