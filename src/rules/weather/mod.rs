//! Weather and coats.

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[];
