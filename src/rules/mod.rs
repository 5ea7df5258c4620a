//! The checks: does it hold, does it fit, is it safe. One rule a file, one table of codes.
//!
//! A [`Rule`] asks one question of a planned design and gives at least one answer: it holds, it holds with a warning, it
//! does not hold, or it could not be checked because the file does not say what it needs.

mod answers;
mod around;
mod bound;
mod check;
mod fit;
mod frame;
mod gas;
mod ground;
mod loads;
mod page;
mod people;
mod remedy;
mod rule;
mod services;
mod slab;
mod subject;
mod table;
#[cfg(test)]
mod trial;
mod weather;

pub use answers::{Answer, Answers};
pub use bound::Bound;
pub use check::{ask, check, limits, rule};
pub use frame::steel;
pub use gas::piping;
pub use loads::Load;
pub use page::{explain, list, page};
pub use remedy::{WhatIf, remedy};
pub use rule::{About, Family, Limit, Origin, Outside, Rule};
pub use subject::Subject;
pub use table::{BY_FAMILY, rules};
