//! Whether the ground runs water against the island, or holds it there.

use crate::rules::around::site_group;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::ground::{Ground, Level};
use crate::units::Unit;

/// What water that comes against a face can be left to.
const MOST: Limit = Limit {
    name: "runoff",
    what: "how much the ground before a face falls towards it",
    usual: 0.02,
    unit: Unit::Slope,
    source: "common practice, 1/4 in per ft: the fall that paving is given so that water runs",
};

/// What does not run.
const STILL: Limit = Limit {
    name: "runoff-still",
    what: "a fall towards a face at which water hardly runs",
    usual: 0.0625 / 12.0,
    unit: Unit::Slope,
    source: "common practice, 1/16 in per ft",
};

/// How deep a puddle may be.
const PUDDLE: Limit = Limit {
    name: "puddle",
    what: "how deep water stands under the island",
    usual: 12.7,
    unit: Unit::Length,
    source: "common practice, 1/2 in: more reaches sleepers that stand on shims",
};

pub(super) static RUNOFF: Rule = Rule {
    code: "ground-runoff",
    family: Family::Ground,
    title: "The ground runs no water against the island and holds none under it",
    about: About {
        checks: "Before each open face the ground's fall towards it, over 2 ft: it passes up to `runoff-still`, cautions up to `runoff`, and fails above. A level under the \
                 island lower than all round it holds water: a caution, and it fails where the water is deeper than `puddle`.",
        why: "Water that is led under the island stands on the sleepers, rusts the bottom track and lifts the stucco from below when it freezes.",
        reckoned: "Ground: flat triangles between the levels, the best-fit plane beyond them. Fall towards a face = (ground 2 ft before it - ground at it) / 2 ft, the mean of nine places \
                   along it. A puddle is at least as deep as the lowest level round it stands above it. Limits are common practice.",
        example: "A terrace that falls 1/8 in per ft towards the house runs water against the seating side: a caution; lay a drain before it.",
    },
    limits: &[&MOST, &STILL, &PUDDLE],
    levers: &[],
    outside: &[Outside {
        what: "paving that falls 1/4 in per ft, so that water runs",
        origin: Origin::Practice,
        test: "water_that_runs_against_a_face_is_found",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let (Some(ground), Some(survey)) = (subject.ground(), design.site.survey.as_ref()) else {
        let place = site_group(design);
        answers.missing(&place, "survey", "which way the ground falls is not known");
        return;
    };
    let Some(fitted) = &ground.fitted else {
        let found = "which way the ground falls is not known: the levels make no plane";
        answers.missing(&survey.place, "points", found);
        return;
    };
    let (most, still) = (subject.bound(&MOST), subject.bound(&STILL));
    for approach in &fitted.approaches {
        let Some(face) = subject.plan.faces.get(approach.face) else {
            continue;
        };
        let fall = subject.spell(Unit::Slope, approach.against.abs());
        let way = if approach.against > 0.0 {
            "towards"
        } else {
            "away from"
        };
        let mut found = format!("the ground falls {fall} {way} the {}", face.name);
        if approach.beyond {
            found.push_str(", by the best-fit plane");
        }
        let answer = if still.allows(approach.against) {
            answers.pass(&survey.place, found)
        } else if most.allows(approach.against) {
            answers.caution(&survey.place, found)
        } else {
            answers.fail(&survey.place, found)
        };
        answer
            .about(&face.name)
            .at_most(if most.allows(approach.against) {
                &still
            } else {
                &most
            })
            .hint("lay a drain or a gravel strip before it, or turn the ground's fall");
    }
    puddles(subject, answers, ground);
    if answers.is_empty() {
        answers.nothing("no face is open to the ground before it");
    }
}

fn puddles(subject: &Subject, answers: &mut Answers, ground: &Ground) {
    let most = subject.bound(&PUDDLE);
    let survey = subject.design().site.survey.iter();
    let places = survey.flat_map(|s| s.levels.iter().map(|l| &l.place));
    let under = |level: &Level| level.pool.filter(|_| level.under);
    let pools = ground.levels.iter().zip(places);
    for (level, place, deep) in pools.filter_map(|(l, p)| Some((l, p, under(l)?))) {
        let found = format!(
            "water stands {} deep at {}, under the island",
            subject.mm(deep),
            level.name
        );
        let answer = if most.allows(deep) {
            answers.caution(place, found)
        } else {
            answers.fail(place, found)
        };
        answer
            .about(&level.name)
            .at_most(&most)
            .hint("fill the hollow before the sleepers are laid, or drain it");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "ground-runoff";

    /// Ground that falls by so many inches per foot away from the cook.
    fn falling(per_foot: f64, more: &str) -> Trial {
        let at = |x: f64, y: f64| format!("{{x: {x} ft, y: {y} ft, z: {} in}}", -per_foot * y);
        let points = [at(-4.0, -8.0), at(14.0, -8.0), at(-4.0, 8.0), at(14.0, 8.0)];
        Trial::sound().with(
            "site.survey",
            &format!("{{points: [{}{more}]}}", points.join(", ")),
        )
    }

    #[test]
    fn water_that_runs_against_a_face_is_found() {
        let working = "cook run, working side";
        // Falling away from the cook it comes against the working side and leaves the seating side.
        assert_eq!(falling(0.06, "").worst(CODE), Verdict::Pass);
        let found = falling(0.125, "");
        assert_eq!(found.about(CODE, working).verdict, Verdict::Caution);
        assert!(
            found
                .about(CODE, working)
                .found
                .contains("0.125 in per ft towards")
        );
        assert_eq!(
            found.about(CODE, "cook run, seating side").verdict,
            Verdict::Pass
        );
        assert_eq!(
            falling(0.25, "").about(CODE, working).verdict,
            Verdict::Fail
        );
        assert_eq!(
            falling(-0.25, "")
                .about(CODE, "cook run, seating side")
                .verdict,
            Verdict::Fail
        );
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
    }

    #[test]
    fn a_hollow_under_the_island_holds_water() {
        let hollow = |deep: &str| {
            let more = format!(", {{x: 4 ft, y: 1 ft, z: -{deep}}}");
            falling(0.0, &more).about(CODE, "P5").verdict
        };
        assert_eq!(hollow("3/8 in"), Verdict::Caution);
        assert_eq!(hollow("3/4 in"), Verdict::Fail);
    }

    #[test]
    fn ground_that_is_not_known_is_asked_for() {
        let none = Trial::sound().without("site.survey");
        assert_eq!(none.worst(CODE), Verdict::NotChecked);
    }
}
