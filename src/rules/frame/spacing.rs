//! Whether studs and ties stand close enough for what is screwed to them.

use super::members::Asked;
use crate::plan::{CrossingKind, Panel, PanelOf};
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// Framing under board.
const FRAMING: Limit = Limit {
    name: "board-framing",
    what: "from one stud or tie to the next under board or the sheet of the counter",
    usual: 406.4,
    unit: Unit::Length,
    source: "16 in on centre, as makers of cement board have it",
};

pub(super) static SPACING: Rule = Rule {
    code: "frame-spacing",
    family: Family::Frame,
    title: "Studs and ties stand close enough for board and sheet",
    about: About {
        checks: "In each run the widest step from one upright to the next on a clad face, openings left out, and from one tie to the next under the sheet, cutouts left out. It \
                 passes up to `board-framing` and fails beyond.",
        why: "Board that spans farther bends under the float and cracks along its joints; a sheet that spans farther sags under the pour.",
        reckoned: "From middle to middle as they really stand, the gap at an opening or a cutout not counted: board and sheet are cut out there.",
        example: "Studs 24 in apart under 1/2 in board: 24 in is more than 16 in, it fails.",
    },
    limits: &[&FRAMING],
    levers: &["trade.stud_spacing"],
    outside: &[Outside {
        what: "framing at most 16 in on centre under cement board (makers' instructions)",
        origin: Origin::Published,
        test: "sixteen_inches_pass_and_twenty_four_fail",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let most = subject.bound(&FRAMING);
    let place = &subject.design().trade.stud_spacing.place;
    let ties = widest_between_ties(subject);
    for (i, run) in subject.design().runs.iter().enumerate() {
        let name = run.name.value.as_str();
        let panels = subject.plan.panels.iter().filter(|p| p.run == i);
        let clad = panels.filter(|p| p.face.is_some_and(|f| !subject.plan.faces[f].wall));
        let studs = clad.map(widest_between_studs).fold(0.0, f64::max);
        let widest = studs.max(ties[i]);
        let found = format!(
            "in run '{name}' studs stand up to {} apart under board and ties up to {} under the sheet",
            subject.mm(studs),
            subject.mm(ties[i])
        );
        // Half a millimetre of layout is nobody's fault.
        answers
            .judge(most.allows(widest - 0.5), place, found)
            .about(name)
            .at_most(&most)
            .hint("write a closer 'trade.stud_spacing'");
    }
}

/// The widest step between neighbouring uprights that no opening lies in.
fn widest_between_studs(panel: &Panel) -> f64 {
    let mut middles: Vec<f64> = panel
        .uprights
        .iter()
        .map(|u| f64::midpoint(u.p0, u.p1))
        .collect();
    middles.sort_by(f64::total_cmp);
    let opened = |a: f64, b: f64| {
        let mut pieces = panel.crosspieces.iter();
        pieces.any(|c| c.p0 < b && a < c.p1)
    };
    let steps = middles.windows(2).filter(|w| !opened(w[0], w[1]));
    steps.map(|w| w[1] - w[0]).fold(0.0, f64::max)
}

/// In each run the widest step between what lies across under the sheet, that no cutout lies in.
fn widest_between_ties(subject: &Subject) -> Vec<f64> {
    let plan = subject.plan;
    let across = Asked {
        kinds: &[CrossingKind::Tie, CrossingKind::Trimmer],
        called: "tie",
        hint: "",
    };
    let half = plan.sizes.panel / 2.0;
    let runs = across.by_run(subject).into_iter().enumerate();
    runs.map(|(i, members)| {
        let framed = plan.runs[i].framed;
        let mut at = vec![framed.0 + half, framed.1 - half];
        at.extend(members.iter().map(|c| {
            let u = plan.crossings[c.index].u;
            f64::midpoint(u.0, u.1)
        }));
        let inside = plan.panels.iter().filter(|p| p.run == i);
        let bulkheads = inside.filter(|p| matches!(p.of, PanelOf::Bulkhead(_)));
        at.extend(bulkheads.map(|p| plan.runs[i].local(p.start).x + half));
        at.sort_by(f64::total_cmp);
        let cut = |a: f64, b: f64| {
            let mut cutouts = plan.cutouts.iter().filter(|c| c.run == i);
            cutouts.any(|c| c.u0 < b && a < c.u1)
        };
        let steps = at.windows(2).filter(|w| !cut(w[0], w[1]));
        steps.map(|w| w[1] - w[0]).fold(0.0, f64::max)
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    #[test]
    fn sixteen_inches_pass_and_twenty_four_fail() {
        // Makers of cement board: framing at most 16 in on centre. It holds or it does not, and nothing can be missing:
        // no caution, no `not checked`.
        let spaced = |inches: u32| {
            Trial::bare()
                .with("trade.stud_spacing", &format!("{inches} in"))
                .worst("frame-spacing")
        };
        assert_eq!(Trial::sound().worst("frame-spacing"), Verdict::Pass);
        let row = [12, 16, 20, 24].map(spaced);
        assert!(row.is_sorted(), "{row:?}");
        assert_eq!((row[1], row[3]), (Verdict::Pass, Verdict::Fail));
    }
}
