//! The scale bar: it stays true when a copy is enlarged or reduced.

use super::frame::aired;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen, Scale};
use crate::geometry::{Point2, Vertex};
use crate::units::{Length, Notation};

/// Height of the bar, millimetres.
const HIGH: f64 = 2.0;

/// Draws the bar from its lower left corner, no longer than `room`, its numbers below it.
pub(super) fn draw(page: &mut Page, at: Point2, room: f64, scale: &Scale, notation: Notation) {
    let Some((step, count)) = division(room, scale, notation) else {
        return;
    };
    let piece = step.mm() * scale.factor;
    for i in 0..count {
        let x = at.x + piece * f64::from(i);
        let corners = [(x, 0.0), (x + piece, 0.0), (x + piece, HIGH), (x, HIGH)];
        let points = corners
            .iter()
            .map(|(x, y)| Vertex::sharp(*x, at.y + y))
            .collect();
        let fill = (i % 2 == 0).then_some(0.0);
        page.path(
            Layer::Border,
            Some(Pen::Fine),
            Dash::Solid,
            points,
            true,
            fill,
        );
    }
    for i in 0..=count {
        let stand = Point2::new(at.x + piece * f64::from(i), at.y - LETTERS - 1.2);
        let text = label(notation, step, i, count);
        page.text(Layer::Border, &text, LETTERS, (stand, Align::Centre, 0.0));
    }
}

fn label(notation: Notation, step: Length, i: u32, count: u32) -> String {
    let text = notation.spell(step * f64::from(i));
    match notation {
        Notation::Metric if i == count => format!("{text} mm"),
        _ => text,
    }
}

/// The size and number of the bar's pieces: as many of the round lengths as the room takes, at most five, each wide
/// enough for its number.
fn division(room: f64, scale: &Scale, notation: Notation) -> Option<(Length, u32)> {
    let steps: Vec<Length> = match notation {
        Notation::Imperial => [1.0, 3.0, 6.0, 12.0, 24.0, 48.0, 120.0, 240.0, 600.0]
            .map(Length::inches)
            .to_vec(),
        Notation::Metric => [
            10.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10_000.0,
        ]
        .map(Length::millimetres)
        .to_vec(),
    };
    let with_pieces = |fewest: u32| {
        steps.iter().find_map(|step| {
            let piece = step.mm() * scale.factor;
            let widest = aired(&label(notation, *step, 5, 5), LETTERS).max(12.0);
            let count = (room / piece).floor().min(5.0) as u32;
            (piece >= widest && count >= fewest).then_some((*step, count))
        })
    };
    // One piece is still a measure where a small sheet has room for no more.
    with_pieces(2).or_else(|| with_pieces(1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_are_round_and_fit() {
        let scale = Scale {
            factor: 1.0 / 16.0,
            name: String::new(),
        };
        let (step, count) = division(120.0, &scale, Notation::Imperial).unwrap();
        // A foot is 19 mm at 1:16.
        assert_eq!((step, count), (Length::inches(12.0), 5));
        let (step, count) = division(120.0, &scale, Notation::Metric).unwrap();
        assert_eq!((step, count), (Length::millimetres(500.0), 3));
        // Half a metre is 31.25 mm: where there is room for 40, one piece stands alone.
        let one = division(40.0, &scale, Notation::Metric);
        assert_eq!(one, Some((Length::millimetres(500.0), 1)));
        assert_eq!(division(10.0, &scale, Notation::Metric), None);
    }
}
