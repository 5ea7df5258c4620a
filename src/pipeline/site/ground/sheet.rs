//! What the sheets of the ground show.

use super::{contours, words};
use crate::design::SiteObject;
use crate::drawing::site::shims::{
    ContourLine, FallArrow, LeanMark, LevelForm, LevelMark, PackMark, ShimPlan,
};
use crate::plan::Plan;
use crate::site::ground::{Fitted, Form, Ground, Level, Pack, Surface};
use crate::table::{Cell, Column, Table};
use crate::units::Length;

/// Longer surveys have no schedule on a sheet: their levels are in the tables.
const SCHEDULED: usize = 200;

/// What the sheets show.
pub(in crate::pipeline::site) fn sheet(plan: &Plan, ground: &Ground) -> ShimPlan {
    let mut shown = ShimPlan {
        levels: ground.levels.iter().map(|l| level(plan, l)).collect(),
        level_notes: vec![level_note(ground)],
        leans: leans(plan),
        ..ShimPlan::default()
    };
    if let Some(fitted) = &ground.fitted {
        fit(plan, ground, fitted, &mut shown);
    }
    if (1..=SCHEDULED).contains(&ground.levels.len()) {
        shown.schedules.push((
            level_schedule(plan, ground),
            level_schedule_notes(plan, ground),
        ));
    }
    shown
}

/// What leans by more than shows on no tape.
fn leans(plan: &Plan) -> Vec<LeanMark> {
    let notation = plan.design.project.units;
    let spell = |mm: f64| notation.spell_with_unit(Length::millimetres(mm));
    let objects = plan.design.site.objects.iter().flat_map(|o| o.value.iter());
    let leaning = objects.filter(|o| o.stands.shift.norm() >= 1.0);
    let mark = |o: &SiteObject| {
        let (shift, z) = (o.stands.shift, o.stands.z);
        LeanMark {
            foot: o.stands.foot,
            way: shift / shift.norm(),
            text: format!(
                "{} leans {} in {} {}",
                o.name,
                spell(shift.norm()),
                spell(z.1 - z.0),
                words::leaning(shift)
            ),
        }
    };
    leaning.map(mark).collect()
}

fn level_note(ground: &Ground) -> String {
    if ground.fitted.is_some() {
        let listed = if ground.levels.len() <= SCHEDULED {
            "x and y of each level are in the schedule."
        } else {
            "x and y of each level are in the tables of the site."
        };
        format!(
            "The ground as it was measured. Heights above the datum, rounded: the highest ground under the island is 0. The ground is flat between the levels. {listed}"
        )
    } else {
        "The ground as it was measured, heights above the highest level. These levels make no plane: how the ground falls, and what packs the sleepers, cannot be told."
            .to_owned()
    }
}

fn fit(plan: &Plan, ground: &Ground, fitted: &Fitted, shown: &mut ShimPlan) {
    let notation = plan.design.project.units;
    let spell = |mm: f64| words::fine(notation, mm);
    shown.datum = Some(fitted.datum);
    shown.packs = fitted.packs.iter().map(|p| pack(plan, p)).collect();
    shown.fall = (!fitted.fall.is_level).then(|| FallArrow {
        down: fitted.fall.down,
        text: format!("falls {}", words::slope(notation, fitted.fall.slope)),
    });
    let (every, contours) = contour_lines(plan, ground, fitted);
    shown.contours = contours;
    shown.interval = spell(every);
    shown.pack_notes = pack_notes(plan);
    let counts = fitted
        .pieces
        .iter()
        .zip(plan.design.site.survey.iter().flat_map(|s| &s.shims));
    let counts = counts.filter(|(count, _)| **count > 0);
    let mut counts: Vec<String> = counts
        .map(|(count, shim)| format!("{count} × {}", spell(shim.mm())))
        .collect();
    counts.reverse();
    if !counts.is_empty() {
        shown.pack_words.push("Shims in all packs:".to_owned());
        shown.pack_words.extend(counts);
    }
    shown.level_words.push(format!(
        "Best-fit plane: {}",
        words::fall(plan, &fitted.fall)
    ));
    let rms = Length::millimetres(fitted.plane.root_mean_square());
    shown.level_words.push(format!(
        "Levels lie about it by {} (root mean square)",
        crate::units::Unit::Length.spell(rms.mm(), notation)
    ));
    let schedule = (pack_schedule(plan, fitted), pack_schedule_notes(plan));
    shown.schedules.push(schedule);
}

fn level(plan: &Plan, level: &Level) -> LevelMark {
    let notation = plan.design.project.units;
    let mut said = Vec::new();
    if level.form != Form::Plain {
        said.push(words::form(level.form).to_owned());
    }
    if let Some(deep) = level.pool {
        let deep = notation.spell_with_unit(Length::millimetres(deep));
        said.push(format!("water stands {deep}"));
    }
    LevelMark {
        name: level.name.clone(),
        at: level.at,
        text: words::height(notation, level.height),
        words: said.join(", "),
        form: match level.form {
            Form::Plain => LevelForm::Plain,
            Form::Peak => LevelForm::Peak,
            Form::Hollow => LevelForm::Hollow,
        },
    }
}

fn pack(plan: &Plan, pack: &Pack) -> PackMark {
    let inward = plan.panels.get(pack.panel).map(|p| p.inward);
    PackMark {
        number: pack.number,
        at: pack.at,
        out: -inward.unwrap_or_default(),
        text: words::fine(plan.design.project.units, pack.height),
        unsure: pack.sparse || pack.beyond,
    }
}

fn pack_notes(plan: &Plan) -> Vec<String> {
    let notation = plan.design.project.units;
    let underside = plan.levels.frame_bottom - plan.design.trade.sleeper_height.mm();
    let thinnest = plan
        .design
        .site
        .survey
        .iter()
        .filter_map(|s| s.shims.first());
    let thinnest = thinnest.map(|t| words::fine(notation, t.mm()));
    let thinnest: Vec<String> = thinnest.collect();
    vec![
        format!(
            "Sleepers from above, and how high each is packed from the ground to its underside, which stands level {} above the datum. In whole shims, so the frame is level to {}.",
            notation.spell_with_unit(Length::millimetres(underside)),
            thinnest.join("")
        ),
        "Set the pack at the datum first, the long sleepers next, and check with a level before anything is fastened. Rot-proof shims, as wide as the sleeper; a high pack is bedded in mortar or cut as one block."
            .to_owned(),
    ]
}

/// Contours, where there are few enough triangles for them to be read, and from one to the next.
fn contour_lines(plan: &Plan, ground: &Ground, fitted: &Fitted) -> (f64, Vec<ContourLine>) {
    const MOST: usize = 4000;
    let notation = plan.design.project.units;
    let levels = plan.design.site.survey.iter().flat_map(|s| &s.levels);
    let points: Vec<_> = levels.map(|l| l.at).collect();
    let surface = Surface::through(&points);
    let triangles = surface.iter().flat_map(Surface::triangles).take(MOST + 1);
    let mut triangles: Vec<_> = triangles.collect();
    if triangles.len() > MOST {
        return (0.0, Vec::new());
    }
    for corner in triangles.iter_mut().flatten() {
        corner.z -= fitted.survey_datum;
    }
    let heights = ground.levels.iter().map(|l| l.height);
    let (low, high) = heights.fold((f64::MAX, f64::MIN), |(l, h), z| (l.min(z), h.max(z)));
    let step = contours::interval(notation, high - low);
    let first = (low / step).ceil();
    let heights = (0..40).map(|k| (first + f64::from(k)) * step);
    let lines = heights
        .take_while(|height| *height <= high)
        .map(|height| ContourLine {
            text: words::height(notation, height),
            pieces: contours::line(&triangles, height),
        });
    (step, lines.collect())
}

fn columns(of: &[&str]) -> Vec<Column> {
    of.iter().map(|c| Column::plain(c)).collect()
}

fn pack_schedule(plan: &Plan, fitted: &Fitted) -> Table {
    let notation = plan.design.project.units;
    let spell = |mm: f64| notation.spell(Length::millimetres(mm));
    let unsure = fitted.packs.iter().any(|p| !words::known(p).is_empty());
    let row = |pack: &Pack| {
        let mut row = vec![
            Cell::count(pack.number as f64),
            Cell::text(pack.sleeper.as_str()),
            Cell::text(spell(pack.along)),
            Cell::text(words::fine(notation, pack.height)),
            Cell::text(words::shims(plan, pack)),
        ];
        if unsure {
            row.push(Cell::text(match words::known(pack) {
                "" => "yes",
                other => other,
            }));
        }
        row
    };
    let mut headings = vec!["no.", "sleeper", "along it", "height", "shims"];
    if unsure {
        headings.push("measured");
    }
    Table {
        name: "packs".to_owned(),
        title: "Packs of shims".to_owned(),
        columns: columns(&headings),
        rows: fitted.packs.iter().map(row).collect(),
    }
}

fn pack_schedule_notes(plan: &Plan) -> Vec<String> {
    let survey = plan.design.site.survey.as_ref();
    let far = survey.map_or(Length::ZERO, |s| s.sparse_beyond);
    vec![
        "Along it: to the middle of the pack, from the sleeper's left end as the cook of its run sees it, or from its end at the working side."
            .to_owned(),
        format!(
            "Sparse: the nearest level is more than {} off. Beyond the levels: the best-fit plane stands for the ground.",
            plan.design.project.units.spell_with_unit(far)
        ),
    ]
}

fn level_schedule(plan: &Plan, ground: &Ground) -> Table {
    let notation = plan.design.project.units;
    let spell = |mm: f64| notation.spell(Length::millimetres(mm));
    let fits = ground.fitted.is_some();
    let row = |level: &Level| {
        let mut row = vec![
            Cell::text(level.name.as_str()),
            Cell::text(spell(level.at.x)),
            Cell::text(spell(level.at.y)),
            Cell::text(words::height(notation, level.height)),
        ];
        if fits {
            row.push(Cell::text(words::height(notation, level.residual)));
        }
        row
    };
    let mut headings = vec!["level", "x", "y", "height"];
    if fits {
        headings.push("off the plane");
    }
    Table {
        name: "levels".to_owned(),
        title: "Levels of the ground".to_owned(),
        columns: columns(&headings),
        rows: ground.levels.iter().map(row).collect(),
    }
}

fn level_schedule_notes(plan: &Plan, ground: &Ground) -> Vec<String> {
    let mut notes = vec![
        "x: along the first run from the left end of its frame; y: from its working face, away from the cook."
            .to_owned(),
    ];
    if let Some(survey) = plan
        .design
        .site
        .survey
        .as_ref()
        .filter(|_| ground.fitted.is_some())
    {
        let reading = plan.design.project.units.spell_with_unit(survey.reading);
        notes.push(format!(
            "Read to {reading}. Heights are rounded here; the tables have them in full."
        ));
    }
    notes
}
