//! The parameter files that are shipped.

#[test]
fn every_example_resolves_and_plans() {
    for entry in std::fs::read_dir("params").unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|e| e == "yaml") {
            let text = std::fs::read_to_string(&path).unwrap();
            let design = islandwright::design::from_text(&text)
                .unwrap_or_else(|e| panic!("{}: {e:#?}", path.display()));
            let plan = islandwright::plan::lay_out(design);
            assert!(plan.is_ok(), "{}: {:#?}", path.display(), plan.err());
        }
    }
}
