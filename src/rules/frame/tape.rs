//! Whether the tape readings of the frame agree.

use super::measured::{measured, name, runs};
use crate::design::{MeasuredRun, Taped};
use crate::plan::{FrameAsBuilt, RunAsBuilt, Suspect};
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};

pub(super) static TAPE: Rule = Rule {
    code: "frame-tape",
    family: Family::Frame,
    title: "The tape readings of the frame agree",
    about: About {
        checks: "Sides and diagonals of each measured run: six lengths of which five give the shape. It fails where one reading is likely wrong, names it and says what the others and the plan make it. It \
                 is not checked where a reading is missing.",
        why: "A tape hooked at the one-inch mark, or a foot misread, moves a corner of the counter's form by as much. Counter, forms and boards are cut by these figures.",
        reckoned: "Least squares; a reading's standard deviation is one division of the tape. Each reading in turn is left out, with the plan's lengths as weak readings beside the others (3/16 in for sides, 1/2 in \
                   for diagonals, common practice). Where that brings the sum of squares down by more than 10.83, 3.29 squared, the one that brings it down most is named and set aside (data snooping after Baarda, \
                   value from memory), but only where the readings disagree among themselves or all others then fall into place. One surplus length alone cannot tell which of the six is wrong: what tells it is how near the plan the frame is built. Where a second reading does nearly as well, both are named.",
        example: "10 ft by 30 in, a long side read as 9'-11\": the diagonals and the other side make it 10'. The reading is named, and as a slip of one inch.",
    },
    limits: &[],
    levers: &[],
    outside: &[
        Outside {
            what: "residuals and points by scipy.optimize.least_squares",
            origin: Origin::Library,
            test: "test_the_frame_is_the_one_that_scipy_fits",
        },
        Outside {
            what: "a tape hooked at the one-inch mark is one inch out: common practice",
            origin: Origin::Practice,
            test: "a_tape_hooked_at_the_one_inch_mark_is_named",
        },
    ],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let unknown = "whether the tape readings of the frame agree";
    let Some(both) = measured(subject, answers, unknown) else {
        return;
    };
    for (m, built) in runs(subject, both, answers) {
        let mut own = both.1.suspects.iter().filter(|s| s.run == m.run);
        if let Some(suspect) = own.next() {
            name_it(subject, m, suspect, answers);
        } else if m.lengths.iter().any(Option::is_none) {
            missing(subject, m, answers);
        } else {
            agrees(subject, (m, built), both.1, answers);
        }
    }
}

fn name_it(subject: &Subject, m: &MeasuredRun, suspect: &Suspect, answers: &mut Answers) {
    let run = name(subject, m);
    let place = m.lengths[suspect.taped as usize].as_ref();
    let place = place.map_or(&m.place, |l| &l.place);
    let slip = suspect.slip.map(|s| format!(", {}", s.words()));
    let found = format!(
        "the {} of run '{run}' reads {}; the others and the plan make it {}{}",
        suspect.taped.name(),
        subject.mm(suspect.read),
        subject.mm(suspect.others),
        slip.unwrap_or_default(),
    );
    let rival = suspect.rival.map(|(other, taped)| {
        let design = &subject.plan.design;
        format!(
            " The {} of run '{}' may as well be the wrong one: tape both.",
            taped.name(),
            design.runs[other].name.value
        )
    });
    let hint = format!(
        "tape it again; until then it is set aside.{} If it holds, the frame itself is off the plan there",
        rival.unwrap_or_default()
    );
    answers.fail(place, found).about(run).hint(hint);
}

fn missing(subject: &Subject, m: &MeasuredRun, answers: &mut Answers) {
    let run = name(subject, m);
    let count = m.lengths.iter().flatten().count();
    let pairs = Taped::ALL.into_iter().zip(&m.lengths);
    for taped in pairs.filter(|(_, l)| l.is_none()).map(|p| p.0) {
        let found = if count < 5 {
            format!(
                "the {} of run '{run}' is not known; with {count} of six lengths it has no shape and is taken as planned",
                taped.name()
            )
        } else {
            format!(
                "the {} of run '{run}' is not known; the other five give its shape, and nothing tells whether one is wrong",
                taped.name()
            )
        };
        answers.missing(&m.place, taped.key(), found).about(run);
    }
}

fn agrees(
    subject: &Subject,
    (m, built): (&MeasuredRun, &RunAsBuilt),
    frame: &FrameAsBuilt,
    answers: &mut Answers,
) {
    let run = name(subject, m);
    let residuals = built
        .lengths
        .iter()
        .filter_map(crate::plan::TapedLength::residual);
    let most = residuals.map(f64::abs).fold(0.0, f64::max);
    if !built.solved {
        let found = format!(
            "the six lengths of run '{run}' make no shape that can be reckoned; it is taken as planned"
        );
        answers
            .fail(&m.place, found)
            .about(run)
            .hint("tape the sides and both diagonals again");
        return;
    }
    let found = format!(
        "the readings of run '{run}' agree: none is changed by more than {}",
        subject.mm((most / frame.deviation * 16.0).ceil() / 16.0 * frame.deviation)
    );
    answers.pass(&m.place, found).about(run);
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-tape";
    /// 120 by 30 in: the diagonals are 123.69 in, 10'-3 11/16".
    const COOK: &str = "run: cook, working: WORKING, seating: 10 ft, left: 30 in, right: 30 in, diagonals: {from_working_left: 123.69 in, from_working_right: 123.69 in}";

    fn measured(working: &str) -> Trial {
        let run = COOK.replace("WORKING", working);
        Trial::sound().with("as_built", &format!("{{runs: [{{{run}}}]}}"))
    }

    #[test]
    fn a_tape_hooked_at_the_one_inch_mark_is_named() {
        let found = measured("10 ft 1 in").about(CODE, "cook");
        assert_eq!(found.verdict, Verdict::Fail);
        assert!(
            found.found.contains("working side") && found.found.contains("one whole inch too long"),
            "{found:?}"
        );
        assert!(found.found.contains("make it 10'-0\""), "{found:?}");
        assert!(found.place.key.ends_with("working"), "{found:?}");
        assert_eq!(measured("10 ft").about(CODE, "cook").verdict, Verdict::Pass);
        assert_eq!(
            measured("10 ft 1/16 in").about(CODE, "cook").verdict,
            Verdict::Pass
        );
    }

    // A reading is sound or likely wrong: a caution cannot come of it.
    #[test]
    fn what_was_not_taped_is_not_checked() {
        let trial = measured("10 ft").without("as_built.runs[1].right");
        let found = trial.about(CODE, "cook");
        assert_eq!(found.verdict, Verdict::NotChecked);
        assert!(found.place.key.ends_with("runs[1].right"), "{found:?}");
        // The bar run was not measured at all.
        assert_eq!(trial.about(CODE, "bar").verdict, Verdict::NotChecked);
        assert_eq!(
            Trial::sound().without("as_built").worst(CODE),
            Verdict::NotChecked
        );
    }
}
