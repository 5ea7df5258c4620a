//! The north arrow.

use crate::drawing::page::{LARGE, Page};
use crate::drawing::{Align, Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vector2, Vertex};

/// Radius of its ring, millimetres.
const RING: f64 = 5.5;
/// From the middle to the tips of the needle.
const TIP: f64 = 7.5;
/// Half of the needle's width.
const HALF: f64 = 1.9;
/// From the middle to that of the letter.
const LETTER: f64 = TIP + 3.2;

/// The room of an arrow in any direction: a square of this side.
pub const SIDE: f64 = 2.0 * (LETTER + 2.2);

/// Draws a ring with a needle through it, its northern half black on one side, and the letter at its tip, level. `north` is
/// in degrees, clockwise from the upper edge of the sheet.
pub fn draw(page: &mut Page, middle: Point2, north: f64) {
    let angle = north.to_radians();
    let to = Vector2::new(angle.sin(), angle.cos());
    let right = Vector2::new(to.y, -to.x);
    let ring = [RING, -RING].map(|r| Vertex::bent(middle.x + r, middle.y, 1.0));
    path(page, Pen::Thin, ring.to_vec(), None);
    let (head, foot) = (middle + to * TIP, middle - to * TIP);
    let (left, right) = (middle - right * HALF, middle + right * HALF);
    let sharp = |points: &[Point2]| points.iter().map(|p| Vertex::sharp(p.x, p.y)).collect();
    path(page, Pen::Fine, sharp(&[head, right, middle]), Some(0.0));
    path(page, Pen::Thin, sharp(&[head, right, foot, left]), None);
    let letter = middle + to * LETTER - Vector2::new(0.0, LARGE / 2.0);
    page.text(Layer::Symbol, "N", LARGE, (letter, Align::Centre, 0.0));
    let reach = Vector2::repeat(SIDE / 2.0);
    page.reserve(Bounds2 {
        low: middle - reach,
        high: middle + reach,
    });
}

fn path(page: &mut Page, pen: Pen, points: Vec<Vertex>, fill: Option<f64>) {
    page.path(Layer::Symbol, Some(pen), Dash::Solid, points, true, fill);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::PaperKind;
    use crate::drawing::{Item, Scale, check};

    #[test]
    fn the_letter_stands_where_north_is() {
        for (north, x, y) in [
            (0.0, 0.0, 1.0),
            (90.0, 1.0, 0.0),
            (180.0, 0.0, -1.0),
            (-53.130_102, -0.8, 0.6),
        ] {
            let paper = PaperKind::A4.landscape();
            let inside = Bounds2 {
                low: Point2::new(10.0, 10.0),
                high: Point2::new(287.0, 200.0),
            };
            let mut page = Page::new(paper, inside);
            draw(&mut page, Point2::new(150.0, 100.0), north);
            let sheet = page.finish("s".into(), "s".into(), "1".into(), Scale::full());
            check::texts_are_clear(&sheet).unwrap();
            let letter = sheet.items.iter().find_map(|item| match item {
                Item::Text { at, .. } => Some(*at),
                _ => None,
            });
            let off = letter.unwrap() + Vector2::new(0.0, LARGE / 2.0) - Point2::new(150.0, 100.0);
            assert!((off - Vector2::new(x, y) * LETTER).norm() < 0.01, "{north}");
        }
    }
}
