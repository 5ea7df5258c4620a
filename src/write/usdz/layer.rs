//! The layer: its head, the island, the shapes.

use super::materials::Materials;
use super::names::Names;
use super::places::Places;
use super::shapes::Shapes;
use super::spelling::quoted;
use crate::mesh::{Appearances, Instance, Showing};
use std::collections::BTreeSet;
use std::fmt::Write;

/// The name of what a viewer opens.
const ROOT: &str = "Island";

/// The finished island as a USD layer in text.
pub(super) fn layer(showing: &Showing) -> String {
    let seen: Vec<_> = showing.seen().collect();
    let used: BTreeSet<_> = seen
        .iter()
        .map(|i| Appearances::number(i.part.kind))
        .collect();
    let materials = Materials::of(showing.appearances.all(), |n| used.contains(&n), ROOT);
    let mut shapes = Shapes::new(showing.meshes);
    let mut places = Places {
        shapes: &mut shapes,
        materials: &materials,
    };
    let body = body(showing, &seen, &mut places);
    let title = quoted(showing.title);
    let mut out = format!(
        "#usda 1.0
(
    customLayerData = {{
        string title = {title}
    }}
    defaultPrim = \"{ROOT}\"
    doc = \"The finished island at true size, written by islandwright\"
    metersPerUnit = 1
    upAxis = \"Y\"
)

def Xform \"{ROOT}\" (
    kind = \"component\"
)
{{
"
    );
    out.push_str(&materials.text);
    out.push_str(&body);
    out.push_str("}\n");
    out.push_str(&shapes.text());
    out
}

/// Run after run, then what spans several.
fn body(showing: &Showing, seen: &[&Instance], places: &mut Places) -> String {
    let mut names = Names::default();
    // The materials' scope is there already.
    names.of("Materials");
    let mut out = String::new();
    for (number, run) in showing.runs.iter().enumerate() {
        let of_run: Vec<_> = seen
            .iter()
            .filter(|i| i.part.run == Some(number))
            .copied()
            .collect();
        if of_run.is_empty() {
            continue;
        }
        let name = names.of(&format!("{run}_run"));
        let groups = places.groups(&of_run, 2, &mut Names::default());
        let _ = write!(out, "    def Xform \"{name}\"\n    {{\n{groups}    }}\n");
    }
    let is_of_none = |i: &&&Instance| i.part.run.is_none_or(|r| r >= showing.runs.len());
    let others: Vec<_> = seen.iter().filter(is_of_none).copied().collect();
    out.push_str(&places.groups(&others, 1, &mut names));
    out
}
