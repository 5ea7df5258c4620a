//! The output folder: everything is written beside its place and renamed, and nothing foreign is touched.

use super::manifest::{Entry, Manifest, NAME, sha256};
use super::outcome::Trouble;
use crate::pipeline::{OutputFile, OutputGroup};
use std::fs::{self, OpenOptions};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

/// A folder that builds are written into, and what earlier builds wrote there.
pub(super) struct Folder {
    path: PathBuf,
    earlier: Option<Manifest>,
}

/// A file written beside its place, waiting to be renamed.
struct Waiting {
    part: PathBuf,
    place: PathBuf,
}

impl Folder {
    /// Looks at a folder; it need not exist yet.
    pub(super) fn open(path: PathBuf) -> Result<Self, Trouble> {
        let manifest = path.join(NAME);
        let earlier = match read(&manifest)? {
            None => None,
            Some(bytes) => Some(Manifest::read(&bytes).ok_or_else(|| {
                let what = format!("{} was not written by this program", manifest.display());
                Trouble::new(
                    what,
                    "move it away, or build into another folder with --out",
                )
            })?),
        };
        Ok(Self { path, earlier })
    }

    /// Where it is.
    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    /// Writes all outputs or none, takes stale ones of the same groups away, and brings the manifest up to date.
    pub(super) fn store(&self, source: &str, groups: &[OutputGroup]) -> Result<(), Trouble> {
        let outputs = || {
            groups
                .iter()
                .flat_map(|g| g.files.iter().map(move |f| (g, f)))
        };
        let fresh: Vec<_> = outputs().map(|(g, f)| Entry::of(g, f)).collect();
        let mut changed = Vec::new();
        for ((_, output), entry) in outputs().zip(&fresh) {
            if self.must_write(entry)? {
                changed.push(output);
            }
        }
        let earlier = self.earlier.as_ref().map_or(&[][..], |m| &m.files);
        let interrupted = self.earlier.as_ref().map_or(&[][..], |m| &m.replacing);
        let gone = |e: &Entry| fresh.iter().all(|f| f.file != e.file);
        let built = |e: &Entry| groups.iter().any(|g| is_of(&e.file, g));
        let kept = earlier.iter().filter(|e| gone(e) && !built(e)).cloned();
        let stale: Vec<_> = earlier
            .iter()
            .chain(interrupted)
            .filter(|e| gone(e) && built(e))
            .cloned()
            .collect();
        let mut files: Vec<_> = kept.chain(fresh.iter().cloned()).collect();
        files.sort_by(|a, b| a.file.cmp(&b.file));
        let last = Manifest::new(source, files, Vec::new());
        if changed.is_empty() && self.earlier.as_ref() == Some(&last) {
            return Ok(());
        }
        let mut waiting = Vec::new();
        let result = self.write_all(&changed, &mut waiting).and_then(|()| {
            // Between here and the end both the old and the new files are known as ours.
            let replacing = earlier.iter().chain(interrupted).cloned().collect();
            let between = Manifest::new(source, last.files.clone(), replacing);
            self.write_manifest(&between)?;
            waiting
                .drain(..)
                .try_for_each(|w| rename(&w.part, &w.place))
        });
        for w in &waiting {
            let _ = fs::remove_file(&w.part);
        }
        result?;
        for entry in &stale {
            self.take_away(entry);
        }
        self.write_manifest(&last)
    }

    /// True when the place of an output is free or holds an earlier one of ours; false when it holds these very
    /// bytes already.
    fn must_write(&self, entry: &Entry) -> Result<bool, Trouble> {
        let place = self.path.join(&entry.file);
        let Some(bytes) = read(&place)? else {
            return Ok(true);
        };
        let found = sha256(&bytes);
        if found == entry.sha256 {
            return Ok(false);
        }
        let ours = self
            .earlier
            .as_ref()
            .is_some_and(|m| m.knows(&entry.file, &found));
        if ours {
            return Ok(true);
        }
        let what = format!(
            "{} was not written by this program, or was changed since",
            place.display()
        );
        Err(Trouble::new(
            what,
            "move it away, or build into another folder with --out",
        ))
    }

    fn write_all(
        &self,
        outputs: &[&OutputFile],
        waiting: &mut Vec<Waiting>,
    ) -> Result<(), Trouble> {
        for output in outputs {
            let place = self.path.join(&output.path);
            waiting.push(write_beside(&place, &output.bytes)?);
        }
        Ok(())
    }

    fn write_manifest(&self, manifest: &Manifest) -> Result<(), Trouble> {
        let place = self.path.join(NAME);
        let waiting = write_beside(&place, &manifest.spell())?;
        rename(&waiting.part, &waiting.place)
    }

    /// Removes an earlier output of ours if nobody changed it since, and folders that it leaves empty.
    fn take_away(&self, entry: &Entry) {
        let place = self.path.join(&entry.file);
        let same = matches!(read(&place), Ok(Some(bytes)) if sha256(&bytes) == entry.sha256);
        if !same || fs::remove_file(&place).is_err() {
            return;
        }
        let mut folder = place.parent();
        while let Some(path) = folder.filter(|p| *p != self.path) {
            if fs::remove_dir(path).is_err() {
                return;
            }
            folder = path.parent();
        }
    }
}

fn is_of(file: &str, group: &OutputGroup) -> bool {
    file.split('/').next() == Some(group.folder)
}

/// The bytes of a file; `None` when there is none.
fn read(path: &Path) -> Result<Option<Vec<u8>>, Trouble> {
    match fs::symlink_metadata(path) {
        Ok(meta) if meta.is_file() => {}
        Ok(_) => {
            let what = format!("{} is not a plain file", path.display());
            return Err(Trouble::new(
                what,
                "move it away, or build into another folder with --out",
            ));
        }
        Err(e) if e.kind() == ErrorKind::NotFound => return Ok(None),
        Err(e) => return Err(cannot("looked at", path, &e)),
    }
    fs::read(path)
        .map(Some)
        .map_err(|e| cannot("read", path, &e))
}

/// Writes bytes into a new file beside their place.
fn write_beside(place: &Path, bytes: &[u8]) -> Result<Waiting, Trouble> {
    let folder = place.parent().unwrap_or(Path::new("."));
    fs::create_dir_all(folder).map_err(|e| cannot("made", folder, &e))?;
    let name = place.file_name().unwrap_or_default().to_string_lossy();
    let part = folder.join(format!(".{name}.{}.part", std::process::id()));
    let mut file = OpenOptions::new()
        .write(true)
        .create_new(true)
        .open(&part)
        .map_err(|e| cannot("written", &part, &e))?;
    if let Err(e) = file.write_all(bytes) {
        let _ = fs::remove_file(&part);
        return Err(cannot("written", place, &e));
    }
    Ok(Waiting {
        part,
        place: place.to_owned(),
    })
}

fn rename(part: &Path, place: &Path) -> Result<(), Trouble> {
    fs::rename(part, place).map_err(|e| {
        let _ = fs::remove_file(part);
        cannot("written", place, &e)
    })
}

fn cannot(done: &str, path: &Path, error: &std::io::Error) -> Trouble {
    let hint =
        "check the folder's permissions and the room on the disk, or choose another with --out";
    Trouble::new(
        format!("{} cannot be {done}: {error}", path.display()),
        hint,
    )
}
