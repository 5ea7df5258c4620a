//! One value of a file written otherwise in its text, every other byte as it was.

use super::read::parsed;
use super::tree::{Content, Node};
use std::ops::Range;

/// A single value of a file and where it stands in the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Field {
    /// Its key as findings spell it, such as `openings[2].sill`.
    pub key: String,
    /// The value, without its quotes.
    pub text: String,
    /// Its bytes in the file, quotes included.
    pub span: Range<usize>,
}

/// Why a value is not rewritten.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotRewritten {
    /// The file cannot be read.
    Unreadable,
    /// There is no single value at the key.
    NoValue,
    /// The value is longer than one line of a file, or holds control characters.
    NoLine,
    /// Written there, the value would change something else: it stands behind an alias, or in several lines.
    Entangled,
}

impl NotRewritten {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Unreadable => "the file cannot be read as it is: mend it in the editor first",
            Self::NoValue => "the file has no single value at this key",
            Self::NoLine => "a value is one line of at most 200 letters",
            Self::Entangled => "the value is written in a way that only the editor can change",
        }
    }
}

/// A value has no more letters.
const LONGEST: usize = 200;

/// Every single value of a file in the order of the text; none where the file cannot be read.
pub fn fields(text: &str) -> Vec<Field> {
    let mut found = Vec::new();
    if let Some(node) = parsed(text) {
        collect(&node, "", &mut |key, node, value| {
            if let Some(span) = span_of(text, node, value) {
                found.push(Field {
                    key: key.to_owned(),
                    text: value.to_owned(),
                    span,
                });
            }
        });
    }
    found
}

/// The text with the value at a key written otherwise.
///
/// What comes out is read again: it must say the same as before but for this one value.
///
/// ```
/// use islandwright::parameters::rewritten;
/// let text = "runs:\n  - {name: cook, length: 6 ft}   # the grill's\n";
/// let longer = rewritten(text, "runs[1].length", "7' 6\"").unwrap();
/// assert_eq!(longer, "runs:\n  - {name: cook, length: 7' 6\"}   # the grill's\n");
/// ```
///
/// # Errors
/// When the file cannot be read, has no single value there, or the value cannot be changed without changing something else.
pub fn rewritten(text: &str, key: &str, value: &str) -> Result<String, NotRewritten> {
    let value = value.trim();
    if value.chars().count() > LONGEST || value.chars().any(char::is_control) {
        return Err(NotRewritten::NoLine);
    }
    let before = parsed(text).ok_or(NotRewritten::Unreadable)?;
    let all = fields(text);
    let field = all.iter().find(|f| f.key == key);
    let field = field.ok_or(NotRewritten::NoValue)?;
    let written = &text[field.span.clone()];
    let plain = !written.starts_with(['"', '\'']);
    let spellings = [
        plain.then(|| value.to_owned()),
        Some(format!(
            "\"{}\"",
            value.replace('\\', "\\\\").replace('"', "\\\"")
        )),
    ];
    let expected = said(&before, key, value);
    let tried = spellings.into_iter().flatten().map(|spelling| {
        let (head, tail) = (&text[..field.span.start], &text[field.span.end..]);
        format!("{head}{spelling}{tail}")
    });
    let mut sound =
        tried.filter(|new| parsed(new).is_some_and(|node| said(&node, "", "") == expected));
    sound.next().ok_or(NotRewritten::Entangled)
}

/// Every single value by its key, the one at `key` taken for `value`; empty groups and lists and nothings are there too.
fn said(node: &Node, key: &str, value: &str) -> Vec<(String, String)> {
    let mut all = Vec::new();
    collect_all(node, "", &mut |at, content| {
        let text = match content {
            Content::Scalar(_) if at == key && !key.is_empty() => format!("'{value}"),
            Content::Scalar(text) => format!("'{text}"),
            other => other.describe(),
        };
        all.push((at.to_owned(), text));
    });
    all
}

fn collect_all(node: &Node, key: &str, told: &mut impl FnMut(&str, &Content)) {
    told(key, &node.content);
    below(node, key, &mut |child, key| collect_all(child, &key, told));
}

fn collect(node: &Node, key: &str, told: &mut impl FnMut(&str, &Node, &str)) {
    if let Content::Scalar(text) = &node.content {
        told(key, node, text);
    }
    below(node, key, &mut |child, key| collect(child, &key, told));
}

fn below(node: &Node, key: &str, told: &mut dyn FnMut(&Node, String)) {
    match &node.content {
        Content::List(items) => {
            for (item, number) in items.iter().zip(1..) {
                told(item, format!("{key}[{number}]"));
            }
        }
        Content::Map(entries) => {
            for (word, value) in entries {
                let dot = if key.is_empty() { "" } else { "." };
                told(value, format!("{key}{dot}{}", word.word));
            }
        }
        Content::Null | Content::Scalar(_) => {}
    }
}

/// The bytes of a value, where they are those of the value alone and on one line.
fn span_of(text: &str, node: &Node, value: &str) -> Option<Range<usize>> {
    let place = &node.place;
    let line_start = match place.line.checked_sub(1)? {
        0 => 0,
        before => text.match_indices('\n').nth(before - 1)?.0 + 1,
    };
    let line = text[line_start..].split('\n').next()?;
    let offset = |chars: usize| {
        let mut ends = line.char_indices().map(|(i, _)| i).chain([line.len()]);
        ends.nth(chars)
    };
    let first = place.column.checked_sub(1)?;
    let start = offset(first)?;
    let rest = &line[start..];
    let end = match rest.chars().next()? {
        '"' => closing(rest, '"')?,
        '\'' => closing(rest, '\'')?,
        _ => value.len(),
    };
    let written = rest.get(..end)?;
    let is_its = written.starts_with(['"', '\'']) || written == value;
    is_its.then(|| line_start + start..line_start + start + end)
}

/// The length of a quoted text up to its closing quote.
fn closing(rest: &str, quote: char) -> Option<usize> {
    let mut letters = rest.char_indices().skip(1).peekable();
    while let Some((at, letter)) = letters.next() {
        if letter == '\\' && quote == '"' {
            letters.next();
        } else if letter == quote {
            let doubled = quote == '\'' && letters.peek().is_some_and(|(_, next)| *next == quote);
            if !doubled {
                return Some(at + letter.len_utf8());
            }
            letters.next();
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "# a garden\nproject: {title: 'Bob''s \"corner\"', units: imperial} # é\nruns:\r\n- name: cook\n  length: 10 ft      # long\n  depth: \"30\\\"\"\nlevels:\n  counter: &c 36 in\n  base_gap: *c\n";

    fn other(key: &str, value: &str) -> Result<String, NotRewritten> {
        rewritten(TEXT, key, value)
    }

    #[test]
    fn every_other_byte_stays() {
        assert_eq!(
            other("runs[1].length", "12' 6-1/2\"").unwrap(),
            TEXT.replace("10 ft ", "12' 6-1/2\" ")
        );
        assert_eq!(
            other("runs[1].depth", "24\"").unwrap(),
            TEXT.replace("\"30\\\"\"", "\"24\\\"\"")
        );
        assert_eq!(
            other("project.title", "Ann: corner # 2").unwrap(),
            TEXT.replace("'Bob''s \"corner\"'", "\"Ann: corner # 2\"")
        );
        assert_eq!(
            other("project.units", "metric").unwrap(),
            TEXT.replace("imperial", "metric")
        );
    }

    #[test]
    fn what_would_change_more_is_refused() {
        assert_eq!(other("runs[1].width", "1 ft"), Err(NotRewritten::NoValue));
        assert_eq!(other("runs", "1 ft"), Err(NotRewritten::NoValue));
        assert!(other("levels.base_gap", "2 in").is_err());
        assert!(other("levels.counter", "40 in").is_err());
        assert_eq!(other("runs[1].length", "1\n- x"), Err(NotRewritten::NoLine));
        assert_eq!(rewritten("a: [", "a", "1"), Err(NotRewritten::Unreadable));
        // What YAML would take for something else is put in quotes.
        let odd = other("runs[1].name", "{x: 1}").unwrap();
        assert!(odd.contains("name: \"{x: 1}\"\n"));
        assert!(other("runs[1].name", "").unwrap().contains("name: \"\"\n"));
    }
}
