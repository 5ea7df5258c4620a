//! Dimensions that measure: each an entity with the block that shows it, and a style for each scale.
//!
//! A style multiplies what is measured on the paper (DIMLFAC), so that a reader of the file gets the built length, in
//! millimetres or in inches as the sheet is lettered. What is lettered is written down only where the reader would letter
//! something else: a length rounded so that its chain adds up, or words. Extension lines belong to the sheet, where chains
//! share them, and are left out of the entity.

use super::entities::{begin, entity};
use super::frame::{MODEL_SPACE, Owner, STYLE_HANDLE};
use super::tags::Tags;
use crate::drawing::{Align, Dimension, Item, Layer, Pen, Sheet, lettering};
use crate::geometry::{Point2, Vector2};
use crate::units::{Length, Notation};

/// A style: how lengths are lettered at one scale.
struct Style {
    /// Millimetres built for one on the paper.
    ratio: f64,
    notation: Notation,
    height: f64,
}

/// A dimension and what names its parts in the file.
struct Shown<'a> {
    dimension: &'a Dimension,
    style: String,
    /// The handle of its block's record, which owns what the block shows.
    record: String,
}

/// All dimensions of a sheet, in the order drawn.
pub(super) struct Dimensions<'a> {
    styles: Vec<(String, Style)>,
    shown: Vec<Shown<'a>>,
}

impl<'a> Dimensions<'a> {
    pub(super) fn of(tags: &mut Tags, sheet: &'a Sheet) -> Self {
        let mut all = Self {
            styles: Vec::new(),
            shown: Vec::new(),
        };
        for item in &sheet.items {
            if let Item::Dimension(dimension) = item
                && can_measure(dimension)
            {
                let style = Style::of(dimension);
                let name = style.name();
                if all.styles.iter().all(|(known, _)| *known != name) {
                    all.styles.push((name.clone(), style));
                }
                all.shown.push(Shown {
                    dimension,
                    style: name,
                    record: tags.handle(),
                });
            }
        }
        all
    }

    /// How many styles there are.
    pub(super) fn style_count(&self) -> usize {
        self.styles.len()
    }

    pub(super) fn styles(&self, tags: &mut Tags, owner: &str) {
        for (name, style) in &self.styles {
            let handle = tags.handle();
            tags.record(
                "DIMSTYLE",
                &handle,
                owner,
                &["AcDbSymbolTableRecord", "AcDbDimStyleTableRecord"],
            );
            style.write(tags, name);
        }
    }

    /// How many blocks there are.
    pub(super) fn block_count(&self) -> usize {
        self.shown.len()
    }

    pub(super) fn block_records(&self, tags: &mut Tags, owner: &str) {
        for (shown, number) in self.shown.iter().zip(1..) {
            tags.record(
                "BLOCK_RECORD",
                &shown.record,
                owner,
                &["AcDbSymbolTableRecord", "AcDbBlockTableRecord"],
            );
            tags.text(2, &block_name(number));
            tags.text(340, "0");
        }
    }

    pub(super) fn blocks(&self, tags: &mut Tags) {
        for (shown, number) in self.shown.iter().zip(1..) {
            let (first, last) = (tags.handle(), tags.handle());
            // 1: a block without a name of its own.
            tags.begin_block(&first, &shown.record, &block_name(number), 1);
            for item in shown.dimension.primitives() {
                entity(tags, &Owner(&shown.record), &item);
            }
            tags.end_block(&last, &shown.record);
        }
    }

    /// The entity of the next dimension; a dimension that cannot measure is drawn as the lines that show it.
    pub(super) fn entity(&self, tags: &mut Tags, number: &mut usize, dimension: &Dimension) {
        let owner = Owner(MODEL_SPACE);
        if !can_measure(dimension) {
            for item in dimension.primitives() {
                entity(tags, &owner, &item);
            }
            return;
        }
        if let Some(shown) = self.shown.get(*number) {
            *number += 1;
            shown.write(tags, &owner, *number);
        }
    }
}

fn block_name(number: usize) -> String {
    format!("*D{number}")
}

/// True when a dimension has ends that are apart and a scale.
fn can_measure(dimension: &Dimension) -> bool {
    let [from, to] = dimension.line;
    let sum = from.x + from.y + to.x + to.y + dimension.at.x + dimension.at.y + dimension.angle;
    let finite = (sum + dimension.measured).is_finite();
    let scale = dimension.scale.is_finite() && dimension.scale > 0.0 && dimension.height > 0.0;
    finite && scale && (to - from).norm() > 1e-6
}

impl Style {
    fn of(dimension: &Dimension) -> Self {
        let inches = dimension.text.contains(['\'', '"']);
        Self {
            ratio: 1.0 / dimension.scale,
            notation: if inches {
                Notation::Imperial
            } else {
                Notation::Metric
            },
            height: dimension.height,
        }
    }

    /// Such as `1-20-mm` or `1-24-ft-in`; a scale of 2:1 is `1-0_5-mm`.
    fn name(&self) -> String {
        let ratio = format!("{:.4}", self.ratio);
        let ratio = ratio.trim_end_matches('0').trim_end_matches('.');
        let unit = match self.notation {
            Notation::Imperial => "ft-in",
            Notation::Metric => "mm",
        };
        format!("1-{}-{unit}", ratio.replace('.', "_"))
    }

    fn write(&self, tags: &mut Tags, name: &str) {
        tags.text(2, name);
        tags.whole(70, 0);
        // DIMLUNIT 4 letters feet, inches and fractions from a length in inches, DIMDEC 4 to sixteenths; 2 decimals.
        let (unit, format, places) = match self.notation {
            Notation::Imperial => (25.4, 4, 4),
            Notation::Metric => (1.0, 2, 0),
        };
        let lengths = [
            (40, 1.0),
            (41, 2.0 * Dimension::TICK),
            (42, 0.0),
            (44, 0.0),
            (140, self.height),
            (141, 0.0),
            (142, Dimension::TICK),
            (147, 0.3 * self.height),
        ];
        for (code, value) in lengths {
            tags.number(code, value);
        }
        tags.factor(144, self.ratio / unit);
        let switches = [
            // Letters lie along the line, above it.
            (73, 0),
            (74, 0),
            (77, 1),
            // Extension lines are the sheet's.
            (75, 1),
            (76, 1),
            // Feet only where there are any, inches always.
            (78, 3),
            (271, places),
            (276, 2),
            (277, format),
            // A text that is moved stays alone; those that have a leader say so themselves.
            (279, 2),
            (371, weight(Pen::Fine)),
            (372, weight(Pen::Fine)),
        ];
        for (code, value) in switches {
            tags.whole(code, value);
        }
        tags.text(340, STYLE_HANDLE);
    }

    /// What a reader of the file letters by itself.
    fn letters(&self, measured: f64) -> Option<String> {
        let length = Length::millimetres(measured);
        // Halves of a step fall to either side: nobody can rely on them.
        let steps = length / self.notation.step();
        let from_half = (steps.fract().abs() - 0.5).abs();
        (from_half > 1e-3).then(|| self.notation.spell(length))
    }
}

impl Shown<'_> {
    fn write(&self, tags: &mut Tags, owner: &Owner, number: usize) {
        let it = self.dimension;
        let [from, to] = it.line;
        let along = to - from;
        let angle = along.y.atan2(along.x).to_degrees();
        begin(tags, owner, "DIMENSION", Layer::Dimension);
        tags.text(100, "AcDbDimension");
        tags.text(2, &block_name(number));
        tags.point(10, to.x, to.y);
        let middle = self.middle();
        tags.point(11, middle.x, middle.y);
        // A dimension along a direction (0), its block used by it alone (32), its text where it stands (128).
        tags.whole(70, 160);
        tags.whole(71, 5);
        if let Some(text) = self.override_text() {
            tags.text(1, &text);
        }
        let turned = (it.angle - angle).rem_euclid(360.0);
        if turned.min(360.0 - turned) > 1e-6 {
            tags.number(53, turned);
        }
        tags.text(3, &self.style);
        tags.text(100, "AcDbAlignedDimension");
        tags.point(13, from.x, from.y);
        tags.point(14, to.x, to.y);
        tags.number(50, angle);
        tags.text(100, "AcDbRotatedDimension");
        if it.leader.is_some() {
            own_settings(tags, &[(279, 1)]);
        }
    }

    /// The middle of the lettering, or of the line where there is none.
    fn middle(&self) -> Point2 {
        let it = self.dimension;
        if it.text.is_empty() {
            return it.line[0] + (it.line[1] - it.line[0]) * 0.5;
        }
        let width = lettering::width(&it.text, it.height);
        let shift = match it.align {
            Align::Left => width / 2.0,
            Align::Centre => 0.0,
            Align::Right => -width / 2.0,
        };
        let (sin, cos) = it.angle.to_radians().sin_cos();
        it.at + Vector2::new(cos, sin) * shift + Vector2::new(-sin, cos) * (it.height / 2.0)
    }

    /// What is lettered, where it is not what the style letters: a blank leaves the lettering out.
    fn override_text(&self) -> Option<String> {
        let it = self.dimension;
        if it.text.is_empty() {
            return Some(" ".to_owned());
        }
        let usual = Style::of(it).letters(it.measured);
        (usual.as_ref() != Some(&it.text)).then(|| it.text.clone())
    }
}

/// What a dimension sets otherwise than its style.
fn own_settings(tags: &mut Tags, settings: &[(i64, i64)]) {
    tags.text(1001, "ACAD");
    tags.text(1000, "DSTYLE");
    tags.text(1002, "{");
    for (code, value) in settings {
        tags.whole(1070, *code);
        tags.whole(1070, *value);
    }
    tags.text(1002, "}");
}

/// A line width as the format has it: hundredths of a millimetre.
pub(super) fn weight(pen: Pen) -> i64 {
    (pen.width() * 100.0).round() as i64
}
