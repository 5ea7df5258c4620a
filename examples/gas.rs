//! Prints the capacities of gas pipes as JSON: each row of both tables, what the equation gives over the same length, and
//! drops in pressure. The outside readers run it.
//!
//! `cargo run --example gas`

use islandwright::rules::piping::{Gas, Nominal, TABLE_DROP, drop_over, flow_for, rows};
use islandwright::units::{Length, Power};
use serde_json::{Value, json};

fn described(gas: Gas, size: Nominal, feet: f64) -> Value {
    let length = Length::inches(feet * 12.0);
    let row = rows(gas).iter().find(|r| r.feet == feet);
    let carried = flow_for(gas, size, length, TABLE_DROP);
    let half = Power::watts(carried.w() / 2.0);
    json!({
        "gas": match gas { Gas::Natural => "natural gas", Gas::Propane => "propane" },
        "size": size.name(),
        "inside_mm": size.inside().mm(),
        "feet": feet,
        "by_table_w": row.map(|r| r.heat(gas, size).w()),
        "by_equation_w": carried.w(),
        "by_equation_cfh": gas.flow_of(carried),
        "drop_at_half_pa": drop_over(gas, size, length, half).mpa() * 1e6,
    })
}

fn main() {
    let mut all = Vec::new();
    for gas in [Gas::Natural, Gas::Propane] {
        for feet in [10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0] {
            all.extend(Nominal::ALL.map(|size| described(gas, size, feet)));
        }
    }
    println!("{}", Value::Array(all));
}
