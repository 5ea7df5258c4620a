//! Whether what can burn around the island stands far enough from each hot appliance.

use super::clearance::{Block, Gaps, Toward};
use super::hot::{FROM_WHAT_BURNS, Hot, OVERHEAD, about_objects, hot_and_objects, seen};
use crate::design::{ObjectKind, Side, SiteObject};
use crate::plan::RunPlan;
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static HEAT_CLEARANCE: Rule = Rule {
    code: "heat-clearance",
    family: Family::Gas,
    title: "Posts, walls and whatever else can burn stand clear of each hot appliance",
    about: About {
        checks: "Every object of the site that can burn and is not overhead is clear of the body of every appliance with heat: beside \
                 it, behind it, in front of it, below it or above it by what the appliance's own instructions ask for there. Where \
                 the file does not give that figure, `heat-combustible` is asked for instead, and the answer is a caution at best. \
                 A side of a run that stands against a wall asks for the wall as an object of the site.",
        why: "Wood that is warmed for years catches fire at a heat that a new board would stand. The local code, the appliance's \
              own instructions and a licensed gas fitter decide.",
        reckoned: "In three dimensions, body and object each a box in the run's own directions: beside = the free distance along the run, \
                   behind and in front across it, above and below upright. The object is clear when on one side at least its distance is \
                   no less than what is asked there. In front the figure for the sides is taken. Own figures: the appliance's \
                   instructions; `heat-combustible` is common practice.",
        example: "A post 30 in beside a grill whose instructions ask for 12 in passes; one 8 in beside it and 4 in behind fails.",
    },
    limits: &[&FROM_WHAT_BURNS, &OVERHEAD],
    levers: &["appliances[].at"],
    outside: &[Outside {
        what: "24 in to what can burn at back and sides, where nothing else is known",
        origin: Origin::Practice,
        test: "twenty_four_inches_where_nothing_is_known",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let unknown = "what stands around the island is not known";
    let Some((all, objects)) = hot_and_objects(subject, answers, unknown) else {
        return;
    };
    let beside = |gaps: &Gaps| gaps.toward(Toward::Above) <= 0.0;
    let mut said = false;
    for h in &all {
        said |= about_objects(subject, answers, h, objects, beside);
        said |= walls(subject, answers, h, objects);
    }
    if !said {
        answers.nothing("nothing that can burn stands around the island");
    }
}

/// How far from a run's side a wall may be drawn and still be the wall that the side stands against, millimetres.
const AGAINST: f64 = 50.0;

/// Asks for the walls that the appliance's run stands against, where the site does not have them.
fn walls(subject: &Subject, answers: &mut Answers, h: &Hot, objects: &[SiteObject]) -> bool {
    let plan = subject.plan;
    let run = &plan.runs[h.run];
    let design = &plan.design.runs[h.run];
    let mut said = false;
    for &side in &design.walls {
        let wall = wall_of(run, side, &h.body);
        let gaps = Gaps::between(&h.body, &wall);
        let mut upright = objects.iter().filter(|o| stands_as_wall(o));
        let known = upright.any(|o| meets(&seen(run, o), &wall));
        let (toward, share) = gaps.farthest(|t| h.asked(subject, t).distance);
        if known || share >= 1.0 {
            continue;
        }
        said = true;
        let found = format!(
            "the wall at the {} of run '{}' is {} {} '{}', and whether it can burn is not known",
            side.name(),
            design.name.value,
            subject.mm(gaps.toward(toward)),
            toward.name(),
            h.appliance.name
        );
        answers
            .missing(&plan.design.site.place, "objects", found)
            .about(format!("{} and the wall", h.appliance.name))
            .hint("write the wall under 'site.objects', with 'combustible'");
    }
    said
}

/// The wall that a side of a run stands against, beside or behind a body.
fn wall_of(run: &RunPlan, side: Side, body: &Block) -> Block {
    let (u, v) = match side {
        Side::Seating => (body.u, (run.depth, run.depth + AGAINST)),
        Side::Working => (body.u, (-AGAINST, 0.0)),
        Side::Left => ((-AGAINST, 0.0), body.v),
        Side::Right => ((run.length, run.length + AGAINST), body.v),
    };
    Block { u, v, z: body.z }
}

/// True for what may be the wall itself: a post before it or a roof over it says nothing of the wall.
fn stands_as_wall(object: &SiteObject) -> bool {
    matches!(
        object.kind,
        ObjectKind::Wall | ObjectKind::Fence | ObjectKind::Other
    )
}

fn meets(a: &Block, b: &Block) -> bool {
    let touch = |p: (f64, f64), q: (f64, f64)| p.0 <= q.1 && q.0 <= p.1;
    touch(a.u, b.u) && touch(a.v, b.v) && touch(a.z, b.z)
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "heat-clearance";

    /// An island without appliances.
    fn bench() -> Trial {
        let keys = ["appliances", "openings", "gas", "electricity"];
        keys.into_iter().fold(Trial::sound(), Trial::without)
    }

    /// One post; the grill's body is from 13-1/4 to 42-3/4 in along the run, and its far edge at 21 in.
    fn post(at: &str, burns: &str) -> Trial {
        let text = format!(
            "[{{name: post, kind: post{burns}, at: {at}, size: {{x: 4 in, y: 4 in, z: 96 in}}}}]"
        );
        Trial::sound().with("site.objects", &text)
    }

    #[test]
    fn the_appliance_s_own_figure_comes_first() {
        // Worked on paper: 12 in asked beside; a post from -5 to -1 in is 14-1/4 in off, one from 0 to 4 in 9-1/4 in.
        let burns = ", combustible: true";
        let clear = post("{x: -5 in, y: 0 in, z: 0 in}", burns).about(CODE, "grill and post");
        assert_eq!(clear.verdict, Verdict::Pass);
        assert!(clear.found.contains("1'-2 1/4\" beside"), "{}", clear.found);
        let near = post("{x: 0 in, y: 10 in, z: 0 in}", burns).about(CODE, "grill and post");
        assert_eq!(near.verdict, Verdict::Fail);
        assert_eq!(near.limit, "at least 1'-0\"");
        // Diagonally: 9-1/4 in beside, but 13 in behind.
        let corner = post("{x: 0 in, y: 34 in, z: 0 in}", burns).about(CODE, "grill and post");
        assert_eq!(corner.verdict, Verdict::Pass);
    }

    #[test]
    fn twenty_four_inches_where_nothing_is_known() {
        // Common practice: 24 in at back and sides, and then a caution at best.
        let at = |y: &str| {
            let at = format!("{{x: 20 in, y: {y}, z: 0 in}}");
            post(&at, ", combustible: true").without("appliances[grill].clearance")
        };
        assert_eq!(at("45-1/4 in").worst(CODE), Verdict::Caution);
        assert_eq!(at("44-1/2 in").worst(CODE), Verdict::Fail);
        let own = "[{name: heat-combustible, value: 20 in}]";
        assert_eq!(
            at("44-1/2 in").with("limits", own).worst(CODE),
            Verdict::Caution
        );
    }

    #[test]
    fn what_is_not_known_to_burn_is_asked_for_only_where_it_matters() {
        let near = post("{x: 0 in, y: 10 in, z: 0 in}", "");
        let found = near.about(CODE, "grill and post");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(found.hint.contains("combustible"), "{}", found.hint);
        assert_eq!(
            post("{x: -5 in, y: 0 in, z: 0 in}", "").worst(CODE),
            Verdict::Pass
        );
        let path = "[{name: path, kind: walkway, at: {x: 0 in, y: -20 in, z: 0 in}, size: {x: 90 in, y: 40 in, z: 35 in}}]";
        let path = Trial::sound().with("site.objects", path);
        assert_eq!(
            path.worst(CODE),
            Verdict::Pass,
            "nobody asks whether a way burns"
        );
        let stone = post("{x: 0 in, y: 10 in, z: 0 in}", ", combustible: false");
        assert_eq!(stone.worst(CODE), Verdict::Pass);
        assert_eq!(
            Trial::sound().without("site.objects").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(
            Trial::sound().without("site").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(bench().worst(CODE), Verdict::Pass);
    }

    #[test]
    fn what_stands_in_the_grill_s_own_place_is_said_as_such() {
        let text = "[{name: pergola, kind: other, combustible: true, at: {x: -50 in, y: -50 in, z: 0 in}, size: {x: 300 in, y: 300 in, z: 100 in}}]";
        let found = Trial::sound().with("site.objects", text);
        let found = found.about(CODE, "grill and pergola");
        assert_eq!(found.verdict, Verdict::Fail);
        assert!(
            found.found.contains("takes the place of"),
            "{}",
            found.found
        );
    }

    #[test]
    fn a_wall_that_the_run_stands_against_is_asked_for() {
        let against = Trial::sound()
            .with("runs[cook].walls", "[left]")
            .without("openings[gas hatch]")
            .without("gas.shut_off")
            .with("appliances[grill].clearance.sides", "18 in")
            .with("site.objects", "[]");
        let found = against.about(CODE, "grill and the wall");
        assert_eq!(found.verdict, Verdict::NotChecked);
        let wall = "[{name: house, kind: wall, combustible: false, at: {x: -10 in, y: -20 in, z: 0 in}, size: {x: 10 in, y: 90 in, z: 99 in}}]";
        assert_eq!(
            against.clone().with("site.objects", wall).worst(CODE),
            Verdict::Pass
        );
        let post = wall.replace("kind: wall", "kind: post");
        let found = against.with("site.objects", &post);
        assert_eq!(found.worst(CODE), Verdict::NotChecked);
    }
}
