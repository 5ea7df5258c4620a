//! Layouts worked on paper, and layouts of all sorts.

use super::proof::{can_be_cut, prove};
use super::{Answer, Demand, Problem, Stock, solve};
use proptest::prelude::*;

fn stock(length: u32, width: u32, cost: u64) -> Stock {
    Stock {
        length,
        width,
        cost,
    }
}

fn demand(length: u32, width: u32, may_turn: bool) -> Demand {
    Demand {
        length,
        width,
        may_turn,
    }
}

fn solved(stock: &[Stock], demands: Vec<Demand>, kerf: u32) -> Answer {
    let problem = Problem {
        stock: stock.to_vec(),
        demands,
        kerf,
    };
    let answer = solve(&problem);
    prove(&problem, &answer);
    assert_eq!(answer, solve(&problem));
    answer
}

#[test]
fn pieces_that_tile_a_sheet_need_one() {
    let answer = solved(&[stock(96, 48, 30)], vec![demand(48, 24, false); 4], 0);
    assert_eq!(
        (answer.sheets.len(), answer.cost, answer.bound),
        (1, 30, 30)
    );
    let cuts = &answer.sheets[0].cuts;
    assert_eq!(cuts.len(), 3);
}

#[test]
fn a_kerf_takes_what_it_takes() {
    // 48 + 1 + 48 is more than 96, and 24 + 1 + 24 more than 48: one to a sheet. Turned, three stand side by side on
    // 24 + 1 + 24 + 1 + 24 = 74.
    let sheet = [stock(96, 48, 30)];
    let answer = solved(&sheet, vec![demand(48, 24, false); 4], 1);
    assert_eq!((answer.sheets.len(), answer.bound), (4, 120));
    let answer = solved(&sheet, vec![demand(48, 24, true); 4], 1);
    assert_eq!((answer.sheets.len(), answer.bound), (2, 60));
}

#[test]
fn the_last_cut_may_run_over_the_edge() {
    // One step is left, the saw takes two: it turns to dust.
    let answer = solved(&[stock(100, 48, 1)], vec![demand(99, 48, false)], 2);
    assert_eq!(answer.sheets[0].leaves.len(), 1);
    assert_eq!(answer.sheets[0].cuts, [(99, 0, 99, 48)]);
}

#[test]
fn a_piece_as_large_as_the_sheet_is_not_cut() {
    let answer = solved(&[stock(96, 48, 1)], vec![demand(96, 48, false)], 3);
    assert!(answer.sheets[0].cuts.is_empty());
}

#[test]
fn grain_forbids_turning() {
    let sheet = [stock(96, 48, 30)];
    assert_eq!(
        solved(&sheet, vec![demand(20, 90, false)], 0).too_large,
        [0]
    );
    let answer = solved(&sheet, vec![demand(20, 90, true), demand(10, 10, false)], 0);
    assert!(answer.too_large.is_empty());
    assert_eq!(answer.sheets.len(), 1);
}

#[test]
fn what_no_sheet_holds_is_named_and_the_rest_is_laid() {
    let demands = vec![
        demand(97, 10, true),
        demand(50, 40, true),
        demand(0, 10, true),
        demand(60, 49, true),
    ];
    let answer = solved(&[stock(96, 48, 30)], demands, 0);
    assert_eq!(answer.too_large, [0, 2, 3]);
    assert_eq!(answer.cost, 30);
}

#[test]
fn the_last_sheet_is_a_cheaper_one() {
    // Three halves of a sheet: 40 + 25. Two sheets are 80, three halves 75, and 60 is no sum of prices.
    let sheets = [stock(96, 48, 40), stock(48, 48, 25)];
    let answer = solved(&sheets, vec![demand(48, 48, true); 3], 0);
    assert_eq!((answer.cost, answer.bound), (65, 65));
    assert_eq!(
        answer.sheets.iter().map(|s| s.stock).collect::<Vec<_>>(),
        [0, 1]
    );
}

#[test]
fn the_cheapest_area_is_not_bought_where_it_is_not_filled() {
    let sheets = [stock(96, 48, 40), stock(48, 24, 15)];
    let answer = solved(&sheets, vec![demand(40, 20, true)], 0);
    assert_eq!(
        (answer.cost, answer.bound, answer.sheets[0].stock),
        (15, 15, 1)
    );
}

#[test]
fn a_pinwheel_is_not_cut_from_edge_to_edge() {
    // Four 3 × 2 round a square of one fill 5 × 5, but no straight line parts them; by guillotine three fit.
    let wheel = [
        [0, 0, 3, 2],
        [3, 0, 5, 3],
        [2, 3, 5, 5],
        [0, 2, 2, 5],
        [2, 2, 3, 3],
    ];
    assert!(!can_be_cut(&wheel, 0));
    assert!(can_be_cut(&wheel[..3], 0));
    let mut demands = vec![demand(3, 2, true); 4];
    demands.push(demand(1, 1, true));
    let answer = solved(&[stock(5, 5, 1)], demands, 0);
    assert_eq!((answer.cost, answer.bound), (2, 1));
}

#[test]
fn the_offcut_is_as_large_as_can_be() {
    // Beside the piece 46 × 48 = 2208, above it 96 × 18 = 1728.
    let answer = solved(&[stock(96, 48, 30)], vec![demand(50, 30, false)], 0);
    let largest = answer.sheets[0]
        .leaves
        .iter()
        .filter(|l| l.demand.is_none())
        .map(|l| l.dx * l.dy)
        .max();
    assert_eq!(largest, Some(2208));
}

#[test]
fn offcuts_are_used_before_a_sheet_is_begun() {
    // Two 60 × 30 leave 36 × 30 and 60 × 18 each.
    let mut demands = vec![demand(60, 30, true); 2];
    demands.extend([
        demand(36, 30, true),
        demand(36, 30, true),
        demand(60, 18, true),
        demand(60, 18, true),
    ]);
    let answer = solved(&[stock(96, 48, 30)], demands, 0);
    assert_eq!(answer.sheets.len(), 2);
}

#[test]
fn pieces_larger_than_half_a_sheet_count() {
    // Five of 50 × 25 on 96 × 48 are 6250 of 4608 each: by area two sheets, but no two lie on one.
    let answer = solved(&[stock(96, 48, 7)], vec![demand(50, 25, false); 5], 0);
    assert_eq!((answer.cost, answer.bound), (35, 35));
}

#[test]
fn nothing_asked_is_nothing_laid() {
    let answer = solved(&[], vec![], 1);
    assert_eq!((answer.sheets.len(), answer.cost, answer.bound), (0, 0, 0));
    assert_eq!(solved(&[], vec![demand(1, 1, true)], 1).too_large, [0]);
    assert_eq!(
        solved(&[stock(0, 5, 1)], vec![demand(1, 1, true)], 1).too_large,
        [0]
    );
}

#[test]
fn a_price_of_nothing_is_a_price() {
    let answer = solved(
        &[stock(10, 10, 0), stock(20, 20, 5)],
        vec![demand(8, 8, true); 3],
        1,
    );
    assert_eq!((answer.cost, answer.bound), (0, 0));
}

#[test]
fn the_widest_of_everything() {
    let most = u32::MAX;
    let sheets = [
        stock(most, most, u64::MAX),
        stock(most, 1, 3),
        stock(1, 1, 1),
    ];
    let demands = vec![
        demand(most, most, true),
        demand(most, 1, false),
        demand(1, most, true),
        demand(1, 1, true),
    ];
    for kerf in [0, 1, most] {
        solved(&sheets, demands.clone(), kerf);
    }
}

/// Sheets and pieces as they are bought and cut, in sixteenths.
fn usual() -> impl Strategy<Value = Problem> {
    let stock = (400..1600_u32, 200..800_u32, 1..9000_u64).prop_map(|(l, w, c)| stock(l, w, c));
    let demand = (10..1200_u32, 10..800_u32, any::<bool>()).prop_map(|(l, w, t)| demand(l, w, t));
    (
        prop::collection::vec(stock, 1..4),
        prop::collection::vec(demand, 0..40),
        0..4_u32,
    )
        .prop_map(|(stock, demands, kerf)| Problem {
            stock,
            demands,
            kerf,
        })
}

/// Anything at all: nothings, whole numbers and the largest there are.
fn wild() -> impl Strategy<Value = Problem> {
    let side = || prop_oneof![Just(0), 1..20_u32, Just(u32::MAX), any::<u32>()];
    let cost = prop_oneof![Just(0), 1..20_u64, any::<u64>()];
    let stock = (side(), side(), cost).prop_map(|(l, w, c)| stock(l, w, c));
    let demand = (side(), side(), any::<bool>()).prop_map(|(l, w, t)| demand(l, w, t));
    (
        prop::collection::vec(stock, 0..4),
        prop::collection::vec(demand, 0..12),
        side(),
    )
        .prop_map(|(stock, demands, kerf)| Problem {
            stock,
            demands,
            kerf,
        })
}

/// Sheets cut up at random: a layout is known, and what it costs.
fn cut_up(sheets: &[bool], kerf: u32, cuts: &[(u16, bool, u16)]) -> (Problem, u64) {
    let stock = vec![stock(96, 48, 100), stock(60, 36, 45)];
    let kinds = sheets.iter().map(|large| &stock[usize::from(!large)]);
    let cost = kinds.clone().map(|s| s.cost).sum();
    let mut parts: Vec<_> = kinds.map(|s| (s.length, s.width)).collect();
    for (which, across, share) in cuts {
        let i = usize::from(*which) % parts.len();
        let (l, w) = parts[i];
        let side = if *across { l } else { w };
        if side < 8 + kerf {
            continue;
        }
        let at = 4 + u32::from(*share) % (side - kerf - 7);
        let rest = side - at - kerf;
        let [a, b] = if *across {
            [(at, w), (rest, w)]
        } else {
            [(l, at), (l, rest)]
        };
        parts[i] = a;
        parts.push(b);
    }
    let demands = parts.into_iter().map(|(l, w)| demand(l, w, true)).collect();
    let problem = Problem {
        stock,
        demands,
        kerf,
    };
    (problem, cost)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn usual_problems_are_laid_out(problem in usual()) {
        prove(&problem, &solve(&problem));
    }

    #[test]
    fn no_problem_is_too_wild(problem in wild()) {
        prove(&problem, &solve(&problem));
    }

    #[test]
    fn no_layout_that_is_known_undercuts_the_bound(
        sheets in prop::collection::vec(any::<bool>(), 1..6),
        kerf in 0..4_u32,
        cuts in prop::collection::vec((any::<u16>(), any::<bool>(), any::<u16>()), 0..30),
    ) {
        let (problem, cost) = cut_up(&sheets, kerf, &cuts);
        let answer = solve(&problem);
        prove(&problem, &answer);
        prop_assert!(answer.bound <= cost, "{} for {cost}", answer.bound);
        // A sheet more than where nothing at all goes to waste.
        prop_assert!(answer.cost <= cost + 100, "{} for {cost}", answer.cost);
    }

    #[test]
    fn the_area_bounds_sheets_without_waste(
        sheets in 1..6_usize,
        cuts in prop::collection::vec((any::<u16>(), any::<bool>(), any::<u16>()), 0..30),
    ) {
        let (mut problem, cost) = cut_up(&vec![true; sheets], 0, &cuts);
        problem.stock.truncate(1);
        prop_assert_eq!(solve(&problem).bound, cost);
    }
}
