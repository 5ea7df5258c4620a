//! One bed from above, with the prints as they lie on it.

use super::prints::Prints;
use crate::drawing::fit::Fit;
use crate::drawing::hidden::{Depths, Line, Placed, Shape, Stroke, View, visible};
use crate::drawing::page::{self, LARGE, LETTERS, Page, Stand};
use crate::drawing::{Align, Dash, Layer, Pen, Scale};
use crate::geometry::{Bounds2, Placement, Point2, Vector2, Vertex, cross};

/// Room below a bed for its words, millimetres.
pub(super) const WORDS: f64 = 8.0;
/// Lines of prints.
const PENS: [(Layer, Pen); 1] = [(Layer::Outline, Pen::Thin)];
/// So many places along each side of a print are tried for its number.
const TRIED: u32 = 24;

/// Draws a bed into an area of the sheet, its words below it.
pub(super) fn draw(page: &mut Page, prints: &Prints, number: usize, area: &Bounds2) {
    let Some(plate) = prints.plates.get(number) else {
        return;
    };
    let [x, y, _] = prints.bed;
    let built = Bounds2 {
        low: Point2::origin(),
        high: Point2::new(x, y),
    };
    let factor = (area.width() / x).min((area.height() - WORDS) / y);
    let bed = Bounds2 {
        low: Point2::new(area.low.x, area.high.y - y * factor),
        high: Point2::new(area.low.x + x * factor, area.high.y),
    };
    let scale = Scale {
        factor,
        ..Scale::none()
    };
    let fit = Fit::at(scale, &built, &bed);
    outline(page, &bed);
    let pieces = plate
        .iter()
        .filter_map(|(i, motion)| Some((*i, prints.pieces.get(*i)?, motion)));
    let shapes: Vec<(usize, Shape, Placement)> = pieces
        .map(|(i, piece, motion)| {
            let motion = View::from_above().of_part(motion);
            (i, Shape::new(piece.surface), motion)
        })
        .collect();
    let bodies: Vec<Placed> = shapes
        .iter()
        .map(|(_, shape, motion)| Placed {
            shape,
            motion: *motion,
        })
        .collect();
    let depths = Depths::new(&bodies);
    let lines = visible(&bodies);
    let strokes: Vec<Stroke> = lines.iter().map(stroke).collect();
    fit.draw(page, &strokes, &PENS);
    for (body, (i, _, motion)) in shapes.iter().enumerate() {
        let points = prints.pieces[*i].surface.points.iter();
        let Some(around) = Bounds2::around(points.map(|p| (motion * p).xy())) else {
            continue;
        };
        let own = lines.iter().filter(|l| l.of == body);
        let own: Vec<[Point2; 2]> = own.map(|l| [fit.point(l.from), fit.point(l.to)]).collect();
        let is_on = |at: Point2| depths.at(fit.back(at)).is_some();
        let places = places(&fit.area(&around), is_on, &own);
        letter(page, i + 1, &places, &bed);
    }
    caption(page, prints, number, &bed);
}

fn outline(page: &mut Page, bed: &Bounds2) {
    let (low, high) = (bed.low, bed.high);
    let corners = [
        (low.x, low.y),
        (high.x, low.y),
        (high.x, high.y),
        (low.x, high.y),
    ];
    let points = corners.iter().map(|&(x, y)| Vertex::sharp(x, y)).collect();
    page.path(
        Layer::Detail,
        Some(Pen::Medium),
        Dash::Phantom,
        points,
        true,
        None,
    );
}

fn stroke(line: &Line) -> Stroke {
    Stroke {
        from: line.from,
        to: line.to,
        weight: 0,
    }
}

/// The number of a print at the first of some places where there is room on the bed.
fn letter(page: &mut Page, number: usize, places: &[Point2], bed: &Bounds2) {
    let text = number.to_string();
    let lettered = [LARGE, LETTERS].into_iter().any(|height| {
        let inside = |p: &&Point2| {
            let (low, high) = (*p - bed.low, bed.high - *p);
            low.min() > height / 2.0 && high.min() > height / 2.0
        };
        let stands = places.iter().filter(inside).map(|p| -> Stand {
            let baseline = Point2::new(p.x, p.y - height / 2.0);
            (baseline, Align::Centre, 0.0)
        });
        page.place(Layer::Note, &text, height, stands)
    });
    if !lettered {
        page.lose(&text);
    }
}

/// Places for the number of a print in and beside the box round it: first those on the print, then those that have lines of
/// it to all four sides, then the others, each time the nearest to the middle first.
pub(super) fn places(
    around: &Bounds2,
    is_on: impl Fn(Point2) -> bool,
    lines: &[[Point2; 2]],
) -> Vec<Point2> {
    let share = |n: u32| (f64::from(n) + 0.5) / f64::from(TRIED);
    let at = |i: u32, k: u32| {
        around.low + Vector2::new(around.width() * share(i), around.height() * share(k))
    };
    let is_enclosed = |at: Point2| {
        let ends = [
            Point2::new(around.low.x - 1.0, at.y),
            Point2::new(around.high.x + 1.0, at.y),
            Point2::new(at.x, around.low.y - 1.0),
            Point2::new(at.x, around.high.y + 1.0),
        ];
        ends.iter()
            .all(|end| lines.iter().any(|line| cross([at, *end], *line)))
    };
    let rank = |at: Point2| {
        if is_on(at) {
            0
        } else if is_enclosed(at) {
            1
        } else {
            2
        }
    };
    let middle = around.centre();
    let inside = (0..TRIED).flat_map(|i| (0..TRIED).map(move |k| at(i, k)));
    let mut ranked: Vec<(u32, f64, Point2)> = inside
        .map(|at| (rank(at), (at - middle).norm(), at))
        .collect();
    ranked.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let beside = [
        Point2::new(around.high.x + LARGE, middle.y),
        Point2::new(middle.x, around.high.y + LARGE),
        Point2::new(around.low.x - LARGE, middle.y),
        Point2::new(middle.x, around.low.y - LARGE),
    ];
    ranked.into_iter().map(|r| r.2).chain(beside).collect()
}

fn caption(page: &mut Page, prints: &Prints, number: usize, bed: &Bounds2) {
    let [x, y, _] = prints.bed;
    let text = format!("plate-{}.3mf, bed {x} × {y} mm", number + 1);
    let (text, height) = page::fit(&text, bed.width(), &[LARGE, LETTERS]);
    let at = Point2::new(bed.low.x, bed.low.y - 1.5 - height);
    page.text(Layer::Note, &text, height, (at, Align::Left, 0.0));
}
