//! Hearing of saves.

use crate::cli::outcome::Trouble;
use notify::{Event, EventKind, RecommendedWatcher, RecursiveMode, Watcher};
use std::path::Path;
use std::sync::mpsc::Sender;

/// Watches the folder of a file, since a watched file is lost when an editor renames another one over it. Watching ends when
/// what is given back is dropped.
pub(super) fn watch(file: &Path, said: Sender<()>) -> Result<RecommendedWatcher, Trouble> {
    let folder = file.parent().unwrap_or(Path::new("."));
    let own = file.file_name().map(std::ffi::OsStr::to_owned);
    let heard = move |event: notify::Result<Event>| {
        let is_ours = event.is_ok_and(|event| {
            let touches = event.paths.iter().any(|p| p.file_name() == own.as_deref());
            // Reading is no news, and the builder reads.
            touches
                && !matches!(
                    event.kind,
                    EventKind::Access(
                        notify::event::AccessKind::Open(_) | notify::event::AccessKind::Read
                    )
                )
        });
        if is_ours {
            let _ = said.send(());
        }
    };
    let cannot =
        |e: notify::Error| Trouble::new(format!("cannot watch {}: {e}", folder.display()), "");
    let mut watcher = notify::recommended_watcher(heard).map_err(cannot)?;
    watcher
        .watch(folder, RecursiveMode::NonRecursive)
        .map_err(cannot)?;
    Ok(watcher)
}
