//! What the design fills into the general notes, and for which islands a note holds.

use crate::design::{Design, Fuel, Ground, OpeningKind, PlanCorner, Surface};
use crate::plan::Plan;
use crate::units::{Length, Notation, Unit};
use std::collections::BTreeSet;

/// What stands where the file does not say.
const NOT_GIVEN: &str = "– (not in the file)";

/// A text with the names in braces filled in; a name that is not known stays as it is.
pub fn filled(plan: &Plan, text: &str) -> String {
    let mut pieces = text.split('{');
    let mut done = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        let known = piece
            .split_once('}')
            .and_then(|(name, rest)| Some((value(plan, name)?, rest)));
        if let Some((value, rest)) = known {
            done.push_str(&value);
            done.push_str(rest);
        } else {
            done.push('{');
            done.push_str(piece);
        }
    }
    done
}

/// What a name stands for; `None` for a name that there is not.
pub fn value(plan: &Plan, name: &str) -> Option<String> {
    let design = &plan.design;
    trade(design, name)
        .or_else(|| site(design, name))
        .or_else(|| counter(plan, name))
        .or_else(|| casting(design, name))
        .or_else(|| supply(design, name))
}

fn spell(design: &Design, length: Length) -> String {
    design.project.units.spell_with_unit(length)
}

fn given(value: Option<String>) -> String {
    value.unwrap_or_else(|| NOT_GIVEN.to_owned())
}

fn times(design: &Design, a: Length, b: Length) -> String {
    format!("{} × {}", spell(design, a), spell(design, b))
}

fn trade(design: &Design, name: &str) -> Option<String> {
    let (t, making) = (&design.trade, &design.making);
    let spell = |length: Length| spell(design, length);
    Some(match name {
        "cladding" => spell(t.cladding()),
        "stud" => t.stud.designator.clone(),
        "track" => t.track.designator.clone(),
        "spacing" => spell(t.stud_spacing.value),
        "fastener" => t.fastener.clone(),
        "tab" => spell(t.tab.value),
        "sleeper" => times(design, t.sleeper_width.value, t.sleeper_height.value),
        // Common practice, as the note says.
        "shims" => spell(Length::inches(24.0)),
        "diagonals" => spell(Length::inches(0.25)),
        "base_gap" => spell(design.levels.base_gap.value),
        "board" => spell(t.board_thickness.value),
        "board_gap" => spell(t.board_gap.value),
        "base_coat" => spell(t.base_coat.value),
        "finish_coat" => spell(t.finish_coat.value),
        "coat_joints" => given(making.coat_joints.as_ref().map(|j| spell(j.value))),
        "tile_joints" => given(making.tile_joints.as_ref().map(|j| spell(j.value))),
        "tile_band" => given(design.tile_band.as_ref().map(|b| spell(b.height.value))),
        _ => return None,
    })
}

fn site(design: &Design, name: &str) -> Option<String> {
    match name {
        "ground" => Some(given(
            design
                .site
                .ground
                .as_ref()
                .map(|g| ground(g.value).to_owned()),
        )),
        "surface" => Some(given(
            design.site.surface.as_ref().map(|s| surface(design, s)),
        )),
        _ => None,
    }
}

fn ground(ground: Ground) -> &'static str {
    match ground {
        Ground::Bedrock => "bedrock",
        Ground::SedimentaryRock => "sedimentary rock",
        Ground::Gravel => "gravel",
        Ground::Sand => "sand",
        Ground::Clay => "clay or silt",
    }
}

fn surface(design: &Design, surface: &Surface) -> String {
    match surface {
        Surface::Bare => "nothing".to_owned(),
        Surface::Slab { thickness } => {
            format!("a concrete slab {} thick", spell(design, thickness.value))
        }
        Surface::Pavers { thickness, .. } => {
            format!("pavers {} thick", spell(design, thickness.value))
        }
        Surface::Deck => "a deck of wood".to_owned(),
    }
}

fn counter(plan: &Plan, name: &str) -> Option<String> {
    let design = &plan.design;
    let c = &design.counter;
    Some(match name {
        "slab" => spell(design, c.thickness.value),
        "substrate" => format!(
            "{} {}",
            design.trade.substrate,
            spell(design, design.trade.substrate_thickness.value)
        ),
        "turndown" => c.turndown.as_ref().map_or("none".to_owned(), |t| {
            times(design, t.depth.value, t.width.value)
        }),
        "profile" => crate::drawing::schedule::edge_profile(plan),
        "corners" => match c.corners.value {
            PlanCorner::Sharp => "sharp".to_owned(),
            PlanCorner::Chamfered(leg) => format!("cut off {}", spell(design, leg)),
            PlanCorner::Rounded(radius) => format!("R {}", spell(design, radius)),
        },
        "overhang" => spell(design, overhang(design)),
        "mix" => design.trade.slab_mix.clone(),
        _ => return None,
    })
}

/// The widest overhang of a counter.
fn overhang(design: &Design) -> Length {
    let o = &design.counter.overhang;
    [&o.working, &o.seating, &o.left, &o.right]
        .map(|side| side.value)
        .into_iter()
        .fold(Length::ZERO, Length::max)
}

fn casting(design: &Design, name: &str) -> Option<String> {
    let (c, units) = (&design.counter.casting, design.project.units);
    let steel = &c.reinforcement;
    let yes = |flag: Option<bool>| flag.map(|f| if f { "yes" } else { "no" }.to_owned());
    Some(given(match name {
        "strength" => c
            .strength
            .as_ref()
            .map(|s| Unit::Stress.spell(s.mpa(), units)),
        "air" => yes(c.air_entrained.as_ref().map(|a| a.value)),
        "mesh" => steel.mesh.as_ref().map(|mesh| {
            let spacing = given(steel.mesh_spacing.as_ref().map(|s| spell(design, s.value)));
            format!("{} wire at {spacing}", spell(design, mesh.value))
        }),
        "cover" => steel.cover.as_ref().map(|l| spell(design, l.value)),
        "corner_bars" => yes(steel.corner_bars.as_ref().map(|b| b.value)),
        "joints" => Some(joints(design)),
        "fall" => c.fall.as_ref().map(|f| fall(design, f.value)),
        _ => return None,
    }))
}

/// A fall as a builder measures it.
fn fall(design: &Design, share: f64) -> String {
    let (length, over) = match design.project.units {
        Notation::Imperial => (Length::inches(12.0), "ft"),
        Notation::Metric => (Length::millimetres(1000.0), "m"),
    };
    format!("{} per {over}", spell(design, length * share))
}

/// Where the crack-control joints are.
fn joints(design: &Design) -> String {
    let spelt = design.counter.casting.joints.iter().map(|(run, at)| {
        let run = design.runs.get(*run).map_or("", |r| &r.name.value);
        format!("{run} run at {} from its left end", spell(design, at.value))
    });
    let spelt: Vec<_> = spelt.collect();
    if spelt.is_empty() {
        NOT_GIVEN.to_owned()
    } else {
        spelt.join(", ")
    }
}

fn supply(design: &Design, name: &str) -> Option<String> {
    match name {
        "fuel" => {
            let fuels: BTreeSet<Fuel> = fuels(design).filter(|f| f.is_gas()).collect();
            let names: Vec<_> = fuels.into_iter().map(Fuel::name).collect();
            Some(given((!names.is_empty()).then(|| names.join(" and "))))
        }
        "shut_off" => {
            let behind = design.gas.as_ref().and_then(|g| g.shut_off.as_ref());
            Some(given(behind.map(|b| format!("behind {}", b.value))))
        }
        _ => None,
    }
}

fn fuels(design: &Design) -> impl Iterator<Item = Fuel> + '_ {
    let own = design
        .appliances
        .iter()
        .filter_map(|a| a.rating.fuel.as_ref().map(|f| f.value));
    own.chain(design.gas.as_ref().map(|g| g.fuel.value))
}

/// Whether a note holds for an island; `None` for a word that there is not.
pub fn holds(plan: &Plan, word: &str) -> Option<bool> {
    let design = &plan.design;
    let gas = fuels(design).any(Fuel::is_gas);
    let kinds = |kind: OpeningKind| design.openings.iter().any(|o| o.kind == kind);
    Some(match word {
        "gas" => gas,
        "no gas" => !gas,
        "burns" => design
            .appliances
            .iter()
            .any(crate::design::Appliance::cooks),
        "electricity" => {
            design.electricity.is_some()
                || kinds(OpeningKind::Receptacle)
                || kinds(OpeningKind::Undercounter)
                || fuels(design).any(|f| f == Fuel::Electricity)
        }
        "water" => design
            .appliances
            .iter()
            .any(|a| a.is_sink() || a.holds_ice() || a.rating.drain.is_some()),
        "frost" => design.site.freezing.as_ref().is_none_or(|f| f.value),
        "overhang" => overhang(design) > Length::millimetres(150.0),
        "tile" => design.tile_band.is_some(),
        "mesh" => design.counter.casting.reinforcement.mesh.is_some(),
        _ => return None,
    })
}
