//! What the YAML library says about a file that is no YAML, in words for people who build islands.

use super::tree::place_of;
use crate::diagnostics::{Finding, Place};

/// A piece of the library's message, what we say instead, and what would put it right.
const PHRASES: [(&str, &str, &str); 16] = [
    ("recursion limit", DEEP, DEEP_HINT),
    ("Depth {", DEEP, DEEP_HINT),
    ("Documents {", SECOND, SECOND_HINT),
    ("multiple", SECOND, SECOND_HINT),
    (
        "budget breached",
        "the file is far larger than a parameter file can be",
        "",
    ),
    (
        "recursive references",
        "an alias stands inside what it names",
        "write the values out instead",
    ),
    (
        "unknown anchor",
        "this alias names nothing",
        "put a text that begins with * in quotes",
    ),
    (
        "alias",
        "aliases repeat more than a parameter file can hold",
        "write the values out instead",
    ),
    (
        "tabs disallowed",
        "a tab stands where only spaces may",
        "indent with spaces",
    ),
    (
        "unclosed quote",
        "a quotation mark is never closed",
        "close it on the same line",
    ),
    (
        "mapping values are not allowed",
        "a colon stands where no key can be",
        "check the indentation; put a text that holds a colon in quotes",
    ),
    (
        "did not find expected ',' or",
        "before this a bracket is not closed, or a comma is missing",
        "close what was opened with { or [",
    ),
    (
        "did not find expected",
        "this does not go on from the line before",
        "check its indentation: keys of one group stand in one column",
    ),
    ("expected string scalar", "a key must be a single word", ""),
    (
        "unexpected character",
        "this character cannot stand in a parameter file",
        "delete it",
    ),
    (
        "invalid",
        "this value does not go with its tag",
        "take the tag with !! away",
    ),
];

const DEEP: &str = "the file is nested more than 32 deep";
const DEEP_HINT: &str = "no parameter file needs that: check its brackets";
const SECOND: &str = "a second document begins here";
const SECOND_HINT: &str = "keep one island in one file, and take the line --- away";

/// The finding for a file that is no YAML.
pub(super) fn finding(error: &serde_saphyr::Error) -> Finding {
    let place = error
        .location()
        .map_or_else(Place::default, |l| place_of(&l));
    let said = error.to_string();
    let known = PHRASES.iter().find(|(piece, ..)| said.contains(piece));
    let bare = said.split(" at line ").next().unwrap_or(&said);
    let (found, hint) = known.map_or_else(
        || (format!("this is not YAML: {bare}"), ""),
        |(_, found, hint)| ((*found).to_owned(), *hint),
    );
    Finding::error("not-yaml", &place, found).hint(hint)
}
