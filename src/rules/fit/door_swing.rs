//! Whether every leaf opens a quarter turn without striking anything.

use super::opens::{drawers, in_the_way, judge, leaves, together};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// Room beside an open leaf.
pub(super) const CLEAR: Limit = Limit {
    name: "opening-clear",
    what: "the room beside the path of a leaf or a drawer, for its handle and a hand",
    usual: 38.1,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static DOOR_SWING: Rule = Rule {
    code: "fit-door-swing",
    family: Family::Fit,
    title: "Every leaf opens a quarter turn",
    about: About {
        checks: "Each leaf of a door, a hatch or an appliance below the counter turns by 90 degrees without striking the \
                 counter's edge above it, another face of the island or an object of the site: it fails where it strikes. Less \
                 than `opening-clear` beside its path is a caution, and so are two leaves, or a leaf and a drawer, that cannot be \
                 open at the same time.",
        why: "A door that strikes a post is found out on the day it is hung, when its opening is framed, boarded and coated.",
        reckoned: "In plan, a leaf on an upright hinge sweeps a quarter of a disc about its hinge, as wide as the leaf, from the \
                   finished face; on a level hinge, a box as deep as the leaf is high. Distances are exact between that and the \
                   boxes of the site and the faces at the leaf's height. A leaf that is lifted off sweeps nothing.",
        example: "A leaf 24 in wide, its hinge 20 in left of a post and the post 10 in in front of the face: √(20² + 10²) = \
                  22.4 in is less than 24, so it strikes.",
    },
    limits: &[&CLEAR],
    levers: &[
        "openings[].at",
        "openings[].width",
        "openings[].height",
        "openings[].sill",
    ],
    outside: &[
        Outside {
            what: "1-1/2 in beside an open leaf for its handle and a hand, as builders leave it",
            origin: Origin::Practice,
            test: "a_leaf_strikes_a_post_that_is_nearer_than_it_is_wide",
        },
        Outside {
            what: "a leaf reaches what is nearer to its hinge than it is wide: Pythagoras, 3-4-5",
            origin: Origin::Worked,
            test: "a_leaf_strikes_a_post_that_is_nearer_than_it_is_wide",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let (leaves, drawers) = (leaves(subject.plan), drawers(subject.plan));
    if leaves.is_empty() {
        answers.nothing("no leaf turns on a hinge");
        return;
    }
    let around = in_the_way(subject, answers);
    let clear = subject.bound(&CLEAR);
    for (i, leaf) in leaves.iter().enumerate() {
        judge(subject, answers, leaf, &around, &clear);
        together(answers, leaf, &leaves[i + 1..]);
        together(answers, leaf, &drawers);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-door-swing";

    /// The trial island with the sink's doors out of the corner: where they are, they and the drawers cannot be open at once.
    fn apart() -> Trial {
        Trial::sound().with("openings[sink doors].at", "{from: right, distance: 18 in}")
    }

    /// A post 1 in square whose near left corner stands at (x, y) in inches; the finished working face of the cook run is
    /// at y = −7/8.
    fn post(x: f64, y: f64) -> Trial {
        let objects = format!(
            "[{{name: stake, kind: post, at: {{x: {x} in, y: {y} in, z: 0 in}}, size: {{x: 1 in, y: 1 in, z: 40 in}}}}]"
        );
        apart()
            .with("site.objects", &objects)
            .with("openings[grill doors].hinge", "left")
    }

    #[test]
    fn a_leaf_strikes_a_post_that_is_nearer_than_it_is_wide() {
        assert_eq!(apart().worst(CODE), Verdict::Pass);
        // Hinge of the grill doors at x = 28 − 12 = 16, 24 wide. The post's nearest corner stands 18 along and 24 out, 30
        // off (3-4-5): 6 to spare.
        let clear = post(34.0, -25.875);
        let found = clear.about(CODE, "grill doors");
        assert_eq!(found.verdict, Verdict::Pass);
        assert!(
            found.found.ends_with("with 6\" to spare"),
            "{}",
            found.found
        );
        // 15 along and 20 out is 25 off: 1 in to spare, less than 1-1/2.
        assert_eq!(post(31.0, -21.875).worst(CODE), Verdict::Caution);
        // 12 along and 16 out is 20 off: it strikes.
        assert_eq!(post(28.0, -17.875).worst(CODE), Verdict::Fail);
    }

    #[test]
    fn a_post_above_the_leaf_or_behind_the_island_is_not_in_its_way() {
        let low = "[{name: beam, kind: beam, at: {x: 28 in, y: -18 in, z: 40 in}, size: {x: 1 in, y: 1 in, z: 4 in}}]";
        assert_eq!(apart().with("site.objects", low).worst(CODE), Verdict::Pass);
    }

    #[test]
    fn a_leaf_under_the_counters_edge_keeps_below_the_turndown() {
        // Slab 2 in and turndown 4 in under 36 in: its lower edge is at 30 in. A door from 12 to 30-1/4 in strikes it.
        let high = |height: &str| {
            let door = format!(
                "[{{name: side door, kind: door, run: bar, at: {{from: right, distance: 30 in}}, width: 18 in, height: {height}, sill: 12 in}}]"
            );
            Trial::bare()
                .with("openings", &door)
                .with("counter.turndown.depth", "4 in")
        };
        assert_eq!(high("18-1/4 in").worst(CODE), Verdict::Fail);
        assert_eq!(high("17-3/4 in").worst(CODE), Verdict::Pass);
    }

    #[test]
    fn leaves_in_a_corner_that_meet_are_a_caution_and_an_unknown_site_is_not_checked() {
        let unknown = apart().without("site.objects");
        assert_eq!(unknown.worst(CODE), Verdict::NotChecked);
        assert_eq!(unknown.answers(CODE)[0].place.key, "site.objects");
        // The inside corner of the working faces is at x = 90. A leaf of the cook run hinged 30 in from it and one of the
        // bar run hinged as far, both 24 wide, open across each other: 30 √2 = 42.4 < 48.
        let corner = "[{name: one, kind: door, run: cook, at: {from: left, distance: 72 in}, width: 24 in, height: 18 in, sill: 6 in, hinge: left}, \
                       {name: two, kind: door, run: bar, at: {from: left, distance: 48 in}, width: 24 in, height: 18 in, sill: 6 in, hinge: right}]";
        let found = Trial::bare().with("openings", corner).answers(CODE);
        let both = found.iter().find(|f| f.found.contains("at the same time"));
        assert_eq!(
            both.map(|f| f.verdict),
            Some(Verdict::Caution),
            "{found:#?}"
        );
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
    }
}
