//! Whether the ground bears the sleepers.

use super::stance::{Stance, is_seating, surface_of};
use crate::design::{Ground, Surface};
use crate::rules::{About, Answers, Bound, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::{PSF, Unit};

const fn presumptive(name: &'static str, what: &'static str, psf: f64) -> Limit {
    Limit {
        name,
        what,
        usual: psf * PSF,
        unit: Unit::AreaLoad,
        source: "presumptive value, IRC 2015, Table R401.4.1",
    }
}

const BEDROCK: Limit = presumptive(
    "bearing-bedrock",
    "pressure on crystalline bedrock",
    12_000.0,
);
const SEDIMENTARY: Limit = presumptive(
    "bearing-sedimentary",
    "pressure on sedimentary or foliated rock",
    4000.0,
);
const GRAVEL: Limit = presumptive(
    "bearing-gravel",
    "pressure on sandy gravel or gravel",
    3000.0,
);
const SAND: Limit = presumptive(
    "bearing-sand",
    "pressure on sand, silty or clayey sand and gravel",
    2000.0,
);
const CLAY: Limit = presumptive(
    "bearing-clay",
    "pressure on clay, sandy clay and silt",
    1500.0,
);

pub(super) static BEARING: Rule = Rule {
    code: "ground-bearing",
    family: Family::Ground,
    title: "The ground bears what each sleeper presses on it",
    about: About {
        checks: "The pressure under the seating and the working sleeper of each run with people leaning on the seating edge, spread through a slab or pavers, against the bearing value of the \
                 stated ground. It passes up to nine tenths of it, cautions up to it, and fails above. On a deck the joists decide: see `ground-pavers`.",
        why: "Where one sleeper sinks by half an inch, the counter cracks over the frame that it no longer lies on.",
        reckoned: "The weight of the run stands on two sleepers as on a simple beam: R seating = (W (x - s/2) + P (d + out - s/2)) / (d - s). \
                   Pressure = R / (length × bearing width); the bearing width is the sleeper's, and twice the thickness of slab or pavers more (45 degrees). Values: IRC 2015, Table R401.4.1.",
        example: "1,100 lb on the seating sleeper of a 10 ft run, 3-1/2 in wide, on bare ground: 377 psf; clay bears 1,500.",
    },
    limits: &[&BEDROCK, &SEDIMENTARY, &GRAVEL, &SAND, &CLAY],
    levers: &["trade.sleeper.width", "counter.thickness"],
    outside: &[Outside {
        what: "12,000, 4,000, 3,000, 2,000 and 1,500 psf (IRC 2015, Table R401.4.1)",
        origin: Origin::Published,
        test: "the_table_gives_what_the_ground_bears",
    }],
    check,
};

/// What the ground bears: what the file says, else its class.
fn bears(subject: &Subject) -> Option<Bound> {
    let site = &subject.design().site;
    let limit = match site.ground.as_ref()?.value {
        Ground::Bedrock => &BEDROCK,
        Ground::SedimentaryRock => &SEDIMENTARY,
        Ground::Gravel => &GRAVEL,
        Ground::Sand => &SAND,
        Ground::Clay => &CLAY,
    };
    Some(subject.bound(limit))
}

/// How much wider than the sleeper the ground is pressed, mm; `None` where something else carries it.
fn spread(surface: &Surface) -> Option<f64> {
    match surface {
        Surface::Bare => Some(0.0),
        Surface::Slab { thickness } | Surface::Pavers { thickness, .. } => {
            Some(2.0 * thickness.mm())
        }
        Surface::Deck => None,
    }
}

fn check(subject: &Subject, answers: &mut Answers) {
    let site = &subject.design().site;
    let Some(surface) = surface_of(site, answers) else {
        return;
    };
    let Some(spread) = spread(surface) else {
        answers.nothing("the island stands on a deck: its joists bear it, not the ground");
        return;
    };
    let own = site.bearing.as_ref();
    let (most, source) = match (own, bears(subject)) {
        (Some(own), _) => (own.mpa(), "set in the file".to_owned()),
        (None, Some(bound)) => (bound.value, bound.source),
        (None, None) => {
            answers.missing(&site.place, "ground", "what ground carries the island");
            return;
        }
    };
    for (i, run) in subject.design().runs.iter().enumerate() {
        let (name, pressure) = worst(subject, i, spread);
        let found = format!(
            "run '{}': its {name} sleeper presses with {}",
            run.name.value,
            subject.spell(Unit::AreaLoad, pressure)
        );
        let class = site.ground.as_ref().map(|g| &g.place);
        let place = own.map(|b| &b.place).or(class).unwrap_or(&surface.place);
        let answer = if pressure <= 0.9 * most {
            answers.pass(place, found)
        } else if pressure <= most * (1.0 + 1e-9) {
            answers.caution(place, found)
        } else {
            answers.fail(place, found)
        };
        let limit = format!("at most {}", subject.spell(Unit::AreaLoad, most));
        answer
            .about(run.name.value.as_str())
            .limit(limit, source.clone())
            .hint("wider sleepers, a slab under them, or better ground");
    }
}

/// The sleeper that presses hardest and with how much, in megapascals.
fn worst(subject: &Subject, run: usize, spread: f64) -> (&'static str, f64) {
    let stance = Stance::of(subject, run);
    let people = if is_seating(subject, run) {
        stance.leaning(subject)
    } else {
        0.0
    };
    presses(stance, people, spread)
}

/// The same for a stance with so much weight of people on its seating edge, N; nobody leans while the working side presses
/// hardest.
fn presses(s: Stance, people: f64, spread: f64) -> (&'static str, f64) {
    let half = s.sleeper / 2.0;
    let apart = (s.depth - s.sleeper).max(1.0);
    let seating = (s.weight * (s.at - half) + people * (s.depth + s.out - half)) / apart;
    let working = s.weight * (s.depth - half - s.at) / apart;
    let area = s.length.max(1.0) * (s.sleeper + spread).max(1.0);
    if seating >= working {
        ("seating", seating / area)
    } else {
        ("working", working / area)
    }
}

#[cfg(test)]
mod tests {
    use super::{PSF, Stance, presses};
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;
    use crate::rules::{limits, rule};

    const CODE: &str = "ground-bearing";

    #[test]
    fn a_block_presses_as_a_beam_on_two_sleepers() {
        // By hand, in pounds and inches: (1,600 × (15 - 1.75) + 500 × (30 + 10.875 - 1.75)) / 26.5 = 1,538 lb on 10 ft × 3-1/2 in: 527
        // psf; through a slab of 4 in on 11-1/2 in: 160.5. Without people 1,600 × 13.25 / 26.5 = 800 lb: 274 psf on either.
        let lb = 4.448_221_615_260_5;
        let mut block = Stance {
            weight: 1600.0 * lb,
            at: 15.0 * 25.4,
            length: 120.0 * 25.4,
            depth: 30.0 * 25.4,
            out: 10.875 * 25.4,
            height: 36.0 * 25.4,
            sleeper: 3.5 * 25.4,
        };
        let psf = |s: Stance, people: f64, spread: f64| {
            let (name, pressure) = presses(s, people * lb, spread * 25.4);
            (name, (pressure / PSF * 10.0).round() / 10.0)
        };
        assert_eq!(psf(block, 500.0, 0.0), ("seating", 527.4));
        assert_eq!(psf(block, 500.0, 8.0), ("seating", 160.5));
        assert_eq!(psf(block, 0.0, 0.0).1, 274.3);
        // Weight that lies at 10 in presses the working sleeper: 1,600 × (28.25 - 10) / 26.5 = 1,102 lb, 377.8 psf.
        block.at = 10.0 * 25.4;
        assert_eq!(psf(block, 0.0, 0.0), ("working", 377.8));
    }

    #[test]
    fn the_table_gives_what_the_ground_bears() {
        // IRC 2015, Table R401.4.1, psf.
        let table = [12_000.0, 4000.0, 3000.0, 2000.0, 1500.0];
        let ours: Vec<f64> = rule(CODE)
            .unwrap()
            .limits
            .iter()
            .map(|l| (l.usual / PSF).round())
            .collect();
        assert_eq!(ours, table);
        assert!(limits().any(|l| l.name == "bearing-clay"));
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let bare = |bearing: &str| {
            let bare = Trial::sound().with("site.surface", "bare");
            bare.with("site.bearing", bearing).about(CODE, "cook")
        };
        assert_eq!(bare("2000 psf").verdict, Verdict::Pass);
        assert_eq!(bare("150 psf").verdict, Verdict::Fail);
        let mut verdicts: Vec<_> = (150..2000)
            .step_by(20)
            .map(|p| bare(&format!("{p} psf")).verdict)
            .collect();
        assert!(verdicts.contains(&Verdict::Caution));
        verdicts.reverse();
        assert!(verdicts.is_sorted(), "{verdicts:?}");
        assert_eq!(
            Trial::sound().without("site.ground").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(
            Trial::sound().without("site.surface").worst(CODE),
            Verdict::NotChecked
        );
        assert_eq!(
            Trial::sound().with("site.surface", "deck").worst(CODE),
            Verdict::Pass
        );
    }
}
