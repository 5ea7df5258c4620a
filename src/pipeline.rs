//! The stages composed: from the text of a parameter file to the files that are written. No domain logic here.

mod book;
mod checks;
mod drawings;
mod figures;
mod live;
mod models;
mod pour;
mod scale_model;
mod site;
mod takeoff;
mod workshop;

pub use checks::{cautions, codes, examine, explain, rule_list, rule_page, with_remedies};
pub use drawings::outputs as drawing_set;
pub use live::{Picture, inputs, live_page, picture};
pub use models::outputs as models;
pub use pour::{PourAsked, PourPlanned, pour, pour_moment};
pub use site::{reckon as reckon_site, told};
pub use takeoff::{Reckoned, reckon};

pub use crate::catalog::TradeData;
use crate::design::{self, Design};
pub use crate::design::{TITLE_BLOCK, TitleBlock, add_trade, shipped_trade, title_block};
use crate::diagnostics::{Finding, in_order};
use crate::drawing::{self, Sheet, template};
use crate::parts;
use crate::plan::{self, Plan};
pub use crate::table::Table;
use crate::units::{Length, parse_length};
use crate::write::{self, PdfError, PdfInfo};

/// A step of the work, in the order it is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// The file read and resolved.
    Read,
    /// Everything given its place.
    Plan,
    /// Everything made a solid.
    Parts,
    /// The rules.
    Checks,
    /// Ground, setting out, pour and order of work.
    Site,
    /// Models.
    Models,
    /// The drawing set.
    Drawings,
    /// The counter template.
    Template,
    /// Quantities, cut lists and what to buy.
    Takeoff,
    /// The printable scale model.
    ScaleModel,
}

impl Stage {
    /// All stages in order.
    pub const ALL: [Self; 10] = [
        Self::Read,
        Self::Plan,
        Self::Parts,
        Self::Checks,
        Self::Site,
        Self::Models,
        Self::Drawings,
        Self::Template,
        Self::Takeoff,
        Self::ScaleModel,
    ];

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Plan => "plan",
            Self::Parts => "parts",
            Self::Models => "models",
            Self::Drawings => "drawings",
            Self::Template => "template",
            Self::Takeoff => "takeoff",
            Self::ScaleModel => "scale model",
            Self::Checks => "checks",
            Self::Site => "site",
        }
    }
}

/// What `build` can be told to write.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Output {
    /// STL models and the list of parts.
    Models,
    /// The drawing set as PDF, SVG and DXF.
    Drawings,
    /// The full-size counter template.
    Template,
    /// Quantities, cut lists, what to buy, workshop sheets and labels.
    Takeoff,
    /// The printable scale model.
    ScaleModel,
    /// Ground, setting out, pour and order of work as tables and a calendar.
    Site,
    /// What the checks found, as text and JSON.
    Checks,
    /// One page that shows it all.
    Book,
}

impl Output {
    /// All outputs.
    pub const ALL: [Self; 8] = [
        Self::Models,
        Self::Drawings,
        Self::Template,
        Self::Takeoff,
        Self::ScaleModel,
        Self::Site,
        Self::Checks,
        Self::Book,
    ];
}

/// How to build.
#[derive(Clone, Debug, PartialEq)]
pub struct Options {
    /// What to write.
    pub outputs: Vec<Output>,
    /// How far a chord of a mesh may lie from its curve.
    pub tolerance: Length,
    /// The bare name of the parameter file, as the outputs name it.
    pub name: String,
    /// The form of the title block; `None` for the one that comes with the program.
    pub title_block: Option<TitleBlock>,
    /// What the page of the live view has beside the build book's; `None` for the build book.
    pub live: Option<write::Live>,
}

impl Default for Options {
    /// Everything, chords within 0.02 mm: then the mesh of a bent steel section has its volume to a thousandth.
    fn default() -> Self {
        Self {
            outputs: Output::ALL.to_vec(),
            tolerance: Length::millimetres(0.02),
            name: "island.yaml".to_owned(),
            title_block: None,
            live: None,
        }
    }
}

/// Reads the tolerance of curves from the command line.
///
/// # Errors
/// When it is not a length with its unit, or not between 0.001 mm and 10 mm.
pub fn tolerance(text: &str) -> Result<Length, String> {
    let length = parse_length(text).map_err(|e| e.to_string())?;
    if (0.001..=10.0).contains(&length.mm()) {
        Ok(length)
    } else {
        Err(format!("{length} is not between 0.001 mm and 10 mm"))
    }
}

/// One file to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutputFile {
    /// Its path below the output folder, with `/` between folders.
    pub path: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// A folder of outputs and what it is for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutputGroup {
    /// The folder.
    pub folder: &'static str,
    /// What it is for, in one clause.
    pub about: &'static str,
    /// The files in it.
    pub files: Vec<OutputFile>,
}

/// What a build gives.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Built {
    /// The files by folder.
    pub groups: Vec<OutputGroup>,
    /// What there is to say about the design.
    pub findings: Vec<Finding>,
}

/// Reads, resolves and plans: what the takeoff begins with. What is wrong with buying and supplies alone is in the plan's design.
///
/// # Errors
/// Everything that keeps the file from being built, each with its place.
pub fn check(text: &str, trade: &TradeData) -> Result<Plan, Vec<Finding>> {
    lay_out(design::from_text_with(text, trade)?)
}

/// The plan; when there is none, what was found before is said too.
fn lay_out(design: Design) -> Result<Plan, Vec<Finding>> {
    let earlier = design.findings.clone();
    plan::lay_out(design).map_err(|findings| in_order([earlier, findings].concat()))
}

/// The design, with the form of title block that was asked for.
fn designed(text: &str, trade: &TradeData, options: &Options) -> Result<Design, Vec<Finding>> {
    let mut design = design::from_text_with(text, trade)?;
    if let Some(form) = &options.title_block {
        design.drawings.title_block = form.clone();
    }
    Ok(design)
}

/// Builds everything asked for; `begins` hears of each stage as it begins.
///
/// # Errors
/// Everything that keeps the file from being built, each with its place.
pub fn build(
    text: &str,
    trade: &TradeData,
    options: &Options,
    begins: &mut dyn FnMut(Stage),
) -> Result<Built, Vec<Finding>> {
    begins(Stage::Read);
    let design = designed(text, trade, options)?;
    begins(Stage::Plan);
    let plan = lay_out(design)?;
    begins(Stage::Parts);
    let assembly = parts::build(&plan);
    begins(Stage::Checks);
    let checked = checks::findings(&plan);
    begins(Stage::Site);
    let site = site::reckon(&plan, &assembly);
    let mut built = Built {
        findings: plan.design.findings.clone(),
        ..Built::default()
    };
    if options.outputs.contains(&Output::Models) {
        begins(Stage::Models);
        built
            .groups
            .push(models::outputs(&plan, &assembly, options.tolerance)?);
    }
    let wants = |any: &[Output]| options.outputs.iter().any(|o| any.contains(o));
    let mut sheets = Vec::new();
    if wants(&[Output::Drawings, Output::Book]) {
        begins(Stage::Drawings);
        let told = site::told_of(&plan, &checked, &site);
        sheets = drawing::sheets(&plan, &assembly, &told);
    }
    if wants(&[Output::Drawings]) {
        let (group, said) = drawings::written(&plan, &sheets)?;
        built.groups.push(group);
        built.findings.extend(said);
    }
    if options.outputs.contains(&Output::Template) {
        begins(Stage::Template);
        built.groups.push(template(&plan)?);
    }
    let mut reckoned = None;
    if wants(&[Output::Takeoff, Output::Book]) {
        begins(Stage::Takeoff);
        let takeoff = crate::takeoff::reckon(&plan, &assembly);
        if wants(&[Output::Takeoff]) {
            built.groups.push(takeoff::outputs(&plan, &takeoff)?);
        }
        built.findings.extend(takeoff.findings.iter().cloned());
        reckoned = Some(takeoff);
    }
    if options.outputs.contains(&Output::ScaleModel) {
        begins(Stage::ScaleModel);
        let (group, said) = scale_model::outputs(&plan, &assembly)?;
        built.groups.extend(group);
        built.findings.extend(said);
    }
    if options.outputs.contains(&Output::Site) {
        built.groups.push(site::outputs(&plan, &site));
    }
    built.findings = in_order([built.findings, checked].concat());
    if options.outputs.contains(&Output::Checks) {
        let group = checks::outputs(&options.name, text, &built.findings);
        built.groups.push(group);
    }
    if let (true, Some(takeoff)) = (wants(&[Output::Book]), &reckoned) {
        let page = book::page(&book::Everything {
            plan: &plan,
            assembly: &assembly,
            site: &site,
            takeoff,
            sheets: &sheets,
            built: &built,
            options,
        })?;
        built.groups.push(page);
    }
    Ok(built)
}

fn template(plan: &Plan) -> Result<OutputGroup, Vec<Finding>> {
    let sets = template::pages(plan);
    let whole = template::whole(plan);
    let sheets: Vec<&Sheet> = sets
        .iter()
        .flat_map(|s| &s.pages)
        .map(|p| &p.sheet)
        .collect();
    let printing = &plan.design.printing;
    if sheets.is_empty() {
        let found = "margins and overlap leave no room on the page for the template";
        return Err(vec![
            Finding::error("small-page", &printing.margin.place, found).hint("use a larger paper"),
        ]);
    }
    let project = &plan.design.project;
    let info = PdfInfo {
        title: format!("{}: full-size counter template", project.title),
        subject: "Pages at 1:1 to print at 100 %, join and cut by".to_owned(),
        author: project.drawn_by.clone(),
        ..PdfInfo::default()
    };
    // The two take about as long as each other.
    let (pdf, pages) = std::thread::scope(|scope| {
        let pdf = scope.spawn(|| write::pdf(&sheets, &info));
        let files: Vec<_> = sheets
            .iter()
            .map(|s| svg_file(format!("template/pages/{}.svg", s.name), s))
            .collect();
        (pdf.join(), files)
    });
    let pdf = pdf.unwrap_or_else(|_| Err(PdfError::Library("its thread stopped".to_owned())));
    let bytes = pdf.map_err(|e| {
        vec![Finding::error(
            "template-pdf",
            &printing.paper.place,
            e.to_string(),
        )]
    })?;
    let whole_files = [
        file("template/template.pdf", bytes),
        svg_file("template/counter.svg".to_owned(), &whole),
        file("template/counter.dxf", write::dxf(&whole)),
        file(
            "template/pages.json",
            write::template_index(&sets).into_bytes(),
        ),
    ];
    Ok(OutputGroup {
        folder: "template",
        about: "the counter at full size: print template.pdf at 100 %, join the pages by their crosses",
        files: whole_files.into_iter().chain(pages).collect(),
    })
}

fn file(path: &str, bytes: Vec<u8>) -> OutputFile {
    OutputFile {
        path: path.to_owned(),
        bytes,
    }
}

fn svg_file(path: String, sheet: &Sheet) -> OutputFile {
    OutputFile {
        path,
        bytes: write::svg(sheet).into_bytes(),
    }
}
