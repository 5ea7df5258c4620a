//! The steps as bars along the days.

use super::axis::Axis;
use super::key;
use super::values::{Bar, Task, WorkSheet, spell};
use crate::drawing::page::{LETTERS, Page, wrap};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Vertex};
use crate::units::Moment;

/// Of a row with one line, and of each further line.
const ROW: f64 = 5.2;
const LINE: f64 = 3.8;
/// The room for dates on edge above the bars.
const HEAD: f64 = 27.0;
/// Names are broken to this width at most.
const NAME: f64 = 72.0;
/// The columns beside the names: number, begin, how long and by how many.
const NUMBER: f64 = 7.0;
const BEGIN: f64 = 28.5;
const TAKES: f64 = 29.0;
/// Half the height of a bar: of own hands, and of others.
pub(super) const OWN: f64 = 1.6;
pub(super) const OTHERS: f64 = 0.8;
/// No bar is narrower, so that it can be seen.
const LEAST: f64 = 0.9;
/// Dates stand no closer.
const APART: f64 = 3.9;

/// The steps laid out as bars.
#[derive(Clone, Debug)]
pub struct Bars<'a> {
    work: &'a WorkSheet,
    room: Bounds2,
    axis: Axis,
    name: f64,
    rows: Vec<Vec<String>>,
    /// The first row of each sheet.
    first: Vec<usize>,
}

impl<'a> Bars<'a> {
    /// The steps in such a room; `None` without dates.
    pub fn new(work: &'a WorkSheet, room: Bounds2) -> Option<Self> {
        let name = (room.width() * 0.27).min(NAME);
        let left = room.low.x + NUMBER + name + BEGIN + TAKES;
        let axis = Axis::new(work, left, room.high.x)?;
        let tasks = work.tasks.iter();
        let rows: Vec<Vec<String>> = tasks
            .map(|t| {
                let hold = if t.is_hold { "HOLD: " } else { "" };
                wrap(&format!("{hold}{}", t.name), LETTERS, name - 2.0)
            })
            .collect();
        let foot = key::height(room.width());
        let first = shared(&rows, room.height() - HEAD - foot);
        Some(Self {
            work,
            room,
            axis,
            name,
            rows,
            first,
        })
    }

    /// How many sheets they take.
    pub fn sheets(&self) -> usize {
        self.first.len()
    }

    /// Draws one of them.
    pub fn draw(&self, page: &mut Page, sheet: usize) {
        let Some(&from) = self.first.get(sheet) else {
            return;
        };
        let to = self
            .first
            .get(sheet + 1)
            .copied()
            .unwrap_or(self.rows.len());
        let top = self.room.high.y - HEAD;
        self.draw_head(page, top);
        let mut y = top;
        self.rule(page, y, Pen::Thick);
        for row in from..to {
            y = self.draw_row(page, row, y);
            self.rule(page, y, if row + 1 == to { Pen::Thick } else { Pen::Fine });
        }
        for (x, ..) in self.axis.days() {
            let (a, b) = (Point2::new(x, top), Point2::new(x, y));
            page.line(Layer::Table, Pen::Fine, Dash::Solid, a, b);
        }
        key::draw(
            page,
            Point2::new(self.room.low.x, y - 2.0),
            self.room.width(),
        );
    }

    fn rule(&self, page: &mut Page, y: f64, pen: Pen) {
        let (a, b) = (
            Point2::new(self.room.low.x, y),
            Point2::new(self.room.high.x, y),
        );
        page.line(Layer::Table, pen, Dash::Solid, a, b);
    }

    /// Headings, and the date of each day on which somebody works, on edge.
    fn draw_head(&self, page: &mut Page, top: f64) {
        let mut x = self.room.low.x;
        for (word, width) in [
            ("no.", NUMBER),
            ("step", self.name),
            ("begins", BEGIN),
            ("takes", TAKES),
        ] {
            let stand = (Point2::new(x + 0.5, top + 1.5), Align::Left, 0.0);
            page.text(Layer::Table, word, LETTERS, stand);
            x += width;
        }
        let mut free = f64::NEG_INFINITY;
        for (x, wide, day) in self.axis.days() {
            let middle = x + wide / 2.0 + LETTERS / 2.0;
            if middle - free >= APART {
                let stand = (Point2::new(middle, top + 1.5), Align::Left, 90.0);
                page.text(Layer::Table, &day.spell_day(), LETTERS, stand);
                free = middle;
            }
        }
    }

    /// Draws a row with its upper edge at `top`; its lower edge.
    fn draw_row(&self, page: &mut Page, row: usize, top: f64) -> f64 {
        let (Some(task), Some(lines)) = (self.work.tasks.get(row), self.rows.get(row)) else {
            return top;
        };
        let foot = top - height(lines);
        let baseline = top - 1.2 - LETTERS;
        let mut write = |x: f64, y: f64, text: &str| {
            let stand = (Point2::new(x, y), Align::Left, 0.0);
            page.text(Layer::Table, text, LETTERS, stand);
        };
        let mut x = self.room.low.x + 0.5;
        write(x, baseline, &(row + 1).to_string());
        x += NUMBER;
        for (i, line) in lines.iter().enumerate() {
            write(x, baseline - LINE * i as f64, line);
        }
        x += self.name;
        if let Some(start) = task.bar.as_ref().and_then(Bar::start) {
            write(x, baseline, &short(start));
        }
        x += BEGIN;
        write(x, baseline, &takes(task));
        let middle = f64::midpoint(top, foot);
        if let Some(bar) = &task.bar {
            self.draw_bar(page, task, bar, middle);
        }
        foot
    }

    fn draw_bar(&self, page: &mut Page, task: &Task, bar: &Bar, middle: f64) {
        let half = if task.is_own { OWN } else { OTHERS };
        for (from, to) in &bar.stretches {
            let left = self.axis.at(*from);
            let right = self.axis.at(*to).max(left + LEAST);
            solid(page, (left, right), middle, half, bar.is_critical);
        }
        let Some(end) = bar.end() else { return };
        let longest = task
            .waits
            .iter()
            .map(|w| w.0.in_hours())
            .fold(0.0, f64::max);
        let x = self.axis.at(end);
        let until = self.axis.at(end.plus_hours(longest));
        let begin = if task.is_hold { x + 2.6 } else { x };
        if until > begin + 1.0 {
            waiting(page, begin, until, middle);
        }
        if task.is_hold {
            diamond(
                page,
                x.max(self.axis.at(bar.stretches[0].0) + LEAST) + 1.3,
                middle,
            );
        }
    }
}

/// The first row of each sheet.
fn shared(rows: &[Vec<String>], room: f64) -> Vec<usize> {
    let mut first = vec![0];
    let mut used = 0.0;
    for (i, row) in rows.iter().enumerate() {
        if used + height(row) > room && i > *first.last().unwrap_or(&0) {
            first.push(i);
            used = 0.0;
        }
        used += height(row);
    }
    first
}

fn height(lines: &[String]) -> f64 {
    ROW + LINE * lines.len().saturating_sub(1) as f64
}

/// Such as `Sat 05-08 08:00`.
fn short(moment: Moment) -> String {
    let day = moment.spell_day();
    let (weekday, date) = day.split_once(' ').unwrap_or((&day, ""));
    let date = date.split_once('-').map_or(date, |d| d.1);
    format!("{weekday} {date} {}", moment.spell_time())
}

fn takes(task: &Task) -> String {
    let hands = if task.is_own {
        format!(" ×{}", task.hands)
    } else {
        String::new()
    };
    let told = if task.source.contains("invented") {
        "*"
    } else {
        ""
    };
    format!("{}{told}{hands}", spell(task.takes))
}

/// A bar: black where it decides the end, empty elsewhere.
pub(super) fn solid(
    page: &mut Page,
    (left, right): (f64, f64),
    middle: f64,
    half: f64,
    critical: bool,
) {
    let corners = [
        (left, middle - half),
        (right, middle - half),
        (right, middle + half),
        (left, middle + half),
    ];
    let points = corners.iter().map(|(x, y)| Vertex::sharp(*x, *y)).collect();
    let fill = if critical { 0.0 } else { 1.0 };
    page.path(
        Layer::Outline,
        Some(Pen::Thin),
        Dash::Solid,
        points,
        true,
        Some(fill),
    );
}

/// A wait: a dashed line with a stroke at its end.
pub(super) fn waiting(page: &mut Page, from: f64, to: f64, y: f64) {
    let (a, b) = (Point2::new(from, y), Point2::new(to, y));
    page.line(Layer::Outline, Pen::Thin, Dash::Dashed, a, b);
    let (a, b) = (Point2::new(to, y - 1.2), Point2::new(to, y + 1.2));
    page.line(Layer::Outline, Pen::Thin, Dash::Solid, a, b);
}

/// A hold point.
pub(super) fn diamond(page: &mut Page, x: f64, y: f64) {
    let corners = [(-1.3, 0.0), (0.0, -1.9), (1.3, 0.0), (0.0, 1.9)];
    let points = corners
        .iter()
        .map(|(a, b)| Vertex::sharp(x + a, y + b))
        .collect();
    page.path(
        Layer::Outline,
        Some(Pen::Medium),
        Dash::Solid,
        points,
        true,
        Some(0.5),
    );
}

/// How wide a text of the key is.
pub(super) fn width(text: &str) -> f64 {
    lettering::width(text, LETTERS)
}
