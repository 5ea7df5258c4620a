//! Ground and stability: does it stand.

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[];
