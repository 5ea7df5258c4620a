//! Whether inward corners of the slab are kept from cracking.

use super::overhang::counter;
use crate::catalog::practice;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const RADIUS: Limit = Limit {
    name: "inward-corner-radius",
    what: "radius of an inward corner that needs no bars",
    usual: practice::ROUND_INWARD_CORNER,
    unit: Unit::Length,
    source: "common practice, 1/2 in",
};

pub(super) static INWARD_CORNER: Rule = Rule {
    code: "slab-inward-corner",
    family: Family::Slab,
    title: "Inward corners are rounded, or have bars across them",
    about: About {
        checks: "Each cutout's corners, and each inward corner of the counter itself. With diagonal bars (`counter.reinforcement.corner_bars`) it \
                 passes. Without, a radius of `inward-corner-radius` or more is a caution, and a sharper corner fails. Where the file \
                 does not speak of bars, a sharp corner is not checked.",
        why: "Concrete shrinks, and every sharp inward corner is where it tears: the crack runs from it at 45 degrees.",
        reckoned: "The radius that the file gives against the limit, which is common practice; the notch of an open front has sharp corners \
                   where it meets the front edge only, and its far corners count.",
        example: "A grill's cutout with sharp corners and no bars fails; with two bars of 3/8 in across each corner it passes.",
    },
    limits: &[&RADIUS],
    levers: &[
        "counter.reinforcement.corner_bars",
        "appliances[].cutout.corner_radius",
    ],
    outside: &[Outside {
        what: "diagonal bars or a radius at inward corners, as builders have it",
        origin: Origin::Practice,
        test: "bars_or_a_radius",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let design = subject.design();
    let bars = design.counter.casting.reinforcement.corner_bars.as_ref();
    let least = subject.bound(&RADIUS);
    let mut corners: Vec<(String, f64, crate::diagnostics::Place)> = design
        .appliances
        .iter()
        .map(|a| {
            (
                format!("the corners of the cutout of '{}'", a.name),
                a.corner_radius.mm(),
                a.place.clone(),
            )
        })
        .collect();
    for turn in design
        .runs
        .iter()
        .filter_map(|r| r.turn.as_ref().map(|t| (r, t)))
    {
        let name = format!("the inward corner where run '{}' begins", turn.0.name.value);
        corners.push((name, 0.0, turn.1.place.clone()));
    }
    if corners.is_empty() {
        answers.nothing("the slab has no inward corner");
    }
    for (name, radius, place) in corners {
        match bars.map(|b| b.value) {
            Some(true) => answers
                .pass(&place, format!("bars lie across {name}"))
                .about(name),
            _ if least.is_reached_by(radius) => {
                let bars = if bars.is_some() {
                    "no bars lie"
                } else {
                    "the file names no bars"
                };
                let found = format!(
                    "{bars} across {name}, of a radius of {}",
                    subject.mm(radius)
                );
                answers
                    .caution(&place, found)
                    .about(name)
                    .at_least(&least)
                    .hint("two bars across each corner are better")
            }
            Some(false) => {
                let found = format!(
                    "no bars lie across {name}, of a radius of {}",
                    subject.mm(radius)
                );
                answers
                    .fail(&place, found)
                    .about(name)
                    .at_least(&least)
                    .hint("lay two bars across each, 45 degrees, or round them")
            }
            None => {
                let key = "reinforcement.corner_bars";
                answers
                    .missing(&counter(), key, format!("whether bars lie across {name}"))
                    .about(name)
            }
        };
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-inward-corner";
    const GRILL: &str = "the corners of the cutout of 'grill'";

    #[test]
    fn bars_or_a_radius() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let bare = || Trial::sound().with("counter.reinforcement.corner_bars", "false");
        assert_eq!(bare().about(CODE, GRILL).verdict, Verdict::Fail);
        let round = bare().with("appliances[grill].cutout.corner_radius", "3/4 in");
        assert_eq!(round.about(CODE, GRILL).verdict, Verdict::Caution);
        let unknown = Trial::sound().without("counter.reinforcement.corner_bars");
        assert_eq!(unknown.about(CODE, GRILL).verdict, Verdict::NotChecked);
    }
}
