//! The paths that a file names, as lists of names from the crate's root or from `std`.

use super::source::{Source, Token};

/// A path named in a file.
#[derive(Debug, PartialEq, Eq)]
pub struct Named {
    /// The names from the root: `["std", "fs"]`, or `["crate", "parts", "Part"]`.
    pub names: Vec<String>,
    /// The line it stands on.
    pub line: usize,
}

/// All paths of a file that begin with `crate`, `super`, `self`, `islandwright` or `std`, groups spread out.
pub fn paths(source: &Source) -> Vec<Named> {
    let t = &source.tokens;
    let mut out = Vec::new();
    for i in 0..t.len() {
        let inside = i > 0 && t[i - 1].text == ":";
        let begins = matches!(
            t[i].text.as_str(),
            "crate" | "super" | "self" | "islandwright" | "std"
        );
        if begins && !inside && is_separator(t, i + 1) {
            spread(t, i, &mut Vec::new(), &mut out);
        }
    }
    for named in &mut out {
        from_root(&mut named.names, &source.module);
    }
    out
}

fn is_separator(t: &[Token], i: usize) -> bool {
    let colon = |k: usize| t.get(k).is_some_and(|t| t.text == ":");
    colon(i) && colon(i + 1)
}

/// Follows a path from token `i`, pushing what it names; returns the token after it.
fn spread(t: &[Token], mut i: usize, before: &mut Vec<String>, out: &mut Vec<Named>) -> usize {
    let depth = before.len();
    let line = t.get(i).map_or(0, |t| t.line);
    while let Some(token) = t.get(i) {
        if token.text == "{" {
            i += 1;
            while t.get(i).is_some_and(|t| t.text != "}") {
                i = spread(t, i, before, out);
                i += usize::from(t.get(i).is_some_and(|t| t.text == ","));
            }
            before.truncate(depth);
            return i + 1;
        }
        before.push(token.text.clone());
        i += 1;
        if !is_separator(t, i) {
            break;
        }
        i += 2;
    }
    out.push(Named {
        names: before.clone(),
        line,
    });
    before.truncate(depth);
    while t.get(i).is_some_and(|t| t.text == "as") {
        i += 2;
    }
    i
}

/// Spells `self` and `super` out from the crate's root.
fn from_root(names: &mut Vec<String>, module: &[String]) {
    match names[0].as_str() {
        "islandwright" => "crate".clone_into(&mut names[0]),
        "self" | "super" => {
            let up = names.iter().take_while(|n| *n == "super").count();
            let rest: Vec<String> = names.drain(..).skip(up.max(1)).collect();
            names.push("crate".to_owned());
            names.extend(module[..module.len().saturating_sub(up)].iter().cloned());
            names.extend(rest);
        }
        _ => {}
    }
}
