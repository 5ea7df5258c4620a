//! Prints the sheet lists of a parameter file as JSON, lengths in millimetres. The outside readers run it.
//!
//! `cargo run --example sheets params/garden-corner.yaml`

use islandwright::geometry::{Outline, Region};
use islandwright::takeoff::sheets::{Laying, SheetLayout, SheetList, sheet_lists};
use islandwright::{design, parts, plan};
use serde_json::{Value, json};

/// Chords stay this close to curves, millimetres.
const CHORDS: f64 = 0.005;

fn ring(outline: &Outline) -> Value {
    let points = outline.flatten(CHORDS);
    points.iter().map(|p| json!([p.x, p.y])).collect()
}

fn region(region: &Region) -> Value {
    json!({
        "outer": ring(&region.outer),
        "holes": region.holes.iter().map(ring).collect::<Value>(),
    })
}

fn layout(list: &SheetList, layout: &SheetLayout, step: f64) -> Value {
    let mm = |steps: u32| f64::from(steps) * step;
    let rectangle = |at: (u32, u32), size: (u32, u32)| {
        json!([
            mm(at.0),
            mm(at.1),
            mm(at.0) + mm(size.0),
            mm(at.1) + mm(size.1)
        ])
    };
    let stock = list.stock[layout.stock].steps;
    json!({
        "length": mm(stock.0),
        "width": mm(stock.1),
        "pieces": layout.pieces.iter().map(|p| json!({
            "name": list.pieces[p.piece].name(),
            "turned": p.turned,
            "at": rectangle(p.at, p.size),
        })).collect::<Value>(),
        "offcuts": layout.offcuts.iter().map(|o| rectangle(o.at, o.size)).collect::<Value>(),
        "cuts": layout.cuts.iter().map(|c| json!([mm(c.0), mm(c.1), mm(c.2), mm(c.3)])).collect::<Value>(),
    })
}

fn described(list: &SheetList, step: f64) -> Value {
    let mm = |steps: u32| f64::from(steps) * step;
    json!({
        "need": list.need.to_string(),
        "material": list.material,
        "kerf": mm(list.kerf),
        "cost": list.cost,
        "bound": list.bound,
        "waste": list.waste(),
        "pieces": list.pieces.iter().map(|p| json!({
            "name": p.name(),
            "mark": p.mark,
            "kind": p.what(),
            "length": mm(p.length),
            "width": mm(p.width),
            "may_turn": p.may_turn,
            "note": p.note,
            "region": p.region.as_ref().map(region),
        })).collect::<Value>(),
        "too_large": list.too_large.iter().map(|p| list.pieces[*p].name()).collect::<Value>(),
        "layouts": list.layouts.iter().map(|l| layout(list, l, step)).collect::<Value>(),
    })
}

fn main() -> Result<(), String> {
    let path = std::env::args().nth(1).ok_or("name a parameter file")?;
    let text = std::fs::read_to_string(&path).map_err(|e| format!("{path}: {e}"))?;
    let plan = design::from_text(&text)
        .and_then(plan::lay_out)
        .map_err(|f| format!("{f:?}"))?;
    let assembly = parts::build(&plan);
    let mut findings = Vec::new();
    let laying = Laying::of(&plan, &assembly);
    let lists = sheet_lists(&plan, &assembly, &laying, &mut findings);
    let step = plan.design.project.units.step().mm();
    println!(
        "{}",
        json!({
            "substrate": region(&plan.counter.substrate),
            "slab": region(&Region::solid(plan.counter.outline.clone())),
            "slab_thickness": plan.counter.slab.thickness,
            "lists": lists.iter().map(|l| described(l, step)).collect::<Value>(),
            "findings": findings.iter().map(|f| f.found.clone()).collect::<Vec<_>>(),
        })
    );
    Ok(())
}
