//! The rules, asked of designs drawn at random: every rule says something, and what it says is fit to print.

use islandwright::plan::Plan;
use islandwright::rules::{Subject, ask, rules};

/// What is wrong with the answers.
pub fn faults(plan: &Plan) -> Vec<String> {
    let subject = Subject::new(plan);
    let mut faults = Vec::new();
    for rule in rules() {
        let answers = ask(rule, &subject);
        if answers.is_empty() {
            faults.push(format!("{} says nothing", rule.code));
        }
        for a in &answers {
            let text = format!("{} {} {}", a.found, a.limit, a.hint);
            let odd = ["NaN", "inf\"", " inf ", "-inf"];
            if a.found.is_empty() || a.found.ends_with('.') || odd.iter().any(|o| text.contains(o))
            {
                faults.push(format!("{}: {text}", rule.code));
            }
        }
    }
    faults
}
