//! Heat and gas.

pub mod piping;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[];
