//! The plan of the packs: the sleepers from above, and how high each is packed.

use super::signs;
use crate::drawing::fit::Fit;
use crate::drawing::marks::{Mark, place_marks, place_only_inside};
use crate::drawing::outline::frame_corners;
use crate::drawing::page::{LARGE, LETTERS, Page};
use crate::drawing::plans::chains::Lanes;
use crate::drawing::plans::key::Entry;
use crate::drawing::plans::layout::Layout;
use crate::drawing::plans::style::{EDGE, FINE, corners};
use crate::drawing::plans::{chains, labels, walls};
use crate::drawing::set::{Drawn, Set};
use crate::drawing::site::shims::{PackMark, ShimPlan};
use crate::drawing::{Align, Layer};
use crate::geometry::{Bounds2, Outline, Point2, Vector2};
use crate::plan::{Plan, Sleeper};

/// A square for a pack is at least so large on the sheet, millimetres.
const SMALLEST: f64 = 2.4;

/// Draws the plan of the packs.
pub fn shim_plan(set: &Set, shown: &ShimPlan, title: &str) -> Drawn {
    let Set { plan, frame, .. } = *set;
    let built = Outline::polygon(&frame_corners(plan)).bounds();
    let entries = entries(plan, shown);
    let lanes = Lanes::round(&built, &built);
    let layout = Layout {
        plan,
        built,
        room: frame.room(&shown.pack_notes),
        lanes,
        entries: &entries,
        table: None,
    };
    let laid = layout.lay(chains::overall(&[], "frame", &built).to_vec());
    let fit = laid.fit.clone();
    let mut page = frame.page(title, &fit.scale, &shown.pack_notes);
    laid.draw(&mut page, &layout);
    for sleeper in plan.sleepers() {
        EDGE.boxed(&mut page, &fit.area(&ground_of(plan, &sleeper)));
    }
    walls::draw(&mut page, plan, &fit, |_| true);
    let width = plan.design.trade.sleeper_width.mm() * fit.scale.factor;
    let side = (width * 0.88).max(SMALLEST);
    let marks: Vec<Mark> = shown
        .packs
        .iter()
        .map(|pack| draw_pack(&mut page, &fit, pack, side))
        .collect();
    if let Some(datum) = shown.datum {
        signs::datum(&mut page, fit.point(datum));
    }
    chains::draw(&mut page, plan, &fit, (&built, &lanes), &laid.chains);
    let left: Vec<Mark> = shown
        .packs
        .iter()
        .zip(marks)
        .filter(|(pack, mark)| !off_sleeper(&mut page, pack.out, mark, width))
        .map(|(_, mark)| mark)
        .collect();
    place_marks(&mut page, &left, &[]);
    if let Some(datum) = shown.datum {
        name_datum(&mut page, &fit, datum);
    }
    let inner = plan.design.trade.sleeper_width.mm();
    for (run, named) in plan.runs.iter().zip(&plan.design.runs) {
        let area = fit.area(&run.rectangle(run.framed, (inner, run.depth - inner)));
        labels::inside(
            &mut page,
            &format!("{} run", named.name.value),
            LARGE,
            &area,
        );
    }
    (page, fit.scale)
}

pub(super) fn name_datum(page: &mut Page, fit: &Fit, datum: Point2) {
    let area = signs::square(fit.point(datum), 3.6);
    let text = "datum".to_owned();
    if !signs::beside(page, &text, &area) {
        place_marks(page, &[Mark { text, area }], &[]);
    }
}

/// The ground that a sleeper takes.
pub(super) fn ground_of(plan: &Plan, sleeper: &Sleeper) -> Bounds2 {
    let panel = &plan.panels[sleeper.panel];
    let (a, b) = (
        panel.point(sleeper.p.0, sleeper.inwards.0),
        panel.point(sleeper.p.1, sleeper.inwards.1),
    );
    Bounds2 {
        low: a.inf(&b),
        high: a.sup(&b),
    }
}

/// Draws a pack, its number in it where there is room, and gives what is to be lettered beside it.
fn draw_pack(page: &mut Page, fit: &Fit, pack: &PackMark, side: f64) -> Mark {
    let area = signs::square(fit.point(pack.at), side);
    if pack.unsure {
        FINE.filled(page, corners(&area), 0.8);
    } else {
        FINE.boxed(page, &area);
    }
    let number = pack.number.to_string();
    let text = number.clone();
    let inside = place_only_inside(page, &Mark { text, area }, LETTERS);
    let text = if inside {
        pack.text.clone()
    } else {
        format!("{number}: {}", pack.text)
    };
    Mark { text, area }
}

/// Letters the height of a pack off its sleeper, in line with it: outside the frame, else inside.
fn off_sleeper(page: &mut Page, out: Vector2, mark: &Mark, width: f64) -> bool {
    let middle = mark.area.centre();
    let off = width / 2.0 + 1.0;
    let along = Vector2::new(out.y, -out.x);
    let shifts = [0.0, 2.0, -2.0, 4.0, -4.0, 6.0, -6.0];
    let ways = shifts.into_iter().flat_map(|s| [(out, s), (-out, s)]);
    let stands = ways.map(|(way, shift)| {
        let foot = middle + way * off + along * shift;
        let (up, down) = (
            Vector2::new(0.0, 0.33 * LETTERS),
            Vector2::new(0.0, LETTERS),
        );
        match (way.x, way.y) {
            (x, _) if x > 0.5 => (foot - down * 0.375, Align::Left, 0.0),
            (x, _) if x < -0.5 => (foot - down * 0.375, Align::Right, 0.0),
            (_, y) if y > 0.0 => (foot + up, Align::Centre, 0.0),
            _ => (foot - down * 1.08, Align::Centre, 0.0),
        }
    });
    page.place(Layer::Note, &mark.text, LETTERS, stands)
}

fn entries(plan: &Plan, shown: &ShimPlan) -> Vec<Entry> {
    let mut entries = vec![
        Entry::line(EDGE, "sleeper"),
        Entry::symbol(
            signs::pack_in_key,
            "pack of shims with its number in the schedule, its height beside it",
        ),
    ];
    if shown.packs.iter().any(|p| p.unsure) {
        let text = "pack on ground that is sparsely measured: measure there again";
        entries.push(Entry::symbol(signs::unsure_in_key, text));
    }
    if shown.datum.is_some() {
        let text = "datum: the highest ground under the island";
        entries.push(Entry::symbol(signs::datum_in_key, text));
    }
    if plan.faces.iter().any(|f| f.wall) {
        entries.push(Entry::symbol(
            walls::symbol,
            "wall that a side stands against",
        ));
    }
    entries.extend(shown.pack_words.iter().map(Entry::words));
    entries
}
