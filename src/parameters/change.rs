//! A change to a file as read, without touching its text: what one asks when one asks 'what if'.

use super::tree::{Content, Key, Node};

/// One key written otherwise, added, or left out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The key as findings spell it, such as `openings[2].sill`; an entry's name may stand for its number.
    pub key: String,
    /// The value as YAML; `None` leaves the key out.
    pub value: Option<String>,
}

impl Change {
    /// Writes a value at a key.
    pub fn write(key: &str, value: &str) -> Self {
        Self {
            key: key.to_owned(),
            value: Some(value.to_owned()),
        }
    }

    /// Leaves a key out.
    pub fn leave_out(key: &str) -> Self {
        Self {
            key: key.to_owned(),
            value: None,
        }
    }

    /// Makes the change; `value` is the tree of its value. A key that leads nowhere changes nothing.
    pub(super) fn make(&self, root: &mut Node, value: Option<Node>) {
        let steps = steps(&self.key);
        if let Some((last, way)) = steps.split_last() {
            let mut node = root;
            for step in way {
                match below(node, step) {
                    Some(next) => node = next,
                    None => return,
                }
            }
            put(node, last, value);
        }
    }
}

/// A step on the way to a key: a word, or an entry of a list by number from 1 or by name.
#[derive(Debug, PartialEq, Eq)]
enum Step {
    Word(String),
    Entry(String),
}

fn steps(key: &str) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut rest = key;
    while !rest.is_empty() {
        if let Some(inner) = rest.strip_prefix('[') {
            let (entry, after) = inner.split_once(']').unwrap_or((inner, ""));
            steps.push(Step::Entry(entry.to_owned()));
            rest = after;
        } else {
            rest = rest.strip_prefix('.').unwrap_or(rest);
            let end = rest.find(['.', '[']).unwrap_or(rest.len());
            if end == 0 {
                break;
            }
            steps.push(Step::Word(rest[..end].to_owned()));
            rest = &rest[end..];
        }
    }
    steps
}

/// The node of a step, made as an empty group where a word is not there yet.
fn below<'n>(node: &'n mut Node, step: &Step) -> Option<&'n mut Node> {
    match step {
        Step::Word(word) => slot(node, word),
        Step::Entry(entry) => {
            let Content::List(items) = &mut node.content else {
                return None;
            };
            let at = position(items, entry)?;
            items.get_mut(at)
        }
    }
}

/// The value of a word in a group, put there if it is not; what is no group becomes one.
fn slot<'n>(node: &'n mut Node, word: &str) -> Option<&'n mut Node> {
    let place = node.place.clone();
    if !matches!(node.content, Content::Map(_)) {
        node.content = Content::Map(Vec::new());
    }
    let Content::Map(entries) = &mut node.content else {
        return None;
    };
    let at = entries.iter().position(|(k, _)| k.word == word);
    let at = at.unwrap_or_else(|| {
        let key = Key {
            word: word.to_owned(),
            place: place.clone(),
        };
        let content = Content::Null;
        entries.push((key, Node { content, place }));
        entries.len() - 1
    });
    entries.get_mut(at).map(|entry| &mut entry.1)
}

fn position(items: &[Node], entry: &str) -> Option<usize> {
    if let Ok(number) = entry.parse::<usize>() {
        return number.checked_sub(1).filter(|n| *n < items.len());
    }
    let is_named = |item: &Node| {
        let Content::Map(entries) = &item.content else {
            return false;
        };
        entries.iter().any(|(k, v)| {
            k.word == "name" && matches!(&v.content, Content::Scalar(name) if name.trim() == entry)
        })
    };
    items.iter().position(is_named)
}

fn put(node: &mut Node, last: &Step, value: Option<Node>) {
    match (last, value) {
        (Step::Word(word), Some(value)) => {
            if let Some(kept) = slot(node, word) {
                kept.content = value.content;
            }
        }
        (Step::Word(word), None) => {
            if let Content::Map(entries) = &mut node.content {
                entries.retain(|(k, _)| k.word != *word);
            }
        }
        (Step::Entry(entry), value) => {
            if let Content::List(items) = &mut node.content
                && let Some(at) = position(items, entry)
            {
                match value {
                    Some(value) => items[at].content = value.content,
                    None => drop(items.remove(at)),
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::read_changed;
    use super::*;

    const FILE: &str = "runs:\n  - {name: cook, length: 6 ft, depth: 30 in}\nopenings:\n  - {name: low vent, sill: 5 in}\n  - {name: high vent, sill: 24 in}\n";

    fn changed(key: &str, value: Option<&str>) -> String {
        let change = Change {
            key: key.to_owned(),
            value: value.map(str::to_owned),
        };
        format!("{:?}", read_changed(FILE, &[change]).file)
    }

    #[test]
    fn a_change_reads_as_the_file_with_that_change() {
        let same = |key: &str, value: Option<&str>, text: &str| {
            // Places differ, so the values alone are compared.
            let plain = |s: String| {
                let parts = s
                    .split("Place {")
                    .map(|p| p.split_once('}').map_or(p, |x| x.1).to_owned());
                parts.collect::<String>()
            };
            assert_eq!(
                plain(changed(key, value)),
                plain(format!("{:?}", super::super::read(text).file)),
                "{key}"
            );
        };
        same(
            "openings[2].sill",
            Some("20 in"),
            &FILE.replace("24 in", "20 in"),
        );
        same(
            "openings[high vent].sill",
            Some("20 in"),
            &FILE.replace("24 in", "20 in"),
        );
        same(
            "openings[low vent]",
            None,
            &FILE.replace("  - {name: low vent, sill: 5 in}\n", ""),
        );
        same("runs[1].depth", None, &FILE.replace(", depth: 30 in", ""));
        same(
            "counter.overhang.seating",
            Some("10 in"),
            &format!("{FILE}counter: {{overhang: {{seating: 10 in}}}}\n"),
        );
        same("openings[7].sill", Some("1 in"), FILE);
        same(
            "runs[1].walls",
            Some("[left]"),
            &FILE.replace("depth: 30 in", "depth: 30 in, walls: [left]"),
        );
    }
}
