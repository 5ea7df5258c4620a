//! The island as an assembly: runs, in them groups, in those the parts by their marks; each shape once.

use super::exchange::Data;
use super::product::{Contexts, Product, Use};
use crate::geometry::Placement;
use crate::parts::{Assembly, Group, Part};

/// What the assembly and its runs are called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepTitles<'a> {
    /// The island.
    pub island: &'a str,
    /// The runs in order.
    pub runs: &'a [&'a str],
}

/// Writes all parts as exact solids, in millimetres.
///
/// # Errors
/// The mark of the first part whose shape has no closed boundary.
pub fn step(assembly: &Assembly, titles: &StepTitles) -> Result<String, String> {
    let mut data = Data::default();
    let contexts = Contexts::new(&mut data);
    let shapes = shapes(&mut data, &contexts, assembly)?;
    let runs = assembly.parts.iter().map(|p| p.run);
    let mut runs: Vec<Option<usize>> = runs.collect();
    runs.sort_by_key(|r| r.unwrap_or(usize::MAX));
    runs.dedup();
    let mut whole = Vec::new();
    for run in runs {
        whole.extend(stretch(
            &mut data,
            &contexts,
            (assembly, &shapes),
            titles,
            run,
        ));
    }
    let uses: Vec<Use> = whole.iter().map(|(name, p)| unmoved(name, *p)).collect();
    contexts.assembly(&mut data, ["island", titles.island], &uses);
    Ok(data.file("island.step", titles.island))
}

/// A use where it was made.
fn unmoved(mark: &str, product: Product) -> Use<'_> {
    Use {
        product,
        mark,
        placement: Placement::identity(),
    }
}

/// A product for each shape, called by what its first part is cut from.
fn shapes(
    data: &mut Data,
    contexts: &Contexts,
    assembly: &Assembly,
) -> Result<Vec<Option<Product>>, String> {
    let mut first: Vec<Option<&Part>> = vec![None; assembly.solids.len()];
    for part in &assembly.parts {
        if let Some(first) = first.get_mut(part.solid.0) {
            first.get_or_insert(part);
        }
    }
    let numbered = first.iter().zip(&assembly.solids).enumerate();
    numbered
        .map(|(number, (part, solid))| {
            let Some(part) = part else { return Ok(None) };
            let shape = solid.boundary().ok_or_else(|| part.mark.clone())?;
            let id = format!("shape-{}", number + 1);
            let texts = [id.as_str(), &called(part), &part.material];
            Ok(Some(contexts.part(data, texts, &shape)))
        })
        .collect()
}

/// What a shape is called: its section or sheet, or its kind, and its length.
fn called(part: &Part) -> String {
    let from = if part.section.is_empty() {
        part.kind.name()
    } else {
        &part.section
    };
    format!("{from}, {:.1} mm", part.length.mm())
}

/// The groups of one run, or of what spans several, under one product.
///
/// What spans several runs has no product of its own: its groups stand beside the runs.
fn stretch(
    data: &mut Data,
    contexts: &Contexts,
    (assembly, shapes): (&Assembly, &[Option<Product>]),
    titles: &StepTitles,
    run: Option<usize>,
) -> Vec<(String, Product)> {
    let title = run.map(|r| {
        let named = titles.runs.get(r).copied();
        named.map_or_else(|| format!("run {}", r + 1), str::to_owned)
    });
    let id = run.map_or_else(|| "all".to_owned(), |r| format!("run-{}", r + 1));
    let mut groups = Vec::new();
    for group in Group::ALL {
        let parts = assembly.parts.iter();
        let parts = parts.filter(|p| p.run == run && p.group == group);
        let uses: Vec<Use> = parts
            .filter_map(|part| {
                Some(Use {
                    product: (*shapes.get(part.solid.0)?)?,
                    mark: &part.mark,
                    placement: part.placement,
                })
            })
            .collect();
        if uses.is_empty() {
            continue;
        }
        let name = match &title {
            Some(title) => format!("{title}: {}", group.name()),
            None => group.name().to_owned(),
        };
        let product = contexts.assembly(data, [&format!("{id}-{}", group.name()), &name], &uses);
        groups.push((name, product));
    }
    match title {
        Some(title) => {
            let uses: Vec<Use> = groups.iter().map(|(name, p)| unmoved(name, *p)).collect();
            let product = contexts.assembly(data, [&id, &title], &uses);
            vec![(title, product)]
        }
        None => groups,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::write::stl::tests::two_posts_and_a_board;
    use std::collections::BTreeSet;

    #[test]
    fn equal_parts_are_uses_of_one_shape_and_ids_are_unique_whatever_runs_are_called() {
        let titles = StepTitles {
            island: "Bench",
            runs: &["shape-1"],
        };
        let text = step(&two_posts_and_a_board(), &titles).unwrap();
        let count = |entity: &str| text.matches(entity).count();
        // Two posts alike and a board; they, two groups and one run are used once each.
        assert_eq!(count("=MANIFOLD_SOLID_BREP("), 2);
        assert_eq!(count("=NEXT_ASSEMBLY_USAGE_OCCURRENCE("), 3 + 2 + 1);
        assert_eq!(count("=CONTEXT_DEPENDENT_SHAPE_REPRESENTATION("), 6);
        let ids: Vec<&str> = text
            .lines()
            .filter_map(|l| l.split_once("=PRODUCT('")?.1.split('\'').next())
            .collect();
        assert_eq!(ids.len(), 2 + 2 + 1 + 1);
        assert_eq!(
            ids.iter().collect::<BTreeSet<_>>().len(),
            ids.len(),
            "{ids:?}"
        );
    }

    #[test]
    fn a_shape_that_does_not_close_is_named_by_its_first_part() {
        let mut assembly = two_posts_and_a_board();
        assembly.solids[1] = crate::geometry::Solid::cuboid(f64::NAN, 1.0, 1.0);
        let titles = StepTitles {
            island: "Bench",
            runs: &[],
        };
        assert_eq!(step(&assembly, &titles), Err("B1".to_owned()));
    }
}
