//! The drawing set: one PDF of all sheets, and each sheet as SVG and as DXF.

use super::{OutputFile, OutputGroup, file, svg_file, takeoff};
use crate::diagnostics::{Finding, Verdict};
use crate::drawing::{self, Sheet, Told};
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::write::{self, Chapter, PdfError, PdfInfo, PdfKind};

/// Draws the set and writes it in all formats.
/// Beside the files: what there is to say about the sheets.
///
/// # Errors
/// When the set cannot be written as a PDF.
pub fn outputs(
    plan: &Plan,
    assembly: &Assembly,
    told: &Told,
) -> Result<(OutputGroup, Vec<Finding>), Vec<Finding>> {
    written(plan, &drawing::sheets(plan, assembly, told))
}

/// The same of sheets that are drawn.
///
/// # Errors
/// When the set cannot be written as a PDF.
pub(super) fn written(
    plan: &Plan,
    sheets: &[Sheet],
) -> Result<(OutputGroup, Vec<Finding>), Vec<Finding>> {
    let lost = lost(plan, sheets);
    let sheets: Vec<&Sheet> = sheets.iter().collect();
    let info = info(plan, &sheets);
    // The PDF takes about as long as all other files.
    let (pdf, singles) = std::thread::scope(|scope| {
        let pdf = scope.spawn(|| write::pdf(&sheets, &info));
        let singles: Vec<_> = sheets.iter().flat_map(|sheet| single(sheet)).collect();
        (pdf.join(), singles)
    });
    let pdf = pdf.unwrap_or_else(|_| Err(PdfError::Library("its thread stopped".to_owned())));
    let pdf = pdf.map_err(|e| takeoff::fault("drawings-pdf", &e))?;
    let mut files = vec![file("drawings/drawing-set.pdf", pdf)];
    files.extend(singles);
    let group = OutputGroup {
        folder: "drawings",
        about: "the drawing set: drawing-set.pdf holds all sheets; each sheet as SVG and as DXF",
        files,
    };
    Ok((group, lost))
}

/// A caution where texts found no room on the paper.
fn lost(plan: &Plan, sheets: &[Sheet]) -> Vec<Finding> {
    let short: Vec<&Sheet> = sheets.iter().filter(|s| !s.lost.is_empty()).collect();
    let count: usize = short.iter().map(|s| s.lost.len()).sum();
    let Some(first) = short.first() else {
        return Vec::new();
    };
    let text = first.lost.first().map_or("", String::as_str);
    let others = match short.len() {
        1 => String::new(),
        more => format!(" and {} more", more - 1),
    };
    let found = format!(
        "{count} texts found no room on sheet '{}'{others}, '{text}' among them",
        first.title
    );
    let place = &plan.design.drawings.paper.place;
    vec![Finding {
        verdict: Verdict::Caution,
        ..Finding::error("drawings-small-paper", place, found)
            .hint("write a larger paper under drawings")
    }]
}

/// One sheet as files of its own.
fn single(sheet: &Sheet) -> [OutputFile; 2] {
    let path = |ending: &str| format!("drawings/{}.{ending}", sheet.name);
    [
        svg_file(path("svg"), sheet),
        file(&path("dxf"), write::dxf(sheet)),
    ]
}

fn info(plan: &Plan, sheets: &[&Sheet]) -> PdfInfo {
    let project = &plan.design.project;
    PdfInfo {
        title: format!("{}: drawing set", project.title),
        subject: "Plans, elevations, sections, details and schedules; print at 100 %".to_owned(),
        author: project.drawn_by.clone(),
        date: project.date.clone(),
        kind: PdfKind::Archive,
        chapters: Chapter::of(sheets),
    }
}
