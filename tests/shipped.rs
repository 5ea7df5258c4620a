//! The files that are shipped: examples and trade data.

use islandwright::catalog::{Need, TRADE_FILES, TradeData};
use islandwright::design;
use islandwright::units::{Currency, Notation};
use std::collections::BTreeSet;

#[test]
fn every_example_resolves_and_plans() {
    for entry in std::fs::read_dir("params").unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|e| e == "yaml") {
            let text = std::fs::read_to_string(&path).unwrap();
            let design =
                design::from_text(&text).unwrap_or_else(|e| panic!("{}: {e:#?}", path.display()));
            assert!(design.findings.is_empty(), "{:#?}", design.findings);
            let plan = islandwright::plan::lay_out(design);
            assert!(plan.is_ok(), "{}: {:#?}", path.display(), plan.err());
        }
    }
}

#[test]
fn every_trade_file_is_embedded_and_resolves_without_a_finding() {
    let mut on_disk: Vec<_> = std::fs::read_dir("params/trade")
        .unwrap()
        .map(|e| e.unwrap().path().to_str().unwrap().to_owned())
        .collect();
    on_disk.sort();
    let mut embedded: Vec<_> = TRADE_FILES.iter().map(|f| f.0).collect();
    embedded.sort_unstable();
    assert_eq!(embedded, on_disk);
    let mut names = BTreeSet::new();
    for (name, text) in TRADE_FILES {
        let mut data = TradeData::default();
        let findings = design::add_trade(&mut data, text);
        assert!(findings.is_empty(), "{name}: {findings:#?}");
        assert!(data.entries().len() > 5, "{name}");
        for entry in data.entries() {
            assert!(names.insert(entry.name().to_owned()), "{}", entry.name());
        }
    }
    assert_eq!(design::shipped_trade().entries().len(), names.len());
}

/// The number of entries as a reader that nobody here wrote counts them.
#[test]
fn no_entry_of_a_trade_file_is_lost() {
    let count = |text: &str| {
        let file: serde_yaml::Value = serde_yaml::from_str(text).unwrap();
        file["supplies"].as_sequence().unwrap().len()
    };
    let all: usize = TRADE_FILES.iter().map(|f| count(f.1)).sum();
    assert_eq!(design::shipped_trade().entries().len(), all);
}

#[test]
fn every_supply_has_a_shop_and_a_price_that_is_marked_as_an_example() {
    for (name, text) in TRADE_FILES {
        let head: String = text.lines().take_while(|l| l.starts_with('#')).collect();
        assert!(head.contains("prices are invented examples"), "{name}");
    }
    let supplies = design::shipped_trade().entries();
    for supply in supplies.iter().flat_map(|e| &e.supplies) {
        let whole = !supply.shop.is_empty() && supply.price.is_some() && supply.example;
        assert!(whole, "{supply:?}");
    }
}

#[test]
fn every_need_is_served_in_both_units() {
    let sections = ["362S125-33", "362T125-33", "250S162-43", "250T125-43"];
    for units in [Notation::Imperial, Notation::Metric] {
        let (supplies, left_out) = design::shipped_trade().supplies(units, Currency::USD);
        assert_eq!(left_out, 0);
        for name in Need::names() {
            let need = Need::named(name).unwrap();
            assert!(supplies.of(&need).next().is_some(), "{units:?} {name}");
        }
        for section in sections {
            let need = Need::Steel(section.to_owned());
            assert!(supplies.of(&need).next().is_some(), "{units:?} {section}");
        }
    }
}
