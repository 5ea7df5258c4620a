//! Prints as JSON what gas pipes carry and lose: each row of both tables with what the equation gives over the same length,
//! and two trees of pipe with the load, the longest length and the drops of each. The outside readers run it.
//!
//! `cargo run --example gas`

use islandwright::rules::piping::{
    Branch, Gas, Nominal, TABLE_DROP, Tree, drop_over, drops, flow_for, rows,
};
use islandwright::units::{Length, Power};
use serde_json::{Value, json};

fn name(gas: Gas) -> &'static str {
    match gas {
        Gas::Natural => "natural gas",
        Gas::Propane => "propane",
    }
}

fn pipe(gas: Gas, size: Nominal, feet: f64) -> Value {
    let length = Length::inches(feet * 12.0);
    let row = rows(gas).iter().find(|r| r.feet == feet);
    let carried = flow_for(gas, size, length, TABLE_DROP);
    let half = Power::watts(carried.w() / 2.0);
    json!({
        "gas": name(gas),
        "size": size.name(),
        "inside_mm": size.inside().mm(),
        "feet": feet,
        "by_table_w": row.map(|r| r.heat(gas, size).w()),
        "by_equation_w": carried.w(),
        "by_equation_cfh": gas.flow_of(carried),
        "drop_at_half_pa": drop_over(gas, size, length, half).mpa() * 1e6,
    })
}

fn pipes() -> Value {
    let mut all = Vec::new();
    for gas in [Gas::Natural, Gas::Propane] {
        for feet in [10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0] {
            all.extend(Nominal::ALL.map(|size| pipe(gas, size, feet)));
        }
    }
    Value::Array(all)
}

/// A tree of branches, each with what feeds it, its length in feet, its size and the cubic feet an hour burnt at its end.
fn tree(gas: Gas, branches: &[(Option<usize>, f64, Nominal, f64)]) -> Option<Value> {
    let branch = |(i, b): (usize, &(Option<usize>, f64, Nominal, f64))| Branch {
        name: i.to_string(),
        upstream: b.0,
        length: Length::inches(b.1 * 12.0),
        size: Some(b.2),
        load: Some(gas.heat_of(b.3)),
    };
    let tree = Tree::new(branches.iter().enumerate().map(branch).collect())?;
    let loads = tree.loads();
    let lost = drops(&tree, gas);
    let described = tree.branches().iter().enumerate().map(|(i, b)| {
        json!({
            "upstream": b.upstream,
            "feet": b.length.in_inches() / 12.0,
            "inside_in": b.size.map(|s| s.inside().in_inches()),
            "own_cfh": b.load.map(|l| gas.flow_of(l)),
            "carried_cfh": loads[i].map(|l| gas.flow_of(l)),
            "lost_pa": lost[i].map(|d| d.mpa() * 1e6),
        })
    });
    Some(json!({
        "gas": name(gas),
        "branches": described.collect::<Vec<_>>(),
        "longest_feet": tree.longest().in_inches() / 12.0,
    }))
}

fn main() {
    use Nominal::{Half, One, OneAndAQuarter, ThreeQuarters};
    // IFGC appendix A, example 1, and a lopsided tree that is invented.
    let example = [
        (None, 20.0, One, 0.0),
        (Some(0), 25.0, ThreeQuarters, 0.0),
        (Some(0), 10.0, ThreeQuarters, 0.0),
        (Some(1), 15.0, Half, 35.0),
        (Some(1), 10.0, ThreeQuarters, 75.0),
        (Some(2), 10.0, Half, 35.0),
        (Some(2), 15.0, ThreeQuarters, 100.0),
    ];
    let lopsided = [
        (None, 12.5, OneAndAQuarter, 4.0),
        (Some(0), 3.0, One, 0.0),
        (Some(1), 31.0, ThreeQuarters, 24.0),
        (Some(1), 2.0, One, 0.0),
        (Some(3), 7.25, Half, 12.0),
        (Some(3), 18.0, Half, 6.0),
        (None, 5.0, Half, 9.0),
        (Some(6), 44.0, Half, 2.0),
    ];
    let trees = [tree(Gas::Natural, &example), tree(Gas::Propane, &lopsided)];
    println!("{}", json!({"pipes": pipes(), "trees": trees}));
}
