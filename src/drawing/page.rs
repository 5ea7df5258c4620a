//! A sheet while it is being drawn.

use super::occupancy::{self, Count, Occupancy};
use super::{Align, Dash, Dimension, Ink, Item, Layer, Pen, Scale, Sheet, lettering};
use crate::catalog::Paper;
use crate::geometry::{self, Bounds2, Point2, Vector2, Vertex};

/// Lettering height of notes, marks and dimensions, from the series of ISO 3098, millimetres.
pub const LETTERS: f64 = 2.5;
/// Lettering height of names and values that must be found quickly.
pub const LARGE: f64 = 3.5;
/// Lettering height of titles.
pub const TITLE: f64 = 5.0;
/// The space of a word, in lettering heights: texts nearer end to end read as one.
const WORD: f64 = 0.6;

/// A sheet being drawn: its items, and what is taken by them.
///
/// Invariant: every text that was placed through [`Page::place`] keeps clear of all lines and texts there before it.
#[derive(Clone, Debug)]
pub struct Page {
    paper: Paper,
    ink: Ink,
    items: Vec<Item>,
    taken: Occupancy,
    /// Dimension and extension lines, which no leader crosses where it can be helped.
    measuring: Vec<[Point2; 2]>,
    /// Texts that found no room.
    lost: Vec<String>,
    /// Texts stay inside.
    inside: Bounds2,
}

/// How much was drawn on a sheet at some moment.
struct State {
    items: usize,
    measuring: usize,
    lost: usize,
    taken: Count,
}

/// How a text may stand: its point, its alignment and its angle (0 or 90 degrees).
pub type Stand = (Point2, Align, f64);

impl Page {
    /// An empty sheet whose texts must stay inside `inside`.
    pub fn new(paper: Paper, inside: Bounds2) -> Self {
        Self {
            paper,
            ink: Ink::Black,
            items: Vec::new(),
            taken: Occupancy::new(paper.width.mm(), paper.height.mm()),
            measuring: Vec::new(),
            lost: Vec::new(),
            inside,
        }
    }

    /// The same sheet drawn with this ink.
    pub fn with_ink(mut self, ink: Ink) -> Self {
        self.ink = ink;
        self
    }

    /// A straight line.
    pub fn line(&mut self, layer: Layer, pen: Pen, dash: Dash, from: Point2, to: Point2) {
        let points = vec![Vertex::sharp(from.x, from.y), Vertex::sharp(to.x, to.y)];
        self.path(layer, Some(pen), dash, points, false, None);
    }

    /// A line of straight segments and arcs.
    pub fn path(
        &mut self,
        layer: Layer,
        pen: Option<Pen>,
        dash: Dash,
        points: Vec<Vertex>,
        closed: bool,
        fill: Option<f64>,
    ) {
        for piece in occupancy::pieces(&points, closed) {
            self.taken.add_piece(piece);
            if layer == Layer::Dimension {
                self.measuring.push(piece);
            }
        }
        self.items.push(Item::Path {
            layer,
            points,
            closed,
            pen,
            dash,
            fill,
        });
    }

    /// A dimension, where it was laid.
    pub fn dimension(&mut self, dimension: Dimension) {
        for item in dimension.primitives() {
            match &item {
                Item::Path { points, closed, .. } => {
                    for piece in occupancy::pieces(points, *closed) {
                        self.taken.add_piece(piece);
                        self.measuring.push(piece);
                    }
                }
                Item::Text { .. } => {
                    if let Some(area) = occupancy::box_of(&item) {
                        self.taken.add_box(area);
                    }
                }
                Item::Dimension(_) => {}
            }
        }
        self.items.push(Item::Dimension(dimension));
    }

    /// A text that stands where it is told, whatever is there.
    pub fn text(&mut self, layer: Layer, text: &str, height: f64, (at, align, angle): Stand) {
        let text = plain(text);
        if text.is_empty() {
            return;
        }
        self.taken
            .add_box(occupancy::text_box(at, &text, height, align, angle));
        self.items.push(Item::Text {
            layer,
            at,
            text,
            height,
            align,
            angle,
        });
    }

    /// A text at the first of some places where nothing else is; false when there is none, and nothing is drawn.
    pub fn place(
        &mut self,
        layer: Layer,
        text: &str,
        height: f64,
        stands: impl IntoIterator<Item = Stand>,
    ) -> bool {
        let text = plain(text);
        let stands: Vec<Stand> = stands.into_iter().collect();
        let parted = stands
            .iter()
            .find(|s| self.stands_apart(&text, height, **s));
        let free = parted.or_else(|| stands.iter().find(|s| self.has_room(&text, height, **s)));
        if let Some(&stand) = free {
            self.text(layer, &text, height, stand);
        }
        free.is_some()
    }

    /// True when a text may stand so: inside the sheet's border and clear of all that is drawn.
    pub fn has_room(&self, text: &str, height: f64, stand: Stand) -> bool {
        self.has_air(text, height, stand, 0.3)
    }

    /// True when a text may stand so and is read as a text of its own: a word's space from any other at its ends.
    pub fn stands_apart(&self, text: &str, height: f64, stand: Stand) -> bool {
        let (at, align, angle) = stand;
        let mut area = occupancy::text_box(at, text, height, align, angle);
        let along = Vector2::new(
            if angle == 0.0 { 1.0 } else { 0.0 },
            if angle == 0.0 { 0.0 } else { 1.0 },
        );
        area.low -= along * WORD * height;
        area.high += along * WORD * height;
        self.has_room(text, height, stand) && self.taken.free_of_texts(&area)
    }

    /// True when a text may stand so with some air round it.
    pub fn has_air(&self, text: &str, height: f64, (at, align, angle): Stand, air: f64) -> bool {
        let area = occupancy::text_box(at, text, height, align, angle);
        self.holds(&area) && self.taken.is_free(&occupancy::grown(&area, air))
    }

    /// True when an area lies inside the sheet's border.
    pub fn holds(&self, area: &Bounds2) -> bool {
        let (low, high) = (area.low - self.inside.low, self.inside.high - area.high);
        low.min() >= 0.0 && high.min() >= 0.0
    }

    /// Draws something; where `draw` says false all of it is undone.
    pub fn attempt(&mut self, draw: impl FnOnce(&mut Self) -> bool) -> bool {
        let before = self.state();
        let kept = draw(self);
        if !kept {
            self.undo(&before);
        }
        kept
    }

    /// As [`Page::attempt`]; undone also where a line would pass a text that was there before.
    pub fn attempt_clear(&mut self, draw: impl FnOnce(&mut Self) -> bool) -> bool {
        let before = self.state();
        let kept = draw(self) && self.keeps_clear_since(&before);
        if !kept {
            self.undo(&before);
        }
        kept
    }

    fn state(&self) -> State {
        State {
            items: self.items.len(),
            measuring: self.measuring.len(),
            lost: self.lost.len(),
            taken: self.taken.count(),
        }
    }

    fn undo(&mut self, to: &State) {
        self.items.truncate(to.items);
        self.measuring.truncate(to.measuring);
        self.lost.truncate(to.lost);
        self.taken.forget_since(to.taken);
    }

    fn keeps_clear_since(&self, earlier: &State) -> bool {
        let mut added = self.items.iter().skip(earlier.items);
        added.all(|item| {
            let primitives = item.primitives();
            let mut lines = primitives.iter().filter_map(|item| match item {
                Item::Path { points, closed, .. } => Some(occupancy::pieces(points, *closed)),
                Item::Text { .. } | Item::Dimension(_) => None,
            });
            lines.all(|pieces| {
                let mut pieces = pieces.into_iter();
                pieces.all(|piece| self.taken.was_clear(piece, earlier.taken))
            })
        })
    }

    /// Notes that a text found no room, so that whoever reads the sheet is told.
    pub fn lose(&mut self, text: &str) {
        self.lost.push(text.to_owned());
    }

    /// The texts that found no room.
    pub fn lost(&self) -> &[String] {
        &self.lost
    }

    /// True when a straight piece crosses no dimension or extension line.
    pub fn leaves_chains(&self, piece: [Point2; 2]) -> bool {
        !self
            .measuring
            .iter()
            .any(|line| geometry::cross(piece, *line))
    }

    /// What is taken.
    pub fn taken(&self) -> &Occupancy {
        &self.taken
    }

    /// Keeps a line's way free of texts placed later.
    pub fn block(&mut self, piece: [Point2; 2]) {
        self.taken.add_piece(piece);
    }

    /// Keeps room free of texts placed later.
    pub fn reserve(&mut self, area: Bounds2) {
        self.taken.add_box(area);
    }

    /// The finished sheet: fills lowest, then lines, then lettering, each layer together.
    pub fn finish(mut self, name: String, title: String, number: String, scale: Scale) -> Sheet {
        self.items.sort_by_key(|item| match item {
            Item::Path { layer, fill, .. } => (fill.is_none(), order(*layer)),
            Item::Text { .. } | Item::Dimension(_) => (true, order(item.layer())),
        });
        Sheet {
            name,
            title,
            number,
            chapter: "",
            paper: self.paper,
            scale,
            ink: self.ink,
            items: self.items,
            lost: self.lost,
        }
    }
}

fn order(layer: Layer) -> u8 {
    match layer {
        Layer::Hatch => 0,
        Layer::Site => 1,
        Layer::Detail => 2,
        Layer::Hidden => 3,
        Layer::Outline => 4,
        Layer::Section => 5,
        Layer::Cut => 6,
        Layer::Centre => 7,
        Layer::Dimension => 8,
        Layer::Note => 9,
        Layer::Symbol => 10,
        Layer::Table => 11,
        Layer::Border => 12,
    }
}

/// One line of text without control characters: what a drawing can letter.
pub fn plain(text: &str) -> String {
    let spaced = text
        .chars()
        .map(|c| if c.is_whitespace() { ' ' } else { c });
    let kept: String = spaced.filter(|c| !c.is_control()).collect();
    kept.trim().to_owned()
}

/// A text in the largest of some lettering heights in which it fits a width; cut short with `…` when it fits in none.
pub fn fit(text: &str, width: f64, heights: &[f64]) -> (String, f64) {
    let text = plain(text);
    let fitting = heights
        .iter()
        .find(|h| lettering::width(&text, **h) <= width);
    if let Some(height) = fitting {
        return (text, *height);
    }
    let height = heights.last().copied().unwrap_or(LETTERS);
    let mut letters: Vec<char> = text.chars().collect();
    loop {
        let short: String = letters.iter().chain(['…'].iter()).collect();
        if letters.is_empty() || lettering::width(&short, height) <= width {
            return (short, height);
        }
        letters.pop();
    }
}

/// Breaks a text into lines no wider than `width`, between words.
pub fn wrap(text: &str, height: f64, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in plain(text).split(' ') {
        match lines.last_mut() {
            Some(line) if lettering::width(&format!("{line} {word}"), height) <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::PaperKind;

    fn page() -> Page {
        let paper = PaperKind::A4.landscape();
        let inside = Bounds2 {
            low: Point2::new(10.0, 10.0),
            high: Point2::new(287.0, 200.0),
        };
        Page::new(paper, inside)
    }

    #[test]
    fn the_second_text_takes_the_second_place() {
        let mut page = page();
        let stands = [50.0, 60.0].map(|y| (Point2::new(100.0, y), Align::Left, 0.0));
        assert!(page.place(Layer::Note, "first", 2.5, stands));
        assert!(page.place(Layer::Note, "second", 2.5, stands));
        assert!(!page.place(Layer::Note, "third", 2.5, stands));
        let outside = (Point2::new(280.0, 100.0), Align::Left, 0.0);
        assert!(!page.place(Layer::Note, "past the border", 2.5, [outside]));
    }

    #[test]
    fn long_words_are_cut_and_say_so() {
        let (text, height) = fit("a very long title indeed", 20.0, &[5.0, 2.5]);
        assert!(text.ends_with('…') && height == 2.5);
        assert!(lettering::width(&text, 2.5) <= 20.0);
        assert_eq!(fit("short", 50.0, &[5.0, 2.5]), ("short".into(), 5.0));
    }

    #[test]
    fn control_characters_are_never_lettered() {
        assert_eq!(plain(" a\u{7}b\nc\t"), "ab c");
    }
}
