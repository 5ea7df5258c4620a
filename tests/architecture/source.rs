//! The Rust sources as tokens: comments, strings and test modules taken out.

use std::path::{Path, PathBuf};

/// One file under `src`.
pub struct Source {
    /// Its path, as printed.
    pub path: String,
    /// The modules down to it: `["parts", "framing", "panel"]`; empty for `lib.rs` and `main.rs`.
    pub module: Vec<String>,
    /// How many lines it has.
    pub lines: usize,
    /// Its tokens without comments, strings and `#[cfg(test)]` items.
    pub tokens: Vec<Token>,
}

/// A word or a single mark, with its line.
#[derive(Clone, Debug)]
pub struct Token {
    /// The word or the mark.
    pub text: String,
    /// The line, from 1.
    pub line: usize,
}

/// Every source file of the crate but those that hold only tests, in the order of their paths.
pub fn sources() -> Vec<Source> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut paths = Vec::new();
    collect(&root.join("src"), &mut paths);
    paths.sort();
    let read = |path: &PathBuf| {
        let text = std::fs::read_to_string(path).expect("a source file is readable");
        let inner = path
            .strip_prefix(root.join("src"))
            .expect("it is under src");
        let mut module: Vec<String> = inner
            .with_extension("")
            .iter()
            .map(|p| p.to_string_lossy().into_owned())
            .collect();
        let last = module.last().map(String::as_str);
        if last == Some("mod") || (module.len() == 1 && matches!(last, Some("lib" | "main"))) {
            module.pop();
        }
        Source {
            path: inner.display().to_string(),
            module,
            lines: text.lines().count(),
            tokens: without_tests(&tokens(&text)),
        }
    };
    let is_test = |s: &Source| s.module.last().is_some_and(|m| m == "tests");
    paths.iter().map(read).filter(|s| !is_test(s)).collect()
}

fn collect(folder: &Path, paths: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).expect("src is a folder") {
        let path = entry.expect("src can be listed").path();
        if path.is_dir() {
            collect(&path, paths);
        } else if path.extension().is_some_and(|e| e == "rs") {
            paths.push(path);
        }
    }
}

/// Splits Rust into words and marks.
pub fn tokens(text: &str) -> Vec<Token> {
    let c: Vec<char> = text.chars().collect();
    let (mut i, mut line, mut out) = (0, 1, Vec::new());
    while i < c.len() {
        let end = skip(&c, i);
        if end > i {
            line += c[i..end].iter().filter(|&&x| x == '\n').count();
            i = end;
            continue;
        }
        let mut end = i + 1;
        if is_word(c[i]) {
            while end < c.len() && is_word(c[end]) {
                end += 1;
            }
        }
        out.push(Token {
            text: c[i..end].iter().collect(),
            line,
        });
        i = end;
    }
    out
}

fn is_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

/// Where the blank, comment, string or character literal that begins at `i` ends; `i` when none begins there.
fn skip(c: &[char], i: usize) -> usize {
    let at = |k: usize| c.get(k).copied().unwrap_or('\0');
    match c[i] {
        x if x.is_whitespace() => i + 1,
        '/' if at(i + 1) == '/' => c[i..]
            .iter()
            .position(|&x| x == '\n')
            .map_or(c.len(), |n| i + n),
        '/' if at(i + 1) == '*' => block_comment(c, i),
        '"' => string(c, i),
        'r' if matches!(at(i + 1), '"' | '#') && (i == 0 || !is_word(at(i - 1))) => {
            raw_string(c, i)
        }
        '\'' if at(i + 1) == '\\' => (i + 3..c.len())
            .find(|&k| c[k] == '\'')
            .map_or(c.len(), |k| k + 1),
        '\'' if at(i + 2) == '\'' => i + 3,
        _ => i,
    }
}

fn block_comment(c: &[char], start: usize) -> usize {
    let (mut depth, mut i) = (0_usize, start);
    while i + 1 < c.len() {
        match (c[i], c[i + 1]) {
            ('/', '*') => (depth, i) = (depth + 1, i + 2),
            ('*', '/') => (depth, i) = (depth - 1, i + 2),
            _ => i += 1,
        }
        if depth == 0 {
            return i;
        }
    }
    c.len()
}

fn string(c: &[char], start: usize) -> usize {
    let mut i = start + 1;
    while i < c.len() && c[i] != '"' {
        i += if c[i] == '\\' { 2 } else { 1 };
    }
    i + 1
}

fn raw_string(c: &[char], start: usize) -> usize {
    let hashes = c[start + 1..].iter().take_while(|&&x| x == '#').count();
    if c.get(start + 1 + hashes) != Some(&'"') {
        return start;
    }
    let close: Vec<char> = std::iter::once('"')
        .chain(std::iter::repeat_n('#', hashes))
        .collect();
    (start + 2 + hashes..c.len())
        .find(|&k| c[k..].starts_with(&close))
        .map_or(c.len(), |k| k + close.len())
}

/// Takes out every item marked `#[cfg(test)]`: a test may look at anything.
fn without_tests(tokens: &[Token]) -> Vec<Token> {
    let mut out = Vec::with_capacity(tokens.len());
    let mut i = 0;
    while i < tokens.len() {
        let marked = ["#", "[", "cfg", "(", "test", ")", "]"];
        let here = tokens[i..]
            .iter()
            .map(|t| t.text.as_str())
            .take(marked.len());
        if here.eq(marked) {
            i = item_end(tokens, i + marked.len());
        } else {
            out.push(tokens[i].clone());
            i += 1;
        }
    }
    out
}

/// The token after the item that begins at `start`: past its closing brace, or past its semicolon.
fn item_end(tokens: &[Token], start: usize) -> usize {
    let mut depth = 0_usize;
    for (i, token) in tokens.iter().enumerate().skip(start) {
        match token.text.as_str() {
            "{" => depth += 1,
            "}" if depth <= 1 => return i + 1,
            "}" => depth -= 1,
            ";" if depth == 0 => return i + 1,
            _ => {}
        }
    }
    tokens.len()
}

/// The lengths in lines of all functions with a body.
pub fn function_lengths(tokens: &[Token]) -> Vec<(String, usize)> {
    let mut out = Vec::new();
    for i in 0..tokens.len().saturating_sub(1) {
        if tokens[i].text != "fn" || !tokens[i + 1].text.starts_with(is_word) {
            continue;
        }
        let body = tokens[i..]
            .iter()
            .position(|t| t.text == "{" || t.text == ";");
        if let Some(n) = body.filter(|n| tokens[i + n].text == "{") {
            let last = &tokens[item_end(tokens, i + n) - 1];
            out.push((tokens[i + 1].text.clone(), last.line - tokens[i].line + 1));
        }
    }
    out
}
