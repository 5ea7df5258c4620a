//! The text of the general notes, read from `templates/general-notes.md`.

/// The file, embedded.
const FILE: &str = include_str!("../../../templates/general-notes.md");

/// One heading with its notes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Chapter {
    /// Its heading.
    pub heading: String,
    /// Its notes.
    pub notes: Vec<Note>,
}

/// One note as the file has it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Note {
    /// The word that says for which islands it holds; `None` for all.
    pub holds_for: Option<String>,
    /// What it says, with places in braces that the design fills.
    pub text: String,
}

/// The chapters of the file that is shipped.
pub fn chapters() -> Vec<Chapter> {
    read(FILE)
}

/// Reads headings, notes and the lines by which they go on; what stands before the first heading is left out.
fn read(file: &str) -> Vec<Chapter> {
    let mut chapters: Vec<Chapter> = Vec::new();
    for line in file.lines() {
        if let Some(heading) = line.strip_prefix("# ") {
            chapters.push(Chapter {
                heading: heading.trim().to_owned(),
                notes: Vec::new(),
            });
            continue;
        }
        let Some(chapter) = chapters.last_mut() else {
            continue;
        };
        if let Some(note) = line.strip_prefix("- ") {
            chapter.notes.push(note_of(note));
        } else if let Some(last) = chapter.notes.last_mut() {
            let more = line.trim();
            if !more.is_empty() {
                last.text.push(' ');
                last.text.push_str(more);
            }
        }
    }
    chapters
}

fn note_of(line: &str) -> Note {
    let line = line.trim();
    let bracketed = line.strip_prefix('[').and_then(|rest| rest.split_once(']'));
    match bracketed {
        Some((word, text)) => Note {
            holds_for: Some(word.trim().to_owned()),
            text: text.trim().to_owned(),
        },
        None => Note {
            holds_for: None,
            text: line.to_owned(),
        },
    }
}

/// The names in braces of a text.
#[cfg(test)]
pub fn names(text: &str) -> Vec<&str> {
    let pieces = text.split('{').skip(1);
    pieces
        .filter_map(|p| p.split_once('}').map(|(name, _)| name))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headings_notes_and_the_lines_they_go_on_in_are_read() {
        let read = read("Words.\n\n# One\n- a note\n  and more\n\n- [gas] another\n# Two\n");
        let note = |holds_for: Option<&str>, text: &str| Note {
            holds_for: holds_for.map(str::to_owned),
            text: text.to_owned(),
        };
        assert_eq!(read.len(), 2);
        assert_eq!(read[0].heading, "One");
        assert_eq!(
            read[0].notes,
            [note(None, "a note and more"), note(Some("gas"), "another")]
        );
        assert!(read[1].notes.is_empty());
    }

    #[test]
    fn every_shipped_note_is_a_sentence_under_a_heading() {
        let chapters = chapters();
        assert!(chapters.len() >= 8);
        for note in chapters.iter().flat_map(|c| &c.notes) {
            assert!(note.text.ends_with('.'), "{}", note.text);
            assert!(
                note.text.chars().next().is_some_and(char::is_uppercase),
                "{}",
                note.text
            );
            // A note that speaks of code gives no number of its own: limits with their sources are in the checks.
            assert!(!note.text.contains('§'), "{}", note.text);
        }
    }
}
