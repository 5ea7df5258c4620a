//! One sheet of board drawn to scale.

use super::board::{Board, BoardCut, BoardPiece, Rectangle};
use super::stick_view::outline;
use crate::catalog::Paper;
use crate::drawing::hatch::hatch;
use crate::drawing::page::{LARGE, LETTERS, Page, Stand, wrap};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::units::{Length, Notation};

/// Room for the line above a sheet that names it, millimetres.
const NAME: f64 = 5.0;
/// Room round a sheet for the numbers of its cuts.
const ROUND: f64 = 7.0;
/// Room for one line below a sheet.
const LINE: f64 = 4.0;
/// Lettering height of the numbers of cuts and of narrow pieces: the least that is read at arm's length.
const SMALL: f64 = 1.8;
/// What is told below a sheet may be this wide at least.
const LEAST_TOLD: f64 = 70.0;
/// More things than these share lines where they are told beside a sheet.
const MOST_LINES: usize = 25;
/// Between hatch lines.
const HATCH: f64 = 2.5;

/// A sheet laid out at a scale.
#[derive(Clone, Debug)]
pub(super) struct BoardView<'a> {
    board: &'a Board,
    notation: Notation,
    /// Paper millimetres per millimetre.
    factor: f64,
    grain: bool,
    /// How wide what is told may be to the right of the sheet; `None` when it is told below.
    beside: Option<f64>,
    /// Pieces too small for their mark, and cuts without a number.
    told: Vec<String>,
}

impl<'a> BoardView<'a> {
    /// What a sheet takes across besides its own length, millimetres.
    pub(super) const BESIDE: f64 = 2.0 * ROUND;
    /// What it takes up and down besides its own width, two lines below it counted in.
    pub(super) const ABOVE_AND_BELOW: f64 = NAME + 2.0 * ROUND + 2.0 * LINE;
    /// A piece as narrow as this still holds its mark in the smallest lettering, and the number of a cut beside it.
    pub(super) const NARROWEST: f64 = 3.4;

    /// How wide the column beside a sheet is for what is told there, at least.
    pub(super) const COLUMN: f64 = LEAST_TOLD;

    /// Lays a sheet out; `beside` is the room to its right for what is told, which else stands below it.
    pub(super) fn new(
        board: &'a Board,
        grain: bool,
        notation: Notation,
        factor: f64,
        beside: Option<f64>,
    ) -> Self {
        let mut view = Self {
            board,
            notation,
            factor,
            grain,
            beside,
            told: Vec::new(),
        };
        view.told = view.told_lines(&[]);
        // Whether each cut finds room for its number shows on a sheet of paper that is thrown away.
        let trial = Bounds2 {
            low: Point2::origin(),
            high: Point2::new(view.width(), view.height()),
        };
        let paper = Paper {
            width: Length::millimetres(trial.high.x),
            height: Length::millimetres(trial.high.y),
        };
        let corner = Point2::new(0.0, trial.high.y);
        let missed = view.draw(&mut Page::new(paper, trial), corner);
        view.told = view.told_lines(&missed);
        view
    }

    /// How wide it is on the sheet of paper.
    pub(super) fn width(&self) -> f64 {
        let told = self.told.iter().map(|line| lettering::width(line, LETTERS));
        let told = told.fold(0.0, f64::max);
        let name = lettering::width(&self.name(), LETTERS);
        let sheet = self.board.length.mm() * self.factor + ROUND;
        match self.beside {
            Some(_) => sheet.max(name) + ROUND + told,
            None => sheet.max(name).max(told) + ROUND,
        }
    }

    /// How high it is on the sheet of paper.
    pub(super) fn height(&self) -> f64 {
        let told = self.told.len() as f64 * LINE;
        let grain = if self.grain { LINE } else { 0.0 };
        let sheet = NAME + self.board.width.mm() * self.factor + 2.0 * ROUND + grain;
        match self.beside {
            Some(_) => sheet.max(NAME + ROUND + told),
            None => sheet + told,
        }
    }

    fn name(&self) -> String {
        let side = |l| self.notation.spell_with_unit(l);
        let Board {
            number,
            length,
            width,
            ..
        } = self.board;
        format!("sheet {number}: {} × {}", side(*length), side(*width))
    }

    /// What found no room on the sheet itself, one thing after the other, in lines as wide as there is room: small pieces by
    /// their letters, and these cuts.
    fn told_lines(&self, cuts: &[usize]) -> Vec<String> {
        let pieces = self.board.pieces.iter().enumerate();
        let small = pieces.filter(|(_, piece)| self.fitting(piece) == Lettering::Letter);
        let pieces = small.map(|(number, _)| self.told_piece(number));
        let cuts = cuts.iter().map(|&number| self.told_cut(number));
        let below = (self.board.length.mm() * self.factor).max(LEAST_TOLD);
        let told: Vec<String> = pieces.chain(cuts).collect();
        match self.beside {
            Some(width) if told.len() <= MOST_LINES => told
                .iter()
                .flat_map(|thing| wrap(thing, LETTERS, width))
                .collect(),
            beside => flow(told.into_iter(), beside.unwrap_or(below)),
        }
    }

    /// A piece by its letter, or by where its lower left corner lies.
    fn told_piece(&self, number: usize) -> String {
        let piece = &self.board.pieces[number];
        let told = self.without_note(piece);
        if let Some((letter, ..)) = self.short_for(number) {
            return format!("{letter}: {told}");
        }
        let at = |l| self.notation.spell(l);
        let (x, y) = (at(piece.area.x), at(piece.area.y));
        format!("at {x} across, {y} up: {told}")
    }

    fn told_cut(&self, number: usize) -> String {
        let at = |l| self.notation.spell(l);
        let BoardCut { from, to } = self.board.cuts[number];
        let (x0, y0, x1, y1) = (at(from.0), at(from.1), at(to.0), at(to.1));
        let number = number + 1;
        if from.0 == to.0 {
            format!("({number}) {x0} across, {y0} to {y1} up")
        } else {
            format!("({number}) {y0} up, {x0} to {x1} across")
        }
    }

    fn on_one_line(&self, piece: &BoardPiece) -> String {
        let text = self.without_note(piece);
        if piece.note.is_empty() {
            text
        } else {
            format!("{text}, {}", piece.note)
        }
    }

    fn without_note(&self, piece: &BoardPiece) -> String {
        format!("{}, {}", piece.mark, self.sides(&piece.area))
    }

    fn sides(&self, area: &Rectangle) -> String {
        let side = |l: Length| self.notation.spell(l);
        format!("{} × {}", side(area.dx), side(area.dy))
    }

    /// Draws it with its upper left corner at `at`; gives the cuts beside which no number finds room.
    pub(super) fn draw(&self, page: &mut Page, at: Point2) -> Vec<usize> {
        let name_at = Point2::new(at.x + ROUND, at.y - 3.2);
        page.text(
            Layer::Note,
            &self.name(),
            LETTERS,
            (name_at, Align::Left, 0.0),
        );
        let high = self.board.width.mm() * self.factor;
        let corner = Point2::new(at.x + ROUND, at.y - NAME - ROUND - high);
        let place = Place {
            corner,
            factor: self.factor,
        };
        let whole = Rectangle {
            x: Length::ZERO,
            y: Length::ZERO,
            dx: self.board.length,
            dy: self.board.width,
        };
        outline(page, &place.area(&whole), Pen::Thick);
        for piece in &self.board.pieces {
            outline(page, &place.area(&piece.area), Pen::Medium);
        }
        for (number, piece) in self.board.pieces.iter().enumerate() {
            self.letter(page, &place.area(&piece.area), number);
        }
        for offcut in &self.board.offcuts {
            let area = place.area(offcut);
            outline(page, &area, Pen::Thin);
            if !self.letter_offcut(page, &area, offcut) {
                hatch(page, &area, HATCH);
            }
        }
        self.tell(page, corner, high);
        let cuts = self.board.cuts.iter().enumerate();
        let missed = cuts.filter(|(number, cut)| !number_cut(page, &place, cut, number + 1));
        missed.map(|(number, _)| number).collect()
    }

    /// The lettering of a piece: with its note if that fits, else without, else a letter that is told beside or below the sheet.
    fn fitting(&self, piece: &BoardPiece) -> Lettering {
        let size = (
            piece.area.dx.mm() * self.factor,
            piece.area.dy.mm() * self.factor,
        );
        let wrapped = |text: &str, height: f64| -> Vec<(String, f64)> {
            let lines = wrap(text, height, size.0 - 2.0).into_iter();
            let lines = lines.filter(|line| !line.is_empty());
            lines.map(|line| (line, height)).collect()
        };
        let sides = wrapped(&self.sides(&piece.area), LETTERS);
        let note = wrapped(&piece.note, LETTERS);
        let marks = [LARGE, LETTERS].map(|height| wrapped(&piece.mark, height));
        let told = [[sides.clone(), note].concat(), sides];
        let mut lines = told
            .iter()
            .flat_map(|told| marks.iter().map(move |mark| [&mark[..], told].concat()));
        let mut texts = [self.on_one_line(piece), self.without_note(piece)].into_iter();
        let lines = lines.find_map(|lines| on_lines(lines, size));
        lines
            .map(Lettering::Lines)
            .or_else(|| {
                let line = texts.find_map(|text| on_a_line(text, size));
                line.map(Lettering::Line)
            })
            .unwrap_or(Lettering::Letter)
    }

    fn letter(&self, page: &mut Page, area: &Bounds2, number: usize) {
        match self.fitting(&self.board.pieces[number]) {
            Lettering::Lines(lines) => put_lines(page, area, lines),
            Lettering::Line(line) => put_line(page, area, &line),
            Lettering::Letter => {
                if let Some(letter) = self.short_for(number) {
                    put_line(page, area, &letter);
                }
            }
        }
    }

    /// The letter that stands for a piece too small for its mark, where even that fits into it.
    fn short_for(&self, number: usize) -> Option<Line> {
        let area = self.board.pieces[number].area;
        let size = (area.dx.mm() * self.factor, area.dy.mm() * self.factor);
        let before = self.board.pieces[..number].iter();
        let small = before.filter(|p| self.fitting(p) == Lettering::Letter);
        // Upright, a single letter would be taken for another sign.
        on_a_line(letter(small.count()), size).filter(|(_, _, angle)| *angle == 0.0)
    }

    /// Hatches an offcut round its sides, level or upright; false, and nothing is drawn, where they do not fit into it.
    fn letter_offcut(&self, page: &mut Page, area: &Bounds2, offcut: &Rectangle) -> bool {
        let text = self.sides(offcut);
        let (long, tall) = (lettering::width(&text, LETTERS) + 2.0, LETTERS * 1.5);
        let fits = |wide: f64, high: f64| wide + 2.0 <= area.width() && high + 1.0 <= area.height();
        let (wide, high, angle) = if fits(long, tall) {
            (long, tall, 0.0)
        } else if fits(tall, long) {
            (tall, long, 90.0)
        } else {
            return false;
        };
        let middle = area.centre();
        let half = Vector2::new(wide, high) / 2.0;
        hatch_round(
            page,
            area,
            &Bounds2 {
                low: middle - half,
                high: middle + half,
            },
        );
        let down = if angle == 0.0 {
            Vector2::new(0.0, -1.1)
        } else {
            Vector2::new(1.1, 0.0)
        };
        let stand = (middle + down, Align::Centre, angle);
        page.text(Layer::Note, &text, LETTERS, stand);
        true
    }

    /// The grain below, and what is told below that or to the right.
    fn tell(&self, page: &mut Page, corner: Point2, high: f64) {
        let mut baseline = Point2::new(corner.x, corner.y - ROUND - 2.6);
        if self.grain {
            grain(page, Point2::new(corner.x, baseline.y + 0.9));
            baseline.y -= LINE;
        }
        if self.beside.is_some() {
            let right = self.board.length.mm() * self.factor + ROUND;
            baseline = corner + Vector2::new(right, high - 2.6);
        }
        for text in &self.told {
            page.text(Layer::Note, text, LETTERS, (baseline, Align::Left, 0.0));
            baseline.y -= LINE;
        }
    }
}

/// How a piece is lettered.
#[derive(Clone, Debug, PartialEq)]
enum Lettering {
    /// Mark, sides and note each on lines of their own.
    Lines(Vec<(String, f64)>),
    /// All on one line.
    Line(Line),
    /// By a letter that is told beside or below the sheet.
    Letter,
}

/// The letter of a number: a to z, then a2 to z2 and so on.
fn letter(number: usize) -> String {
    let letter = char::from(b'a' + (number % 26) as u8);
    match number / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{}", round + 1),
    }
}

/// Things told one after the other in lines no wider than `width`, each on one line where it fits.
fn flow(told: impl Iterator<Item = String>, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for thing in told.flat_map(|thing| wrap(&thing, LETTERS, width)) {
        match lines.last_mut() {
            Some(line) if lettering::width(&format!("{line};  {thing}"), LETTERS) <= width => {
                line.push_str(";  ");
                line.push_str(&thing);
            }
            _ => lines.push(thing),
        }
    }
    lines
}

/// A text, its height and its angle.
type Line = (String, f64, f64);

/// Lines one below the other, where they fit into a piece of this size so.
fn on_lines(lines: Vec<(String, f64)>, (dx, dy): (f64, f64)) -> Option<Vec<(String, f64)>> {
    let high: f64 = lines.iter().map(|(_, height)| height * 1.5).sum();
    let widths = lines.iter().map(|(t, height)| lettering::width(t, *height));
    let fits = high <= dy - 1.0 && widths.fold(0.0, f64::max) <= dx - 2.0;
    fits.then_some(lines)
}

/// A text on one line, where it fits into a piece of this size so.
fn on_a_line(text: String, (dx, dy): (f64, f64)) -> Option<Line> {
    let stands = [(LETTERS, 0.0), (LETTERS, 90.0), (SMALL, 0.0), (SMALL, 90.0)];
    let fits = |&(height, angle): &(f64, f64)| {
        let (along, across) = if angle == 0.0 { (dx, dy) } else { (dy, dx) };
        lettering::width(&text, height) <= along - 1.0 && height * 1.42 <= across
    };
    let (height, angle) = stands.into_iter().find(fits)?;
    Some((text, height, angle))
}

fn put_lines(page: &mut Page, area: &Bounds2, lines: Vec<(String, f64)>) {
    let centre = area.centre();
    let high: f64 = lines.iter().map(|(_, height)| height * 1.5).sum();
    let mut top = centre.y + high / 2.0;
    for (text, height) in lines {
        let baseline = Point2::new(centre.x, top - height * 1.12);
        page.text(Layer::Note, &text, height, (baseline, Align::Centre, 0.0));
        top -= height * 1.5;
    }
}

fn put_line(page: &mut Page, area: &Bounds2, (text, height, angle): &Line) {
    // The middle of a line of lettering, its deepest letters counted in, lies so much above its baseline.
    let down = height * 0.375;
    let shift = if *angle == 0.0 {
        Vector2::new(0.0, -down)
    } else {
        Vector2::new(down, 0.0)
    };
    let stand = (area.centre() + shift, Align::Centre, *angle);
    page.text(Layer::Note, text, *height, stand);
}

/// Hatches an area but for a window in it.
fn hatch_round(page: &mut Page, area: &Bounds2, window: &Bounds2) {
    let (low, high) = (window.low, window.high);
    for (x0, y0, x1, y1) in [
        (area.low.x, area.low.y, low.x, area.high.y),
        (high.x, area.low.y, area.high.x, area.high.y),
        (low.x, area.low.y, high.x, low.y),
        (low.x, high.y, high.x, area.high.y),
    ] {
        let part = Bounds2 {
            low: Point2::new(x0, y0),
            high: Point2::new(x1, y1),
        };
        hatch(page, &part, HATCH);
    }
}

/// An arrow both ways along the grain, and its name.
fn grain(page: &mut Page, from: Point2) {
    let to = from + Vector2::new(24.0, 0.0);
    page.line(Layer::Note, Pen::Thin, Dash::Solid, from, to);
    for (tip, back) in [(from, 2.0), (to, -2.0)] {
        for side in [0.8, -0.8] {
            let end = tip + Vector2::new(back, side);
            page.line(Layer::Note, Pen::Thin, Dash::Solid, tip, end);
        }
    }
    let stand = (to + Vector2::new(2.0, -1.0), Align::Left, 0.0);
    page.text(Layer::Note, "grain", LETTERS, stand);
}

/// Where a sheet's lower left corner is on the paper, and its scale.
struct Place {
    corner: Point2,
    factor: f64,
}

impl Place {
    fn point(&self, (x, y): (Length, Length)) -> Point2 {
        self.corner + Vector2::new(x.mm(), y.mm()) * self.factor
    }

    fn area(&self, r: &Rectangle) -> Bounds2 {
        Bounds2 {
            low: self.point((r.x, r.y)),
            high: self.point((r.x + r.dx, r.y + r.dy)),
        }
    }
}

/// Numbers a cut at one of its ends, outside the sheet where it begins at the sheet's edge and there is room, else
/// beside its line; false, and nothing is drawn, where there is none.
fn number_cut(page: &mut Page, place: &Place, cut: &BoardCut, number: usize) -> bool {
    let (from, to) = (place.point(cut.from), place.point(cut.to));
    let text = format!("({number})");
    let along = (to - from).normalize();
    let angle = if along.x.abs() > along.y.abs() {
        0.0
    } else {
        90.0
    };
    let normal = Vector2::new(-along.y, along.x);
    let half = lettering::width(&text, SMALL) / 2.0;
    // Level numbers all, so that they read from one side: the middle of the text is where it is asked for.
    let centred =
        |middle: Point2| -> Stand { (middle - Vector2::new(0.0, SMALL / 2.0), Align::Centre, 0.0) };
    let (reach, off) = if angle == 0.0 {
        (half + 0.8, SMALL * 0.75 + 0.5)
    } else {
        (SMALL * 0.75 + 0.8, half + 0.6)
    };
    let outside = [from - along * reach, to + along * reach];
    let steps = (0..40).map(|i| f64::from(i) / 40.0);
    let length = (to - from).norm();
    let beside = steps.flat_map(|share| {
        let on = from + along * (reach + 1.0 + share * (length - 2.0 * reach - 2.0).max(0.0));
        [on + normal * off, on - normal * off]
    });
    let stands = outside.into_iter().chain(beside).map(centred);
    page.place(Layer::Dimension, &text, SMALL, stands)
}
