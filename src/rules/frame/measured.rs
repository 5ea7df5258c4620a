//! The frame as measured, for the rules that ask about it.

use crate::design::{AsBuilt, MeasuredRun};
use crate::diagnostics::Place;
use crate::plan::{FrameAsBuilt, RunAsBuilt};
use crate::rules::{Answers, Subject};

/// What was measured and what was made of it; says what is missing where nothing was.
pub(super) fn measured<'a>(
    subject: &Subject<'a>,
    answers: &mut Answers,
    unknown: &str,
) -> Option<(&'a AsBuilt, &'a FrameAsBuilt)> {
    let plan = subject.plan;
    let found = plan.design.as_built.as_ref().zip(plan.as_built.as_ref());
    if found.is_none() {
        answers.missing(&Place::default(), "as_built", unknown);
    }
    found
}

/// The runs that were measured, each with its shape; says which were not.
pub(super) fn runs<'a>(
    subject: &Subject<'a>,
    (as_built, frame): (&'a AsBuilt, &'a FrameAsBuilt),
    answers: &mut Answers,
) -> Vec<(&'a MeasuredRun, &'a RunAsBuilt)> {
    let mut found = Vec::new();
    for (run, built) in subject.plan.design.runs.iter().zip(&frame.runs) {
        let name = &run.name.value;
        if let Some(m) = built.measured.and_then(|m| as_built.runs.get(m)) {
            found.push((m, built));
        } else {
            let said = format!("run '{name}' was not measured");
            answers.missing(&as_built.place, "runs", said).about(name);
        }
    }
    found
}

/// The name of a measured run.
pub(super) fn name<'a>(subject: &Subject<'a>, measured: &MeasuredRun) -> &'a str {
    let run = subject.plan.design.runs.get(measured.run);
    run.map_or("", |r| r.name.value.as_str())
}
