//! The page's script: modules put one behind the other.

/// The modules, each after those it needs.
const MODULES: &[&str] = &[
    include_str!("../../../templates/book/view/vector.js"),
    include_str!("../../../templates/book/view/camera.js"),
    include_str!("../../../templates/book/view/gestures.js"),
    include_str!("../../../templates/book/view/model.js"),
    include_str!("../../../templates/book/view/shaders.js"),
    include_str!("../../../templates/book/view/renderer.js"),
    include_str!("../../../templates/book/view/picking.js"),
    include_str!("../../../templates/book/view/layers.js"),
    include_str!("../../../templates/book/view/takeapart.js"),
    include_str!("../../../templates/book/view/cutplane.js"),
    include_str!("../../../templates/book/view/island.js"),
    include_str!("../../../templates/book/page/sheets.js"),
    include_str!("../../../templates/book/page/ticks.js"),
    include_str!("../../../templates/book/page/parts.js"),
    include_str!("../../../templates/book/page/numbers.js"),
    include_str!("../../../templates/book/page/live.js"),
    include_str!("../../../templates/book/page/start.js"),
    include_str!("../../../templates/book/page/main.js"),
];

/// One script of all modules: what they import stands above them, so that the lines that import go, and what they export
/// is plain.
pub(super) fn script() -> String {
    let lines = MODULES.iter().flat_map(|module| module.lines());
    let kept = lines.filter(|line| !line.starts_with("import "));
    let plain: Vec<&str> = kept
        .map(|line| line.strip_prefix("export ").unwrap_or(line))
        .collect();
    plain.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// The name that a line at the outermost level gives to something.
    fn named(line: &str) -> Option<&str> {
        let rest = ["const ", "let ", "class ", "function ", "async function "]
            .iter()
            .find_map(|word| line.strip_prefix(word))?;
        let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_')?;
        Some(&rest[..end])
    }

    #[test]
    fn no_name_is_given_twice_and_nothing_is_left_to_import() {
        let script = script();
        let names: Vec<&str> = script.lines().filter_map(named).collect();
        let unique: BTreeSet<&str> = names.iter().copied().collect();
        let twice: Vec<_> = unique
            .iter()
            .filter(|name| names.iter().filter(|n| n == name).count() > 1)
            .collect();
        assert!(twice.is_empty(), "{twice:?}");
        assert!(names.len() > 60);
        assert!(!script.contains("\nimport ") && !script.contains("\nexport "));
        assert!(!script.contains("</script"));
    }
}
