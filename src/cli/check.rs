//! `check`: everything that can be said about a parameter file without building.

use super::args::{CheckArgs, Format};
use super::outcome::{Outcome, Trouble};
use super::{console, input};
use crate::pipeline;
use crate::write::{findings_json, findings_text};

pub(super) fn run(args: &CheckArgs) -> Result<Outcome, Trouble> {
    let input = input::read(&args.file)?;
    let findings = pipeline::check(&input.text).err().unwrap_or_default();
    let text = match args.format {
        Format::Json => findings_json(&input.path, &input.text, &findings),
        Format::Text if findings.is_empty() => format!("{}: nothing wrong\n", input.path),
        Format::Text => {
            let coloured = console::colours(&std::io::stdout());
            findings_text(&input.path, &input.text, &findings, coloured)
        }
    };
    console::out(&text);
    Ok(Outcome::of(&findings))
}
