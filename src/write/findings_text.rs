//! Findings as text for people, each with the line of the file it is about.

use super::Report;
use crate::diagnostics::{Finding, Verdict};
use annotate_snippets::{AnnotationKind, Level, Origin, Renderer, Snippet};
use std::fmt::Write;

/// How much of a long line is shown after the place.
const AROUND: usize = 60;

/// Beyond this column the beginning of a line is cut off here; before it the renderer does that better.
const FAR: usize = 2000;

/// Findings about a parameter file: a block for each that says something is wrong, one line for each key that is missing,
/// one for each pass, the cautions that stand over all, and a count. With `coloured`, terminal colours.
pub fn findings_text(report: &Report, coloured: bool) -> String {
    let (path, findings) = (report.path, report.findings);
    if findings.is_empty() {
        return String::new();
    }
    let renderer = if coloured {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let lines: Vec<&str> = report.source.lines().collect();
    let mut text = String::new();
    for finding in findings.iter().filter(|f| f.verdict > Verdict::NotChecked) {
        text.push_str(&block(&renderer, path, &lines, finding));
        text.push_str("\n\n");
    }
    text.push_str(&not_checked(findings));
    text.push_str(&passes(findings));
    for caution in report.cautions {
        let _ = writeln!(text, "{caution}");
    }
    let _ = writeln!(text, "{path}: {}", counts(findings));
    text
}

fn counts(findings: &[Finding]) -> String {
    let count = |verdict| findings.iter().filter(|f| f.verdict == verdict).count();
    let counts: Vec<String> = [
        Verdict::Error,
        Verdict::Fail,
        Verdict::Caution,
        Verdict::NotChecked,
        Verdict::Pass,
    ]
    .into_iter()
    .filter(|v| count(*v) > 0)
    .map(|v| format!("{} {}", count(v), v.word()))
    .collect();
    counts.join(", ")
}

/// The keys that are missing, each with the codes of what it keeps from being checked.
fn not_checked(findings: &[Finding]) -> String {
    let mut missing: Vec<(&str, Vec<&str>)> = Vec::new();
    for finding in findings.iter().filter(|f| f.verdict == Verdict::NotChecked) {
        let key = finding.place.key.as_str();
        match missing.iter_mut().find(|m| m.0 == key) {
            Some((_, codes)) if codes.contains(&finding.code) => {}
            Some((_, codes)) => codes.push(finding.code),
            None => missing.push((key, vec![finding.code])),
        }
    }
    if missing.is_empty() {
        return String::new();
    }
    let width = missing
        .iter()
        .map(|m| m.0.chars().count())
        .max()
        .unwrap_or(0);
    let mut text = "not checked, since the file does not say:\n".to_owned();
    for (key, codes) in missing {
        let _ = writeln!(text, "  {key:width$}  {}", codes.join(", "));
    }
    text.push('\n');
    text
}

fn passes(findings: &[Finding]) -> String {
    let mut text = String::new();
    for finding in findings.iter().filter(|f| f.verdict == Verdict::Pass) {
        let limit = if finding.limit.is_empty() {
            String::new()
        } else {
            format!(" ({})", finding.limit)
        };
        let _ = writeln!(text, "pass: {} [{}]{limit}", finding.found, finding.code);
    }
    if !text.is_empty() {
        text.push('\n');
    }
    text
}

fn block(renderer: &Renderer, path: &str, lines: &[&str], finding: &Finding) -> String {
    let level = match finding.verdict {
        Verdict::Error => Level::ERROR,
        Verdict::Fail => Level::ERROR.with_name("fail"),
        Verdict::Caution => Level::WARNING.with_name("caution"),
        Verdict::Pass | Verdict::NotChecked => Level::NOTE.with_name(finding.verdict.word()),
    };
    let title = level.primary_title(finding.found.as_str()).id(finding.code);
    let place = &finding.place;
    let line = place.line.checked_sub(1).and_then(|n| lines.get(n));
    let mut group = match line {
        Some(line) => {
            let window = Window::around(line, place.column, place.length);
            let marked = AnnotationKind::Primary.span(window.from..window.to);
            let snippet = Snippet::source(window.text)
                .line_start(place.line)
                .annotation(marked.label(place.key.clone()));
            if window.is_cut {
                // The renderer would count the column from where the line is cut.
                let origin = Origin::path(path.to_owned());
                let origin = origin.line(place.line).char_column(place.column);
                title.element(origin).element(snippet)
            } else {
                title.element(snippet.path(path.to_owned()))
            }
        }
        None => title.element(Origin::path(path.to_owned())),
    };
    if !finding.limit.is_empty() {
        let source = if finding.source.is_empty() {
            String::new()
        } else {
            format!(" ({})", finding.source)
        };
        group = group.element(
            Level::NOTE
                .with_name("limit")
                .message(format!("{}{source}", finding.limit)),
        );
    }
    if !finding.hint.is_empty() {
        group = group.element(Level::HELP.message(finding.hint.as_str()));
    }
    if let Some(remedy) = &finding.remedy {
        let level = Level::HELP.with_name("smallest change");
        group = group.element(level.message(remedy.spell()));
    }
    renderer.render(&[group])
}

/// The part of a line round the offending text, control characters made visible.
struct Window {
    text: String,
    from: usize,
    to: usize,
    /// True when the beginning of the line is left out.
    is_cut: bool,
}

impl Window {
    fn around(line: &str, column: usize, length: usize) -> Self {
        let start = column.saturating_sub(1);
        let skipped = if start > FAR { start - AROUND } else { 0 };
        let mut text = String::new();
        let (mut from, mut to) = (None, None);
        let end = start + length.clamp(1, AROUND);
        for (i, c) in line
            .chars()
            .enumerate()
            .skip(skipped)
            .take(FAR + 3 * AROUND)
        {
            if i == start {
                from = Some(text.len());
            }
            if i == end {
                to = Some(text.len());
            }
            text.push(visible(c));
        }
        let from = from.unwrap_or(text.len());
        let to = to.unwrap_or(text.len()).max(from);
        Self {
            text,
            from,
            to,
            is_cut: skipped > 0,
        }
    }
}

fn visible(c: char) -> char {
    match c {
        '\t' => ' ',
        c if c.is_control()
            || matches!(c, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}') =>
        {
            '\u{fffd}'
        }
        c => c,
    }
}
