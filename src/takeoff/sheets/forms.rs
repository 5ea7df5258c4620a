//! Plywood strips of edge forms, plugs and frames of cutout forms.

use super::piece::{SheetPiece, is_rectangle};
use super::stock::{StockSheet, stock};
use crate::catalog::Need;
use crate::design::Design;
use crate::geometry::{Extrusion, Solid};
use crate::parts::{Assembly, Part, PartKind};
use crate::plan::FORM_THICKNESS;
use crate::units::{Length, Notation};

/// An edge eased by no more than this is formed by a bead of sealant in the corners of the form, millimetres: a quarter of
/// an inch, common practice.
const BEAD: f64 = 6.35;

/// A plug lower by no more than this is not packed up, millimetres: the bed of sealant takes it (common practice).
const PACKED: f64 = 1.0;

/// Lengths closer than this are equal, millimetres.
const NEAR: f64 = 1e-6;

/// How thick one layer is: as the thinnest of the sheets, so that a stack is never too low.
pub(super) fn layer(stock: &[StockSheet]) -> Length {
    let thinnest = stock
        .iter()
        .map(|s| s.thickness)
        .reduce(|a, b| if b < a { b } else { a });
    thinnest.unwrap_or(Length::millimetres(FORM_THICKNESS))
}

/// The plywood of every form; strips longer than the longest sheet are butted of segments.
///
/// The floor under a wall is parted elsewhere than the wall, and a layer elsewhere than the one before, so that no two
/// joints meet.
pub(super) fn pieces(
    notation: Notation,
    assembly: &Assembly,
    stock: &[StockSheet],
) -> Vec<SheetPiece> {
    let sheet = layer(stock).mm();
    let longest = stock.iter().map(|s| s.steps.0).max().unwrap_or(0);
    let parts = assembly.parts.iter().enumerate();
    let forms = parts.filter(|(_, p)| matches!(p.kind, PartKind::EdgeForm | PartKind::CutoutForm));
    forms
        .flat_map(|(number, part)| {
            let blank = blank(notation, assembly.solid(part), part.kind, sheet);
            let piece = SheetPiece {
                may_turn: blank.may_turn,
                note: blank.note,
                ..SheetPiece::of(notation, (number, part), blank.sides)
            };
            let staggered = part.section.starts_with("edge form floor");
            let segments = piece.layers(blank.layers).into_iter().flat_map(|layer| {
                let even = layer.layer.is_some_and(|(number, _)| number % 2 == 0);
                if layer.may_turn {
                    vec![layer]
                } else {
                    layer.segments(notation, longest, staggered != even)
                }
            });
            segments.collect::<Vec<_>>()
        })
        .collect()
}

/// How many joints of each run's strips are butted over a cleat; joints within a stack need none.
pub(in crate::takeoff) fn cleats(design: &Design, assembly: &Assembly, run: usize) -> usize {
    let stock = stock(design, &Need::FormPlywood);
    let pieces = pieces(design.project.units, assembly, &stock);
    let own = pieces
        .iter()
        .filter(|p| p.run == Some(run) && p.layer.is_none());
    own.filter(|p| p.segment.is_some_and(|(number, _)| number > 1))
        .count()
}

/// True when a form's cast edge is rounded by a bead of sealant along it.
pub(in crate::takeoff) fn has_bead(assembly: &Assembly, part: &Part) -> bool {
    match assembly.solid(part) {
        Solid::Extrusion(e) if part.kind == PartKind::EdgeForm => is_eased(e),
        _ => false,
    }
}

/// What a form is cut from.
struct Blank {
    /// Along and across the grain, millimetres.
    sides: (f64, f64),
    layers: u32,
    may_turn: bool,
    note: String,
}

fn blank(notation: Notation, solid: &Solid, kind: PartKind, sheet: f64) -> Blank {
    let size = solid.bounds().high - solid.bounds().low;
    match solid {
        Solid::Extrusion(e) if kind == PartKind::EdgeForm => strip(e, size.z, sheet),
        Solid::Extrusion(e) => cutout(notation, e, [size.x, size.y, size.z], sheet),
        _ => plate((size.x, size.y), layers(size.z, sheet), "cut to its curve"),
    }
}

/// Width and thickness of a strip's section.
fn section(form: &Extrusion) -> (f64, f64) {
    let bounds = form.profile.outer.bounds();
    let (wide, high) = (bounds.width(), bounds.height());
    if is_sheet(high) && !is_sheet(wide) {
        (wide, high)
    } else {
        (high, wide)
    }
}

/// True for a strip that is shaped so little that a bead does it.
fn is_eased(form: &Extrusion) -> bool {
    !is_rectangle(&form.profile.outer) && section(form).1 <= FORM_THICKNESS + BEAD
}

/// A strip by its section's two sides and its length from tip to tip.
fn strip(form: &Extrusion, length: f64, sheet: f64) -> Blank {
    let (width, thickness) = section(form);
    let shaped = !is_rectangle(&form.profile.outer);
    let mitred = [form.start, form.end]
        .iter()
        .any(|p| p.slope[0].abs() > NEAR);
    if is_sheet(length) {
        let note = if shaped { "cut to its outline" } else { "" };
        return plate((width, thickness), 1, note);
    }
    let eased = is_eased(form);
    let layers = if eased { 1 } else { layers(thickness, sheet) };
    let shaping = match (shaped, eased) {
        (true, true) => Some("round the cast edge with a bead of sealant along the inner side"),
        (true, false) => Some("shape the inner side"),
        _ => None,
    };
    let stacked = (layers > 1).then_some("stack the layers, what is over outward");
    let notes: Vec<_> = stacked
        .into_iter()
        .chain(shaping)
        .chain(mitred.then_some("mitre the ends"))
        .collect();
    Blank {
        sides: (length, width),
        layers,
        may_turn: false,
        note: notes.join("; "),
    }
}

/// A strip of a frame, or a plug as thick as the slab: of whole layers, packed up to its height from below, for nobody planes a
/// stack of plywood.
fn cutout(notation: Notation, form: &Extrusion, [x, y, high]: [f64; 3], sheet: f64) -> Blank {
    let frame = if is_sheet(y) {
        Some(x)
    } else if is_sheet(x) {
        Some(y)
    } else {
        None
    };
    if let Some(length) = frame {
        return Blank {
            sides: (length, high),
            layers: 1,
            may_turn: false,
            note: String::new(),
        };
    }
    let layers = ((high + 0.1) / sheet).floor().clamp(1.0, 1000.0);
    let rest = high - layers * sheet;
    let shaped = !is_rectangle(&form.profile.outer);
    let notes: Vec<_> = [
        (layers > 1.0).then(|| "stack the layers".to_owned()),
        (rest > PACKED).then(|| {
            let rest = notation.spell_with_unit(Length::millimetres(rest));
            format!("pack up {rest} under it")
        }),
        shaped.then(|| "cut to its outline".to_owned()),
    ]
    .into_iter()
    .flatten()
    .collect();
    Blank {
        sides: (x.max(y), x.min(y)),
        layers: layers as u32,
        may_turn: true,
        note: notes.join("; "),
    }
}

/// A flat piece of so many layers.
fn plate((a, b): (f64, f64), layers: u32, note: &str) -> Blank {
    let stacked = (layers > 1).then_some("stack the layers and bring them to the height");
    let notes: Vec<_> = stacked
        .into_iter()
        .chain((!note.is_empty()).then_some(note))
        .collect();
    Blank {
        sides: (a.max(b), a.min(b)),
        layers,
        may_turn: true,
        note: notes.join("; "),
    }
}

fn is_sheet(mm: f64) -> bool {
    (mm - FORM_THICKNESS).abs() < NEAR
}

/// How many layers reach a thickness; a part as thick as the design's sheet is one, whatever the shop's sheet is.
fn layers(mm: f64, sheet: f64) -> u32 {
    if is_sheet(mm) {
        return 1;
    }
    ((mm - 0.1) / sheet).ceil().clamp(1.0, 1000.0) as u32
}
