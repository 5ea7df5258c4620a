//! Resolved values held against what the trade and paper say.

use super::from_text;
use crate::catalog::{Need, TradeData};
use crate::design::{Design, Front, PlanCorner, Side, Station};
use crate::diagnostics::Verdict;
use crate::units::{Length, Money};

fn design(text: &str) -> Design {
    from_text(text).unwrap_or_else(|f| panic!("{f:#?}"))
}

const HEAD: &str = "project: {title: Trial}\nruns: [{name: cook, length: 100 in, depth: 30 in}]\n";

fn middles(text: &str) -> Vec<f64> {
    let design = design(text);
    let of = |s: &Station| match s {
        Station::FromLeft(at) => at.in_inches(),
        other @ Station::FromRight(_) => panic!("{other:?}"),
    };
    let appliances = design.appliances.iter().map(|a| of(&a.station));
    appliances
        .chain(design.openings.iter().map(|o| of(&o.station)))
        .collect()
}

fn sink(name: &str, at: &str, width: &str) -> String {
    format!(
        "  - {{name: {name}, at: {at}, cutout: {{width: {width}, depth: 15 in}}, body: {{height: 7 in}}, \
         front: {{closed: {{setback: 6 in}}}}}}\n"
    )
}

#[test]
fn between_two_leaves_equal_clear_space() {
    // a: 20 in wide about 10+20 = 30, so 20 to 40. b: 10 in wide, 15 in from the right end: 80 to 90.
    // Clear space from 40 to 80: its middle is 60. Between the left end and a: (0 + 20) / 2 = 10.
    let text = format!(
        "{HEAD}appliances:\n{}{}{}{}",
        sink("c", "{between: [b, a]}", "12 in"),
        sink("a", "{from: left, distance: 30 in}", "20 in"),
        sink("b", "{from: right, distance: 15 in}", "10 in"),
        sink("d", "{between: [left-end, a]}", "6 in"),
    );
    let found = middles(&text);
    for (found, paper) in found.iter().zip([60.0, 30.0, 85.0, 10.0]) {
        assert!((found - paper).abs() < 1e-9, "{found} for {paper}");
    }
}

#[test]
fn an_opening_in_an_end_is_measured_from_the_working_side() {
    let text = format!(
        "{HEAD}openings:\n  - {{name: hatch, kind: hatch, side: left, at: {{from: seating, distance: 10 in}}, \
         width: 8 in, height: 8 in, sill: 8 in}}\n"
    );
    // The run is 30 in deep: 30 - 10 = 20.
    assert!((middles(&text)[0] - 20.0).abs() < 1e-9);
    assert_eq!(design(&text).openings[0].side, Side::Left);
}

#[test]
fn what_is_left_out_gets_the_usual_value_in_the_units_of_the_file() {
    let imperial = design(HEAD);
    assert_eq!(imperial.trade.stud.designator, "362S125-33");
    assert_eq!(imperial.trade.stud_spacing.in_inches(), 16.0);
    assert_eq!(imperial.counter.thickness.in_inches(), 2.0);
    assert_eq!(imperial.counter.turndown_sides, Side::ALL);
    assert_eq!(imperial.counter.corners.value, PlanCorner::Sharp);
    assert_eq!(imperial.printing.paper.name, "Letter");
    assert!(!imperial.trade.stud_spacing.place.is_known());
    let metric = design(&HEAD.replace("title: Trial", "title: Trial, units: metric"));
    assert_eq!(metric.trade.stud_spacing.mm(), 400.0);
    assert_eq!(metric.levels.counter.mm(), 900.0);
    assert_eq!(metric.printing.paper.name, "A4");
    assert_eq!(
        metric.printing.bar_x,
        (Length::millimetres(150.0), Length::millimetres(150.0))
    );
}

#[test]
fn an_open_front_reaches_as_far_as_its_cutout() {
    let text = format!(
        "{HEAD}appliances:\n  - {{name: grill, at: {{from: left, distance: 50 in}}, cutout: {{width: 30 in, depth: 21 in}}, \
         body: {{height: 9 in}}, front: {{open: {{panel_height: 10 in}}}}}}\n"
    );
    let grill = &design(&text).appliances[0];
    let Front::Open {
        panel_height,
        reach,
    } = &grill.front
    else {
        panic!("{:?}", grill.front);
    };
    assert_eq!((panel_height.in_inches(), reach.in_inches()), (10.0, 21.0));
    // Half an inch less than the cutout, as its key says.
    assert!((grill.body_width.in_inches() - 29.5).abs() < 1e-9);
}

#[test]
fn a_measured_bar_is_kept_beside_the_drawn_one() {
    let text = format!("{HEAD}printing: {{bars: {{y: {{measured: 5-31/32 in}}}}}}\n");
    let printing = design(&text).printing;
    assert_eq!(printing.bar_x.0, printing.bar_x.1);
    assert!((printing.bar_y.1.in_inches() - 5.968_75).abs() < 1e-9);
}

#[test]
fn a_chain_of_a_thousand_neighbours_is_followed() {
    use std::fmt::Write;
    let mut text = format!("{HEAD}openings:\n");
    let mut one = |name: usize, at: &str| {
        let _ = writeln!(
            text,
            "  - {{name: v{name}, kind: vent, at: {at}, width: 3 in, height: 3 in, sill: 8 in}}"
        );
    };
    for i in 0..999 {
        one(i, &format!("{{in_line_with: v{}}}", i + 1));
    }
    one(999, "{from: left, distance: 33 in}");
    assert!(middles(&text).iter().all(|m| (m - 33.0).abs() < 1e-9));
}

/// What a text adds to [`HEAD`] comes to, and what is said about it.
fn with_findings(more: &str) -> (Design, Vec<(Verdict, String)>) {
    let design = design(&format!("{HEAD}{more}"));
    let said = design.findings.iter();
    let said = said.map(|f| (f.verdict, f.found.clone())).collect();
    (design, said)
}

#[test]
fn what_the_file_sells_takes_the_place_of_the_trade_data() {
    let (design, said) = with_findings(
        "buying: {tax: 8.25 %, spare: {tile: 15 %, concrete_bags: 3}, mixer: 2 cu ft, punch_outs: as-they-fall}\n\
         supplies:\n  - {name: \"bagged concrete, 80 lb\", for: concrete, sold: {bag: {weight: 80 lb, yields: 0.60 cu ft}}, \
         price: 5.05 USD}\n",
    );
    assert!(said.is_empty(), "{said:?}");
    let buying = &design.buying;
    assert!((buying.tax - 0.0825).abs() < 1e-12);
    assert_eq!(
        (buying.spare.tile.value, buying.spare.concrete_bags),
        (0.15, 3)
    );
    // Twice 28.316846592 L.
    assert!((buying.mixer.mm3() - 56_633_693.184).abs() < 1e-3);
    assert!(!buying.aligned);
    let concrete: Vec<_> = design.supplies.of(&Need::Concrete).collect();
    assert_eq!(concrete.len(), 4);
    let ours = concrete.iter().find(|s| s.name == "bagged concrete, 80 lb");
    let ours = ours.unwrap();
    assert_eq!((ours.price, ours.example), (Some(Money::cents(505)), false));
    assert!(ours.place.is_known());
}

#[test]
fn what_is_bad_is_left_out_and_the_rest_still_serves() {
    let (design, said) = with_findings(
        "buying: {tax: -8 %, spare: {concrete: 0.1}}\nsupplies:\n  \
         - {name: dear, for: concrete, sold: {bag: {weight: 80 lb, yields: 0.60 cu ft}}, price: 9.99}\n  \
         - {name: empty, for: concrete, sold: {bag: {weight: 80 lb, yields: 0 L}}, price: 1 USD}\n  \
         - {name: own, for: shim, sold: {pack: {count: 7}}, price: 2 USD}\n",
    );
    assert_eq!(said.len(), 4, "{said:?}");
    assert!(said.iter().all(|s| s.0 == Verdict::Fail));
    assert_eq!(
        (design.buying.tax, design.buying.spare.concrete.value),
        (0.0, 0.1)
    );
    let concrete = |name| design.supplies.of(&Need::Concrete).find(|s| s.name == name);
    assert_eq!(concrete("dear").map(|s| s.price), Some(None));
    assert!(concrete("empty").is_none());
    assert!(design.supplies.of(&Need::Shim).any(|s| s.name == "own"));
}

#[test]
fn prices_in_another_currency_are_left_out_and_that_is_said_once() {
    let (design, said) = with_findings(
        "buying: {currency: EUR}\nsupplies:\n  - {name: own, for: shim, sold: {pack: {count: 7}}, price: € 2}\n",
    );
    assert_eq!(said.len(), 1, "{said:?}");
    assert_eq!(said[0].0, Verdict::Caution);
    assert!(
        said[0]
            .1
            .ends_with("of the trade data are not in EUR and are left out")
    );
    let priced: Vec<_> = design
        .supplies
        .all()
        .iter()
        .filter(|s| s.price.is_some())
        .collect();
    assert_eq!((priced.len(), &*priced[0].name), (1, "own"));
}

#[test]
fn an_appliance_is_served_by_its_name() {
    let (design, said) = with_findings(&format!(
        "appliances:\n{}supplies:\n  - {{name: bowl, for: bar sink, sold: each, price: 90 USD}}\n",
        sink("bar sink", "{from: left, distance: 50 in}", "15 in")
    ));
    assert!(said.is_empty(), "{said:?}");
    let need = Need::Thing("bar sink".to_owned());
    assert_eq!(design.supplies.of(&need).count(), 1);
}

proptest::proptest! {
    #[test]
    fn no_text_makes_it_panic(text in "(project|runs|name|length|depth|counter|edge|at|supplies|for|sold|buying|tax|[{}\\[\\]:,&*!|>'\"#-]|[0-9]{1,3}| |\n|in|ft){0,60}") {
        let _ = from_text(&text);
    }
}

#[test]
fn a_trade_file_is_not_told_of_things_that_it_cannot_have() {
    let text = "supplies:\n  - {name: a, for: grill, sold: each}\n  - {name: b, for: concrete, sold: each}\n";
    let said = crate::design::add_trade(&mut TradeData::default(), text);
    let codes: Vec<_> = said.iter().map(|f| (f.code, f.place.line)).collect();
    assert_eq!(codes, [("unknown-need", 2), ("sold-otherwise", 3)]);
    assert!(
        said[0].hint.contains("stands in the parameter file"),
        "{}",
        said[0].hint
    );
}
