//! The tables: the first view, line types, layers, styles.

use super::dimension::{Dimensions, weight};
use super::frame::{STYLE, STYLE_HANDLE};
use super::tags::Tags;
use crate::drawing::{Dash, Ink, Layer, Pen, Sheet, lettering};
use crate::write::palette;

const DASHES: [Dash; 3] = [Dash::Dashed, Dash::Centre, Dash::Phantom];

/// The pen whose strokes and gaps a line type has; lines of other pens are scaled to their own.
const DASHED_FOR: Pen = Pen::Medium;

/// The name of a line type in the file.
pub(super) fn line_type(dash: Dash) -> &'static str {
    match dash {
        Dash::Solid => "Continuous",
        Dash::Dashed => "DASHED",
        Dash::Centre => "CENTRE",
        Dash::Phantom => "PHANTOM",
    }
}

/// By how much a pen's strokes and gaps are longer than those of the line type.
pub(super) fn line_type_scale(dash: Dash, pen: Pen) -> f64 {
    let length = |pen| dash.pattern(pen).iter().sum::<f64>();
    let usual = length(DASHED_FOR);
    if usual > 0.0 {
        length(pen) / usual
    } else {
        1.0
    }
}

/// What most lines of a layer are drawn with: its own width and line type in the file, so that what is drawn there later
/// suits it.
pub(super) fn usual(layer: Layer) -> (Pen, Dash) {
    match layer {
        Layer::Border | Layer::Section | Layer::Cut => (Pen::Heavy, Dash::Solid),
        Layer::Outline => (Pen::Thick, Dash::Solid),
        Layer::Symbol | Layer::Site => (Pen::Medium, Dash::Solid),
        Layer::Detail | Layer::Table | Layer::Note => (Pen::Thin, Dash::Solid),
        Layer::Hidden => (Pen::Thin, Dash::Dashed),
        Layer::Centre => (Pen::Fine, Dash::Centre),
        Layer::Hatch | Layer::Dimension => (Pen::Fine, Dash::Solid),
    }
}

/// All tables but that of the blocks.
pub(super) fn write(tags: &mut Tags, sheet: &Sheet, dimensions: &Dimensions) {
    viewport(tags, sheet);
    line_types(tags);
    layers(tags, sheet.ink);
    styles(tags);
    small_tables(tags);
    dimension_styles(tags, dimensions);
}

pub(super) fn begin(tags: &mut Tags, name: &str, handle: &str, count: usize) {
    tags.text(0, "TABLE");
    tags.text(2, name);
    tags.text(5, handle);
    tags.text(330, "0");
    tags.text(100, "AcDbSymbolTable");
    tags.count(70, count);
    if name == "DIMSTYLE" {
        tags.text(100, "AcDbDimStyleTable");
    }
}

pub(super) fn end(tags: &mut Tags) {
    tags.text(0, "ENDTAB");
}

/// The view that shows the whole drawing when it is opened.
fn viewport(tags: &mut Tags, sheet: &Sheet) {
    let (width, height) = (sheet.paper.width.mm(), sheet.paper.height.mm());
    begin(tags, "VPORT", "8", 1);
    tags.record(
        "VPORT",
        "94",
        "8",
        &["AcDbSymbolTableRecord", "AcDbViewportTableRecord"],
    );
    tags.text(2, "*Active");
    tags.whole(70, 0);
    for (code, x, y) in [
        (10, 0.0, 0.0),
        (11, 1.0, 1.0),
        (12, width / 2.0, height / 2.0),
        (13, 0.0, 0.0),
    ] {
        tags.number(code, x);
        tags.number(code + 10, y);
    }
    for code in [14, 15] {
        tags.number(code, 10.0);
        tags.number(code + 10, 10.0);
    }
    for (code, z) in [(16, 1.0), (17, 0.0)] {
        tags.number(code, 0.0);
        tags.number(code + 10, 0.0);
        tags.number(code + 20, z);
    }
    tags.number(40, height * 1.05);
    tags.number(41, if height > 0.0 { width / height } else { 1.0 });
    tags.number(42, 50.0);
    end(tags);
}

fn line_types(tags: &mut Tags) {
    let owner = "5";
    let classes = ["AcDbSymbolTableRecord", "AcDbLinetypeTableRecord"];
    begin(tags, "LTYPE", owner, 3 + DASHES.len());
    let unbroken = [
        ("14", "ByBlock"),
        ("15", "ByLayer"),
        ("16", line_type(Dash::Solid)),
    ];
    for (handle, name) in unbroken {
        tags.record("LTYPE", handle, owner, &classes);
        line_pattern(tags, name, &[]);
    }
    for dash in DASHES {
        let handle = tags.handle();
        tags.record("LTYPE", &handle, owner, &classes);
        line_pattern(tags, line_type(dash), &dash.pattern(DASHED_FOR));
    }
    end(tags);
}

fn line_pattern(tags: &mut Tags, name: &str, pattern: &[f64]) {
    tags.text(2, name);
    tags.whole(70, 0);
    tags.text(3, "");
    tags.whole(72, 65);
    tags.count(73, pattern.len());
    tags.number(40, pattern.iter().sum());
    for (i, length) in pattern.iter().enumerate() {
        tags.number(49, if i % 2 == 0 { *length } else { -length });
        tags.whole(74, 0);
    }
}

fn layers(tags: &mut Tags, ink: Ink) {
    let owner = "2";
    begin(tags, "LAYER", owner, 1 + Layer::ALL.len());
    layer(tags, "10", "0", None, ink);
    for own in Layer::ALL {
        let handle = tags.handle();
        layer(tags, &handle, own.name(), Some(own), ink);
    }
    end(tags);
}

fn layer(tags: &mut Tags, handle: &str, name: &str, own: Option<Layer>, ink: Ink) {
    tags.record(
        "LAYER",
        handle,
        "2",
        &["AcDbSymbolTableRecord", "AcDbLayerTableRecord"],
    );
    tags.text(2, name);
    tags.whole(70, 0);
    tags.whole(62, own.map_or(BLACK_OR_WHITE, |own| index(own, ink)));
    if let (Some(own), Ink::Colour) = (own, ink) {
        let [red, green, blue] = palette::colour(ink, own).map(i64::from);
        tags.whole(420, red << 16 | green << 8 | blue);
    }
    let (pen, dash) = own.map_or((Pen::Thin, Dash::Solid), usual);
    tags.text(6, line_type(dash));
    tags.whole(370, weight(pen));
}

/// The colour of the format that is black on white and white on black.
const BLACK_OR_WHITE: i64 = 7;
/// Red of the format.
const RED: i64 = 1;

/// A colour index. In black all layers are black, but for what is to be cut: red, as cutting shops have it (common
/// practice). In colour, the nearest to the layer's own for a reader that knows no other.
fn index(layer: Layer, ink: Ink) -> i64 {
    match (ink, layer) {
        (_, Layer::Cut) => RED,
        (Ink::Black, _) | (_, Layer::Border | Layer::Outline | Layer::Section | Layer::Note) => {
            BLACK_OR_WHITE
        }
        (_, Layer::Detail | Layer::Table) => 137,
        (_, Layer::Hidden | Layer::Hatch) => 251,
        (_, Layer::Centre) => 34,
        (_, Layer::Site) => 95,
        (_, Layer::Symbol) => 235,
        (_, Layer::Dimension) => 147,
    }
}

/// The style that every drawing has, and the one of our lettering.
fn styles(tags: &mut Tags) {
    begin(tags, "STYLE", "3", 2);
    for (handle, name, font) in [
        ("11", "Standard", "txt"),
        (STYLE_HANDLE, STYLE, lettering::FONT_FILE),
    ] {
        tags.record(
            "STYLE",
            handle,
            "3",
            &["AcDbSymbolTableRecord", "AcDbTextStyleTableRecord"],
        );
        tags.text(2, name);
        tags.whole(70, 0);
        for (code, value) in [(40, 0.0), (41, 1.0), (50, 0.0)] {
            tags.number(code, value);
        }
        tags.whole(71, 0);
        tags.number(42, 2.5);
        tags.text(3, font);
        tags.text(4, "");
    }
    end(tags);
}

fn small_tables(tags: &mut Tags) {
    for (name, handle) in [("VIEW", "6"), ("UCS", "7")] {
        begin(tags, name, handle, 0);
        end(tags);
    }
    begin(tags, "APPID", "9", 1);
    tags.record(
        "APPID",
        "12",
        "9",
        &["AcDbSymbolTableRecord", "AcDbRegAppTableRecord"],
    );
    tags.text(2, "ACAD");
    tags.whole(70, 0);
    end(tags);
}

fn dimension_styles(tags: &mut Tags, dimensions: &Dimensions) {
    begin(tags, "DIMSTYLE", "A", 1 + dimensions.style_count());
    tags.record(
        "DIMSTYLE",
        "27",
        "A",
        &["AcDbSymbolTableRecord", "AcDbDimStyleTableRecord"],
    );
    tags.text(2, "Standard");
    tags.whole(70, 0);
    dimensions.styles(tags, "A");
    end(tags);
}
