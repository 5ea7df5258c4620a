//! The parameter files that are shipped: they resolve.

#[test]
fn every_example_resolves() {
    for entry in std::fs::read_dir("params").unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|e| e == "yaml") {
            let text = std::fs::read_to_string(&path).unwrap();
            let design = islandwright::design::from_text(&text);
            assert!(design.is_ok(), "{}: {:#?}", path.display(), design.err());
        }
    }
}
