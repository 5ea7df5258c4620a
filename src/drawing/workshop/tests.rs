use super::*;
use crate::design::{Project, sample};
use crate::drawing::check::{extent, texts_are_clear};
use crate::drawing::{Item, Layer, Sheet};
use crate::units::{Length, Notation};

fn project(units: Notation) -> Project {
    Project {
        units,
        ..sample::design(vec![sample::run("cook", 3000.0, None, &[])]).project
    }
}

fn inches(inches: f64) -> Length {
    Length::inches(inches)
}

/// A stick with pieces of these lengths one after the other, an eighth of an inch of kerf between them.
fn stick(number: u32, length: f64, pieces: &[f64]) -> Stick {
    let ends = [
        [CutEnd::Square, CutEnd::Square],
        [CutEnd::Tab, CutEnd::Tab],
        [CutEnd::Square, CutEnd::Mitre],
    ];
    let feet = [None, Some(Foot::Near), Some(Foot::Far)];
    let mut at = 0.0;
    let cut = |(i, piece): (usize, &f64)| {
        let from = at;
        at += piece + 0.125;
        StickCut {
            from: inches(from),
            to: inches(from + piece),
            mark: format!("CW-S{:02}", number as usize * 10 + i),
            ends: ends[i % 3],
            foot: feet[i % 3],
        }
    };
    let cuts: Vec<_> = pieces.iter().enumerate().map(cut).collect();
    Stick {
        number,
        length: inches(length),
        cuts,
        offcut: inches((length - at).max(0.0)),
    }
}

/// Sticks of several lengths: full ones, empty ends, a row of the smallest pieces, a gap.
fn stick_sets() -> Vec<StickSet> {
    let mut gap = stick(3, 192.0, &[31.4375, 31.4375, 60.0]);
    gap.cuts[2].from += inches(20.0);
    gap.cuts[2].to += inches(20.0);
    gap.offcut = inches(48.0);
    let studs = vec![
        stick(1, 192.0, &[31.4375; 6]),
        stick(2, 192.0, &[31.4375; 6]),
        gap,
        stick(4, 240.0, &[119.9375, 119.9375]),
        stick(5, 96.0, &[2.0; 12]),
        stick(6, 96.0, &[50.0, 1.0, 0.5, 3.0, 30.0]),
    ];
    let track = (1..=9)
        .map(|n| stick(n, 120.0, &[77.25, 22.5, 14.125]))
        .collect();
    vec![
        StickSet {
            title: "362S125-33: 6 sticks".to_owned(),
            sticks: studs,
        },
        StickSet {
            title: "362T125-33: 9 sticks".to_owned(),
            sticks: track,
        },
        StickSet {
            title: "nothing of it".to_owned(),
            sticks: Vec::new(),
        },
    ]
}

fn rectangle([x, y, dx, dy]: [f64; 4]) -> Rectangle {
    Rectangle {
        x: inches(x),
        y: inches(y),
        dx: inches(dx),
        dy: inches(dy),
    }
}

fn board(
    number: u32,
    (length, width): (f64, f64),
    pieces: &[[f64; 4]],
    offcuts: &[[f64; 4]],
    cuts: &[[f64; 4]],
) -> Board {
    let piece = |(i, area): (usize, &[f64; 4])| BoardPiece {
        area: rectangle(*area),
        mark: format!("CW-B{:02}", number as usize * 10 + i),
        note: if i == 0 {
            "door opening".to_owned()
        } else {
            String::new()
        },
    };
    let cut = |[x0, y0, x1, y1]: &[f64; 4]| BoardCut {
        from: (inches(*x0), inches(*y0)),
        to: (inches(*x1), inches(*y1)),
    };
    Board {
        number,
        length: inches(length),
        width: inches(width),
        pieces: pieces.iter().enumerate().map(piece).collect(),
        offcuts: offcuts.iter().map(|r| rectangle(*r)).collect(),
        cuts: cuts.iter().map(cut).collect(),
    }
}

/// Cement boards with large pieces and offcuts, and plywood in narrow strips.
fn board_sets() -> Vec<BoardSet> {
    let cement = (1..=5).map(|n| {
        board(
            n,
            (60.0, 36.0),
            &[[0.0, 0.0, 40.0, 31.5], [40.0, 0.0, 12.0, 31.5]],
            &[[52.0, 0.0, 8.0, 31.5], [0.0, 31.5, 60.0, 4.5]],
            &[
                [0.0, 31.5, 60.0, 31.5],
                [40.0, 0.0, 40.0, 31.5],
                [52.0, 0.0, 52.0, 31.5],
            ],
        )
    });
    let strips: Vec<_> = (0..12)
        .map(|i| [0.0, f64::from(i) * 2.0, 70.0, 1.875])
        .collect();
    let mut cuts: Vec<_> = (1..=12)
        .map(|i| {
            [
                0.0,
                f64::from(i) * 2.0 - 0.125,
                96.0,
                f64::from(i) * 2.0 - 0.125,
            ]
        })
        .collect();
    cuts.extend((0..12).map(|i| [70.0, f64::from(i) * 2.0, 70.0, f64::from(i) * 2.0 + 1.875]));
    let small = [[71.0, 30.0, 1.0, 1.0], [74.0, 40.0, 6.0, 2.0]];
    let offcuts = [[0.0, 24.0, 70.0, 24.0], [84.0, 24.0, 12.0, 24.0]];
    let pieces: Vec<_> = strips.iter().copied().chain(small).collect();
    let plywood = board(1, (96.0, 48.0), &pieces, &offcuts, &cuts);
    vec![
        BoardSet {
            title: "cement board 1/2\": 5 sheets".to_owned(),
            grain: false,
            boards: cement.collect(),
        },
        BoardSet {
            title: "plywood 3/4\": 1 sheet".to_owned(),
            grain: true,
            boards: vec![plywood],
        },
    ]
}

fn texts(sheets: &[Sheet]) -> Vec<&str> {
    let items = sheets.iter().flat_map(|s| &s.items);
    let text = items.filter_map(|item| match item {
        Item::Text { text, .. } => Some(text.as_str()),
        Item::Path { .. } | Item::Dimension(_) => None,
    });
    text.collect()
}

const UNITS: [Notation; 2] = [Notation::Imperial, Notation::Metric];

#[test]
fn nothing_on_the_sheets_crosses_a_text() {
    for units in UNITS {
        let project = project(units);
        let sticks = stick_sheets(&project, &stick_sets());
        let boards = board_sheets(&project, &board_sets());
        assert!(sticks.len() >= 2 && !boards.is_empty());
        for sheet in sticks.iter().chain(&boards) {
            texts_are_clear(sheet).unwrap();
        }
    }
}

#[test]
fn sticks_are_to_scale_and_every_piece_is_told_once() {
    for units in UNITS {
        let sets = stick_sets();
        let sheets = stick_sheets(&project(units), &sets);
        let factor = sheets[0].scale.factor;
        let outlines = sheets.iter().flat_map(|s| &s.items).filter(|item| {
            matches!(
                item,
                Item::Path {
                    layer: Layer::Outline,
                    closed: true,
                    pen: Some(crate::drawing::Pen::Thick),
                    ..
                }
            )
        });
        let mut drawn: Vec<f64> = outlines.map(|o| extent(o) / factor / 25.4).collect();
        let mut asked: Vec<f64> = sets
            .iter()
            .flat_map(|s| &s.sticks)
            .map(|s| s.length.in_inches())
            .collect();
        drawn.sort_by(f64::total_cmp);
        asked.sort_by(f64::total_cmp);
        assert_eq!(drawn.len(), asked.len());
        assert!(
            drawn.iter().zip(&asked).all(|(d, a)| (d - a).abs() < 1e-6),
            "{drawn:?}"
        );
        let told = texts(&sheets);
        for mark in sets
            .iter()
            .flat_map(|s| &s.sticks)
            .flat_map(|s| &s.cuts)
            .map(|c| &c.mark)
        {
            let times = told
                .iter()
                .filter(|t| t.split(' ').next() == Some(mark))
                .count();
            // The two sets of the example count their marks from the same number.
            let in_sets = sets
                .iter()
                .flat_map(|s| &s.sticks)
                .flat_map(|s| &s.cuts)
                .filter(|c| c.mark == *mark)
                .count();
            assert_eq!(times, in_sets, "{mark}");
        }
    }
}

#[test]
fn cuts_are_measured_from_the_marked_end() {
    let sheets = stick_sheets(&project(Notation::Imperial), &stick_sets()[..1]);
    let told = texts(&sheets);
    // Six studs of 31-7/16 in with an eighth between: the sixth ends at 6 × 31-7/16 + 5/8 = 189-1/4 in = 15'-9 1/4".
    assert!(told.contains(&"15'-9 1/4\""), "{told:?}");
    assert!(
        told.iter()
            .any(|t| t.ends_with("cut at the same places as stick 1"))
    );
}

#[test]
fn every_board_piece_is_told_and_every_cut_numbered() {
    for units in UNITS {
        let sets = board_sets();
        let sheets = board_sheets(&project(units), &sets);
        let told = texts(&sheets);
        for board in sets.iter().flat_map(|s| &s.boards) {
            for piece in &board.pieces {
                assert!(
                    told.iter().any(|t| t.contains(&piece.mark)),
                    "{}",
                    piece.mark
                );
            }
        }
        for number in 1..=24 {
            let text = format!("({number})");
            let least = if number <= 3 { 6 } else { 1 };
            let found = told.iter().filter(|t| t.contains(&text)).count();
            assert!(found >= least, "{text}: {found}");
        }
        assert!(told.contains(&"grain"));
    }
}

#[test]
fn without_anything_to_cut_there_are_no_sheets() {
    let project = project(Notation::Metric);
    assert!(stick_sheets(&project, &[]).is_empty());
    assert!(board_sheets(&project, &[]).is_empty());
    assert!(label_sheets(crate::design::LabelPaper::A4x24, &[]).is_empty());
}
