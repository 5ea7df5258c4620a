//! The sheets that can be bought.

use crate::catalog::{Form, Need, Supply};
use crate::design::Design;
use crate::plan::FORM_THICKNESS;
use crate::takeoff::cut_list::steps_down;
use crate::units::{Length, Money, Notation};

/// A sheet that can be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct StockSheet {
    /// What the shop calls it.
    pub name: String,
    /// Its long side, along the grain where there is one.
    pub length: Length,
    /// Its short side.
    pub width: Length,
    /// How thick it is.
    pub thickness: Length,
    /// Length and width in whole steps, rounded down.
    pub steps: (u32, u32),
    /// What one costs; `None` when that is not known.
    pub price: Option<Money>,
    /// Whether the price is an invented example.
    pub example: bool,
    /// Where one buys it; empty when that is not known.
    pub shop: String,
}

/// Sizes in which cement board and plywood are usually sold, inches (common practice).
const COMMON_INCHES: [[f64; 2]; 2] = [[60.0, 36.0], [96.0, 48.0]];

/// Sizes in which cement board and plywood are usually sold, millimetres (common practice).
const COMMON_MILLIMETRES: [[f64; 2]; 2] = [[1200.0, 900.0], [2440.0, 1220.0]];

/// Sizes in which welded wire mesh is usually sold, inches (common practice).
const MESH_INCHES: [[f64; 2]; 1] = [[84.0, 42.0]];

/// Sizes in which welded wire mesh is usually sold, millimetres (common practice).
const MESH_MILLIMETRES: [[f64; 2]; 1] = [[2000.0, 1000.0]];

/// How far a sheet's thickness may be from what the design asks for, millimetres: what is sold by a name in inches is
/// often thinner by a thirty-second (common practice).
const THICKNESS: f64 = 1.2;

/// How thick the sheets of a need are in a design.
pub(in crate::takeoff) fn thickness(design: &Design, need: &Need) -> Length {
    match need {
        Need::Board => design.trade.board_thickness.value,
        Need::Substrate => design.trade.substrate_thickness.value,
        _ => Length::millimetres(FORM_THICKNESS),
    }
}

/// The sheets that serve a need: of the asked thickness (mesh: any), those with a price where there are any, else all. Where nobody
/// sells it, the board that the file names, or the common sizes.
pub(super) fn stock(design: &Design, need: &Need) -> Vec<StockSheet> {
    let notation = design.project.units;
    let asked = thickness(design, need);
    let mut found: Vec<_> = design
        .supplies
        .of(need)
        .filter_map(|supply| sheet(notation, supply, asked))
        .collect();
    if found.iter().any(|s| s.price.is_some()) {
        found.retain(|s| s.price.is_some());
    }
    if found.is_empty() {
        found = unnamed(design, need);
    }
    found
}

/// True when a sheet of this thickness serves where the asked one is drawn.
pub(in crate::takeoff) fn is_as_thick(thickness: Length, asked: Length) -> bool {
    (thickness - asked).abs() <= Length::millimetres(THICKNESS)
}

fn sheet(notation: Notation, supply: &Supply, asked: Length) -> Option<StockSheet> {
    let Form::Sheet {
        length,
        width,
        thickness,
    } = supply.form
    else {
        return None;
    };
    let suits = supply.need == Need::ReinforcingMesh || is_as_thick(thickness, asked);
    suits.then(|| StockSheet {
        name: supply.name.clone(),
        length,
        width,
        thickness,
        steps: (steps_down(notation, length), steps_down(notation, width)),
        price: supply.price,
        example: supply.example,
        shop: supply.shop.clone(),
    })
}

fn unnamed(design: &Design, need: &Need) -> Vec<StockSheet> {
    let trade = &design.trade;
    let notation = design.project.units;
    let sizes = match (need, notation) {
        (Need::Board, _) => vec![[trade.board_length.value, trade.board_width.value]],
        (Need::ReinforcingMesh, Notation::Imperial) => {
            MESH_INCHES.map(|s| s.map(Length::inches)).to_vec()
        }
        (Need::ReinforcingMesh, Notation::Metric) => MESH_MILLIMETRES
            .map(|s| s.map(Length::millimetres))
            .to_vec(),
        (_, Notation::Imperial) => COMMON_INCHES.map(|s| s.map(Length::inches)).to_vec(),
        (_, Notation::Metric) => COMMON_MILLIMETRES
            .map(|s| s.map(Length::millimetres))
            .to_vec(),
    };
    // Plywood comes in the large size only.
    let skipped = usize::from(*need == Need::FormPlywood);
    let sheet = |[length, width]: [Length; 2]| StockSheet {
        name: format!(
            "{need}, {} × {}",
            notation.spell_with_unit(length),
            notation.spell_with_unit(width)
        ),
        length,
        width,
        thickness: thickness(design, need),
        steps: (steps_down(notation, length), steps_down(notation, width)),
        price: None,
        example: false,
        shop: String::new(),
    };
    sizes.into_iter().skip(skipped).map(sheet).collect()
}
