//! Whether roofs, beams and branches that can burn are high enough above each hot appliance.

use super::clearance::{Gaps, Toward};
use super::hot::{FROM_WHAT_BURNS, OVERHEAD, about_objects, hot_and_objects};
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static HEAT_OVERHEAD: Rule = Rule {
    code: "heat-overhead",
    family: Family::Gas,
    title: "A roof or beam that can burn is high enough above each hot appliance",
    about: About {
        checks: "Every object of the site that can burn and begins above the counter is high enough above each appliance with heat by \
                 the appliance's own figure `clearance.above`, or stands aside by its figures for sides and back. Where the file does \
                 not give the figure, `heat-overhead` is asked for instead, and the answer is a caution at best.",
        why: "A lid that is opened and fat that flares send flames and hot gas straight up: the first thing above them burns. A roof \
              over a grill may also need a hood. The local code, the appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "In three dimensions as in heat-clearance: above = the lowest edge of the object less the top of the counter. It is clear when it \
                   is high enough, or far enough beside, behind or in front. Own figures: the appliance's instructions; \
                   `heat-overhead` is common practice.",
        example: "A roof 66 in above the counter passes over a grill that asks for 48 in; a beam at 40 in fails.",
    },
    limits: &[&OVERHEAD, &FROM_WHAT_BURNS],
    levers: &["appliances[].at", "levels.counter"],
    outside: &[Outside {
        what: "60 in between the counter and what can burn above it, where nothing else is known",
        origin: Origin::Practice,
        test: "sixty_inches_where_nothing_is_known",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let unknown = "what is above the island is not known";
    let Some((all, objects)) = hot_and_objects(subject, answers, unknown) else {
        return;
    };
    let above = |gaps: &Gaps| gaps.toward(Toward::Above) > 0.0;
    let mut said = false;
    for h in &all {
        said |= about_objects(subject, answers, h, objects, above);
    }
    if !said {
        answers.nothing("nothing that can burn is above the counter");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "heat-overhead";

    /// An island without appliances.
    fn bench() -> Trial {
        let keys = ["appliances", "openings", "gas", "electricity"];
        keys.into_iter().fold(Trial::sound(), Trial::without)
    }

    /// A beam along the run whose underside is so high above the ground; the counter is at 36 in.
    fn beam(z: &str, y: &str, burns: &str) -> Trial {
        let text = format!(
            "[{{name: beam, kind: beam{burns}, at: {{x: -10 in, y: {y}, z: {z}}}, size: {{x: 150 in, y: 6 in, z: 8 in}}}}]"
        );
        Trial::sound().with("site.objects", &text)
    }

    #[test]
    fn the_appliance_s_own_height_comes_first() {
        // Worked on paper: 48 in asked above the counter at 36 in, so an underside at 84 in.
        let burns = ", combustible: true";
        assert_eq!(beam("84 in", "8 in", burns).worst(CODE), Verdict::Pass);
        let low = beam("83 in", "8 in", burns).about(CODE, "grill and beam");
        assert_eq!(low.verdict, Verdict::Fail);
        assert!(low.found.contains("3'-11\" above"), "{}", low.found);
        // As low, but 12 in and more behind the body, whose far edge is at 21 in.
        assert_eq!(beam("60 in", "34 in", burns).worst(CODE), Verdict::Pass);
    }

    #[test]
    fn sixty_inches_where_nothing_is_known() {
        // Common practice: 60 in above the counter at 36 in, so an underside at 96 in.
        let at = |z| beam(z, "8 in", ", combustible: true").without("appliances[grill].clearance");
        assert_eq!(at("96 in").worst(CODE), Verdict::Caution);
        assert_eq!(at("95 in").worst(CODE), Verdict::Fail);
    }

    #[test]
    fn what_is_not_known_is_asked_for() {
        assert_eq!(beam("60 in", "8 in", "").worst(CODE), Verdict::NotChecked);
        assert_eq!(
            beam("60 in", "8 in", ", combustible: false").worst(CODE),
            Verdict::Pass
        );
        assert_eq!(
            Trial::sound().without("site").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(bench().worst(CODE), Verdict::Pass);
    }

    #[test]
    fn what_stands_beside_is_the_other_rule_s() {
        // A post from the ground, near enough to fail heat-clearance.
        let post = "[{name: post, kind: post, combustible: true, at: {x: 0 in, y: 10 in, z: 0 in}, size: {x: 4 in, y: 4 in, z: 96 in}}]";
        let found = Trial::sound().with("site.objects", post).answers(CODE);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].found, "nothing that can burn is above the counter");
    }
}
