//! The bare frame racks until its boards are on.

use crate::design::Bracing;
use crate::diagnostics::Place;
use crate::plan::PanelOf;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// How much of a panel one temporary diagonal keeps.
const DIAGONAL: Limit = Limit {
    name: "temporary-diagonal",
    what: "length of a panel that one temporary diagonal keeps straight",
    usual: 2438.4,
    unit: Unit::Length,
    source: "8 ft, common practice",
};

pub(super) static BARE_RACKING: Rule = Rule {
    code: "frame-bare-racking",
    family: Family::Frame,
    title: "The bare frame racks until its boards are on",
    about: About {
        checks: "Always a caution: it says how many temporary diagonals to screw on, and where, before anything heavy is set on the frame.",
        why: "Bare studs and track fold sideways like a gate. With a sheet and wet concrete on top they fall on whoever stands there.",
        reckoned: "One diagonal for each `temporary-diagonal` of every panel, at least one, and one flat across the top of each run from corner to corner. They stay until the boards, \
                   or the straps, are screwed on along the whole face; those that hold the top stay until the slab has hardened. Common practice.",
        example: "A straight run of 10 ft: two on each long side, one on each end, one across the top: seven.",
    },
    limits: &[&DIAGONAL],
    levers: &[],
    outside: &[Outside {
        what: "a diagonal for each 8 ft of a framed wall until it is sheathed",
        origin: Origin::Practice,
        test: "a_straight_run_needs_seven",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let every = subject.bound(&DIAGONAL).value.max(1.0);
    let until = match subject.design().making.bracing.as_ref().map(|b| b.value) {
        Some(Bracing::Straps) => "the straps and boards",
        _ => "the boards",
    };
    for (i, run) in subject.design().runs.iter().enumerate() {
        let of_run = || subject.plan.panels.iter().filter(|p| p.run == i);
        let diagonals = |length: f64| ((length / every - 1e-9).ceil() as usize).max(1);
        let count = |wanted: fn(PanelOf) -> bool| -> usize {
            let panels = of_run().filter(|p| wanted(p.of));
            panels.map(|p| diagonals(p.length)).sum()
        };
        let sides = count(|of| matches!(of, PanelOf::Side(_)));
        let inside = count(|of| matches!(of, PanelOf::Bulkhead(_)));
        let within = match inside {
            0 => String::new(),
            n => format!(", {n} on the bulkheads"),
        };
        let name = run.name.value.as_str();
        let found = format!(
            "run '{name}' racks until {until} are on: screw {} temporary diagonals to it first, {sides} on its sides{within}, 1 flat across its top",
            sides + inside + 1
        );
        let place = if run.name.place.is_known() {
            run.name.place.clone()
        } else {
            Place::default()
        };
        answers
            .caution(&place, found)
            .about(name)
            .limit("no load on the frame before it is braced", "common practice")
            .hint("lengths of track or 1 × 4, two screws at each end; take them off as the boards go on, those on top when the slab has hardened");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    // It always cautions: a bare frame is never safe, and nothing it asks can be missing.

    #[test]
    fn a_straight_run_needs_seven() {
        // Common practice: a diagonal for each 8 ft. 10 ft: two on each long side, one on each end, one on top.
        let straight = Trial::bare()
            .with("runs", "[{name: cook, length: 10 ft, depth: 30 in}]")
            .without("counter.joints");
        let found = straight.about("frame-bare-racking", "cook");
        assert_eq!(found.verdict, Verdict::Caution);
        assert!(
            found.found.contains("screw 7 temporary diagonals"),
            "{found:?}"
        );
        let short = Trial::bare()
            .with("runs", "[{name: cook, length: 6 ft, depth: 30 in}]")
            .without("counter.joints");
        let found = short.about("frame-bare-racking", "cook").found;
        assert!(found.contains("screw 5 temporary"), "{found}");
    }
}
