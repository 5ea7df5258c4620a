//! The sets of pages: calibration, the whole counter, and each cutout.

use super::furniture::Heading;
use super::grid::{Grid, Map};
use super::key_map::KeyMap;
use super::layout::Layout;
use super::page;
use super::scene::Scene;
use super::{calibration, key, subject};
use crate::drawing::{Scale, Sheet};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::Plan;

/// Pages that are joined to one another.
#[derive(Clone, Debug, PartialEq)]
pub struct TemplateSet {
    /// The stem of its pages' file names, unique among the sets.
    pub name: String,
    /// What it shows.
    pub title: String,
    /// Its pages, row by row from the top.
    pub pages: Vec<TemplatePage>,
}

/// One printable page.
#[derive(Clone, Debug, PartialEq)]
pub struct TemplatePage {
    /// Its mark in the set, such as `B3`; empty for a page that is not joined to others.
    pub mark: String,
    /// What is drawn on it.
    pub sheet: Sheet,
    /// Where its drawing lies in the counter's plan; `None` for a page that shows nothing at full size.
    pub position: Option<PagePosition>,
}

/// Where a page's drawing lies in the counter's plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PagePosition {
    /// The part of the page that shows the counter, millimetres on the paper.
    pub window: Bounds2,
    /// `[a, b, c, d, e, f]`: the world point (x, y) lies at (a·x + c·y + e, b·x + d·y + f) millimetres from the
    /// paper's lower left corner. The printer's correction is in it.
    pub to_paper: [f64; 6],
    /// The registration crosses, on the paper.
    pub crosses: Vec<Point2>,
}

/// All pages: the calibration page and the key page first, then the whole counter, then each cutout.
///
/// A paper with no room for a drawing gives no pages.
pub fn pages(plan: &Plan) -> Vec<TemplateSet> {
    let Some(layout) = Layout::printed(plan) else {
        return Vec::new();
    };
    let mut names = Names::default();
    let mut first = TemplateSet {
        name: names.unique("calibration"),
        title: "Calibration".to_owned(),
        pages: vec![plain(calibration::sheet(plan, &layout))],
    };
    let counter = Tiled::new(&layout, &subject::whole(plan));
    let mut sets = vec![set(
        plan,
        counter.as_ref(),
        names.unique("counter"),
        "Whole counter",
    )];
    for (name, scene) in subject::cutouts(plan) {
        let tiled = Tiled::new(&layout, &scene);
        sets.push(set(
            plan,
            tiled.as_ref(),
            names.unique(name),
            &format!("Cutout: {name}"),
        ));
    }
    first
        .pages
        .extend(counter.map(|c| plain(key::sheet(plan, &layout, &c, &sets))));
    sets.insert(0, first);
    sets
}

/// The whole counter at full size on one sheet as large as it needs, uncorrected: for a plotter or a cutting shop.
pub fn whole(plan: &Plan) -> Sheet {
    let scene = subject::whole(plan);
    let around = Vector2::new(25.0, 25.0);
    let bounds = scene.bounds().unwrap_or(Bounds2 {
        low: Point2::origin(),
        high: Point2::origin(),
    });
    let bounds = Bounds2 {
        low: bounds.low - around,
        high: bounds.high + around,
    };
    let layout = Layout::single(plan, bounds.high - bounds.low);
    let grid = Grid::single(bounds);
    let title = format!("Counter, full size: {}", plan.design.project.title);
    let heading = Heading {
        mark: "",
        title: &title,
        count: "",
    };
    let drawn = page::draw(&scene, &layout, &grid, &[(0, 0)], (0, 0), (&heading, None));
    Sheet {
        name: "counter".to_owned(),
        title,
        number: String::new(),
        paper: layout.paper(),
        scale: full_size(),
        chapter: "",
        ink: crate::drawing::Ink::Black,
        items: drawn.items,
        lost: Vec::new(),
    }
}

pub(super) fn full_size() -> Scale {
    Scale {
        factor: 1.0,
        name: "1:1".to_owned(),
    }
}

fn plain(sheet: Sheet) -> TemplatePage {
    TemplatePage {
        mark: String::new(),
        sheet,
        position: None,
    }
}

/// A scene laid out over pages.
pub(super) struct Tiled {
    pub(super) scene: Scene,
    pub(super) layout: Layout,
    pub(super) grid: Grid,
    pub(super) kept: Vec<super::grid::Place>,
    /// Whether the scene was turned a quarter to the left.
    turned: bool,
}

impl Tiled {
    /// Lays a scene out over the paper; on a roll it is turned where that saves paper.
    fn new(layout: &Layout, scene: &Scene) -> Option<Self> {
        let upright = Self::one(layout, scene.clone(), false);
        if !layout.is_roll() {
            return upright;
        }
        let turned = Self::one(layout, scene.turned(), true);
        [upright, turned]
            .into_iter()
            .flatten()
            .min_by(|a, b| a.paper_used().total_cmp(&b.paper_used()))
    }

    fn one(layout: &Layout, scene: Scene, turned: bool) -> Option<Self> {
        let (mut shown, overlap) = layout.shown();
        let mut layout = layout.clone();
        if layout.is_roll() {
            // A little air at the ends.
            shown.y = shown.y.min(scene.bounds()?.height() + 20.0);
            layout = layout.cut(shown.y);
        }
        let grid = Grid::over(&scene, shown, overlap)?;
        let kept = grid.needed(&scene);
        Some(Self {
            scene,
            layout,
            grid,
            kept,
            turned,
        })
    }

    fn paper_used(&self) -> f64 {
        self.kept.len() as f64 * self.layout.height
    }

    fn position(&self, map: &Map, crosses: Vec<Point2>) -> PagePosition {
        let (k, shift) = (
            map.scale,
            map.to - map.from.coords.component_mul(&map.scale),
        );
        PagePosition {
            window: self.layout.window(),
            to_paper: if self.turned {
                [0.0, k.y, -k.x, 0.0, shift.x, shift.y]
            } else {
                [k.x, 0.0, 0.0, k.y, shift.x, shift.y]
            },
            crosses,
        }
    }
}

fn set(plan: &Plan, tiled: Option<&Tiled>, name: String, title: &str) -> TemplateSet {
    let pages = tiled.map_or_else(Vec::new, |t| {
        let total = t.kept.len();
        let full_title = format!("{title} · {}", plan.design.project.title);
        let key = (t.grid.columns * t.grid.rows > 1)
            .then(|| KeyMap::new(t.layout.map(), &t.scene, &t.grid, &t.kept))
            .flatten();
        let one = |(n, here): (usize, &super::grid::Place)| {
            let mark = t.grid.mark(*here);
            let count = format!("{} of {total}", n + 1);
            let heading = Heading {
                mark: &mark,
                title: &full_title,
                count: &count,
            };
            let drawn = page::draw(
                &t.scene,
                &t.layout,
                &t.grid,
                &t.kept,
                *here,
                (&heading, key.as_ref()),
            );
            TemplatePage {
                sheet: Sheet {
                    name: format!("{name}-{mark}"),
                    title: title.to_owned(),
                    number: mark.clone(),
                    paper: t.layout.paper(),
                    scale: full_size(),
                    chapter: "",
                    ink: crate::drawing::Ink::Black,
                    items: drawn.items,
                    lost: Vec::new(),
                },
                mark,
                position: Some(t.position(&drawn.map, drawn.crosses)),
            }
        };
        t.kept.iter().enumerate().map(one).collect()
    });
    TemplateSet {
        name,
        title: title.to_owned(),
        pages,
    }
}

/// File names given out.
#[derive(Default)]
struct Names(Vec<String>);

impl Names {
    /// A name of plain letters, figures and hyphens that no other set has.
    fn unique(&mut self, text: &str) -> String {
        let plain: String = text
            .chars()
            .map(|c| {
                if c.is_ascii_alphanumeric() {
                    c.to_ascii_lowercase()
                } else {
                    ' '
                }
            })
            .collect();
        let words: Vec<_> = plain.split_whitespace().collect();
        let stem = if words.is_empty() {
            "cutout".to_owned()
        } else {
            words.join("-")
        };
        let stem: String = stem.chars().take(40).collect();
        let mut name = stem.clone();
        let mut n = 2;
        while self.0.contains(&name) {
            name = format!("{stem}-{n}");
            n += 1;
        }
        self.0.push(name.clone());
        name
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sets_have_names_that_any_disk_takes() {
        let mut names = Names::default();
        let given =
            ["counter", "Ice well", "ice/well", "../../x", "Грill", "…"].map(|n| names.unique(n));
        assert_eq!(
            given,
            ["counter", "ice-well", "ice-well-2", "x", "ill", "cutout"]
        );
    }
}
