//! Whether the conduit finds its way through the punch-outs of the studs.

use super::route::{Route, Stop, route, stop};
use crate::catalog::PUNCH_OUTS;
use crate::design::Electricity;
use crate::diagnostics::Place;
use crate::plan::{Upright, UprightKind};
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
        checks: "From each of the openings that `electricity.feeds` names to the next, the conduit at `electricity.height` goes round the island by the shorter way, behind the faces, and through a punch-out of every stud that it crosses, with \
                 `conduit-room` all round; a single feed is checked along its own panel. Bushings are there. It fails where it meets the web of a stud or jamb that has holes elsewhere, or an opening, or where bushings are left out; it cautions \
                 where what it crosses has no punch-outs (cripples, shallow studs) and holes must be cut.",
        why: "A cable drawn over the edge of a stud is cut by it, and then the whole frame is live. A hole cut in the wrong place weakens the stud.",
        reckoned: "A stud's punch-outs are 1-1/2 × 4 in every 24 in, the first with its middle 12 in from its foot (industry guide; the first from memory). The conduit's round must lie within: height ± (d/2 + room) within the hole's \
                   height, d + 2 room within its width. The way runs in the middle of the panels' thickness, where the holes are.",
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
    if subject.plan.design.trade.stud.nominal_depth.mm() <= PUNCH_OUTS.deeper_than {
        none_punched(subject, answers, &path);
        return;
    }
    let feeds: Vec<_> = electricity.feeds.iter().map(|f| f.value.as_str()).collect();
    if let [only] = feeds[..] {
        along_its_panel(subject, answers, only, &path);
    }
    for pair in feeds.windows(2) {
        between(subject, answers, (pair[0], pair[1]), &path);
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
                .limit(limit, "NEC 2017, 300.4(B)(1), value from memory")
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

/// Studs too shallow for punch-outs.
fn none_punched(subject: &Subject, answers: &mut Answers, path: &Path) {
    let found = format!(
        "studs {} have no punch-outs: a hole must be cut in each that the conduit crosses",
        subject.design().trade.stud.designator
    );
    answers
        .caution(path.place, found)
        .about("conduit")
        .hint("cut round holes in the middle of the web with a hole saw, and bush them");
}

/// The only feed: where its conduit comes from is not in the file, so every stud of its panel is looked at.
fn along_its_panel(subject: &Subject, answers: &mut Answers, feed: &str, path: &Path) {
    let plan = subject.plan;
    let face = plan
        .faces
        .iter()
        .position(|f| f.openings.iter().any(|o| o.name == feed));
    let panels = plan
        .panels
        .iter()
        .filter(|p| face.is_some() && p.face == face);
    let uprights = panels.flat_map(|p| &p.uprights);
    let way = Route {
        uprights: uprights
            .filter(|u| u.kind != UprightKind::Cripple)
            .collect(),
        openings: Vec::new(),
    };
    judge(subject, answers, &way, path, ("along the panel of", feed));
}

/// The way from one feed to the next.
fn between(subject: &Subject, answers: &mut Answers, feeds: (&str, &str), path: &Path) {
    let stops = stop(subject.plan, feeds.0).zip(stop(subject.plan, feeds.1));
    let Some((from, to)): Option<(Stop, Stop)> = stops else {
        return;
    };
    let way = route(subject.plan, from, to, path.height, path.radius);
    let words = format!("from '{}' to", feeds.0);
    judge(subject, answers, &way, path, (&words, feeds.1));
}

fn judge(
    subject: &Subject,
    answers: &mut Answers,
    way: &Route,
    path: &Path,
    (words, feed): (&str, &str),
) {
    let room = subject.bound(&ROOM).value;
    let (punched, whole): (Vec<&Upright>, Vec<&Upright>) =
        way.uprights.iter().partition(|u| holes(u).next().is_some());
    let met = punched.iter().filter(|u| !passes(u, path, room)).count();
    let start = format!(
        "{words} '{feed}' the conduit at {}",
        subject.mm(path.height)
    );
    let answer = if let Some(open) = way.openings.first() {
        let found = format!("{start} meets '{}'", open.name);
        answers
            .fail(path.place, found)
            .hint("lead it above or below the opening, or through the ground")
    } else if met > 0 {
        let of = punched.len();
        let found = format!("{start} meets the webs of {met} of {of} studs beside their holes");
        let middle = punched.first().and_then(|u| holes(u).next());
        let at = middle.map_or(String::new(), |m| subject.mm(m));
        let hint = format!("the punch-outs' middle is at {at}");
        answers.fail(path.place, found).hint(hint)
    } else if whole.is_empty() {
        let found = format!("{start} passes the punch-outs of {} studs", punched.len());
        answers.pass(path.place, found)
    } else {
        let found = format!(
            "{start} crosses {} uprights without punch-outs",
            whole.len()
        );
        answers
            .caution(path.place, found)
            .hint("cut a round hole in the middle of each web with a hole saw, and bush it")
    };
    let source = "industry technical guide; first hole from memory";
    answer.about(feed).limit("within the punch-outs", source);
}

/// The middles of an upright's punch-outs; cripples are cut from between them.
fn holes(u: &Upright) -> impl Iterator<Item = f64> + '_ {
    let most = if u.kind == UprightKind::Cripple {
        0
    } else {
        64
    };
    let at = (0..most).map(|k| PUNCH_OUTS.first + f64::from(k) * PUNCH_OUTS.pitch);
    at.take_while(|m| m + PUNCH_OUTS.last <= u.z1 - u.z0)
        .map(|m| u.z0 + m)
}

fn passes(u: &Upright, path: &Path, room: f64) -> bool {
    let needs = path.radius + room;
    let high = PUNCH_OUTS.height / 2.0 - needs;
    2.0 * needs <= PUNCH_OUTS.width && holes(u).any(|m| (path.height - m).abs() <= high + 1e-6)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::diagnostics::Verdict;
    use crate::geometry::Solid;
    use crate::parts::PartKind;
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
        assert_eq!(shallow.about(CODE, "conduit").verdict, Verdict::Caution);
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
    #[test]
    fn from_feed_to_feed_it_goes_round_by_the_shorter_way() {
        // From the bar's right end to the vent at the cook run's back the shorter way is past the seating sides, where no
        // framed opening is at 14 in. Doors 9 to 19 in high between two receptacles leave no way at 14 in.
        let to = |feeds: &str, height: &str| {
            Trial::sound()
                .with("electricity.feeds", feeds)
                .with("electricity.height", height)
        };
        let back = to("[receptacle, high vent]", "14 in").about(CODE, "high vent");
        assert_eq!(back.verdict, Verdict::Pass, "{back:?}");
        assert_eq!(
            to("[receptacle, high vent]", "18 in").worst(CODE),
            Verdict::Fail
        );
        let doors = "[{name: outlet, kind: receptacle, run: bar, at: {from: right, distance: 8 in}, width: 3 in, height: 5 in, sill: 24 in}, \
                     {name: sink doors, kind: door, run: bar, at: {in_line_with: sink}, width: 24 in, height: 10 in, sill: 9 in}, \
                     {name: other, kind: receptacle, run: bar, at: {from: right, distance: 46 in}, width: 3 in, height: 5 in, sill: 24 in}]";
        let front = Trial::sound()
            .with("openings", doors)
            .with("electricity.feeds", "[outlet, other]")
            .without("gas");
        assert_eq!(front.about(CODE, "other").verdict, Verdict::Fail);
        // Above the doors stand cripples, which have no holes.
        let above = front
            .with("electricity.height", "22 in")
            .about(CODE, "other");
        assert!(above.verdict >= Verdict::Caution, "{above:?}");
    }

    #[test]
    fn the_holes_are_those_of_the_studs_as_they_are_built() {
        let plan = Trial::sound().plan();
        let subject = Subject::new(&plan);
        let assembly = subject.assembly();
        let mut built = Vec::new();
        for part in &assembly.parts {
            let upright = matches!(part.kind, PartKind::Stud | PartKind::Jamb);
            if let (true, Solid::Extrusion(e)) = (upright, assembly.solid(part)) {
                let foot = part.placement.translation.z;
                built.extend(e.slots.iter().map(|s| foot + s.outline.bounds().centre().y));
            }
        }
        let uprights = plan.panels.iter().flat_map(|p| &p.uprights);
        let mut known: Vec<f64> = uprights.flat_map(holes).collect();
        built.sort_by(f64::total_cmp);
        known.sort_by(f64::total_cmp);
        assert!(!known.is_empty());
        assert_eq!(built.len(), known.len());
        assert!(built.iter().zip(&known).all(|(a, b)| (a - b).abs() < 1e-6));
    }
}
