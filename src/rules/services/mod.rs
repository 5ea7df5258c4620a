//! Electricity and water.

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[];
