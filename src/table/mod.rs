//! Rows and columns that any writer can print.

mod cells;

pub use cells::{Cell, Column, Table};
