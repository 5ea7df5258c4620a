//! What the counter is, in words: slab, edge, overhangs, steel, the pour.

use crate::catalog::density::CONCRETE_FRESH;
use crate::design::{EdgeProfile, PlanCorner, Side};
use crate::drawing::page::Page;
use crate::drawing::plans::key::Entry;
use crate::drawing::plans::style::{BAR, CUT, EDGE, FINE, HIDDEN, JOINT, LIMIT};
use crate::geometry::{Bounds2, Point2, Solid};
use crate::plan::Plan;
use crate::units::{Length, Notation, Unit, Volume};

/// The notes under the heading.
pub(super) fn notes(plan: &Plan) -> Vec<String> {
    let counter = &plan.design.counter;
    let spell = |length: Length| plan.design.project.units.spell_with_unit(length);
    let turndown = counter
        .turndown
        .as_ref()
        .map_or("no turndown".to_owned(), |t| {
            format!(
                "turndown edge {} below the slab, {} wide",
                spell(t.depth.value),
                spell(t.width.value)
            )
        });
    let drip = counter.casting.drip.as_ref().is_some_and(|d| d.value);
    let groove = if drip {
        ", with a drip groove on its underside"
    } else {
        ""
    };
    let faces = |side: Side| plan.faces.iter().filter(move |f| f.side == side);
    let overhangs: Vec<_> = Side::ALL
        .iter()
        .filter(|side| faces(**side).any(|f| !f.wall))
        .map(|side| {
            let overhang = spell(counter.overhang.of(*side).value);
            format!("{} {overhang}", side.name())
        })
        .collect();
    let mut notes = vec![
        format!(
            "Slab {} on {} of {}; {turndown}{groove}; edge {}; {}.",
            spell(counter.thickness.value),
            spell(plan.design.trade.substrate_thickness.value),
            plan.design.trade.substrate,
            profile(plan),
            corners(plan),
        ),
        format!(
            "Overhang past the finished face: {}{}. Check every cutout against the maker's sheet.",
            overhangs.join(", "),
            if plan.faces.iter().any(|f| f.wall) {
                "; none at walls"
            } else {
                ""
            },
        ),
    ];
    notes.extend(crate::drawing::followed::followed(plan));
    notes
}

fn profile(plan: &Plan) -> String {
    let spell = |length: Length| plan.design.project.units.spell_with_unit(length);
    match plan.design.counter.profile.value {
        EdgeProfile::Square { eased } if eased.mm() <= 0.0 => "square".to_owned(),
        EdgeProfile::Square { eased } => format!("square, arris eased {}", spell(eased)),
        EdgeProfile::Chamfer { size } => format!("chamfer {}", spell(size)),
        EdgeProfile::HalfRound => "half round".to_owned(),
        EdgeProfile::QuarterRound { radius } => format!("quarter round {}", spell(radius)),
        EdgeProfile::Cove { radius } => format!("cove {}", spell(radius)),
    }
}

fn corners(plan: &Plan) -> String {
    let spell = |length: Length| plan.design.project.units.spell_with_unit(length);
    match plan.design.counter.corners.value {
        PlanCorner::Sharp => "outward corners sharp".to_owned(),
        PlanCorner::Chamfered(size) => format!("outward corners cut off {}", spell(size)),
        PlanCorner::Rounded(radius) => format!("outward corners radius {}", spell(radius)),
    }
}

/// The key, and below it the pour.
pub(super) fn entries(plan: &Plan) -> Vec<Entry> {
    let casting = &plan.design.counter.casting;
    let mut entries = vec![Entry::line(
        EDGE,
        "edge of the counter; E1 … by the edge schedule, here or among the schedules",
    )];
    if !plan.cutouts.is_empty() {
        entries.push(Entry::line(CUT, "cutout"));
        entries.push(Entry::line(LIMIT, "flange of an appliance"));
    }
    if !plan.counter.turndown.is_empty() {
        let text = "inner line of the turndown, edge of the substrate";
        entries.push(Entry::line(HIDDEN, text));
    }
    if !casting.joints.is_empty() {
        let text =
            "crack-control joint, sawn or formed a quarter of the thickness deep (common practice)";
        entries.push(Entry::line(JOINT, text));
    }
    entries.extend(mesh(plan));
    if !super::reinforcement::bars(plan).is_empty() {
        let long = Length::millimetres(super::reinforcement::BAR_LENGTH);
        let text = format!(
            "bars across an inward corner at 45°, {} long; number, length and place by common practice",
            plan.design.project.units.spell_with_unit(long)
        );
        entries.push(Entry::line(BAR, text));
    }
    entries.extend(bracket(plan));
    entries.extend(across(plan));
    entries.extend(pour(plan));
    entries
}

fn mesh(plan: &Plan) -> Option<Entry> {
    let reinforcement = &plan.design.counter.casting.reinforcement;
    let spell = |length: Length| plan.design.project.units.spell_with_unit(length);
    let wire = spell(reinforcement.mesh.as_ref()?.value);
    let spacing = reinforcement.mesh_spacing.as_ref();
    let spacing = spacing.map(|s| format!(", {} apart both ways", spell(s.value)));
    let cover = reinforcement.cover.as_ref();
    let cover = cover.map(|c| format!(", {} of concrete above it", spell(c.value)));
    let text = format!(
        "mesh in the whole slab, a patch is drawn: wires {wire}{}{}",
        spacing.unwrap_or_default(),
        cover.unwrap_or_default()
    );
    Some(Entry::symbol(mesh_symbol, text))
}

fn mesh_symbol(page: &mut Page, area: &Bounds2) {
    let middle = area.centre();
    for k in [-1.5, 0.0, 1.5] {
        let level = [-4.0, 4.0].map(|x| Point2::new(middle.x + x, middle.y + k));
        FINE.line(page, level[0], level[1]);
        let upright = [-2.4, 2.4].map(|y| Point2::new(middle.x + k, middle.y + y));
        FINE.line(page, upright[0], upright[1]);
    }
}

fn bracket(plan: &Plan) -> Option<Entry> {
    let brackets = plan.design.counter.casting.brackets.as_ref()?;
    let spell = |length: Length| plan.design.project.units.spell_with_unit(length);
    let text = format!(
        "bracket under the overhang, at most {} apart, {} out from the finished face",
        spell(brackets.spacing.value),
        spell(brackets.reach.value)
    );
    Some(Entry::symbol(bracket_symbol, text))
}

fn bracket_symbol(page: &mut Page, area: &Bounds2) {
    let half = nalgebra::Vector2::new(4.0, 0.9);
    let middle = area.centre();
    HIDDEN.boxed(
        page,
        &Bounds2 {
            low: middle - half,
            high: middle + half,
        },
    );
}

/// Bars across the overhang, in words.
fn across(plan: &Plan) -> Option<Entry> {
    let reinforcement = &plan.design.counter.casting.reinforcement;
    let spell = |length: Length| plan.design.project.units.spell_with_unit(length);
    let bars = spell(reinforcement.bars.as_ref()?.value);
    let spacing = reinforcement.bar_spacing.as_ref();
    let spacing = spacing.map(|s| format!(", {} apart", spell(s.value)));
    let text = format!(
        "bars {bars} across the overhang{}",
        spacing.unwrap_or_default()
    );
    Some(Entry::words(text))
}

/// How much concrete, how strong, how heavy: by the exact solid.
fn pour(plan: &Plan) -> Option<Entry> {
    let notation = plan.design.project.units;
    let volume = Solid::Slab(plan.counter.slab.clone()).volume();
    if !volume.is_finite() || volume <= 0.0 {
        return None;
    }
    let volume = Volume::cubic_millimetres(volume);
    let mass = CONCRETE_FRESH.of(volume);
    let casting = &plan.design.counter.casting;
    let mut words = vec![format!("pour: {}", spell_volume(volume, notation))];
    words.extend(casting.strength.as_ref().map(|s| {
        let air = casting.air_entrained.as_ref().is_some_and(|a| a.value);
        let air = if air { ", air-entrained" } else { "" };
        format!("{}{air}", Unit::Stress.spell(s.mpa(), notation))
    }));
    words.push(format!(
        "{} wet at {}",
        Unit::Mass.spell(mass.kg(), notation),
        CONCRETE_FRESH.spell(notation)
    ));
    let text = format!("{}; without waste", words.join("; "));
    Some(Entry::words(text))
}

fn spell_volume(volume: Volume, notation: Notation) -> String {
    match notation {
        Notation::Imperial => format!(
            "{:.1} cu ft ({:.2} cu yd)",
            volume.in_cubic_feet(),
            volume.in_cubic_feet() / 27.0
        ),
        Notation::Metric => format!("{:.3} m³", volume.mm3() * 1e-9),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample;

    #[test]
    fn the_pour_is_that_on_paper() {
        // 3000 × 900, finished 22 outside it, overhangs 40 all round but 250 at the seats: 3124 × 1234 × 50 mm
        // = 0.1927 m³, at 150 pcf = 2402.8 kg/m³ some 463 kg.
        let design = sample::design(vec![sample::run("cook", 3000.0, None, &[])]);
        let plan = crate::plan::lay_out(design).unwrap();
        let words = pour(&plan).unwrap().words;
        assert!(words.contains("pour: 0.193 m³"), "{words}");
        assert!(words.contains("463 kg wet"), "{words}");
    }
}
