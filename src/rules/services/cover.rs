//! Whether the weather is kept off every receptacle.

use super::receptacle::{Receptacle, or_say_none};
use crate::design::{Cover, ObjectKind};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// How far beyond a receptacle a roof must reach on every side for rain to keep off.
const ROOF: Limit = Limit {
    name: "receptacle-roof",
    what: "how far a roof must reach past a receptacle on every side for its place to be damp and not wet",
    usual: 609.6,
    unit: Unit::Length,
    source: "common practice",
};

const SOURCE: &str = "NEC 2017, 406.9(B)(1) (value from memory)";

pub(super) static COVER: Rule = Rule {
    code: "power-cover",
    family: Family::Services,
    title: "Every receptacle is weather-resistant and has an in-use cover",
    about: About {
        checks: "Each receptacle is of the weather-resistant type and has a cover that keeps water out while something is plugged in. \
                 A flap that closes only over an empty receptacle is cautioned where a roof of the site reaches \
                 `receptacle-roof` past it on every side, and fails elsewhere; no cover fails. What the file does not say is not \
                 checked.",
        why: "Rain, a hose and the sprinkler reach every face of an island; water in a receptacle trips its protection at best.",
        reckoned: "`cover` and `weather_resistant` of each receptacle, and the roofs among `site.objects`. In a wet place NEC \
                   406.9(B)(1) asks for an enclosure that is weatherproof whether or not a plug is in, in a damp one 406.9(A) for \
                   one that is weatherproof when shut; values from memory.",
        example: "`cover: flap` under the open sky fails; `cover: in-use` with `weather_resistant: true` passes.",
    },
    limits: &[&ROOF],
    levers: &[],
    outside: &[Outside {
        what: "in-use covers and weather-resistant receptacles in wet places, NEC 406.9(A) and (B)(1)",
        origin: Origin::Memory,
        test: "a_wet_place_wants_an_in_use_cover",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    for r in or_say_none(subject, answers) {
        cover(subject, answers, &r);
        weather_resistant(answers, &r);
    }
}

fn cover(subject: &Subject, answers: &mut Answers, r: &Receptacle) {
    let (name, place) = (&r.opening.name, &r.opening.place);
    let hint = "fit a cover that is weatherproof while in use";
    let Some(cover) = &r.opening.hardware.cover else {
        let found = format!("the cover of '{name}' is not known");
        answers.missing(place, "cover", found).about(name);
        return;
    };
    match cover.value {
        Cover::InUse => answers.pass(&cover.place, format!("'{name}' has an in-use cover")),
        Cover::Flap if under_a_roof(subject, r) => answers
            .caution(
                &cover.place,
                format!("'{name}' has a flap and stands under a roof"),
            )
            .hint(format!("{hint}: wind drives rain under a roof")),
        Cover::Flap => answers
            .fail(
                &cover.place,
                format!("'{name}' has a flap that is open while something is plugged in"),
            )
            .hint(hint),
        Cover::None => answers
            .fail(&cover.place, format!("'{name}' has no cover"))
            .hint(hint),
    }
    .about(name)
    .limit("an in-use cover in a wet place", SOURCE);
}

fn weather_resistant(answers: &mut Answers, r: &Receptacle) {
    let (name, place) = (&r.opening.name, &r.opening.place);
    match &r.opening.hardware.weather_resistant {
        None => answers.missing(
            place,
            "weather_resistant",
            format!("whether '{name}' is of the weather-resistant type is not known"),
        ),
        Some(w) if w.value => answers.pass(&w.place, format!("'{name}' is weather-resistant")),
        Some(w) => answers
            .fail(&w.place, format!("'{name}' is not weather-resistant"))
            .hint("choose a receptacle that is marked weather-resistant"),
    }
    .about(name)
    .limit("the weather-resistant type outdoors", SOURCE);
}

/// True when a roof of the site reaches far enough past a receptacle on every side.
fn under_a_roof(subject: &Subject, r: &Receptacle) -> bool {
    let past = subject.bound(&ROOF).value;
    let objects = subject.design().site.objects.as_ref();
    let (low, high) = (r.bounds.low, r.bounds.high);
    objects.is_some_and(|objects| {
        objects.iter().any(|o| {
            o.kind == ObjectKind::Roof
                && o.low[2] >= high.z
                && (0..2).all(|i| o.low[i] <= low[i] - past && high[i] + past <= o.high[i])
        })
    })
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "power-cover";

    #[test]
    fn a_wet_place_wants_an_in_use_cover() {
        // NEC 406.9(B)(1), values from memory.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let with = |cover: &str| Trial::sound().with("openings[receptacle].cover", cover);
        let open = with("flap").with("site.objects", "[]");
        assert_eq!(open.worst(CODE), Verdict::Fail);
        assert_eq!(with("none").worst(CODE), Verdict::Fail);
        // The same flap where a roof covers the whole island and 4 ft more (406.9(A), a damp place).
        let roof = "[{name: roof, kind: roof, combustible: true, at: {x: -4 ft, y: -20 ft, z: 8 ft}, size: {x: 30 ft, y: 40 ft, z: 8 in}}]";
        assert_eq!(
            with("flap").with("site.objects", roof).worst(CODE),
            Verdict::Caution
        );
        let plain = Trial::sound().with("openings[receptacle].weather_resistant", "false");
        assert_eq!(plain.worst(CODE), Verdict::Fail);
        for key in ["cover", "weather_resistant"] {
            let unsaid = Trial::sound().without(&format!("openings[receptacle].{key}"));
            assert_eq!(unsaid.worst(CODE), Verdict::NotChecked, "{key}");
        }
        assert_eq!(
            Trial::sound().without("openings").worst(CODE),
            Verdict::Pass
        );
    }
}
