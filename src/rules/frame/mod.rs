//! Frame: does the steel hold.

mod carried;
mod loading;
mod members;
mod screw_pull_out;
mod screw_shear;
pub mod steel;
mod tie_bending;
mod tie_deflection;
mod trimmer;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &tie_bending::TIE_BENDING,
    &tie_deflection::TIE_DEFLECTION,
    &trimmer::TRIMMER,
    &screw_shear::SCREW_SHEAR,
    &screw_pull_out::SCREW_PULL_OUT,
];
