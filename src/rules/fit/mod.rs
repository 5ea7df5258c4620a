//! Fit: does everything find its place.

mod flange_cover;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[&flange_cover::FLANGE_COVER];
