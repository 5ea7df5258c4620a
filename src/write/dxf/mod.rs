//! A sheet as DXF for a plotter, a cutting shop or another drafter: as text, millimetres of the paper.
//!
//! Written by hand: the one crate for the format stamps its files with the clock, the time zone and random numbers.

mod dimension;
mod entities;
mod frame;
mod tables;
mod tags;

use crate::drawing::{Item, Sheet};
use dimension::Dimensions;
use frame::Owner;
use tags::Tags;

/// Spells a sheet as a DXF drawing on its paper: lines and arcs as polylines with bulges, lettering as text, dimensions as
/// dimensions that measure the built length, fills as solid hatches, one layer for each [`crate::drawing::Layer`]. White
/// fills are left out, for they only hide what lies below on paper.
pub fn dxf(sheet: &Sheet) -> Vec<u8> {
    let mut tags = Tags::new();
    let dimensions = Dimensions::of(&mut tags, sheet);
    frame::open(&mut tags, sheet, &dimensions);
    tags.section("ENTITIES");
    let mut number = 0;
    for item in &sheet.items {
        match item {
            Item::Dimension(dimension) => dimensions.entity(&mut tags, &mut number, dimension),
            other => entities::entity(&mut tags, &Owner(frame::MODEL_SPACE), other),
        }
    }
    tags.end_section();
    frame::close(&mut tags, sheet);
    tags.finish()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::PaperKind;
    use crate::drawing::{Align, Dash, Dimension, Item, Layer, Pen, Scale};
    use crate::geometry::{Outline, Point2};

    fn sample() -> Sheet {
        let hole = Outline::rounded_rectangle(20.0, 30.0, 120.0, 90.0, 10.0);
        let path = |layer, pen, fill| Item::Path {
            layer,
            points: hole.vertices().to_vec(),
            closed: true,
            pen,
            dash: Dash::Solid,
            fill,
        };
        Sheet {
            name: "sample".into(),
            title: "Sample".into(),
            number: "T-1".into(),
            paper: PaperKind::A4.landscape(),
            scale: Scale {
                factor: 1.0,
                name: "1:1".into(),
            },
            chapter: "",
            ink: crate::drawing::Ink::Black,
            items: vec![
                path(Layer::Cut, Some(Pen::Heavy), None),
                path(Layer::Note, None, Some(1.0)),
                Item::Text {
                    layer: Layer::Note,
                    at: Point2::new(70.0, 60.0),
                    text: "Ø 10 ^ \"R\"\n½".into(),
                    height: 3.5,
                    align: Align::Centre,
                    angle: -90.0,
                },
            ],
            lost: Vec::new(),
        }
    }

    type Pairs = Vec<(u16, String)>;

    /// The file as pairs of code and value.
    fn pairs(file: &[u8]) -> Pairs {
        let file: String = file.iter().map(|b| char::from(*b)).collect();
        let lines: Vec<_> = file.lines().collect();
        assert_eq!(lines.len() % 2, 0);
        lines
            .chunks(2)
            .map(|c| (c[0].trim().parse().unwrap(), c[1].to_owned()))
            .collect()
    }

    fn values(pairs: &[(u16, String)], code: u16) -> Vec<&str> {
        pairs
            .iter()
            .filter(|(c, _)| *c == code)
            .map(|(_, v)| v.as_str())
            .collect()
    }

    #[test]
    fn an_outline_is_one_closed_polyline_with_its_bulges() {
        let all = pairs(&dxf(&sample()));
        let start = all.iter().position(|(_, v)| v == "LWPOLYLINE").unwrap();
        let end = all.iter().position(|(_, v)| v == "TEXT").unwrap();
        let polyline = &all[start..end];
        // Only the cut line: a white fill without an edge is nothing to a plotter.
        assert_eq!(values(polyline, 0), ["LWPOLYLINE"]);
        assert_eq!(values(polyline, 8), ["cut"]);
        assert_eq!(values(polyline, 70), ["1"]);
        assert_eq!(values(polyline, 90), ["8"]);
        // The tangent of a quarter of 90 degrees.
        assert_eq!(values(polyline, 42), ["0.414214"; 4]);
        assert_eq!(
            values(polyline, 10),
            [
                "30.0", "110.0", "120.0", "120.0", "110.0", "30.0", "20.0", "20.0"
            ]
        );
        assert!(values(&all, 9).contains(&"$INSUNITS"));
    }

    #[test]
    fn lettering_is_in_the_code_page_of_the_file_and_other_signs_are_spelt() {
        let mut sheet = sample();
        sheet.items.push(Item::Text {
            layer: Layer::Note,
            at: Point2::new(70.0, 60.0),
            text: "⌀ ⅜ – \u{1F525}".into(),
            height: 3.5,
            align: Align::Left,
            angle: 0.0,
        });
        let file = dxf(&sheet);
        let has = |part: &[u8]| file.windows(part.len()).any(|w| w == part);
        // Windows-1252: Ø is D8, ½ is BD, the dash 96.
        assert!(has(b"\xD8 10 ^  \"R\" \xBD\r\n"));
        assert!(has(b"\\U+2300 \\U+215C \x96 \\U+D83D\\U+DD25\r\n"));
    }

    #[test]
    fn a_fill_is_a_solid_hatch_and_white_is_nothing() {
        let mut sheet = sample();
        let hatches = |sheet: &Sheet| {
            values(&pairs(&dxf(sheet)), 0)
                .iter()
                .filter(|v| **v == "HATCH")
                .count()
        };
        assert_eq!(hatches(&sheet), 0);
        for (fill, colour) in [(0.0, None), (0.5, Some("252"))] {
            if let Some(Item::Path { fill: own, .. }) = sheet.items.get_mut(1) {
                *own = Some(fill);
            }
            assert_eq!(hatches(&sheet), 1);
            let all = pairs(&dxf(&sheet));
            let start = all.iter().position(|(_, v)| v == "HATCH").unwrap();
            let hatch = &all[start..all.iter().position(|(_, v)| v == "TEXT").unwrap()];
            assert_eq!(values(hatch, 62).first().copied(), colour);
            assert_eq!(values(hatch, 42).len(), 8, "a bulge for each corner");
        }
    }

    #[test]
    fn no_two_records_share_a_handle() {
        let all = pairs(&dxf(&sample()));
        let seed = super::tags::HANDLE_SEED;
        let mut handles: Vec<_> = all
            .iter()
            .filter(|(c, v)| (*c == 5 || *c == 105) && v != seed)
            .map(|(_, v)| u32::from_str_radix(v, 16).unwrap())
            .collect();
        let count = handles.len();
        handles.sort_unstable();
        handles.dedup();
        assert_eq!(handles.len(), count);
    }

    /// A dimension `drawn` long on the paper.
    fn dimension(drawn: f64, scale: f64, text: &str) -> Item {
        Item::Dimension(Dimension {
            line: [Point2::new(20.0, 15.0), Point2::new(20.0 + drawn, 15.0)],
            measured: drawn / scale,
            scale,
            text: text.into(),
            at: Point2::new(20.0 + drawn / 2.0, 16.0),
            height: 2.5,
            align: Align::Centre,
            angle: 0.0,
            leader: None,
        })
    }

    /// The groups of the first record of a kind, and those of its style.
    fn measured(item: Item) -> (Pairs, Pairs) {
        let mut sheet = sample();
        sheet.items.push(item);
        let all = pairs(&dxf(&sheet));
        let record = |kind: &str, nth: usize| {
            let starts = all.iter().enumerate().filter(|(_, p)| p.0 == 0);
            let mut starts = starts.map(|(i, _)| i).chain([all.len()]);
            let start = starts.by_ref().filter(|i| all[*i].1 == kind).nth(nth);
            start.map_or_else(Vec::new, |s| all[s..starts.next().unwrap()].to_vec())
        };
        (record("DIMENSION", 0), record("DIMSTYLE", 1))
    }

    #[test]
    fn a_dimension_measures_what_is_built() {
        // 30 mm at 1:20 are 600 mm.
        let (entity, style) = measured(dimension(30.0, 0.05, "600"));
        assert_eq!(values(&entity, 3), ["1-20-mm"]);
        assert_eq!(values(&style, 2), ["1-20-mm"]);
        assert_eq!(values(&style, 144), ["20.0"]);
        assert_eq!(values(&entity, 13), ["20.0"]);
        assert_eq!(values(&entity, 14), ["50.0"]);
        assert!(
            values(&entity, 1).is_empty(),
            "nothing is lettered otherwise"
        );
        // Extension lines are the sheet's own.
        assert_eq!(
            (values(&style, 75), values(&style, 76)),
            (vec!["1"], vec!["1"])
        );
        // 1 in at 1" = 1'-0" is a foot.
        let (entity, style) = measured(dimension(25.4, 1.0 / 12.0, "1'-0\""));
        assert_eq!(values(&entity, 3), ["1-12-ft-in"]);
        assert_eq!(values(&style, 144), ["0.472440944882"]);
        assert!(values(&entity, 1).is_empty());
    }

    #[test]
    fn only_what_a_reader_would_letter_otherwise_is_written_down() {
        let text = |drawn, text| {
            let (entity, _) = measured(dimension(drawn, 0.05, text));
            values(&entity, 1)
                .iter()
                .map(ToString::to_string)
                .collect::<Vec<_>>()
        };
        assert_eq!(text(30.0, "601"), ["601"], "rounded for its chain");
        assert_eq!(text(30.0, ""), [" "], "no lettering");
        assert_eq!(text(30.025, "601"), ["601"], "600.5 may go either way");
        assert!(text(30.024, "600").is_empty());
    }

    #[test]
    fn what_cannot_measure_is_drawn_all_the_same() {
        for (drawn, scale) in [(30.0, 0.0), (30.0, f64::NAN), (0.0, 0.05)] {
            let mut sheet = sample();
            sheet.items.push(dimension(drawn, scale, "600"));
            let all = pairs(&dxf(&sheet));
            assert!(!values(&all, 0).contains(&"DIMENSION"));
            assert_eq!(values(&all, 1).iter().filter(|v| **v == "600").count(), 1);
        }
    }

    #[test]
    fn in_colour_each_layer_has_its_own() {
        let mut sheet = sample();
        assert!(values(&pairs(&dxf(&sheet)), 420).is_empty());
        sheet.ink = crate::drawing::Ink::Colour;
        let all = pairs(&dxf(&sheet));
        let mut colours = values(&all, 420);
        assert_eq!(colours.len(), Layer::ALL.len());
        colours.sort_unstable();
        colours.dedup();
        assert_eq!(colours.len(), Layer::ALL.len());
        assert!(values(&all, 1).contains(&"AC1018"));
    }
}
