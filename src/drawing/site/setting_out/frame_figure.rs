//! The frame's corner points on the ground: strings, pegs, sides, diagonals and right angles.

use super::figure::{beside_line, beside_point, close_by, peg};
use super::{SettingOut, StretchOf};
use crate::drawing::fit::Fit;
use crate::drawing::page::{LARGE, Page};
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vector2};

/// Half the length of the batten at the end of a string, millimetres on the sheet.
const BATTEN: f64 = 1.6;

/// How much of the line from mark to mark is drawn at each of them.
const STUB: f64 = 6.0;

/// Everything that is drawn, as built.
pub(super) fn area(values: &SettingOut) -> Option<Bounds2> {
    let around = Bounds2::around(values.pegs.iter().map(|p| p.at))?;
    let past = Vector2::new(values.past, values.past);
    Some(Bounds2 {
        low: around.low - past,
        high: around.high + past,
    })
}

/// Draws it.
pub(super) fn draw(page: &mut Page, values: &SettingOut, fit: &Fit) {
    let at = |i: usize| values.pegs.get(i).map(|p| p.at);
    strings(page, values, fit);
    for stretch in &values.stretches {
        let [Some(a), Some(b)] = stretch.ends.map(at) else {
            continue;
        };
        let (pen, dash) = match stretch.of {
            StretchOf::Side => (Pen::Thick, Dash::Solid),
            StretchOf::Within => (Pen::Thin, Dash::Solid),
            StretchOf::Diagonal => (Pen::Thin, Dash::Dashed),
            StretchOf::Overall => continue,
        };
        page.line(Layer::Detail, pen, dash, fit.point(a), fit.point(b));
    }
    for triangle in &values.triangles {
        let [a, b] = triangle.marks.map(|p| fit.point(p));
        if let Some(along) = (b - a).try_normalize(1e-6) {
            // The line from mark to mark is only begun at both: whole ones would cover the diagonals.
            let stub = along * STUB.min((b - a).norm() / 2.0);
            for (from, to) in [(a, a + stub), (b, b - stub)] {
                page.line(Layer::Symbol, Pen::Fine, Dash::Solid, from, to);
            }
        }
        if let Some(corner) = at(triangle.corner) {
            for mark in [a, b] {
                tick(page, fit.point(corner), mark);
            }
        }
    }
    for p in &values.pegs {
        peg(page, fit.point(p.at));
    }
    for p in &values.pegs {
        if !beside_point(page, &p.letter, LARGE, fit.point(p.at)) {
            page.lose(&p.letter);
        }
    }
    letter_stretches(page, values, fit);
}

/// The strings along the sides of the frame, past its corners to battens.
fn strings(page: &mut Page, values: &SettingOut, fit: &Fit) {
    let corners: Vec<Point2> = values
        .outline
        .iter()
        .filter_map(|i| values.pegs.get(*i).map(|p| p.at))
        .collect();
    for (i, a) in corners.iter().enumerate() {
        let b = corners[(i + 1) % corners.len()];
        let Some(along) = (b - a).try_normalize(1e-6) else {
            continue;
        };
        let ends = [a - along * values.past, b + along * values.past].map(|p| fit.point(p));
        page.line(Layer::Centre, Pen::Fine, Dash::Centre, ends[0], ends[1]);
        let across = Vector2::new(-along.y, along.x) * BATTEN;
        for end in ends {
            page.line(
                Layer::Outline,
                Pen::Thick,
                Dash::Solid,
                end - across,
                end + across,
            );
        }
    }
}

/// A tick across a side at a mark.
fn tick(page: &mut Page, corner: Point2, mark: Point2) {
    if let Some(along) = (mark - corner).try_normalize(1e-6) {
        let across = Vector2::new(-along.y, along.x) * 1.2;
        page.line(
            Layer::Symbol,
            Pen::Medium,
            Dash::Solid,
            mark - across,
            mark + across,
        );
    }
}

fn letter_stretches(page: &mut Page, values: &SettingOut, fit: &Fit) {
    for wanted in [StretchOf::Side, StretchOf::Diagonal] {
        for stretch in values.stretches.iter().filter(|s| s.of == wanted) {
            let ends = stretch.ends.map(|i| values.pegs.get(i));
            let [Some(a), Some(b)] = ends else { continue };
            let line = [fit.point(a.at), fit.point(b.at)];
            // What finds no room here stands in the table.
            let text = format!("{}{} {}", a.letter, b.letter, stretch.words);
            if wanted == StretchOf::Side {
                let named = format!("{text}, {}", stretch.name);
                let is_named = !stretch.name.is_empty() && beside_line(page, &named, line);
                let _ = is_named || beside_line(page, &text, line);
            } else {
                on_diagonal(page, &text, line);
            }
        }
    }
}

/// A level text near a slanting line.
fn on_diagonal(page: &mut Page, text: &str, [from, to]: [Point2; 2]) {
    for share in [
        0.3, 0.7, 0.25, 0.75, 0.35, 0.65, 0.2, 0.8, 0.4, 0.6, 0.15, 0.85, 0.45, 0.55,
    ] {
        if close_by(
            page,
            text,
            crate::drawing::page::LETTERS,
            from + (to - from) * share,
        ) {
            return;
        }
    }
}
