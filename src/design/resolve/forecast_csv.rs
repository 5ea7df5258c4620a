//! A forecast written as lines of text.

use super::gather::Gather;
use crate::diagnostics::Place;
use crate::parameters::{
    ForecastHour, Given, IrradianceText, MomentText, ShareText, SpeedText, TemperatureText,
};
use csv::{ReaderBuilder, StringRecord, Trim};

/// What a column holds, by the names that its heading may begin with.
const COLUMNS: [(&str, &[&str]); 5] = [
    ("time", &["time", "at", "hour", "date"]),
    ("air", &["air", "temperature", "temp"]),
    ("humidity", &["humidity", "rh"]),
    ("wind", &["wind"]),
    ("sun", &["sun", "radiation", "irradiance"]),
];

/// The last of them may be left out.
const NEEDED: usize = 4;

/// Where a column stands in a line, and the unit of its heading.
struct Column {
    index: usize,
    unit: String,
}

/// The rows as hours, each with the line it stands in; nothing where the heading cannot be used.
pub(super) fn rows(g: &mut Gather, given: &Given<String>) -> Vec<(ForecastHour, Place)> {
    let Given::Yes(text, place) = given else {
        return Vec::new();
    };
    let mut reader = ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .trim(Trim::All)
        .from_reader(text.as_bytes());
    let mut records = reader.records().filter_map(Result::ok);
    let Some(heading) = records.next() else {
        let hint = "write a first line with the names and units of the columns";
        g.fail("empty-forecast", place, "the forecast has no lines", hint);
        return Vec::new();
    };
    let Some(columns) = columns(g, &heading, &line_of((text, place), &heading)) else {
        return Vec::new();
    };
    let row = |record: StringRecord| {
        let place = line_of((text, place), &record);
        (hour(&record, &columns, &place), place)
    };
    records.map(row).collect()
}

/// The place of a line: a text in lines has the place of its first one.
fn line_of((text, place): (&str, &Place), record: &StringRecord) -> Place {
    let at = record.position();
    let line = at.map_or(1, csv::Position::line).saturating_sub(1);
    // A record is told to begin where the one before it ended: empty lines between them come first.
    let begin = at.map_or(0, csv::Position::byte);
    let rest = usize::try_from(begin)
        .ok()
        .and_then(|b| text.as_bytes().get(b..));
    let empty = rest.unwrap_or_default().iter();
    let empty = empty.take_while(|b| matches!(b, b'\r' | b'\n'));
    let below = usize::try_from(line).unwrap_or(0) + empty.filter(|b| **b == b'\n').count();
    Place {
        line: place.line + if place.is_known() { below } else { 0 },
        length: 1,
        ..place.clone()
    }
}

/// The columns that are read; `None` where one is missing, which is told.
fn columns(g: &mut Gather, heading: &StringRecord, place: &Place) -> Option<[Option<Column>; 5]> {
    let find = |names: &[&str]| {
        heading.iter().enumerate().find_map(|(index, title)| {
            let end = title
                .find(|c: char| !c.is_alphabetic())
                .unwrap_or(title.len());
            let (name, unit) = title.split_at(end);
            let is_it = names.contains(&name.to_lowercase().as_str());
            is_it.then(|| Column {
                index,
                unit: unit
                    .trim_matches(|c: char| " ()[],_:".contains(c))
                    .to_owned(),
            })
        })
    };
    let found = COLUMNS.map(|(_, names)| find(names));
    let missing = found.iter().zip(COLUMNS).take(NEEDED);
    let missing: Vec<&str> = missing
        .filter_map(|(column, (name, _))| column.is_none().then_some(name))
        .collect();
    if missing.is_empty() {
        return Some(found);
    }
    let found = format!("the forecast has no column {}", missing.join(", "));
    let hint = "begin with a line such as: time,air °F,humidity %,wind mph,sun W/m2";
    g.fail("forecast-column", place, found, hint);
    None
}

/// One line as the file would write it in `hours`.
fn hour(record: &StringRecord, columns: &[Option<Column>; 5], place: &Place) -> ForecastHour {
    let cell = |number: usize| {
        let column = columns.get(number)?.as_ref()?;
        let text = record.get(column.index).filter(|t| !t.is_empty())?;
        let has_unit = text.ends_with(|c: char| !c.is_ascii_digit() && c != '.');
        Some(if has_unit || column.unit.is_empty() {
            text.to_owned()
        } else {
            format!("{text} {}", column.unit)
        })
    };
    let at = |name: &str| Place {
        key: format!("{}.{name}", place.key),
        ..place.clone()
    };
    ForecastHour {
        at: given(cell(0), MomentText, at("time")),
        air: given(cell(1), TemperatureText, at("air")),
        humidity: given(cell(2), ShareText, at("humidity")),
        wind: given(cell(3), SpeedText, at("wind")),
        sun: given(cell(4), IrradianceText, at("sun")),
    }
}

fn given<T>(text: Option<String>, made: impl Fn(String) -> T, place: Place) -> Given<T> {
    text.map_or(Given::No, |text| Given::Yes(made(text), place))
}
