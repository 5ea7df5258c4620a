//! What cannot be cut.

use super::CutList;
use crate::design::Design;
use crate::diagnostics::{Finding, Verdict};
use crate::units::Length;

/// Says once for which lists no stick is short enough to carry home.
pub(super) fn not_carried(design: &Design, lists: &[CutList]) -> Option<Finding> {
    let longest = design.buying.longest_stick.as_ref()?;
    let without = lists.iter().filter(|l| l.stock.is_empty());
    let names: Vec<_> = without.map(|l| l.need.to_string()).collect();
    let names = match names.split_last()? {
        (one, []) => one.clone(),
        (last, others) => format!("{} and {last}", others.join(", ")),
    };
    let spelt = design.project.units.spell_with_unit(longest.value);
    let found = format!("no stick of {names} is short enough to carry: longest_stick is {spelt}");
    let hint =
        "raise longest_stick in buying, or have the sticks cut or delivered and leave it out";
    let mut finding = Finding::error("stick-long", &longest.place, found).hint(hint);
    finding.verdict = Verdict::Fail;
    Some(finding)
}

/// Says which piece of a list is longer than every stick of it.
pub(super) fn too_long(design: &Design, list: &CutList) -> Option<Finding> {
    let notation = design.project.units;
    let too_long = list.too_long.iter();
    let longest = too_long.max_by_key(|p| list.pieces[**p].length)?;
    let piece = &list.pieces[*longest];
    let stick = list.stock.iter().map(|s| s.length).reduce(Length::max)?;
    let place = piece
        .run
        .map(|run| design.runs[run].length.place.clone())
        .unwrap_or_default();
    let spelt = notation.spell_steps(i64::from(piece.length));
    let others = match list.too_long.len() {
        1 => String::new(),
        n => format!(", and {} more", n - 1),
    };
    let trim = design.buying.end_trim;
    let trimmed = if trim > Length::ZERO {
        let (trim, left) = (
            notation.spell_with_unit(trim),
            (stick - trim).max(Length::ZERO),
        );
        format!(
            ", {} once its end_trim of {trim} is off",
            notation.spell_with_unit(left)
        )
    } else {
        String::new()
    };
    let found = format!(
        "{} {} is {spelt} long{others}, and the longest stick of {} is {}{trimmed}",
        piece.kind.name(),
        piece.name(),
        list.need,
        notation.spell_with_unit(stick),
    );
    let mut finding = Finding::error("piece-long", &place, found).hint(hint(design));
    finding.verdict = Verdict::Fail;
    Some(finding)
}

fn hint(design: &Design) -> &'static str {
    if design.buying.longest_stick.is_some() {
        "add a longer stick to supplies, raise longest_stick in buying, or make the run shorter"
    } else {
        "add a longer stick to supplies, or make the run shorter"
    }
}
