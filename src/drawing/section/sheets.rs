//! Which section lies on which sheet.

use super::drawing::{self, BESIDE, NOTES};
use super::subject::Subject;
use super::words;
use crate::drawing::border::Frame;
use crate::drawing::figure::{Arrangement, Caption, Figure, arrange, notes_height};
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::page::{LETTERS, Page, plain};
use crate::drawing::scale::Series;
use crate::drawing::scene::Scene;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::drawing::{Scale, lettering};
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::units::Length;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Sections";

/// So many sections have a sheet each, at a scale at which the layers can be told apart; more of them share sheets.
const SHEETS: usize = 6;
/// No larger than an eighth: what is to be seen larger is a detail, and large sheets hold several sections.
const LARGEST: f64 = 1.0 / 8.0;
/// Room for the chain of heights, a row of texts that its gaps cannot hold counted in.
const HEIGHTS: f64 = 22.0;
/// What a level takes beside its lettering.
const LEVEL: f64 = 16.0;

/// All sections laid out.
struct Layout<'a> {
    subjects: Vec<Subject<'a>>,
    arranged: Arrangement,
}

impl<'a> Layout<'a> {
    fn new(plan: &'a Plan, frame: &Frame) -> Self {
        let subjects = Subject::all(plan);
        let figures: Vec<Figure> = subjects.iter().map(figure).collect();
        let room = frame.room(&notes());
        let per_sheet = if figures.len() <= SHEETS { 1 } else { 2 };
        let mut series = Series::sections(plan.design.project.units);
        series.preferred.retain(|s| s.factor <= LARGEST + 1e-9);
        Self {
            arranged: arrange(&figures, &[room], &series, per_sheet),
            subjects,
        }
    }

    fn on(
        &self,
        sheet: usize,
    ) -> impl Iterator<Item = (&Subject<'a>, &crate::drawing::figure::Place)> {
        let pairs = self.subjects.iter().zip(&self.arranged.places);
        pairs.filter(move |(_, place)| place.sheet == sheet)
    }
}

/// What is said on every sheet of sections.
fn notes() -> Vec<String> {
    vec![
        "Looking towards the right end of the run as the cook sees it: the working side is on the right. Levels above the highest point of the ground. \
         Steel is drawn black, appliances are not hatched. Inside: the clear height from the ground to the underside of the appliance."
            .to_owned(),
    ]
}

/// The caption: its letter, the run and what is cut, and where it is marked.
fn caption(subject: &Subject, scale: &Scale) -> Caption {
    let runs = &subject.plan.design.runs;
    let run = runs
        .get(subject.cut.run)
        .map_or("", |r| r.name.value.as_str());
    let at = subject.plan.design.project.units;
    let at = at.spell_with_unit(Length::millimetres(subject.cut.u));
    Caption {
        sign: subject.cut.letter.clone(),
        title: plain(&format!("{run} run: {}", subject.cut.title)),
        note: plain(&format!(
            "{}, {at} from the left end of the run",
            scale.name
        )),
    }
}

fn figure(subject: &Subject) -> Figure {
    let area = subject.area();
    let levels = drawing::levels(subject);
    let widths = levels
        .iter()
        .map(|(_, text)| lettering::width(text, LETTERS));
    let widest = widths.fold(0.0, f64::max);
    let texts = words::notes(subject);
    let longest = Scale {
        factor: 1.0,
        name: "1 1/2\" = 1'-0\"".to_owned(),
    };
    Figure {
        built: (area.width(), area.height()),
        margins: Margins {
            left: HEIGHTS + LEVEL + widest,
            right: BESIDE + NOTES,
            below: 26.0,
            above: if subject.cutout().is_some() {
                17.0
            } else {
                2.0
            },
        },
        least_height: notes_height(texts.iter().map(|n| n.text.as_str()), NOTES) + 4.0,
        caption: caption(subject, &longest).size(),
    }
}

/// Which sheets there are.
pub fn planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    let layout = Layout::new(plan, frame);
    (0..layout.arranged.sheets)
        .map(|sheet| {
            let letters = layout.on(sheet).map(|(s, _)| s.cut.letter.clone());
            let figures: Vec<String> = letters.collect();
            let title = match figures.as_slice() {
                [one] => format!("Section {one}"),
                [one, two] => format!("Sections {one} and {two}"),
                [first, .., last] => format!("Sections {first} to {last}"),
                [] => CHAPTER.to_owned(),
            };
            Planned {
                stem: format!("sections-{}", sheet + 1),
                title,
                face: None,
                figures,
            }
        })
        .collect()
}

/// Draws one of them.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let layout = Layout::new(set.plan, set.frame);
    let scale = layout.arranged.scale.clone();
    let title = &set.entry(CHAPTER, number)?.planned.title;
    let mut page = set.frame.page(title, &scale, &notes());
    draw_all(&mut page, set.scene, &layout, number);
    Some((page, scale))
}

/// Draws the sections of a sheet; says how many texts found no place.
fn draw_all(page: &mut Page, scene: &Scene, layout: &Layout, number: usize) -> usize {
    let scale = &layout.arranged.scale;
    for (subject, place) in layout.on(number) {
        caption(subject, scale).draw(page, place.caption);
    }
    let drawn = layout.on(number).map(|(subject, place)| {
        let fit = Fit::at(scale.clone(), &subject.area(), &place.view);
        drawing::draw(page, scene, subject, (&fit, place))
    });
    drawn.sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::check;

    const SHIPPED: [&str; 4] = [
        "garden-corner",
        "poolside-u",
        "terrace-straight",
        "smallest",
    ];

    fn shipped(name: &str) -> Plan {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/params/");
        let text = std::fs::read_to_string(format!("{folder}{name}.yaml")).unwrap();
        crate::plan::lay_out(crate::design::from_text(&text).unwrap()).unwrap()
    }

    #[test]
    fn every_text_of_every_section_finds_its_place() {
        for name in SHIPPED {
            let plan = shipped(name);
            let assembly = crate::parts::build(&plan);
            let (scene, frame) = (Scene::new(&assembly), Frame::new(&plan.design));
            let layout = Layout::new(&plan, &frame);
            assert!(layout.arranged.fits, "{name}");
            for sheet in 0..layout.arranged.sheets {
                let mut page = frame.page("", &layout.arranged.scale, &notes());
                assert_eq!(
                    draw_all(&mut page, &scene, &layout, sheet),
                    0,
                    "{name} {sheet}"
                );
                let drawn = page.finish(name.into(), String::new(), "1".into(), Scale::full());
                check::texts_are_clear(&drawn).unwrap();
            }
        }
    }

    #[test]
    fn what_a_section_cuts_has_the_areas_worked_on_paper() {
        // A plain bay of the garden corner's cook run, inches: the counter is 30 + 2 × 7/8 + 10 + 2 = 43 3/4 deep and 2 thick
        // with two rims 1 × 1 1/2, its arris eased by a quarter circle of 1/8 on both edges (at the top only: a turndown goes on below).
        let plan = shipped("garden-corner");
        let assembly = crate::parts::build(&plan);
        let scene = Scene::new(&assembly);
        let subjects = Subject::all(&plan);
        let plain = subjects
            .iter()
            .find(|s| s.cut.title.contains("plain"))
            .unwrap();
        let cut = drawing::cut(&scene, plain);
        let area = |kind: crate::parts::PartKind| {
            let own = cut
                .pieces
                .iter()
                .filter(|p| p.part.is_some_and(|n| assembly.parts[n].kind == kind));
            let regions = own.flat_map(|p| &p.regions);
            regions.map(crate::geometry::Region::area).sum::<f64>() / (25.4 * 25.4)
        };
        let slab = 43.75 * 2.0 + 2.0 * 1.0 * 1.5;
        let found = area(crate::parts::PartKind::Slab);
        assert!((found - slab).abs() < 4.0 / 64.0, "{found} for {slab}");
        // The substrate between the rims: 43 3/4 − 3 by 1/2.
        let found = area(crate::parts::PartKind::Substrate);
        assert!((found - 40.75 * 0.5).abs() < 1e-3, "{found}");
        // Two sleepers 3 1/2 × 1 1/2.
        let found = area(crate::parts::PartKind::Sleeper);
        assert!((found - 10.5).abs() < 1e-3, "{found}");
    }
}
