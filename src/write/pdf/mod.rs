//! Sheets as a PDF.
//!
//! Layers are not carried over: the library that writes the format cannot write optional content (its own list of what it
//! holds to says so, clause 6.9 of PDF/A-2), and a page whose operators were marked behind its back could no longer be
//! checked by it. The SVG and the DXF of a sheet keep the layers apart.

mod document;
mod info;
mod page_pen;

pub use document::{PdfError, pdf};
pub use info::{Chapter, PdfInfo, PdfKind};
