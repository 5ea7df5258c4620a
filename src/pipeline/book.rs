//! The build book: everything on one page.

use super::figures::figures;
use super::site::tables as site_tables;
use super::{Built, Options, OutputGroup, checks, file, models, takeoff, workshop};
use crate::catalog::work::Doer;
use crate::diagnostics::Finding;
use crate::drawing::{AXONOMETRIC, Sheet, template};
use crate::mesh::{Model, Showing};
use crate::parts::{Assembly, Part, PartKind, fills};
use crate::plan::Plan;
use crate::site::Site;
use crate::site::work::Step;
use crate::takeoff::{Takeoff, tables, whereabouts};
use crate::write::{self, Beside, BuildBook, Found, Leaf, Lists, Shown, Tick};

/// The groups in the order they are built, and what people call them.
const GROUPS: [(&str, &str); 6] = [
    ("framing", "Frame"),
    ("boards", "Boards"),
    ("forms", "Forms"),
    ("counter", "Counter"),
    ("coats", "Coats and tile"),
    ("appliances", "Appliances, doors"),
];

/// The tables that stand with the checklist.
const STEP_TABLES: [&str; 3] = ["steps", "step-waits", "checklist"];

const STEPS: &str = "Ticks stay on this device. Where a step is marked as a hold, nothing goes on before every line is ticked and somebody has looked. \
                     Local code, licensed trades and each maker's own instructions decide.";

/// What the page is made from.
pub(super) struct Everything<'a> {
    pub plan: &'a Plan,
    pub assembly: &'a Assembly,
    pub site: &'a Site,
    pub takeoff: &'a Takeoff,
    pub sheets: &'a [Sheet],
    /// What is built so far: its findings, and the files that lie beside the page.
    pub built: &'a Built,
    pub options: &'a Options,
}

/// The page.
///
/// # Errors
/// When a solid has no sound surface, or the page cannot be written.
pub(super) fn page(all: &Everything) -> Result<OutputGroup, Vec<Finding>> {
    let model: Model = models::shown(all.assembly, all.options.tolerance)?;
    let showing = Showing::of(all.plan, all.assembly, &model);
    let tables = tables(all.plan, all.takeoff);
    let site = site_tables(all.plan, all.site);
    let named = |names: &[&str]| {
        let own = || tables.iter().chain(&site);
        let found = names
            .iter()
            .filter_map(|name| own().find(|t| t.name == *name));
        found.collect()
    };
    let workshop: Vec<Leaf> = workshop::sheets(all.plan, all.takeoff)
        .iter()
        .map(leaf)
        .collect();
    let others = site
        .iter()
        .filter(|t| !STEP_TABLES.contains(&t.name.as_str()));
    let lists = vec![
        Lists {
            id: "cutting",
            title: "Cut lists",
            tables: named(&["cut-list", "sticks", "sheet-layout", "sheets"]),
            sheets: workshop,
            ..Lists::default()
        },
        Lists {
            id: "buying",
            title: "To buy",
            tables: named(&["totals", "order", "bags", "quantities"]),
            ..Lists::default()
        },
        Lists {
            id: "site",
            title: "Ground and pour",
            tables: others.collect(),
            ..Lists::default()
        },
        Lists {
            id: "steps",
            title: "Steps",
            about: STEPS.to_owned(),
            steps: all.site.work.steps.iter().map(tick).collect(),
            tables: named(&["steps", "step-waits"]),
            ..Lists::default()
        },
    ];
    let book = BuildBook {
        title: &all.plan.design.project.title,
        facts: facts(all.plan),
        figures: figures(all.plan, all.takeoff),
        shown: shown(all.plan, all.assembly, &model, &showing),
        outline: all.plan.faces.iter().map(|f| f.start).collect(),
        findings: findings(all.plan, all.assembly, &all.built.findings),
        cautions: checks::cautions(&all.built.findings),
        drawings: all.sheets.iter().map(leaf).collect(),
        drawn_views: AXONOMETRIC,
        printing: printing(all.plan),
        template: template_leaves(all.plan),
        lists,
        beside: all.built.groups.iter().map(beside).collect(),
        live: all.options.live.as_ref(),
    };
    let text = write::build_book(&book).map_err(|e| takeoff::fault("book", &e))?;
    Ok(OutputGroup {
        folder: "index.html",
        about: "the build book: open it in a browser, on a phone in the yard too",
        files: vec![file("index.html", text.into_bytes())],
    })
}

fn facts(plan: &Plan) -> Vec<String> {
    let project = &plan.design.project;
    let labelled = |label: &str, text: &str| (!text.is_empty()).then(|| format!("{label}{text}"));
    let facts = [
        labelled("", &project.place),
        labelled("drawn by ", &project.drawn_by),
        labelled("revision ", &project.revision),
        labelled("", &project.date),
    ];
    facts.into_iter().flatten().collect()
}

fn leaf(sheet: &Sheet) -> Leaf {
    Leaf {
        number: sheet.number.clone(),
        title: sheet.title.clone(),
        chapter: sheet.chapter.to_owned(),
        svg: write::svg(sheet),
    }
}

fn printing(plan: &Plan) -> Vec<String> {
    let paper = &plan.design.printing.paper.value.name;
    [
        format!("Print template/template.pdf at 100 %, on {paper}: no 'fit to page'."),
        "Measure both bars of the calibration page with a steel rule. Where they are off, write what the rule shows under printing.bars, build and print again.".to_owned(),
        "Join the pages by their crosses: hold them against the light, cross on cross, and tape them.".to_owned(),
        "Measure the joined template along both sides against the counter's sizes, and hold it against the appliance itself, before anything is cut.".to_owned(),
    ]
    .to_vec()
}

/// Every page set by set, the whole counter last.
fn template_leaves(plan: &Plan) -> Vec<Leaf> {
    let sets = template::pages(plan);
    let pages = sets.iter().flat_map(|set| {
        set.pages.iter().map(|page| {
            let own = leaf(&page.sheet);
            let title = match page.mark.as_str() {
                "" => own.title,
                mark => format!("Page {mark}"),
            };
            let chapter = set.title.clone();
            Leaf {
                title,
                chapter,
                ..own
            }
        })
    });
    let mut leaves: Vec<Leaf> = pages.collect();
    leaves.push(Leaf {
        chapter: "On one sheet, for a plotter or a cutting shop".to_owned(),
        ..leaf(&template::whole(plan))
    });
    leaves
}

fn beside(group: &OutputGroup) -> Beside {
    let files = group.files.iter();
    Beside {
        folder: group.folder.to_owned(),
        about: group.about.to_owned(),
        files: files.map(|f| (f.path.clone(), f.bytes.len())).collect(),
    }
}

/// The island for the picture.
pub(super) fn shown<'a>(
    plan: &Plan,
    assembly: &'a Assembly,
    model: &'a Model,
    showing: &'a Showing<'a>,
) -> Shown<'a> {
    let parts = model.selection(assembly, None).instances().to_vec();
    let wheres = parts
        .iter()
        .map(|i| whereabouts(plan, i.part.run, i.part.face));
    Shown {
        wheres: wheres.collect(),
        parts,
        appearances: &showing.appearances,
        views: &showing.views,
        groups: GROUPS.to_vec(),
        outwards: plan
            .faces
            .iter()
            .map(|f| [f.outward.x, f.outward.y])
            .collect(),
        notation: plan.design.project.units,
    }
}

/// Findings with the parts they are about.
pub(super) fn findings<'f>(
    plan: &Plan,
    assembly: &Assembly,
    findings: &'f [Finding],
) -> Vec<Found<'f>> {
    let one = |finding: &'f Finding| {
        let about = About::of(plan, finding);
        let parts = assembly.parts.iter().enumerate();
        let own = parts.filter(|(_, part)| about.names(plan, finding, part));
        Found {
            finding,
            parts: own.map(|(number, _)| number).collect(),
        }
    };
    findings.iter().map(one).collect()
}

/// A step of the checklist.
fn tick(step: &Step) -> Tick {
    let id = step.what.id;
    let when = step
        .times
        .as_ref()
        .map(|t| format!("{} to {}", t.start.spell(), t.end.spell()));
    let hands = match step.hands {
        _ if step.what.by != Doer::Crew => step.what.by.name().to_owned(),
        1 => "one pair of hands".to_owned(),
        n => format!("{n} pairs of hands"),
    };
    let facts = [when, Some(hands), Some(step.what.tools.join(", "))];
    let facts: Vec<String> = facts
        .into_iter()
        .flatten()
        .filter(|f| !f.is_empty())
        .collect();
    let checks = step.checks.iter();
    Tick {
        id: id.to_owned(),
        name: step.what.name.to_owned(),
        when: facts.join("; "),
        cautions: step.cautions.clone(),
        checks: checks.map(|c| (format!("{id}: {c}"), c.clone())).collect(),
        hold: step.what.is_hold,
    }
}

/// What a finding is about, by its key in the file.
enum About {
    Run(usize),
    Thing(String),
    Inside,
    Counter,
    Tile,
    Other,
}

impl About {
    fn of(plan: &Plan, finding: &Finding) -> Self {
        let design = &plan.design;
        let key = finding.place.key.as_str();
        let (group, rest) = key.split_once(['[', '.']).unwrap_or((key, ""));
        let number = || {
            rest.split(']')
                .next()?
                .parse::<usize>()
                .ok()?
                .checked_sub(1)
        };
        let appliance = || design.appliances.get(number()?).map(|a| a.name.clone());
        let opening = || design.openings.get(number()?).map(|o| o.name.clone());
        let run = || number().filter(|n| *n < design.runs.len());
        match group {
            "runs" => run().map_or(Self::Other, Self::Run),
            "appliances" => appliance().map_or(Self::Other, Self::Thing),
            "openings" => opening().map_or(Self::Other, Self::Thing),
            "compartments" => Self::Inside,
            "counter" => Self::Counter,
            "tile_band" => Self::Tile,
            _ => Self::Other,
        }
    }

    fn names(&self, plan: &Plan, finding: &Finding, part: &Part) -> bool {
        let subject = &finding.subject;
        if !subject.is_empty() {
            let face = part.face.and_then(|f| plan.faces.get(f));
            let is_faced = part.kind == PartKind::Board && face.is_some_and(|f| f.name == *subject);
            if part.mark == *subject || part.section == *subject || is_faced {
                return true;
            }
        }
        match self {
            Self::Run(run) => part.run == Some(*run) && part.kind == PartKind::TopTrack,
            Self::Inside => part.kind == PartKind::BottomTrack,
            Self::Thing(name) => fills(part, name),
            Self::Counter => part.kind == PartKind::Slab,
            Self::Tile => part.kind == PartKind::Tile,
            Self::Other => false,
        }
    }
}
