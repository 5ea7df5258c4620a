//! Whether the frame with its boards or straps stands up to a push along it.

use super::loading::{POUND, TENSILE, YIELD, grade, verdict};
use super::screw_shear::screw;
use super::steel::{BoardedWall, Strap, held_by_screws};
use crate::design::Bracing;
use crate::diagnostics::{Place, Verdict};
use crate::plan::Panel;
use crate::rules::ground::PUSH;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// One screw of a board.
const BOARD_SCREW: Limit = Limit {
    name: "board-screw",
    what: "what one screw at the edge of a board holds along it",
    usual: 40.0 * POUND,
    unit: Unit::Force,
    source: "40 lb in cement board of 1/2 in, common practice",
};

/// Their spacing.
const BOARD_SCREW_SPACING: Limit = Limit {
    name: "board-screw-spacing",
    what: "from screw to screw along the edges of boards",
    usual: 203.2,
    unit: Unit::Length,
    source: "8 in on centre, as makers of cement board have it",
};

/// Across a strap.
const STRAP_WIDTH: Limit = Limit {
    name: "strap-width",
    what: "width of a flat strap across a panel, as thick as the studs",
    usual: 38.1,
    unit: Unit::Length,
    source: "1-1/2 in, common practice",
};

/// Screws of a strap.
const STRAP_SCREWS: Limit = Limit {
    name: "strap-screws",
    what: "screws at each end of a strap",
    usual: 4.0,
    unit: Unit::Count,
    source: "common practice",
};

pub(super) static RACKING: Rule = Rule {
    code: "frame-racking",
    family: Family::Frame,
    title: "The frame with its boards or straps does not rack",
    about: About {
        checks: "Along and across the first run: what all panels that stand that way hold together against one `push` at the counter. Up to 90 % it passes, up to 100 % it \
                 cautions, beyond that it fails; where the island stands against a wall that way, it cautions still, for the wall can hold it once the frame is screwed to it. \
                 Without `trade.bracing` it is not checked.",
        why: "Studs and track are a row of hinges: only board or straps make a panel stiff, and a door takes both away.",
        reckoned: "Boards: one `board-screw` over `board-screw-spacing`, along each stretch of clad face between openings; a stretch narrower than half its height counts 2 b/h, one narrower than a quarter \
                   nothing (AISI S400-15 E1.3, value from memory). Straps: one each way over the longest stretch between openings of every panel, the lesser of yield / 1.67, tearing / 2.00 and its end \
                   screws / 3.0 (AISI S100-16 D2, D3, J4), along the panel. Wind and earthquake are not counted: where the local code asks for them, it and an engineer decide.",
        example: "A straight run 30 in deep with whole ends, panels of 22-3/8 in: 2 × 22.4/8 × 40 lb = 224 lb against a push of 200 lb: it passes.",
    },
    limits: &[
        &PUSH,
        &BOARD_SCREW,
        &BOARD_SCREW_SPACING,
        &STRAP_WIDTH,
        &STRAP_SCREWS,
        &YIELD,
        &TENSILE,
    ],
    levers: &["runs[].depth", "openings[].width"],
    outside: &[
        Outside {
            what: "a push of 200 lb on a guard or handrail (IRC Table R301.5)",
            origin: Origin::Published,
            test: "a_stronger_push_never_helps",
        },
        Outside {
            what: "a strap by statics with the allowable shear of its screws, 164 lb each",
            origin: Origin::Memory,
            test: "a_strap_agrees_with_statics_worked_on_paper",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let group = Place {
        key: "trade".to_owned(),
        ..Place::default()
    };
    let Some(bracing) = &subject.design().making.bracing else {
        let found = "whether boards or straps keep the frame from racking";
        answers.missing(&group, "bracing", found);
        return;
    };
    let strap = match bracing.value {
        Bracing::Boards => None,
        Bracing::Straps => match screw(subject, answers) {
            Some(screw) => Some(screw),
            None => return,
        },
    };
    let push = subject.bound(&PUSH);
    for (along, words) in [(true, "along"), (false, "across")] {
        let panels = subject.plan.panels.iter().filter(|p| {
            let x = p.along.dot(&subject.plan.runs[0].along).abs();
            (x > 0.5) == along
        });
        let holds: f64 = panels
            .map(|p| match strap {
                None => boarded(subject, p),
                Some(screw) => strapped(subject, p, screw),
            })
            .sum();
        let found = format!(
            "{words} the first run the frame holds {}",
            subject.spell(Unit::Force, holds)
        );
        let (verdict, hint) = match verdict(push.value / holds.max(1e-9)) {
            Verdict::Fail if at_a_wall(subject, along) => (
                Verdict::Caution,
                "screw the frame to what bears in the wall that it stands against",
            ),
            v => (
                v,
                "straps across the ends and bulkheads as well, fewer or narrower openings in whole boards, or a deeper run",
            ),
        };
        answers
            .say(verdict, &bracing.place, found)
            .about(words)
            .limit(
                format!("at least a push of {}", push.spell()),
                push.source.clone(),
            )
            .hint(hint);
    }
}

/// True when a face that looks along the first run, or across it, stands against a wall.
fn at_a_wall(subject: &Subject, along: bool) -> bool {
    let first = subject.plan.runs[0].along;
    let mut walls = subject.plan.faces.iter().filter(|f| f.wall);
    walls.any(|f| (f.outward.dot(&first).abs() > 0.5) == along)
}

/// The stretches of a panel without an opening, in its own coordinate.
fn whole_stretches(subject: &Subject, panel: &Panel) -> Vec<f64> {
    let face = panel.face.and_then(|f| subject.plan.faces.get(f));
    let mut holes: Vec<(f64, f64)> = face.map_or_else(Vec::new, |face| {
        let p = |s: f64| (face.point(s, 0.0) - panel.start).dot(&panel.along);
        face.openings
            .iter()
            .map(|o| (p(o.s0).min(p(o.s1)), p(o.s0).max(p(o.s1))))
            .filter(|(a, b)| *b > 0.0 && *a < panel.length)
            .collect()
    });
    holes.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut from = 0.0;
    let mut found = Vec::new();
    for (a, b) in holes.into_iter().chain([(panel.length, panel.length)]) {
        if a > from {
            found.push(a - from);
        }
        from = from.max(b);
    }
    found
}

fn height(subject: &Subject) -> f64 {
    subject.plan.sizes.frame_top - subject.plan.sizes.frame_bottom
}

fn boarded(subject: &Subject, panel: &Panel) -> f64 {
    let clad = panel.face.is_some_and(|f| !subject.plan.faces[f].wall);
    if !clad {
        return 0.0;
    }
    let screw = subject.bound(&BOARD_SCREW).value;
    // Closer than an inch the board breaks from screw to screw.
    let spacing = subject.bound(&BOARD_SCREW_SPACING).value.max(25.4);
    let height = height(subject);
    let stretches = whole_stretches(subject, panel);
    let holds = |length: f64| held_by_screws(BoardedWall { length, height }, screw, spacing);
    stretches.into_iter().map(holds).sum()
}

fn strapped(subject: &Subject, panel: &Panel, screw: super::steel::Screw) -> f64 {
    let run = whole_stretches(subject, panel)
        .into_iter()
        .fold(0.0, f64::max);
    let rise = height(subject);
    if run < rise / 4.0 {
        return 0.0;
    }
    let trade = &subject.design().trade;
    let strap = Strap {
        width: subject.bound(&STRAP_WIDTH).value,
        thickness: trade.stud.thickness.mm(),
        // A flatter strap than one to one is cut off: straps are set at about 45 degrees.
        run: run.min(rise),
        rise,
        screws: subject.bound(&STRAP_SCREWS).value.max(0.0) as u32,
    };
    strap.capacity(screw, trade.track.thickness.mm(), grade(subject))
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-racking";

    fn pushed(lb: u32, bracing: &str) -> Trial {
        let limits = format!("[{{name: push, value: {lb} lb}}]");
        Trial::sound()
            .with("limits", &limits)
            .with("trade.bracing", bracing)
    }

    #[test]
    fn a_stronger_push_never_helps() {
        // IRC Table R301.5: 200 lb.
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        for bracing in ["boards", "straps"] {
            let row: Vec<_> = (2..24)
                .map(|k| pushed(k * 50, bracing).worst(CODE))
                .collect();
            assert!(row.is_sorted(), "{row:?}");
            for v in [Verdict::Pass, Verdict::Fail] {
                assert!(row.contains(&v), "{bracing} {v:?}: {row:?}");
            }
        }
    }

    #[test]
    fn whole_ends_hold_by_the_screws_along_them() {
        // By hand: a straight run 30 in deep, both ends whole: panels of 30 - 2 × 3.78 = 22.4 in, 31.5 in high: each
        // 22.4/8 × 40 lb = 112 lb, together 224; a push of 200 lb is 89 % of that, 210 lb 94 %, 230 lb too much.
        let verdict = |lb: u32| {
            let limits = format!("[{{name: push, value: {lb} lb}}]");
            let runs = "[{name: cook, length: 8 ft, depth: 30 in}]";
            let trial = Trial::bare().with("limits", &limits).with("runs", runs);
            let trial = trial.without("counter.joints");
            trial.about(CODE, "across").verdict
        };
        assert_eq!(verdict(200), Verdict::Pass);
        assert_eq!(verdict(210), Verdict::Caution);
        assert_eq!(verdict(230), Verdict::Fail);
    }

    #[test]
    fn a_run_between_walls_is_held_by_them_only_when_it_is_screwed_to_them() {
        // Both ends against walls carry no board, so nothing holds across; against the wall behind it may be screwed.
        let between = |walls: &str| {
            let runs = format!("[{{name: cook, length: 8 ft, depth: 30 in, walls: {walls}}}]");
            let trial = Trial::bare().with("runs", &runs).without("counter.joints");
            trial.about(CODE, "across")
        };
        assert_eq!(between("[left, right]").verdict, Verdict::Fail);
        let behind = between("[left, right, seating]");
        assert_eq!(behind.verdict, Verdict::Caution);
        assert!(behind.hint.contains("wall"), "{}", behind.hint);
    }

    #[test]
    fn without_bracing_it_is_not_checked() {
        let trial = Trial::sound().without("trade.bracing");
        assert_eq!(trial.worst(CODE), Verdict::NotChecked);
    }
}
