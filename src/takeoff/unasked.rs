//! Supplies of the parameter file that this design has no use for.

use super::suits::{has_size, suits};
use super::{Quantity, sheets};
use crate::catalog::{Form, Need, Supply};
use crate::design::Design;
use crate::diagnostics::{Finding, Verdict};
use crate::units::Length;

/// A caution for each supply of the parameter file whose size, thickness or length is not what this design asks for, of any
/// need that it serves. What stands in trade data is for other designs too and is not spoken of.
pub(super) fn unasked(design: &Design, quantities: &[Quantity]) -> Vec<Finding> {
    let own = design.supplies.all().iter().filter(|s| s.place.is_known());
    let mut entries: Vec<Vec<&Supply>> = Vec::new();
    for supply in own {
        match entries
            .iter_mut()
            .find(|e| e.iter().any(|s| s.name == supply.name))
        {
            Some(entry) => entry.push(supply),
            None => entries.push(vec![supply]),
        }
    }
    entries
        .iter()
        .filter_map(|entry| caution(design, entry, quantities))
        .collect()
}

/// Of one entry, which is there once for each need.
fn caution(design: &Design, entry: &[&Supply], quantities: &[Quantity]) -> Option<Finding> {
    let others: Option<Vec<_>> = entry
        .iter()
        .map(|supply| other(design, supply, quantities))
        .collect();
    let (supply, (key, asked)) = (entry.first()?, others?.into_iter().next()?);
    let found = format!("'{}' is not used: its {key} is not asked for", supply.name);
    let hint = format!("this design asks for {asked}; change the {key}, or leave the entry out");
    Some(Finding {
        verdict: Verdict::Caution,
        ..Finding::error("unasked-supply", &supply.place, found).hint(hint)
    })
}

/// The key in which a supply is not what is asked for, and what is.
fn other(
    design: &Design,
    supply: &Supply,
    quantities: &[Quantity],
) -> Option<(&'static str, String)> {
    let need = &supply.need;
    let of_need = quantities.iter().filter(|q| q.need.as_ref() == Some(need));
    let of_need: Vec<&Quantity> = of_need.collect();
    let spell = |l: Length| design.project.units.spell_with_unit(l);
    if !of_need.is_empty() && !has_size(design, supply) {
        return Some(("size", size(design, need)));
    }
    let served = |q: &&Quantity| suits(design, supply, q.length);
    if !of_need.is_empty() && !of_need.iter().any(served) {
        let mut lengths: Vec<String> = Vec::new();
        for length in of_need.iter().filter_map(|q| q.length).map(spell) {
            if !lengths.contains(&length) {
                lengths.push(length);
            }
        }
        return Some(("length", lengths.join(" and ")));
    }
    let is_cut = matches!(need, Need::Board | Need::Substrate | Need::FormPlywood);
    let Form::Sheet { thickness, .. } = supply.form else {
        return None;
    };
    let asked = is_cut.then(|| sheets::thickness(design, need))?;
    (!sheets::is_as_thick(thickness, asked)).then(|| ("thickness", spell(asked)))
}

/// The size of a need in words.
fn size(design: &Design, need: &Need) -> String {
    let trade = &design.trade;
    let spell = |l: Length| design.project.units.spell_with_unit(l);
    match (need, &design.tile_band) {
        (Need::Sleeper, _) => {
            let (width, height) = (trade.sleeper_width.value, trade.sleeper_height.value);
            format!("{} × {}", spell(width), spell(height))
        }
        (Need::Tile, Some(band)) => {
            let (width, height) = (band.tile_width.value, band.tile_height.value);
            format!("{} × {}", spell(width), spell(height))
        }
        _ => format!(
            "a width of {}, for board and base coat",
            spell(trade.board_thickness.value + trade.base_coat.value)
        ),
    }
}

#[cfg(test)]
mod tests {
    use crate::design::from_text;
    use crate::{parts, plan, takeoff};

    /// What is found of supplies in a file with boards of 5/8 in: line and hint.
    fn found(supplies: &str) -> Vec<(usize, String)> {
        let head = "project: {title: Trial}\nruns: [{name: cook, length: 6 ft, depth: 30 in}]\n\
                    trade: {board: {thickness: 5/8 in}}\nsupplies:\n";
        let plan = plan::lay_out(from_text(&format!("{head}{supplies}")).unwrap()).unwrap();
        let reckoned = takeoff::reckon(&plan, &parts::build(&plan));
        let own = reckoned.findings.into_iter();
        let own = own.filter(|f| f.code == "unasked-supply");
        own.map(|f| (f.place.line, f.hint)).collect()
    }

    #[test]
    fn what_another_design_would_ask_for_is_said() {
        // 5/8 in of board asks for 1-5/8 in, 1/2 in of substrate for 1-1/4 in.
        let screw = |l: &str| {
            format!(
                "  - {{name: screw {l}, for: board screw, sold: {{pack: {{count: 9}}}}, length: {l}}}\n"
            )
        };
        let sheet = "  - {name: half, for: board, sold: {sheet: {length: 5 ft, width: 3 ft, thickness: 1/2 in}}}\n";
        let tile = "  - {name: tile, for: tile, sold: each, size: {width: 3 in, height: 3 in}}\n";
        let text = [
            &screw("2 in"),
            &screw("1-5/8 in"),
            &screw("1-1/4 in"),
            sheet,
            tile,
        ]
        .map(String::from);
        let said = found(&text.concat());
        let lines: Vec<usize> = said.iter().map(|(line, _)| *line).collect();
        assert_eq!(lines, [5, 8]);
        assert!(said[0].1.contains("1 5/8\" and 1 1/4\""), "{}", said[0].1);
        assert!(found(&sheet.replace("for: board", "for: [board, substrate]")).is_empty());
    }
}
