//! Why a text is not a quantity.

/// Why a text is not a quantity; `hint` says what to write instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ParseError {
    /// What is wrong, in a short clause.
    pub problem: String,
    /// What would put it right.
    pub hint: String,
}

impl ParseError {
    pub(super) fn new(problem: impl Into<String>, hint: impl Into<String>) -> Self {
        Self {
            problem: problem.into(),
            hint: hint.into(),
        }
    }
}

impl std::fmt::Display for ParseError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}; {}", self.problem, self.hint)
    }
}

impl std::error::Error for ParseError {}
