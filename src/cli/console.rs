//! Printing: a closed pipe is no reason to stop.

use super::outcome::Trouble;
use std::io::{IsTerminal, Write};

/// Prints to standard output.
pub(super) fn out(text: &str) {
    let mut stdout = std::io::stdout().lock();
    let _ = stdout.write_all(text.as_bytes());
    let _ = stdout.flush();
}

/// Prints to standard error.
pub(super) fn err(text: &str) {
    let _ = std::io::stderr().lock().write_all(text.as_bytes());
}

/// Prints why a command could not do its work.
pub(super) fn trouble(trouble: &Trouble) {
    err(&format!("error: {}\n", trouble.what));
    if !trouble.hint.is_empty() {
        err(&format!("  help: {}\n", trouble.hint));
    }
}

/// True when colours may be used on a stream.
pub(super) fn colours(stream: &impl IsTerminal) -> bool {
    stream.is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|v| v.is_empty())
}

/// How many characters a line of standard output holds; `None` when it is no terminal.
pub(super) fn width() -> Option<u16> {
    terminal_size::terminal_size_of(std::io::stdout()).map(|(width, _)| width.0)
}
