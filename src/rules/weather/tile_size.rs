//! Whether the joints between tiles suit the tiles.

use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const LEAST: Limit = Limit {
    name: "grout-joint",
    what: "width of the joint between tiles outdoors",
    usual: 3.0,
    unit: Unit::Length,
    source: "three times the tile's variation in size, ANSI A108.02, value from memory: for pressed tile some 1/8 in",
};

const MOST: Limit = Limit {
    name: "grout-joint-most",
    what: "width of a joint that grout fills without shrinking off the tile",
    usual: 12.7,
    unit: Unit::Length,
    source: "common practice, 1/2 in with sanded grout",
};

pub(super) static TILE_SIZE: Rule = Rule {
    code: "weather-tile-size",
    family: Family::Weather,
    title: "The joints between tiles suit the tiles",
    about: About {
        checks: "The joint of the tile band is at least `grout-joint` and at most `grout-joint-most`. A tile with a side longer than 15 in is a caution: it wants a flatter wall than a stuccoed one. It fails outside the limits.",
        why: "Tiles that touch chip each other when the sun is on them. Outdoors a tight joint is no joint.",
        reckoned: "`tile_band.joint` against the limits; long tiles by ANSI A108.02 (15 in, from memory).",
        example: "4-1/4 in tiles with joints of 3/16 in pass; with 1/16 in they fail.",
    },
    limits: &[&LEAST, &MOST],
    levers: &["tile_band.joint"],
    outside: &[Outside {
        what: "joints by the tile's variation, and 15 in for large tile (ANSI A108.02)",
        origin: Origin::Memory,
        test: "a_tight_joint_is_no_joint",
    }],
    check,
};

/// A tile with a side longer than this wants a flatter wall: 15 in.
const LARGE: f64 = 381.0;

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(band) = &subject.design().tile_band else {
        answers.nothing("there is no tile band");
        return;
    };
    let (least, most) = (subject.bound(&LEAST), subject.bound(&MOST));
    let joint = band.joint.mm();
    let found = format!("the joints between tiles are {} wide", subject.mm(joint));
    let holds = least.is_reached_by(joint) && most.allows(joint);
    let limit = format!("{} to {}", least.spell(), most.spell());
    answers
        .judge(holds, &band.joint.place, found)
        .about("joint")
        .limit(limit, least.source)
        .hint(format!(
            "spacers of {} to {}",
            subject.mm(3.175),
            subject.mm(6.35)
        ));
    let side = band.tile_width.mm().max(band.tile_height.mm());
    if side > LARGE {
        let found = format!("a tile is {} long", subject.mm(side));
        answers
            .caution(&band.tile_width.place, found)
            .about("tile")
            .limit(
                format!("at most {}", subject.mm(LARGE)),
                "ANSI A108.02, value from memory",
            )
            .hint(format!(
                "a wall flat within {} over {}, or smaller tile",
                subject.mm(3.175),
                subject.mm(3048.0)
            ));
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-tile-size";

    // Nothing it asks can be missing: a band has its usual joint.
    #[test]
    fn a_tight_joint_is_no_joint() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let joint = |joint: &str| Trial::sound().with("tile_band.joint", joint).worst(CODE);
        assert_eq!(joint("1/16 in"), Verdict::Fail);
        assert_eq!(joint("1/8 in"), Verdict::Pass);
        assert_eq!(joint("5/8 in"), Verdict::Fail);
        let long = Trial::sound().with("tile_band.tile_width", "18 in");
        assert_eq!(long.about(CODE, "tile").verdict, Verdict::Caution);
        assert_eq!(
            Trial::sound().without("tile_band").worst(CODE),
            Verdict::Pass
        );
    }
}
