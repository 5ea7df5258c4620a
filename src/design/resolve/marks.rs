//! The letters that part marks begin with.

use super::gather::Gather;
use crate::parameters::Given;

/// One mark a run, none the beginning of another: `C` beside `CW` would make two parts `CW-S01`.
pub(super) fn marks(g: &mut Gather, runs: &[(Option<&String>, &Given<String>)]) -> Vec<String> {
    let mut taken: Vec<String> = Vec::new();
    for (_, given) in runs {
        if let Given::Yes(mark, place) = given {
            let plain = (1..=3).contains(&mark.len())
                && mark
                    .bytes()
                    .all(|b| b.is_ascii_uppercase() || b.is_ascii_digit());
            if !plain {
                let hint = "write one to three capital letters or figures, such as C";
                g.error(
                    "bad-mark",
                    place,
                    format!("'{}' is no mark", mark.escape_debug()),
                    hint,
                );
            } else if clashes(mark, &taken) {
                let found = format!("the mark {mark} is the beginning of another one, or the same");
                g.error("same-mark", place, found, "choose another letter");
            } else {
                taken.push(mark.clone());
            }
        }
    }
    let mut marks = Vec::new();
    for (number, (name, given)) in runs.iter().enumerate() {
        let mark = given.value().cloned().unwrap_or_else(|| {
            let mark = made(name.map_or("", |n| n.as_str()), number, &taken);
            taken.push(mark.clone());
            mark
        });
        marks.push(mark);
    }
    marks
}

/// The first free letter among the initials, the other letters of the name, the alphabet; then a number.
fn made(name: &str, number: usize, taken: &[String]) -> String {
    let letters = |text: &str| -> Vec<char> {
        let upper = text.chars().map(|c| c.to_ascii_uppercase());
        upper.filter(char::is_ascii_uppercase).collect()
    };
    let initials: String = name
        .split(|c: char| !c.is_alphanumeric())
        .filter_map(|w| w.chars().next())
        .collect();
    letters(&initials)
        .into_iter()
        .chain(letters(name))
        .chain('A'..='Z')
        .map(String::from)
        .chain([format!("{:03}", number + 1)])
        .chain((1..1000).map(|n| format!("{n:03}")))
        .find(|mark| !clashes(mark, taken))
        .unwrap_or_default()
}

fn clashes(mark: &str, taken: &[String]) -> bool {
    taken
        .iter()
        .any(|t| t.starts_with(mark) || mark.starts_with(t.as_str()))
}

#[cfg(test)]
mod tests {
    use super::made;

    #[test]
    fn marks_come_from_the_name_and_stay_apart() {
        let mut taken = Vec::new();
        for (name, mark) in [
            ("cook", "C"),
            ("cold bar", "B"),
            ("cob", "O"),
            ("cob", "A"),
            ("", "D"),
        ] {
            let found = made(name, 0, &taken);
            assert_eq!(found, mark, "for {name}");
            taken.push(found);
        }
    }
}
