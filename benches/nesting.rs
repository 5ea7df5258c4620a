//! How long sheet layouts take: sixty boards and strips on three sizes of sheets, and two thousand.
//!
//! `cargo bench --bench nesting`

use islandwright::takeoff::nesting::{Demand, Problem, Stock, solve};

fn main() {
    divan::main();
}

/// So many rectangles that look thrown, in sixteenths of an inch, a saw's kerf between them.
fn problem(count: u32) -> Problem {
    let side = |k: u32, most: u32| 20 + k.wrapping_mul(2_654_435_761) % most;
    let stock = |length, width, cost| Stock {
        length,
        width,
        cost,
    };
    Problem {
        stock: vec![
            stock(1536, 768, 4200),
            stock(960, 576, 2300),
            stock(768, 768, 2500),
        ],
        demands: (0..count)
            .map(|k| Demand {
                length: side(2 * k, 900),
                width: side(2 * k + 1, 500),
                may_turn: k % 3 > 0,
            })
            .collect(),
        kerf: 2,
    }
}

#[divan::bench(args = [10, 60, 2000])]
fn lay_out(bencher: divan::Bencher, count: u32) {
    let problem = problem(count);
    bencher.bench(|| solve(divan::black_box(&problem)));
}
