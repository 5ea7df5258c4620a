//! Whether the tile band has movement joints, and wide enough.

use crate::diagnostics::Place;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const EVERY: Limit = Limit {
    name: "tile-joint-every",
    what: "from one movement joint in exterior tile to the next",
    usual: 3657.6,
    unit: Unit::Length,
    source: "8 to 12 ft each way, tile industry handbook, EJ171",
};

const NEAR: Limit = Limit {
    name: "tile-joint-width",
    what: "width of movement joints in exterior tile 8 ft apart",
    usual: 9.525,
    unit: Unit::Length,
    source: "3/8 in at 8 ft, tile industry handbook, EJ171",
};

const FAR: Limit = Limit {
    name: "tile-joint-width-far",
    what: "width of movement joints in exterior tile 12 ft apart",
    usual: 12.7,
    unit: Unit::Length,
    source: "1/2 in at 12 ft, tile industry handbook, EJ171",
};

/// Eight feet, mm.
const EIGHT: f64 = 2438.4;

pub(super) static TILE_JOINTS: Rule = Rule {
    code: "weather-tile-joints",
    family: Family::Weather,
    title: "Exterior tile has movement joints, wide enough",
    about: About {
        checks: "Joints of the tile band stand no farther apart than `tile-joint-every`, and are as wide as their distance asks: `tile-joint-width` at 8 ft, `tile-joint-width-far` at 12 ft, in proportion between. It cautions beyond 8 ft and \
                 fails beyond a limit. Where every face is shorter than 8 ft the band's corners are joints enough.",
        why: "Tile outdoors grows in the sun; without a joint it lifts off its bed, in the middle, on the hottest day.",
        reckoned: "`tile_band.joint_every` and `joint_width` against EJ171 (published): every 8 to 12 ft each way, 3/8 in at 8 ft, 1/2 in at 12 ft.",
        example: "Joints every 10 ft must be 7/16 in wide; at 3/8 in they fail.",
    },
    limits: &[&EVERY, &NEAR, &FAR],
    levers: &["tile_band.joint_every", "tile_band.joint_width"],
    outside: &[Outside {
        what: "8 to 12 ft, 3/8 to 1/2 in (industry handbook, EJ171)",
        origin: Origin::Published,
        test: "joints_grow_with_their_distance",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    if design.tile_band.is_none() {
        answers.nothing("there is no tile band");
        return;
    }
    let clad = subject.plan.faces.iter().filter(|f| !f.wall);
    let longest = clad.map(|f| f.length).fold(0.0, f64::max);
    let making = &design.making;
    let group = Place {
        key: "tile_band".to_owned(),
        ..Place::default()
    };
    let most = subject.bound(&EVERY);
    let every = match &making.tile_joints {
        Some(every) => every,
        None if longest <= EIGHT && most.allows(longest) => {
            let found = format!(
                "the longest band is {} long: corners are joints enough",
                subject.mm(longest)
            );
            answers.pass(&group, found);
            return;
        }
        None => {
            answers.missing(
                &group,
                "joint_every",
                "where the tile band has movement joints",
            );
            return;
        }
    };
    let apart = every.mm().min(longest);
    let found = format!(
        "the tile band has movement joints {} apart",
        subject.mm(apart)
    );
    let answer = if !most.allows(apart) {
        answers.fail(&every.place, found)
    } else if apart <= EIGHT + 1e-6 {
        answers.pass(&every.place, found)
    } else {
        answers.caution(&every.place, found)
    };
    answer
        .about("distance")
        .at_most(&most)
        .hint("a joint in line with the side of an opening");
    let Some(width) = &making.tile_joint_width else {
        answers
            .missing(&group, "joint_width", "how wide the movement joints are")
            .about("width");
        return;
    };
    let (near, far) = (subject.bound(&NEAR), subject.bound(&FAR));
    let share = ((apart - EIGHT) / (3657.6 - EIGHT)).clamp(0.0, 1.0);
    let least = near.value + share * (far.value - near.value);
    let found = format!("its movement joints are {} wide", subject.mm(width.mm()));
    let limit = format!("at least {}", subject.mm(least));
    answers
        .judge(width.mm() >= least - 1e-6, &width.place, found)
        .about("width")
        .limit(limit, near.source)
        .hint("wider joints, filled with sealant and not with grout");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-tile-joints";

    #[test]
    fn joints_grow_with_their_distance() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // EJ171: at 10 ft half way from 3/8 to 1/2 in: 7/16.
        let with = |every: &str, wide: &str| {
            let long = Trial::sound()
                .with("runs[cook].length", "20 ft")
                .with("tile_band.joint_every", every);
            let long = long.with("tile_band.joint_width", wide);
            (
                long.about(CODE, "distance").verdict,
                long.about(CODE, "width").verdict,
            )
        };
        assert_eq!(with("8 ft", "3/8 in"), (Verdict::Pass, Verdict::Pass));
        assert_eq!(with("10 ft", "3/8 in"), (Verdict::Caution, Verdict::Fail));
        assert_eq!(with("10 ft", "7/16 in"), (Verdict::Caution, Verdict::Pass));
        assert_eq!(with("13 ft", "1/2 in"), (Verdict::Fail, Verdict::Pass));
        // A file that asks for joints every 6 ft is held to that.
        let own = "[{name: tile-joint-every, value: 6 ft, source: the tile's maker}]";
        let strict = Trial::sound().with("limits", own);
        assert_eq!(strict.about(CODE, "distance").verdict, Verdict::Fail);
        assert_eq!(
            Trial::sound().without("tile_band.joint_every").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(
            Trial::sound().without("tile_band.joint_width").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(
            Trial::sound().without("tile_band").worst(CODE),
            Verdict::Pass
        );
    }
}
