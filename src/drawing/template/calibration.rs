//! The calibration page: two bars to measure, and what to do with what is measured.

use super::ink::{Ink, Label, Spot};
use super::layout::{self, Layout, SMALL};
use super::set::full_size;
use crate::drawing::{Align, Dash, Layer, Pen, Sheet};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::Plan;
use crate::units::{Length, Notation, parse_length};

/// Height of the capitals of the instruction.
const READ: f64 = 3.5;

/// The length of the page on a roll, millimetres.
const ON_A_ROLL: f64 = 320.0;

/// White between the page's edge and a bar, and between two bars.
const APART: f64 = 14.0;

/// Draws the calibration page.
pub(super) fn sheet(plan: &Plan, layout: &Layout) -> Sheet {
    let mut layout = layout.clone();
    if layout.is_roll() {
        layout.height = ON_A_ROLL;
    }
    let m = layout.margin;
    let room = Bounds2 {
        low: Point2::new(m, m),
        high: Point2::new(layout.width - m, layout.height - m),
    };
    let mut ink = Ink::new(room);
    let bars = bars(plan, &room);
    let corrected = layout.scale != Vector2::new(1.0, 1.0);
    for bar in &bars {
        bar.draw(&mut ink, &room, 0.0, 1.0, Pen::Thick);
        if corrected {
            bar.draw(&mut ink, &room, 1.0, layout.scale[bar.axis], Pen::Medium);
        }
        bar.write(&mut ink, &room);
    }
    let used = if corrected { 3.2 } else { 2.2 } * APART;
    let text = Bounds2 {
        low: room.low + Vector2::new(used, used),
        high: room.high,
    };
    write(
        &mut ink,
        plan,
        text,
        &bars,
        corrected.then_some(layout.scale),
    );
    Sheet {
        name: "calibration".to_owned(),
        title: "Calibration page".to_owned(),
        number: String::new(),
        paper: layout.paper(),
        scale: full_size(),
        chapter: "",
        ink: crate::drawing::Ink::Black,
        items: ink.into_items(),
        lost: Vec::new(),
    }
}

/// One of the two bars.
struct Bar {
    /// 0 for the bar across, 1 for the bar up the page.
    axis: usize,
    /// Its true length, millimetres.
    length: f64,
    /// Its length as the parameter file would spell it.
    spelt: String,
    /// From tick to tick.
    tick: f64,
}

fn bars(plan: &Plan, room: &Bounds2) -> [Bar; 2] {
    let printing = &plan.design.printing;
    let units = plan.design.project.units;
    let drawn = [printing.bar_x.0, printing.bar_y.0];
    [0, 1].map(|axis| {
        // A bar that the page has no room for is drawn shorter, and says so.
        let longest = room.high[axis] - room.low[axis] - APART - 4.0;
        let length = if drawn[axis].mm() <= longest {
            drawn[axis].mm()
        } else {
            (longest / 10.0).floor() * 10.0
        };
        let tick = if units == Notation::Imperial {
            25.4
        } else {
            10.0
        };
        Bar {
            axis,
            length,
            spelt: spell(units, length),
            tick,
        }
    })
}

/// A length as the drawings spell it where that is exact, else in millimetres.
fn spell(units: Notation, mm: f64) -> String {
    let length = Length::millimetres(mm);
    let short = units.spell_with_unit(length);
    let exact = parse_length(&short).is_ok_and(|l| (l - length).abs() < Length::millimetres(1e-9));
    if exact { short } else { length.to_string() }
}

impl Bar {
    /// Draws the bar in the given row counted from the page's edge, stretched by a factor.
    fn draw(&self, ink: &mut Ink, room: &Bounds2, row: f64, factor: f64, pen: Pen) {
        let point = |along: f64, off: f64| {
            let mut p = room.low;
            p[self.axis] += APART + along * factor;
            p[1 - self.axis] += APART * (0.5 + row) + off;
            p
        };
        let style = |pen| (Layer::Detail, pen, Dash::Solid);
        ink.straight(style(pen), point(0.0, 0.0), point(self.length, 0.0), 0);
        for end in [0.0, self.length] {
            ink.straight(style(Pen::Thin), point(end, -4.5), point(end, 4.5), 0);
        }
        let ticks = (self.length / self.tick - 0.01).floor() as usize;
        for k in 1..=ticks {
            let at = k as f64 * self.tick;
            ink.straight(style(Pen::Fine), point(at, 0.0), point(at, 2.0), 0);
        }
    }

    /// Writes its name and length at its middle, inwards of the bar.
    fn write(&self, ink: &mut Ink, room: &Bounds2) {
        let mut middle = room.low;
        middle[self.axis] += APART + self.length / 2.0;
        middle[1 - self.axis] += APART * 0.5 + 5.5;
        let text = format!("bar {}: {}", self.name(), self.spelt);
        let label = Label {
            text: &text,
            height: READ,
            layer: Layer::Note,
            own: None,
            covers: 99,
        };
        ink.place(
            &label,
            &[Spot {
                middle,
                upwards: self.axis == 1,
            }],
        );
    }

    /// The lines to be written into the parameter file.
    fn in_file(&self) -> String {
        let drawn = self.spelt.replace('"', " in");
        format!(
            "      {}: {{drawn: {drawn}, measured: what your rule shows}}",
            self.name()
        )
    }

    fn name(&self) -> &'static str {
        if self.axis == 0 { "x" } else { "y" }
    }
}

/// Writes the instruction: numbered steps, each a paragraph.
fn write(ink: &mut Ink, plan: &Plan, room: Bounds2, bars: &[Bar; 2], corrected: Option<Vector2>) {
    let mut y = room.high.y - 8.0;
    let mut line = |indent: f64, text: &str, height: f64, gap: f64| {
        ink.text(
            Layer::Note,
            Point2::new(room.low.x + indent, y),
            text,
            height,
            Align::Left,
        );
        y -= gap;
    };
    let width = room.width();
    let title = layout::shorten(&plan.design.project.title, READ, width);
    line(0.0, "Calibration page", 7.0, 8.0);
    line(0.0, &title, READ, 10.0);
    let steps = steps(bars)
        .into_iter()
        .chain(corrected.map(|scale| in_force(bars, scale)));
    for (number, step) in steps.enumerate() {
        line(0.0, &(number + 1).to_string(), READ, 0.0);
        for paragraph in step.lines() {
            let code = paragraph.len() - paragraph.trim_start().len();
            let indent = HANG + code as f64 * 2.0;
            let wrapped = layout::wrap(paragraph, READ, width - indent);
            for text in wrapped {
                line(indent, &text, READ, 5.6);
            }
        }
        line(0.0, "", READ, 2.6);
    }
    for caution in layout::wrap(layout::CAUTION, SMALL, width - HANG) {
        line(HANG, &caution, SMALL, layout::PITCH);
    }
}

/// How far the text of a step stands in from its number.
const HANG: f64 = 7.0;

/// What to do, step by step; further lines of a step stand by themselves.
fn steps(bars: &[Bar; 2]) -> Vec<String> {
    let [x, y] = bars;
    vec![
        "Print this page at 100 %, never fitted to the page, on the printer and paper that the template will use."
            .to_owned(),
        format!(
            "Measure both bars with a steel rule, from end line to end line. Bar x, along the lower edge, is drawn {} \
             long; bar y, along the left edge, {}.",
            x.spelt, y.spelt
        ),
        format!(
            "Where a bar is off by more than 0.3 mm (1/64 in), write what you measured into the parameter file, then \
             build and print again:\n  printing:\n    bars:\n{}\n{}",
            x.in_file(),
            y.in_file()
        ),
        "Cut each page along its dashed lines, lay it over the next so that the crosses fall on each other, and tape. \
         Measure across the joined template before you cut anything."
            .to_owned(),
    ]
}

fn in_force(bars: &[Bar; 2], scale: Vector2) -> String {
    format!(
        "This print is corrected: {}. The thick bars are as before; the thinner ones beside them are corrected like \
         the template and must measure {} across and {} up the page.",
        layout::factors(scale),
        bars[0].spelt,
        bars[1].spelt
    )
}
