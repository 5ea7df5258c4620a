//! Rows and columns that any writer can print.

/// A table: a title, headings, and rows with as many cells as there are headings.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// A stem for file names and keys, such as `cut-list`.
    pub name: String,
    /// What it lists.
    pub title: String,
    /// One column a heading.
    pub columns: Vec<Column>,
    /// The rows.
    pub rows: Vec<Vec<Cell>>,
}

/// The heading of a column.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Column {
    /// What stands in it.
    pub heading: String,
    /// The unit of its numbers; empty for text and counts.
    pub unit: String,
}

/// One cell.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Cell {
    /// Nothing: not known, or not of meaning here.
    #[default]
    Empty,
    /// Text.
    Text(String),
    /// A number, printed with so many decimals.
    Number {
        /// The number, finite.
        value: f64,
        /// How many decimals are printed.
        decimals: u8,
    },
}

impl Column {
    /// A column of text or counts.
    pub fn plain(heading: &str) -> Self {
        Self::with_unit(heading, "")
    }

    /// A column of numbers with a unit.
    pub fn with_unit(heading: &str, unit: &str) -> Self {
        Self {
            heading: heading.to_owned(),
            unit: unit.to_owned(),
        }
    }
}

impl Cell {
    /// Text; nothing when it is empty.
    pub fn text(text: impl Into<String>) -> Self {
        let text = text.into();
        if text.is_empty() {
            Self::Empty
        } else {
            Self::Text(text)
        }
    }

    /// A whole number.
    pub fn count(count: impl Into<f64>) -> Self {
        Self::number(count.into(), 0)
    }

    /// A number; nothing when it is not finite.
    pub fn number(value: f64, decimals: u8) -> Self {
        if value.is_finite() {
            Self::Number { value, decimals }
        } else {
            Self::Empty
        }
    }
}
