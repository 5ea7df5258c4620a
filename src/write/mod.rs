//! Files from values: each format in one module that spells its own numbers. Nothing here touches the disk.

mod svg;

pub use self::svg::svg;
