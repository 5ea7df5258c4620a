//! Rows and columns that any writer can print.

/// A table: a title, headings, and rows with as many cells as there are headings.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// What it lists.
    pub title: String,
    /// One heading a column.
    pub headings: Vec<String>,
    /// The rows.
    pub rows: Vec<Vec<String>>,
}
