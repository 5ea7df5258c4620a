//! The forecast resolved: hours in order, none twice; what is wrong with one is said and the others stay.

use super::amounts::{Range, SHARE};
use super::forecast_csv;
use super::gather::{Gather, Limits};
use crate::design::{Forecast, Hour};
use crate::diagnostics::Place;
use crate::parameters::{self, Given};
use crate::units::{
    Length, Moment, Speed, Temperature, parse_irradiance, parse_moment, parse_share, parse_speed,
    parse_temperature,
};

/// Air that people work in, degrees Celsius.
const AIR: Range = Range {
    least: -60.0,
    most: 60.0,
    said: "-76 °F to 140 °F, or -60 °C to 60 °C",
};

/// Wind and sun: any that can be read.
const ANY: Range = Range {
    least: 0.0,
    most: f64::INFINITY,
    said: "0 or more",
};

/// Heights at which wind is told; the profile that brings it down has no meaning nearer the ground.
const HEIGHT: Limits = Limits(300.0, 50_000.0);

/// More than six weeks are no forecast.
const MOST: usize = 1000;

/// So many gaps are told one by one.
const TOLD: usize = 3;

/// The forecast; `None` where there is none, or where no hour of it can be used.
pub(super) fn forecast(g: &mut Gather, given: &Given<parameters::Forecast>) -> Option<Forecast> {
    let Given::Yes(f, place) = given else {
        return None;
    };
    let before = g.findings.len();
    let listed = f.hours.entries().map(|(h, p)| (h.clone(), p.clone()));
    let mut written: Vec<_> = listed.collect();
    written.extend(forecast_csv::rows(g, &f.csv));
    if written.len() > MOST {
        let found = format!("the forecast has {} hours", written.len());
        let hint = format!("the first {MOST} are read");
        g.fail("long-forecast", place, found, hint);
        written.truncate(MOST);
    }
    let hours = in_order(g, &written);
    gaps(g, &hours);
    if hours.is_empty() {
        // A group that says nothing is as one that is not there.
        let is_written = !f.hours.is_absent() || !f.csv.is_absent();
        if is_written && g.findings.len() == before {
            let hint = "write hours: with at, air, humidity and wind of each, or csv:";
            g.fail("empty-forecast", place, "the forecast has no hours", hint);
        }
        return None;
    }
    let height = g.soft_length(&f.wind_height, HEIGHT);
    Some(Forecast {
        place: place.clone(),
        wind_height: height.unwrap_or(Length::millimetres(10_000.0)),
        hours,
    })
}

/// The hours that follow each other; one that comes twice or too early is told and left out.
fn in_order(g: &mut Gather, written: &[(parameters::ForecastHour, Place)]) -> Vec<Hour> {
    let mut hours: Vec<Hour> = Vec::new();
    for (given, place) in written {
        let Some(hour) = hour(g, given, place) else {
            continue;
        };
        let latest = hours.last().map(|h| h.at);
        if latest.is_none_or(|l| hour.at > l) {
            hours.push(hour);
            continue;
        }
        let (code, sense) = if hours.iter().any(|h| h.at == hour.at) {
            ("forecast-hour-twice", "is in the forecast twice")
        } else {
            ("forecast-order", "stands after a later one")
        };
        let found = format!("the hour {} {sense}", hour.at.spell());
        g.fail(
            code,
            place,
            found,
            "it is left out; write the hours in order of time",
        );
    }
    hours
}

/// One hour; `None` where something that it needs is not there or makes no sense.
fn hour(g: &mut Gather, given: &parameters::ForecastHour, place: &Place) -> Option<Hour> {
    for (is_absent, key) in [
        (given.at.is_absent(), "at"),
        (given.air.is_absent(), "air"),
        (given.humidity.is_absent(), "humidity"),
        (given.wind.is_absent(), "wind"),
    ] {
        if is_absent {
            g.is_there::<()>(&Given::No, place, key);
        }
    }
    let at = g.written(&given.at, parse_moment);
    let celsius = |t: &str| parse_temperature(t).map(Temperature::in_celsius);
    let air = g.amount(&given.air, &AIR, celsius);
    let humidity = g.amount(&given.humidity, &SHARE, parse_share);
    let wind = g.amount(&given.wind, &ANY, |t| parse_speed(t).map(Speed::mps));
    let sun = g.amount(&given.sun, &ANY, parse_irradiance);
    Some(Hour {
        place: place.clone(),
        at: at?.value,
        air: Temperature::celsius(air?.value),
        humidity: humidity?.value,
        wind: Speed::metres_a_second(wind?.value),
        sun: sun.map(|s| s.value),
    })
}

/// Tells where hours are missing; the first few one by one.
fn gaps(g: &mut Gather, hours: &[Hour]) {
    let pairs = hours.iter().zip(hours.iter().skip(1));
    let wide = pairs.filter(|(a, b)| b.at.hours_since(a.at) > 1.0 + 1e-9);
    let wide: Vec<(&Hour, &Hour)> = wide.collect();
    for (before, after) in wide.iter().take(TOLD) {
        let found = format!(
            "the forecast has no hours between {} and {}",
            before.at.spell(),
            spell_end(before.at, after.at)
        );
        let hint = "write an entry for every hour; what is not foretold is not planned";
        g.fail("forecast-gap", &after.place, found, hint);
    }
    if let Some((_, after)) = wide.get(TOLD) {
        let found = format!("the forecast has {} more gaps", wide.len() - TOLD);
        let hint = "write an entry for every hour";
        g.fail("forecast-gap", &after.place, found, hint);
    }
}

/// The end of a gap: the hour alone on the same day.
fn spell_end(from: Moment, to: Moment) -> String {
    if from.midnight() == to.midnight() {
        to.spell_time()
    } else {
        to.spell()
    }
}
