//! What a PDF says of itself, and how its pages are told apart.

use super::page_pen::plain;
use crate::drawing::Sheet;
use krilla::destination::XyzDestination;
use krilla::geom::Point;
use krilla::metadata::{DateTime, Metadata, PageLayout};
use krilla::outline::{Outline, OutlineNode};
use krilla::page::{NumberingStyle, PageLabel};
use std::num::NonZeroU32;

/// For how long a PDF is made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PdfKind {
    /// To be printed.
    #[default]
    Plain,
    /// To be kept by an office: PDF/A-2b of ISO 19005-2, with its output intent and its description in XMP.
    Archive,
}

/// Sheets of one kind that follow on one another: a bookmark over theirs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chapter {
    /// What they show.
    pub title: String,
    /// The first of them, counted from 0; they go on to the next chapter.
    pub first: usize,
}

/// What a PDF says of itself; nothing of it comes from a clock or a machine.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PdfInfo {
    /// The document's title.
    pub title: String,
    /// What it is about.
    pub subject: String,
    /// By whom it was drawn; may be empty.
    pub author: String,
    /// When, as the file says it; only a date of the form `2026-03-01` is taken over.
    pub date: String,
    /// For how long it is made.
    pub kind: PdfKind,
    /// Bookmarks over those of the sheets, in the order of the sheets; none leaves the sheets' bookmarks alone.
    pub chapters: Vec<Chapter>,
}

/// The date of a PDF/A whose file names none that can be read: the library that writes it asks for one, and no clock is
/// read. It is the same in every such file and means nothing.
const NO_DATE: (u16, u8, u8) = (2000, 1, 1);

impl Chapter {
    /// The chapters that sheets say they belong to.
    pub fn of(sheets: &[&Sheet]) -> Vec<Self> {
        let mut chapters: Vec<Self> = Vec::new();
        for (first, sheet) in sheets.iter().enumerate() {
            if chapters.last().map_or("", |c| &c.title) != sheet.chapter {
                chapters.push(Self {
                    title: sheet.chapter.to_owned(),
                    first,
                });
            }
        }
        chapters
    }
}

impl PdfInfo {
    pub(super) fn metadata(&self) -> Metadata {
        let data = Metadata::new()
            .title(plain(&self.title))
            .description(plain(&self.subject))
            .creator("islandwright".to_owned())
            .producer("islandwright".to_owned())
            .language("en".to_owned())
            .page_layout(PageLayout::SinglePage);
        let data = if self.author.is_empty() {
            data
        } else {
            data.authors(vec![plain(&self.author)])
        };
        let usual = (self.kind == PdfKind::Archive).then_some(NO_DATE);
        match day(&self.date).or(usual) {
            Some((year, month, day)) => {
                data.creation_date(DateTime::new(year).month(month).day(day).utc_offset_hour(0))
            }
            None => data,
        }
    }

    /// A bookmark for each sheet, below that of its chapter where that has several.
    pub(super) fn bookmarks(&self, sheets: &[&Sheet]) -> Outline {
        let mut bookmarks = Outline::new();
        let leaves: Vec<_> = (sheets.iter().enumerate())
            .map(|(page, sheet)| leaf(page, sheet))
            .collect();
        let mut ends = self.chapters.iter().map(|c| c.first).skip(1);
        let mut rest = leaves.as_slice();
        let mut done = 0;
        let mut take = |until: usize| {
            let (now, later) = rest.split_at(until.saturating_sub(done).min(rest.len()));
            (done, rest) = (done + now.len(), later);
            now.to_vec()
        };
        let before = self.chapters.first().map_or(usize::MAX, |c| c.first);
        for leaf in take(before) {
            bookmarks.push_child(leaf);
        }
        for chapter in &self.chapters {
            let leaves = take(ends.next().unwrap_or(usize::MAX));
            let mut over =
                (leaves.len() > 1).then(|| node(&chapter.title, chapter.first).with_open(true));
            for leaf in leaves {
                match &mut over {
                    Some(over) => over.push_child(leaf),
                    None => bookmarks.push_child(leaf),
                }
            }
            if let Some(over) = over {
                bookmarks.push_child(over);
            }
        }
        bookmarks
    }
}

fn leaf(page: usize, sheet: &Sheet) -> OutlineNode {
    if sheet.number.is_empty() {
        return node(&sheet.title, page);
    }
    node(&format!("{} {}", sheet.number, sheet.title), page)
}

fn node(title: &str, page: usize) -> OutlineNode {
    OutlineNode::new(
        plain(title),
        XyzDestination::new(page, Point::from_xy(0.0, 0.0)),
    )
}

/// The label of a page: its sheet's number, or where it comes in the document.
pub(super) fn label(page: usize, sheet: &Sheet) -> PageLabel {
    if sheet.number.is_empty() {
        let number = u32::try_from(page + 1).ok().and_then(NonZeroU32::new);
        return PageLabel::new(Some(NumberingStyle::Arabic), None, number);
    }
    PageLabel::new(None, Some(plain(&sheet.number)), None)
}

/// Reads `2026-03-01`.
fn day(text: &str) -> Option<(u16, u8, u8)> {
    let mut parts = text.trim().split('-');
    let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
    let digits =
        |part: &str, count| part.len() == count && part.bytes().all(|b| b.is_ascii_digit());
    if parts.next().is_some() || !(digits(year, 4) && digits(month, 2) && digits(day, 2)) {
        return None;
    }
    let (year, month, day) = (year.parse().ok()?, month.parse().ok()?, day.parse().ok()?);
    let longest = match month {
        4 | 6 | 9 | 11 => 30,
        2 => 29,
        1..=12 => 31,
        _ => return None,
    };
    (1..=longest).contains(&day).then_some((year, month, day))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_whole_date_is_taken_over() {
        assert_eq!(day(" 2026-03-01 "), Some((2026, 3, 1)));
        for other in [
            "",
            "1 March",
            "2026",
            "2026-3-1",
            "2026-13-01",
            "2026-04-31",
            "2026-03-00",
            "2026-03-01-5",
            "+026-03-01",
        ] {
            assert_eq!(day(other), None, "{other}");
        }
    }
}
