//! Which section lies on which sheet.

use super::subject::Subject;
use super::{callouts, drawing, words};
use crate::drawing::border::Frame;
use crate::drawing::figure::{Caption, Kind, Sheets, Shown, Wishes};
use crate::drawing::fit::Margins;
use crate::drawing::page::{LETTERS, Page, plain};
use crate::drawing::scale::Series;
use crate::drawing::scene::Scene;
use crate::drawing::set::{Contents, Drawn, Planned, Set};
use crate::drawing::{Scale, lettering};
use crate::geometry::Bounds2;
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::units::Length;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Sections";

/// Sections are shared out at an eighth or less, so that large sheets hold several.
const LARGEST_BASE: f64 = 1.0 / 8.0;
const KIND: Kind = Kind {
    one: "Section",
    many: CHAPTER,
    beside: 3.0,
    columns: &[52.0, 75.0, 100.0],
};
/// Room for the chain of heights, a row of texts that its gaps cannot hold counted in.
const HEIGHTS: f64 = 22.0;
/// What a level takes beside its lettering.
const LEVEL: f64 = 16.0;

/// All sections laid out.
fn layout<'a>(plan: &'a Plan, frame: &Frame) -> Sheets<Subject<'a>> {
    let wishes = Wishes {
        series: Series::sections(plan.design.project.units),
        per_sheet: 1,
        largest_base: LARGEST_BASE,
    };
    Sheets::new(KIND, Subject::all(plan), frame.room(&notes()), &wishes)
}

/// What is said on every sheet of sections.
fn notes() -> Vec<String> {
    vec![
        "Looking towards the right end of the run as the cook sees it: the working side is on the right. Levels above the highest point of the ground. \
         Steel is drawn black, appliances are not hatched. Inside: the clear height from the ground to the underside of the appliance."
            .to_owned(),
    ]
}

impl Shown for Subject<'_> {
    fn sign(&self) -> String {
        self.cut.letter.clone()
    }

    fn area(&self) -> Bounds2 {
        self.window()
    }

    fn margins(&self) -> Margins {
        let levels = drawing::levels(self);
        let widths = levels
            .iter()
            .map(|(_, text)| lettering::width(text, LETTERS));
        let widest = widths.fold(0.0, f64::max);
        let above = if self.cutout().is_some() { 17.0 } else { 2.0 };
        Margins {
            left: HEIGHTS + LEVEL + widest,
            right: 0.0,
            below: 26.0,
            above,
        }
    }

    fn texts(&self) -> Vec<String> {
        words::notes(self).into_iter().map(|n| n.text).collect()
    }

    /// Its letter, the run and what is cut, and where it is marked.
    fn caption(&self, scale: &Scale) -> Caption {
        let runs = &self.plan.design.runs;
        let run = runs.get(self.cut.run).map_or("", |r| r.name.value.as_str());
        let at = self.plan.design.project.units;
        let at = at.spell_with_unit(Length::millimetres(self.cut.u));
        Caption {
            sign: self.cut.letter.clone(),
            title: plain(&format!("{run} run: {}", self.cut.title)),
            note: plain(&format!(
                "{}, {at} from the left end of the run",
                scale.name
            )),
        }
    }
}

/// Which sheets there are.
pub fn planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    layout(plan, frame).planned()
}

/// Draws one of them.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let layout = layout(set.plan, set.frame);
    let scale = layout.scale(number);
    let title = &set.entry(CHAPTER, number)?.planned.title;
    let mut page = set.frame.page(title, &scale, &notes());
    draw_all(&mut page, set.scene, &layout, (number, Some(set.contents)));
    Some((page, scale))
}

/// Draws the sections of a sheet; says how many texts found no place.
fn draw_all(
    page: &mut Page,
    scene: &Scene,
    layout: &Sheets<Subject>,
    (number, contents): (usize, Option<&Contents>),
) -> usize {
    layout.draw(page, number, |page, subject, (fit, column)| {
        let (cut, missing) = drawing::draw(page, scene, subject, (fit, column));
        if let Some(contents) = contents {
            callouts::draw(page, fit, subject, (&cut, contents));
        }
        missing
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::PaperKind;
    use crate::drawing::{Item, Layer, check};

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
            let contents = Contents::new(&plan, &assembly, &frame);
            let layout = layout(&plan, &frame);
            assert!(layout.arranged.fits, "{name}");
            for sheet in 0..layout.arranged.sheets {
                let mut page = frame.page("", &layout.scale(sheet), &notes());
                assert_eq!(
                    draw_all(&mut page, &scene, &layout, (sheet, Some(&contents))),
                    0,
                    "{name} {sheet}"
                );
                let drawn = page.finish(name.into(), String::new(), "1".into(), Scale::full());
                check::texts_are_clear(&drawn).unwrap();
            }
        }
    }

    #[test]
    fn on_small_paper_a_section_has_a_sheet_of_its_own_at_a_half_inch_to_the_foot_or_larger() {
        for name in SHIPPED {
            for paper in [PaperKind::A4, PaperKind::Letter] {
                let mut plan = shipped(name);
                plan.design.drawings.paper.value = paper.landscape();
                let assembly = crate::parts::build(&plan);
                let (scene, frame) = (Scene::new(&assembly), Frame::new(&plan.design));
                let contents = Contents::new(&plan, &assembly, &frame);
                let layout = layout(&plan, &frame);
                assert!(layout.arranged.fits, "{name} {paper:?}");
                for sheet in 0..layout.arranged.sheets {
                    let scale = layout.scale(sheet);
                    assert!(scale.factor >= 1.0 / 24.0 - 1e-9, "{name}: {}", scale.name);
                    let mut page = frame.page("", &scale, &notes());
                    draw_all(&mut page, &scene, &layout, (sheet, Some(&contents)));
                    let drawn = page.finish(name.into(), String::new(), "1".into(), scale);
                    check::texts_are_clear(&drawn).unwrap();
                }
            }
        }
    }

    #[test]
    fn a_section_names_the_sheet_of_each_detail_in_a_circle() {
        // Section A of the garden corner goes through both edges of the counter, the tile band and the foot: details 1 to 4.
        let plan = shipped("garden-corner");
        let assembly = crate::parts::build(&plan);
        let (scene, frame) = (Scene::new(&assembly), Frame::new(&plan.design));
        let contents = Contents::new(&plan, &assembly, &frame);
        let layout = layout(&plan, &frame);
        let mut page = frame.page("", &layout.scale(0), &[]);
        draw_all(&mut page, &scene, &layout, (0, Some(&contents)));
        let sheet = page.finish("s".into(), String::new(), "1".into(), Scale::full());
        let symbols = sheet.items.iter().filter_map(|item| match item {
            Item::Text {
                layer: Layer::Symbol,
                text,
                at,
                ..
            } => Some((text.as_str(), *at)),
            _ => None,
        });
        let symbols: Vec<_> = symbols.collect();
        for number in ["1", "2", "3", "4"] {
            let own = contents.of_figure(crate::drawing::detail::CHAPTER, number);
            let own = own.unwrap().to_string();
            let named = symbols.iter().any(|(text, at)| {
                let mut others = symbols.iter();
                // The sheet's number stands right under the detail's.
                *text == number
                    && others.any(|(other, below)| {
                        *other == own && (below.x - at.x).abs() < 1e-9 && at.y - below.y < 6.0
                    })
            });
            assert!(named, "{number}: {symbols:?}");
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
