//! From parts to sheets.

use super::laying::Laying;
use super::layout::{SheetLayout, layouts, problem};
use super::piece::SheetPiece;
use super::stock::{StockSheet, stock, thickness};
use super::{boards, forms, mesh};
use crate::catalog::Need;
use crate::design::Design;
use crate::diagnostics::{Finding, Place, Verdict};
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::takeoff::cut_list::steps_up;
use crate::takeoff::nesting;
use crate::takeoff::outlay;
use crate::units::{Length, Money};

/// What the faces are clad in.
const CLADDING: &str = "cement board";

/// All pieces of one material and the sheets they are cut from.
///
/// Invariant: every piece is on exactly one sheet, or in `too_large`.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetList {
    /// What the sheets are bought as.
    pub need: Need,
    /// The material with its thickness, such as `cement board 1/2"`.
    pub material: String,
    /// Everything to cut, in the order it is built.
    pub pieces: Vec<SheetPiece>,
    /// The sheets to choose from.
    pub stock: Vec<StockSheet>,
    /// What a cut takes, in steps.
    pub kerf: u32,
    /// The sheets to buy.
    pub layouts: Vec<SheetLayout>,
    /// Pieces that no sheet is large enough for.
    pub too_large: Vec<usize>,
    /// How many sheets of each of `stock` are bought.
    pub counts: Vec<u32>,
    /// What the sheets cost together and what no layout can undercut: cents, or square steps where nothing is priced.
    pub cost: u64,
    /// See `cost`.
    pub bound: u64,
}

impl SheetList {
    /// True when the sheets have prices, so that costs are money.
    pub fn is_priced(&self) -> bool {
        self.stock.iter().all(|s| s.price.is_some())
    }

    /// What the sheets cost together, where they have prices.
    pub fn money(&self) -> Option<Money> {
        let each = self.stock.iter().zip(&self.counts);
        outlay::money(each.map(|(sheet, count)| (sheet.price, *count)))
    }

    /// The share of the bought area that is in no piece's rectangle.
    pub fn waste(&self) -> f64 {
        let area = |(l, w): (u32, u32)| f64::from(l) * f64::from(w);
        let bought: f64 = self
            .layouts
            .iter()
            .map(|l| area(self.stock[l.stock].steps))
            .sum();
        let on_sheets = self.layouts.iter().flat_map(|l| &l.pieces);
        let used: f64 = on_sheets.map(|p| area(p.size)).sum();
        outlay::waste(bought, used)
    }

    /// The gap between cost and bound as a share of the bound.
    pub fn gap(&self) -> f64 {
        outlay::gap(self.cost, self.bound)
    }
}

/// The sheet lists of an island: board, substrate, form plywood, and reinforcing mesh unless it is sold in rolls alone; what
/// no sheet is large enough for is said in `findings`.
///
/// A substrate of the faces' own board is cut from the same sheets. Cement board is scored and snapped, which takes
/// nothing; plywood is sawn, mesh snipped.
pub fn sheet_lists(
    plan: &Plan,
    assembly: &Assembly,
    laying: &Laying,
    findings: &mut Vec<Finding>,
) -> Vec<SheetList> {
    let needs = [
        Need::Board,
        Need::Substrate,
        Need::FormPlywood,
        Need::ReinforcingMesh,
    ];
    let lists = needs.map(|need| sheet_list(plan, assembly, laying, need));
    let lists: Vec<_> = lists.into_iter().filter(|l| !l.pieces.is_empty()).collect();
    findings.extend(lists.iter().filter_map(|list| too_large(plan, list)));
    lists
}

fn sheet_list(plan: &Plan, assembly: &Assembly, laying: &Laying, need: Need) -> SheetList {
    let design = &plan.design;
    let notation = design.project.units;
    let stock = stock(design, &need);
    let pieces = match need {
        Need::Board if shares_board(design) => {
            let mut pieces = boards::pieces(notation, assembly);
            pieces.extend(laying.substrate.pieces.iter().cloned());
            pieces
        }
        Need::Board => boards::pieces(notation, assembly),
        Need::Substrate if shares_board(design) => Vec::new(),
        Need::Substrate => laying.substrate.pieces.clone(),
        Need::ReinforcingMesh if mesh::is_laid_out(design) => laying.mesh.clone(),
        Need::ReinforcingMesh => Vec::new(),
        _ => forms::pieces(notation, assembly, &stock),
    };
    let material = material(design, &need, &stock);
    let sawn = need != Need::ReinforcingMesh && !material.to_lowercase().contains("cement");
    let kerf = if sawn {
        steps_up(notation, design.buying.saw_kerf)
    } else {
        0
    };
    let answer = nesting::solve(&problem(&pieces, &stock, kerf));
    let layouts = layouts(&answer);
    let mut counts = vec![0; stock.len()];
    for layout in &layouts {
        counts[layout.stock] += 1;
    }
    SheetList {
        need,
        material,
        pieces,
        stock,
        kerf,
        layouts,
        too_large: answer.too_large,
        counts,
        cost: answer.cost,
        bound: answer.bound,
    }
}

/// The material with its thickness: board's and substrate's is the asked one, plywood's that of the thinnest sheet.
fn material(design: &Design, need: &Need, stock: &[StockSheet]) -> String {
    let material = match need {
        Need::ReinforcingMesh => return need.to_string(),
        Need::Board => CLADDING,
        Need::Substrate => &design.trade.substrate,
        _ => "plywood",
    };
    let thickness = match need {
        Need::FormPlywood => forms::layer(stock),
        _ => thickness(design, need),
    };
    format!(
        "{material} {}",
        design.project.units.spell_with_unit(thickness)
    )
}

/// True when the counter is cast on the same board that the faces are clad in, so that offcuts serve both.
pub(super) fn shares_board(design: &Design) -> bool {
    let trade = &design.trade;
    let apart = (trade.substrate_thickness.value - trade.board_thickness.value).abs();
    trade.substrate.eq_ignore_ascii_case(CLADDING) && apart < Length::millimetres(0.01)
}

/// Says which piece of a list no sheet is large enough for.
fn too_large(plan: &Plan, list: &SheetList) -> Option<Finding> {
    let notation = plan.design.project.units;
    let area = |p: &&usize| {
        let piece = &list.pieces[**p];
        u64::from(piece.length) * u64::from(piece.width)
    };
    let piece = &list.pieces[*list.too_large.iter().max_by_key(area)?];
    let largest = list
        .stock
        .iter()
        .max_by_key(|s| u64::from(s.steps.0) * u64::from(s.steps.1));
    let sheet = largest.map_or("none".to_owned(), |s| {
        let spell = |l: Length| notation.spell_with_unit(l);
        format!("{} × {}", spell(s.length), spell(s.width))
    });
    let spell = |steps: u32| notation.spell_with_unit(notation.step() * f64::from(steps));
    let others = match list.too_large.len() {
        1 => String::new(),
        n => format!(", and {} more", n - 1),
    };
    let grain = if piece.may_turn {
        ""
    } else {
        " with the grain along it"
    };
    let found = format!(
        "{} {} is {} × {}{grain}{others}, and the largest sheet of {} is {sheet}",
        piece.what(),
        piece.name(),
        spell(piece.length),
        spell(piece.width),
        list.need,
    );
    let mut finding = Finding::error("sheet-small", &place(plan, list, piece), found).hint(
        format!("add a larger sheet for '{}' to supplies", list.need),
    );
    finding.verdict = Verdict::Fail;
    Some(finding)
}

/// The key that makes a piece so large: the board's length in the file, or else its run's length.
fn place(plan: &Plan, list: &SheetList, piece: &SheetPiece) -> Place {
    let design = &plan.design;
    let board = &design.trade.board_length.place;
    if list.need == Need::Board && board.is_known() {
        return board.clone();
    }
    piece
        .run
        .and_then(|run| design.runs.get(run))
        .map(|run| run.length.place.clone())
        .unwrap_or_default()
}
