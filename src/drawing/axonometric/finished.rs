//! The finished island in isometric projection.

use super::{corner, lines, names};
use crate::drawing::Scale;
use crate::drawing::fit::Fit;
use crate::drawing::hidden::View;
use crate::drawing::set::{Drawn, Set};
use crate::geometry::{Bounds2, Vector3};
use crate::parts::{Group, Part, PartKind};
use crate::plan::Plan;
use crate::units::Length;

/// Width of the columns of names, millimetres.
const NAMES: f64 = 46.0;
/// Above and below the view, millimetres.
const AIR: f64 = 4.0;

/// Draws the sheet; `None` where there is nothing to see.
pub(super) fn draw(set: &Set, title: &str) -> Option<Drawn> {
    let plan = set.plan;
    let corner = corner::best(plan);
    let view = View::isometric(corner);
    let sight = set.scene.look(&view, &[], is_seen);
    let bounds = sight.bounds()?;
    let (fit, scale, notes) = laid_out(set, &view, &bounds);
    let mut page = set.frame.page(title, &scale, &notes);
    let place = |part: &Part| is_seen(part).then(Vector3::zeros);
    let depths = set.scene.depths(&view, place);
    let range = |of: usize| lines::range(set.scene.parts().get(of));
    let strokes = lines::weighed(&sight.lines, &depths, &fit, range);
    fit.draw(&mut page, &strokes, &lines::PENS);
    let (columns, _) = names::columns(&set.frame.room(&notes), NAMES);
    let named = names::of_finished(plan, corner);
    names::letter(&mut page, &named, &view, &depths, &fit, &columns);
    Some((page, scale))
}

/// The place of the view, the scale along its axes, and the notes above it. The scale does not depend on the notes'
/// own lines but for the room that they take.
fn laid_out(set: &Set, view: &View, bounds: &Bounds2) -> (Fit, Scale, Vec<String>) {
    let [shortening, ..] = view.shortening();
    let mut notes = notes(set.plan, "");
    let (_, between) = names::columns(&set.frame.room(&notes), NAMES);
    let axial = (bounds.width() / shortening, bounds.height() / shortening);
    let room = (between.width(), between.height() - 2.0 * AIR);
    let on_axes = Scale::fitting(set.frame.notation(), axial, room);
    let drawn = Scale {
        factor: on_axes.factor / shortening,
        name: on_axes.name.clone(),
    };
    notes = self::notes(set.plan, &on_axes.name);
    (Fit::at(drawn, bounds, &between), on_axes, notes)
}

/// Everything that is there when the island is done.
fn is_seen(part: &Part) -> bool {
    match part.group {
        Group::Forms => false,
        Group::Framing => part.kind == PartKind::Sleeper,
        Group::Appliances => !(part.kind == PartKind::Body && part.face.is_some()),
        Group::Boards | Group::Coats | Group::Counter => true,
    }
}

fn notes(plan: &Plan, scale: &str) -> Vec<String> {
    let notation = plan.design.project.units;
    let spell = |mm: f64| notation.spell_with_unit(Length::millimetres(mm));
    let counter = plan.counter.outline.bounds();
    vec![format!(
        "Isometric (ISO 5456-3): lengths are true only along the three axes, at {scale}. Overall sizes: counter {} × {}, its top {} above the datum.",
        spell(counter.width()),
        spell(counter.height()),
        spell(plan.levels.counter_top),
    )]
}
