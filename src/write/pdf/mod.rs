//! Sheets as a PDF.

mod document;
mod page_pen;

pub use document::{PdfError, PdfInfo, pdf};
