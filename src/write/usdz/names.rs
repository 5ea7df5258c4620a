//! Names as USD allows them.

use std::collections::BTreeSet;

/// Names of one parent's children.
///
/// Invariant: each is a letter or `_` followed by letters, figures and `_` of ASCII, and none is there twice.
#[derive(Default)]
pub(super) struct Names {
    taken: BTreeSet<String>,
}

impl Names {
    /// The name nearest to a text that is not taken yet.
    pub(super) fn of(&mut self, text: &str) -> String {
        let plain = plain(text);
        let mut name = plain.clone();
        let mut number = 2;
        while !self.taken.insert(name.clone()) {
            name = format!("{plain}_{number}");
            number += 1;
        }
        name
    }
}

fn plain(text: &str) -> String {
    let sign = |c: char| if c.is_ascii_alphanumeric() { c } else { '_' };
    let name: String = text.chars().map(sign).collect();
    match name.chars().next() {
        None => "_".to_owned(),
        Some(c) if c.is_ascii_digit() => format!("_{name}"),
        Some(_) => name,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_plain_and_unique() {
        let mut names = Names::default();
        let found = ["C-S07", "C.S07", "3rd run", "", "Küche"].map(|t| names.of(t));
        assert_eq!(found, ["C_S07", "C_S07_2", "_3rd_run", "_", "K_che"]);
    }
}
