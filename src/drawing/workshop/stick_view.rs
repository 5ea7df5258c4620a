//! One stick drawn: its pieces to scale along it.

use super::led::{AIR, Led, ROW, rows, stacked};
use super::stick::{CutEnd, Foot, Stick, StickCut};
use crate::drawing::hatch::hatch;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Vertex};
use crate::units::{Length, Notation};

/// How high a stick is drawn, millimetres.
pub(super) const HIGH: f64 = 9.0;
/// Room for the line above a stick that names it.
const NAME: f64 = 4.6;
/// How long the sign of an end is, at most.
const SIGN: f64 = 2.6;
/// The foot's sign.
const FOOT: f64 = 1.8;
/// Between hatch lines.
const HATCH: f64 = 1.6;
/// What stays free below a stick.
const AFTER: f64 = 3.0;
/// Width of the bar at the marked end.
pub(super) const MARKED: f64 = 1.2;

/// A stick laid out at a scale: what does not fit inside it stands above, cut positions below.
#[derive(Clone, Debug)]
pub(super) struct StickView<'a> {
    stick: &'a Stick,
    notation: Notation,
    /// Paper millimetres per millimetre.
    factor: f64,
    name: String,
    above: Vec<Led>,
    below: Vec<Led>,
}

impl<'a> StickView<'a> {
    /// Lays a stick out; `like` is the number of an earlier one that is cut at the same places, and texts stay within
    /// `limit` from the marked end where they can.
    pub(super) fn new(
        stick: &'a Stick,
        like: Option<u32>,
        notation: Notation,
        (factor, limit): (f64, f64),
    ) -> Self {
        let x = |at: Length| at.mm() * factor;
        let cuts = cut_positions(stick);
        let below = cuts.into_iter().map(|at| (x(at), notation.spell(at)));
        let mut view = Self {
            stick,
            notation,
            factor,
            name: name(stick, like, notation),
            above: Vec::new(),
            below: stacked(below, limit),
        };
        let small = stick.cuts.iter().filter(|cut| !view.fits_inside(cut));
        let above = small.map(|cut| {
            let text = format!("{} {}", cut.mark, notation.spell(cut.length()));
            (x(cut.from + cut.length() / 2.0), text)
        });
        view.above = stacked(above, limit);
        view
    }

    /// How much of the sheet it takes, from top to bottom.
    pub(super) fn height(&self) -> f64 {
        NAME + self.over() + HIGH + rows(&self.below) as f64 * ROW + AFTER
    }

    /// How far its drawing and its texts reach to the right of the marked end.
    pub(super) fn reach(&self) -> f64 {
        let texts = self.above.iter().chain(&self.below).map(|l| l.span().1);
        let name = lettering::width(&self.name, LETTERS);
        let length = self.stick.length.mm() * self.factor;
        texts.chain([name, length]).fold(0.0, f64::max)
    }

    fn over(&self) -> f64 {
        match rows(&self.above) {
            0 => 0.0,
            n => n as f64 * ROW + 0.4,
        }
    }

    /// True when mark and length stand inside the piece, clear of the signs of its ends.
    fn fits_inside(&self, cut: &StickCut) -> bool {
        let mark = lettering::width(&cut.mark, LETTERS);
        let length = lettering::width(&self.notation.spell(cut.length()), LETTERS);
        let width = cut.length().mm() * self.factor;
        mark.max(length) + 2.0 * (SIGN + 0.4) <= width
    }

    /// Draws it with its upper left corner at `at`.
    pub(super) fn draw(&self, page: &mut Page, at: Point2) {
        let low = at.y - NAME - self.over() - HIGH;
        let name_at = Point2::new(at.x, at.y - 2.9);
        page.text(
            Layer::Note,
            &self.name,
            LETTERS,
            (name_at, Align::Left, 0.0),
        );
        let area = |from: f64, to: f64| Bounds2 {
            low: Point2::new(at.x + from * self.factor, low),
            high: Point2::new(at.x + to * self.factor, low + HIGH),
        };
        let whole = area(0.0, self.stick.length.mm());
        outline(page, &whole, Pen::Thick);
        let marked = Bounds2 {
            low: Point2::new(whole.low.x - MARKED, low),
            high: Point2::new(whole.low.x, low + HIGH),
        };
        fill(page, &corners(&marked));
        for (from, to) in waste(self.stick) {
            self.hatch(page, &area(from, to));
        }
        for cut in &self.stick.cuts {
            self.piece(page, cut, &area(cut.from.mm(), cut.to.mm()));
        }
        self.ticks(page, &whole);
    }

    fn piece(&self, page: &mut Page, cut: &StickCut, area: &Bounds2) {
        outline(page, area, Pen::Medium);
        let long = SIGN.min(area.width() / 3.0);
        sign(page, cut.ends[0], (area.low.x, long), area);
        sign(page, cut.ends[1], (area.high.x, -long), area);
        let foot = match cut.foot {
            Some(Foot::Near) => Some((area.low.x, FOOT)),
            Some(Foot::Far) => Some((area.high.x, -FOOT)),
            None => None,
        };
        if let Some((x, long)) = foot {
            foot_sign(page, x, long, area.low.y);
        }
        if self.fits_inside(cut) {
            let centre = area.centre().x;
            let length = self.notation.spell(cut.length());
            for (text, y) in [(&cut.mark, 5.3), (&length, 1.5)] {
                let stand = (Point2::new(centre, area.low.y + y), Align::Centre, 0.0);
                page.text(Layer::Note, text, LETTERS, stand);
            }
        }
    }

    /// Hatches what is left over, round its length where there is room for that.
    fn hatch(&self, page: &mut Page, area: &Bounds2) {
        let text = self
            .notation
            .spell(Length::millimetres(area.width() / self.factor));
        let half = lettering::width(&text, LETTERS) / 2.0 + 1.0;
        if area.width() < 2.0 * half + 4.0 {
            hatch(page, area, HATCH);
            return;
        }
        let middle = area.centre();
        let mut left = *area;
        left.high.x = middle.x - half;
        let mut right = *area;
        right.low.x = middle.x + half;
        hatch(page, &left, HATCH);
        hatch(page, &right, HATCH);
        let stand = (Point2::new(middle.x, middle.y - 1.25), Align::Centre, 0.0);
        page.text(Layer::Note, &text, LETTERS, stand);
    }

    fn ticks(&self, page: &mut Page, whole: &Bounds2) {
        for led in &self.above {
            let baseline = whole.high.y + 1.3 + led.row as f64 * ROW;
            tick(
                page,
                led,
                (whole, whole.high.y, baseline + LETTERS),
                baseline,
            );
        }
        for led in &self.below {
            let baseline = whole.low.y - ROW - led.row as f64 * ROW + 0.4;
            tick(page, led, (whole, whole.low.y, baseline), baseline);
        }
    }
}

fn tick(page: &mut Page, led: &Led, (whole, from, to): (&Bounds2, f64, f64), baseline: f64) {
    let x = whole.low.x + led.x;
    let (from, to) = (Point2::new(x, from), Point2::new(x, to));
    page.line(Layer::Dimension, Pen::Fine, Dash::Solid, from, to);
    let (off, align) = if led.left {
        (-AIR, Align::Right)
    } else {
        (AIR, Align::Left)
    };
    let stand = (Point2::new(x + off, baseline), align, 0.0);
    page.text(Layer::Dimension, &led.text, LETTERS, stand);
}

fn name(stick: &Stick, like: Option<u32>, notation: Notation) -> String {
    let spell = |length| notation.spell_with_unit(length);
    let offcut = if stick.offcut > Length::ZERO {
        format!(", offcut {}", spell(stick.offcut))
    } else {
        String::new()
    };
    let like = like.map_or(String::new(), |number| {
        format!("; cut at the same places as stick {number}")
    });
    let length = spell(stick.length);
    format!("stick {}: {length}{offcut}{like}", stick.number)
}

/// Every place where the stick is cut, from its marked end: the end of each piece but one at the stick's own end, and
/// the beginning of a piece that does not begin where another ends.
fn cut_positions(stick: &Stick) -> Vec<Length> {
    let mut positions = Vec::new();
    let mut before = 0.0;
    for cut in &stick.cuts {
        if cut.from.mm() - before > KERF {
            positions.push(cut.from);
        }
        if (stick.length - cut.to).mm() > 0.01 {
            positions.push(cut.to);
        }
        before = cut.to.mm();
    }
    positions
}

/// What lies between pieces is a kerf up to this width, and waste beyond it, millimetres.
const KERF: f64 = 6.5;

/// The stretches that are in no piece, in millimetres from the marked end.
fn waste(stick: &Stick) -> Vec<(f64, f64)> {
    let mut stretches = Vec::new();
    let mut before = 0.0;
    for cut in &stick.cuts {
        if cut.from.mm() - before > KERF {
            stretches.push((before, cut.from.mm()));
        }
        before = cut.to.mm();
    }
    if stick.offcut.mm() > 0.01 {
        stretches.push(((stick.length - stick.offcut).mm(), stick.length.mm()));
    }
    stretches
}

/// The sign of an end at `x`, reaching `long` into the piece: nothing for a square end; the slit of a tab and the
/// line it is folded at; the slope of a mitre.
pub(super) fn sign(page: &mut Page, end: CutEnd, (x, long): (f64, f64), area: &Bounds2) {
    let (low, high) = (area.low.y, area.high.y);
    let mut line = |dash, from: (f64, f64), to: (f64, f64)| {
        let (from, to) = (Point2::new(from.0, from.1), Point2::new(to.0, to.1));
        page.line(Layer::Detail, Pen::Thin, dash, from, to);
    };
    match end {
        CutEnd::Square => {}
        CutEnd::Tab => {
            let slit = area.height() / 5.0;
            for y in [low + slit, high - slit] {
                line(Dash::Solid, (x, y), (x + long, y));
            }
            line(Dash::Solid, (x + long, low), (x + long, high));
        }
        CutEnd::Mitre => line(Dash::Solid, (x, low), (x + long, high)),
    }
}

/// A filled corner at the foot of a piece.
pub(super) fn foot_sign(page: &mut Page, x: f64, long: f64, low: f64) {
    fill(page, &[(x, low), (x + long, low), (x, low + FOOT)]);
}

fn corners(area: &Bounds2) -> [(f64, f64); 4] {
    let Bounds2 { low, high } = area;
    [
        (low.x, low.y),
        (high.x, low.y),
        (high.x, high.y),
        (low.x, high.y),
    ]
}

pub(super) fn fill(page: &mut Page, points: &[(f64, f64)]) {
    let points = points.iter().map(|(x, y)| Vertex::sharp(*x, *y)).collect();
    page.path(Layer::Detail, None, Dash::Solid, points, true, Some(0.0));
}

/// Draws the outline of a rectangle.
pub(super) fn outline(page: &mut Page, area: &Bounds2, pen: Pen) {
    let points = corners(area).map(|(x, y)| Vertex::sharp(x, y)).to_vec();
    page.path(Layer::Outline, Some(pen), Dash::Solid, points, true, None);
}
