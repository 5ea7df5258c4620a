//! What the builder and the server share.

use super::source::Source;
use crate::pipeline::Picture;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use tokio::sync::watch;

/// What can be given out, and who waits for news.
#[derive(Debug)]
pub(super) struct State {
    /// The file.
    pub(super) source: Source,
    /// What must come with every write.
    pub(super) token: String,
    now: Mutex<Now>,
    news: watch::Sender<u64>,
}

/// The last good island, and what is wrong with the file now.
#[derive(Clone, Debug, Default)]
pub(super) struct Now {
    /// The island of the last file that could be built.
    pub(super) picture: Option<Arc<Picture>>,
    /// The page of the last file that could be built.
    pub(super) page: Option<Arc<String>>,
    /// By which the text is known that was looked at last.
    pub(super) seen: String,
    /// By which the text is known that the page was built of.
    pub(super) page_of: String,
    /// The located report of what is wrong with the file; empty when it can be built.
    pub(super) report: String,
    /// What can be taken back: what the file said before each write, and by which the text after it is known.
    pub(super) undo: Vec<(String, String)>,
}

/// No more writes can be taken back.
const MOST_UNDO: usize = 200;

impl State {
    pub(super) fn new(source: Source, token: String) -> Self {
        Self {
            source,
            token,
            now: Mutex::default(),
            news: watch::Sender::new(0),
        }
    }

    fn lock(&self) -> MutexGuard<'_, Now> {
        self.now.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// What there is now.
    pub(super) fn now(&self) -> Now {
        self.lock().clone()
    }

    /// Changes what there is, and tells those who wait.
    pub(super) fn change(&self, change: impl FnOnce(&mut Now)) {
        change(&mut self.lock());
        self.news.send_modify(|n| *n += 1);
    }

    /// Remembers a write, so that it can be taken back.
    pub(super) fn remember(&self, before: String, after: String) {
        let mut now = self.lock();
        now.undo.push((before, after));
        let over = now.undo.len().saturating_sub(MOST_UNDO);
        now.undo.drain(..over);
    }

    /// Forgets the last write that was remembered.
    pub(super) fn forget(&self) {
        self.lock().undo.pop();
    }

    /// Hears of every change from now on.
    pub(super) fn listen(&self) -> watch::Receiver<u64> {
        self.news.subscribe()
    }
}
