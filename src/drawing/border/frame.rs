//! The border and the strip along its foot.

use super::scale_bar;
use super::title_block::{self, TitleBlock};
use crate::catalog::{Paper, PaperKind};
use crate::design::{self, Design, Project, shipped_title_block};
use crate::drawing::page::{self, LARGE, LETTERS, Page, TITLE};
use crate::drawing::set::Told;
use crate::drawing::site::SiteSheets;
use crate::drawing::{Align, Dash, Layer, Pen, Scale, lettering};
use crate::geometry::{Bounds2, Point2, Vertex};
use crate::units::Notation;

/// Left of the border, where sheets are bound (ISO 5457), millimetres.
const BINDING: f64 = 20.0;
/// Outside the border on the other sides.
const MARGIN: f64 = 10.0;
/// The least height of the strip along the foot that holds the title block.
const FOOT: f64 = 30.0;
/// From one line of notes to the next.
const NOTE_LINE: f64 = 4.0;
/// Between the border and what is drawn inside it.
const INNER: f64 = 5.0;
/// From the border to the lowest line of the foot, and the room of the scale bar above its words.
const FIRST_LINE: f64 = 4.0;
const ABOVE_WORDS: f64 = 9.5;

/// Large sheet that prints on an office printer: tabloid where inches are used, A3 elsewhere; lying.
pub fn paper_for(notation: Notation) -> Paper {
    match notation {
        Notation::Imperial => PaperKind::Tabloid.landscape(),
        Notation::Metric => PaperKind::A3.landscape(),
    }
}

/// What the sheets of one set share, and where on them there is room to draw.
#[derive(Clone, Debug)]
pub struct Frame<'a> {
    project: &'a Project,
    form: &'a design::TitleBlock,
    paper: Paper,
    border: Bounds2,
    /// Height of the strip along the foot.
    foot: f64,
    told: &'a Told,
}

/// The one line on every sheet that says what a drawing cannot decide.
const CAUTION: &str = "Not a permit document by itself: local code, the appliances' own instructions and licensed trades \
                       decide. Check every measure on site before cutting steel.";

/// Sheets that are told nothing.
static NOTHING: Told = Told {
    cautions: Vec::new(),
    site: SiteSheets {
        setting_out: None,
        shims: None,
        pour: None,
        work: None,
    },
};

impl<'a> Frame<'a> {
    /// The frame of the drawing set's sheets.
    pub fn new(design: &'a Design) -> Self {
        let drawings = &design.drawings;
        Self::on(&design.project, drawings.paper.value, &drawings.title_block)
    }

    /// The frame of sheets for the workshop, on what an office printer takes.
    pub fn for_workshop(project: &'a Project) -> Self {
        Self::on(project, paper_for(project.units), shipped_title_block())
    }

    fn on(project: &'a Project, paper: Paper, form: &'a design::TitleBlock) -> Self {
        let border = Bounds2 {
            low: Point2::new(BINDING, MARGIN),
            high: Point2::new(paper.width.mm() - MARGIN, paper.height.mm() - MARGIN),
        };
        let mut frame = Self {
            project,
            form,
            paper,
            border,
            foot: form.height().mm().max(FOOT),
            told: &NOTHING,
        };
        let lines = foot_lines(project.units, frame.beside_block()).len();
        let words = FIRST_LINE + NOTE_LINE * lines as f64 + ABOVE_WORDS;
        frame.foot = frame.foot.max(words);
        frame
    }

    /// The room left of the title block, across.
    fn beside_block(&self) -> f64 {
        self.border.width() - self.form.width.mm() - 2.0 * INNER
    }

    /// The same with what the set is told beside the plan.
    #[must_use]
    pub fn with_told(mut self, told: &'a Told) -> Self {
        self.told = told;
        self
    }

    /// What the set is told beside the plan.
    pub fn told(&self) -> &'a Told {
        self.told
    }

    /// How lengths are spelt.
    pub fn notation(&self) -> Notation {
        self.project.units
    }

    /// The room for views: inside the border, above the foot, below a heading with these notes.
    pub fn room(&self, notes: &[String]) -> Bounds2 {
        let lines = self.note_lines(notes).len();
        let heading = INNER + TITLE + LARGE + NOTE_LINE * lines as f64;
        Bounds2 {
            low: self.border.low + nalgebra::Vector2::new(INNER, self.foot + 2.0),
            high: self.border.high - nalgebra::Vector2::new(INNER, heading),
        }
    }

    /// An empty sheet with its border, its heading and notes below that.
    pub fn page(&self, title: &str, scale: &Scale, notes: &[String]) -> Page {
        let inside = Bounds2 {
            low: self.border.low + nalgebra::Vector2::new(1.0, 1.0),
            high: self.border.high - nalgebra::Vector2::new(1.0, 1.0),
        };
        let mut page = Page::new(self.paper, inside);
        self.draw_border(&mut page);
        // Title block and notes come last: nothing else may be lettered there.
        page.reserve(Bounds2 {
            low: self.border.low,
            high: Point2::new(self.border.high.x, self.border.low.y + self.foot),
        });
        let top = self.border.high.y - INNER - TITLE;
        let left = self.border.low.x + INNER;
        let width = self.border.width() - 2.0 * INNER;
        let scale = match scale {
            none if none.is_none() => String::new(),
            scale => format!("scale {}", scale.name),
        };
        let room = width - aired(&scale, LARGE) - INNER;
        let (text, height) = page::fit(title, room, &[TITLE, LARGE, LETTERS]);
        page.text(
            Layer::Border,
            &text,
            height,
            (Point2::new(left, top), Align::Left, 0.0),
        );
        let right = Point2::new(left + width, top);
        page.text(Layer::Border, &scale, LARGE, (right, Align::Right, 0.0));
        let mut below = Point2::new(left, top - 2.0);
        for line in self.note_lines(notes) {
            below.y -= NOTE_LINE;
            page.text(Layer::Border, &line, LETTERS, (below, Align::Left, 0.0));
        }
        page
    }

    fn note_lines(&self, notes: &[String]) -> Vec<String> {
        let width = self.border.width() - 2.0 * INNER;
        let wrapped = notes.iter().map(|note| page::wrap(note, LETTERS, width));
        wrapped.flatten().collect()
    }

    /// Fills the foot: title block, scale bar, how lengths are rounded, and the caution.
    pub fn draw_foot(&self, page: &mut Page, title: &str, number: (usize, usize), scale: &Scale) {
        let block = TitleBlock {
            form: self.form,
            project: self.project,
            title,
            number,
            scale,
        };
        let corner = Point2::new(self.border.high.x, self.border.low.y);
        title_block::draw(page, corner, self.foot, &block);
        let left = self.border.low.x + INNER;
        let width = self.beside_block();
        let mut baseline = self.border.low.y + FIRST_LINE;
        for line in foot_lines(self.project.units, width).iter().rev() {
            let stand = (Point2::new(left, baseline), Align::Left, 0.0);
            page.text(Layer::Border, line, LETTERS, stand);
            baseline += NOTE_LINE;
        }
        let baseline = baseline - NOTE_LINE;
        self.tell_lost(page);
        if !scale.is_none() {
            let bar = Point2::new(left + 2.0, baseline + 10.0);
            scale_bar::draw(page, bar, width * 0.6, scale, self.project.units);
        }
    }

    /// Says above the foot that texts found no room.
    fn tell_lost(&self, page: &mut Page) {
        let text = match page.lost().len() {
            0 => return,
            1 => "One text found no room on this paper: a larger paper has it.".to_owned(),
            count => format!("{count} texts found no room on this paper: a larger paper has them."),
        };
        let left = self.border.low.x + INNER;
        let rows = (0..30).map(|k| self.border.low.y + self.foot + 1.5 + 4.0 * f64::from(k));
        let stands = rows.flat_map(|y| {
            let across = (0..40).map(move |k| left + 8.0 * f64::from(k));
            across.map(move |x| (Point2::new(x, y), Align::Left, 0.0))
        });
        page.place(Layer::Note, &text, LETTERS, stands);
    }

    fn draw_border(&self, page: &mut Page) {
        let Bounds2 { low, high } = self.border;
        let corners = [
            low,
            Point2::new(high.x, low.y),
            high,
            Point2::new(low.x, high.y),
        ];
        let points = corners.iter().map(|p| Vertex::sharp(p.x, p.y)).collect();
        page.path(
            Layer::Border,
            Some(Pen::Heavy),
            Dash::Solid,
            points,
            true,
            None,
        );
        let foot = low.y + self.foot;
        let (from, to) = (Point2::new(low.x, foot), Point2::new(high.x, foot));
        page.line(Layer::Border, Pen::Medium, Dash::Solid, from, to);
        self.draw_centring_marks(page);
    }

    /// Short centring marks outside the border, for copying and folding (after ISO 5457).
    fn draw_centring_marks(&self, page: &mut Page) {
        let Bounds2 { low, high } = self.border;
        let (x, y) = (self.paper.width.mm() / 2.0, self.paper.height.mm() / 2.0);
        let long = 5.0;
        let marks = [
            ((x, high.y), (x, high.y + long)),
            ((x, low.y), (x, low.y - long)),
            ((low.x, y), (low.x - long, y)),
            ((high.x, y), (high.x + long, y)),
        ];
        for ((x0, y0), (x1, y1)) in marks {
            let (from, to) = (Point2::new(x0, y0), Point2::new(x1, y1));
            page.line(Layer::Border, Pen::Heavy, Dash::Solid, from, to);
        }
    }
}

/// The words left of the title block: how lengths are rounded, and the caution, broken to a width.
fn foot_lines(units: Notation, width: f64) -> Vec<String> {
    let rounding = match units {
        Notation::Imperial => {
            "Feet, inches and fractions to the nearest 1/16 in; the dimensions of a chain add up to its overall."
        }
        Notation::Metric => {
            "Millimetres, rounded to whole ones; the dimensions of a chain add up to its overall."
        }
    };
    let texts = [rounding, CAUTION].into_iter();
    texts
        .flat_map(|text| page::wrap(text, LETTERS, width))
        .collect()
}

/// How wide a text is with a little air, for cells.
pub(super) fn aired(text: &str, height: f64) -> f64 {
    lettering::width(text, height) + 2.0
}
