//! Whether the sleepers need no higher packs than may be built.

use crate::plan::PanelOf;
use crate::rules::around::site_group;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};
use crate::site::ground::Pack;
use std::collections::BTreeMap;

pub(super) static PACKING: Rule = Rule {
    code: "ground-packing",
    family: Family::Ground,
    title: "No sleeper needs a higher pack of shims than is allowed",
    about: About {
        checks: "The highest pack under each sleeper, from the ground to its level underside, against `site.survey.most_packing`: usually 2 in or 50 mm. It passes up to \
                 it, cautions where it passes it by no more than the thinnest shim, and fails above.",
        why: "A tall stack of shims creeps, splits and walks out from under the sleeper when somebody leans on the counter.",
        reckoned: "Gap = base gap - height of the sleeper - ground above the datum; the datum is the highest ground under the island. Ground: flat triangles between the levels, \
                   the best-fit plane beyond them. `most_packing` of the file, else common practice.",
        example: "Ground that falls 2-1/4 in along a run, under a sleeper 1/2 in above the datum, needs a pack of 2-3/4 in: more than 2 in, it fails.",
    },
    limits: &[],
    levers: &["levels.base_gap"],
    outside: &[Outside {
        what: "no more than 2 in of shims under a sleeper",
        origin: Origin::Practice,
        test: "more_than_two_inches_of_shims_fail",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let (Some(ground), Some(survey)) = (subject.ground(), design.site.survey.as_ref()) else {
        let place = site_group(design);
        answers.missing(
            &place,
            "survey",
            "how high the sleepers are packed is not known",
        );
        return;
    };
    let Some(fitted) = &ground.fitted else {
        answers.missing(
            &survey.place,
            "points",
            "how high the sleepers are packed is not known: the levels make no plane",
        );
        return;
    };
    let mut highest: BTreeMap<&str, &Pack> = BTreeMap::new();
    for pack in &fitted.packs {
        let known = highest.entry(pack.sleeper.as_str()).or_insert(pack);
        if pack.gap > known.gap {
            *known = pack;
        }
    }
    if highest.is_empty() {
        answers.nothing("there are no sleepers to be packed");
        return;
    }
    let most = survey.most_packing.value.mm();
    let over = survey.shims.first().map_or(0.0, |s| s.mm());
    let own = survey.most_packing.place.line > 0;
    let (place, source) = if own {
        (&survey.most_packing.place, "set in the file")
    } else {
        (&survey.place, "common practice")
    };
    for (sleeper, pack) in highest {
        let found = format!(
            "the {} of run '{}', {sleeper}, needs {} of shims",
            side(subject, pack),
            design
                .runs
                .get(pack.run)
                .map_or("", |r| r.name.value.as_str()),
            subject.mm(pack.gap)
        );
        let answer = if pack.gap <= most + 1e-6 {
            answers.pass(place, found)
        } else if pack.gap <= most + over + 1e-6 {
            answers.caution(place, found)
        } else {
            answers.fail(place, found)
        };
        answer
            .about(sleeper)
            .limit(format!("at most {}", subject.mm(most)), source)
            .hint("make the ground up or take it down, cut a wedge for the whole sleeper, or bed it in mortar on a footing");
    }
}

fn side(subject: &Subject, pack: &Pack) -> &'static str {
    match subject.plan.panels.get(pack.panel).map(|p| p.of) {
        Some(PanelOf::Bulkhead(_)) => "sleeper under a bulkhead",
        Some(PanelOf::Side(side)) => match side {
            crate::design::Side::Working => "working sleeper",
            crate::design::Side::Seating => "seating sleeper",
            crate::design::Side::Left => "left sleeper",
            crate::design::Side::Right => "right sleeper",
        },
        None => "sleeper",
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "ground-packing";

    /// Ground that falls evenly from x = 0 to so much at x = 120 in.
    fn falling(inches: f64) -> Trial {
        let at = |x: f64, y: f64| {
            let z = -inches * x / 120.0;
            format!("{{x: {x} in, y: {y} in, z: {z} in}}")
        };
        let points = [
            at(0.0, -60.0),
            at(0.0, 60.0),
            at(120.0, -60.0),
            at(120.0, 60.0),
        ];
        Trial::sound().with(
            "site.survey",
            &format!("{{points: [{}]}}", points.join(", ")),
        )
    }

    #[test]
    fn more_than_two_inches_of_shims_fail() {
        // Common practice, 2 in. The sleeper's underside is 1/2 in above the datum; the last pack is 1-3/4 in from the end:
        // falling 1-1/2 in it needs 1.98 in; falling 1.57 in 2.047, less than a shim of 1/16 in more; falling 1-3/4 in 2.22.
        assert_eq!(falling(1.5).worst(CODE), Verdict::Pass);
        assert_eq!(falling(1.57).worst(CODE), Verdict::Caution);
        let found = falling(1.75);
        assert_eq!(found.worst(CODE), Verdict::Fail);
        let right = found.about(CODE, "C-SL04");
        assert!(
            right.found.contains("right sleeper of run 'cook'"),
            "{}",
            right.found
        );
        assert_eq!(
            (right.limit.as_str(), right.source.as_str()),
            ("at most 2\"", "common practice")
        );
        let own = found.with("site.survey.most_packing", "3 in");
        assert_eq!(own.worst(CODE), Verdict::Pass);
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
    }

    #[test]
    fn ground_that_is_not_known_is_asked_for() {
        let none = Trial::sound().without("site.survey");
        assert_eq!(none.worst(CODE), Verdict::NotChecked);
        let two = "{points: [{x: 0 in, y: 0 in, z: 0 in}, {x: 1 ft, y: 1 ft, z: 0 in}]}";
        let two = Trial::sound().with("site.survey", two);
        assert_eq!(two.answers(CODE)[0].place.key, "site.survey.points");
    }
}
