//! Whether what stands on the site leaves the island its place.

use crate::design::{ObjectKind, SiteObject};
use crate::geometry::{Bounds3, Point3};
use crate::rules::around::site_group;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
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
                   axes. The limit is common practice.",
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
    let boxes: Vec<Bounds3> = (0..design.runs.len())
        .flat_map(|i| boxes(subject, i))
        .collect();
    let off = subject.bound(&OFF);
    for object in solid {
        let nearest = boxes
            .iter()
            .map(|b| apart(b, object))
            .fold(f64::INFINITY, f64::min);
        let name = format!("the {} '{}'", object.kind.name(), object.name);
        let shares = boxes.iter().any(|b| overlap(b, object));
        let answer = if shares {
            let found = format!("{name} stands where the island is to stand");
            answers
                .fail(&object.place, found)
                .hint("move the island, or make the run or its overhang end before it")
        } else if off.is_reached_by(nearest) || object.kind == ObjectKind::Wall {
            answers.pass(
                &object.place,
                format!("{name} is {} from the island", subject.mm(nearest)),
            )
        } else {
            let found = format!("{name} is {} from the island", subject.mm(nearest));
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

/// A run's frame up to the slab, and the counter over it.
fn boxes(subject: &Subject, run: usize) -> [Bounds3; 2] {
    let (plan, levels) = (subject.plan, &subject.plan.levels);
    let frame = &plan.runs[run];
    let across = plan.counter_across(run);
    let tall = |v: (f64, f64), z: (f64, f64)| {
        let flat = frame.rectangle(frame.framed, v);
        Bounds3 {
            low: Point3::new(flat.low.x, flat.low.y, z.0),
            high: Point3::new(flat.high.x, flat.high.y, z.1),
        }
    };
    [
        tall((0.0, frame.depth), (0.0, levels.slab_bottom)),
        tall(across, (levels.slab_bottom, levels.counter_top)),
    ]
}

/// How far a box and an object are apart along the axes, mm: negative where they overlap along all three.
fn gaps(b: &Bounds3, object: &SiteObject) -> [f64; 3] {
    std::array::from_fn(|i| (b.low[i] - object.high[i]).max(object.low[i] - b.high[i]))
}

fn apart(b: &Bounds3, object: &SiteObject) -> f64 {
    gaps(b, object)
        .iter()
        .map(|g| g.max(0.0).powi(2))
        .sum::<f64>()
        .sqrt()
}

/// What touches does not overlap; a hundredth of a millimetre is forgiven.
fn overlap(b: &Bounds3, object: &SiteObject) -> bool {
    gaps(b, object).iter().all(|g| *g < -0.01)
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
