//! Frame: does the steel hold.

mod as_planned;
mod bare_racking;
mod carried;
mod header;
mod level;
mod loading;
mod measured;
mod members;
mod racking;
mod screw_pull_out;
mod screw_shear;
mod spacing;
mod square;
pub mod steel;
mod stud_column;
mod tape;
mod tie_bending;
mod tie_deflection;
mod tops;
mod trimmer;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &tie_bending::TIE_BENDING,
    &tie_deflection::TIE_DEFLECTION,
    &trimmer::TRIMMER,
    &header::HEADER,
    &stud_column::STUD_COLUMN,
    &screw_shear::SCREW_SHEAR,
    &screw_pull_out::SCREW_PULL_OUT,
    &racking::RACKING,
    &bare_racking::BARE_RACKING,
    &spacing::SPACING,
    &tape::TAPE,
    &square::SQUARE_RULE,
    &level::LEVEL_RULE,
    &as_planned::AS_PLANNED,
];
