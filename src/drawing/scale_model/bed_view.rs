//! One bed from above, with the prints as they lie on it.

use super::prints::Prints;
use crate::drawing::fit::Fit;
use crate::drawing::hidden::{Placed, Shape, Stroke, View, visible};
use crate::drawing::page::{self, LARGE, LETTERS, Page, Stand};
use crate::drawing::{Align, Dash, Layer, Pen, Scale};
use crate::geometry::{Bounds2, Placement, Point2, Vertex};

/// Room below a bed for its words, millimetres.
pub(super) const WORDS: f64 = 8.0;
/// Lines of prints.
const PENS: [(Layer, Pen); 1] = [(Layer::Outline, Pen::Thin)];
/// So many places along each side of a print are tried for its number.
const TRIED: u32 = 25;

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
    let strokes: Vec<Stroke> = visible(&bodies)
        .iter()
        .map(|line| Stroke {
            from: line.from,
            to: line.to,
            weight: 0,
        })
        .collect();
    fit.draw(page, &strokes, &PENS);
    for (i, _, motion) in &shapes {
        let points = prints.pieces[*i].surface.points.iter();
        let around = Bounds2::around(points.map(|p| (motion * p).xy()));
        if let Some(around) = around {
            letter(page, i + 1, &fit.area(&around), &bed);
        }
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

/// The number of a print within it, or just beside it where it is full of lines.
fn letter(page: &mut Page, number: usize, around: &Bounds2, bed: &Bounds2) {
    let text = number.to_string();
    let lettered = [LARGE, LETTERS].into_iter().any(|height| {
        let down = height / 2.0;
        let middle = around.centre();
        let shares = (0..=TRIED).map(|i| f64::from(i) / f64::from(TRIED));
        let mut places: Vec<Point2> = shares
            .clone()
            .flat_map(|v| {
                shares.clone().map(move |u| {
                    Point2::new(
                        around.low.x + around.width() * u,
                        around.low.y + around.height() * v,
                    )
                })
            })
            .collect();
        places.sort_by(|a, b| (a - middle).norm().total_cmp(&(b - middle).norm()));
        let beside = shares.flat_map(|u| {
            let x = around.low.x + around.width() * u;
            let y = around.low.y + around.height() * u;
            [
                Point2::new(around.high.x + height, y),
                Point2::new(around.low.x - height, y),
                Point2::new(x, around.high.y + height),
                Point2::new(x, around.low.y - height),
            ]
        });
        let inside = |p: &Point2| {
            let (low, high) = (p - bed.low, bed.high - p);
            low.min() > height / 2.0 && high.min() > height / 2.0
        };
        let stands = places.into_iter().chain(beside).filter(inside);
        let stands =
            stands.map(|p| -> Stand { (Point2::new(p.x, p.y - down), Align::Centre, 0.0) });
        page.place(Layer::Note, &text, height, stands)
    });
    if !lettered {
        page.lose(&text);
    }
}

fn caption(page: &mut Page, prints: &Prints, number: usize, bed: &Bounds2) {
    let [x, y, _] = prints.bed;
    let text = format!(
        "bed {} of {}: {x} × {y} mm",
        number + 1,
        prints.plates.len()
    );
    let (text, height) = page::fit(&text, bed.width(), &[LARGE, LETTERS]);
    let at = Point2::new(bed.low.x, bed.low.y - 1.5 - height);
    page.text(Layer::Note, &text, height, (at, Align::Left, 0.0));
}
