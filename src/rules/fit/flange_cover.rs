//! Whether each flange covers the cut edge behind it.

use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// How far a flange lies over the counter beyond the cutout.
const ON_COUNTER: Limit = Limit {
    name: "flange-on-counter",
    what: "how far a flange lies over the counter beyond the cutout",
    usual: 9.525,
    unit: Unit::Length,
    source: "common practice",
};

/// How far a flange lies over the finished face beyond the opening.
const ON_FACE: Limit = Limit {
    name: "flange-on-face",
    what: "how far a flange lies over the finished face beyond the opening",
    usual: 12.7,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static FLANGE_COVER: Rule = Rule {
    code: "fit-flange-cover",
    family: Family::Fit,
    title: "Each flange covers the cut edge of counter, board and stucco",
    about: About {
        checks: "Every flange of an appliance passes the edge of its cutout by at least `flange-on-counter`, and every flange of \
                 a door, drawer, vent or cover passes its opening by at least `flange-on-face`. It fails where one does not.",
        why: "Concrete chips where a form is pulled and a cut board frays: the flange hides that, keeps water out, and is \
              all that holds the appliance up.",
        reckoned: "The flange as the file gives it, `flange`, against the limit; both are measured from the edge of the hole. \
                   Both limits are common practice.",
        example: "A flange of 1/4 in round an ice well is less than 3/8 in: it fails. A flange of 3/4 in passes.",
    },
    limits: &[&ON_COUNTER, &ON_FACE],
    levers: &["appliances[].flange", "openings[].flange"],
    outside: &[Outside {
        what: "3/8 in over concrete and 1/2 in over stucco, as builders have it",
        origin: Origin::Practice,
        test: "a_flange_covers_or_it_does_not",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    if design.appliances.is_empty() && design.openings.is_empty() {
        answers.nothing("there is no appliance and no opening");
        return;
    }
    let (counter, face) = (subject.bound(&ON_COUNTER), subject.bound(&ON_FACE));
    let over_counter = design
        .appliances
        .iter()
        .map(|a| (&a.name, &a.flange, &a.place, "counter", &counter));
    let over_face = design
        .openings
        .iter()
        .map(|o| (&o.name, &o.flange, &o.place, "face", &face));
    for (name, flange, entry, over, least) in over_counter.chain(over_face) {
        let lies = subject.mm(flange.mm());
        let found = format!("the flange of '{name}' lies {lies} over the {over}");
        answers
            .judge(
                least.is_reached_by(flange.mm()),
                flange.place.or(entry),
                found,
            )
            .about(name)
            .at_least(least)
            .hint("make the hole smaller, or choose a wider flange");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    // A flange covers or it does not, and each has a size: there is no caution, and nothing is left unchecked.

    // A flange has its usual width where the file does not say: it covers or it does not, so neither a caution nor
    // `not checked` can come of it.
    #[test]
    fn a_flange_covers_or_it_does_not() {
        // Common practice: 3/8 in over concrete, 1/2 in over stucco.
        let sound = Trial::sound();
        assert_eq!(sound.worst("fit-flange-cover"), Verdict::Pass);
        let narrow = Trial::sound().with("appliances[ice well].flange", "1/4 in");
        let found = narrow.about("fit-flange-cover", "ice well");
        assert_eq!(found.verdict, Verdict::Fail);
        assert_eq!(found.limit, "at least 3/8\"");
        let narrow = Trial::sound().with("openings[low vent].flange", "3/8 in");
        assert_eq!(narrow.worst("fit-flange-cover"), Verdict::Fail);
        let nothing = Trial::bare();
        assert_eq!(nothing.worst("fit-flange-cover"), Verdict::Pass);
    }
}
