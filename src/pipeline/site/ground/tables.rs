//! The tables of the ground: how it falls, its levels, the packs, and the shims to buy.

use super::words;
use crate::plan::Plan;
use crate::site::ground::{Fitted, Ground, Level, Pack, Post};
use crate::table::{Cell, Column, Table};
use crate::units::{Notation, Unit};

/// The tables, in the order they are printed.
pub(in crate::pipeline::site) fn tables(plan: &Plan, ground: &Ground) -> Vec<Table> {
    let units = Units(plan.design.project.units);
    let mut all = Vec::new();
    if let Some(fitted) = &ground.fitted {
        all.push(summary(plan, ground, fitted, units));
    }
    if plan.design.site.survey.is_some() {
        all.push(levels(ground, units));
    }
    if let Some(fitted) = &ground.fitted {
        all.push(packs(plan, fitted, units));
        all.push(to_buy(plan, fitted));
    }
    if !ground.posts.is_empty() {
        all.push(posts(ground, units));
    }
    all
}

/// The unit of lengths in a table: inches or millimetres.
#[derive(Clone, Copy)]
struct Units(Notation);

impl Units {
    fn column(self, heading: &str) -> Column {
        let unit = match self.0 {
            Notation::Imperial => "in",
            Notation::Metric => "mm",
        };
        Column::with_unit(heading, unit)
    }

    /// To a ten-thousandth of an inch or a hundredth of a millimetre: finer than anything is measured, so that sums hold.
    fn cell(self, mm: f64) -> Cell {
        match self.0 {
            Notation::Imperial => Cell::number(mm / 25.4, 4),
            Notation::Metric => Cell::number(mm, 2),
        }
    }

    fn maybe(self, mm: Option<f64>) -> Cell {
        mm.map_or(Cell::Empty, |mm| self.cell(mm))
    }
}

fn named(name: &str, title: &str, columns: Vec<Column>, rows: Vec<Vec<Cell>>) -> Table {
    Table {
        name: name.to_owned(),
        title: title.to_owned(),
        columns,
        rows,
    }
}

/// What the ground does, one line a fact.
fn summary(plan: &Plan, ground: &Ground, fitted: &Fitted, units: Units) -> Table {
    let plane = &fitted.plane;
    let spell = |mm: f64| Unit::Length.spell(mm, units.0);
    let slope = match units.0 {
        Notation::Imperial => (fitted.fall.slope * 12.0, 5, "in per ft"),
        Notation::Metric => (fitted.fall.slope * 1000.0, 4, "mm per m"),
    };
    let number =
        |what: &str, value: Cell, unit: &str| vec![Cell::text(what), value, Cell::text(unit)];
    let unit = units.column("").unit;
    let length = |what: &str, mm: Option<f64>| number(what, units.maybe(mm), &unit);
    let beyond = fitted.packs.iter().filter(|p| p.beyond || p.sparse).count();
    let rows = vec![
        number("levels", Cell::count(ground.levels.len() as f64), ""),
        number("fall", Cell::number(slope.0, slope.1), slope.2),
        number("which way", Cell::text(words::way(plan, &fitted.fall)), ""),
        number(
            "which way, clockwise from straight away from the cook",
            Cell::number(fitted.fall.clockwise(), 2),
            "deg",
        ),
        length(
            "root mean square of the residuals",
            Some(plane.root_mean_square()),
        ),
        length(
            "standard deviation of one level about the plane",
            plane.spread(),
        ),
        length("datum: x", Some(fitted.datum.x)),
        length("datum: y", Some(fitted.datum.y)),
        length(
            "datum in the survey's own heights",
            Some(fitted.survey_datum),
        ),
        length(
            "plane at x = 0, y = 0 above the datum",
            Some(plane.at(crate::geometry::Point2::origin())),
        ),
        number("packs", Cell::count(fitted.packs.len() as f64), ""),
        number(
            "packs on ground sparsely measured",
            Cell::count(beyond as f64),
            "",
        ),
        number(
            "reading, as stated",
            Cell::text(
                plan.design
                    .site
                    .survey
                    .as_ref()
                    .map_or_else(String::new, |s| spell(s.reading.mm())),
            ),
            "",
        ),
    ];
    let columns = ["what", "value", "unit"].map(Column::plain).to_vec();
    named("ground", "The ground", columns, rows)
}

fn levels(ground: &Ground, units: Units) -> Table {
    let columns = vec![
        Column::plain("level"),
        units.column("x"),
        units.column("y"),
        units.column("height"),
        units.column("above the plane"),
        units.column("plane ±"),
        Column::plain("form"),
        units.column("water stands"),
        Column::plain("under the island"),
    ];
    let fits = ground.fitted.is_some();
    let row = |level: &Level| {
        vec![
            Cell::text(level.name.as_str()),
            units.cell(level.at.x),
            units.cell(level.at.y),
            units.cell(level.height),
            units.maybe(fits.then_some(level.residual)),
            units.maybe(level.error),
            Cell::text(words::form(level.form)),
            units.maybe(level.pool),
            Cell::text(if level.under { "yes" } else { "" }),
        ]
    };
    let title = if fits {
        "Levels of the ground, above the datum"
    } else {
        "Levels of the ground, above the highest"
    };
    named(
        "survey",
        title,
        columns,
        ground.levels.iter().map(row).collect(),
    )
}

fn packs(plan: &Plan, fitted: &Fitted, units: Units) -> Table {
    let columns = vec![
        Column::plain("pack"),
        Column::plain("run"),
        Column::plain("sleeper"),
        units.column("along it"),
        units.column("x"),
        units.column("y"),
        units.column("ground"),
        units.column("gap"),
        units.column("pack height"),
        Column::plain("shims"),
        units.column("left over"),
        units.column("plane ±"),
        units.column("nearest level"),
        Column::plain("ground known"),
    ];
    let row = |pack: &Pack| {
        let run = plan.design.runs.get(pack.run);
        vec![
            Cell::count(pack.number as f64),
            Cell::text(run.map_or_else(String::new, |r| r.name.value.clone())),
            Cell::text(pack.sleeper.as_str()),
            units.cell(pack.along),
            units.cell(pack.at.x),
            units.cell(pack.at.y),
            units.cell(pack.ground),
            units.cell(pack.gap),
            units.cell(pack.height),
            Cell::text(words::shims(plan, pack)),
            units.cell(pack.rest()),
            units.maybe(pack.error),
            units.cell(pack.nearest),
            Cell::text(words::known(pack)),
        ]
    };
    named(
        "shims",
        "Packs of shims under the sleepers",
        columns,
        fitted.packs.iter().map(row).collect(),
    )
}

/// What stands around, how it leans, and how far the island is off at some heights.
fn posts(ground: &Ground, units: Units) -> Table {
    let columns = vec![
        Column::plain("object"),
        Column::plain("kind"),
        units.column("leans"),
        units.column("in"),
        Column::plain("which way"),
        units.column("off at its foot"),
        units.column("off at the counter's underside"),
        units.column("off at the counter's top"),
        units.column("nearest"),
        units.column("at a height of"),
    ];
    let row = |post: &Post| {
        let (lean, high) = post.lean;
        let leans = lean.norm() > 0.0;
        vec![
            Cell::text(post.name.as_str()),
            Cell::text(post.kind.name()),
            units.maybe(leans.then(|| lean.norm())),
            units.maybe(leans.then_some(high)),
            Cell::text(if leans { words::leaning(lean) } else { "" }),
            units.maybe(post.at_foot),
            units.maybe(post.at_underside),
            units.maybe(post.at_top),
            units.cell(post.nearest.0),
            units.maybe(leans.then_some(post.nearest.1)),
        ]
    };
    let rows = ground.posts.iter().map(row).collect();
    named(
        "posts",
        "What stands around, and how far the island is off",
        columns,
        rows,
    )
}

/// How many of each thickness, the thickest first.
pub(super) fn to_buy(plan: &Plan, fitted: &Fitted) -> Table {
    let notation = plan.design.project.units;
    let columns = ["shim", "pieces"].map(Column::plain).to_vec();
    let survey = plan.design.site.survey.as_ref();
    let shims = survey.iter().flat_map(|s| &s.shims).zip(&fitted.pieces);
    let rows = shims.map(|(thickness, count)| {
        vec![
            Cell::text(words::fine(notation, thickness.mm())),
            Cell::count(f64::from(*count)),
        ]
    });
    let mut rows: Vec<_> = rows.collect();
    rows.reverse();
    named("shims-to-buy", "Shims in all packs", columns, rows)
}
