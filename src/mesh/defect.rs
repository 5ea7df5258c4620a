//! A part whose surface cannot be written.

use crate::geometry::Unsound;

/// Why a part has no sound surface: a fault of the program or of numbers beyond it, never hidden in a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Defect {
    /// The first part of that shape.
    pub mark: String,
    /// What is wrong.
    pub fault: Fault,
}

/// What is wrong with a part's surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// The surface does not close round the solid.
    Unsound(Unsound),
    /// The faces of the exact solid do not close round it.
    Open,
    /// Placed, its finest corners fall together in single precision, which model files use.
    TooFine,
}

impl std::fmt::Display for Defect {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "part {}: ", self.mark)?;
        match self.fault {
            Fault::Unsound(unsound) => unsound.fmt(f),
            Fault::Open => write!(f, "the faces of its exact solid do not close"),
            Fault::TooFine => write!(f, "its detail is finer than a model file can hold"),
        }
    }
}

impl std::error::Error for Defect {}
