//! Files from values: each format in one module that spells its own numbers. Nothing here touches the disk.

mod archive;
mod book;
mod dxf;
mod findings_json;
mod findings_text;
mod glb;
mod ical;
mod palette;
mod parts_list;
mod pdf;
mod pieces_list;
mod step;
mod stl;
mod svg;
mod tables;
mod template_index;
pub mod threemf;
mod usdz;
mod xml;

pub use self::archive::{ArchiveError, Entry, Keeping, archive};
pub use self::book::{
    Beside, BookError, BuildBook, Figure, Found, Input, InputGroup, IslandData, Leaf, Lists, Live,
    Shown, Tick, build_book, findings_fragment, island_data,
};
pub use self::dxf::dxf;
pub use self::findings_json::{Report, findings_json};
pub use self::findings_text::findings_text;
pub use self::glb::glb;
pub use self::ical::{Agenda, AgendaEvent, ical};
pub use self::parts_list::parts_list;
pub use self::pdf::{Chapter, PdfError, PdfInfo, PdfKind, pdf};
pub use self::pieces_list::pieces_list;
pub use self::step::{StepTitles, step};
pub use self::stl::{stl, stl_of};
pub use self::svg::svg;
pub use self::tables::{Book, XlsxError, csv, differences_text, table_text, tables_json, xlsx};
pub use self::template_index::template_index;
pub use self::threemf::threemf;
pub use self::usdz::usdz;
