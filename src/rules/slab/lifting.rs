//! Whether a slab cast elsewhere can be demoulded and lifted.

use super::concrete::{WEIGHT, modulus, modulus_of_rupture};
use super::overhang::counter;
use crate::geometry::Region;
use crate::parts::PartKind;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::takeoff::territories;
use crate::units::{GRAVITY, Unit};

const EACH: Limit = Limit {
    name: "lift-each",
    what: "what one person lifts with others",
    usual: 23.0,
    unit: Unit::Mass,
    source: "load constant of the NIOSH lifting equation (1994), 23 kg or 51 lb, value from memory",
};

const IMPACT: Limit = Limit {
    name: "lift-safety",
    what: "how many times the weight of a carried slab it takes to crack it",
    usual: 3.0,
    unit: Unit::Count,
    source: "common practice: 1.5 for suction and jolts, 2 for safety",
};

pub(super) static LIFTING: Rule = Rule {
    code: "slab-lifting",
    family: Family::Slab,
    title: "A slab cast elsewhere can be lifted without cracking and without hurting anybody",
    about: About {
        checks: "Only where `counter.elsewhere` is true; cast in place there is nothing to lift. The heaviest piece, shared by `counter.lifters`, stays within \
                 `lift-each`, and the longest, carried by its ends, stays `lift-safety` away from cracking. It cautions where a piece is carried so at all, and fails where a limit is passed. Pieces end at the \
                 joints of `counter.joints` and where runs meet.",
        why: "A slab of 600 lb falls from four hands. A slab carried flat by its ends breaks at the sink.",
        reckoned: "Weight = the piece's share of the slab by area, overhangs in and cutouts out, at 150 pcf. Cracking, cutouts left out: fr = 7.5 √f'c (ACI 318-19, 19.2.3.1) against w L²/8 of a simple beam.",
        example: "10 ft × 30 in × 2 in weigh 625 lb: thirteen people. On edge it carries itself; flat it cracks at 1.0 times its weight.",
    },
    limits: &[&EACH, &IMPACT],
    levers: &["counter.lifters", "counter.thickness"],
    outside: &[Outside {
        what: "51 lb for one person, the load constant of the NIOSH lifting equation",
        origin: Origin::Memory,
        test: "twenty_people_for_ten_feet_with_their_overhangs",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let casting = &subject.design().counter.casting;
    if casting.elsewhere.as_ref().is_none_or(|e| !e.value) {
        answers.nothing("the counter is cast in place: nothing is lifted");
        return;
    }
    let thickness = subject.design().counter.thickness.mm();
    let pieces = pieces(subject);
    let length = pieces.iter().map(|p| p.0).fold(0.0, f64::max);
    let share = pieces.iter().map(|p| p.1).fold(0.0, f64::max);
    let slab = subject.assembly().parts.iter();
    let slab = slab.filter(|p| p.kind == PartKind::Slab);
    let volume: f64 = slab.map(|p| subject.assembly().solid(p).volume()).sum();
    lift(subject, answers, WEIGHT * volume * share / GRAVITY);
    let Some(strength) = &casting.strength else {
        answers
            .missing(&counter(), "strength", "how strong the concrete is")
            .about("cracking");
        return;
    };
    let carried = WEIGHT * thickness * length * length / 8.0;
    let times = modulus_of_rupture(strength.value) * modulus(thickness) / carried.max(1e-9);
    let safety = subject.bound(&IMPACT);
    let found = format!(
        "carried flat by its ends, a piece of {} cracks at {} times its weight",
        subject.mm(length),
        subject.times(times)
    );
    let place = &subject.design().counter.thickness.place;
    let hint =
        "carry it on edge, strapped to a stiff frame, after at least a week; wait for the strength";
    let answer = if safety.is_reached_by(times) {
        answers.caution(place, found)
    } else {
        answers.fail(place, found)
    };
    answer.about("cracking").at_least(&safety).hint(hint);
}

fn lift(subject: &Subject, answers: &mut Answers, kg: f64) {
    let each = subject.bound(&EACH);
    let needed = (kg / each.value.max(1e-9)).ceil();
    let Some(lifters) = &subject.design().counter.casting.lifters else {
        let found = format!(
            "how many lift the heaviest piece of {}",
            subject.spell(Unit::Mass, kg)
        );
        answers
            .missing(&counter(), "lifters", found)
            .about("weight");
        return;
    };
    let share = kg / f64::from(lifters.value.max(1));
    let found = format!(
        "the heaviest piece weighs {}: {} for each of {}",
        subject.spell(Unit::Mass, kg),
        subject.spell(Unit::Mass, share),
        lifters.value
    );
    answers
        .judge(each.allows(share), &lifters.place, found)
        .about("weight")
        .at_most(&each)
        .hint(format!("{needed:.0} people, a hoist, or cast it in place"));
}

/// Each piece between joints: its length, overhangs included, and its share of the slab.
fn pieces(subject: &Subject) -> Vec<(f64, f64)> {
    let plan = subject.plan;
    let slab = Region {
        outer: plan.counter.outline.clone(),
        holes: plan.counter.slab.cutouts.clone(),
    };
    let whole = slab.area().max(1.0);
    let mut found = Vec::new();
    for (i, own) in territories(plan).iter().enumerate() {
        let run = &plan.runs[i];
        let (a, b) = (run.local(own.low), run.local(own.high));
        let (low, high) = (a.inf(&b), a.sup(&b));
        let joints = subject.design().counter.casting.joints.iter();
        let own = joints.filter(|j| j.0 == i).map(|j| j.1.mm());
        let mut at: Vec<f64> = own.filter(|u| *u > low.x && *u < high.x).collect();
        at.extend([low.x, high.x]);
        at.sort_by(f64::total_cmp);
        found.extend(at.windows(2).map(|w| {
            let piece = run.rectangle((w[0], w[1]), (low.y, high.y));
            (w[1] - w[0], slab.area_within(&piece) / whole)
        }));
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "slab-lifting";

    /// A slab without holes, turndown or rounding, to be reckoned on paper.
    fn elsewhere() -> Trial {
        Trial::bare()
            .with("counter.elsewhere", "true")
            .without("counter.joints")
            .with("counter.turndown", "{sides: []}")
            .with("counter.corners", "sharp")
            .with("counter.edge", "{square: {eased: 0 in}}")
    }

    #[test]
    fn twenty_people_for_ten_feet_with_their_overhangs() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        // The cook run passes through the corner: 120 in, the left end's overhang of 2-7/8 past the steel and the bar's seating overhang
        // of 10-7/8, 133-3/4 in long; 30 + 2-7/8 + 10-7/8, 43-3/4 in deep. × 2 in at 150 pcf: 1,016 lb, 20.04 times 23 kg.
        let with = |n: &str| elsewhere().with("counter.lifters", n).about(CODE, "weight");
        assert_eq!(with("20").verdict, Verdict::Fail);
        let found = with("20");
        assert!(found.found.contains("1,016 lb"), "{}", found.found);
        assert!(found.hint.starts_with("21 people"), "{}", found.hint);
        assert_eq!(with("21").verdict, Verdict::Pass);
        assert_eq!(
            elsewhere().about(CODE, "weight").verdict,
            Verdict::NotChecked
        );
        // By hand: .0868 × 2 × 133.75²/8 = 388 in·lb an inch; it cracks at 474.3 × 4/6 = 316.2: 0.8 times. With a joint at 64 in the
        // longer piece has 66.9 in and 97.1 in·lb an inch: 3.3 times.
        let long = elsewhere().about(CODE, "cracking");
        assert_eq!(long.verdict, Verdict::Fail);
        assert!(
            long.found.ends_with("0.8 times its weight"),
            "{}",
            long.found
        );
        let short = elsewhere().with("counter.joints", "[{run: cook, at: 64 in}]");
        assert_eq!(short.about(CODE, "cracking").verdict, Verdict::Caution);
        let unknown = elsewhere().without("counter.strength");
        assert_eq!(unknown.about(CODE, "cracking").verdict, Verdict::NotChecked);
        // A cutout makes it lighter: a grill's notch of 30 × 23-7/8 in is 124 lb: 892 lb.
        let grill = "[{name: grill, kind: grill, run: cook, at: {from: left, distance: 28 in}, cutout: {width: 30 in, depth: 21 in}, \
                     body: {width: 29-1/2 in, depth: 20-1/2 in, height: 9-1/2 in}, front: {open: {panel_height: 9-1/2 in}}}]";
        let notched = elsewhere()
            .with("appliances", grill)
            .with("counter.lifters", "20");
        let found = notched.about(CODE, "weight");
        assert!(found.found.contains("892 lb"), "{}", found.found);
    }
}
