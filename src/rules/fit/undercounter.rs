//! Whether an appliance below the counter goes into its rough opening, with air behind it.

use crate::design::{Opening, OpeningKind, Placed, Side};
use crate::plan::{Body, BodyOf, Plan};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{Length, Unit};

/// Room beside and above what is slid in.
const ROOM: Limit = Limit {
    name: "undercounter-room",
    what: "by how much a rough opening is wider and higher than the appliance that is slid into it",
    usual: 6.35,
    unit: Unit::Length,
    source: "common practice",
};

/// Air behind it.
const AIR: Limit = Limit {
    name: "undercounter-air",
    what: "the air behind an appliance below the counter",
    usual: 25.4,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static UNDERCOUNTER: Rule = Rule {
    code: "fit-undercounter",
    family: Family::Fit,
    title: "An appliance below the counter goes into its rough opening",
    about: About {
        checks: "The rough opening of an appliance below the counter is wider and higher than the appliance by \
                 `undercounter-room`: less is a caution, none fails. Behind it `undercounter-air` is left to the frame: less is a \
                 caution. Without the appliance's own width and height (`body_width`, `body_height`) it is not checked.",
        why: "A refrigerator that does not go in by an eighth of an inch means cutting a jamb; one without air behind it runs hot \
              and fails early. Its own instructions say what air it needs.",
        reckoned: "Rough opening − body, across and up; frame depth − frame panel − body depth behind.",
        example: "A body of 19-1/2 × 21-1/2 in in an opening of 20 × 22 in has 1/2 in each way.",
    },
    limits: &[&ROOM, &AIR],
    levers: &[
        "openings[].width",
        "openings[].height",
        "openings[].body_depth",
    ],
    outside: &[Outside {
        what: "a rough opening a quarter of an inch or more larger than the unit, as cabinet makers have it",
        origin: Origin::Practice,
        test: "a_unit_half_an_inch_smaller_than_its_opening_goes_in",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let mut found = false;
    for (i, o) in subject.design().openings.iter().enumerate() {
        if o.kind == OpeningKind::Undercounter {
            found = true;
            let hardware = &o.hardware;
            let width = (&o.width, hardware.body_width.as_ref(), "body_width", "wide");
            let height = (
                &o.height,
                hardware.body_height.as_ref(),
                "body_height",
                "high",
            );
            slides_in(subject, answers, o, width);
            slides_in(subject, answers, o, height);
            behind(subject, answers, i, o);
        }
    }
    if !found {
        answers.nothing("there is no appliance below the counter");
    }
}

/// A rough size, the size of what fills it, its key, and the word for it.
type Sizes<'a> = (
    &'a Placed<Length>,
    Option<&'a Placed<Length>>,
    &'a str,
    &'a str,
);

fn slides_in(
    subject: &Subject,
    answers: &mut Answers,
    o: &Opening,
    (rough, body, key, word): Sizes,
) {
    let Some(body) = body else {
        let found = format!("how {word} the appliance in '{}' is, is not known", o.name);
        answers.missing(&o.place, key, found).about(&o.name);
        return;
    };
    let (room, least) = (rough.mm() - body.mm(), subject.bound(&ROOM));
    let place = rough.place.or(&o.place);
    let found = format!(
        "the opening of '{}' is {} {word} and the appliance {}",
        o.name,
        subject.mm(rough.mm()),
        subject.mm(body.mm())
    );
    let answer = if room < 1e-6 {
        answers.fail(place, found)
    } else if least.is_reached_by(room) {
        answers.pass(place, found).about(&o.name).at_least(&least);
        return;
    } else {
        answers.caution(place, found)
    };
    let hint = format!(
        "make the opening {} {word} or more",
        subject.mm(body.mm() + least.value)
    );
    answer.about(&o.name).at_least(&least).hint(hint);
}

fn behind(subject: &Subject, answers: &mut Answers, number: usize, o: &Opening) {
    let of = BodyOf::Opening(number);
    let Some(body) = subject.plan.bodies.iter().find(|b| b.of == of) else {
        let found = format!("how deep the appliance in '{}' is, is not known", o.name);
        answers
            .missing(&o.place, "body_depth", found)
            .about(&o.name);
        return;
    };
    let (air, least) = (air_behind(subject.plan, body, o.side), subject.bound(&AIR));
    let found = format!(
        "behind the appliance in '{}' {} of air is left",
        o.name,
        subject.mm(air)
    );
    let place = o.body_depth.place.or(&o.place);
    // The plan refuses a body that meets the frame behind it, so this never fails.
    if least.is_reached_by(air) {
        answers.pass(place, found).about(&o.name).at_least(&least);
    } else {
        let answer = answers.caution(place, found).about(&o.name);
        answer
            .at_least(&least)
            .hint("make the run deeper, or choose a shallower one");
    }
}

/// From the back of a body to the inside of the frame panel behind it.
fn air_behind(plan: &Plan, body: &Body, side: Side) -> f64 {
    let (run, panel) = (&plan.runs[body.run], plan.sizes.panel);
    match side {
        Side::Working => run.depth - panel - body.v.1,
        Side::Seating => body.v.0 - panel,
        Side::Left => run.framed.1 - panel - body.u.1,
        Side::Right => body.u.0 - run.framed.0 - panel,
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-undercounter";

    fn unit(keys: &str) -> Trial {
        let unit = format!(
            "[{{name: refrigerator, kind: undercounter, run: cook, at: {{from: left, distance: 60 in}}, width: 20 in, height: 22 in, sill: 6 in, {keys}}}]"
        );
        Trial::bare().with("openings", &unit)
    }

    #[test]
    fn a_unit_half_an_inch_smaller_than_its_opening_goes_in() {
        // Common practice: a rough opening 1/4 in or more larger than the unit.
        assert_eq!(
            unit("body_width: 19-1/2 in, body_height: 21-3/4 in").worst(CODE),
            Verdict::Pass
        );
        assert_eq!(
            unit("body_width: 19-7/8 in, body_height: 21-1/2 in").worst(CODE),
            Verdict::Caution
        );
        assert_eq!(
            unit("body_width: 20 in, body_height: 21-1/2 in").worst(CODE),
            Verdict::Fail
        );
        assert_eq!(
            unit("body_width: 19-1/2 in, body_height: 22-1/4 in").worst(CODE),
            Verdict::Fail
        );
    }

    #[test]
    fn air_behind_is_counted_to_the_frame() {
        // The frame is 30 in deep and its panels 3.7 in: 24 in deep leaves 2.3, 25-1/2 leaves 0.8.
        let sizes = "body_width: 19-1/2 in, body_height: 21-1/2 in, body_depth:";
        assert_eq!(unit(&format!("{sizes} 24 in")).worst(CODE), Verdict::Pass);
        assert_eq!(
            unit(&format!("{sizes} 25-1/2 in")).worst(CODE),
            Verdict::Caution
        );
    }

    #[test]
    fn an_unknown_size_is_not_checked_and_no_appliance_passes() {
        let found = unit("body_width: 19-1/2 in").answers(CODE);
        let missing = found
            .iter()
            .find(|f| f.verdict == Verdict::NotChecked)
            .unwrap();
        assert!(
            missing.place.key.ends_with(".body_height"),
            "{}",
            missing.place.key
        );
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
    }
}
