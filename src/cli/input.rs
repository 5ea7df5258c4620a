//! Reading a parameter file or a trade file from the disk.

use super::console;
use super::outcome::Trouble;
use crate::diagnostics::Finding;
use crate::pipeline;
use crate::write::{Report, findings_text};
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// Larger files are not parameter files.
const MOST_BYTES: u64 = 4 << 20;

/// A parameter file or a trade file read.
pub(super) struct Input {
    /// As it was named on the command line.
    pub(super) path: String,
    /// Its bare name.
    pub(super) name: String,
    /// Its bare name without the ending: the name of its output folder.
    pub(super) stem: String,
    /// Its text.
    pub(super) text: String,
}

impl Input {
    /// It with what was found about it.
    pub(super) fn report<'a>(
        &'a self,
        findings: &'a [Finding],
        cautions: &'a [String],
    ) -> Report<'a> {
        Report {
            path: &self.path,
            source: &self.text,
            findings,
            cautions,
        }
    }

    /// Says on standard error what was found about it.
    pub(super) fn say(&self, findings: &[Finding]) {
        let coloured = console::colours(&std::io::stderr());
        let cautions = pipeline::cautions(findings);
        console::err(&findings_text(&self.report(findings, &cautions), coloured));
    }
}

/// Reads the file, or says why it cannot be read.
pub(super) fn read(path: &Path) -> Result<Input, Trouble> {
    let shown = path.display().to_string();
    let cannot = |e: &std::io::Error| Trouble::new(format!("{shown} cannot be read: {e}"), "");
    let meta = std::fs::metadata(path).map_err(|e| cannot(&e))?;
    if meta.is_dir() {
        let hint = "name a file in it";
        return Err(Trouble::new(format!("{shown} is a folder"), hint));
    }
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(|e| cannot(&e))?;
    let mut most = file.take(MOST_BYTES + 1);
    most.read_to_end(&mut bytes).map_err(|e| cannot(&e))?;
    if bytes.len() as u64 > MOST_BYTES {
        let hint = "a parameter file has some hundred lines";
        return Err(Trouble::new(format!("{shown} is larger than 4 MiB"), hint));
    }
    let text = String::from_utf8(bytes).map_err(|e| {
        let valid = e.utf8_error().valid_up_to();
        let good = String::from_utf8_lossy(&e.as_bytes()[..valid]);
        let line = 1 + good.matches('\n').count();
        let hint = "save it as UTF-8 in your editor";
        Trouble::new(format!("{shown}: line {line} is not UTF-8 text"), hint)
    })?;
    let part = |p: Option<&std::ffi::OsStr>| p.and_then(|p| p.to_str()).map(str::to_owned);
    if let (Some(name), Some(stem)) = (part(path.file_name()), part(path.file_stem())) {
        Ok(Input {
            path: shown,
            name,
            stem,
            text,
        })
    } else {
        let what = format!("{shown} has a name that no folder can be named after");
        Err(Trouble::new(
            what,
            "give it a plain name such as kitchen.yaml",
        ))
    }
}
