//! Where in the parameter file something stands.

/// A place in the parameter file: line and column counted from 1, and the key it belongs to.
///
/// The value `Place::default()` has no line: a value that came from a default and not from the file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct Place {
    /// The line, from 1; 0 when the value is not in the file.
    pub line: usize,
    /// The column in characters, from 1; 0 when the value is not in the file.
    pub column: usize,
    /// How many characters the offending text has; 0 when unknown.
    pub length: usize,
    /// The key, such as `openings[2].sill`.
    pub key: String,
}

impl Place {
    /// True when the value stands in the file.
    pub fn is_known(&self) -> bool {
        self.line > 0
    }

    /// This place where it stands in the file, else another one: a value that was left out is said at its entry.
    pub fn or<'a>(&'a self, entry: &'a Self) -> &'a Self {
        if self.is_known() { self } else { entry }
    }
}
