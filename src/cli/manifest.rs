//! `manifest.json`: what the program wrote into a folder, so that it knows its own files again.

use crate::pipeline::{OutputFile, OutputGroup};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::path::{Component, Path};

/// Its name in the folder.
pub(super) const NAME: &str = "manifest.json";

/// What the program wrote.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Manifest {
    /// The program's name.
    pub(super) program: String,
    /// Its version.
    pub(super) version: String,
    /// The parameter file's bare name.
    pub(super) source: String,
    /// The files.
    pub(super) files: Vec<Entry>,
    /// Earlier files that a build was about to replace: there only when it was cut off.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) replacing: Vec<Entry>,
}

/// One file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Entry {
    /// Where, below the folder, its parts joined by `/`.
    pub(super) file: String,
    /// How many bytes.
    pub(super) bytes: usize,
    /// Their SHA-256 in hexadecimal.
    pub(super) sha256: String,
    /// What it is for.
    #[serde(default)]
    pub(super) about: String,
}

impl Entry {
    /// The entry of an output.
    pub(super) fn of(group: &OutputGroup, output: &OutputFile) -> Self {
        Self {
            file: output.path.clone(),
            bytes: output.bytes.len(),
            sha256: sha256(&output.bytes),
            about: group.about.to_owned(),
        }
    }

    /// True when its path stays below the folder: a manifest is input too.
    pub(super) fn stays_inside(&self) -> bool {
        let path = Path::new(&self.file);
        !self.file.is_empty() && path.components().all(|c| matches!(c, Component::Normal(_)))
    }
}

impl Manifest {
    /// A manifest of these files.
    pub(super) fn new(source: &str, files: Vec<Entry>, replacing: Vec<Entry>) -> Self {
        Self {
            program: env!("CARGO_PKG_NAME").to_owned(),
            version: env!("CARGO_PKG_VERSION").to_owned(),
            source: source.to_owned(),
            files,
            replacing,
        }
    }

    /// Reads one; `None` when it is not ours.
    pub(super) fn read(bytes: &[u8]) -> Option<Self> {
        let manifest: Self = serde_json::from_slice(bytes).ok()?;
        let mut all = manifest.files.iter().chain(&manifest.replacing);
        let ours = manifest.program == env!("CARGO_PKG_NAME") && all.all(Entry::stays_inside);
        ours.then_some(manifest)
    }

    /// Its text.
    pub(super) fn spell(&self) -> Vec<u8> {
        let mut text = serde_json::to_vec_pretty(self).unwrap_or_default();
        text.push(b'\n');
        text
    }

    /// True when a file with these contents was written by us.
    pub(super) fn knows(&self, file: &str, sha256: &str) -> bool {
        let mut all = self.files.iter().chain(&self.replacing);
        all.any(|e| e.file == file && e.sha256 == sha256)
    }
}

/// The SHA-256 of some bytes in hexadecimal.
pub(super) fn sha256(bytes: &[u8]) -> String {
    hexadecimal(&Sha256::digest(bytes))
}

/// Bytes in hexadecimal figures.
pub(super) fn hexadecimal(bytes: &[u8]) -> String {
    use std::fmt::Write;
    let mut text = String::with_capacity(2 * bytes.len());
    for byte in bytes {
        let _ = write!(text, "{byte:02x}");
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hash_is_the_one_of_the_standard() {
        // FIPS 180-2, appendix B.1: the message "abc".
        assert_eq!(
            sha256(b"abc"),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
    }

    #[test]
    fn a_manifest_that_points_outside_is_not_ours() {
        for file in ["../x", "/etc/x", "a/../../x", ""] {
            let entry = Entry {
                file: file.to_owned(),
                bytes: 0,
                sha256: String::new(),
                about: String::new(),
            };
            let manifest = Manifest::new("a.yaml", vec![entry], Vec::new());
            assert_eq!(Manifest::read(&manifest.spell()), None, "{file}");
        }
    }
}
