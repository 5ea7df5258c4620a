//! The table of codes.

use super::{Rule, fit, frame, gas, ground, people, services, slab, weather};

/// The rules of each family, in the order of the families.
pub static BY_FAMILY: [&[&Rule]; 8] = [
    fit::RULES,
    slab::RULES,
    frame::RULES,
    ground::RULES,
    gas::RULES,
    services::RULES,
    people::RULES,
    weather::RULES,
];

/// Every rule, family by family.
pub fn rules() -> impl Iterator<Item = &'static Rule> + Clone {
    BY_FAMILY.iter().flat_map(|family| family.iter().copied())
}
