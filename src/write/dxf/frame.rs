//! What stands round the drawing: the header, the spaces with their blocks, and the objects.

use super::dimension::Dimensions;
use super::tables;
use super::tags::{CODE_PAGE, HANDLE_SEED, Tags};
use crate::drawing::{Ink, Sheet};

/// The handle of the model space, which owns what is drawn.
pub(super) const MODEL_SPACE: &str = "1F";
const PAPER_SPACE: &str = "1B";
const MODEL_LAYOUT: &str = "22";
const PAPER_LAYOUT: &str = "1E";
const ROOT: &str = "C";
const GROUPS: &str = "D";
const LAYOUTS: &str = "1A";

/// The text style of all lettering.
pub(super) const STYLE: &str = "lettering";
/// Its handle, by which dimension styles name it.
pub(super) const STYLE_HANDLE: &str = "13";

/// The record whose block an entity belongs to, by its handle.
pub(super) struct Owner<'a>(pub(super) &'a str);

/// Header, classes, tables and blocks: all that stands before what is drawn.
pub(super) fn open(tags: &mut Tags, sheet: &Sheet, dimensions: &Dimensions) {
    header(tags, sheet);
    tags.section("CLASSES");
    tags.end_section();
    tags.section("TABLES");
    tables::write(tags, sheet, dimensions);
    block_records(tags, dimensions);
    tags.end_section();
    blocks(tags, dimensions);
}

/// The objects: all that stands behind what is drawn.
pub(super) fn close(tags: &mut Tags, sheet: &Sheet) {
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
    let paper = sheet.paper;
    let paper = (paper.width.mm(), paper.height.mm());
    layout(tags, PAPER_LAYOUT, ("Layout1", PAPER_SPACE, 1, 0), paper);
    layout(tags, MODEL_LAYOUT, ("Model", MODEL_SPACE, 0, 1024), paper);
    tags.end_section();
}

fn header(tags: &mut Tags, sheet: &Sheet) {
    let (width, height) = (sheet.paper.width.mm(), sheet.paper.height.mm());
    tags.section("HEADER");
    let mut variable = |name: &str, write: &dyn Fn(&mut Tags)| {
        tags.text(9, name);
        write(tags);
    };
    // Colours of our own need release 2004; without them the older release is read by more shops.
    let release = match sheet.ink {
        Ink::Black => "AC1015",
        Ink::Colour => "AC1018",
    };
    variable("$ACADVER", &|t| t.text(1, release));
    variable("$DWGCODEPAGE", &|t| t.text(3, CODE_PAGE));
    variable("$INSBASE", &|t| t.point(10, 0.0, 0.0));
    variable("$EXTMIN", &|t| t.point(10, 0.0, 0.0));
    variable("$EXTMAX", &|t| t.point(10, width, height));
    for (name, x, y) in [("$LIMMIN", 0.0, 0.0), ("$LIMMAX", width, height)] {
        variable(name, &|t| {
            t.number(10, x);
            t.number(20, y);
        });
    }
    variable("$LTSCALE", &|t| t.number(40, 1.0));
    variable("$TEXTSTYLE", &|t| t.text(7, STYLE));
    variable("$MEASUREMENT", &|t| t.whole(70, 1));
    variable("$INSUNITS", &|t| t.whole(70, 4));
    variable("$LUNITS", &|t| t.whole(70, 2));
    variable("$LWDISPLAY", &|t| t.whole(290, 1));
    variable("$HANDSEED", &|t| t.text(5, HANDLE_SEED));
    tags.end_section();
}

const SPACES: [(&str, &str, &str); 2] = [
    (MODEL_SPACE, "*Model_Space", MODEL_LAYOUT),
    (PAPER_SPACE, "*Paper_Space", PAPER_LAYOUT),
];

fn block_records(tags: &mut Tags, dimensions: &Dimensions) {
    let count = SPACES.len() + dimensions.block_count();
    tables::begin(tags, "BLOCK_RECORD", "1", count);
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
    dimensions.block_records(tags, "1");
    tables::end(tags);
}

fn blocks(tags: &mut Tags, dimensions: &Dimensions) {
    tags.section("BLOCKS");
    for (owner, name, _) in SPACES {
        let (first, last) = (tags.handle(), tags.handle());
        tags.begin_block(&first, owner, name, 0);
        tags.end_block(&last, owner);
    }
    dimensions.blocks(tags);
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

/// A layout by its name, the space it is of, its order and flags; its limits are those of the paper.
fn layout(
    tags: &mut Tags,
    handle: &str,
    (name, space, order, flags): (&str, &str, i64, i64),
    paper: (f64, f64),
) {
    tags.record("LAYOUT", handle, LAYOUTS, &["AcDbPlotSettings"]);
    tags.text(1, "");
    tags.whole(70, flags);
    tags.text(100, "AcDbLayout");
    tags.text(1, name);
    tags.whole(70, 1);
    tags.whole(71, order);
    for (code, x, y) in [(10, 0.0, 0.0), (11, paper.0, paper.1)] {
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
