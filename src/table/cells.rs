//! A table as data.

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

    /// Its heading with its unit, such as `length [in]`.
    ///
    /// ```
    /// use islandwright::table::Column;
    /// assert_eq!(Column::with_unit("length", "in").title(), "length [in]");
    /// assert_eq!(Column::plain("mark").title(), "mark");
    /// ```
    pub fn title(&self) -> String {
        if self.unit.is_empty() {
            self.heading.clone()
        } else {
            format!("{} [{}]", self.heading, self.unit)
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

    /// What is printed: the text, or the number rounded to its decimals with a point; never `-0`.
    ///
    /// Every writer prints this, so that a number is the same wherever it is read.
    ///
    /// ```
    /// use islandwright::table::Cell;
    /// assert_eq!(Cell::number(2.345, 1).spelt(), "2.3");
    /// assert_eq!(Cell::number(-0.001, 2).spelt(), "0.00");
    /// assert_eq!(Cell::Empty.spelt(), "");
    /// ```
    pub fn spelt(&self) -> String {
        match self {
            Self::Empty => String::new(),
            Self::Text(text) => text.clone(),
            Self::Number { value, .. } if !value.is_finite() => String::new(),
            Self::Number { value, decimals } => {
                let text = format!("{value:.*}", usize::from(*decimals));
                let is_nothing = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
                match text.strip_prefix('-') {
                    Some(bare) if is_nothing => bare.to_owned(),
                    _ => text,
                }
            }
        }
    }

    /// The number as it is printed, rounded to its decimals; `None` for text and nothing.
    pub fn rounded(&self) -> Option<f64> {
        match self {
            Self::Number { .. } => self.spelt().parse().ok(),
            _ => None,
        }
    }
}
