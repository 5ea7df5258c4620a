//! The list of all parts as JSON, with where each part's triangles stand in the model files.

use crate::mesh::Model;
use crate::parts::Assembly;
use serde::Serialize;
use std::collections::BTreeMap;

#[derive(Serialize)]
struct List<'a> {
    units: Units,
    parts: Vec<Entry<'a>>,
}

#[derive(Serialize)]
struct Units {
    length: &'static str,
    volume: &'static str,
}

#[derive(Serialize)]
struct Entry<'a> {
    mark: &'a str,
    kind: &'static str,
    group: &'static str,
    /// Counted from 1, as a person counts; null when the part spans several.
    run: Option<usize>,
    material: &'a str,
    section: &'a str,
    length: f64,
    /// Of the exact solid, not of its triangles.
    volume: f64,
    in_assembly: Triangles,
    in_group: Triangles,
}

#[derive(Serialize)]
struct Triangles {
    first: usize,
    count: usize,
}

/// Rounds to a thousandth, so that the last digits of a computation do not show.
fn thousandths(number: f64) -> f64 {
    (number * 1000.0).round() / 1000.0
}

/// Writes the parts in the order in which the model files hold them.
///
/// Triangles are counted from 0; `in_assembly` is for the file of all parts, `in_group` for the file of the part's
/// group.
pub fn parts_list(assembly: &Assembly, model: &Model) -> String {
    let volumes: Vec<f64> = assembly
        .solids
        .iter()
        .map(|s| thousandths(s.volume()))
        .collect();
    let mut total = 0;
    let mut totals = BTreeMap::new();
    let all = model.selection(assembly, None);
    let entries = all.instances().iter().map(|instance| {
        let part = instance.part;
        let count = instance.mesh.triangles.len();
        let in_group = totals.entry(part.group).or_insert(0);
        let entry = Entry {
            mark: &part.mark,
            kind: part.kind.name(),
            group: part.group.name(),
            run: part.run.map(|r| r + 1),
            material: &part.material,
            section: &part.section,
            length: thousandths(part.length.mm()),
            volume: volumes.get(part.solid.0).copied().unwrap_or(0.0),
            in_assembly: Triangles {
                first: total,
                count,
            },
            in_group: Triangles {
                first: *in_group,
                count,
            },
        };
        total += count;
        *in_group += count;
        entry
    });
    let list = List {
        units: Units {
            length: "mm",
            volume: "mm3",
        },
        parts: entries.collect(),
    };
    let mut text = serde_json::to_string_pretty(&list).unwrap_or_default();
    text.push('\n');
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::write::stl::tests::two_posts_and_a_board;

    #[test]
    fn each_part_says_where_its_triangles_stand() {
        let assembly = two_posts_and_a_board();
        let model = Model::new(&assembly, 0.1).unwrap();
        let list: serde_json::Value = serde_json::from_str(&parts_list(&assembly, &model)).unwrap();
        let places: Vec<_> = list["parts"]
            .as_array()
            .unwrap()
            .iter()
            .map(|p| {
                let number = |key: &str, what: &str| p[key][what].as_u64().unwrap();
                let first = [number("in_assembly", "first"), number("in_group", "first")];
                (
                    p["mark"].as_str().unwrap().to_owned(),
                    first,
                    number("in_assembly", "count"),
                )
            })
            .collect();
        // A box has twelve triangles.
        assert_eq!(
            places,
            [
                ("S1".to_owned(), [0, 0], 12),
                ("B1".to_owned(), [12, 0], 12),
                ("S2".to_owned(), [24, 12], 12),
            ]
        );
        assert_eq!(list["parts"][0]["volume"], 150_000.0);
        assert_eq!(list["parts"][1]["kind"], "board");
        assert_eq!(list["parts"][1]["run"], 1);
    }
}
