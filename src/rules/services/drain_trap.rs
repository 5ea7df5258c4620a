//! Whether drains have what belongs to them, and room for it.

use crate::design::Appliance;
use crate::plan::BodyOf;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const ROOM: Limit = Limit {
    name: "drain-room",
    what: "room under a body for a drain with its trap or its air gap",
    usual: 203.2,
    unit: Unit::Length,
    source: "common practice, 8 in: tailpiece, trap of 4 in, and the fall",
};

pub(super) static DRAIN_TRAP: Rule = Rule {
    code: "water-drain-trap",
    family: Family::Services,
    title: "A sink has a trap, an ice well an air gap, and there is room for them",
    about: About {
        checks: "A sink's drain has a trap. An ice well's drain has none but ends in an air gap above what takes its water; with a trap it is a caution, for nothing keeps it full. Under each body there is `drain-room`, and the drain's own fall. \
                 It fails where a sink has no trap or the room is missing.",
        why: "A sink without a trap breathes sewer air at the cook. Ice that shares a drain takes up what comes back through it.",
        reckoned: "From the body's underside down to the underside of the frame, less the drain's fall, against `drain-room` (common practice). Traps: IPC 2018, 1002.1; \
                   air gaps for food: IPC 802.1 (both from memory).",
        example: "A sink 7 in deep in a counter of 36 in leaves 27 in above the frame's underside: there is room.",
    },
    limits: &[&ROOM],
    levers: &["appliances[].drain.fall"],
    outside: &[Outside {
        what: "a trap at every fixture (IPC 1002.1), an indirect drain for ice (IPC 802.1)",
        origin: Origin::Memory,
        test: "a_trap_for_the_sink_and_none_for_the_ice",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let all = subject.design().appliances.iter().enumerate();
    let mut wet = all.filter(|(_, a)| a.is_sink() || a.holds_ice()).peekable();
    if wet.peek().is_none() {
        answers.nothing("there is no sink and no ice well");
    }
    for (i, a) in wet {
        trap(answers, a);
        room(subject, answers, i, a);
    }
}

fn trap(answers: &mut Answers, a: &Appliance) {
    let Some(trapped) = a.rating.drain.as_ref().and_then(|d| d.trapped.as_ref()) else {
        answers
            .missing(
                &a.place,
                "drain.trapped",
                format!("whether the drain of '{}' has a trap", a.name),
            )
            .about(&a.name);
        return;
    };
    let place = &trapped.place;
    let name = &a.name;
    let answer = match (a.is_sink(), trapped.value) {
        (true, true) => answers.pass(place, format!("the drain of '{name}' has a trap")),
        (true, false) => answers
            .fail(place, format!("the drain of '{name}' has no trap"))
            .hint("put a trap under it; where it freezes, one that can be emptied"),
        (false, false) => answers.pass(
            place,
            format!("the drain of '{name}' ends free, without a trap"),
        ),
        (false, true) => answers
            .caution(
                place,
                format!("the drain of '{name}' has a trap, which melting ice does not keep full"),
            )
            .hint("end it in an air gap above what takes the water"),
    };
    answer.about(name).limit(
        "a trap at a sink, an air gap at an ice well",
        "IPC 2018, 1002.1 and 802.1, values from memory",
    );
}

fn room(subject: &Subject, answers: &mut Answers, appliance: usize, a: &Appliance) {
    let body = subject
        .plan
        .bodies
        .iter()
        .find(|b| b.of == BodyOf::Appliance(appliance));
    let (Some(body), Some(drain)) = (body, &a.rating.drain) else {
        return;
    };
    let least = subject.bound(&ROOM);
    // A drain that runs on below the frame's underside has its fall in the ground.
    let fall = drain.fall.mm().min(subject.plan.levels.frame_bottom);
    let free = body.z.0 - subject.plan.levels.frame_bottom - fall;
    let found = format!(
        "under '{}' there is {} for its drain",
        a.name,
        subject.mm(free.max(0.0))
    );
    let about = format!("room under {}", a.name);
    answers
        .judge(least.is_reached_by(free), &a.body_height.place, found)
        .about(about)
        .at_least(&least)
        .hint("a shallower one, or lead the drain down beside it");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "water-drain-trap";

    #[test]
    fn a_trap_for_the_sink_and_none_for_the_ice() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let sink = Trial::sound().with("appliances[sink].drain.trapped", "false");
        assert_eq!(sink.about(CODE, "sink").verdict, Verdict::Fail);
        let ice = Trial::sound().with("appliances[ice well].drain.trapped", "true");
        assert_eq!(ice.about(CODE, "ice well").verdict, Verdict::Caution);
        let unknown = Trial::sound().without("appliances[sink].drain.trapped");
        assert_eq!(unknown.about(CODE, "sink").verdict, Verdict::NotChecked);
        // Counter 36 in, frame from 2 in: a body of 25 in leaves 36 - 25 - 2 - 1 = 8 in; one of 26 leaves 7.
        let deep = |height: &str| {
            let deep = Trial::sound().with("appliances[ice well].body.height", height);
            deep.about(CODE, "room under ice well").verdict
        };
        assert_eq!(deep("25 in"), Verdict::Pass);
        assert_eq!(deep("26 in"), Verdict::Fail);
    }
}
