//! Frame: does the steel hold.

pub mod steel;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[];
