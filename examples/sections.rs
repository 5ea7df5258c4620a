//! Prints steel sections as JSON: their dimensions and their cross-section. The outside readers run it.
//!
//! `cargo run --example sections 362S125-33 362T125-33`

use islandwright::catalog::SteelSection;
use serde_json::{Value, json};

fn describe(designator: &str) -> Result<Value, String> {
    let section = SteelSection::from_designator(designator)?;
    let profile = section.profile();
    let vertices: Vec<_> = profile
        .outer
        .vertices()
        .iter()
        .map(|v| json!([v.at.x, v.at.y, v.bulge]))
        .collect();
    Ok(json!({
        "designator": section.designator,
        "depth": section.depth.mm(),
        "flange": section.flange.mm(),
        "lip": section.lip.mm(),
        "thickness": section.thickness.mm(),
        "radius": section.radius.mm(),
        "area": profile.area(),
        "vertices": vertices,
    }))
}

fn main() -> Result<(), String> {
    let sections: Result<Vec<Value>, String> =
        std::env::args().skip(1).map(|d| describe(&d)).collect();
    println!("{}", Value::Array(sections?));
    Ok(())
}
