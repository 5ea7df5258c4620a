//! Whether what stands on the site leaves the island its place.

use crate::design::{ObjectKind, SiteObject};
use crate::rules::around::site_group;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::ground::boxes;
use crate::units::Unit;

/// How far a thing must stay off.
const OFF: Limit = Limit {
    name: "site-object-off",
    what: "between the finished island and a post, a beam or anything else that does not move with it",
    usual: 25.4,
    unit: Unit::Length,
    source: "common practice, 1 in: posts lean, and boards and coats must be put on from outside",
};

pub(super) static SITE_OBJECT: Rule = Rule {
    code: "fit-site-object",
    family: Family::Fit,
    title: "Nothing on the site stands where the island is to stand",
    about: About {
        checks: "Every object of the site but walkways: it fails where it shares space with a run's frame or with the counter, and cautions where it \
                 comes nearer than `site-object-off`. A wall that a side of a run stands against may touch it.",
        why: "A post in the middle of a run is found when the track is laid out, with the steel cut. A post half an inch off cannot be clad past.",
        reckoned: "Boxes in the world: of each run its frame from the ground to the counter's underside, and the counter over it with its overhangs; the distance to the object's box, square to the \
                   axes. What leans is measured at every height: its section shifts evenly from foot to top. The limit is common practice.",
        example: "A post of 6 in that begins 1/2 in behind the edge of the counter is a caution; one that stands in the overhang fails.",
    },
    limits: &[&OFF],
    levers: &[
        "runs[].length",
        "runs[].depth",
        "counter.overhang.seating",
        "counter.overhang.working",
    ],
    outside: &[Outside {
        what: "an inch beside posts, as carpenters leave it",
        origin: Origin::Practice,
        test: "a_post_in_the_island_is_found",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let Some(objects) = &design.site.objects else {
        answers.missing(&site_group(design), "objects", "what stands on the site");
        return;
    };
    let solid = objects.iter().filter(|o| o.kind != ObjectKind::Walkway);
    let boxes = boxes(subject.plan);
    let off = subject.bound(&OFF);
    for object in solid {
        let distances = boxes.iter().map(|b| object.stands.nearest(b));
        let (nearest, height) =
            distances.fold((f64::INFINITY, 0.0), |a, b| if b.0 < a.0 { b } else { a });
        let name = format!("the {} '{}'", object.kind.name(), object.name);
        let shares = boxes.iter().any(|b| object.stands.overlaps(b, SLACK));
        let at = leaning(subject, object, height);
        let answer = if shares {
            let found = format!("{name} stands where the island is to stand{at}");
            answers
                .fail(&object.place, found)
                .hint("move the island, or make the run or its overhang end before it")
        } else if off.is_reached_by(nearest) || object.kind == ObjectKind::Wall {
            answers.pass(
                &object.place,
                format!("{name} is {} from the island{at}", subject.mm(nearest)),
            )
        } else {
            let found = format!("{name} is {} from the island{at}", subject.mm(nearest));
            answers
                .caution(&object.place, found)
                .hint("leave room to clad and to coat")
        };
        answer.about(&object.name).at_least(&off);
    }
    if answers.is_empty() {
        answers.nothing("nothing stands on the site");
    }
}

/// What touches does not overlap; a hundredth of a millimetre is forgiven.
const SLACK: f64 = 0.01;

/// At which height something that leans is nearest.
fn leaning(subject: &Subject, object: &SiteObject, height: f64) -> String {
    if object.stands.shift.norm() < 0.5 {
        return String::new();
    }
    let lean = subject.mm(object.stands.shift.norm());
    format!(" at {} up: it leans {lean}", subject.mm(height))
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-site-object";

    #[test]
    fn a_post_in_the_island_is_found() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // The cook run is 30 in deep, its counter passes it by 10-7/8 in: it ends at y = 40-7/8.
        let post = |y: &str, z: &str| {
            let objects = format!(
                "[{{name: post, kind: post, at: {{x: 40 in, y: {y}, z: {z}}}, size: {{x: 6 in, y: 6 in, z: 8 ft}}}}]"
            );
            Trial::sound()
                .with("site.objects", &objects)
                .about(CODE, "post")
                .verdict
        };
        assert_eq!(post("12 in", "0 in"), Verdict::Fail);
        assert_eq!(post("38 in", "0 in"), Verdict::Fail);
        assert_eq!(post("41-1/2 in", "0 in"), Verdict::Caution);
        assert_eq!(post("42 in", "0 in"), Verdict::Pass);
        // One whose foot stands 2 in off (y = 42-7/8) and that leans 4 in towards the cook over 8 ft has come 1-1/2 in nearer
        // at the counter's top, 36 in up: 1/2 in is left. Leaning the other way 2 in and more are.
        let lean = |y: &str| {
            let objects = format!(
                "[{{name: post, kind: post, at: {{x: 40 in, y: 42-7/8 in, z: 0 in}}, size: {{x: 6 in, y: 6 in, z: 8 ft}}, top: {{x: 40 in, y: {y}, z: 8 ft}}}}]"
            );
            Trial::sound()
                .with("site.objects", &objects)
                .about(CODE, "post")
        };
        let towards = lean("38-7/8 in");
        assert_eq!(towards.verdict, Verdict::Caution);
        assert!(
            towards
                .found
                .contains("is 1/2\" from the island at 3'-0\" up"),
            "{}",
            towards.found
        );
        assert_eq!(lean("46-7/8 in").verdict, Verdict::Pass);
        assert_eq!(lean("36-7/8 in").verdict, Verdict::Fail);
        // A lamp over the counter is in nobody's way.
        assert_eq!(post("12 in", "60 in"), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("site.objects").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(
            Trial::sound().with("site.objects", "[]").worst(CODE),
            Verdict::Pass
        );
        // Against a wall the island stands without a gap.
        let wall = "[{name: house, kind: wall, at: {x: -20 ft, y: 30 in, z: 0 in}, size: {x: 60 ft, y: 1 ft, z: 9 ft}}]";
        let walled = Trial::sound()
            .with("runs[cook].walls", "[seating]")
            .with("site.objects", wall);
        let walled = walled
            .without("openings[low vent]")
            .without("openings[high vent]");
        assert_eq!(walled.about(CODE, "house").verdict, Verdict::Pass);
    }
}
