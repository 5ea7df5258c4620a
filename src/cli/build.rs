//! `build`: everything that comes of a parameter file.

use super::args::{BuildArgs, Only};
use super::folder::Folder;
use super::outcome::{Outcome, Trouble};
use super::progress::Progress;
use super::{console, input, summary, trade};
use crate::diagnostics::{Finding, Verdict};
use crate::pipeline::{self, Options, TitleBlock};
use std::path::Path;

pub(super) fn run(args: &BuildArgs) -> Result<Outcome, Trouble> {
    let trade = trade::read(&args.trade)?;
    let input = input::read(&args.file)?;
    if let Some(outcome) = trade.say() {
        return Ok(outcome);
    }
    let title_block = match title_block(args.title_block.as_deref())? {
        Ok(form) => form,
        Err(outcome) => return Ok(outcome),
    };
    let tolerance = pipeline::tolerance(&args.tolerance).map_err(|e| Trouble::new(e, ""))?;
    let mut options = Options {
        tolerance,
        name: input.name.clone(),
        title_block,
        ..Options::default()
    };
    if !args.only.is_empty() {
        options.outputs = args.only.iter().copied().map(Only::output).collect();
    }
    let progress = Progress::new();
    let built = pipeline::build(&input.text, &trade.data, &options, &mut |s| {
        progress.stage(s.name());
    });
    let built = match built {
        Ok(built) => built,
        Err(findings) => {
            progress.finish();
            input.say(&findings);
            return Ok(trade.outcome(&findings));
        }
    };
    progress.stage("write");
    let stored = Folder::open(args.out.join(&input.stem))
        .and_then(|folder| folder.store(&input.name, &built.groups).map(|()| folder));
    let timings = progress.finish();
    let folder = stored?;
    let notable: Vec<Finding> = built
        .findings
        .iter()
        .filter(|f| f.verdict > Verdict::NotChecked)
        .cloned()
        .collect();
    input.say(&notable);
    console::out(&summary::table(folder.path(), &built.groups));
    if args.timings {
        console::err(&summary::timings(&timings));
    }
    Ok(trade.outcome(&built.findings))
}

/// Reads the form of the title block, where one is named. Gives the outcome when it cannot be used.
fn title_block(path: Option<&Path>) -> Result<Result<Option<TitleBlock>, Outcome>, Trouble> {
    let Some(path) = path else {
        return Ok(Ok(None));
    };
    let input = input::read(path)?;
    Ok(pipeline::title_block(&input.text)
        .map(Some)
        .map_err(|findings| {
            input.say(&findings);
            Outcome::Unusable
        }))
}
