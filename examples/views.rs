//! Prints every view that the drawing set of a parameter file is drawn from, as JSON: from where, which parts, and the lines
//! drawn. The outside readers run it.
//!
//! `cargo run --example views params/garden-corner.yaml`
//!
//! For each view: `motion` (three rows of four, from the world to x across, y up, z towards the eye, millimetres),
//! `one_line` (lines nearer to each other than this are drawn
//! as one), `parts` (marks, each with how far it is moved in the world), `screens` (triangles in the view that are no parts),
//! `wires` (lines in the view, two points each, that hide nothing), `visible` and `hidden` (pieces of edges, two points each, in the view).

use islandwright::drawing::hidden::{Line, Stroke, View, behind, merge};
use islandwright::drawing::{Look, looks};
use islandwright::parts::Assembly;
use islandwright::{design, parts, plan};
use serde_json::{Value, json};

/// Lines nearer to each other on the sheet are drawn as one there, millimetres; so they are here.
const ONE_LINE: f64 = 0.12;

fn motion(view: &View) -> Value {
    let matrix = view.motion().to_homogeneous();
    let row = |i: usize| {
        json!([
            matrix[(i, 0)],
            matrix[(i, 1)],
            matrix[(i, 2)],
            matrix[(i, 3)]
        ])
    };
    (0..3).map(row).collect()
}

fn strokes(lines: &[Line], seen: bool) -> Vec<Stroke> {
    let lines = lines.iter().filter(|l| l.seen == seen);
    let stroke = |l: &Line| Stroke {
        from: l.from,
        to: l.to,
        weight: 0,
    };
    lines.map(stroke).collect()
}

fn pieces(strokes: &[Stroke]) -> Value {
    let ends = strokes.iter();
    ends.map(|s| json!([s.from.x, s.from.y, s.to.x, s.to.y]))
        .collect()
}

fn described(name: &str, factor: f64, look: &Look, assembly: &Assembly) -> Value {
    // A sheet that is not to scale does not say at which factor its view is drawn: nothing but doubles is merged.
    let near = if factor < 1.0 {
        ONE_LINE / factor
    } else {
        0.01
    };
    let visible = merge(&strokes(&look.lines, true), near);
    let hidden = behind(&strokes(&look.lines, false), &visible, near, 0.0);
    let parts = look.parts.iter().map(|(i, shift)| {
        json!({ "mark": assembly.parts[*i].mark, "shift": [shift.x, shift.y, shift.z] })
    });
    let wires = look
        .screens
        .iter()
        .flat_map(islandwright::drawing::hidden::Shape::bare_edges);
    let wires = wires.map(|w| w.map(|p| [p.x, p.y, p.z]));
    let screens = look
        .screens
        .iter()
        .flat_map(islandwright::drawing::hidden::Shape::triangles);
    let screens = screens.map(|t| t.map(|p| [p.x, p.y, p.z]));
    json!({
        "sheet": name,
        "one_line": near,
        "motion": motion(&look.view),
        "parts": parts.collect::<Value>(),
        "screens": screens.map(|t| json!(t)).collect::<Value>(),
        "wires": wires.map(|w| json!(w)).collect::<Value>(),
        "visible": pieces(&visible),
        "hidden": pieces(&hidden),
    })
}

fn main() -> Result<(), String> {
    let path = std::env::args().nth(1).ok_or("name a parameter file")?;
    let text = std::fs::read_to_string(&path).map_err(|e| format!("{path}: {e}"))?;
    let plan = design::from_text(&text)
        .and_then(plan::lay_out)
        .map_err(|f| format!("{f:?}"))?;
    let assembly = parts::build(&plan);
    let views = looks(&plan, &assembly)
        .into_iter()
        .flat_map(|(name, scale, looks)| {
            let looks = looks.iter();
            let views = looks.map(|look| described(&name, scale.factor, look, &assembly));
            views.collect::<Vec<_>>()
        });
    println!("{}", views.collect::<Value>());
    Ok(())
}
