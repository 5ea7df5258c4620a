//! The progress bar and the timings.

use crate::pipeline::Stage;
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use std::cell::RefCell;
use std::io::IsTerminal;
use std::time::{Duration, Instant};

/// What a build shows while it runs, and how long its stages took.
pub(super) struct Progress {
    bar: ProgressBar,
    began: RefCell<Vec<(&'static str, Instant)>>,
}

impl Progress {
    /// A bar on a terminal, nothing elsewhere.
    pub(super) fn new() -> Self {
        let target = if std::io::stderr().is_terminal() {
            ProgressDrawTarget::stderr()
        } else {
            ProgressDrawTarget::hidden()
        };
        let bar = ProgressBar::with_draw_target(Some(Stage::ALL.len() as u64 + 1), target);
        if let Ok(style) = ProgressStyle::with_template("{bar:30} {msg}") {
            bar.set_style(style);
        }
        Self {
            bar,
            began: RefCell::new(Vec::new()),
        }
    }

    /// A stage begins.
    pub(super) fn stage(&self, name: &'static str) {
        let mut began = self.began.borrow_mut();
        self.bar.set_position(began.len() as u64);
        self.bar.set_message(name);
        began.push((name, Instant::now()));
    }

    /// Everything is done: takes the bar away and gives the stages with their times.
    pub(super) fn finish(self) -> Vec<(&'static str, Duration)> {
        let end = Instant::now();
        self.bar.finish_and_clear();
        let began = self.began.into_inner();
        let ends = began.iter().skip(1).map(|(_, at)| *at).chain([end]);
        began
            .iter()
            .zip(ends)
            .map(|((name, at), end)| (*name, end.saturating_duration_since(*at)))
            .collect()
    }
}
