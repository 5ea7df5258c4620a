//! Text broken into the lines of a cell.

use crate::drawing::lettering;
use crate::drawing::page::plain;

/// The most lines of one cell.
pub const MOST_LINES: usize = 8;

/// Breaks a text into lines no wider than `width`, between words, and inside a word only where it is wider than that
/// itself. What takes more than so many lines ends in `…`.
pub fn broken(text: &str, height: f64, width: f64, most: usize) -> Vec<String> {
    let text = plain(text);
    let words = text
        .split_whitespace()
        .flat_map(|w| bits(w, height, width, most));
    let mut lines: Vec<String> = Vec::new();
    for word in words {
        match lines.last_mut() {
            Some(line) if fits(&format!("{line} {word}"), height, width) => {
                line.push(' ');
                line.push_str(&word);
            }
            _ => lines.push(word),
        }
        if lines.len() > most {
            break;
        }
    }
    if lines.len() > most {
        lines.truncate(most);
        if let Some(last) = lines.last_mut() {
            *last = ended(last, height, width);
        }
    }
    lines
}

/// The widest word of a text.
pub(super) fn widest_word(text: &str, height: f64) -> f64 {
    let words = text.split_whitespace();
    words
        .map(|w| lettering::width(w, height))
        .fold(0.0, f64::max)
}

fn fits(text: &str, height: f64, width: f64) -> bool {
    lettering::width(text, height) <= width + 1e-9
}

/// A word in bits that each fit the width; a single letter is a bit however wide it is.
fn bits(word: &str, height: f64, width: f64, most: usize) -> Vec<String> {
    if fits(word, height, width) {
        return vec![word.to_owned()];
    }
    let mut bits = vec![String::new()];
    for letter in word.chars() {
        if bits.len() > most + 1 {
            break;
        }
        match bits.last_mut() {
            Some(bit) if bit.is_empty() || fits(&format!("{bit}{letter}"), height, width) => {
                bit.push(letter);
            }
            _ => bits.push(letter.to_string()),
        }
    }
    bits
}

/// A line with `…` at its end.
fn ended(line: &str, height: f64, width: f64) -> String {
    let mut letters: Vec<char> = line.chars().collect();
    loop {
        let short: String = letters.iter().chain(['…'].iter()).collect();
        if letters.is_empty() || fits(&short, height, width) {
            return short;
        }
        letters.pop();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_stay_whole_where_they_fit() {
        let width = lettering::width("bagged concrete", 2.5);
        let lines = broken("bagged concrete, with fibres", 2.5, width, MOST_LINES);
        assert_eq!(lines, ["bagged", "concrete, with", "fibres"]);
    }

    #[test]
    fn a_word_too_wide_is_broken_and_nothing_of_it_lost() {
        let width = lettering::width("MMM", 2.5);
        let lines = broken("MMMMMMM a", 2.5, width, MOST_LINES);
        assert_eq!(lines, ["MMM", "MMM", "M a"]);
    }

    #[test]
    fn endless_texts_end_in_an_ellipsis() {
        let lines = broken(&"word ".repeat(500), 2.5, 20.0, MOST_LINES);
        assert_eq!(lines.len(), MOST_LINES);
        assert!(lines[MOST_LINES - 1].ends_with('…'));
        let lines = broken(&"w".repeat(5000), 2.5, 20.0, MOST_LINES);
        assert!(lines.len() == MOST_LINES && lines[MOST_LINES - 1].ends_with('…'));
    }
}
