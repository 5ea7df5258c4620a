//! What is left under each body that hangs in the counter.

use crate::design::{Appliance, OpeningKind};
use crate::plan::{Body, BodyOf, Plan};
use crate::rules::around::{seen_from, shared};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// Room under a body where its instructions do not say.
const BELOW: Limit = Limit {
    name: "under-body",
    what: "the room under a body, where its instructions do not say",
    usual: 25.4,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static UNDER_BODY: Rule = Rule {
    code: "fit-under-body",
    family: Family::Fit,
    title: "Room is left under each body",
    about: About {
        checks: "Under the body of each appliance, down to whatever comes first (another body, the floor of its compartment, the \
                 ground), there is as much room as its instructions ask for (`clearance.below`): less fails. Where the file does \
                 not say, `under-body` is asked for, and less is a caution. A body that hangs lower than the top of a door in front of \
                 it is a caution: it fills the upper part of what the door opens to.",
        why: "Bodies are sold by their size below the counter's top; slab, substrate and frame take their part of it before \
              anything is left for a drawer, a hose or air. Found out after the pour, it cannot be mended.",
        reckoned: "Underside = counter's top − body height. Of the body, thickness of slab + substrate is inside the counter; the \
                   turndown hangs outside the face and takes nothing. A body that meets a header, the frame or another body is \
                   refused before any check.",
        example: "A grill 9-1/2 in high under a counter at 36 in ends at 26-1/2 in; a door below it ends at 23 in: 3-1/2 in.",
    },
    limits: &[&BELOW],
    levers: &["levels.counter", "openings[].height", "openings[].sill"],
    outside: &[Outside {
        what: "heights added up on paper, and an inch of room under what is hung",
        origin: Origin::Practice,
        test: "the_room_is_what_paper_says",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let hung = subject.plan.bodies.iter().filter_map(|b| match b.of {
        BodyOf::Appliance(i) => Some((b, subject.design().appliances.get(i)?)),
        BodyOf::Opening(_) => None,
    });
    let mut found = false;
    for (body, a) in hung {
        found = true;
        room(subject, answers, body, a);
        doors(subject, answers, body, a);
    }
    if !found {
        answers.nothing("nothing hangs in the counter");
    }
}

/// What comes first under a body, and its height.
fn first_below(plan: &Plan, body: &Body) -> (f64, String) {
    let mine = body.bounds(&plan.runs);
    let under = |other: &&Body| {
        let b = other.bounds(&plan.runs);
        let along = |i: usize| shared((mine.low[i], mine.high[i]), (b.low[i], b.high[i])) > 1e-6;
        other.of != body.of && along(0) && along(1) && other.z.1 <= body.z.0 + 1e-6
    };
    let name = |of: BodyOf| match of {
        BodyOf::Appliance(i) => plan.design.appliances.get(i).map(|a| &a.name),
        BodyOf::Opening(i) => plan.design.openings.get(i).map(|o| &o.name),
    };
    let bodies = plan.bodies.iter().filter(under);
    let bodies = bodies.filter_map(|b| Some((b.z.1, format!("the body of '{}'", name(b.of)?))));
    let floors = plan
        .design
        .compartments
        .iter()
        .filter(|c| c.run == body.run && shared((c.from.mm(), c.to.mm()), body.u) > 1e-6)
        .map(|c| (c.floor.mm(), format!("the floor of '{}'", c.name)));
    let ground = (0.0, "the ground".to_owned());
    bodies.chain(floors).fold(
        ground,
        |best, next| if next.0 > best.0 { next } else { best },
    )
}

fn room(subject: &Subject, answers: &mut Answers, body: &Body, a: &Appliance) {
    let (top, what) = first_below(subject.plan, body);
    let left = body.z.0 - top;
    let hangs = (subject.plan.levels.frame_top - body.z.0).max(0.0);
    let found = format!(
        "the body of '{}' hangs {} below the substrate; {} is left above {what}",
        a.name,
        subject.mm(hangs),
        subject.mm(left.max(0.0))
    );
    let place = a.body_height.place.or(&a.place);
    let hint = "raise the counter, lower what is below, or move one of them";
    if let Some(asked) = &a.rating.clearance.below {
        let holds = left >= asked.mm() - 1e-6;
        let limit = format!("at least {}", subject.mm(asked.mm()));
        let answer = answers.judge(holds, place, found).about(&a.name);
        let answer = answer.limit(
            limit,
            "the appliance's own instructions, as the file gives them",
        );
        if !holds {
            answer.hint(hint);
        }
        return;
    }
    let least = subject.bound(&BELOW);
    if left < -1e-6 {
        answers
            .fail(place, found)
            .about(&a.name)
            .at_least(&least)
            .hint(hint);
    } else if least.is_reached_by(left) {
        answers.pass(place, found).about(&a.name).at_least(&least);
    } else {
        answers
            .caution(place, found)
            .about(&a.name)
            .at_least(&least)
            .hint(hint);
    }
}

/// Doors whose upper part a body fills.
fn doors(subject: &Subject, answers: &mut Answers, body: &Body, a: &Appliance) {
    let plan = subject.plan;
    let run = &plan.runs[body.run];
    let ground = run.rectangle(body.u, body.v);
    let faces = plan.faces.iter().filter(|f| f.run == body.run);
    for (face, hole) in faces.flat_map(|f| f.openings.iter().map(move |h| (f, h))) {
        let door = matches!(hole.kind, Some(OpeningKind::Door | OpeningKind::Hatch));
        let seen = seen_from(face, &ground);
        let deep = hole.z1 - body.z.0;
        // From an end of the run the door opens to the whole length; what hangs an arm away is no matter.
        let near = -seen.out.1 < run.depth / 2.0;
        if !door || !near || deep <= 1e-6 || shared(seen.s, (hole.s0, hole.s1)) <= 1e-6 {
            continue;
        }
        let found = format!(
            "the body of '{}' hangs {} lower than the top of '{}', behind it",
            a.name,
            subject.mm(deep),
            hole.name
        );
        let hint = format!("lower the top of '{}' by {}", hole.name, subject.mm(deep));
        let place = plan
            .design
            .openings
            .get(hole.index)
            .map_or(&a.place, |o| &o.place);
        answers.caution(place, found).about(&hole.name).hint(hint);
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-under-body";

    // Whatever the file does not say has a usual value or none is needed, so this rule leaves nothing unchecked.

    #[test]
    fn the_room_is_what_paper_says() {
        // Counter's top at 36, slab 2, substrate 1/2: the frame ends at 33-1/2. The ice well, 12 high, ends at 24: 9-1/2
        // below the substrate, 24 above the ground.
        let sound = Trial::sound();
        assert_eq!(sound.worst(CODE), Verdict::Pass);
        let found = sound.about(CODE, "ice well").found;
        assert!(
            found.contains("hangs 9 1/2\" below the substrate; 2'-0\" is left above the ground"),
            "{found}"
        );
    }

    #[test]
    fn less_than_the_instructions_ask_for_fails() {
        // The grill's body ends at 26-1/2.
        let much = Trial::sound().with("appliances[grill].clearance.below", "26-3/4 in");
        assert_eq!(much.about(CODE, "grill").verdict, Verdict::Fail);
        let floor = "[{name: room, run: cook, from: 4 in, to: 50 in, floor: 22 in}]";
        assert_eq!(
            Trial::sound()
                .with("compartments", floor)
                .about(CODE, "grill")
                .verdict,
            Verdict::Fail
        );
    }

    #[test]
    fn a_drawer_close_below_is_a_caution() {
        // Drawers under the ice well from 6 to 23-1/2: 1/2 in is left.
        let close = Trial::sound()
            .with("openings[drawers].at", "{in_line_with: ice well}")
            .with("openings[drawers].height", "17-1/2 in");
        let found = close.about(CODE, "ice well");
        assert_eq!(found.verdict, Verdict::Caution);
        assert!(
            found
                .found
                .ends_with(" 1/2\" is left above the body of 'drawers'"),
            "{}",
            found.found
        );
        assert_eq!(
            close
                .with("openings[drawers].height", "16-3/4 in")
                .worst(CODE),
            Verdict::Pass
        );
    }

    #[test]
    fn a_body_behind_a_door_is_a_caution() {
        // The sink ends at 29; a door from 6 to 30 opens to its lowest inch.
        let high = Trial::sound().with("openings[sink doors].height", "24 in");
        assert_eq!(high.about(CODE, "sink doors").verdict, Verdict::Caution);
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
    }
}
