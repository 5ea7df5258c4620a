//! The hours as a strip: evaporation with its band, temperatures, wind, the fit hours and the clock over one axis of time.

use super::panel::{Panel, Stroke, corners, frame};
use super::scale::Values;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Vertex};
use crate::units::Moment;

/// Left of the panels, for their scales and the names of the rows.
const LEFT: f64 = 17.0;
/// Right of them, for the names of their lines.
const RIGHT: f64 = 30.0;
/// Above a panel, for its title.
const TITLE: f64 = 6.0;
/// The rows of fit hours and of the clock.
const ROW: f64 = 7.0;
/// Below everything, for hours and days.
const AXIS: f64 = 11.0;
/// The shares of the height left that evaporation, temperature and wind take.
const SHARES: [f64; 3] = [0.48, 0.34, 0.18];

/// Whether concrete may be placed in an hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Worth {
    /// It may.
    Fit,
    /// With care.
    Care,
    /// It may not.
    Not,
}

impl Worth {
    /// The word in its bar and the grey of it.
    fn shown(self) -> (&'static str, Option<f64>) {
        match self {
            Self::Fit => ("fit", None),
            Self::Care => ("with care", Some(0.85)),
            Self::Not => ("not fit", Some(0.6)),
        }
    }
}

/// One hour of the strip, values in the units of the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StripHour {
    /// Hours from the strip's beginning.
    pub at: f64,
    /// The air.
    pub air: f64,
    /// The concrete that is mixed in it.
    pub concrete: f64,
    /// The wind as the forecast tells it.
    pub wind: f64,
    /// The estimate of evaporation.
    pub evaporation: f64,
    /// The least and the most that it can be.
    pub band: [f64; 2],
    /// Whether concrete may be placed in it.
    pub worth: Worth,
}

/// A moment marked on the clock.
#[derive(Clone, Debug, PartialEq)]
pub struct Marked {
    /// Hours from the strip's beginning.
    pub at: f64,
    /// The number of its step in the table.
    pub number: usize,
}

/// The hours that are shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// When it begins: a whole hour.
    pub from: Moment,
    /// How many hours it is long.
    pub long: f64,
    /// Its hours in order.
    pub hours: Vec<StripHour>,
    /// The most that may evaporate.
    pub limit: f64,
    /// The coldest and the warmest concrete.
    pub warmth: [f64; 2],
    /// The units of temperature, evaporation and wind.
    pub units: [&'static str; 3],
    /// From the first batch to the last being placed, and to the last trowel pass: hours from the strip's beginning.
    pub window: Option<[f64; 3]>,
    /// The steps of finishing that fall into it.
    pub clock: Vec<Marked>,
}

/// The least height in which it can be read.
pub(super) const LEAST: f64 = 96.0;

/// Draws the strip into an area.
pub(super) fn draw(page: &mut Page, strip: &Strip, area: &Bounds2) {
    let low = Point2::new(area.low.x + LEFT, area.low.y + AXIS);
    let high = Point2::new(area.high.x - RIGHT, area.high.y);
    let drawn = Drawn {
        strip,
        left: low.x,
        width: (high.x - low.x).max(1.0),
    };
    let rows = 2.0 * (ROW + 2.0);
    let free = high.y - low.y - rows - 3.0 * TITLE;
    let mut top = high.y;
    for (share, panel) in SHARES
        .iter()
        .zip([Drawn::drying, Drawn::warmth, Drawn::wind])
    {
        let height = free * share;
        top -= TITLE;
        let own = drawn.across(top - height, top);
        panel(&drawn, page, own);
        top -= height;
    }
    top -= 2.0;
    drawn.worth(page, drawn.across(top - ROW, top));
    top -= ROW + 2.0;
    drawn.clock(page, drawn.across(top - ROW, top));
    drawn.axis(page, top - ROW);
}

struct Drawn<'a> {
    strip: &'a Strip,
    left: f64,
    width: f64,
}

impl Drawn<'_> {
    fn x(&self, hours: f64) -> f64 {
        let part = hours / self.strip.long.max(1e-6);
        self.left + self.width * part.clamp(0.0, 1.0)
    }

    fn across(&self, low: f64, high: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(self.left, low),
            high: Point2::new(self.left + self.width, high),
        }
    }

    /// Hours that follow each other without a gap, together.
    fn runs(&self) -> Vec<Vec<StripHour>> {
        let mut runs: Vec<Vec<StripHour>> = Vec::new();
        for hour in &self.strip.hours {
            match runs.last_mut() {
                Some(run) if run.last().is_some_and(|l| hour.at - l.at < 1.5) => run.push(*hour),
                _ => runs.push(vec![*hour]),
            }
        }
        runs
    }

    /// Points in the middle of the hours.
    fn points(&self, value: impl Fn(&StripHour) -> f64) -> Vec<Vec<Point2>> {
        let point = |h: &StripHour| Point2::new(self.x(h.at + 0.5), value(h));
        let runs = self.runs();
        runs.iter()
            .map(|r| r.iter().map(&point).collect())
            .collect()
    }

    /// The least and the most of a value, and of what must be seen beside it.
    fn span(&self, beside: &[f64], values: impl Fn(&StripHour) -> [f64; 2]) -> (f64, f64) {
        let own = self.strip.hours.iter().flat_map(values);
        let all: Vec<f64> = own.chain(beside.iter().copied()).collect();
        let low = all.iter().copied().fold(f64::MAX, f64::min);
        let high = all.iter().copied().fold(f64::MIN, f64::max);
        (low, high)
    }

    fn drying(&self, page: &mut Page, area: Bounds2) {
        let limit = self.strip.limit;
        let (_, high) = self.span(&[limit * 1.2], |h| h.band);
        let values = Values::over(0.0, high, (area.height() / 7.0).floor());
        let title = format!(
            "evaporation, {}, with the ±40 % by which it may be wrong",
            self.strip.units[1]
        );
        let mut panel = Panel::begin(page, area, values, &title);
        for run in self.runs() {
            let side = |which: usize| {
                let x = |h: &StripHour| self.x(h.at + 0.5);
                let point = |h: &StripHour| Vertex::sharp(x(h), panel.y(h.band[which]));
                run.iter().map(point).collect::<Vec<_>>()
            };
            let mut points = side(0);
            points.extend(side(1).into_iter().rev());
            if run.len() > 1 {
                page.path(Layer::Detail, None, Dash::Solid, points, true, Some(0.85));
            }
        }
        self.hours(page, &area);
        let points = self.points(|h| h.evaporation);
        panel.line(page, &points, "estimate", Stroke(Pen::Thick, Dash::Solid));
        let decimals = if limit < 0.5 { 3 } else { 2 };
        let name = format!("limit {limit:.decimals$}");
        panel.level(page, limit, &name, Stroke(Pen::Heavy, Dash::Dashed));
        panel.finish(page);
    }

    fn warmth(&self, page: &mut Page, area: Bounds2) {
        let (low, high) = self.span(&self.strip.warmth, |h| [h.air, h.concrete]);
        let values = Values::over(low, high, (area.height() / 6.0).floor());
        let title = format!("temperature, {}", self.strip.units[0]);
        let mut panel = Panel::begin(page, area, values, &title);
        self.hours(page, &area);
        let [coldest, hottest] = self.strip.warmth;
        let limits = Stroke(Pen::Medium, Dash::Dashed);
        panel.level(page, hottest, "hottest concrete", limits);
        panel.level(page, coldest, "coldest concrete", limits);
        let air = self.points(|h| h.air);
        panel.line(page, &air, "air", Stroke(Pen::Thin, Dash::Solid));
        let concrete = self.points(|h| h.concrete);
        panel.line(page, &concrete, "concrete", Stroke(Pen::Thick, Dash::Solid));
        panel.finish(page);
    }

    fn wind(&self, page: &mut Page, area: Bounds2) {
        let (_, high) = self.span(&[1.0], |h| [h.wind, h.wind]);
        let values = Values::over(0.0, high, (area.height() / 6.0).floor());
        let title = format!("wind of the forecast, {}", self.strip.units[2]);
        let mut panel = Panel::begin(page, area, values, &title);
        self.hours(page, &area);
        let wind = self.points(|h| h.wind);
        panel.line(page, &wind, "", Stroke(Pen::Medium, Dash::Solid));
        panel.finish(page);
    }

    /// Fine lines at every sixth hour of the day, heavier at midnight.
    fn hours(&self, page: &mut Page, area: &Bounds2) {
        for (at, hour) in self.sixths(6) {
            let x = self.x(at);
            let pen = if hour == 0 { Pen::Medium } else { Pen::Fine };
            let (from, to) = (Point2::new(x, area.low.y), Point2::new(x, area.high.y));
            page.line(Layer::Detail, pen, Dash::Solid, from, to);
        }
    }

    /// Hours of the day that a number divides, strictly within the strip.
    fn sixths(&self, every: u32) -> Vec<(f64, u32)> {
        let first = self.strip.from.hour_of_day();
        let count = self.strip.long.clamp(0.0, 500.0) as u32;
        let all = (1..count).map(|i| (f64::from(i), (first as u32 + i) % 24));
        all.filter(|(_, hour)| hour % every == 0).collect()
    }

    fn row_name(page: &mut Page, area: &Bounds2, name: &str) {
        let middle = f64::midpoint(area.low.y, area.high.y) - LETTERS / 2.6;
        let at = Point2::new(area.low.x - 1.8, middle);
        page.text(Layer::Note, name, LETTERS, (at, Align::Right, 0.0));
    }

    /// The fit hours as a bar.
    fn worth(&self, page: &mut Page, area: Bounds2) {
        Self::row_name(page, &area, "placing");
        let mut stretches: Vec<(f64, f64, Worth)> = Vec::new();
        for hour in &self.strip.hours {
            match stretches.last_mut() {
                Some((_, to, worth)) if *worth == hour.worth && hour.at - *to < 1e-9 => *to += 1.0,
                _ => stretches.push((hour.at, hour.at + 1.0, hour.worth)),
            }
        }
        for (from, to, worth) in stretches {
            let (word, grey) = worth.shown();
            let own = Bounds2 {
                low: Point2::new(self.x(from), area.low.y),
                high: Point2::new(self.x(to), area.high.y),
            };
            if grey.is_some() {
                page.path(Layer::Detail, None, Dash::Solid, corners(&own), true, grey);
            }
            frame(page, &own);
            let middle = f64::midpoint(own.low.x, own.high.x);
            let at = Point2::new(middle, f64::midpoint(own.low.y, own.high.y) - LETTERS / 2.6);
            if lettering::width(word, LETTERS) + 1.6 <= own.width() {
                page.text(Layer::Note, word, LETTERS, (at, Align::Centre, 0.0));
            }
        }
    }

    /// From the first batch to the last trowel pass, and the steps by their numbers.
    fn clock(&self, page: &mut Page, area: Bounds2) {
        Self::row_name(page, &area, "clock");
        let base = area.low.y + 1.5;
        if let Some([from, placed, finished]) = self.strip.window {
            for (from, to, pen) in [(from, placed, Pen::Heavy), (placed, finished, Pen::Medium)] {
                let (from, to) = (
                    Point2::new(self.x(from), base),
                    Point2::new(self.x(to), base),
                );
                page.line(Layer::Outline, pen, Dash::Solid, from, to);
            }
        }
        let mut free = f64::MIN;
        for step in &self.strip.clock {
            let x = self.x(step.at);
            let (from, to) = (Point2::new(x, base - 1.2), Point2::new(x, base + 1.2));
            page.line(Layer::Outline, Pen::Thick, Dash::Solid, from, to);
            let letters = step.number.to_string();
            let half = lettering::width(&letters, LETTERS) / 2.0;
            // A number that would meet the one before it stands beside its mark.
            let middle = x.max(free + half + 0.8);
            let at = Point2::new(middle, base + 2.5);
            page.text(Layer::Note, &letters, LETTERS, (at, Align::Centre, 0.0));
            free = middle + half;
        }
    }

    /// Hours of the day, and the days below them.
    fn axis(&self, page: &mut Page, foot: f64) {
        let (left, right) = (
            Point2::new(self.left, foot),
            Point2::new(self.left + self.width, foot),
        );
        page.line(Layer::Detail, Pen::Thin, Dash::Solid, left, right);
        let hour = self.width / self.strip.long.max(1.0);
        let every = [1, 2, 3, 6, 12]
            .into_iter()
            .find(|n| f64::from(*n) * hour >= 11.5);
        for (at, hour) in self.sixths(every.unwrap_or(24)) {
            let x = self.x(at);
            let (from, to) = (Point2::new(x, foot), Point2::new(x, foot - 1.2));
            page.line(Layer::Detail, Pen::Thin, Dash::Solid, from, to);
            let at = Point2::new(x, foot - 1.8 - LETTERS);
            let letters = format!("{hour}:00");
            page.text(Layer::Note, &letters, LETTERS, (at, Align::Centre, 0.0));
        }
        let mut days = vec![0.0];
        days.extend(self.sixths(24).into_iter().map(|(at, _)| at));
        let ends = days.iter().skip(1).copied().chain([self.strip.long]);
        for (from, to) in days.iter().zip(ends) {
            let day = self.strip.from.plus_hours(*from).spell_day();
            let at = Point2::new(self.x(*from) + 1.0, foot - 4.2 - 2.0 * LETTERS);
            if lettering::width(&day, LETTERS) + 2.0 <= self.x(to) - self.x(*from) {
                page.text(Layer::Note, &day, LETTERS, (at, Align::Left, 0.0));
            }
        }
    }
}
