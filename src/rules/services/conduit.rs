//! Whether the conduit finds its way through the punch-outs of the studs.

use crate::catalog::PUNCH_OUTS;
use crate::design::Electricity;
use crate::diagnostics::Place;
use crate::plan::{Panel, Upright, UprightKind};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const ROOM: Limit = Limit {
    name: "conduit-room",
    what: "room between conduit and the edge of a punch-out, all round, for a bushing",
    usual: 3.175,
    unit: Unit::Length,
    source: "common practice, 1/8 in",
};

pub(super) static CONDUIT: Rule = Rule {
    code: "power-conduit",
    family: Family::Services,
    title: "The conduit finds its way through aligned punch-outs, with bushings",
    about: About {
        checks: "In the frame panel of every receptacle that `electricity.feeds` names, the conduit at `electricity.height` passes through a punch-out of every full stud and jamb with `conduit-room` all round, and \
                 bushings are there. It fails where it meets steel or bushings are left out, and cautions where the studs have no punch-outs and holes must be cut.",
        why: "A cable drawn over the edge of a stud is cut by it, and then the whole frame is live. A hole cut in the wrong place weakens the stud.",
        reckoned: "A stud's punch-outs are 1-1/2 × 4 in every 24 in, the first with its middle 12 in from its foot (industry guide; the first from memory). The conduit's round must lie within: height ± (d/2 + room) within the hole's \
                   height, d + 2 room within its width.",
        example: "Studs that stand 2 in above the datum have holes from 12 to 16 in; conduit of 7/8 in at 14 in passes, at 18 in it meets the web.",
    },
    limits: &[&ROOM],
    levers: &["electricity.height", "electricity.bushings"],
    outside: &[Outside {
        what: "punch-outs of 1-1/2 × 4 in at 24 in on centre (industry technical guide)",
        origin: Origin::Published,
        test: "it_passes_at_the_height_of_the_holes",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(electricity) = &subject.design().electricity else {
        let found = "no electric supply is in the file: nothing passes the studs";
        answers.nothing(found);
        return;
    };
    if electricity.feeds.is_empty() {
        answers.missing(
            &electricity.place,
            "feeds",
            "which receptacles the conduit feeds",
        );
        return;
    }
    bushings(answers, electricity);
    let Some(conduit) = &electricity.conduit else {
        answers.missing(&electricity.place, "conduit", "how thick the conduit is");
        return;
    };
    let Some(height) = &electricity.height else {
        answers.missing(
            &electricity.place,
            "height",
            "at what height the conduit runs",
        );
        return;
    };
    let path = Path {
        radius: conduit.mm() / 2.0,
        height: height.mm(),
        place: &height.place,
    };
    for feed in &electricity.feeds {
        through(subject, answers, &feed.value, &path);
    }
}

fn bushings(answers: &mut Answers, electricity: &Electricity) {
    match &electricity.bushings {
        None => {
            answers
                .missing(
                    &electricity.place,
                    "bushings",
                    "whether bushings are where the conduit passes steel",
                )
                .about("bushings");
        }
        Some(there) => {
            let found = if there.value {
                "bushings are where the conduit passes steel"
            } else {
                "no bushings are where the conduit passes steel"
            };
            let limit = "a bushing or grommet at every hole";
            answers
                .judge(there.value, &there.place, found)
                .about("bushings")
                .limit(limit, "NEC 300.4(B), value from memory")
                .hint("push a bushing into every hole before the cable is drawn");
        }
    }
}

/// The way of the conduit.
struct Path<'a> {
    radius: f64,
    height: f64,
    place: &'a Place,
}

fn through(subject: &Subject, answers: &mut Answers, feed: &str, path: &Path) {
    let plan = subject.plan;
    let face = plan
        .faces
        .iter()
        .position(|f| f.openings.iter().any(|o| o.name == feed));
    let panel = plan
        .panels
        .iter()
        .find(|p| face.is_some() && p.face == face);
    let Some(panel) = panel else {
        answers
            .pass(path.place, format!("no frame panel stands before '{feed}'"))
            .about(feed);
        return;
    };
    let steel = &plan.design.trade.stud;
    if steel.nominal_depth.mm() <= PUNCH_OUTS.deeper_than {
        let found = format!(
            "studs {} have no punch-outs: on the way to '{feed}' a hole must be cut in each",
            steel.designator
        );
        let hint = "cut round holes in the middle of the web with a hole saw, and bush them";
        answers.caution(path.place, found).about(feed).hint(hint);
        return;
    }
    let room = subject.bound(&ROOM).value;
    let met = full(panel).filter(|u| !passes(u, path, room)).count();
    let found = format!(
        "on the way to '{feed}' the conduit at {} meets the steel of {met} of {} studs",
        subject.mm(path.height),
        full(panel).count()
    );
    answers
        .judge(met == 0, path.place, found)
        .about(feed)
        .limit(
            "within the punch-outs",
            "industry technical guide; first hole from memory",
        )
        .hint(hint(subject, panel));
}

/// The uprights that have punch-outs.
fn full(panel: &Panel) -> impl Iterator<Item = &Upright> {
    panel
        .uprights
        .iter()
        .filter(|u| u.kind != UprightKind::Cripple)
}

/// The middles of an upright's punch-outs.
fn holes(u: &Upright) -> impl Iterator<Item = f64> + '_ {
    let at = (0..64).map(|k| PUNCH_OUTS.first + f64::from(k) * PUNCH_OUTS.pitch);
    at.take_while(|m| m + PUNCH_OUTS.last <= u.z1 - u.z0)
        .map(|m| u.z0 + m)
}

fn passes(u: &Upright, path: &Path, room: f64) -> bool {
    let needs = path.radius + room;
    let high = PUNCH_OUTS.height / 2.0 - needs;
    2.0 * needs <= PUNCH_OUTS.width && holes(u).any(|m| (path.height - m).abs() <= high + 1e-6)
}

fn hint(subject: &Subject, panel: &Panel) -> String {
    let first = full(panel).next().and_then(|u| holes(u).next());
    match first {
        Some(middle) => format!("the punch-outs' middle is at {}", subject.mm(middle)),
        None => {
            "the studs are too short to have punch-outs: cut and bush a hole in each".to_owned()
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "power-conduit";

    #[test]
    fn it_passes_at_the_height_of_the_holes() {
        // Studs stand in the bottom track, 2 in above the datum and some: holes of 4 in about 14 in. Conduit of 7/8 in and 1/8 in
        // round it is free within 14 ± (2 - 9/16) in.
        let at = |height: &str| {
            Trial::sound()
                .with("electricity.height", height)
                .about(CODE, "receptacle")
                .verdict
        };
        assert_eq!(at("14 in"), Verdict::Pass);
        assert_eq!(at("12-3/4 in"), Verdict::Pass);
        assert_eq!(at("12-1/4 in"), Verdict::Fail);
        assert_eq!(at("18 in"), Verdict::Fail);
        let thick = Trial::sound().with("electricity.conduit", "1-3/8 in");
        assert_eq!(thick.about(CODE, "receptacle").verdict, Verdict::Fail);
        let bare = Trial::sound().with("electricity.bushings", "false");
        assert_eq!(bare.about(CODE, "bushings").verdict, Verdict::Fail);
        let shallow = Trial::sound()
            .with("trade.stud", "250S125-33")
            .with("trade.track", "250T125-33");
        assert_eq!(shallow.about(CODE, "receptacle").verdict, Verdict::Caution);
        for key in [
            "electricity.height",
            "electricity.conduit",
            "electricity.bushings",
            "electricity.feeds",
        ] {
            assert_eq!(
                Trial::sound().without(key).worst(CODE),
                Verdict::NotChecked,
                "{key}"
            );
        }
        assert_eq!(
            Trial::sound().without("electricity").worst(CODE),
            Verdict::Pass
        );
    }
}
