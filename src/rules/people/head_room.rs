//! Whether whoever works at the island has room above the head.

use crate::design::{ObjectKind, Side, SiteObject};
use crate::plan::Face;
use crate::rules::around::{counter_edge, object, seen_from, shared, site_group};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::site::ground::Surface;
use crate::units::Unit;

const ROOM: Limit = Limit {
    name: "head-room",
    what: "between the ground where people stand and what hangs over them",
    usual: 2032.0,
    unit: Unit::Length,
    source: "80 in, 2010 ADA Standards, 307.4 (vertical clearance of ways), value from memory",
};

const LEAST: Limit = Limit {
    name: "head-room-least",
    what: "head room that most people still stand under",
    usual: 1930.4,
    unit: Unit::Length,
    source: "common practice, 6 ft 4 in",
};

/// How far from the counter's edge people stand at it, millimetres: 36 in, common practice.
const STANDING: f64 = 914.4;

pub(super) static HEAD_ROOM: Rule = Rule {
    code: "people-head-room",
    family: Family::People,
    title: "Nothing hangs at the heads of those who stand at it",
    about: About {
        checks: "Every beam, roof and other thing that begins above the counter and reaches over the 3 ft before a working side or behind the seats: it passes from `head-room` up, cautions \
                 down to `head-room-least`, and fails below.",
        why: "A beam at the height of a forehead is found by whoever turns round with a full tray.",
        reckoned: "Lowest edge of the object less the highest ground under it within those 3 ft, by the survey where there is one, else the datum. Only the part over the \
                   strip counts.",
        example: "A beam 78 in above the datum where the ground lies 2-1/2 in lower leaves 80-1/2 in: it passes.",
    },
    limits: &[&ROOM, &LEAST],
    levers: &[],
    outside: &[Outside {
        what: "80 in of vertical clearance, 2010 ADA Standards, 307.4",
        origin: Origin::Memory,
        test: "eighty_inches_are_asked_for",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let Some(objects) = &design.site.objects else {
        let place = site_group(design);
        answers.missing(&place, "objects", "what hangs over the island is not known");
        return;
    };
    let points: Vec<_> = design
        .site
        .survey
        .iter()
        .flat_map(|s| s.levels.iter().map(|l| l.at))
        .collect();
    let surface = Surface::through(&points).ok();
    let datum = subject
        .ground()
        .and_then(|g| Some(g.fitted.as_ref()?.survey_datum));
    let ground = surface.as_ref().zip(datum);
    let counter = subject.plan.levels.counter_top;
    let over = |o: &&SiteObject| o.kind != ObjectKind::Walkway && o.low[2] > counter;
    for hanging in objects.iter().filter(over) {
        let faces = subject.plan.faces.iter().filter(|f| !f.wall);
        let rooms = faces.filter_map(|face| room(subject, face, hanging, ground));
        let Some(least) = rooms.reduce(f64::min) else {
            continue;
        };
        judge(subject, answers, hanging, least);
    }
    if answers.is_empty() {
        answers.nothing("nothing hangs over those who stand at the island");
    }
}

fn judge(subject: &Subject, answers: &mut Answers, hanging: &SiteObject, room: f64) {
    let (asked, least) = (subject.bound(&ROOM), subject.bound(&LEAST));
    let found = format!(
        "the {} '{}' leaves {} above the ground where people stand",
        hanging.kind.name(),
        hanging.name,
        subject.mm(room)
    );
    let hint = "raise it, pad and mark it, or turn the island from it";
    let answer = if asked.is_reached_by(room) {
        answers.pass(&hanging.place, found).at_least(&asked)
    } else if least.is_reached_by(room) {
        answers.caution(&hanging.place, found).at_least(&asked)
    } else {
        answers.fail(&hanging.place, found).at_least(&least)
    };
    answer.about(&hanging.name).hint(hint);
}

/// The head room under an object before a face where people stand; `None` where it does not reach over them.
fn room(
    subject: &Subject,
    face: &Face,
    hanging: &SiteObject,
    ground: Option<(&Surface, f64)>,
) -> Option<f64> {
    if !matches!(face.side, Side::Working | Side::Seating) {
        return None;
    }
    let edge = counter_edge(subject.plan, face);
    let seen = seen_from(face, &object(hanging).plan);
    let strip = (edge, edge + STANDING);
    if shared(seen.s, (0.0, face.length)) <= 1.0 || shared(seen.out, strip) <= 1.0 {
        return None;
    }
    let s = (seen.s.0.max(0.0), seen.s.1.min(face.length));
    let out = (seen.out.0.max(strip.0), seen.out.1.min(strip.1));
    let highest = ground.map(|(surface, datum)| {
        let shares = || (0..=8).map(|k| f64::from(k) / 8.0);
        let places = shares().flat_map(|a| shares().map(move |b| (a, b)));
        let heights = places.map(|(a, b)| {
            let at = face.point(s.0 + (s.1 - s.0) * a, out.0 + (out.1 - out.0) * b);
            surface.at(at).z - datum
        });
        heights.fold(f64::NEG_INFINITY, f64::max)
    });
    Some(hanging.low[2] - highest.unwrap_or(0.0))
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "people-head-room";

    /// A beam over the cook, whose edge of the counter is at y = -2-7/8 in.
    fn beam(z: &str, y: &str) -> Trial {
        Trial::sound().without("site.survey").with("site.objects", &format!(
            "[{{name: beam, kind: beam, combustible: false, at: {{x: 0 in, y: {y}, z: {z}}}, size: {{x: 100 in, y: 6 in, z: 8 in}}}}]"
        ))
    }

    #[test]
    fn eighty_inches_are_asked_for() {
        assert_eq!(beam("80 in", "-20 in").worst(CODE), Verdict::Pass);
        assert_eq!(beam("79-1/2 in", "-20 in").worst(CODE), Verdict::Caution);
        assert_eq!(beam("75 in", "-20 in").worst(CODE), Verdict::Fail);
        // Over the counter, and farther off than anybody stands.
        assert_eq!(beam("75 in", "4 in").worst(CODE), Verdict::Pass);
        assert_eq!(beam("75 in", "-70 in").worst(CODE), Verdict::Pass);
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("site.objects").worst(CODE),
            Verdict::NotChecked
        );
    }

    #[test]
    fn where_the_ground_is_lower_there_is_more_room() {
        // Falling 1/4 in per ft towards the cook: 14 in before the face it is lower than under the island.
        let points = "{points: [{x: -8 ft, y: -8 ft, z: -2 in}, {x: 16 ft, y: -8 ft, z: -2 in}, {x: -8 ft, y: 8 ft, z: 2 in}, {x: 16 ft, y: 8 ft, z: 2 in}]}";
        let low = beam("79-1/2 in", "-20 in").with("site.survey", points);
        // Datum at y = 30 in; at -14 in the ground is 44/12/4 = 0.92 in lower: 80.4 in.
        let found = low.about(CODE, "beam");
        assert_eq!(found.verdict, Verdict::Pass);
        assert!(found.found.contains("6'-8 7/16\""), "{}", found.found);
    }
}
