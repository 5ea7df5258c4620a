//! Where gas and electricity reach the island: the shut-off valve, receptacles, and what the pipes are.

use crate::design::OpeningKind;
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::plans::key::Entry;
use crate::drawing::plans::style::{SYMBOL, sharp};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::{Face, FaceOpening, Plan};
use crate::units::Unit;

/// Half of a symbol across and up, millimetres on the sheet.
const HALF: Vector2 = Vector2::new(2.6, 1.6);

/// Draws the symbols; says how many of each kind there are: valves, receptacles.
pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit) -> [usize; 2] {
    let valves: Vec<_> = valve(plan).into_iter().collect();
    let boxes = receptacles(plan);
    for at in &valves {
        valve_symbol(page, &about(fit.point(*at)));
    }
    for at in &boxes {
        receptacle_symbol(page, &about(fit.point(*at)));
    }
    [valves.len(), boxes.len()]
}

/// How a sign is drawn into its box, and what it stands for.
pub type Sign = (fn(&mut Page, &Bounds2), &'static str);

/// The signs that are drawn.
pub fn service_signs(plan: &Plan) -> Vec<Sign> {
    let mut signs: Vec<Sign> = Vec::new();
    if valve(plan).is_some() {
        signs.push((valve_symbol, "gas shut-off valve, behind its hatch"));
    }
    if !receptacles(plan).is_empty() {
        signs.push((receptacle_symbol, "receptacle"));
    }
    signs
}

/// What the key says of them.
pub(super) fn entries(plan: &Plan) -> Vec<Entry> {
    let signs = service_signs(plan).into_iter();
    let mut entries: Vec<Entry> = signs
        .map(|(sample, words)| Entry::symbol(sample, words))
        .collect();
    let notation = plan.design.project.units;
    let pipes = plan.design.gas.iter().flat_map(|g| &g.pipes);
    let words: Vec<_> = pipes
        .map(|pipe| {
            format!(
                "{} {}, {}",
                pipe.name,
                notation.spell_with_unit(*pipe.size),
                notation.spell_with_unit(*pipe.length)
            )
        })
        .collect();
    if !words.is_empty() {
        let text = format!("gas pipe, nominal size and length: {}", words.join("; "));
        entries.push(Entry::words(text));
    }
    entries
}

/// What an appliance burns and how much, in words; nothing where it burns nothing or the file does not say.
pub(super) fn heat(plan: &Plan, appliance: usize) -> Vec<String> {
    let notation = plan.design.project.units;
    let Some(appliance) = plan.design.appliances.get(appliance) else {
        return Vec::new();
    };
    let rating = &appliance.rating;
    let Some(fuel) = rating.fuel.as_ref().filter(|f| f.burns()) else {
        return Vec::new();
    };
    let heat = rating.heat_input.as_ref();
    let heat = heat.map(|h| Unit::Heat.spell(h.w(), notation));
    std::iter::once(fuel.name().to_owned())
        .chain(heat)
        .collect()
}

/// The shut-off valve, in the world: as deep behind the face of its hatch as the file says.
fn valve(plan: &Plan) -> Option<Point2> {
    let gas = plan.design.gas.as_ref()?;
    let name = gas.shut_off.as_ref()?;
    let depth = gas.shut_off_depth.as_ref().map_or(0.0, |d| d.mm());
    let mut all = holes(plan);
    let (face, hole) = all.find(|(_, hole)| hole.name == name.value)?;
    Some(face.point(f64::midpoint(hole.s0, hole.s1), -depth))
}

fn receptacles(plan: &Plan) -> Vec<Point2> {
    holes(plan)
        .filter(|(_, hole)| hole.kind == Some(OpeningKind::Receptacle))
        .map(|(face, hole)| face.point(f64::midpoint(hole.s0, hole.s1), -60.0))
        .collect()
}

fn holes(plan: &Plan) -> impl Iterator<Item = (&Face, &FaceOpening)> {
    let faces = plan.faces.iter();
    faces.flat_map(|face| face.openings.iter().map(move |hole| (face, hole)))
}

fn about(middle: Point2) -> Bounds2 {
    Bounds2 {
        low: middle - HALF,
        high: middle + HALF,
    }
}

/// A valve: two triangles point to point.
fn valve_symbol(page: &mut Page, area: &Bounds2) {
    let at = |x: f64, y: f64| area.centre() + HALF.component_mul(&Vector2::new(x, y));
    let points = [at(-1.0, -1.0), at(-1.0, 1.0), at(1.0, -1.0), at(1.0, 1.0)];
    SYMBOL.closed(page, sharp(&points));
}

/// A receptacle: a circle with two bars.
fn receptacle_symbol(page: &mut Page, area: &Bounds2) {
    let middle = area.centre();
    SYMBOL.circle(page, middle, HALF.y);
    for x in [-0.5, 0.5] {
        let half = Vector2::new(0.0, 2.2);
        let foot = middle + Vector2::new(x, 0.0);
        SYMBOL.line(page, foot - half, foot + half);
    }
}
