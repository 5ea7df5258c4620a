//! Prints what the mechanics of cold-formed steel make of sections, as JSON. The outside readers run it.
//!
//! `cargo run --example steel 362S125-33 3.5x1.25x0.5x0.0346`: designators, or depth × flange × lip × thickness in
//! inches with the usual bend. Everything printed is in newtons, millimetres and megapascals.

use islandwright::catalog::SteelSection;
use islandwright::rules::steel::{
    Grade, Punched, Unbraced, bent_section, compressed_area, distortional, global_stress, gross,
    plate_stress, stiffened_flange, web_gradient_k,
};
use islandwright::units::Length;
use serde_json::{Value, json};

fn section(text: &str) -> Result<SteelSection, String> {
    if !text.contains('x') {
        return SteelSection::from_designator(text);
    }
    let sizes: Result<Vec<f64>, _> = text.split('x').map(str::parse).collect();
    let sizes = sizes.map_err(|e| format!("{text}: {e}"))?;
    let [depth, flange, lip, thickness] = sizes[..] else {
        return Err(format!("{text}: four sizes are needed"));
    };
    let mut section = SteelSection::from_designator("362S125-33")?;
    text.clone_into(&mut section.designator);
    section.depth = Length::inches(depth);
    section.nominal_depth = Length::inches(depth);
    section.flange = Length::inches(flange);
    section.lip = Length::inches(lip);
    section.thickness = Length::inches(thickness);
    section.radius = Length::inches((3.0 / 32.0 - thickness / 2.0).max(1.5 * thickness));
    Ok(section)
}

/// The lowest stress at which one element of the section buckles, each for itself.
fn weakest_element(s: &SteelSection, stress: f64) -> f64 {
    let (t, bend) = (s.thickness.mm(), s.thickness.mm() + s.radius.mm());
    let web = plate_stress(web_gradient_k(-1.0), s.depth.mm() - 2.0 * bend, t);
    if s.lip.mm() <= 0.0 {
        return web.min(plate_stress(0.43, s.flange.mm() - bend, t));
    }
    let flat = s.flange.mm() - 2.0 * bend;
    let lip = s.lip.mm() - bend;
    let k = stiffened_flange(flat, t, s.lip.mm(), lip, stress).k;
    web.min(plate_stress(k, flat, t))
        .min(plate_stress(0.43, lip, t))
}

fn describe(designator: &str) -> Result<Value, String> {
    let s = section(designator)?;
    let g = gross(&s);
    let fy = Grade::STRUCTURAL_33.fy;
    let lengths = [36.0, 60.0, 96.0];
    let whole: Vec<f64> = lengths
        .iter()
        .map(|l| global_stress(&g, &Unbraced::all(l * 25.4)))
        .collect();
    let turning = distortional(&s, 1e6);
    let bent = bent_section(&s, Punched::No, fy);
    Ok(json!({
        "designator": s.designator,
        "depth": s.depth.mm(), "flange": s.flange.mm(), "lip": s.lip.mm(),
        "thickness": s.thickness.mm(), "radius": s.radius.mm(),
        "gross": {
            "area": g.area, "ix": g.ix, "iy": g.iy, "sx": g.sx, "centroid": g.centroid,
            "j": g.j, "cw": g.cw, "x0": g.x0, "rx": g.rx(), "ry": g.ry(), "r0": g.r0(),
        },
        "columns": {"lengths": lengths.map(|l| l * 25.4), "stresses": whole},
        "weakest_element": weakest_element(&s, fy),
        "distortional": turning.map(|d| json!({"stress": d.stress, "half_wave": d.half_wave})),
        "effective": {
            "area": compressed_area(&s, Punched::No, fy),
            "area_punched": compressed_area(&s, Punched::Yes, fy),
            "inertia": bent.inertia, "modulus": bent.modulus(),
        },
    }))
}

fn main() -> Result<(), String> {
    let all: Result<Vec<Value>, String> = std::env::args().skip(1).map(|d| describe(&d)).collect();
    println!("{}", Value::Array(all?));
    Ok(())
}
