//! What is cut from sheets.

use crate::geometry::{Outline, Region};
use crate::parts::{Part, PartKind};
use crate::takeoff::cut_list::steps_up;
use crate::units::{Length, Notation};

/// One rectangle to cut: a part, one of its layers, or a segment of it.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetPiece {
    /// Number of its part in the assembly; `None` for mesh, which is no part.
    pub part: Option<usize>,
    /// The part's mark; pieces of the substrate and of mesh are numbered.
    pub mark: String,
    /// What its part is.
    pub kind: Option<PartKind>,
    /// Number of its run; `None` when it spans several.
    pub run: Option<usize>,
    /// Number of its face, where it belongs to one.
    pub face: Option<usize>,
    /// Its side along the grain, in steps.
    pub length: u32,
    /// Its side across the grain, in steps.
    pub width: u32,
    /// Whether it may lie turned on the sheet.
    pub may_turn: bool,
    /// Which layer of how many, from 1; `None` for what is one sheet thick.
    pub layer: Option<(u32, u32)>,
    /// Which segment of how many, from 1, butted end to end; `None` for a part in one piece.
    pub segment: Option<(u32, u32)>,
    /// What is done to it after it is cut; empty for nothing.
    pub note: String,
    /// Its shape in the plan of the island, millimetres, for pieces of the substrate and of mesh.
    pub region: Option<Region>,
}

/// A segment is at least this long where that can be had, millimetres (common practice).
const LEAST_SEGMENT: f64 = 300.0;

impl SheetPiece {
    /// A piece of a part by its sides in millimetres.
    pub(super) fn of(
        notation: Notation,
        (number, part): (usize, &Part),
        (length, width): (f64, f64),
    ) -> Self {
        Self {
            part: Some(number),
            kind: Some(part.kind),
            run: part.run,
            face: part.face,
            ..Self::of_no_part(notation, part.mark.clone(), (length, width))
        }
    }

    /// A piece of no part, by its sides in millimetres.
    pub(super) fn of_no_part(
        notation: Notation,
        mark: String,
        (length, width): (f64, f64),
    ) -> Self {
        let steps = |mm: f64| steps_up(notation, Length::millimetres(mm)).max(1);
        Self {
            part: None,
            mark,
            kind: None,
            run: None,
            face: None,
            length: steps(length),
            width: steps(width),
            may_turn: true,
            layer: None,
            segment: None,
            note: String::new(),
            region: None,
        }
    }

    /// What it is in words.
    pub fn what(&self) -> &'static str {
        self.kind.map_or("mesh", PartKind::name)
    }

    /// Its mark with its layer and segment: `F-03 layer 1/2, 1 of 2`; unique on the list.
    pub fn name(&self) -> String {
        let mut name = self.mark.clone();
        if let Some((number, count)) = self.layer {
            name = format!("{name} layer {number}/{count}");
        }
        if let Some((number, count)) = self.segment {
            let comma = if self.layer.is_some() { "," } else { "" };
            name = format!("{name}{comma} {number} of {count}");
        }
        name
    }

    /// The same once for each of so many layers.
    pub(super) fn layers(self, count: u32) -> Vec<Self> {
        if count < 2 {
            return vec![self];
        }
        (1..=count)
            .map(|number| Self {
                layer: Some((number, count)),
                ..self.clone()
            })
            .collect()
    }

    /// The same in segments no longer than `longest`; their lengths add up to its own. Staggered ones have their joints
    /// away from those of a piece of the same length that is not.
    pub(super) fn segments(self, notation: Notation, longest: u32, staggered: bool) -> Vec<Self> {
        if longest == 0 || self.length <= longest {
            return vec![self];
        }
        let least = steps_up(notation, Length::millimetres(LEAST_SEGMENT));
        let mut lengths = in_segments(self.length, longest, least);
        if staggered {
            lengths = staggered_to(&lengths, longest, least);
        }
        let comma = if self.note.is_empty() { "" } else { "; " };
        let how = if self.layer.is_some() {
            "butt the segments on the layer beside"
        } else {
            "butt the segments over a cleat"
        };
        let note = format!("{}{comma}{how}", self.note);
        let count = lengths.len() as u32;
        (1..)
            .zip(lengths)
            .map(|(number, length)| Self {
                length,
                segment: Some((number, count)),
                note: note.clone(),
                ..self.clone()
            })
            .collect()
    }
}

/// A length in as few segments as can be, whole ones first; none shorter than the least where that can be had.
fn in_segments(length: u32, longest: u32, least: u32) -> Vec<u32> {
    let count = length.div_ceil(longest);
    let last = length - longest * (count - 1);
    let short = least.saturating_sub(last).min(longest / 2);
    (1..=count)
        .map(|number| match count - number {
            0 => last + short,
            1 => longest - short,
            _ => longest,
        })
        .collect()
}

/// The same length in segments whose joints are at least `least` from those of the first: the last one first, or where
/// that does not do, half a sheet first; the one that comes farthest from them where neither does.
fn staggered_to(lengths: &[u32], longest: u32, least: u32) -> Vec<u32> {
    let reversed: Vec<u32> = lengths.iter().rev().copied().collect();
    let half = longest / 2;
    let rest = lengths.iter().sum::<u32>() - half;
    let halved: Vec<u32> = std::iter::once(half)
        .chain(in_segments(rest, longest, least))
        .collect();
    let apart = |other: &[u32]| {
        let pairs = joints(other).flat_map(|a| joints(lengths).map(move |b| a.abs_diff(b)));
        pairs.min().unwrap_or(u32::MAX)
    };
    if apart(&reversed) >= least || apart(&reversed) >= apart(&halved) {
        reversed
    } else {
        halved
    }
}

/// Where segments end, but for the last.
fn joints(lengths: &[u32]) -> impl Iterator<Item = u32> {
    let between = &lengths[..lengths.len().saturating_sub(1)];
    between.iter().scan(0, |at, length| {
        *at += length;
        Some(*at)
    })
}

/// Whether a line is a rectangle along the axes, to a square millimetre.
pub(super) fn is_rectangle(outline: &Outline) -> bool {
    let bounds = outline.bounds();
    bounds.width() * bounds.height() - outline.area() < 1.0
}

/// What is cut out of a sheet once its rectangle is cut.
pub(super) fn cut_outs(region: &Region) -> String {
    let notch = (!is_rectangle(&region.outer)).then_some("trim to its outline");
    let holes = match region.holes.len() {
        0 => None,
        1 => Some("cut the opening in place"),
        _ => Some("cut the openings in place"),
    };
    let notes: Vec<_> = notch.into_iter().chain(holes).collect();
    notes.join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn joints_of_wall_and_floor_stand_apart() {
        // 3163 of 2440: at 2440 and at 723. 4880 is two whole ones either way, so half a sheet first.
        let of = |length| in_segments(length, 2440, 300);
        assert_eq!(staggered_to(&of(3163), 2440, 300), [723, 2440]);
        assert_eq!(staggered_to(&of(4880), 2440, 300), [1220, 2440, 1220]);
        assert_eq!(of(4900), [2440, 2160, 300]);
        assert_eq!(staggered_to(&of(4900), 2440, 300), [1220, 2440, 1240]);
    }
}
