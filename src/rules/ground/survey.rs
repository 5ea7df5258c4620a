//! Whether the ground was measured well enough for what is packed by it.

use crate::rules::around::site_group;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::ground::{Fitted, Ground};
use crate::units::Unit;

/// A level that is so far off is read again.
const OFF: Limit = Limit {
    name: "level-off",
    what: "how far a level stands off the best-fit plane before it is taken for misread",
    usual: 76.2,
    unit: Unit::Length,
    source: "common practice, 3 in: yards that are built on have no such holes",
};

/// So many levels tell a wrong one from the ground.
const LEVELS: Limit = Limit {
    name: "levels",
    what: "how many levels are taken at least",
    usual: 5.0,
    unit: Unit::Count,
    source: "common practice: three make a plane, a fourth shows an error, a fifth shows which",
};

pub(super) static SURVEY: Rule = Rule {
    code: "ground-survey",
    family: Family::Ground,
    title: "The ground is measured well enough for the shims",
    about: About {
        checks: "The levels make a plane (fewer than three, or all in one line, fail); there are `levels` of them or more; none stands off the plane by more than \
                 `level-off`; and every pack of shims has a level near it and lies among the levels. Otherwise it is a caution.",
        why: "Shims are cut for ground that somebody guessed, and the sleepers rock on them.",
        reckoned: "Plane by least squares of the heights; residual = level less plane. Near is the survey's `sparse_beyond`; among the levels is inside the triangles \
                   between them. Limits are common practice.",
        example: "A sleeper's end 6 ft from the nearest level is a caution: take one there.",
    },
    limits: &[&OFF, &LEVELS],
    levers: &[],
    outside: &[Outside {
        what: "three levels make a plane, and five show which of them is wrong",
        origin: Origin::Practice,
        test: "few_levels_and_far_packs_are_cautions",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(ground) = subject.ground() else {
        let place = site_group(subject.design());
        answers.missing(&place, "survey", "how the ground lies is not measured");
        return;
    };
    let survey = subject.design().site.survey.as_ref();
    let place = survey.map(|s| s.place.clone()).unwrap_or_default();
    let Some(fitted) = &ground.fitted else {
        let found = format!("{} levels make no plane", ground.levels.len());
        answers
            .fail(&place, found)
            .hint("take three levels or more that do not lie in one line");
        return;
    };
    count(subject, answers, ground);
    misread(subject, answers, ground);
    near(subject, answers, fitted);
    if answers.is_empty() {
        let rms = subject.mm(fitted.plane.root_mean_square());
        let found = format!(
            "{} levels lie about their plane by {rms}, root mean square",
            ground.levels.len()
        );
        answers.pass(&place, found);
    }
}

fn count(subject: &Subject, answers: &mut Answers, ground: &Ground) {
    let (least, taken) = (subject.bound(&LEVELS), ground.levels.len() as f64);
    if least.is_reached_by(taken) {
        return;
    }
    let survey = subject.design().site.survey.as_ref();
    let place = survey.map(|s| s.place.clone()).unwrap_or_default();
    answers
        .caution(
            &place,
            format!("the plane of the ground lies among {taken:.0} levels"),
        )
        .about("number of levels")
        .at_least(&least)
        .hint("take more: under the corners of the island, between them, and round it");
}

fn misread(subject: &Subject, answers: &mut Answers, ground: &Ground) {
    let most = subject.bound(&OFF);
    let survey = subject.design().site.survey.iter();
    let places = survey.flat_map(|s| s.levels.iter().map(|l| &l.place));
    let levels = ground.levels.iter().zip(places);
    for (level, place) in levels.filter(|(l, _)| !most.allows(l.residual.abs())) {
        let side = if level.residual > 0.0 {
            "above"
        } else {
            "below"
        };
        let found = format!(
            "{} stands {} {side} the plane of all levels",
            level.name,
            subject.mm(level.residual.abs())
        );
        answers
            .caution(place, found)
            .about(&level.name)
            .at_most(&most)
            .hint("read it again, or leave it out; if it is right, fill the hole or take the hump off");
    }
}

fn near(subject: &Subject, answers: &mut Answers, fitted: &Fitted) {
    let unsure: Vec<String> = fitted
        .packs
        .iter()
        .filter(|p| p.sparse || p.beyond)
        .map(|p| p.number.to_string())
        .collect();
    let Some(survey) = subject
        .design()
        .site
        .survey
        .as_ref()
        .filter(|_| !unsure.is_empty())
    else {
        return;
    };
    let shown = unsure
        .iter()
        .take(12)
        .cloned()
        .collect::<Vec<_>>()
        .join(", ");
    let more = if unsure.len() > 12 { " and more" } else { "" };
    let found = format!(
        "{} of {} packs of shims lie beyond the levels or far from any: {shown}{more}",
        unsure.len(),
        fitted.packs.len()
    );
    let limit = format!("a level within {}", subject.mm(survey.sparse_beyond.mm()));
    answers
        .caution(&survey.place, found)
        .about("packs without a level near")
        .limit(limit, "common practice, or 'sparse_beyond' of the survey")
        .hint("take levels there before shims are cut");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "ground-survey";

    fn with(points: &str) -> Trial {
        Trial::sound().with("site.survey", &format!("{{points: [{points}]}}"))
    }

    const CORNERS: &str = "{x: -2 ft, y: -6 ft, z: 0 in}, {x: 12 ft, y: -6 ft, z: 0 in}, {x: -2 ft, y: 4 ft, z: 0 in}, {x: 12 ft, y: 4 ft, z: 0 in}";

    #[test]
    fn few_levels_and_far_packs_are_cautions() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // Four corners of 14 × 10 ft: a fifth is asked for, and ground under the middle of the cook run is 5 ft from any.
        let found = with(CORNERS).answers(CODE);
        assert!(found.iter().all(|f| f.verdict == Verdict::Caution));
        let about: Vec<&str> = found.iter().map(|f| f.subject.as_str()).collect();
        assert_eq!(about, ["number of levels", "packs without a level near"]);
        // A hole of a foot in the middle.
        let hole = with(&format!("{CORNERS}, {{x: 5 ft, y: 1 ft, z: -12 in}}")).about(CODE, "P5");
        assert_eq!(hole.verdict, Verdict::Caution);
        assert!(hole.found.contains("below"), "{}", hole.found);
    }

    #[test]
    fn levels_that_make_no_plane_fail_and_none_at_all_are_asked_for() {
        assert_eq!(
            with("{x: 0 ft, y: 0 ft, z: 0 in}").worst(CODE),
            Verdict::Fail
        );
        let line =
            "{x: 0 ft, y: 0 ft, z: 0 in}, {x: 1 ft, y: 1 ft, z: 1 in}, {x: 2 ft, y: 2 ft, z: 0 in}";
        assert_eq!(with(line).worst(CODE), Verdict::Fail);
        let none = Trial::sound().without("site.survey");
        assert_eq!(none.worst(CODE), Verdict::NotChecked);
        assert_eq!(none.answers(CODE)[0].place.key, "site.survey");
    }
}
