//! Reading a parameter file.

use super::cursor::Cursor;
use super::fault::Log;
use super::syntax;
use super::tree::{Content, Raw};
use super::{Change, File, TitleBlockFile, TradeFile};
use crate::diagnostics::{Finding, Place};
use serde::de::DeserializeOwned;
use serde_saphyr::options::{DuplicateKeyPolicy, MergeKeyPolicy, NonFiniteFloatPolicy};

/// What came of reading a file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reading<T = File> {
    /// The file as far as it could be read.
    pub file: T,
    /// False when nothing of the file could be read: then `file` says nothing about it.
    pub is_usable: bool,
    /// Everything that is wrong with its form; empty when nothing is.
    pub findings: Vec<Finding>,
}

/// Reads a parameter file and gives all errors of its form at once.
///
/// ```
/// let reading = islandwright::parameters::read("runs:\n  - name: cook\n    lenght: 6 ft\n");
/// assert_eq!(reading.findings[0].hint, "did you mean 'length'?");
/// ```
pub fn read(text: &str) -> Reading {
    read_as(text, &[])
}

/// Reads a parameter file as if some keys were written otherwise. Places are those of the file; a change whose value is
/// no YAML is not made.
pub fn read_changed(text: &str, changes: &[Change]) -> Reading {
    read_as(text, changes)
}

/// Reads a trade file and gives all errors of its form at once.
pub fn read_trade(text: &str) -> Reading<TradeFile> {
    read_as(text, &[])
}

/// Reads the form of a title block and gives all errors of its form at once.
pub fn read_title_block(text: &str) -> Reading<TitleBlockFile> {
    read_as(text, &[])
}

fn read_as<T: Default + DeserializeOwned>(text: &str, changes: &[Change]) -> Reading<T> {
    match parse(text) {
        Ok(raw) => {
            let mut node = raw.into_node(text);
            for change in changes {
                match &change.value {
                    None => change.make(&mut node, None),
                    Some(text) => {
                        if let Ok(raw) = parse(text) {
                            change.make(&mut node, Some(raw.into_node(text)));
                        }
                    }
                }
            }
            let log = Log::default();
            let is_group = matches!(node.content, Content::Map(_));
            let cursor = Cursor {
                node: &node,
                key: String::new(),
                log: &log,
            };
            if matches!(node.content, Content::Null) {
                log.put(empty());
            }
            let file = T::deserialize(cursor).unwrap_or_default();
            Reading {
                file,
                is_usable: is_group,
                findings: log.into_findings(),
            }
        }
        Err(finding) => Reading {
            findings: vec![*finding],
            ..Reading::default()
        },
    }
}

fn empty() -> Finding {
    Finding::error("empty-file", &Place::default(), "the file says nothing")
        .hint("'islandwright new FILE' writes a starter file to begin with")
}

fn parse(text: &str) -> Result<Raw, Box<Finding>> {
    if text.trim().is_empty() {
        return Err(Box::new(empty()));
    }
    let options = serde_saphyr::options! {
        budget: serde_saphyr::budget! {
            max_depth: 32,
            flow_nesting_limit: 32,
            max_nodes: 200_000,
            max_events: 500_000,
            max_aliases: 1_000,
            max_anchors: 1_000,
            max_documents: 1,
            max_total_scalar_bytes: 8 << 20,
        },
        alias_limits: serde_saphyr::alias_limits! {
            max_total_replayed_events: 20_000,
            max_replay_stack_depth: 8,
        },
        duplicate_keys: DuplicateKeyPolicy::PassThrough,
        merge_keys: MergeKeyPolicy::AsOrdinary,
        non_finite_float_policy: NonFiniteFloatPolicy::PassThrough,
        with_snippet: false,
    };
    serde_saphyr::from_str_with_options(text, options)
        .map_err(|error| Box::new(syntax::finding(&error)))
}

/// The tree of a file; `None` where it is no YAML.
pub(super) fn parsed(text: &str) -> Option<super::tree::Node> {
    parse(text).ok().map(|raw| raw.into_node(text))
}

/// The tree alone, for tests.
#[cfg(test)]
pub(super) fn tree(text: &str) -> Option<super::tree::Node> {
    parse(text).ok().map(|raw| raw.into_node(text))
}
