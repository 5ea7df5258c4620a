//! Whether the valve of every gas appliance can be got at.

use crate::design::{Appliance, Opening, OpeningKind};
use crate::plan::{Body, BodyOf, Face, FaceOpening, PanelOf, Plan};
use crate::rules::around::shared;
use crate::rules::{About, Answers, Bound, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// The least width and height of a hole that an arm goes through.
const ARM: Limit = Limit {
    name: "arm-opening",
    what: "the width and the height of an opening that an arm and a wrench go through",
    usual: 203.2,
    unit: Unit::Length,
    source: "common practice",
};

/// How far an arm reaches.
const REACH: Limit = Limit {
    name: "arm-reach",
    what: "from an opening to the body whose valve is reached through it",
    usual: 609.6,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static VALVE_ACCESS: Rule = Rule {
    code: "fit-valve-access",
    family: Family::Fit,
    title: "The valve of every gas appliance can be got at",
    about: About {
        checks: "Every gas appliance has a door or a hatch of the same run that opens by hand, is at least `arm-opening` wide and \
                 high, has no bulkhead between it and the body, and is within `arm-reach` of the body. It fails where there is \
                 none, and cautions where the nearest is reached by the last tenth of the reach.",
        why: "When a hose leaks or a burner will not go out, somebody must shut the valve behind the appliance at once, with one \
              hand, without a screwdriver. Gas can kill: the local code, the appliance's own instructions and a licensed gas \
              fitter decide where the valves go.",
        reckoned: "The straight distance from the hole in the face to the nearest point of the body's box. Both limits are \
                   common practice.",
        example: "Doors 24 × 18 in under a grill, 3-1/2 in below its body: within reach.",
    },
    limits: &[&ARM, &REACH],
    levers: &["openings[].width", "openings[].height", "openings[].at"],
    outside: &[Outside {
        what: "an opening of 8 × 8 in within 24 in of the body, as fitters have it",
        origin: Origin::Practice,
        test: "doors_under_the_grill_give_access",
    }],
    check,
};

/// A hole through which a body may be reached.
struct Access<'a> {
    opening: &'a Opening,
    distance: f64,
}

fn check(subject: &Subject, answers: &mut Answers) {
    let mut asked = false;
    for (i, a) in subject.design().appliances.iter().enumerate() {
        match &a.rating.fuel {
            Some(fuel) if fuel.is_gas() => {
                asked = true;
                one(subject, answers, i, a);
            }
            None if a.cooks() => {
                asked = true;
                let found = format!("what '{}' burns is not known", a.name);
                answers.missing(&a.place, "fuel", found).about(&a.name);
            }
            _ => {}
        }
    }
    if !asked {
        answers.nothing("no appliance burns gas");
    }
}

fn one(subject: &Subject, answers: &mut Answers, number: usize, a: &Appliance) {
    let (arm, reach) = (subject.bound(&ARM), subject.bound(&REACH));
    let of = BodyOf::Appliance(number);
    let Some(body) = subject.plan.bodies.iter().find(|b| b.of == of) else {
        answers.pass(
            &a.place,
            format!("'{}' has no body below the counter", a.name),
        );
        return;
    };
    let mut found = accesses(subject.plan, body);
    found.sort_by(|x, y| x.distance.total_cmp(&y.distance));
    let serves = |o: &Opening| {
        o.hardware.by_hand.value
            && arm.is_reached_by(o.width.mm())
            && arm.is_reached_by(o.height.mm())
    };
    if let Some(best) = found.iter().find(|x| serves(x.opening)) {
        within(subject, answers, a, best, &reach);
        return;
    }
    let said = format!(
        "the valve of '{}' cannot be got at: no door or hatch of its run serves",
        a.name
    );
    let hint = match found.first() {
        Some(near) if !near.opening.hardware.by_hand.value => {
            format!("let '{}' open by hand", near.opening.name)
        }
        Some(near) => format!(
            "make '{}' {} wide and high or more",
            near.opening.name,
            arm.spell()
        ),
        None => "put a door or a hatch under or beside it".to_owned(),
    };
    answers
        .fail(&a.place, said)
        .about(&a.name)
        .at_least(&arm)
        .hint(hint);
}

fn within(subject: &Subject, answers: &mut Answers, a: &Appliance, best: &Access, reach: &Bound) {
    let found = format!(
        "the body of '{}' is {} from '{}', through which its valve is reached",
        a.name,
        subject.mm(best.distance),
        best.opening.name
    );
    let place = &a.place;
    if !reach.allows(best.distance) {
        let answer = answers.fail(place, found).about(&a.name).at_most(reach);
        answer.hint("put a door or a hatch nearer to it");
    } else if best.distance > 0.9 * reach.value {
        answers.caution(place, found).about(&a.name).at_most(reach);
    } else {
        answers.pass(place, found).about(&a.name).at_most(reach);
    }
}

/// Doors and hatches of the body's run with no bulkhead in between.
fn accesses<'a>(plan: &'a Plan, body: &Body) -> Vec<Access<'a>> {
    let mut found = Vec::new();
    for face in plan.faces.iter().filter(|f| f.run == body.run) {
        for hole in &face.openings {
            let door = matches!(hole.kind, Some(OpeningKind::Door | OpeningKind::Hatch));
            let Some(opening) = plan.design.openings.get(hole.index).filter(|_| door) else {
                continue;
            };
            let (u, v) = stretch(plan, face, hole);
            if !is_shut_off(plan, body, u) {
                let gap = |a, b| (-shared(a, b)).max(0.0);
                let across = gap(u, body.u).hypot(gap(v, body.v));
                let distance = across.hypot(gap((hole.z0, hole.z1), body.z));
                found.push(Access { opening, distance });
            }
        }
    }
    found
}

/// The hole in its run's coordinates.
fn stretch(plan: &Plan, face: &Face, hole: &FaceOpening) -> ((f64, f64), (f64, f64)) {
    let run = &plan.runs[face.run];
    let [a, b] = [hole.s0, hole.s1].map(|s| run.local(face.point(s, 0.0)));
    let (low, high) = (a.inf(&b), a.sup(&b));
    ((low.x, high.x), (low.y, high.y))
}

/// True when a bulkhead stands between a hole and a body.
fn is_shut_off(plan: &Plan, body: &Body, u: (f64, f64)) -> bool {
    let between = (u.1.min(body.u.1), u.0.max(body.u.0));
    plan.panels
        .iter()
        .filter(|p| p.run == body.run && matches!(p.of, PanelOf::Bulkhead(_)))
        .map(|p| plan.runs[p.run].local(p.start).x)
        .any(|at| between.0 - 1e-6 <= at && at < between.1)
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-valve-access";

    #[test]
    fn doors_under_the_grill_give_access() {
        // Common practice. The doors end at 23 in, the grill's body at 26-1/2 in, and it begins 1/2 in behind the frame's
        // face: 3-1/2 in and a little.
        let found = Trial::sound().about(CODE, "grill");
        assert_eq!(found.verdict, Verdict::Pass);
        assert!(found.found.contains("'grill doors'"), "{}", found.found);
        assert_eq!(found.limit, "at most 2'-0\"");
    }

    /// A grill from 13-1/4 to 42-3/4 in and one hatch.
    fn hatch(at: &str, size: &str, opens: &str) -> Trial {
        let grill = "[{name: grill, run: cook, at: {from: left, distance: 28 in}, cutout: {width: 30 in, depth: 21 in}, body: {height: 9-1/2 in}, front: {open: {panel_height: 9-1/2 in}}, fuel: propane}]";
        let hatch = format!(
            "[{{name: hatch, kind: hatch, run: cook, at: {{from: left, distance: {at}}}, width: {size}, height: {size}, sill: 8 in, opens: {opens}}}]"
        );
        Trial::bare()
            .with("appliances", grill)
            .with("openings", &hatch)
    }

    #[test]
    fn a_door_that_needs_tools_or_is_too_small_or_too_far_does_not_serve() {
        assert_eq!(
            hatch("28 in", "12 in", "by-hand").worst(CODE),
            Verdict::Pass
        );
        assert_eq!(
            hatch("28 in", "12 in", "with-tools").worst(CODE),
            Verdict::Fail
        );
        assert_eq!(hatch("28 in", "7 in", "by-hand").worst(CODE), Verdict::Fail);
        // The body ends at 42-3/4 in; 70 − 6 − 42-3/4 is 21-1/4 along and 6-1/2 up: 22.2 of 24, the last tenth.
        assert_eq!(
            hatch("70 in", "12 in", "by-hand").worst(CODE),
            Verdict::Caution
        );
        assert_eq!(
            hatch("76 in", "12 in", "by-hand").worst(CODE),
            Verdict::Fail
        );
        assert_eq!(
            hatch("70 in", "12 in", "by-hand")
                .without("openings")
                .worst(CODE),
            Verdict::Fail
        );
    }

    #[test]
    fn a_bulkhead_shuts_a_hatch_off() {
        let open = hatch("60 in", "12 in", "by-hand");
        assert_eq!(open.worst(CODE), Verdict::Pass);
        let shut = open.with("runs[cook].bulkheads", "[49 in]");
        assert_eq!(shut.worst(CODE), Verdict::Fail);
    }

    #[test]
    fn an_unknown_fuel_is_not_checked() {
        let found = Trial::sound()
            .without("appliances[grill].fuel")
            .about(CODE, "grill");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(found.place.key.contains("fuel"), "{}", found.place.key);
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
    }
}
