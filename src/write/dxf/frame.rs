//! The parts of the file that hold no drawing but must be there: header, tables, blocks and objects.

use super::tags::{HANDLE_SEED, Tags};
use crate::drawing::{Dash, Layer, Pen, Sheet};

/// The handle of the model space, which owns what is drawn.
pub(super) const MODEL_SPACE: &str = "1F";
const PAPER_SPACE: &str = "1B";
const MODEL_LAYOUT: &str = "22";
const PAPER_LAYOUT: &str = "1E";
const ROOT: &str = "C";
const GROUPS: &str = "D";
const LAYOUTS: &str = "1A";

/// The text style of all lettering.
pub(super) const STYLE: &str = "Standard";

const DASHES: [Dash; 3] = [Dash::Dashed, Dash::Centre, Dash::Phantom];

/// The name of a line type in the file.
pub(super) fn line_type(dash: Dash) -> &'static str {
    match dash {
        Dash::Solid => "Continuous",
        Dash::Dashed => "DASHED",
        Dash::Centre => "CENTRE",
        Dash::Phantom => "PHANTOM",
    }
}

/// Header, classes, tables and blocks: all that stands before what is drawn.
pub(super) fn open(tags: &mut Tags, sheet: &Sheet) {
    header(tags, sheet);
    tags.section("CLASSES");
    tags.end_section();
    tags.section("TABLES");
    viewport(tags, sheet);
    line_types(tags);
    layers(tags);
    small_tables(tags);
    block_records(tags);
    tags.end_section();
    blocks(tags);
}

/// The objects: all that stands behind what is drawn.
pub(super) fn close(tags: &mut Tags) {
    tags.section("OBJECTS");
    dictionary(
        tags,
        ROOT,
        "0",
        &[("ACAD_GROUP", GROUPS), ("ACAD_LAYOUT", LAYOUTS)],
    );
    dictionary(tags, GROUPS, ROOT, &[]);
    dictionary(
        tags,
        LAYOUTS,
        ROOT,
        &[("Layout1", PAPER_LAYOUT), ("Model", MODEL_LAYOUT)],
    );
    layout(tags, PAPER_LAYOUT, "Layout1", PAPER_SPACE, 1, 0);
    layout(tags, MODEL_LAYOUT, "Model", MODEL_SPACE, 0, 1024);
    tags.end_section();
}

fn header(tags: &mut Tags, sheet: &Sheet) {
    tags.section("HEADER");
    let mut variable = |name: &str, write: &dyn Fn(&mut Tags)| {
        tags.text(9, name);
        write(tags);
    };
    variable("$ACADVER", &|t| t.text(1, "AC1015"));
    variable("$DWGCODEPAGE", &|t| t.text(3, "ANSI_1252"));
    variable("$INSBASE", &|t| t.point(10, 0.0, 0.0));
    variable("$EXTMIN", &|t| t.point(10, 0.0, 0.0));
    variable("$EXTMAX", &|t| {
        t.point(10, sheet.paper.width.mm(), sheet.paper.height.mm());
    });
    variable("$LTSCALE", &|t| t.number(40, 1.0));
    variable("$TEXTSTYLE", &|t| t.text(7, STYLE));
    variable("$MEASUREMENT", &|t| t.whole(70, 1));
    variable("$INSUNITS", &|t| t.whole(70, 4));
    variable("$LUNITS", &|t| t.whole(70, 2));
    variable("$HANDSEED", &|t| t.text(5, HANDLE_SEED));
    tags.end_section();
}

fn table(tags: &mut Tags, name: &str, handle: &str, count: usize) {
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

fn end_table(tags: &mut Tags) {
    tags.text(0, "ENDTAB");
}

/// The view that shows the whole drawing when it is opened.
fn viewport(tags: &mut Tags, sheet: &Sheet) {
    let (width, height) = (sheet.paper.width.mm(), sheet.paper.height.mm());
    table(tags, "VPORT", "8", 1);
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
    end_table(tags);
}

fn line_types(tags: &mut Tags) {
    let owner = "5";
    let classes = ["AcDbSymbolTableRecord", "AcDbLinetypeTableRecord"];
    table(tags, "LTYPE", owner, 3 + DASHES.len());
    let unbroken = [
        ("14", "ByBlock"),
        ("15", "ByLayer"),
        ("16", line_type(Dash::Solid)),
    ];
    for (handle, name) in unbroken {
        tags.record("LTYPE", handle, owner, &classes);
        line_pattern(tags, name, &[]);
    }
    for (i, dash) in DASHES.into_iter().enumerate() {
        tags.record("LTYPE", &format!("{:X}", 0x40 + i), owner, &classes);
        line_pattern(tags, line_type(dash), &dash.pattern(Pen::Medium));
    }
    end_table(tags);
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

fn layers(tags: &mut Tags) {
    let owner = "2";
    table(tags, "LAYER", owner, 1 + Layer::ALL.len());
    let names = std::iter::once(("0", 7)).chain(Layer::ALL.map(|l| (l.name(), colour(l))));
    for (i, (name, colour)) in names.enumerate() {
        let handle = format!("{:X}", 0x50 + i);
        tags.record(
            "LAYER",
            &handle,
            owner,
            &["AcDbSymbolTableRecord", "AcDbLayerTableRecord"],
        );
        tags.text(2, name);
        tags.whole(70, 0);
        tags.whole(62, colour);
        tags.text(6, line_type(Dash::Solid));
        tags.whole(370, -3);
    }
    end_table(tags);
}

/// A colour index that tells what is cut from what is not: cutouts red, notes and dimensions grey, the rest black.
fn colour(layer: Layer) -> i64 {
    match layer {
        Layer::Cut => 1,
        Layer::Border
        | Layer::Dimension
        | Layer::Note
        | Layer::Centre
        | Layer::Hatch
        | Layer::Site
        | Layer::Symbol
        | Layer::Table => 8,
        Layer::Outline | Layer::Detail | Layer::Hidden | Layer::Section => 7,
    }
}

fn small_tables(tags: &mut Tags) {
    table(tags, "STYLE", "3", 1);
    tags.record(
        "STYLE",
        "11",
        "3",
        &["AcDbSymbolTableRecord", "AcDbTextStyleTableRecord"],
    );
    tags.text(2, STYLE);
    tags.whole(70, 0);
    for (code, value) in [(40, 0.0), (41, 1.0), (50, 0.0)] {
        tags.number(code, value);
    }
    tags.whole(71, 0);
    tags.number(42, 2.5);
    tags.text(3, "txt");
    tags.text(4, "");
    end_table(tags);
    for (name, handle) in [("VIEW", "6"), ("UCS", "7")] {
        table(tags, name, handle, 0);
        end_table(tags);
    }
    table(tags, "APPID", "9", 1);
    tags.record(
        "APPID",
        "12",
        "9",
        &["AcDbSymbolTableRecord", "AcDbRegAppTableRecord"],
    );
    tags.text(2, "ACAD");
    tags.whole(70, 0);
    end_table(tags);
    table(tags, "DIMSTYLE", "A", 1);
    tags.record(
        "DIMSTYLE",
        "27",
        "A",
        &["AcDbSymbolTableRecord", "AcDbDimStyleTableRecord"],
    );
    tags.text(2, "Standard");
    tags.whole(70, 0);
    end_table(tags);
}

const SPACES: [(&str, &str, &str); 2] = [
    (MODEL_SPACE, "*Model_Space", MODEL_LAYOUT),
    (PAPER_SPACE, "*Paper_Space", PAPER_LAYOUT),
];

fn block_records(tags: &mut Tags) {
    table(tags, "BLOCK_RECORD", "1", 2);
    for (handle, name, layout) in SPACES {
        tags.record(
            "BLOCK_RECORD",
            handle,
            "1",
            &["AcDbSymbolTableRecord", "AcDbBlockTableRecord"],
        );
        tags.text(2, name);
        tags.text(340, layout);
    }
    end_table(tags);
}

fn blocks(tags: &mut Tags) {
    tags.section("BLOCKS");
    for (i, (owner, name, _)) in SPACES.into_iter().enumerate() {
        tags.record(
            "BLOCK",
            &format!("{:X}", 0x60 + 2 * i),
            owner,
            &["AcDbEntity"],
        );
        tags.text(8, "0");
        tags.text(100, "AcDbBlockBegin");
        tags.text(2, name);
        tags.whole(70, 0);
        tags.point(10, 0.0, 0.0);
        tags.text(3, name);
        tags.text(1, "");
        tags.record(
            "ENDBLK",
            &format!("{:X}", 0x61 + 2 * i),
            owner,
            &["AcDbEntity"],
        );
        tags.text(8, "0");
        tags.text(100, "AcDbBlockEnd");
    }
    tags.end_section();
}

fn dictionary(tags: &mut Tags, handle: &str, owner: &str, entries: &[(&str, &str)]) {
    tags.record("DICTIONARY", handle, owner, &["AcDbDictionary"]);
    tags.whole(281, 1);
    for (name, entry) in entries {
        tags.text(3, name);
        tags.text(350, entry);
    }
}

fn layout(tags: &mut Tags, handle: &str, name: &str, space: &str, order: i64, flags: i64) {
    tags.record("LAYOUT", handle, LAYOUTS, &["AcDbPlotSettings"]);
    tags.text(1, "");
    tags.whole(70, flags);
    tags.text(100, "AcDbLayout");
    tags.text(1, name);
    tags.whole(70, 1);
    tags.whole(71, order);
    for (code, x, y) in [(10, 0.0, 0.0), (11, 420.0, 297.0)] {
        tags.number(code, x);
        tags.number(code + 10, y);
    }
    tags.point(12, 0.0, 0.0);
    tags.point(14, 0.0, 0.0);
    tags.point(15, 0.0, 0.0);
    tags.number(146, 0.0);
    tags.point(13, 0.0, 0.0);
    tags.point(16, 1.0, 0.0);
    tags.point(17, 0.0, 1.0);
    tags.whole(76, 0);
    tags.text(330, space);
}
