use proptest::prelude::*;

use super::{Answer, Demand, Problem, Proof, Stick, solve};

fn stick(length: u32, cost: u64) -> Stick {
    Stick { length, cost }
}

fn free(length: u32, count: u32) -> Demand {
    Demand {
        length,
        count,
        aligned: false,
    }
}

fn aligned(length: u32, count: u32) -> Demand {
    Demand {
        aligned: true,
        ..free(length, count)
    }
}

fn problem(sticks: &[Stick], demands: &[Demand]) -> Problem {
    Problem {
        sticks: sticks.to_vec(),
        demands: demands.to_vec(),
        kerf: 0,
        trim: 0,
        pitch: None,
    }
}

/// What a reader of the answer relies on, checked piece by piece.
fn check(problem: &Problem, answer: &Answer) -> Result<(), TestCaseError> {
    let mut served = vec![0_u64; problem.demands.len()];
    let mut cost = 0_u128;
    let mut longest = 0;
    for pattern in &answer.patterns {
        let stick = problem.sticks[pattern.stick];
        prop_assert!(pattern.times > 0 && !pattern.cuts.is_empty());
        cost += u128::from(stick.cost) * u128::from(pattern.times);
        let mut free_from = 0;
        for cut in &pattern.cuts {
            let demand = problem.demands[cut.demand];
            let (start, length) = (u64::from(cut.start), u64::from(demand.length));
            prop_assert!(start >= free_from, "{pattern:?}");
            prop_assert!(
                start + length + u64::from(problem.trim) <= stick.length.into(),
                "{pattern:?}"
            );
            let foot = if cut.reversed { start + length } else { start };
            if let Some(pitch) = problem.pitch.filter(|p| demand.aligned && *p > 0) {
                prop_assert_eq!(foot % u64::from(pitch), 0, "{:?}", pattern);
            }
            free_from = start + length + u64::from(problem.kerf);
            served[cut.demand] += u64::from(pattern.times);
        }
        let room = u64::from(stick.length - problem.trim) + u64::from(problem.kerf);
        let left = (room - free_from).saturating_sub(problem.kerf.into());
        prop_assert!(left <= answer.offcut.length.into());
        longest = longest.max(left);
    }
    prop_assert_eq!(answer.cost, u64::try_from(cost).unwrap_or(u64::MAX));
    prop_assert_eq!(u64::from(answer.offcut.length), longest);
    prop_assert!(answer.bound <= answer.cost);
    match answer.proof {
        Proof::Proven => prop_assert_eq!(answer.bound, answer.cost),
        Proof::Within { bound } => prop_assert_eq!(bound, answer.bound),
    }
    let fits = |d: &Demand| {
        problem
            .sticks
            .iter()
            .any(|s| u64::from(s.length) >= u64::from(d.length) + u64::from(problem.trim))
    };
    for (index, demand) in problem.demands.iter().enumerate() {
        let needed = demand.count > 0 && demand.length > 0;
        prop_assert_eq!(answer.too_long.contains(&index), needed && !fits(demand));
        let count = if needed && fits(demand) {
            demand.count
        } else {
            0
        };
        prop_assert_eq!(served[index], u64::from(count));
    }
    Ok(())
}

fn sticks() -> impl Strategy<Value = Vec<Stick>> {
    let one = (20_u32..400, 1_u64..2_000).prop_map(|(length, cost)| stick(length, cost));
    proptest::collection::vec(one, 1..5)
}

fn demands() -> impl Strategy<Value = Vec<Demand>> {
    let one = (4_u32..200, 1_u32..7, any::<bool>()).prop_map(|(length, count, aligned)| Demand {
        length,
        count,
        aligned,
    });
    proptest::collection::vec(one, 1..8)
}

fn problems() -> impl Strategy<Value = Problem> {
    let pitch = proptest::option::of(10_u32..60);
    (sticks(), demands(), 0_u32..5, 0_u32..8, pitch).prop_map(
        |(sticks, demands, kerf, trim, pitch)| Problem {
            sticks,
            demands,
            kerf,
            trim,
            pitch,
        },
    )
}

/// Any numbers at all, the largest included.
fn anything() -> impl Strategy<Value = Problem> {
    let number = || prop_oneof![0_u32..4, 90_u32..110, u32::MAX - 3..=u32::MAX, any::<u32>()];
    let cost = prop_oneof![0_u64..4, u64::MAX - 3..=u64::MAX, any::<u64>()];
    let stick = (number(), cost).prop_map(|(length, cost)| stick(length, cost));
    let demand = (number(), number(), any::<bool>()).prop_map(|(length, count, aligned)| Demand {
        length,
        count,
        aligned,
    });
    (
        proptest::collection::vec(stick, 0..4),
        proptest::collection::vec(demand, 0..5),
        number(),
        number(),
        proptest::option::of(number()),
    )
        .prop_map(|(sticks, demands, kerf, trim, pitch)| Problem {
            sticks,
            demands,
            kerf,
            trim,
            pitch,
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn every_piece_fits_and_every_demand_is_served(problem in problems()) {
        check(&problem, &solve(&problem))?;
    }

    #[test]
    fn the_order_of_the_demands_changes_nothing_in_the_cost(problem in problems()) {
        let mut turned = problem.clone();
        turned.demands.reverse();
        turned.sticks.reverse();
        let (answer, other) = (solve(&problem), solve(&turned));
        if answer.proof == Proof::Proven && other.proof == Proof::Proven {
            prop_assert_eq!(answer.cost, other.cost);
        } else {
            prop_assert!(answer.bound <= other.cost && other.bound <= answer.cost);
        }
    }

    #[test]
    fn the_same_problem_has_the_same_answer(problem in problems()) {
        prop_assert_eq!(solve(&problem), solve(&problem));
    }

    #[test]
    fn no_numbers_make_it_stumble(problem in anything()) {
        check(&problem, &solve(&problem))?;
    }
}

/// The classic instance of reference-values.md: one stock of 5600, the published optimum is 73 sticks.
#[test]
fn the_classic_instance_takes_73_sticks() {
    let lengths = [
        1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200,
    ];
    let counts = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
    let demands: Vec<_> = lengths
        .into_iter()
        .zip(counts)
        .map(|(l, n)| free(l, n))
        .collect();
    let problem = problem(&[stick(5600, 1)], &demands);
    let answer = solve(&problem);
    check(&problem, &answer).unwrap();
    assert_eq!((answer.cost, answer.proof), (73, Proof::Proven));
}

/// Two pieces of 50 and a cut of 1 do not come out of 100; out of 101 they do, for the last cut falls off the end.
#[test]
fn a_cut_lies_between_pieces_only() {
    for (length, sticks) in [(100, 2), (101, 1)] {
        let saw = Problem {
            kerf: 1,
            ..problem(&[stick(length, 5)], &[free(50, 2)])
        };
        assert_eq!(solve(&saw).cost, 5 * sticks);
    }
}

/// Twelve of 10: one stick of 120 costs 12, ten of 12 cost 10 each; two of 60 cost the same as one of 120 in the second case.
#[test]
fn the_least_cost_comes_first_then_the_fewest_sticks() {
    let answer = solve(&problem(&[stick(120, 12), stick(60, 5)], &[free(10, 12)]));
    assert_eq!((answer.cost, answer.patterns[0].times), (10, 2));
    let answer = solve(&problem(&[stick(60, 6), stick(120, 12)], &[free(10, 12)]));
    assert_eq!((answer.cost, answer.patterns[0].times), (12, 1));
    assert_eq!(answer.proof, Proof::Proven);
}

/// Pitch 24, pieces of 20: feet at 0, 24, 48 … Turned end for end a piece reaches back from 48 to 28 and so on. On 92 free pieces
/// lie four; aligned ones [0,20] [28,48] [48,68] [72,92] as well; on 91 only three.
#[test]
fn aligned_pieces_have_their_feet_on_the_pitch() {
    for (length, sticks) in [(92, 1), (91, 2)] {
        let studs = Problem {
            pitch: Some(24),
            ..problem(&[stick(length, 1)], &[aligned(20, 4)])
        };
        let answer = solve(&studs);
        check(&studs, &answer).unwrap();
        assert_eq!((answer.cost, answer.proof), (sticks, Proof::Proven));
    }
}

/// A frame of 72 pieces and sticks of 8 to 20 ft at example prices, in sixteenths of an inch. Its pieces are 28,762 long and eight
/// sticks of 20 ft 30,720; two studs and the gap between them take three pitches. Seven sticks of 20 ft are 26,880: too short.
/// `HiGHS` finds nothing cheaper than these eight sticks either.
#[test]
fn a_frame_of_equal_studs_takes_eight_sticks_of_twenty_feet() {
    let sticks = [(1536, 790), (1920, 955), (2304, 1150), (3072, 1500)];
    let mut sticks: Vec<Stick> = sticks.map(|(l, c)| stick(l, c)).to_vec();
    sticks.push(stick(3840, 1855));
    let short = [(215, 1), (103, 3), (95, 1), (63, 3), (55, 2), (47, 2)];
    let mut demands = vec![free(517, 1), aligned(503, 41), free(396, 12)];
    demands.extend([aligned(391, 2), free(277, 2), free(261, 2)]);
    demands.extend(short.map(|(length, count)| free(length, count)));
    let frame = Problem {
        pitch: Some(384),
        ..problem(&sticks, &demands)
    };
    let answer = solve(&frame);
    check(&frame, &answer).unwrap();
    assert_eq!((answer.cost, answer.proof), (14_840, Proof::Proven));
    let bought: u32 = answer.patterns.iter().map(|p| p.times).sum();
    assert!(bought == 8 && answer.patterns.iter().all(|p| p.stick == 4));
}

/// 60, 50, 30 and 20 on two sticks of 100 leave 40 together: all of it in one piece if 50, 30 and 20 share a stick. A cut of 1
/// makes that stick too full; then 60 and 30 share one, and 100 - 50 - 1 - 20 - 1 are left, for the offcut is cut off too.
#[test]
fn among_equal_answers_the_longest_offcut_is_left() {
    let shears = problem(
        &[stick(100, 3)],
        &[free(60, 1), free(50, 1), free(30, 1), free(20, 1)],
    );
    let answer = solve(&shears);
    assert_eq!(
        (answer.cost, answer.offcut.length, answer.offcut.proven),
        (6, 40, true)
    );
    let saw = Problem { kerf: 1, ..shears };
    let answer = solve(&saw);
    assert_eq!(
        (answer.cost, answer.offcut.length, answer.offcut.proven),
        (6, 28, true)
    );
}

#[test]
fn what_no_stick_is_long_enough_for_is_named_and_the_rest_is_cut() {
    let answer = solve(&Problem {
        trim: 1,
        ..problem(&[stick(100, 7)], &[free(100, 1), free(99, 2)])
    });
    assert_eq!((answer.too_long, answer.cost), (vec![0], 14));
}

#[test]
fn nothing_to_cut_costs_nothing() {
    let answer = solve(&problem(&[], &[]));
    assert_eq!((answer.cost, answer.proof), (0, Proof::Proven));
}
