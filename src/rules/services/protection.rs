//! Whether every receptacle has ground-fault protection.

use super::receptacle::or_say_none;
use crate::design::Protection;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// How many receptacles may be without ground-fault protection.
const BARE: Limit = Limit {
    name: "receptacles-unprotected",
    what: "how many outdoor receptacles may be without ground-fault protection",
    usual: 0.0,
    unit: Unit::Count,
    source: "NEC 2017, 210.8(A)(3), outdoors",
};

pub(super) static PROTECTION: Rule = Rule {
    code: "power-protection",
    family: Family::Services,
    title: "Every receptacle has ground-fault protection",
    about: About {
        checks: "Each receptacle passes with ground-fault protection and is not checked where the file does not say. Those without \
                 it fail beyond the number in `receptacles-unprotected`, and are cautioned up to it: a file that allows some must \
                 know why.",
        why: "Outdoors a person stands on wet ground: a current too small for any breaker kills, and this device is what stops it.",
        reckoned: "`protection` of each receptacle as the file gives it. NEC 210.8(A)(3) asks for it at all outdoor receptacles of a \
                   dwelling; a residual-current device of 30 mA or less does the same elsewhere.",
        example: "`protection: ground-fault` passes; `protection: none` fails.",
    },
    limits: &[&BARE],
    levers: &[],
    outside: &[Outside {
        what: "all outdoor receptacles, NEC 210.8(A)(3)",
        origin: Origin::Published,
        test: "outdoors_every_receptacle_is_protected",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let allowed = subject.bound(&BARE);
    let mut bare = 0.0;
    for r in or_say_none(subject, answers) {
        let (name, place) = (&r.opening.name, &r.opening.place);
        match &r.opening.hardware.protection {
            None => answers.missing(
                place,
                "protection",
                format!("whether '{name}' has ground-fault protection is not known"),
            ),
            Some(p) if p.value == Protection::GroundFault => {
                answers.pass(&p.place, format!("'{name}' has ground-fault protection"))
            }
            Some(p) => {
                bare += 1.0;
                let found = format!("'{name}' has no ground-fault protection");
                let answer = if allowed.allows(bare) {
                    answers.caution(&p.place, found)
                } else {
                    answers.fail(&p.place, found)
                };
                answer.hint("protect it with a ground-fault circuit interrupter; an electrician decides how")
            }
        }
        .about(name)
        .limit("ground-fault protection outdoors", allowed.source.clone());
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "power-protection";

    #[test]
    fn outdoors_every_receptacle_is_protected() {
        // NEC 210.8(A)(3): all outdoor receptacles.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let bare = Trial::sound().with("openings[receptacle].protection", "none");
        assert_eq!(bare.worst(CODE), Verdict::Fail);
        let own = "[{name: receptacles-unprotected, value: 1, source: a listed exception}]";
        assert_eq!(bare.with("limits", own).worst(CODE), Verdict::Caution);
        let unsaid = Trial::sound().without("openings[receptacle].protection");
        let found = unsaid.about(CODE, "receptacle");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert_eq!(found.hint, "write 'openings[7].protection' in the file");
        assert_eq!(
            Trial::sound().without("openings").worst(CODE),
            Verdict::Pass
        );
    }
}
