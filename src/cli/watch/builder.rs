//! Building whenever the file was saved: the picture at once, the page when nothing newer came meanwhile.

use super::source::known_by;
use super::state::State;
use crate::diagnostics::Finding;
use crate::pipeline::{self, TradeData};
use crate::write::{Report, findings_text};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;
use std::sync::mpsc::Receiver;
use std::time::Duration;

/// An editor that truncates and writes is given so much time between the two.
const SETTLES: Duration = Duration::from_millis(8);

/// A browser is given so much time to draw the picture before the page is built.
const DRAWS: Duration = Duration::from_millis(150);

/// Builds until nobody can say anything any more.
pub(super) fn run(state: &State, trade: &TradeData, heard: &Receiver<()>) {
    let mut last = None;
    while heard.recv().is_ok() {
        let mut is_stale = true;
        while is_stale {
            // Saves that come one upon the other are built once.
            while heard.recv_timeout(SETTLES).is_ok() {}
            let read = state.source.read();
            let is_known = last.as_ref() == Some(&read);
            is_stale = !is_known && step(state, trade, &read, heard);
            last = Some(read);
        }
    }
}

/// Builds what was read; true when something was saved meanwhile, and the page was not begun.
fn step(
    state: &State,
    trade: &TradeData,
    read: &Result<String, String>,
    heard: &Receiver<()>,
) -> bool {
    let text = match read {
        Ok(text) => text,
        Err(why) => {
            state.change(|now| now.report.clone_from(why));
            return false;
        }
    };
    let seen = known_by(text);
    let failed = |findings: Vec<Finding>| {
        let report = report(&state.source.name(), text, &findings);
        state.change(|now| {
            now.report = report;
            now.seen.clone_from(&seen);
        });
        false
    };
    match sound(|| pipeline::picture(text, trade)) {
        Err(findings) => return failed(findings),
        Ok(picture) => state.change(|now| {
            now.picture = Some(Arc::new(picture));
            now.report.clear();
            now.seen.clone_from(&seen);
        }),
    }
    // Whoever saves again does not wait for the rest; and the browser draws the picture meanwhile undisturbed.
    if heard.recv_timeout(DRAWS).is_ok() {
        return true;
    }
    match sound(|| pipeline::live_page(text, trade, &state.token)) {
        Err(findings) => failed(findings),
        Ok(page) => {
            state.change(|now| {
                now.page = Some(Arc::new(page));
                now.page_of = seen;
            });
            false
        }
    }
}

/// A build that stops by a fault of the program is told as one, and the server lives on.
fn sound<T>(build: impl FnOnce() -> Result<T, Vec<Finding>>) -> Result<T, Vec<Finding>> {
    catch_unwind(AssertUnwindSafe(build)).unwrap_or_else(|_| {
        let found = "the program has a fault and could not build this file";
        let finding = Finding::error("fault", &crate::diagnostics::Place::default(), found);
        Err(vec![finding.hint("report it with the parameter file")])
    })
}

fn report(name: &str, text: &str, findings: &[Finding]) -> String {
    let report = Report {
        path: name,
        source: text,
        findings,
        cautions: &[],
    };
    findings_text(&report, false)
}
