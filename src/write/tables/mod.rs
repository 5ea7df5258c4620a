//! Tables as files and on the terminal. Every one of these prints the same cells: see [`crate::table::Cell::spelt`].

mod csv;
mod differences;
mod json;
mod text;
mod xlsx;

pub use self::csv::csv;
pub use self::differences::differences_text;
pub use self::json::tables_json;
pub use self::text::table_text;
pub use self::xlsx::{Book, XlsxError, xlsx};
