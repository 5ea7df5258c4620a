//! Sheets as one PDF: exact page sizes, vectors, lettering that can be searched, no clock.

use super::info::{PdfInfo, PdfKind, label};
use super::page_pen::{PagePen, pt};
use crate::drawing::{Sheet, lettering};
use krilla::configure::{Archival, ConfigurationBuilder};
use krilla::page::PageSettings;
use krilla::text::Font;
use krilla::{Document, SerializeSettings};

/// Why sheets could not be put into a PDF.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PdfError {
    /// A page whose size is zero, not finite or beyond what the format holds; the sheet's name.
    PageSize(String),
    /// The library that writes the format refused.
    Library(String),
}

impl std::fmt::Display for PdfError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::PageSize(sheet) => {
                write!(f, "sheet {sheet} has a size that no PDF page can have")
            }
            Self::Library(why) => write!(f, "the PDF could not be written: {why}"),
        }
    }
}

impl std::error::Error for PdfError {}

/// The largest page side of the format, points (ISO 32000-1, annex C).
const LARGEST: f64 = 14_400.0;

/// All sheets as the pages of one document, each with a bookmark and labelled by its number; the same sheets always give
/// the same bytes.
///
/// # Errors
/// When a sheet's size is not one that a page can have, or the library refuses.
pub fn pdf(sheets: &[&Sheet], info: &PdfInfo) -> Result<Vec<u8>, PdfError> {
    let font = Font::new(lettering::font_data().into(), 0)
        .ok_or_else(|| PdfError::Library("the font could not be read".to_owned()))?;
    let mut document = Document::new_with(settings(info.kind)?);
    for (i, sheet) in sheets.iter().enumerate() {
        let (width, height) = (sheet.paper.width.mm(), sheet.paper.height.mm());
        let size = PageSettings::from_wh(pt(width), pt(height))
            .filter(|_| f64::from(pt(width)) <= LARGEST && f64::from(pt(height)) <= LARGEST)
            .ok_or_else(|| PdfError::PageSize(sheet.name.clone()))?
            .with_page_label(label(i, sheet));
        let mut page = document.start_page_with(size);
        let mut surface = page.surface();
        let mut pen = PagePen {
            surface: &mut surface,
            font: &font,
            height,
            ink: sheet.ink,
            waiting: None,
        };
        sheet.items.iter().for_each(|item| pen.draw(item));
        pen.draw_waiting();
        surface.finish();
        page.finish();
    }
    if !sheets.is_empty() {
        document.set_outline(info.bookmarks(sheets));
    }
    document.set_metadata(info.metadata());
    document
        .finish()
        .map_err(|e| PdfError::Library(e.to_string()))
}

/// What the library is told to hold to.
fn settings(kind: PdfKind) -> Result<SerializeSettings, PdfError> {
    let builder = match kind {
        PdfKind::Plain => ConfigurationBuilder::new(),
        PdfKind::Archive => ConfigurationBuilder::new().with_archival_validator(Archival::A2_B),
    };
    let configuration = builder
        .finish()
        .map_err(|e| PdfError::Library(format!("{e:?}")))?;
    Ok(SerializeSettings {
        enable_tagging: false,
        configuration,
        ..SerializeSettings::default()
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::Paper;
    use crate::drawing::{Align, Dash, Item, Layer, Pen, Scale};
    use crate::geometry::{Outline as Curve, Point2, Vertex};
    use crate::units::Length;
    use crate::write::pdf::Chapter;

    fn sheet(width: f64, items: Vec<Item>) -> Sheet {
        Sheet {
            name: "sample".into(),
            title: "Sample \u{7}".into(),
            number: "T-1".into(),
            paper: Paper {
                width: Length::millimetres(width),
                height: Length::inches(11.0),
            },
            scale: Scale {
                factor: 1.0,
                name: "1:1".into(),
            },
            chapter: "",
            ink: crate::drawing::Ink::Black,
            items,
            lost: Vec::new(),
        }
    }

    fn items() -> Vec<Item> {
        let hole = Curve::rounded_rectangle(20.0, 30.0, 120.0, 90.0, 10.0);
        vec![
            Item::Path {
                layer: Layer::Cut,
                points: hole.vertices().to_vec(),
                closed: true,
                pen: Some(Pen::Heavy),
                dash: Dash::Phantom,
                fill: Some(0.9),
            },
            Item::Text {
                layer: Layer::Note,
                at: Point2::new(70.0, 60.0),
                text: "Ø 10 ± ½ \u{1F525} <b>&\n".into(),
                height: 3.5,
                align: Align::Centre,
                angle: 90.0,
            },
        ]
    }

    #[test]
    fn the_same_sheets_give_the_same_bytes() {
        let (first, second) = (sheet(215.9, items()), sheet(279.4, items()));
        let sheets = [&first, &second];
        let info = PdfInfo {
            title: "A <title> & more".into(),
            ..PdfInfo::default()
        };
        let first = pdf(&sheets, &info).unwrap();
        assert!(first.starts_with(b"%PDF-") && first.len() > 2000);
        assert_eq!(first, pdf(&sheets, &info).unwrap());
        let text = String::from_utf8_lossy(&first);
        // 8.5 × 11 in are 612 × 792 points exactly.
        assert!(
            text.contains("/MediaBox [0 0 612 792]") || text.contains("/MediaBox[0 0 612 792]"),
            "{text}"
        );
        assert!(!text.contains("CreationDate") && !text.contains("ModDate"));
    }

    #[test]
    fn a_size_no_page_can_have_is_refused_and_odd_items_are_harmless() {
        for width in [0.0, -5.0, f64::NAN, f64::INFINITY, 1e7] {
            let refused = pdf(&[&sheet(width, items())], &PdfInfo::default());
            assert_eq!(refused, Err(PdfError::PageSize("sample".into())), "{width}");
        }
        let point = Vertex::sharp(f64::NAN, 1.0);
        let odd = |points| Item::Path {
            layer: Layer::Cut,
            points,
            closed: true,
            pen: Some(Pen::Fine),
            dash: Dash::Solid,
            fill: None,
        };
        let one = Vertex::bent(1.0, 1.0, 1.0);
        let mut sheets = sheet(
            100.0,
            vec![
                odd(vec![]),
                odd(vec![one]),
                odd(vec![one, one]),
                odd(vec![one, point]),
            ],
        );
        sheets
            .items
            .extend(items().into_iter().map(|item| match item {
                Item::Text {
                    layer,
                    text,
                    height,
                    align,
                    angle,
                    ..
                } => Item::Text {
                    layer,
                    text,
                    height,
                    align,
                    angle,
                    at: Point2::new(f64::INFINITY, 0.0),
                },
                other @ (Item::Path { .. } | Item::Dimension(_)) => other,
            }));
        assert!(pdf(&[&sheets], &PdfInfo::default()).is_ok());
        assert!(pdf(&[], &PdfInfo::default()).is_ok());
    }

    /// What a letter that no font has, an empty number and a private sign do to a file that must hold to PDF/A.
    #[test]
    fn an_archive_holds_to_its_standard_whatever_is_lettered() {
        let mut unnumbered = sheet(215.9, items());
        unnumbered.number.clear();
        unnumbered.items.push(Item::Text {
            layer: Layer::Note,
            at: Point2::new(20.0, 20.0),
            text: "\u{E123} \u{1F525}\u{FE0F} \u{4E2D} ".repeat(40),
            height: 2.5,
            align: Align::Left,
            angle: 0.0,
        });
        let numbered = sheet(279.4, items());
        let sheets = [&unnumbered, &numbered, &numbered];
        let mut info = PdfInfo {
            kind: PdfKind::Archive,
            date: "2026-03-01".into(),
            chapters: vec![Chapter {
                title: "Plans \u{7}".into(),
                first: 1,
            }],
            ..PdfInfo::default()
        };
        let file = pdf(&sheets, &info).unwrap();
        assert_eq!(file, pdf(&sheets, &info).unwrap());
        let text = String::from_utf8_lossy(&file);
        for part in [
            "<pdfaid:part>2</pdfaid:part>",
            "<pdfaid:conformance>B</pdfaid:conformance>",
            "/GTS_PDFA1",
            "D:20260301000000",
            "/PageLabels",
            "(Plans  )",
        ] {
            assert!(text.contains(part), "no {part}");
        }
        info.date = "1 March".into();
        let dateless = pdf(&sheets, &info).unwrap();
        assert!(String::from_utf8_lossy(&dateless).contains("D:20000101000000"));
    }

    #[test]
    fn chapters_lose_no_page_and_one_of_a_single_page_is_that_page() {
        let one = sheet(215.9, items());
        let chapter = |title: &str, first| Chapter {
            title: title.into(),
            first,
        };
        // Which chapters of one, of two and of no page at all there are among three pages.
        for (firsts, over) in [
            (vec![], 0),
            (vec![0], 1),
            (vec![1], 1),
            (vec![2], 0),
            (vec![0, 2], 1),
            (vec![0, 0, 7], 1),
            (vec![1, 0], 1),
        ] {
            let info = PdfInfo {
                chapters: firsts.iter().map(|&first| chapter("Late", first)).collect(),
                ..PdfInfo::default()
            };
            let file = pdf(&[&one, &one, &one], &info).unwrap();
            let text = String::from_utf8_lossy(&file);
            assert_eq!(text.matches("(T-1 Sample  )").count(), 3, "{firsts:?}");
            assert_eq!(text.matches("(Late)").count(), over, "{firsts:?}");
        }
    }
}
