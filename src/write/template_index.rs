//! The template's pages as JSON: which page shows what part of the counter, and where on the paper.

use crate::drawing::template::{TemplatePage, TemplateSet};
use serde::Serialize;

#[derive(Serialize)]
struct Index<'a> {
    /// Of every length in the file.
    units: &'static str,
    /// What `to_paper` means, for whoever opens the file.
    to_paper: &'static str,
    sets: Vec<Set<'a>>,
}

#[derive(Serialize)]
struct Set<'a> {
    name: &'a str,
    title: &'a str,
    pages: Vec<Page<'a>>,
}

#[derive(Serialize)]
struct Page<'a> {
    mark: &'a str,
    file: String,
    /// Counted from 1, as a print dialogue counts.
    #[serde(rename = "pdf_page")]
    sheet: usize,
    paper: [f64; 2],
    #[serde(flatten)]
    position: Option<Position>,
}

#[derive(Serialize)]
struct Position {
    window: [f64; 4],
    to_paper: [f64; 6],
    crosses: Vec<[f64; 2]>,
}

const TO_PAPER: &str = "[a, b, c, d, e, f]: the point (x, y) of the counter's plan lies a*x + c*y + e to the right \
     of and b*x + d*y + f above the lower left corner of the paper";

/// Lists all pages in the order in which the PDF holds them.
pub fn template_index(sets: &[TemplateSet]) -> String {
    let mut pdf_page = 0;
    let sets = sets
        .iter()
        .map(|set| Set {
            name: &set.name,
            title: &set.title,
            pages: set
                .pages
                .iter()
                .map(|page| {
                    pdf_page += 1;
                    entry(page, pdf_page)
                })
                .collect(),
        })
        .collect();
    let index = Index {
        units: "mm",
        to_paper: TO_PAPER,
        sets,
    };
    // Strings and finite numbers alone: nothing in it can fail to be written.
    serde_json::to_string_pretty(&index).unwrap_or_default() + "\n"
}

fn entry(page: &TemplatePage, pdf_page: usize) -> Page<'_> {
    Page {
        mark: &page.mark,
        file: format!("pages/{}.svg", page.sheet.name),
        sheet: pdf_page,
        paper: [page.sheet.paper.width.mm(), page.sheet.paper.height.mm()],
        position: page.position.as_ref().map(|p| Position {
            window: [
                p.window.low.x,
                p.window.low.y,
                p.window.high.x,
                p.window.high.y,
            ],
            to_paper: p.to_paper,
            crosses: p.crosses.iter().map(|c| [c.x, c.y]).collect(),
        }),
    }
}
