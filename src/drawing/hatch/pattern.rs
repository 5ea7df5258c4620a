//! The pattern of each material.

use super::lines::{Ruling, ruled, sides};
use super::scatter::{is_inside, strewn};
use super::{Material, sheet_steel, thickness};
use crate::drawing::page::Page;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Point2, Region, Vector2, Vertex};

/// Sheet steel thinner than this on paper is filled, millimetres (after ISO 128-50; value from memory).
const FILLED: f64 = 0.7;

/// Other materials thinner than this on paper are left white between their edges, millimetres.
const BARE: f64 = 0.7;

/// Hatches one region; `turned` hatches it the other way.
pub(super) fn draw(page: &mut Page, material: Material, region: &Region, turned: bool) {
    let thick = thickness(region);
    if material == Material::Steel && thick < FILLED {
        sheet_steel::fill(page, region);
        return;
    }
    if thick < BARE {
        return;
    }
    let slant = if turned { 135.0 } else { 45.0 };
    let along = along(region);
    match material {
        Material::Steel => pairs(page, region, slant, 1.6),
        Material::Board => rule(page, region, slant, (0.9 * thick).clamp(1.1, 2.6)),
        Material::BaseCoat => stipple(page, region, 0.85, 0.13),
        Material::FinishCoat => rule(page, region, along + 90.0, 0.9),
        Material::Tile => lattice(page, region, 1.5),
        Material::Concrete => concrete(page, region, slant),
        Material::Plywood => plies(page, region, along, thick),
        Material::Timber => cross(page, region, along),
        Material::Earth => earth(page, region),
        Material::Pavers => pairs(page, region, slant, 2.4),
    }
}

fn line(page: &mut Page, [from, to]: [Point2; 2]) {
    page.line(Layer::Hatch, Pen::Fine, Dash::Solid, from, to);
}

fn rule(page: &mut Page, region: &Region, angle: f64, apart: f64) {
    let ruling = Ruling {
        angle,
        apart,
        shift: 0.0,
    };
    for piece in ruled(region, ruling) {
        line(page, piece);
    }
}

/// Two lines close together, then a wider gap.
fn pairs(page: &mut Page, region: &Region, angle: f64, apart: f64) {
    for shift in [0.0, 0.35 * apart] {
        for piece in ruled(
            region,
            Ruling {
                angle,
                apart,
                shift,
            },
        ) {
            line(page, piece);
        }
    }
}

/// Lines both ways.
fn lattice(page: &mut Page, region: &Region, apart: f64) {
    for angle in [45.0, 135.0] {
        rule(page, region, angle, apart);
    }
}

fn dot(page: &mut Page, at: Point2, radius: f64) {
    let points = vec![
        Vertex::bent(at.x + radius, at.y, 1.0),
        Vertex::bent(at.x - radius, at.y, 1.0),
    ];
    page.path(Layer::Hatch, None, Dash::Solid, points, true, Some(0.0));
}

fn stipple(page: &mut Page, region: &Region, apart: f64, radius: f64) {
    for grain in strewn(region, apart, radius + 0.12) {
        dot(page, grain.at, radius);
    }
}

/// Wide lines with stones and grains strewn among them.
fn concrete(page: &mut Page, region: &Region, slant: f64) {
    rule(page, region, slant, 3.6);
    let all: Vec<_> = sides(region).collect();
    for grain in strewn(region, 2.9, 0.3) {
        let [size, turn] = grain.chance;
        let size = 0.35 + 0.45 * size;
        if size < 0.5 || !is_inside(&all, grain.at, size + 0.25) {
            dot(page, grain.at, 0.16);
            continue;
        }
        let corner = |k: f64| {
            let angle = std::f64::consts::TAU * (turn + k / 3.0 + 0.04 * k);
            grain.at + Vector2::new(angle.cos(), angle.sin()) * size
        };
        let points = [0.0, 1.0, 2.0].map(corner).map(|p| Vertex::sharp(p.x, p.y));
        page.path(
            Layer::Hatch,
            Some(Pen::Fine),
            Dash::Solid,
            points.to_vec(),
            true,
            None,
        );
    }
}

/// Plies along the sheet, an odd number of them, and ticks across every second one.
fn plies(page: &mut Page, region: &Region, along: f64, thick: f64) {
    let count = [5.0, 3.0].into_iter().find(|n| thick / n >= 0.5);
    let ply = thick / count.unwrap_or(1.0);
    let across = Vector2::new(-along.to_radians().sin(), along.to_radians().cos());
    let low = sides(region).map(|s| s[0].coords.dot(&across));
    let shift = low.fold(f64::INFINITY, f64::min);
    let plies = ruled(
        region,
        Ruling {
            angle: along,
            apart: ply,
            shift: shift + ply,
        },
    );
    for piece in plies {
        line(page, piece);
    }
    for tick in ruled(
        region,
        Ruling {
            angle: along + 60.0,
            apart: 3.0,
            shift: 0.0,
        },
    ) {
        line(page, tick);
    }
}

/// The diagonals of a stick, from edge to edge.
fn cross(page: &mut Page, region: &Region, along: f64) {
    let (sin, cos) = along.to_radians().sin_cos();
    let (u, v) = (Vector2::new(cos, sin), Vector2::new(-sin, cos));
    let reach = |axis: Vector2| {
        let all = sides(region).map(|s| s[0].coords.dot(&axis));
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), x| {
            (l.min(x), h.max(x))
        })
    };
    let ((u0, u1), (v0, v1)) = (reach(u), reach(v));
    let at = |a: f64, b: f64| Point2::from(u * a + v * b);
    for [from, to] in [[at(u0, v0), at(u1, v1)], [at(u0, v1), at(u1, v0)]] {
        let way = to - from;
        let angle = way.y.atan2(way.x).to_degrees();
        let normal = Vector2::new(-way.y, way.x)
            .try_normalize(1e-9)
            .unwrap_or_default();
        // The one line of the ruling that passes both corners.
        let ruling = Ruling {
            angle,
            apart: 1e4,
            shift: from.coords.dot(&normal),
        };
        for piece in ruled(region, ruling) {
            line(page, piece);
        }
    }
}

/// Clusters of three strokes, turned in turn.
fn earth(page: &mut Page, region: &Region) {
    let all: Vec<_> = sides(region).collect();
    for (number, grain) in strewn(region, 4.2, 0.8).into_iter().enumerate() {
        let angle: f64 = if number % 2 == 0 { 45.0 } else { 135.0 };
        let (sin, cos) = angle.to_radians().sin_cos();
        let (along, across) = (Vector2::new(cos, sin), Vector2::new(-sin, cos));
        for k in [-1.0, 0.0, 1.0] {
            let (middle, half) = (
                grain.at + across * (0.75 * k),
                along * (1.1 - 0.2 * grain.chance[0]),
            );
            let ends = [middle - half, middle + half];
            if ends.iter().all(|p| is_inside(&all, *p, 0.1)) {
                line(page, ends);
            }
        }
    }
}

/// The direction of the longest side, degrees.
fn along(region: &Region) -> f64 {
    let long = |s: &[Point2; 2]| (s[1] - s[0]).norm();
    let longest = sides(region).max_by(|a, b| long(a).total_cmp(&long(b)));
    longest.map_or(0.0, |[a, b]| {
        let way = b - a;
        let angle = way.y.atan2(way.x).to_degrees();
        // One direction for both ways round.
        if angle <= -90.0 + 1e-6 {
            angle + 180.0
        } else if angle > 90.0 + 1e-6 {
            angle - 180.0
        } else {
            angle
        }
    })
}
