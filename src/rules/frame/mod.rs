//! Frame: does the steel hold.

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[];
