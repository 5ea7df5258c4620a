//! One step of the checklist, broken into lines.

use super::values::{Task, spell, spell_wait};
use crate::drawing::page::{LARGE, LETTERS, Page, wrap};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Vertex};

/// From one line of small lettering to the next.
const LINE: f64 = 4.0;
/// More air above the line of a box to tick: large enough for a carpenter's pencil.
const TICK_AIR: f64 = 1.4;
/// The side of a box to tick, of a step's own and of a line's.
const STEP_BOX: f64 = 4.6;
const LINE_BOX: f64 = 3.2;
/// Where lettering begins, right of the boxes.
const INDENT: f64 = 7.0;
/// Between a frame and what is in it.
const PAD: f64 = 2.2;
/// The room of a line to sign on.
const SIGN: f64 = 9.0;

/// What stands at the left of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Mark {
    Nothing,
    StepBox,
    LineBox,
    Triangle,
    Sign,
}

#[derive(Clone, Debug)]
struct Line {
    mark: Mark,
    text: String,
    height: f64,
    /// Air above it.
    above: f64,
    /// From the top of its lettering to that of the next line.
    tall: f64,
}

/// One step laid out for a column.
#[derive(Clone, Debug)]
pub struct Block {
    lines: Vec<Line>,
    framed: bool,
    width: f64,
}

impl Block {
    /// The step of a number.
    pub fn new(number: usize, task: &Task, width: f64) -> Self {
        let mut block = Self {
            lines: Vec::new(),
            framed: task.is_hold,
            width,
        };
        let hold = if task.is_hold { "HOLD: " } else { "" };
        block.add(
            Mark::StepBox,
            &format!("{number}  {hold}{}", task.name),
            LARGE,
        );
        block.add(Mark::Nothing, &when(task), LETTERS);
        let said = [
            ("Handles", &task.pieces),
            ("Lay ready", &task.tools),
            ("Weather", &task.weather),
        ];
        for (what, text) in said.iter().filter(|(_, text)| !text.is_empty()) {
            block.add(Mark::Nothing, &format!("{what}: {text}."), LETTERS);
        }
        for caution in &task.cautions {
            block.add(Mark::Triangle, caution, LETTERS);
        }
        for check in &task.checks {
            block.add(Mark::LineBox, check, LETTERS);
        }
        for (wait, why) in &task.waits {
            let text = format!("Wait {} {why}.", spell_wait(*wait));
            block.add(Mark::Nothing, &text, LETTERS);
        }
        if task.is_hold {
            block.sign();
        }
        block
    }

    fn add(&mut self, mark: Mark, text: &str, height: f64) {
        let inner = self.width - INDENT - if self.framed { 2.0 * PAD } else { 0.0 };
        let lines = wrap(text, height, inner);
        for (i, text) in lines.into_iter().enumerate() {
            let mark = if i == 0 { mark } else { Mark::Nothing };
            self.lines.push(Line {
                mark,
                text,
                height,
                above: if mark == Mark::LineBox { TICK_AIR } else { 0.0 },
                tall: if height > LETTERS { 6.0 } else { LINE },
            });
        }
    }

    fn sign(&mut self) {
        self.lines.push(Line {
            mark: Mark::Sign,
            text: String::new(),
            height: LETTERS,
            above: 0.0,
            tall: SIGN,
        });
    }

    /// How many lines it has.
    pub fn lines(&self) -> usize {
        self.lines.len()
    }

    /// The height of some of its lines.
    pub fn height(&self, from: usize, to: usize) -> f64 {
        let lines = self.lines.iter().take(to).skip(from);
        let pad = if self.framed { 2.0 * PAD } else { 0.0 };
        lines.map(|l| l.above + l.tall).sum::<f64>() + pad
    }

    /// How many lines from `from` on fit a height.
    pub fn fitting(&self, from: usize, height: f64) -> usize {
        let fits = |to: &usize| self.height(from, *to) <= height + 1e-9;
        (from..=self.lines.len())
            .take_while(fits)
            .last()
            .unwrap_or(from)
    }

    /// Draws some of its lines with the upper left corner at `at`.
    pub fn draw(&self, page: &mut Page, at: Point2, from: usize, to: usize) {
        let pad = if self.framed { PAD } else { 0.0 };
        let left = at.x + pad;
        let mut top = at.y - pad;
        for line in self.lines.iter().take(to).skip(from) {
            top -= line.above;
            self.draw_line(page, Point2::new(left, top), line);
            top -= line.tall;
        }
        if self.framed {
            let area = Bounds2 {
                low: Point2::new(at.x, at.y - self.height(from, to)),
                high: Point2::new(at.x + self.width, at.y),
            };
            rectangle(page, &area, Pen::Heavy);
        }
    }

    fn draw_line(&self, page: &mut Page, at: Point2, line: &Line) {
        let baseline = at.y - 1.3 * line.height;
        // A box has its middle at that of a capital.
        let middle = baseline + line.height / 2.0;
        match line.mark {
            Mark::Nothing => {}
            Mark::StepBox => square(page, at.x, middle, STEP_BOX, Pen::Thick),
            Mark::LineBox => square(page, at.x + 1.4, middle, LINE_BOX, Pen::Medium),
            Mark::Triangle => triangle(page, Point2::new(at.x + 3.0, middle)),
            Mark::Sign => return self.draw_sign(page, at),
        }
        let stand = (Point2::new(at.x + INDENT, baseline), Align::Left, 0.0);
        page.text(Layer::Note, &line.text, line.height, stand);
    }

    /// Lines to write on: who, and when.
    fn draw_sign(&self, page: &mut Page, at: Point2) {
        let inner = self.width - 2.0 * PAD - INDENT;
        let baseline = at.y - SIGN + 1.6;
        let mut x = at.x + INDENT;
        for (word, share) in [("signed", 0.6), ("on", 0.4)] {
            let stand = (Point2::new(x, baseline), Align::Left, 0.0);
            page.text(Layer::Note, word, LETTERS, stand);
            let begin = x + lettering::width(word, LETTERS) + 1.5;
            let end = x + share * inner - 3.0;
            let (from, to) = (Point2::new(begin, baseline), Point2::new(end, baseline));
            page.line(Layer::Note, Pen::Thin, Dash::Solid, from, to);
            x += share * inner;
        }
    }
}

/// Date and hours, hands and who.
fn when(task: &Task) -> String {
    let dates = task.bar.as_ref().and_then(|b| Some((b.start()?, b.end()?)));
    let dates = dates.map(|(start, end)| {
        if start.midnight() == end.midnight() {
            format!("{} to {}; ", start.spell(), end.spell_time())
        } else {
            format!("{} to {}; ", start.spell(), end.spell())
        }
    });
    let told = if task.source.is_empty() {
        String::new()
    } else {
        format!(" ({})", task.source)
    };
    let hands = match (task.is_own, task.hands) {
        (false, _) => task.by.clone(),
        (true, 1) => "1 person".to_owned(),
        (true, n) if task.is_short_of_hands => format!("{n} people, more than the crew"),
        (true, n) => format!("{n} people"),
    };
    let dates = dates.unwrap_or_default();
    format!("{dates}{}{told}; {hands}.", spell(task.takes))
}

fn square(page: &mut Page, left: f64, middle: f64, side: f64, pen: Pen) {
    let area = Bounds2 {
        low: Point2::new(left, middle - side / 2.0),
        high: Point2::new(left + side, middle + side / 2.0),
    };
    rectangle(page, &area, pen);
}

/// A rectangle without a fill.
pub(super) fn rectangle(page: &mut Page, area: &Bounds2, pen: Pen) {
    let (low, high) = (area.low, area.high);
    let corners = [
        (low.x, low.y),
        (high.x, low.y),
        (high.x, high.y),
        (low.x, high.y),
    ];
    let points = corners.iter().map(|(x, y)| Vertex::sharp(*x, *y)).collect();
    page.path(Layer::Note, Some(pen), Dash::Solid, points, true, None);
}

/// The sign of a caution.
fn triangle(page: &mut Page, middle: Point2) {
    let corners = [(-1.9, -1.4), (1.9, -1.4), (0.0, 1.9)];
    let corners = corners
        .iter()
        .map(|(x, y)| Vertex::sharp(middle.x + x, middle.y + y));
    page.path(
        Layer::Note,
        Some(Pen::Medium),
        Dash::Solid,
        corners.collect(),
        true,
        None,
    );
    let (x, y) = (middle.x, middle.y);
    let stroke = (Point2::new(x, y + 0.9), Point2::new(x, y - 0.35));
    page.line(Layer::Note, Pen::Medium, Dash::Solid, stroke.0, stroke.1);
    let dot = (Point2::new(x, y - 0.85), Point2::new(x, y - 1.0));
    page.line(Layer::Note, Pen::Medium, Dash::Solid, dot.0, dot.1);
}
