//! From parts to sticks.

use super::faults::{not_carried, too_long};
use super::piece::{CutPiece, corner_mesh, need};
use super::stock::{StockStick, is_sold_in_sticks, steps_up, stock};
use crate::catalog::{Need, PUNCH_OUTS};
use crate::design::Design;
use crate::diagnostics::Finding;
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::takeoff::cutting::{self, Answer, Demand, Offcut, Problem, Proof, Stick};
use crate::takeoff::outlay;
use crate::units::{Length, Money};
use std::collections::{BTreeMap, VecDeque};

/// A segment of a joined piece is at least this long where that can be had, millimetres (common practice).
const LEAST_SEGMENT: f64 = 300.0;

/// All pieces of one section and the sticks they are cut from.
///
/// Invariant: every piece is on exactly one stick, or in `too_long`.
#[derive(Clone, Debug, PartialEq)]
pub struct CutList {
    /// What the sticks are bought as.
    pub need: Need,
    /// The section, such as `362S125-33`.
    pub section: String,
    /// Everything to cut, in the order it is built.
    pub pieces: Vec<CutPiece>,
    /// What a cut takes, in steps.
    pub kerf: u32,
    /// The sticks to choose from.
    pub stock: Vec<StockStick>,
    /// The sticks to buy, in cutting order.
    pub sticks: Vec<CutStick>,
    /// Pieces longer than every stick.
    pub too_long: Vec<usize>,
    /// How many sticks of each of `stock` are bought.
    pub counts: Vec<u32>,
    /// What the sticks cost together and the least that any answer can cost: cents, or steps where nothing is priced.
    pub cost: u64,
    /// See `cost`.
    pub bound: u64,
    /// Whether the answer is known to be the best.
    pub proof: Proof,
    /// The longest single offcut, and whether no answer of the same cost and sticks leaves a longer one.
    pub offcut: Offcut,
}

/// One stick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutStick {
    /// Which of the stock.
    pub stock: usize,
    /// Its pieces in order from the marked end.
    pub cuts: Vec<Placed>,
    /// What is left at the far end once the last piece is cut off, in steps.
    pub offcut: u32,
}

/// A piece on a stick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Which of the pieces.
    pub piece: usize,
    /// Where it begins, in steps from the marked end.
    pub start: u32,
    /// Whether its foot is its far end.
    pub reversed: bool,
}

impl CutList {
    /// True when the sticks have prices, so that costs are money.
    pub fn is_priced(&self) -> bool {
        self.stock.iter().all(|s| s.price.is_some())
    }

    /// What the sticks cost together, where they have prices.
    pub fn money(&self) -> Option<Money> {
        let each = self.stock.iter().zip(&self.counts);
        outlay::money(each.map(|(stick, count)| (stick.price, *count)))
    }

    /// The share of the bought length that is in no piece.
    pub fn waste(&self) -> f64 {
        let bought: f64 = self
            .sticks
            .iter()
            .map(|s| f64::from(self.stock[s.stock].steps))
            .sum();
        let on_sticks = self.sticks.iter().flat_map(|s| &s.cuts);
        let used: f64 = on_sticks
            .map(|c| f64::from(self.pieces[c.piece].length))
            .sum();
        outlay::waste(bought, used)
    }

    /// The gap between cost and bound as a share of the bound.
    pub fn gap(&self) -> f64 {
        outlay::gap(self.cost, self.bound)
    }
}

/// The cut lists of an island, one a section in a fixed order; what is longer than every stick is said in `findings`.
pub fn cut_lists(plan: &Plan, assembly: &Assembly, findings: &mut Vec<Finding>) -> Vec<CutList> {
    let design = &plan.design;
    let notation = design.project.units;
    let mut groups: BTreeMap<(Need, String), Vec<CutPiece>> = BTreeMap::new();
    for (number, part) in assembly.parts.iter().enumerate() {
        if let Some(need) = need(part) {
            let piece = CutPiece::of(notation, &design.buying, assembly, number);
            let section = part.section.clone();
            groups.entry((need, section)).or_default().push(piece);
        }
    }
    if is_sold_in_sticks(design, &Need::CornerMesh) {
        let pieces = corner_mesh(plan);
        if !pieces.is_empty() {
            let section = Need::CornerMesh.to_string();
            groups.insert((Need::CornerMesh, section), pieces);
        }
    }
    let lists = groups
        .into_iter()
        .map(|((need, section), pieces)| cut_list(design, need, section, pieces));
    let lists: Vec<_> = lists.collect();
    findings.extend(not_carried(design, &lists));
    findings.extend(lists.iter().filter_map(|list| too_long(design, list)));
    lists
}

fn cut_list(design: &Design, need: Need, section: String, pieces: Vec<CutPiece>) -> CutList {
    let notation = design.project.units;
    let trim = steps_up(notation, design.buying.end_trim);
    let whole = pieces.iter().filter(|p| !p.kind.is_joinable());
    let needed = whole.map(|p| p.length).max().unwrap_or(0);
    let stock = stock(design, &need, needed.saturating_add(trim));
    let longest = stock.iter().map(|s| s.steps).max().unwrap_or(0);
    let least = steps_up(notation, Length::millimetres(LEAST_SEGMENT));
    let joined = |piece: CutPiece| {
        if piece.kind.is_joinable() {
            piece.segments(longest.saturating_sub(trim), least)
        } else {
            vec![piece]
        }
    };
    let pieces: Vec<_> = pieces.into_iter().flat_map(joined).collect();
    let is_snipped = matches!(need, Need::Steel(_) | Need::BaseChannel | Need::CornerMesh);
    let kerf = if is_snipped {
        design.buying.steel_kerf
    } else {
        design.buying.saw_kerf
    };
    let priced = stock.iter().all(|s| s.price.is_some());
    let (demands, mut queues) = demands(&pieces);
    let problem = Problem {
        sticks: stock.iter().map(|s| offered(s, priced)).collect(),
        demands,
        kerf: steps_up(notation, kerf),
        trim,
        pitch: Some(notation.steps(Length::millimetres(PUNCH_OUTS.pitch)) as u32),
    };
    let answer = cutting::solve(&problem);
    let sticks = sticks(&answer, &problem, &mut queues);
    let mut counts = vec![0; stock.len()];
    for pattern in &answer.patterns {
        counts[pattern.stick] += pattern.times;
    }
    CutList {
        need,
        section,
        pieces,
        kerf: problem.kerf,
        stock,
        sticks,
        too_long: queues.into_iter().flatten().collect(),
        counts,
        cost: answer.cost,
        bound: answer.bound,
        proof: answer.proof,
        offcut: answer.offcut,
    }
}

fn offered(stick: &StockStick, priced: bool) -> Stick {
    let cents = stick.price.map_or(0, |p| p.in_cents().max(0) as u64);
    Stick {
        length: stick.steps,
        cost: if priced {
            cents
        } else {
            u64::from(stick.steps)
        },
    }
}

/// Pieces of one length together, the longest first, and for each the pieces in the order they are built.
fn demands(pieces: &[CutPiece]) -> (Vec<Demand>, Vec<VecDeque<usize>>) {
    let mut by_length: BTreeMap<(u32, bool), VecDeque<usize>> = BTreeMap::new();
    for (number, piece) in pieces.iter().enumerate() {
        by_length
            .entry((piece.length, piece.aligned))
            .or_default()
            .push_back(number);
    }
    by_length
        .into_iter()
        .rev()
        .map(|((length, aligned), queue)| {
            let count = queue.len() as u32;
            let demand = Demand {
                length,
                count,
                aligned,
            };
            (demand, queue)
        })
        .unzip()
}

/// Every single stick with its pieces, taken from the queues in the order they are built.
fn sticks(answer: &Answer, problem: &Problem, queues: &mut [VecDeque<usize>]) -> Vec<CutStick> {
    let mut found = Vec::new();
    for pattern in &answer.patterns {
        for _ in 0..pattern.times {
            let cuts = pattern.cuts.iter().filter_map(|cut| {
                let piece = queues[cut.demand].pop_front()?;
                Some(Placed {
                    piece,
                    start: cut.start,
                    reversed: cut.reversed,
                })
            });
            let last = pattern.cuts.last();
            let end = last.map_or(0, |c| c.start + problem.demands[c.demand].length);
            let length = problem.sticks[pattern.stick].length;
            found.push(CutStick {
                stock: pattern.stick,
                cuts: cuts.collect(),
                offcut: length.saturating_sub(end.saturating_add(problem.kerf)),
            });
        }
    }
    found
}
