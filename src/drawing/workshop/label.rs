//! Labels for the parts, on sheets of pre-cut labels.

use crate::catalog::{Paper, PaperKind};
use crate::design::LabelPaper;
use crate::drawing::page::{LARGE, LETTERS, Page, fit};
use crate::drawing::{Align, Layer, Scale, Sheet, lettering};
use crate::geometry::{Bounds2, Point2, Vector2};

/// What one label says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// The part's mark.
    pub mark: String,
    /// Its length, spelt with its unit.
    pub length: String,
    /// What it is and of which section.
    pub kind: String,
    /// Where it goes: run and face.
    pub place: String,
}

/// Nothing is printed nearer to a label's edge, millimetres.
const INSET: f64 = 2.0;
/// Nothing is printed nearer to the paper's edge: printers leave so much white.
const UNPRINTED: f64 = 5.5;

/// Where labels lie on their paper, millimetres from its upper left corner.
struct Grid {
    paper: Paper,
    columns: usize,
    rows: usize,
    first: (f64, f64),
    pitch: (f64, f64),
    size: (f64, f64),
}

/// One inch.
const INCH: f64 = 25.4;

impl Grid {
    fn of(paper: LabelPaper) -> Self {
        match paper {
            LabelPaper::Letter30 => Self {
                paper: PaperKind::Letter.portrait(),
                columns: 3,
                rows: 10,
                first: (0.1875 * INCH, 0.5 * INCH),
                pitch: (2.75 * INCH, INCH),
                size: (2.625 * INCH, INCH),
            },
            LabelPaper::A4x24 => Self {
                paper: PaperKind::A4.portrait(),
                columns: 3,
                rows: 8,
                first: (0.0, 0.5),
                pitch: (70.0, 37.0),
                size: (70.0, 37.0),
            },
        }
    }

    /// The label of a number on its sheet, row by row.
    fn label(&self, number: usize) -> Bounds2 {
        let (column, row) = (number % self.columns, number / self.columns);
        let left = self.first.0 + column as f64 * self.pitch.0;
        let top = self.paper.height.mm() - self.first.1 - row as f64 * self.pitch.1;
        Bounds2 {
            low: Point2::new(left, top - self.size.1),
            high: Point2::new(left + self.size.0, top),
        }
    }

    /// Where a label may be printed on.
    fn printed(&self, number: usize) -> Bounds2 {
        let label = self.label(number);
        let paper = Point2::new(self.paper.width.mm(), self.paper.height.mm());
        let (inset, edge) = (Vector2::repeat(INSET), Vector2::repeat(UNPRINTED));
        Bounds2 {
            low: (label.low + inset).sup(&Point2::from(edge)),
            high: (label.high - inset).inf(&(paper - edge)),
        }
    }
}

/// Draws labels in their order, row by row, at full size: lettering only, for the labels are cut already.
pub fn label_sheets(paper: LabelPaper, labels: &[Label]) -> Vec<Sheet> {
    let grid = Grid::of(paper);
    let pages = labels.chunks(grid.columns * grid.rows).zip(1..);
    let sheets = pages.map(|(labels, page_number)| {
        let whole = Bounds2 {
            low: Point2::origin(),
            high: Point2::new(grid.paper.width.mm(), grid.paper.height.mm()),
        };
        let mut page = Page::new(grid.paper, whole);
        for (number, label) in labels.iter().enumerate() {
            draw(&mut page, &grid.printed(number), label);
        }
        let name = format!("labels-{page_number}");
        page.finish(
            name,
            "Labels".to_owned(),
            page_number.to_string(),
            Scale::full(),
        )
    });
    sheets.collect()
}

/// Heights of marks in the order they are tried: one for all of a set as far as they fit.
const MARKS: [f64; 3] = [5.0, LARGE, LETTERS];
/// Heights of lengths that stand beside their mark, in the order they are tried.
const LENGTHS: [f64; 2] = [5.0, LARGE];
/// What a line of lettering takes above and below its baseline, for each millimetre of its height.
const LINE: (f64, f64) = (1.08, 0.34);
/// Between the mark's line and the next one, millimetres.
const GAP: f64 = 0.5;

/// The mark with its length beside it, or below it where it is long; what it is and where it goes below these.
fn draw(page: &mut Page, area: &Bounds2, label: &Label) {
    let (left, right) = (area.low.x, area.high.x);
    let (mark, height) = fit(&label.mark, area.width(), &MARKS);
    let baseline = area.high.y - height * LINE.0;
    let mut put = |text: &str, height: f64, x: f64, y: f64, align| {
        page.text(Layer::Note, text, height, (Point2::new(x, y), align, 0.0));
    };
    put(&mark, height, left, baseline, Align::Left);
    let rest = area.width() - 2.0 - lettering::width(&mark, height);
    let beside = LENGTHS
        .into_iter()
        .find(|high| lettering::width(&label.length, *high) <= rest);
    let mut texts = vec![&label.length, &label.kind, &label.place];
    if let Some(high) = beside {
        put(&label.length, high, right, baseline, Align::Right);
        texts.remove(0);
    }
    let mut top = baseline - height * LINE.1 - GAP;
    for (text, most) in texts.iter().zip(heights(top - area.low.y, texts.len())) {
        let tried: &[f64] = if most < LARGE {
            &[LETTERS]
        } else {
            &[LARGE, LETTERS]
        };
        let (text, height) = fit(text, area.width(), tried);
        put(&text, height, left, top - height * LINE.0, Align::Left);
        top -= height * (LINE.0 + LINE.1);
    }
}

/// The largest heights of some lines below each other, from the first one, that fit into a room.
fn heights(room: f64, count: usize) -> Vec<f64> {
    let line = LINE.0 + LINE.1;
    let large = (0..=count).rev().find(|n| {
        let heights = *n as f64 * LARGE + (count - n) as f64 * LETTERS;
        heights * line <= room + 1e-9
    });
    let large = large.unwrap_or(0);
    (0..count)
        .map(|i| if i < large { LARGE } else { LETTERS })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Item;
    use crate::drawing::check::texts_are_clear;
    use crate::drawing::occupancy::box_of;

    fn labels(count: usize, text: &str) -> Vec<Label> {
        let label = |i| Label {
            mark: format!("C-S{i}{text}"),
            length: format!("12'-11 15/16\"{text}"),
            kind: format!("bottom track, 362T125-33{text}"),
            place: format!("cook run, working side gÅ{text}"),
        };
        (1..=count).map(label).collect()
    }

    #[test]
    fn no_lettering_comes_within_two_millimetres_of_a_labels_edge() {
        for paper in [LabelPaper::Letter30, LabelPaper::A4x24] {
            for text in [
                "",
                " and a great many words that no label has room for, not even in small letters",
            ] {
                let grid = Grid::of(paper);
                let sheets = label_sheets(paper, &labels(47, text));
                assert_eq!(sheets.len(), 2);
                for sheet in &sheets {
                    texts_are_clear(sheet).unwrap();
                    for item in &sheet.items {
                        let text = box_of(item).unwrap();
                        let inside = (0..grid.columns * grid.rows).any(|n| {
                            let label = grid.label(n);
                            let (low, high) = (text.low - label.low, label.high - text.high);
                            low.min() >= INSET - 1e-9 && high.min() >= INSET - 1e-9
                        });
                        assert!(inside, "{item:?}");
                    }
                }
            }
        }
    }

    #[test]
    fn labels_lie_as_the_papers_are_cut() {
        // Letter: margins of 3/16 and 1/2 in are the same on the far sides; A4: 24 labels fill 210 × 296 mm.
        for (paper, count, margin) in [
            (LabelPaper::Letter30, 30, (4.7625, 12.7)),
            (LabelPaper::A4x24, 24, (0.0, 0.5)),
        ] {
            let grid = Grid::of(paper);
            assert_eq!(grid.columns * grid.rows, count);
            let last = grid.label(count - 1);
            assert!((grid.paper.width.mm() - last.high.x - margin.0).abs() < 1e-9);
            assert!((last.low.y - margin.1).abs() < 1e-9);
        }
    }

    #[test]
    fn marks_of_a_set_are_of_one_height_long_or_short() {
        let mut labels = labels(3, "");
        labels[1].mark = "SUBSTRATE-3".to_owned();
        labels[1].length = "7'-10 5/8\" × 3'-9 13/16\"".to_owned();
        labels[2].mark = "F-22 layer 1/3".to_owned();
        for paper in [LabelPaper::Letter30, LabelPaper::A4x24] {
            let sheets = label_sheets(paper, &labels);
            for label in &labels {
                let height = |text: &str| {
                    sheets[0].items.iter().find_map(|item| match item {
                        Item::Text {
                            text: own, height, ..
                        } if own == text => Some(*height),
                        _ => None,
                    })
                };
                assert_eq!(height(&label.mark), Some(5.0), "{}", label.mark);
                assert!(height(&label.length) >= Some(LARGE), "{}", label.length);
            }
        }
    }
}
