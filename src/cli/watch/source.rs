//! The one file that is watched, read and written.

use crate::cli::manifest::sha256;
use crate::cli::outcome::Trouble;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};

/// Larger files are not parameter files.
const MOST_BYTES: u64 = 4 << 20;

/// The file by its path; nothing of a request ever becomes part of it.
#[derive(Clone, Debug)]
pub(super) struct Source {
    path: PathBuf,
}

/// Why the file could not be written.
#[derive(Debug)]
pub(super) enum NotWritten {
    /// It was changed meanwhile.
    Changed,
    /// The disk refused.
    Disk(std::io::Error),
}

impl From<std::io::Error> for NotWritten {
    fn from(error: std::io::Error) -> Self {
        Self::Disk(error)
    }
}

impl Source {
    /// The file, which need not be there yet; its folder must.
    pub(super) fn new(path: &Path) -> Result<Self, Trouble> {
        let named = std::path::absolute(path)
            .map_err(|e| Trouble::new(format!("cannot use {}: {e}", path.display()), ""))?;
        let folder = named.parent().filter(|f| f.is_dir());
        if folder.is_none() || named.file_name().is_none() || named.is_dir() {
            let what = format!("{} is not a file in a folder that is there", path.display());
            return Err(Trouble::new(what, "name the parameter file"));
        }
        Ok(Self { path: named })
    }

    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    /// Its bare name, for messages.
    pub(super) fn name(&self) -> String {
        let name = self.path.file_name().unwrap_or_default();
        name.to_string_lossy().into_owned()
    }

    /// Its text; why there is none, in a sentence.
    pub(super) fn read(&self) -> Result<String, String> {
        let name = self.name();
        let size = fs::metadata(&self.path).map_err(|e| format!("{name} cannot be read: {e}"))?;
        if size.len() > MOST_BYTES {
            return Err(format!("{name} is larger than 4 MiB"));
        }
        let bytes = fs::read(&self.path).map_err(|e| format!("{name} cannot be read: {e}"))?;
        String::from_utf8(bytes).map_err(|_| format!("{name} is not UTF-8 text"))
    }

    /// Puts a text in place of one that is there: written beside it, then renamed over it. A file that says anything else by
    /// then stays as it is.
    pub(super) fn replace(&self, before: &str, after: &str) -> Result<(), NotWritten> {
        // Behind a link the file itself is written, and the link stays.
        let place = fs::canonicalize(&self.path)?;
        let name = place.file_name().unwrap_or_default().to_string_lossy();
        let part = place.with_file_name(format!(".{name}.{}.part", std::process::id()));
        let written = (|| {
            let permissions = fs::metadata(&place)?.permissions();
            let mut file = fs::File::create(&part)?;
            file.write_all(after.as_bytes())?;
            file.set_permissions(permissions)?;
            file.sync_all()?;
            if fs::read(&place)? != before.as_bytes() {
                return Err(NotWritten::Changed);
            }
            fs::rename(&part, &place)?;
            Ok(())
        })();
        if written.is_err() {
            let _ = fs::remove_file(&part);
        }
        written
    }
}

/// By which a text is known again.
pub(super) fn known_by(text: &str) -> String {
    sha256(text.as_bytes())
}
