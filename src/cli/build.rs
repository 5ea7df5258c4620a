//! `build`: everything that comes of a parameter file.

use super::args::{BuildArgs, Only};
use super::folder::Folder;
use super::outcome::{Outcome, Trouble};
use super::progress::Progress;
use super::{console, input, summary};
use crate::diagnostics::{Finding, Verdict};
use crate::pipeline::{self, Options, Product};
use crate::write::findings_text;

pub(super) fn run(args: &BuildArgs) -> Result<Outcome, Trouble> {
    let input = input::read(&args.file)?;
    let only: Vec<Product> = if args.only.is_empty() {
        Product::ALL.to_vec()
    } else {
        args.only.iter().copied().map(Only::product).collect()
    };
    let progress = Progress::new();
    let options = Options {
        only: &only,
        tolerance: args.tolerance,
        on_stage: &|stage| progress.stage(stage),
    };
    let built = pipeline::build(&input.text, &input.name, &options);
    let built = match built {
        Ok(built) => built,
        Err(findings) => {
            progress.finish();
            say(&input, &findings);
            return Ok(Outcome::of(&findings));
        }
    };
    progress.stage("write");
    let folder = Folder::open(args.out.join(&input.stem))?;
    folder.store(&input.name, &built.outputs, &only)?;
    let timings = progress.finish();
    let notable: Vec<Finding> = built
        .findings
        .iter()
        .filter(|f| f.verdict > Verdict::NotChecked)
        .cloned()
        .collect();
    say(&input, &notable);
    console::out(&summary::table(folder.path(), &built.outputs));
    if args.timings {
        console::err(&summary::timings(&timings));
    }
    Ok(Outcome::of(&built.findings))
}

fn say(input: &input::Input, findings: &[Finding]) {
    let coloured = console::colours(&std::io::stderr());
    console::err(&findings_text(&input.path, &input.text, findings, coloured));
}
