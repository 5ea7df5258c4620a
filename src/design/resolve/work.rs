//! The order of work resolved.

use super::amounts::Range;
use super::gather::Gather;
use super::step_changes::changes;
use crate::design::{Placed, Shift, Work};
use crate::parameters::{self, Given, MomentText, nearest};
use crate::units::{Moment, parse_moment, parse_share};

/// Days of the week as the file writes them.
type Days = Given<Vec<Given<String>>>;

const CREW: Range = Range {
    least: 1.0,
    most: 100.0,
    said: "1 to 100",
};

const PACE: Range = Range {
    least: 0.1,
    most: 5.0,
    said: "10 % to 500 %",
};

const DAYS: [(&str, &str); 7] = [
    ("mon", "monday"),
    ("tue", "tuesday"),
    ("wed", "wednesday"),
    ("thu", "thursday"),
    ("fri", "friday"),
    ("sat", "saturday"),
    ("sun", "sunday"),
];

/// What the file says, and what is usual where it is silent.
pub(super) fn work(g: &mut Gather, given: &Given<parameters::Work>) -> Work {
    let usual = Work {
        place: given.place(),
        ..Work::default()
    };
    let Some(w) = given.value() else {
        return usual;
    };
    let start = g.written(&w.start, parse_moment);
    let done_by = done_by(g, &w.done_by, start.as_ref());
    let trades = w.trades.value();
    Work {
        is_asked: true,
        done_by,
        own: shift(g, Some((&w.days, &w.hours)), Shift::CREW),
        trades: shift(g, trades.map(|t| (&t.days, &t.hours)), Shift::TRADES),
        off: off(g, &w.off),
        crew: g.whole(&w.crew, &CREW).unwrap_or(usual.crew),
        pace: g.amount(&w.pace, &PACE, parse_share).unwrap_or(usual.pace),
        steps: changes(g, &w.steps),
        place: usual.place,
        start,
    }
}

/// The day by which all should be done; one before the first day is named and left out.
fn done_by(
    g: &mut Gather,
    given: &Given<MomentText>,
    start: Option<&Placed<Moment>>,
) -> Option<Placed<Moment>> {
    let done_by = g.written(given, parse_moment)?;
    let Some(start) = start.filter(|s| done_by.value < s.value.midnight()) else {
        return Some(done_by);
    };
    let found = format!(
        "done_by is before the first day of work: {} before {}",
        done_by.value.spell_day(),
        start.value.spell_day()
    );
    let hint = "write a day after work.start";
    g.fail("work-ends-first", &done_by.place, found, hint);
    None
}

/// Days and hours of the crew or of the trades.
fn shift(g: &mut Gather, given: Option<(&Days, &Given<String>)>, usual: Shift) -> Shift {
    let Some((days, hours)) = given else {
        return usual;
    };
    let days = week(g, days).unwrap_or(usual.days);
    let (from, to) = span(g, hours).unwrap_or((usual.from, usual.to));
    Shift { days, from, to }
}

/// The days of a week that are worked; `None` where the file names none.
fn week(g: &mut Gather, given: &Days) -> Option<[bool; 7]> {
    let list = given.value()?;
    let mut days = [false; 7];
    for (word, place) in given.entries() {
        let plain = word.trim().to_lowercase();
        if let Some(day) = DAYS.iter().position(|(s, l)| plain == *s || plain == *l) {
            days[day] = true;
            continue;
        }
        let near = nearest(&plain, DAYS.iter().flat_map(|(s, l)| [*s, *l]));
        let hint = near.map_or_else(
            || "write mon, tue, wed, thu, fri, sat or sun".to_owned(),
            |near| format!("did you mean '{near}'?"),
        );
        let found = format!("'{}' is not a day of the week", word.escape_debug());
        g.fail("unknown-day", place, found, hint);
    }
    if days.contains(&true) {
        return Some(days);
    }
    if list.is_empty() {
        let hint = "write some of mon, tue, wed, thu, fri, sat, sun";
        let found = "no day of the week is worked";
        g.fail("no-work-day", &given.place(), found, hint);
    }
    None
}

/// From when to when, minutes after midnight.
fn span(g: &mut Gather, given: &Given<String>) -> Option<(i64, i64)> {
    let Given::Yes(text, place) = given else {
        return None;
    };
    let parts = text.split_once(" to ").or_else(|| text.split_once('-'));
    let times = parts.and_then(|(from, to)| Some((time(from)?, time(to)?)));
    let Some((from, to)) = times else {
        let found = format!("'{}' does not say from when to when", text.escape_debug());
        g.fail("bad-hours", place, found, "write it as 08:00 to 17:00");
        return None;
    };
    if from < to {
        return Some((from, to));
    }
    let found = format!("the day's work ends before it begins: {}", text.trim());
    let hint = "write the earlier hour first; work past midnight is not reckoned";
    g.fail("work-ends-first", place, found, hint);
    None
}

/// A time of day such as `08:00` or `24:00`, minutes after midnight.
fn time(text: &str) -> Option<i64> {
    let (hour, minute) = text.trim().split_once(':')?;
    let figures = |t: &str, most: i64| {
        let fits = (1..=2).contains(&t.len()) && t.bytes().all(|b| b.is_ascii_digit());
        let number: i64 = fits.then(|| t.parse().ok())??;
        (number <= most).then_some(number)
    };
    let minutes = figures(hour, 24)? * 60 + figures(minute, 59)?;
    (minutes <= 24 * 60).then_some(minutes)
}

/// Days on which nobody works, in order, none twice.
fn off(g: &mut Gather, given: &Given<Vec<Given<MomentText>>>) -> Vec<Moment> {
    let days = given.value().into_iter().flatten();
    let mut days: Vec<Moment> = days
        .filter_map(|d| g.written(d, parse_moment))
        .map(|d| d.value.midnight())
        .collect();
    days.sort();
    days.dedup();
    days
}
