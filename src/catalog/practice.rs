//! Figures of practice that a check holds a design against and a drawing shows, in one place so that both say the same.
//! None of them is code.

/// Length of counter for one seat, published kitchen planning guidelines: 24 in, millimetres.
pub const SEAT: f64 = 609.6;
/// Counter lost beside an inside corner of two seating sides, where knees meet; common practice: 12 in, millimetres.
pub const SEAT_AT_INNER_CORNER: f64 = 304.8;
/// An inward corner of the slab rounder than this needs no bars; common practice: 1/2 in, millimetres.
pub const ROUND_INWARD_CORNER: f64 = 12.7;
/// From one shim under a sleeper to the next, at most; common practice: 24 in, millimetres.
pub const SHIMS_APART: f64 = 609.6;
