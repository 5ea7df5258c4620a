//! Whether water drops from the edge instead of running down the face.

use crate::diagnostics::Place;
use crate::plan::SideKind;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const CLEAR: Limit = Limit {
    name: "drip-clear",
    what: "how far the edge of the counter passes the face below it, so that drops fall clear",
    usual: 25.4,
    unit: Unit::Length,
    source: "common practice, 1 in",
};

pub(super) static DRIP: Rule = Rule {
    code: "weather-drip",
    family: Family::Weather,
    title: "Water drops clear of the faces",
    about: About {
        checks: "Each exposed side passes the face or tile band below it by `drip-clear`, and has a drip: a groove (`counter.drip`) under it. It passes with both, cautions without a groove where the edge stands clear, and fails where the edge does not stand clear.",
        why: "Water clings to the underside and runs back to the stucco: that is where it first turns green, then falls off.",
        reckoned: "The plan's room from the counter's edge to the face or tile band, against the limit, common practice.",
        example: "An overhang of 2 in over tile that stands out 1/8 in leaves 1-7/8 in: clear.",
    },
    limits: &[&CLEAR],
    levers: &[
        "counter.drip",
        "counter.overhang.working",
        "counter.overhang.seating",
        "counter.overhang.left",
        "counter.overhang.right",
    ],
    outside: &[Outside {
        what: "1 in and a groove, as masons have it",
        origin: Origin::Practice,
        test: "an_edge_stands_clear_and_drips",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let plan = subject.plan;
    let drip = subject.design().counter.casting.drip.as_ref();
    let clear = subject.bound(&CLEAR);
    let mut said: Vec<&str> = Vec::new();
    for side in plan
        .counter
        .sides
        .iter()
        .filter(|s| s.kind == SideKind::Exposed)
    {
        let face = &plan.faces[side.face];
        if said.contains(&face.name.as_str()) {
            continue;
        }
        said.push(&face.name);
        let place = &subject.design().counter.overhang.of(face.side).place;
        let found = format!(
            "{}: the counter's edge stands {} clear of the face",
            face.name,
            subject.mm(side.room.max(0.0))
        );
        if !clear.is_reached_by(side.room) {
            answers
                .fail(place, found)
                .about(&face.name)
                .at_least(&clear)
                .hint("a larger overhang");
            continue;
        }
        match drip.map(|d| d.value) {
            None => {
                let counter = Place {
                    key: "counter".to_owned(),
                    ..Place::default()
                };
                let found = "whether the edge has a drip groove";
                answers.missing(&counter, "drip", found).about(&face.name);
            }
            Some(true) => {
                answers
                    .pass(place, format!("{found}, with a drip groove"))
                    .about(&face.name)
                    .at_least(&clear);
            }
            Some(false) => {
                let hint = format!(
                    "lay a strip of {} quarter-round in the form, {} from the edge",
                    subject.mm(6.35),
                    subject.mm(25.4)
                );
                answers
                    .caution(place, format!("{found}, without a drip groove"))
                    .about(&face.name)
                    .at_least(&clear)
                    .hint(hint);
            }
        }
    }
    if said.is_empty() {
        answers.nothing("no side of the counter is exposed");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-drip";

    #[test]
    fn an_edge_stands_clear_and_drips() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        assert_eq!(
            Trial::sound().with("counter.drip", "false").worst(CODE),
            Verdict::Caution
        );
        assert_eq!(
            Trial::sound().without("counter.drip").worst(CODE),
            Verdict::NotChecked
        );
        // Tile of 3/8 in on the base coat stands out 1/4 in more than the finish coat of 1/8: 1-1/4 in leave 1 in, 1-1/8 do not.
        let out = |out: &str| {
            let thin = Trial::sound().with("counter.turndown.width", "3/4 in");
            let out = thin.with("counter.overhang.working", out);
            out.about(CODE, "cook run, working side").verdict
        };
        assert_eq!(out("1-1/4 in"), Verdict::Pass);
        assert_eq!(out("1-1/8 in"), Verdict::Fail);
    }
}
