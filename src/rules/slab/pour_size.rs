//! Whether the slab can be cast in one go.

use crate::parts::PartKind;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{Unit, Volume};

const BATCH: Limit = Limit {
    name: "minutes-a-batch",
    what: "minutes to mix and place one batch",
    usual: 6.0,
    unit: Unit::Count,
    source: "common practice, two people and one mixer",
};

const WINDOW: Limit = Limit {
    name: "minutes-a-pour",
    what: "minutes in which all of a slab must be placed, so that no cold joint forms",
    usual: 90.0,
    unit: Unit::Count,
    source: "common practice at 70 °F; ASTM C94 long set 90 minutes from mixing to discharge (value from memory); half of it at 90 °F",
};

pub(super) static POUR_SIZE: Rule = Rule {
    code: "slab-pour-size",
    family: Family::Slab,
    title: "The slab can be cast in one go",
    about: About {
        checks: "The batches of `buying.mixer` that the slab needs, each `minutes-a-batch`, are placed within `minutes-a-pour`. It cautions beyond half of \
                 that, which is what a hot day leaves, and fails beyond all of it.",
        why: "Concrete that meets concrete which has begun to set does not join it: that line is the next crack.",
        reckoned: "Batches = the slab's exact volume with the spare, by the mixer's batch, rounded up; minutes = batches × `minutes-a-batch`. Time to finishing \
                   halves for 20 °F above 70 °F (published).",
        example: "12 cu ft in batches of 1.6 are 8 batches: 48 minutes, a caution for a hot day.",
    },
    limits: &[&BATCH, &WINDOW],
    levers: &["counter.thickness", "runs[].depth"],
    outside: &[Outside {
        what: "90 minutes from mixing to discharge, long the rule of ASTM C94",
        origin: Origin::Memory,
        test: "a_large_slab_takes_too_long",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let assembly = subject.assembly();
    let slabs = assembly.parts.iter().filter(|p| p.kind == PartKind::Slab);
    let net: f64 = slabs.map(|p| assembly.solid(p).volume()).sum();
    let volume = net * (1.0 + design.buying.spare.concrete.value);
    let batches = (volume / design.buying.mixer.mm3().max(1.0)).ceil();
    let minutes = batches * subject.bound(&BATCH).value;
    let window = subject.bound(&WINDOW);
    let cubic = match subject.notation() {
        crate::units::Notation::Imperial => format!(
            "{:.1} cu ft",
            Volume::cubic_millimetres(volume).in_cubic_feet()
        ),
        crate::units::Notation::Metric => format!("{:.0} L", volume / 1e6),
    };
    let found = format!(
        "the slab takes {cubic} with the spare: {batches:.0} batches, some {minutes:.0} minutes"
    );
    let place = &design.counter.thickness.place;
    let answer = if minutes <= window.value / 2.0 {
        answers.pass(place, found)
    } else if window.allows(minutes) {
        answers.caution(place, found)
    } else {
        answers.fail(place, found)
    };
    answer
        .limit(
            format!("{:.0} minutes, half of that on a hot day", window.value),
            window.source.clone(),
        )
        .hint(
            "a second mixer and more hands, ready-mixed concrete, or a joint to which one can stop",
        );
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-pour-size";

    // Nothing it asks can be missing.
    #[test]
    fn a_large_slab_takes_too_long() {
        // Two inches over some 60 sq ft less cutouts: 9 to 10 cu ft, 11 with the spare, 7 batches of 45 L: 42 minutes.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let thick = Trial::sound().with("counter.thickness", "3 in");
        assert_eq!(thick.worst(CODE), Verdict::Caution);
        let small = Trial::sound().with("buying.mixer", "10 L");
        assert_eq!(small.worst(CODE), Verdict::Fail);
    }
}
