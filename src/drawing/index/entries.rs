//! What the key explains: lines and signs of the set, and the hatches of what is built.

use super::key::{Key, Sample};
use crate::drawing::hatch::Material;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::plans;
use crate::drawing::{Align, Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vector2, Vertex};
use crate::parts::Assembly;
use crate::plan::Plan;
use std::collections::BTreeSet;

/// The line types (after ISO 128).
pub fn lines(width: f64) -> Key {
    let line = |layer, pen, dash, words: &str| (Sample::Line(layer, pen, dash), words.to_owned());
    let entries = vec![
        line(
            Layer::Section,
            Pen::Heavy,
            Dash::Solid,
            "cut through; what stands on the site",
        ),
        line(
            Layer::Outline,
            Pen::Thick,
            Dash::Solid,
            "outer edges of what is shown",
        ),
        line(
            Layer::Outline,
            Pen::Thin,
            Dash::Solid,
            "other visible edges",
        ),
        line(
            Layer::Hidden,
            Pen::Thin,
            Dash::Dashed,
            "hidden behind or below",
        ),
        line(
            Layer::Site,
            Pen::Medium,
            Dash::Dashed,
            "overhead: edge of a roof or beam",
        ),
        line(
            Layer::Centre,
            Pen::Thin,
            Dash::Centre,
            "centre line, joint in the slab",
        ),
        line(
            Layer::Detail,
            Pen::Thin,
            Dash::Phantom,
            "limit; appliance or neighbour, not cut",
        ),
        line(
            Layer::Dimension,
            Pen::Fine,
            Dash::Solid,
            "dimension, extension line, leader, hatch",
        ),
    ];
    Key::new("Lines", entries, 1, width)
}

/// The hatches of what is built of, and of the ground.
pub fn hatches(assembly: &Assembly, width: f64) -> Key {
    let built = assembly.parts.iter().filter_map(Material::of);
    let materials: BTreeSet<Material> = built.chain([Material::Earth]).collect();
    let entries = materials
        .into_iter()
        .map(|m| (Sample::Hatch(m), name(m).to_owned()));
    Key::new("Hatches of what is cut", entries.collect(), 2, width)
}

fn name(material: Material) -> &'static str {
    match material {
        Material::Steel => "sheet steel",
        Material::Board => "cement board",
        Material::BaseCoat => "base coat",
        Material::FinishCoat => "finish coat",
        Material::Tile => "tile with its bed",
        Material::Concrete => "cast concrete",
        Material::Plywood => "plywood",
        Material::Timber => "sleeper",
        Material::Earth => "ground",
        Material::Pavers => "pavers",
    }
}

/// The signs by which sheets call each other, and levels.
pub fn signs(plan: &Plan, width: f64) -> Key {
    let sign = |draw: fn(&mut Page, &Bounds2), words: &str| (Sample::Sign(draw), words.to_owned());
    let mut entries = vec![
        sign(
            plans::section_symbol,
            "section: letter and sheet; one looks along the arrow",
        ),
        sign(
            plans::face_symbol,
            "the face it points to is on the sheet named behind it",
        ),
        sign(
            figure,
            "section or detail: letter or number under the figure",
        ),
        sign(level, "level above the datum"),
    ];
    let services = plans::service_signs(plan).into_iter();
    entries.extend(services.map(|(draw, words)| sign(draw, words)));
    Key::new("Signs", entries, 1, width)
}

fn figure(page: &mut Page, area: &Bounds2) {
    let middle = area.centre();
    let radius = 2.3;
    let ring = [radius, -radius].map(|r| Vertex::bent(middle.x + r, middle.y, 1.0));
    page.path(
        Layer::Symbol,
        Some(Pen::Medium),
        Dash::Solid,
        ring.to_vec(),
        true,
        None,
    );
    let base = middle - Vector2::new(0.0, LETTERS / 2.0);
    page.text(Layer::Symbol, "A", LETTERS, (base, Align::Centre, 0.0));
}

fn level(page: &mut Page, area: &Bounds2) {
    let tip = area.centre() - Vector2::new(0.0, 1.1);
    let half = Vector2::new(5.0, 0.0);
    page.line(
        Layer::Symbol,
        Pen::Fine,
        Dash::Solid,
        tip - half,
        tip + half,
    );
    let corners = [(0.0, 0.0), (1.1, 2.2), (-1.1, 2.2)];
    let points = corners.map(|(x, y)| Point2::new(tip.x + x, tip.y + y));
    let points = points.map(|p| Vertex::sharp(p.x, p.y)).to_vec();
    page.path(
        Layer::Symbol,
        Some(Pen::Fine),
        Dash::Solid,
        points,
        true,
        None,
    );
}
