//! What every page has beside its drawing: the strip with its mark, the key map, and the edges where pages join.

use super::grid::{Grid, Place};
use super::ink::{Ink, Label, Spot};
use super::labels::NAMES;
use super::layout::{self, Layout, MARK_WIDTH, PITCH, SMALL, TITLE};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Vector2, Vertex};

/// The number under which furniture's lines are drawn; no line of the template has it.
pub(super) const FURNITURE: usize = usize::MAX;

/// What the strip says.
pub(super) struct Heading<'h> {
    pub(super) mark: &'h str,
    pub(super) title: &'h str,
    /// Below the mark, such as `3 of 12`.
    pub(super) count: &'h str,
}

/// Draws the strip, its right end left free for the key map.
pub(super) fn strip(ink: &mut Ink, layout: &Layout, heading: &Heading) {
    let strip = layout.strip();
    ink.block(strip, Layer::Border, Some(Pen::Medium), Some(1.0));
    let mark = Bounds2 {
        low: strip.low,
        high: Point2::new(strip.low.x + MARK_WIDTH, strip.high.y),
    };
    if !heading.mark.is_empty() {
        ink.block(mark, Layer::Border, Some(Pen::Medium), None);
        let fits = |h: &f64| lettering::width(heading.mark, *h) < MARK_WIDTH - 3.0;
        let height = [10.0, 7.0, 5.0].into_iter().find(fits).unwrap_or(3.5);
        let middle = mark.centre();
        ink.text(
            Layer::Note,
            Point2::new(middle.x, middle.y + 1.0 - height / 4.0),
            heading.mark,
            height,
            Align::Centre,
        );
        ink.text(
            Layer::Note,
            Point2::new(middle.x, mark.low.y + 1.8),
            heading.count,
            SMALL,
            Align::Centre,
        );
    }
    let left = if heading.mark.is_empty() {
        strip.low.x + 2.0
    } else {
        mark.high.x + 2.0
    };
    let mut y = strip.high.y - TITLE - 1.8;
    let title = layout::shorten(heading.title, TITLE, layout.map().low.x - left - 2.0);
    ink.text(
        Layer::Note,
        Point2::new(left, y),
        &title,
        TITLE,
        Align::Left,
    );
    for line in &layout.lines {
        y -= PITCH;
        ink.text(Layer::Note, Point2::new(left, y), line, SMALL, Align::Left);
    }
}

/// One edge of a page where a neighbour joins.
struct Edge {
    /// 0 for a side edge, 1 for the upper or lower edge.
    axis: usize,
    /// +1 for the right or upper edge, -1 for the left or lower.
    sign: f64,
    neighbour: Place,
}

/// Draws the lines, crosses and names of the edges where neighbours join; gives the crosses on the paper.
pub(super) fn edges(
    ink: &mut Ink,
    layout: &Layout,
    grid: &Grid,
    kept: &[Place],
    here: Place,
) -> Vec<Point2> {
    let mut crosses = Vec::new();
    for edge in joins(kept, here) {
        let window = layout.window();
        let half = layout.overlap / 2.0;
        let at = if edge.sign > 0.0 {
            window.high[edge.axis] - half
        } else {
            window.low[edge.axis] + half
        };
        let span = (window.low[1 - edge.axis], window.high[1 - edge.axis]);
        let point = |along: f64| {
            let mut p = Point2::new(at, at);
            p[1 - edge.axis] = span.0 + (span.1 - span.0) * along;
            p
        };
        // Pages lie over what is to their right and below.
        let over = (edge.axis == 0) == (edge.sign > 0.0);
        let style = if over {
            (Layer::Border, Pen::Thin, Dash::Dashed)
        } else {
            (Layer::Border, Pen::Fine, Dash::Solid)
        };
        ink.straight(style, point(0.0), point(1.0), FURNITURE);
        for cross in [0.15, 0.5, 0.85].map(point) {
            draw_cross(ink, cross, half.clamp(3.0, 6.0));
            crosses.push(cross);
        }
        let mark = grid.mark(edge.neighbour);
        let words = if over {
            format!("cut here, lay over {mark}")
        } else {
            format!("goes under {mark}")
        };
        write_edge(ink, &edge, &words, half, point);
    }
    crosses
}

fn joins(kept: &[Place], (i, j): Place) -> Vec<Edge> {
    let sides = [
        (0, 1.0, Some((i + 1, j))),
        (0, -1.0, i.checked_sub(1).map(|i| (i, j))),
        (1, 1.0, Some((i, j + 1))),
        (1, -1.0, j.checked_sub(1).map(|j| (i, j))),
    ];
    sides
        .into_iter()
        .filter_map(|(axis, sign, neighbour)| {
            Some(Edge {
                axis,
                sign,
                neighbour: neighbour?,
            })
        })
        .filter(|edge| kept.contains(&edge.neighbour))
        .collect()
}

fn draw_cross(ink: &mut Ink, at: Point2, arm: f64) {
    let style = (Layer::Border, Pen::Thin, Dash::Solid);
    for out in [Vector2::new(arm, 0.0), Vector2::new(0.0, arm)] {
        ink.straight(style, at - out, at + out, FURNITURE);
    }
    let ring = vec![
        Vertex::bent(at.x - arm / 2.0, at.y, 1.0),
        Vertex::bent(at.x + arm / 2.0, at.y, 1.0),
    ];
    ink.line(style, ring, true, FURNITURE);
    let reach = Vector2::new(arm, arm);
    ink.keep_out(Bounds2 {
        low: at - reach,
        high: at + reach,
    });
}

/// Names the neighbour twice along the edge, in the band that is cut off or covered.
fn write_edge(ink: &mut Ink, edge: &Edge, words: &str, half: f64, point: impl Fn(f64) -> Point2) {
    let height = if half >= 5.0 { NAMES } else { 1.8 };
    let label = Label {
        text: words,
        height,
        layer: Layer::Note,
        own: None,
        covers: 99,
    };
    for along in [0.325, 0.675] {
        let spots = [half / 2.0, -4.0].map(|out| {
            let mut middle = point(along);
            middle[edge.axis] += out * edge.sign;
            Spot {
                middle,
                upwards: edge.axis == 0,
            }
        });
        ink.place(&label, &spots);
    }
}
