//! A calendar file after RFC 5545.
//!
//! Written by hand: the crates for it stamp what they write with the clock and random numbers unless they are kept from it, and
//! there is little to write.

use crate::units::Moment;

/// What a calendar holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Agenda {
    /// Its name.
    pub name: String,
    /// When it was made, as the file says; no clock is read.
    pub stamp: Option<Moment>,
    /// What happens, in order.
    pub events: Vec<AgendaEvent>,
}

/// One thing that happens.
#[derive(Clone, Debug, PartialEq)]
pub struct AgendaEvent {
    /// What it is known by when the calendar is read again; unique in it.
    pub uid: String,
    /// When it begins, on the clock of the place.
    pub start: Moment,
    /// When it ends; not before it begins.
    pub end: Moment,
    /// What it is.
    pub summary: String,
    /// More of it, lines.
    pub description: Vec<String>,
    /// What kind of thing, such as `hold point`.
    pub category: String,
    /// True for what holds nobody's time.
    pub is_transparent: bool,
}

/// The longest line in octets, its end not counted.
const LINE: usize = 75;

/// Writes a calendar. Times are those of the clock on the wall where the island stands ("floating" in the standard).
///
/// Invariant: lines end with CR LF, none is longer than 75 octets, and none is broken inside a character.
pub fn ical(agenda: &Agenda) -> Vec<u8> {
    let mut out = String::new();
    let mut line = |name: &str, value: &str| fold(&mut out, &format!("{name}:{value}"));
    line("BEGIN", "VCALENDAR");
    line("VERSION", "2.0");
    line("PRODID", "-//islandwright//order of work//EN");
    line("CALSCALE", "GREGORIAN");
    line("X-WR-CALNAME", &escaped(&agenda.name));
    for event in &agenda.events {
        line("BEGIN", "VEVENT");
        line("UID", &escaped(&event.uid));
        let stamp = agenda.stamp.unwrap_or(event.start);
        line("DTSTAMP", &format!("{}Z", stamped(stamp)));
        line("DTSTART", &stamped(event.start));
        // An event without an end takes no time; one that ends where it begins is not allowed.
        if event.end > event.start {
            line("DTEND", &stamped(event.end));
        }
        line("SUMMARY", &escaped(&event.summary));
        if !event.description.is_empty() {
            line("DESCRIPTION", &escaped(&event.description.join("\n")));
        }
        if !event.category.is_empty() {
            line("CATEGORIES", &escaped(&event.category));
        }
        let transparent = if event.is_transparent {
            "TRANSPARENT"
        } else {
            "OPAQUE"
        };
        line("TRANSP", transparent);
        line("END", "VEVENT");
    }
    line("END", "VCALENDAR");
    out.into_bytes()
}

/// Such as `20270514T050000`.
fn stamped(moment: Moment) -> String {
    let plain: String = moment
        .iso()
        .chars()
        .filter(|c| !matches!(c, '-' | ':'))
        .collect();
    format!("{plain}00")
}

/// A text value (3.3.11): backslash, semicolon, comma and line ends escaped, other control characters left out.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => out.extend(['\\', c]),
            '\n' => out.push_str("\\n"),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

/// A content line folded (3.1): every line after the first begins with a space, which counts.
fn fold(out: &mut String, line: &str) {
    let mut length = 0;
    for c in line.chars() {
        if length + c.len_utf8() > LINE {
            out.push_str("\r\n ");
            length = 1;
        }
        out.push(c);
        length += c.len_utf8();
    }
    out.push_str("\r\n");
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::parse_moment;

    fn event(summary: &str) -> AgendaEvent {
        AgendaEvent {
            uid: "pour@trial".into(),
            start: parse_moment("2027-05-14T05:00").unwrap(),
            end: parse_moment("2027-05-14T09:30").unwrap(),
            summary: summary.into(),
            description: vec!["gloves; goggles, boots".into(), "back\\slash".into()],
            category: String::new(),
            is_transparent: false,
        }
    }

    fn written(event: AgendaEvent) -> String {
        let agenda = Agenda {
            name: "Trial".into(),
            stamp: parse_moment("2026-03-01").ok(),
            events: vec![event],
        };
        String::from_utf8(ical(&agenda)).unwrap()
    }

    #[test]
    fn values_are_spelt_as_the_standard_has_them() {
        let text = written(event("Pour"));
        // RFC 5545, 3.3.5 form 1 and 2, and 3.3.11.
        for line in [
            "DTSTART:20270514T050000\r\n",
            "DTEND:20270514T093000\r\n",
            "DTSTAMP:20260301T000000Z\r\n",
            "DESCRIPTION:gloves\\; goggles\\, boots\\nback\\\\slash\r\n",
        ] {
            assert!(text.contains(line), "{line}{text}");
        }
        let mut instant = event("Now");
        instant.end = instant.start;
        assert!(!written(instant).contains("DTEND"));
    }

    #[test]
    fn long_lines_are_folded_between_characters() {
        let long = "Ø ½ ° ".repeat(60);
        let text = written(event(&long));
        assert!(
            text.split("\r\n")
                .all(|l| l.len() <= 75 && !l.contains('\n'))
        );
        let unfolded = text.replace("\r\n ", "");
        assert!(unfolded.contains(&format!("SUMMARY:{long}\r\n")));
    }
}
