//! Whether the island can be used from a wheelchair, where the file asks for it.

use super::seating::{Seating, edges};
use crate::diagnostics::Place;
use crate::plan::Plan;
use crate::rules::around::{Around, finished, objects, seen_from, shared, site_group};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const fn size(name: &'static str, what: &'static str, inches: f64, source: &'static str) -> Limit {
    Limit {
        name,
        what,
        usual: inches * 25.4,
        unit: Unit::Length,
        source,
    }
}

/// Lowest top.
const LOW: Limit = size(
    "accessible-low",
    "the least height of an accessible counter",
    28.0,
    "ADA Standards 2010, 902.3",
);
/// Highest top.
const HIGH: Limit = size(
    "accessible-high",
    "the greatest height of an accessible counter",
    34.0,
    "ADA Standards 2010, 902.3",
);
/// Knee space, high.
const KNEE_HIGH: Limit = size(
    "accessible-knee-height",
    "the height of accessible knee space",
    27.0,
    "ADA Standards 2010, published: knee space 27 in high",
);
/// Knee space, deep.
const KNEE_DEEP: Limit = size(
    "accessible-knee-depth",
    "the depth of accessible knee space",
    19.0,
    "published: knee space 19 in deep",
);
/// Clear floor, along the counter.
const FLOOR_WIDE: Limit = size(
    "accessible-floor-width",
    "the width of the clear floor of a wheelchair",
    30.0,
    "ADA Standards 2010, 305.3, value from memory",
);
/// Clear floor, square to it.
const FLOOR_LONG: Limit = size(
    "accessible-floor-length",
    "the length of the clear floor of a wheelchair",
    48.0,
    "ADA Standards 2010, 305.3, value from memory",
);

pub(super) static ACCESSIBLE: Rule = Rule {
    code: "people-accessible",
    family: Family::People,
    title: "The island can be used from a wheelchair, where that is asked for",
    about: About {
        checks: "Where the file says `people.accessible: true`: the counter's top is between `accessible-low` and `accessible-high`; one \
                 seating side has knee space `accessible-knee-height` high and `accessible-knee-depth` deep; and in front of it there is clear \
                 floor `accessible-floor-width` × `accessible-floor-length`, the knee space counted in. Each fails where it is not so. A margin \
                 of less than half an inch in height is a caution. Where access is required by law, the local code decides.",
        why: "A counter at 36 in with a boarded front shuts out who sits.",
        reckoned: "The counter's top; the underside of the slab or of its turndown above the ground; the overhang past the finished face; \
                   boxes of the site in front of that face. The whole island is one height, so all of it must be low.",
        example: "A counter at 34 in, 2 in thick with a turndown of 1 in: knees have 31 in. An overhang of 19 in needs brackets.",
    },
    limits: &[
        &LOW,
        &HIGH,
        &KNEE_HIGH,
        &KNEE_DEEP,
        &FLOOR_WIDE,
        &FLOOR_LONG,
    ],
    levers: &[
        "levels.counter",
        "counter.overhang.seating",
        "counter.turndown.depth",
    ],
    outside: &[Outside {
        what: "counter 28 to 34 in (ADA 2010, 902.3), knee space 27 in high and 19 in deep",
        origin: Origin::Published,
        test: "a_counter_at_33_inches_with_19_of_overhang_is_accessible",
    }],
    check,
};

/// A margin in height that a paver uses up, millimetres: half an inch, common practice.
const SLIGHT: f64 = 12.7;

fn check(subject: &Subject, answers: &mut Answers) {
    match &subject.design().people.accessible {
        None => {
            answers.nothing("the file does not ask that it can be used from a wheelchair");
        }
        Some(asked) if !asked.value => {
            answers.nothing("it need not be used from a wheelchair");
        }
        Some(_) => {
            height(subject, answers);
            let most = |a: &Seating, b: &Seating| a.overhang.total_cmp(&b.overhang);
            if let Some(edge) = edges(subject.plan).into_iter().max_by(most) {
                knees(subject, answers, &edge);
                floor(subject, answers, &edge);
            } else {
                let place = &subject.design().counter.overhang.seating.place;
                let least = subject.bound(&KNEE_DEEP);
                answers
                    .fail(place, "no side has knee space")
                    .about("knee space")
                    .at_least(&least);
            }
        }
    }
}

fn height(subject: &Subject, answers: &mut Answers) {
    let (low, high) = (subject.bound(&LOW), subject.bound(&HIGH));
    let top = subject.plan.levels.counter_top;
    let place = &subject.design().levels.counter.place;
    let found = format!("the counter is {} above the ground", subject.mm(top));
    let holds = low.is_reached_by(top) && high.allows(top);
    let answer = if holds && (top - low.value).min(high.value - top) < SLIGHT - 1e-6 {
        answers.caution(place, found)
    } else {
        answers.judge(holds, place, found)
    };
    let limit = format!("between {} and {}", low.spell(), high.spell());
    let answer = answer
        .about("counter height")
        .limit(limit, high.source.clone());
    if !holds {
        answer.hint(format!(
            "make it {} or less",
            subject.mm(high.value - SLIGHT)
        ));
    }
}

fn knees(subject: &Subject, answers: &mut Answers, edge: &Seating) {
    let plan = subject.plan;
    let (high, deep) = (subject.bound(&KNEE_HIGH), subject.bound(&KNEE_DEEP));
    let dropped = plan
        .counter
        .sides
        .iter()
        .any(|s| s.face == edge.face && s.dropped);
    let under = plan.levels.slab_bottom
        - if dropped {
            plan.counter.turndown_depth
        } else {
            0.0
        };
    let place = &subject.design().counter.overhang.seating.place;
    let found = format!("knee space is {} high", subject.mm(under));
    answers
        .judge(high.is_reached_by(under), place, found)
        .about("knee height")
        .at_least(&high);
    let found = format!("knee space is {} deep", subject.mm(edge.overhang));
    let holds = deep.is_reached_by(edge.overhang);
    let answer = answers
        .judge(holds, place, found)
        .about("knee space")
        .at_least(&deep);
    if !holds {
        answer.hint(format!(
            "an overhang of {} gives it; it needs brackets, which the slab's checks ask for",
            deep.spell()
        ));
    }
}

fn floor(subject: &Subject, answers: &mut Answers, edge: &Seating) {
    let Some(objects) = objects(subject.plan) else {
        let place = site_group(subject.design());
        answers.missing(
            &place,
            "objects",
            "what stands around the island is not known",
        );
        return;
    };
    let (wide, long) = (subject.bound(&FLOOR_WIDE), subject.bound(&FLOOR_LONG));
    let free = widest_free(subject.plan, edge, long.value, &objects);
    let face = &subject.plan.faces[edge.face];
    let found = format!(
        "in front of the {} the widest clear floor {} deep is {}",
        face.name,
        long.spell(),
        subject.mm(free)
    );
    let holds = wide.is_reached_by(free);
    let answer = answers
        .judge(holds, &Place::default(), found)
        .about("clear floor")
        .at_least(&wide);
    if !holds {
        answer.hint("move what stands there");
    }
}

/// The widest stretch along a face in front of which nothing stands so deep.
fn widest_free(plan: &Plan, edge: &Seating, deep: f64, objects: &[Around]) -> f64 {
    let face = &plan.faces[edge.face];
    let out = finished(plan, face);
    let band = (out, out + deep);
    let mut taken: Vec<(f64, f64)> = objects
        .iter()
        .filter(|o| o.z.0 < 2032.0)
        .map(|o| seen_from(face, &o.plan))
        .filter(|s| shared(s.out, band) > 1e-6)
        .map(|s| s.s)
        .collect();
    taken.sort_by(|a, b| a.0.total_cmp(&b.0));
    taken.push((face.length, face.length));
    let (mut from, mut widest) = (0.0_f64, 0.0_f64);
    for (low, high) in taken {
        widest = widest.max(low.min(face.length) - from);
        from = from.max(high);
    }
    widest
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "people-accessible";

    fn low() -> Trial {
        Trial::bare()
            .with("people.accessible", "true")
            .with("levels.counter", "33 in")
            .with("counter.overhang.seating", "19 in")
    }

    #[test]
    fn a_counter_at_33_inches_with_19_of_overhang_is_accessible() {
        // ADA 2010, 902.3: 28 to 34 in; knee space 27 in high (here 33 − 3 = 30) and 19 deep.
        assert_eq!(low().worst(CODE), Verdict::Pass);
        let top = |inches: &str| {
            low()
                .with("levels.counter", inches)
                .about(CODE, "counter height")
                .verdict
        };
        assert_eq!(top("34 in"), Verdict::Caution);
        assert_eq!(top("34-1/8 in"), Verdict::Fail);
        let shallow = low().with("counter.overhang.seating", "18 in");
        assert_eq!(shallow.about(CODE, "knee space").verdict, Verdict::Fail);
        let thick = low().with("counter.turndown.depth", "5 in");
        assert_eq!(thick.about(CODE, "knee height").verdict, Verdict::Fail);
    }

    #[test]
    fn clear_floor_is_thirty_by_forty_eight() {
        // From memory. Walls across both seating sides, so far from the finished faces (at y = 30-7/8 and x = 120-7/8).
        let walled = |gap: f64| {
            let objects = format!(
                "[{{name: north, kind: wall, at: {{x: -50 in, y: {} in, z: 0 in}}, size: {{x: 300 in, y: 6 in, z: 60 in}}}}, \
                 {{name: east, kind: wall, at: {{x: {} in, y: -100 in, z: 0 in}}, size: {{x: 6 in, y: 200 in, z: 60 in}}}}]",
                30.875 + gap,
                120.875 + gap
            );
            low()
                .with("site.objects", &objects)
                .about(CODE, "clear floor")
                .verdict
        };
        assert_eq!(walled(48.0), Verdict::Pass);
        assert_eq!(walled(47.75), Verdict::Fail);
    }

    #[test]
    fn it_is_asked_only_where_the_file_asks() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let found = Trial::sound().without("people.accessible").answers(CODE);
        assert_eq!(found[0].verdict, Verdict::Pass);
        assert_eq!(
            low().without("site.objects").worst(CODE),
            Verdict::NotChecked
        );
    }
}
