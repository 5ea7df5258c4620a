//! Whether the middle of the counter and its receptacles are within reach.

use crate::design::{OpeningKind, Side};
use crate::diagnostics::Verdict;
use crate::plan::{Face, Plan};
use crate::rules::around::counter_edge;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const fn reach(name: &'static str, what: &'static str, inches: f64, source: &'static str) -> Limit {
    Limit {
        name,
        what,
        usual: inches * 25.4,
        unit: Unit::Length,
        source,
    }
}

/// Over the counter at ease.
const ACROSS: Limit = reach(
    "reach-across",
    "how far one reaches over a counter",
    25.0,
    "ADA Standards 2010, 308.2.3, value from memory",
);
/// Over the counter at all.
const FARTHEST: Limit = reach(
    "reach-across-most",
    "how far anybody reaches over a counter",
    36.0,
    "common practice",
);
/// Lowest receptacle.
const LOW: Limit = reach(
    "reach-low",
    "the least height of a receptacle that is reached without bending down",
    15.0,
    "ADA Standards 2010, 308.2.1, value from memory",
);
/// Highest receptacle.
const HIGH: Limit = reach(
    "reach-high",
    "the greatest height of a receptacle that is reached from a chair",
    48.0,
    "ADA Standards 2010, 308.2.1, value from memory",
);

pub(super) static REACH: Rule = Rule {
    code: "people-reach",
    family: Family::People,
    title: "The middle of the counter and the receptacles are within reach",
    about: About {
        checks: "From the nearer open side one reaches the middle of the counter, or its far edge where the other side is a wall, within \
                 `reach-across`: more is a caution, more than `reach-across-most` fails. Receptacles are between `reach-low` and \
                 `reach-high` above the ground: outside is a caution, and fails where the file asks for an accessible island.",
        why: "What cannot be reached is not wiped; leaning over a hot grill for a plug is how sleeves catch fire.",
        reckoned: "Depth of the counter from edge to edge over each run, overhangs included; half of it where both sides are open. \
                   The middle of each receptacle above the ground.",
        example: "A counter 44 in deep that is open on both sides: 22 in to its middle. 30 in against a wall: a caution.",
    },
    limits: &[&ACROSS, &FARTHEST, &LOW, &HIGH],
    levers: &[
        "runs[].depth",
        "counter.overhang.seating",
        "counter.overhang.working",
        "openings[].sill",
    ],
    outside: &[Outside {
        what: "reach ranges: 25 in over an obstruction, 15 to 48 in up (ADA 2010, 308)",
        origin: Origin::Memory,
        test: "reach_ranges_are_those_of_the_standard",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    for run in 0..subject.plan.runs.len() {
        across(subject, answers, run);
    }
    let accessible = subject
        .design()
        .people
        .accessible
        .as_ref()
        .is_some_and(|a| a.value);
    let (low, high) = (subject.bound(&LOW), subject.bound(&HIGH));
    for o in subject
        .design()
        .openings
        .iter()
        .filter(|o| o.kind == OpeningKind::Receptacle)
    {
        let middle = o.sill.mm() + o.height.mm() / 2.0;
        let found = format!(
            "the middle of '{}' is {} above the ground",
            o.name,
            subject.mm(middle)
        );
        let holds = low.is_reached_by(middle) && high.allows(middle);
        let verdict = match (holds, accessible) {
            (true, _) => Verdict::Pass,
            (false, true) => Verdict::Fail,
            (false, false) => Verdict::Caution,
        };
        let answer = answers
            .say(verdict, o.sill.place.or(&o.place), found)
            .about(&o.name);
        let answer = answer.limit(
            format!("between {} and {}", low.spell(), high.spell()),
            low.source.clone(),
        );
        if !holds {
            answer.hint("move it up or down");
        }
    }
    if answers.is_empty() {
        answers.nothing("every run stands between walls, and there is no receptacle");
    }
}

fn across(subject: &Subject, answers: &mut Answers, run: usize) {
    let plan = subject.plan;
    let [working, seating] = [Side::Working, Side::Seating].map(|s| side(plan, run, s));
    let (Some(working), Some(seating), Some(laid)) = (working, seating, plan.runs.get(run)) else {
        return;
    };
    let depth = laid.depth + counter_edge(plan, working) + counter_edge(plan, seating);
    let name = &subject.design().runs[run].name.value;
    let place = &subject.design().runs[run].depth.place;
    let (far, what) = match (working.wall, seating.wall) {
        (true, true) => return,
        (false, false) => (depth / 2.0, "to its middle"),
        _ => (depth, "to the wall"),
    };
    let (bound, most) = (subject.bound(&ACROSS), subject.bound(&FARTHEST));
    let found = format!(
        "over the counter of run '{name}' one reaches {} {what}",
        subject.mm(far)
    );
    let hint = "make the run or its overhangs less deep";
    if bound.allows(far) {
        answers.pass(place, found).about(name).at_most(&bound);
    } else if most.allows(far) {
        answers
            .caution(place, found)
            .about(name)
            .at_most(&bound)
            .hint(hint);
    } else {
        answers
            .fail(place, found)
            .about(name)
            .at_most(&most)
            .hint(hint);
    }
}

fn side(plan: &Plan, run: usize, side: Side) -> Option<&Face> {
    plan.faces.iter().find(|f| f.run == run && f.side == side)
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "people-reach";

    // Sizes are always known, so nothing is left unchecked.

    #[test]
    fn reach_ranges_are_those_of_the_standard() {
        // ADA 2010, 308, from memory: 25 in over an obstruction, 15 to 48 in up.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // Cook run: 30 + 2-7/8 + 10-7/8 = 43-3/4, half of it 21-7/8. 37 in deep makes 25-3/8.
        let deep = Trial::bare().with("runs[cook].depth", "37 in");
        assert_eq!(deep.about(CODE, "cook").verdict, Verdict::Caution);
        assert_eq!(
            Trial::bare().with("runs[cook].depth", "60 in").worst(CODE),
            Verdict::Fail
        );
        // 30 in against a wall: 32-7/8 to the wall.
        let wall = Trial::bare().with("runs[cook].walls", "[seating]");
        assert_eq!(wall.about(CODE, "cook").verdict, Verdict::Caution);
    }

    #[test]
    fn a_low_receptacle_is_a_caution_and_fails_where_access_is_asked_for() {
        // 12 + 2-1/4 = 14-1/4 in.
        let low = Trial::sound().with("openings[receptacle].sill", "12 in");
        assert_eq!(low.about(CODE, "receptacle").verdict, Verdict::Caution);
        let asked = low.with("people.accessible", "true");
        assert_eq!(asked.about(CODE, "receptacle").verdict, Verdict::Fail);
    }
}
