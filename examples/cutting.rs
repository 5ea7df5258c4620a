//! Cuts sticks: reads one problem a line as JSON, prints one answer a line. The outside readers run it.
//!
//! `echo '{"sticks": [[240, 900]], "demands": [[50, 7, false]], "kerf": 0, "trim": 0, "pitch": null}' | cargo run --example cutting`

use std::io::BufRead;

use islandwright::takeoff::cutting::{Answer, Demand, Pattern, Problem, Proof, Stick, solve};
use serde_json::{Value, json};

fn number(value: &Value) -> Result<u32, String> {
    let number = value.as_u64().and_then(|n| u32::try_from(n).ok());
    number.ok_or_else(|| format!("{value} is no whole number of steps"))
}

fn list(value: &Value) -> Result<&Vec<Value>, String> {
    value
        .as_array()
        .ok_or_else(|| format!("{value} is no list"))
}

fn stick(value: &Value) -> Result<Stick, String> {
    let cost = value[1].as_u64();
    Ok(Stick {
        length: number(&value[0])?,
        cost: cost.ok_or_else(|| format!("{value} has no cost"))?,
    })
}

fn demand(value: &Value) -> Result<Demand, String> {
    Ok(Demand {
        length: number(&value[0])?,
        count: number(&value[1])?,
        aligned: value[2].as_bool().unwrap_or(false),
    })
}

fn problem(line: &str) -> Result<Problem, String> {
    let value: Value = serde_json::from_str(line).map_err(|e| e.to_string())?;
    let pitch = &value["pitch"];
    Ok(Problem {
        sticks: list(&value["sticks"])?
            .iter()
            .map(stick)
            .collect::<Result<_, _>>()?,
        demands: list(&value["demands"])?
            .iter()
            .map(demand)
            .collect::<Result<_, _>>()?,
        kerf: number(&value["kerf"])?,
        trim: number(&value["trim"])?,
        pitch: if pitch.is_null() {
            None
        } else {
            Some(number(pitch)?)
        },
    })
}

fn pattern(pattern: &Pattern) -> Value {
    let cuts = pattern.cuts.iter();
    let cuts: Vec<_> = cuts
        .map(|c| json!([c.demand, c.start, c.reversed]))
        .collect();
    json!({ "stick": pattern.stick, "times": pattern.times, "cuts": cuts })
}

fn describe(answer: &Answer) -> Value {
    json!({
        "patterns": answer.patterns.iter().map(pattern).collect::<Vec<_>>(),
        "too_long": answer.too_long,
        "cost": answer.cost,
        "bound": answer.bound,
        "proven": answer.proof == Proof::Proven,
        "offcut": [answer.offcut.length, answer.offcut.proven],
    })
}

fn main() -> Result<(), String> {
    for line in std::io::stdin().lock().lines() {
        let line = line.map_err(|e| e.to_string())?;
        println!("{}", describe(&solve(&problem(&line)?)));
    }
    Ok(())
}
