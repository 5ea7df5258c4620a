//! The package round the model: what kinds of content it holds, and which of them is the model.

use super::document::Document;
use super::model;
use crate::write::archive::{ArchiveError, Entry, Keeping, archive};

const MODEL_PATH: &str = "3D/3dmodel.model";

const CONTENT_TYPES: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>
"#;

const RELATIONSHIPS: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>
"#;

/// Writes a document as a 3MF file.
///
/// # Errors
/// When it is beyond 4 GiB, which its archive cannot hold.
pub fn threemf(document: &Document) -> Result<Vec<u8>, ArchiveError> {
    let model = model::spell(document);
    let text = |name, text: &'static str| Entry {
        name,
        bytes: text.as_bytes(),
    };
    let entries = [
        text("[Content_Types].xml", CONTENT_TYPES),
        text("_rels/.rels", RELATIONSHIPS),
        Entry {
            name: MODEL_PATH,
            bytes: model.as_bytes(),
        },
    ];
    archive(&entries, Keeping::Deflated)
}
