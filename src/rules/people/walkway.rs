//! Whether people can pass and work around the island.

use super::seating::group;
use crate::design::{ObjectKind, Passage, Side};
use crate::diagnostics::Place;
use crate::geometry::Bounds2;
use crate::plan::{Face, Plan};
use crate::rules::around::{
    Around, counter_edge, faces, object, objects, seen_from, shared, site_group,
};
use crate::rules::{About, Answers, Bound, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const fn width(name: &'static str, what: &'static str, inches: f64, source: &'static str) -> Limit {
    Limit {
        name,
        what,
        usual: inches * 25.4,
        unit: Unit::Length,
        source,
    }
}

const MEMORY: &str = "kitchen planning guidelines, value from memory";
const PUBLISHED: &str = "published kitchen planning guidelines";

/// Where one cooks.
const AISLE: Limit = width("work-aisle", "the aisle at a working side", 42.0, MEMORY);
/// Where one walks.
const WALK: Limit = width("walkway", "a way that people walk", 36.0, MEMORY);
/// Behind seats where nobody passes.
const NOBODY: Limit = width(
    "behind-seats",
    "behind seats, where nobody passes",
    32.0,
    PUBLISHED,
);
/// Behind seats where people edge past.
const EDGING: Limit = width(
    "behind-seats-edging",
    "behind seats, where people edge past",
    36.0,
    PUBLISHED,
);
/// Behind seats where people walk past.
const WALKING: Limit = width(
    "behind-seats-walking",
    "behind seats, where people walk past",
    44.0,
    PUBLISHED,
);
/// Where nobody gets through.
const LEAST: Limit = width(
    "passage-least",
    "the width below which nobody gets through",
    24.0,
    "common practice",
);

/// What hangs higher than this is above the heads, millimetres: 80 in, common practice.
const HEAD: f64 = 2032.0;
/// What rises no higher than this above the ground is walked on, millimetres: 1/2 in, common practice.
const FOOT: f64 = 12.7;

pub(super) static WALKWAY: Rule = Rule {
    code: "people-walkway",
    family: Family::People,
    title: "People can pass and work around the island",
    about: About {
        checks: "In front of each working side `work-aisle` is free, to objects of the site and to the counter of another run across; \
                 behind seats as much as the file's `behind_seats` asks for; on a walkway of the site that the counter narrows, \
                 `walkway` is left. Less is a caution, less than `passage-least` fails.",
        why: "Somebody carries a hot pan behind somebody who bends to the oven: that takes three and a half feet.",
        reckoned: "From the edge of the counter, square to it, to the nearest box of the site that begins lower than 80 in, rises above 1/2 in and stands across from \
                   it. A walkway is measured across its shorter side.",
        example: "In a U the counters of two runs stand 40 in apart: 2 in less than 42, a caution.",
    },
    limits: &[&AISLE, &WALK, &NOBODY, &EDGING, &WALKING, &LEAST],
    levers: &[
        "runs[].length",
        "runs[].depth",
        "counter.overhang.working",
        "counter.overhang.seating",
    ],
    outside: &[
        Outside {
            what: "behind seats 32, 36 and 44 in, kitchen planning guidelines",
            origin: Origin::Published,
            test: "behind_seats_the_guidelines_ask_for_three_widths",
        },
        Outside {
            what: "a work aisle of 42 in and a walkway of 36 in",
            origin: Origin::Memory,
            test: "a_work_aisle_is_measured_from_the_counter",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let plan = subject.plan;
    let mut around = faces(plan);
    if let Some(objects) = objects(plan) {
        around.extend(objects);
    } else {
        let place = site_group(subject.design());
        answers.missing(
            &place,
            "objects",
            "what stands around the island is not known",
        );
    }
    for (number, face) in plan.faces.iter().enumerate().filter(|(_, f)| !f.wall) {
        match face.side {
            Side::Working => clear(subject, answers, number, &around, &subject.bound(&AISLE)),
            Side::Seating => behind_seats(subject, answers, number, &around),
            Side::Left | Side::Right => {}
        }
    }
    ways(subject, answers);
    if answers.is_empty() {
        answers.nothing("nobody works or sits at an open side");
    }
}

fn behind_seats(subject: &Subject, answers: &mut Answers, number: usize, around: &[Around]) {
    let people = &subject.design().people;
    // Without seats, or where their number is not known, nobody needs that room.
    if people.seats.as_ref().is_none_or(|s| s.value == 0) {
        return;
    }
    let Some(passage) = &people.behind_seats else {
        let group = group(subject.design());
        answers.missing(
            &group,
            "behind_seats",
            "whether people pass behind the seats is not known",
        );
        return;
    };
    let limit = match passage.value {
        Passage::Nobody => &NOBODY,
        Passage::Edging => &EDGING,
        Passage::Walking => &WALKING,
    };
    clear(subject, answers, number, around, &subject.bound(limit));
}

/// Judges what is free in front of a face.
fn clear(
    subject: &Subject,
    answers: &mut Answers,
    number: usize,
    around: &[Around],
    asked: &Bound,
) {
    let face = &subject.plan.faces[number];
    let nearest = around
        .iter()
        .filter_map(|a| Some((free(subject.plan, number, a)?, a)))
        .min_by(|a, b| a.0.total_cmp(&b.0));
    let Some((width, what)) = nearest else {
        let found = format!("nothing stands in front of the {}", face.name);
        answers.pass(&Place::default(), found).about(&face.name);
        return;
    };
    let found = format!(
        "between the counter of the {} and {} {} is free",
        face.name,
        what.name,
        subject.mm(width)
    );
    verdict(
        subject,
        answers,
        &what.place,
        (width, found, &face.name),
        asked,
    );
}

fn verdict(
    subject: &Subject,
    answers: &mut Answers,
    place: &Place,
    (width, found, about): (f64, String, &str),
    asked: &Bound,
) {
    let least = subject.bound(&LEAST);
    let hint = "move the island, or what stands there";
    if asked.is_reached_by(width) {
        answers.pass(place, found).about(about).at_least(asked);
    } else if least.is_reached_by(width) {
        answers
            .caution(place, found)
            .about(about)
            .at_least(asked)
            .hint(hint);
    } else {
        answers
            .fail(place, found)
            .about(about)
            .at_least(&least)
            .hint(hint);
    }
}

/// How much is free from the counter's edge over a face to something across from it; `None` where it is elsewhere.
fn free(plan: &Plan, number: usize, other: &Around) -> Option<f64> {
    let face = plan.faces.get(number)?;
    let seen = seen_from(face, &other.plan);
    let edge = counter_edge(plan, face);
    let in_the_way = other.z.0 < HEAD && other.z.1 > FOOT;
    if !in_the_way || shared(seen.s, (0.0, face.length)) <= 1.0 || seen.out.1 <= edge {
        return None;
    }
    let overhang = match other.face.and_then(|i| plan.faces.get(i)) {
        Some(across) => facing(face, across)
            .then(|| counter_edge(plan, across) - crate::rules::around::finished(plan, across))?,
        None => 0.0,
    };
    Some((seen.out.0 - overhang - edge).max(0.0))
}

/// True when two faces look at each other.
fn facing(a: &Face, b: &Face) -> bool {
    a.outward.dot(&b.outward) < -0.5
}

/// Walkways of the site that the counter narrows.
fn ways(subject: &Subject, answers: &mut Answers) {
    let Some(objects) = &subject.design().site.objects else {
        return;
    };
    for o in objects.iter().filter(|o| o.kind == ObjectKind::Walkway) {
        let way = object(o);
        let whole = way.plan.width().min(way.plan.height());
        let left = narrowed(subject.plan, &way.plan)
            .unwrap_or(whole)
            .min(whole);
        let found = format!("on {} {} is left to walk", way.name, subject.mm(left));
        verdict(
            subject,
            answers,
            &o.place,
            (left, found, &o.name),
            &subject.bound(&WALK),
        );
    }
}

/// What the counter leaves of a walkway that it reaches into.
fn narrowed(plan: &Plan, way: &Bounds2) -> Option<f64> {
    let beside = |face: &Face| {
        let seen = seen_from(face, way);
        let edge = counter_edge(plan, face);
        let reaches = shared(seen.s, (0.0, face.length)) > 1.0 && seen.out.1 > 0.0;
        (reaches && seen.out.0 < edge).then(|| (seen.out.1 - edge).max(0.0))
    };
    plan.faces
        .iter()
        .filter(|f| !f.wall)
        .filter_map(beside)
        .reduce(f64::min)
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;
    use proptest::prelude::*;

    const CODE: &str = "people-walkway";

    /// A hedge along the cook run's seating side, so far from the edge of its counter, which is at 30 + 7/8 + 10 in.
    fn hedge(free: f64) -> Trial {
        let y = 40.875 + free;
        Trial::sound().with("site.objects", &format!(
            "[{{name: hedge, kind: fence, at: {{x: 0 in, y: {y} in, z: 0 in}}, size: {{x: 100 in, y: 10 in, z: 50 in}}}}]"
        ))
    }

    #[test]
    fn behind_seats_the_guidelines_ask_for_three_widths() {
        // Published: 32, 36 and 44 in.
        let behind =
            |free: f64, passage: &str| hedge(free).with("people.behind_seats", passage).worst(CODE);
        assert_eq!(behind(32.0, "nobody"), Verdict::Pass);
        assert_eq!(behind(32.0, "edging"), Verdict::Caution);
        assert_eq!(behind(36.0, "edging"), Verdict::Pass);
        assert_eq!(behind(43.9, "walking"), Verdict::Caution);
        assert_eq!(behind(44.0, "walking"), Verdict::Pass);
        assert_eq!(behind(20.0, "nobody"), Verdict::Fail);
        assert_eq!(
            hedge(20.0).with("people.seats", "0").worst(CODE),
            Verdict::Pass
        );
    }

    #[test]
    fn a_work_aisle_is_measured_from_the_counter() {
        // The cook's edge of the counter is at y = −2-7/8 in. A wall 42 in from it passes, 41 is a caution (from memory).
        let wall = |free: f64| {
            let y = -2.875 - free - 6.0;
            Trial::sound().with("site.objects", &format!(
                "[{{name: wall, kind: wall, at: {{x: 0 in, y: {y} in, z: 0 in}}, size: {{x: 60 in, y: 6 in, z: 80 in}}}}]"
            ))
        };
        assert_eq!(
            wall(42.0).about(CODE, "cook run, working side").verdict,
            Verdict::Pass
        );
        assert_eq!(
            wall(41.0).about(CODE, "cook run, working side").verdict,
            Verdict::Caution
        );
        assert_eq!(
            wall(23.0).about(CODE, "cook run, working side").verdict,
            Verdict::Fail
        );
    }

    #[test]
    fn a_terrace_that_the_island_stands_on_is_walked_on() {
        // Common practice: a paver's edge of 1/2 in is no obstacle, a plinth of 6 in is.
        let terrace = |z: &str, high: &str| {
            let text = format!(
                "[{{name: terrace, kind: other, at: {{x: -90 in, y: -150 in, z: {z}}}, size: {{x: 400 in, y: 400 in, z: {high}}}}}]"
            );
            Trial::sound().with("site.objects", &text).worst(CODE)
        };
        assert_eq!(terrace("0 in", "0 in"), Verdict::Pass);
        assert_eq!(terrace("-4 in", "4 in"), Verdict::Pass);
        assert_eq!(terrace("0 in", "6 in"), Verdict::Fail);
    }

    #[test]
    fn the_counter_may_narrow_a_walkway() {
        let path = |y: f64| {
            Trial::sound().with("site.objects", &format!(
                "[{{name: path, kind: walkway, at: {{x: -10 in, y: {y} in, z: 0 in}}, size: {{x: 200 in, y: 42 in, z: 0 in}}}}]"
            )).about(CODE, "path").verdict
        };
        // It begins at 40-7/8 or beyond: all 42 are left. From 34-7/8: 36. From 30-7/8: 32.
        assert_eq!(path(41.0), Verdict::Pass);
        assert_eq!(path(34.875), Verdict::Pass);
        assert_eq!(path(30.875), Verdict::Caution);
        assert_eq!(path(20.0), Verdict::Fail);
    }

    #[test]
    fn what_the_file_leaves_out_is_not_checked() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("site.objects").worst(CODE),
            Verdict::NotChecked
        );
        let found = Trial::sound().without("people.behind_seats").answers(CODE);
        assert!(
            found.iter().any(|f| f.place.key == "people.behind_seats"),
            "{found:#?}"
        );
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(12))]
        #[test]
        fn more_room_is_never_worse(free in 5.0..60.0_f64, more in 0.0..30.0_f64) {
            prop_assert!(hedge(free + more).worst(CODE) <= hedge(free).worst(CODE));
        }
    }
}
