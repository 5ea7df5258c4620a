//! Files from values: each format in one module that spells its own numbers. Nothing here touches the disk.

mod dxf;
mod pdf;
mod svg;

pub use self::dxf::dxf;
pub use self::pdf::{PdfError, PdfInfo, pdf};
pub use self::svg::svg;
