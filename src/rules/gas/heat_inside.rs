//! Whether what can burn inside the island is far enough from each hot appliance.

use super::clearance::{Block, Gaps, Toward};
use super::hot::{Asked, FROM_WHAT_BURNS, Hot, hot};
use crate::diagnostics::{Place, Verdict};
use crate::geometry::{Bounds3, Point3};
use crate::plan::{Cutout, Panel, Plan};
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static HEAT_INSIDE: Rule = Rule {
    code: "heat-inside",
    family: Family::Gas,
    title: "Nothing that can burn is too near a hot appliance inside the island",
    about: About {
        checks: "The sleepers, taken as able to burn, are clear of the body of each appliance with heat, and a substrate of plywood or \
                 other wood, which reaches to the edge of the cutout, is too, by the appliance's own figures below and beside. Where \
                 the file does not give a figure, `heat-combustible` is asked for and the answer is a caution at best. A substrate \
                 whose material the program does not know is not checked.",
        why: "Inside the island nobody sees a board turn brown. Steel, cement board and concrete do not burn; the sheet under the \
              counter and the strips under the frame may. The local code, the appliance's own instructions and a licensed gas fitter decide.",
        reckoned: "Sleepers: the box under each frame panel against the body's box, in three dimensions as in heat-clearance. Substrate: \
                   the least gap between body and cutout against the figure for the sides. `heat-combustible` is common practice.",
        example: "A grill that hangs to 26-1/2 in over sleepers at 2 in has 24-1/2 in below; its instructions ask for 6 in: it \
                  passes. On a plywood substrate, 1/4 in from the body, it fails.",
    },
    limits: &[&FROM_WHAT_BURNS],
    levers: &["levels.counter"],
    outside: &[Outside {
        what: "24 in to what can burn, where nothing else is known; wood, not cement board, can burn",
        origin: Origin::Practice,
        test: "sleepers_are_below_and_plywood_is_beside",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let all = hot(subject.plan);
    if all.is_empty() {
        answers.nothing("no appliance gives off heat");
        return;
    }
    for h in &all {
        sleepers(subject, answers, h);
        substrate(subject, answers, h);
    }
}

/// The sleeper nearest to failing.
fn sleepers(subject: &Subject, answers: &mut Answers, h: &Hot) {
    let plan = subject.plan;
    let share = |g: &Gaps| g.farthest(|t| h.asked(subject, t).distance).1;
    let gaps = plan
        .panels
        .iter()
        .map(|p| Gaps::between(&h.body, &sleeper(plan, p, h.run)));
    let Some(nearest) = gaps.min_by(|a, b| share(a).total_cmp(&share(b))) else {
        return;
    };
    let (side, verdict) = h.verdict(subject, &nearest);
    let asked = h.asked(subject, side);
    let found = format!(
        "the sleepers are {} {} '{}'",
        subject.mm(nearest.toward(side)),
        side.name(),
        h.appliance.name
    );
    say(subject, answers, h, verdict, &asked, "sleepers", found);
}

/// The room that the sleeper under a panel takes, as a run sees it.
fn sleeper(plan: &Plan, panel: &Panel, run: usize) -> Block {
    let (a, b) = (
        panel.point(0.0, 0.0),
        panel.point(panel.length, plan.sizes.panel),
    );
    let (low, high) = (a.inf(&b), a.sup(&b));
    let top = plan.levels.frame_bottom;
    let foot = top - plan.design.trade.sleeper_height.mm();
    let world = Bounds3 {
        low: Point3::new(low.x, low.y, foot),
        high: Point3::new(high.x, high.y, top),
    };
    Block::seen_from(&plan.runs[run], &world)
}

/// Words for sheets that do not burn, and for sheets that do; the latter count first: wood in cement is still wood.
const STAYS: [&str; 7] = [
    "cement", "steel", "metal", "concrete", "fibre", "fiber", "gypsum",
];
const BURNS: [&str; 12] = [
    "plywood",
    "wood",
    "wooden",
    "osb",
    "ply",
    "timber",
    "particle",
    "lumber",
    "mdf",
    "chipboard",
    "hardboard",
    "hardwood",
];

/// Whether a sheet of this material can burn; `None` where its name does not say.
fn burns(material: &str) -> Option<bool> {
    let material = material.to_lowercase();
    let has = |words: &[&str]| {
        let mut parts = material.split(|c: char| !c.is_alphanumeric());
        parts.any(|p| words.contains(&p))
    };
    if has(&BURNS) {
        Some(true)
    } else {
        has(&STAYS).then_some(false)
    }
}

fn substrate(subject: &Subject, answers: &mut Answers, h: &Hot) {
    let plan = subject.plan;
    let trade = &plan.design.trade;
    let name = &h.appliance.name;
    let about = format!("{name} and substrate");
    let cutout = plan
        .cutouts
        .iter()
        .find(|c| plan.design.appliances[c.appliance].name == *name);
    let (Some(burns), Some(cutout)) = (burns(&trade.substrate), cutout) else {
        let found = format!(
            "the substrate round '{name}' is '{}', and whether that can burn is not known",
            trade.substrate.escape_debug()
        );
        answers
            .say(Verdict::NotChecked, &substrate_place(), found)
            .about(about)
            .hint("write 'trade.substrate.material' as cement board, plywood, steel or the like");
        return;
    };
    if !burns {
        let found = format!(
            "the substrate round '{name}' is {}, which does not burn",
            trade.substrate
        );
        answers.pass(&h.appliance.place, found).about(about);
        return;
    }
    let asked = h.asked(subject, Toward::Beside);
    let gap = gap(cutout, &h.body);
    let verdict = match gap >= asked.distance - 1e-6 {
        false => Verdict::Fail,
        true if asked.own => Verdict::Pass,
        true => Verdict::Caution,
    };
    let found = format!(
        "the substrate of {} is {} from the body of '{name}'",
        trade.substrate,
        subject.mm(gap)
    );
    say(subject, answers, h, verdict, &asked, "substrate", found);
}

fn substrate_place() -> Place {
    Place {
        key: "trade.substrate.material".to_owned(),
        ..Place::default()
    }
}

/// The least gap between a body and its cutout; towards the cook an open cutout has no edge.
fn gap(cutout: &Cutout, body: &Block) -> f64 {
    let front = if cutout.open {
        f64::MAX
    } else {
        body.v.0 - cutout.v0
    };
    let gaps = [
        body.u.0 - cutout.u0,
        cutout.u1 - body.u.1,
        front,
        cutout.v1 - body.v.1,
    ];
    // An open body stands against the far edge; the gap there is what its cutout has beside it.
    let gaps = gaps.into_iter().filter(|g| !cutout.open || *g > 1e-6);
    gaps.fold(f64::MAX, f64::min).clamp(0.0, 10_000.0)
}

fn say(
    subject: &Subject,
    answers: &mut Answers,
    h: &Hot,
    verdict: Verdict,
    asked: &Asked,
    what: &str,
    found: String,
) {
    let hint = match verdict {
        Verdict::Fail if what == "substrate" => {
            "cast on cement board or steel instead, or fit the insulated jacket that the appliance's maker sells for wood"
        }
        Verdict::Fail => "raise the counter, or take an appliance that hangs less deep",
        Verdict::Caution => {
            "write the figures under 'clearance' from the appliance's own instructions"
        }
        _ => "",
    };
    answers
        .say(verdict, &h.appliance.place, found)
        .about(format!("{} and {what}", h.appliance.name))
        .limit(
            format!("at least {}", subject.mm(asked.distance)),
            asked.source.clone(),
        )
        .hint(hint);
}

#[cfg(test)]
mod tests {
    use super::burns;
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "heat-inside";

    /// An island without appliances.
    fn bench() -> Trial {
        let keys = ["appliances", "openings", "gas", "electricity"];
        keys.into_iter().fold(Trial::sound(), Trial::without)
    }

    #[test]
    fn a_sheet_burns_by_what_it_is_made_of() {
        // Common practice: cement board and steel do not burn, wood does.
        assert_eq!(burns("Exterior plywood, 3/4"), Some(true));
        assert_eq!(burns("cement board"), Some(false));
        assert_eq!(burns("wood-cement particle board"), Some(true));
        assert_eq!(burns("recycled sheet"), None);
    }

    #[test]
    fn sleepers_are_below_and_plywood_is_beside() {
        // Worked on paper: body down to 36 - 9-1/2 = 26-1/2 in, sleepers up to 2 in. Common practice: 24 in.
        let sound = Trial::sound().about(CODE, "grill and sleepers");
        assert_eq!(sound.verdict, Verdict::Pass);
        assert!(sound.found.contains("2'-0 1/2\" below"), "{}", sound.found);
        let unknown = Trial::sound().without("appliances[grill].clearance");
        assert_eq!(
            unknown.about(CODE, "grill and sleepers").verdict,
            Verdict::Caution
        );
        let own = Trial::sound()
            .with("appliances[grill].clearance.below", "25 in")
            .with("appliances[grill].clearance.back", "40 in")
            .with("appliances[grill].clearance.sides", "40 in");
        assert_eq!(own.about(CODE, "grill and sleepers").verdict, Verdict::Fail);
        let wood = Trial::sound().with("trade.substrate.material", "plywood");
        let found = wood.about(CODE, "grill and substrate");
        assert_eq!(found.verdict, Verdict::Fail);
        assert!(found.found.contains("1/4\" from"), "{}", found.found);
    }

    #[test]
    fn a_substrate_of_no_known_kind_is_not_checked() {
        let odd = Trial::sound().with("trade.substrate.material", "recycled sheet");
        assert_eq!(
            odd.about(CODE, "grill and substrate").verdict,
            Verdict::NotChecked
        );
        let jacket = Trial::sound()
            .with("trade.substrate.material", "plywood")
            .with("appliances[grill].clearance.sides", "1/8 in");
        assert_eq!(
            jacket.about(CODE, "grill and substrate").verdict,
            Verdict::Pass
        );
        assert_eq!(bench().worst(CODE), Verdict::Pass);
    }
}
