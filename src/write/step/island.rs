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
        let product = contexts.assembly(data, [&name, &name], &uses);
        groups.push((name, product));
    }
    match title {
        Some(title) => {
            let uses: Vec<Use> = groups.iter().map(|(name, p)| unmoved(name, *p)).collect();
            let product = contexts.assembly(data, [&title, &title], &uses);
            vec![(title, product)]
        }
        None => groups,
    }
}
