//! Trade choices resolved.

use super::gather::{Gather, Limits, Usual};
use crate::catalog::{SectionKind, SteelSection};
use crate::design::{Levels, Placed, Trade};
use crate::parameters::{self, Given};
use crate::units::{Colour, Length, Notation, parse_colour};

/// Everything but what depends on the levels. `None` when a section is not known: the finding is put down.
pub(super) fn trade(g: &mut Gather, given: &Given<parameters::Trade>) -> Option<Trade> {
    let empty = parameters::Trade::default();
    let t = given.value().unwrap_or(&empty);
    let (no_board, no_sheet) = (
        parameters::Board::default(),
        parameters::Substrate::default(),
    );
    let board = t.board.value().unwrap_or(&no_board);
    let sheet = t.substrate.value().unwrap_or(&no_sheet);
    let stud = section(g, &t.stud, "362S125-33", SectionKind::Stud);
    let track = section(g, &t.track, "362T125-33", SectionKind::Track);
    let coat = Limits(1.0, 30.0);
    let board_side = Limits(300.0, 3700.0);
    let metric = g.notation == Notation::Metric;
    let screw = if metric {
        "4.2 × 13 mm wafer-head self-drilling screw, coated for outdoors"
    } else {
        "#8 × 1/2 in wafer-head self-drilling screw, coated for outdoors"
    };
    let mix = if metric {
        "bagged concrete, 28 MPa"
    } else {
        "bagged concrete, 4,000 psi"
    };
    let (Some(stud), Some(track)) = (stud, track) else {
        return None;
    };
    let trade = Trade {
        stud,
        track,
        stud_spacing: g.length(&t.stud_spacing, Usual(16.0, 400.0), Limits(100.0, 625.0)),
        tab: g.length(&t.tab, Usual(2.0, 50.0), Limits(12.0, 150.0)),
        board_length: g.length(&board.length, Usual(60.0, 1200.0), board_side),
        board_width: g.length(&board.width, Usual(36.0, 900.0), board_side),
        board_thickness: g.length(&board.thickness, Usual(0.5, 12.0), Limits(6.0, 26.0)),
        board_gap: g.length(&board.gap, Usual(0.125, 3.0), Limits(0.0, 12.0)),
        base_coat: g.length(&t.base_coat, Usual(0.25, 6.0), coat),
        finish_coat: g.length(&t.finish_coat, Usual(0.125, 3.0), coat),
        finish_colour: colour(g, &t.finish_colour),
        sleeper_width: Placed::default(),
        sleeper_height: Placed::default(),
        fastener: g.text(&t.fastener, screw),
        substrate: g.text(&sheet.material, "cement board"),
        substrate_thickness: g.length(&sheet.thickness, Usual(0.5, 12.0), Limits(6.0, 50.0)),
        slab_mix: g.text(&t.slab_mix, mix),
    };
    check(g, &trade);
    Some(trade)
}

/// The colour of the finish coat; one that is none is named, and cream is shown.
fn colour(g: &mut Gather, given: &Given<parameters::ColourText>) -> Placed<Colour> {
    g.written(given, parse_colour).unwrap_or(Placed {
        value: Colour::CREAM,
        place: given.place(),
    })
}

fn check(g: &mut Gather, trade: &Trade) {
    let (stud, track) = (&trade.stud, &trade.track);
    if (stud.nominal_depth - track.nominal_depth).abs() > Length::millimetres(0.1) {
        let place = if track.place.is_known() {
            &track.place
        } else {
            &stud.place
        };
        let found = format!(
            "stud {} and track {} are not of one depth",
            stud.designator, track.designator
        );
        let hint = "the first three figures must be the same: 362S… goes into 362T…";
        g.error("sections-differ", place, found, hint);
    }
    if trade.board_width.value > trade.board_length.value {
        let place = if trade.board_width.place.is_known() {
            &trade.board_width.place
        } else {
            &trade.board_length.place
        };
        let hint = "length is the long side of a sheet: exchange the two";
        g.error("board-sides", place, "the board is wider than long", hint);
    }
}

/// The sleeper, which stands in the base gap.
pub(super) fn with_sleeper(
    g: &mut Gather,
    trade: Option<Trade>,
    given: &Given<parameters::Trade>,
    levels: &Levels,
) -> Option<Trade> {
    let empty = parameters::Sleeper::default();
    let sleeper = given.value().and_then(|t| t.sleeper.value());
    let sleeper = sleeper.unwrap_or(&empty);
    let gap = levels.base_gap.value;
    let width = g.length(&sleeper.width, Usual(3.5, 90.0), Limits(19.0, 300.0));
    let usual = g.usual(Usual(1.5, 40.0)).min(gap);
    let height = g.length_or(&sleeper.height, usual, Limits(6.0, 300.0));
    if height.value > gap {
        let found = format!(
            "the sleeper is {} high, but the base gap only {}",
            g.spell(height.value),
            g.spell(gap)
        );
        let hint = "raise base_gap in levels, or choose a lower sleeper";
        g.error("sleeper-high", &height.place, found, hint);
    }
    trade.map(|trade| Trade {
        sleeper_width: width,
        sleeper_height: height,
        ..trade
    })
}

fn section(
    g: &mut Gather,
    given: &Given<String>,
    usual: &str,
    kind: SectionKind,
) -> Option<Placed<SteelSection>> {
    let text = given.value().map_or(usual, String::as_str);
    let place = given.place();
    let (letter, word) = match kind {
        SectionKind::Stud => ('S', "stud"),
        SectionKind::Track => ('T', "track"),
    };
    match SteelSection::from_designator(text) {
        Ok(value) if value.kind == kind => Some(Placed { value, place }),
        Ok(value) => {
            let found = format!("{} is not a {word}", value.designator);
            let hint = format!("a {word} has the letter {letter}, such as {usual}");
            g.error("wrong-section", &place, found, hint);
            None
        }
        Err(found) => {
            let hint = format!("write the designation of a {word}, such as {usual}");
            g.error("unknown-section", &place, found, hint);
            None
        }
    }
}
