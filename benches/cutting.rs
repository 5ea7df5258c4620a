//! Cut lists: a shop's evening, and 2,000 pieces of 60 lengths. What each answer is worth is printed before it is timed.
//!
//! `cargo bench --bench cutting`

use islandwright::takeoff::cutting::{Demand, Problem, Proof, Stick, solve};

fn main() {
    divan::main();
}

/// Numbers that look drawn at random and are the same every time.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: u64) -> u32 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % n) as u32
    }
}

/// Sticks of 8 to 20 ft or a part of those, in steps; the longer, the less a foot costs, more or less.
fn sticks(dice: &mut Dice, foot: u32, kinds: usize) -> Vec<Stick> {
    let feet = [20, 16, 12, 10, 8].into_iter().take(kinds);
    feet.map(|feet| Stick {
        length: feet * foot,
        cost: u64::from(feet * (46 + dice.below(8)) + 25),
    })
    .collect()
}

/// Pieces from a fiftieth of the longest stick to two fifths of it, half of the lengths aligned if there is a pitch.
fn problem(
    seed: u64,
    (foot, kinds): (u32, usize),
    (lengths, pieces): (u64, u32),
    pitch: Option<u32>,
) -> Problem {
    let mut dice = Dice(seed);
    let sticks = sticks(&mut dice, foot, kinds);
    let longest = u64::from(20 * foot);
    let mut demands: Vec<Demand> = (0..lengths)
        .map(|_| Demand {
            length: (longest / 50) as u32 + dice.below(longest * 2 / 5),
            count: 0,
            aligned: pitch.is_some() && dice.below(2) == 0,
        })
        .collect();
    for _ in 0..pieces {
        demands[dice.below(lengths) as usize].count += 1;
    }
    Problem {
        sticks,
        demands,
        kerf: 2,
        trim: 0,
        pitch,
    }
}

/// Says how good the answers are, and cuts all of the problems once a round.
fn run(bencher: divan::Bencher, problems: &[Problem]) {
    let answers: Vec<_> = problems.iter().map(solve).collect();
    let proven = answers.iter().filter(|a| a.proof == Proof::Proven).count();
    let gap = |cost: u64, bound: u64| (cost - bound) as f64 / bound as f64 * 100.0;
    let worst = answers
        .iter()
        .map(|a| gap(a.cost, a.bound))
        .fold(0.0, f64::max);
    println!(
        "{proven} of {} proven, the rest within {worst:.3} % of the bound",
        answers.len()
    );
    bencher.bench(|| problems.iter().map(solve).collect::<Vec<_>>());
}

/// Ten lists of 30 pieces of 10 lengths from 5 lengths of stick, in sixteenths of an inch.
#[divan::bench(sample_count = 10, args = [None, Some(384)])]
fn ten_small_lists(bencher: divan::Bencher, pitch: Option<u32>) {
    let problems: Vec<_> = (1..=10)
        .map(|seed| problem(seed, (192, 5), (10, 30), pitch))
        .collect();
    run(bencher, &problems);
}

/// 150 pieces of 20 lengths.
#[divan::bench(sample_count = 5, args = [None, Some(384)])]
fn a_house_of_studs(bencher: divan::Bencher, pitch: Option<u32>) {
    run(bencher, &[problem(1, (192, 5), (20, 150), pitch)]);
}

/// 2,000 pieces of 60 lengths, the longest stick 10,000 steps; 1 length of stick, then 5.
#[divan::bench(sample_count = 3, args = [1, 5])]
fn two_thousand_pieces(bencher: divan::Bencher, kinds: usize) {
    run(bencher, &[problem(1, (500, kinds), (60, 2_000), None)]);
}

/// The same with half of the lengths aligned.
#[divan::bench(sample_count = 3)]
fn two_thousand_pieces_aligned(bencher: divan::Bencher) {
    run(bencher, &[problem(1, (500, 5), (60, 2_000), Some(400))]);
}
