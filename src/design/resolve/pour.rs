//! The pour resolved.

use super::amounts::{Range, SOME, count};
use super::forecast;
use super::gather::Gather;
use super::soft::flag;
use crate::design::{Forecast, Placed, Pour};
use crate::parameters::{self, CountText, Given, TemperatureText};
use crate::units::{
    Moment, Notation, Temperature, TimeSpan, parse_moment, parse_temperature, parse_time_span,
};

const PEOPLE: Range = Range {
    least: 1.0,
    most: 100.0,
    said: "1 to 100",
};

const BATCH: Range = Range {
    least: 0.5 / 60.0,
    most: 4.0,
    said: "30 seconds to 4 h",
};

/// Water that is still water, degrees Celsius.
const WATER: Range = Range {
    least: 0.0,
    most: 80.0,
    said: "32 °F to 176 °F, or 0 °C to 80 °C",
};

/// Bags that somebody carries in bare hands.
const BAGS: Range = Range {
    least: -40.0,
    most: 80.0,
    said: "-40 °F to 176 °F, or -40 °C to 80 °C",
};

/// What the file says, and what is usual where it is silent.
pub(super) fn pour(g: &mut Gather, given: &Given<parameters::Pour>) -> Pour {
    let usual = Pour::usual(g.notation == Notation::Metric);
    let Given::Yes(p, place) = given else {
        return usual;
    };
    let people = |g: &mut Gather, given: &Given<CountText>, usual| {
        let amount = g.amount(given, &PEOPLE, count);
        amount.map_or(usual, |a| whole(&a))
    };
    let crew = people(g, &p.crew, usual.crew.clone());
    let mixers = people(g, &p.mixers, usual.mixers.clone());
    let in_hours = |t: &str| parse_time_span(t).map(TimeSpan::in_hours);
    let batch_time = g.amount(&p.batch_time, &BATCH, in_hours);
    let usual_time = Placed {
        value: Pour::usual_batch_time(*crew, *mixers),
        ..usual.batch_time
    };
    let (bags, water) = materials(g, &p.materials);
    let retarder = g.amount(&p.retarder, &SOME, in_hours);
    let forecast = forecast::forecast(g, &p.forecast);
    let at = g.written(&p.at, parse_moment);
    if let (Some(at), Some(forecast)) = (&at, &forecast) {
        is_foretold(g, at, forecast);
    }
    Pour {
        place: place.clone(),
        at,
        crew,
        mixers,
        batch_time: batch_time.map_or(usual_time, |b| b.map(TimeSpan::hours)),
        bags,
        water: water.unwrap_or(usual.water),
        silica_fume: flag(&p.silica_fume).is_some_and(|f| f.value),
        retarder: retarder.map_or(TimeSpan::ZERO, |r| TimeSpan::hours(r.value)),
        shade: flag(&p.shade).is_some_and(|f| f.value),
        windbreak: flag(&p.windbreak).is_some_and(|f| f.value),
        forecast,
    }
}

fn whole(amount: &Placed<f64>) -> Placed<u32> {
    amount.clone().map(|n| n as u32)
}

/// How warm bags and water are, where the file says.
fn materials(
    g: &mut Gather,
    given: &Given<parameters::PourMaterials>,
) -> (Option<Placed<Temperature>>, Option<Placed<Temperature>>) {
    let Some(m) = given.value() else {
        return (None, None);
    };
    let warm = |g: &mut Gather, given: &Given<TemperatureText>, range: &Range| {
        let amount = g.amount(given, range, |t| {
            parse_temperature(t).map(Temperature::in_celsius)
        });
        amount.map(|a| a.map(Temperature::celsius))
    };
    (warm(g, &m.bags, &BAGS), warm(g, &m.water, &WATER))
}

/// Puts down that nothing is known of the weather when placing begins.
fn is_foretold(g: &mut Gather, at: &Placed<Moment>, forecast: &Forecast) {
    let (Some(first), Some(last)) = (forecast.hours.first(), forecast.hours.last()) else {
        return;
    };
    let is_within = **at >= first.at && at.hours_since(last.at) < 1.0;
    if !is_within {
        let found = format!(
            "the pour at {} lies outside the forecast, {} to {}",
            at.spell(),
            first.at.spell(),
            last.at.spell()
        );
        let hint = "pour within the forecast, or renew it";
        g.fail("outside-forecast", &at.place, found, hint);
    }
}
