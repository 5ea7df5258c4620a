//! Plywood strips of edge forms, plugs and frames of cutout forms.

use super::piece::{SheetPiece, is_rectangle};
use crate::geometry::{Extrusion, Solid};
use crate::parts::{Assembly, PartKind};
use crate::plan::FORM_THICKNESS;
use crate::units::Notation;

/// An edge eased by no more than this is formed by a bead of sealant in the corners of the form, millimetres: a quarter of
/// an inch, common practice.
const BEAD: f64 = 6.35;

/// Lengths closer than this are equal, millimetres.
const NEAR: f64 = 1e-6;

/// The plywood of every form; strips longer than the longest sheet, in steps, are butted of segments.
pub(super) fn pieces(notation: Notation, assembly: &Assembly, longest: u32) -> Vec<SheetPiece> {
    let parts = assembly.parts.iter().enumerate();
    let forms = parts.filter(|(_, p)| matches!(p.kind, PartKind::EdgeForm | PartKind::CutoutForm));
    forms
        .flat_map(|(number, part)| {
            let blank = blank(assembly.solid(part), part.kind);
            let piece = SheetPiece {
                may_turn: blank.may_turn,
                note: blank.note,
                ..SheetPiece::of(notation, (number, part), blank.sides)
            };
            let layers = piece.layers(blank.layers);
            let segments = layers.into_iter().flat_map(move |layer| {
                if layer.may_turn {
                    vec![layer]
                } else {
                    layer.segments(notation, longest)
                }
            });
            segments.collect::<Vec<_>>()
        })
        .collect()
}

/// What a form is cut from.
struct Blank {
    /// Along and across the grain, millimetres.
    sides: (f64, f64),
    layers: u32,
    may_turn: bool,
    note: String,
}

fn blank(solid: &Solid, kind: PartKind) -> Blank {
    let size = solid.bounds().high - solid.bounds().low;
    match solid {
        Solid::Extrusion(e) if kind == PartKind::EdgeForm => strip(e, size.z),
        Solid::Extrusion(e) => cutout(e, [size.x, size.y, size.z]),
        _ => plate((size.x, size.y), size.z, "cut to its curve"),
    }
}

/// A strip by its section's two sides and its length from tip to tip.
fn strip(form: &Extrusion, length: f64) -> Blank {
    let bounds = form.profile.outer.bounds();
    let (wide, high) = (bounds.width(), bounds.height());
    let shaped = !is_rectangle(&form.profile.outer);
    let mitred = [form.start, form.end]
        .iter()
        .any(|p| p.slope[0].abs() > NEAR);
    if is_sheet(length) {
        return plate(
            (wide, high),
            length,
            if shaped { "cut to its outline" } else { "" },
        );
    }
    let (width, thickness) = if is_sheet(high) && !is_sheet(wide) {
        (wide, high)
    } else {
        (high, wide)
    };
    let eased = shaped && thickness <= FORM_THICKNESS + BEAD;
    let layers = if eased { 1 } else { layers(thickness) };
    let shaping = match (shaped, eased) {
        (true, true) => Some("round the cast edge with a bead of sealant along the inner side"),
        (true, false) => Some("shape the inner side"),
        _ => None,
    };
    let notes: Vec<_> = stacked(layers)
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

/// A strip of a frame, or a plug as thick as the slab.
fn cutout(form: &Extrusion, [x, y, high]: [f64; 3]) -> Blank {
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
    let shaped = !is_rectangle(&form.profile.outer);
    plate((x, y), high, if shaped { "cut to its outline" } else { "" })
}

/// A flat piece, as many layers as its thickness takes.
fn plate((a, b): (f64, f64), thickness: f64, note: &str) -> Blank {
    let layers = layers(thickness);
    let notes: Vec<_> = stacked(layers)
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

fn stacked(layers: u32) -> Option<&'static str> {
    (layers > 1).then_some("stack the layers and bring them to the thickness")
}

fn is_sheet(mm: f64) -> bool {
    (mm - FORM_THICKNESS).abs() < NEAR
}

fn layers(mm: f64) -> u32 {
    ((mm - 0.1) / FORM_THICKNESS).ceil().clamp(1.0, 1000.0) as u32
}
