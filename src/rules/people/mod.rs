//! People: can one work and sit at it.

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[];
