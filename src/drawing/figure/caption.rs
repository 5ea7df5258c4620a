//! The caption under a figure.

use crate::drawing::page::{LARGE, LETTERS, Page, plain};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Point2, Vertex};

/// The caption of a figure: its letter or number in a circle, its title on a line from there, its scale below the line.
#[derive(Clone, Debug, PartialEq)]
pub struct Caption {
    /// Letter or number by which other sheets call the figure, such as `A` or `3`.
    pub sign: String,
    /// What it shows.
    pub title: String,
    /// The scale, and where it is cut, such as `1:20 · cut on sheet 2`.
    pub note: String,
}

/// Radius of the circle, millimetres.
const RADIUS: f64 = 4.5;
/// From the upper edge of the caption to the circle.
const AIR: f64 = 2.0;
/// From the circle to the lettering.
const GAP: f64 = 1.6;
/// How far the line passes the lettering.
const PAST: f64 = 2.0;

impl Caption {
    /// Width and height that it takes, millimetres on the paper.
    pub fn size(&self) -> (f64, f64) {
        let wide = self.lettered() + PAST + GAP + 2.0 * RADIUS;
        (wide, AIR + 2.0 * RADIUS + AIR)
    }

    fn lettered(&self) -> f64 {
        let title = lettering::width(&plain(&self.title), LARGE);
        title.max(lettering::width(&plain(&self.note), LETTERS))
    }

    /// Draws it below the middle of its upper edge: see [`super::Place::caption`].
    pub fn draw(&self, page: &mut Page, at: Point2) {
        let (wide, _) = self.size();
        let centre = Point2::new(at.x - wide / 2.0 + RADIUS, at.y - AIR - RADIUS);
        ring(page, centre);
        let sign = (
            Point2::new(centre.x, centre.y - LARGE / 2.0),
            Align::Centre,
            0.0,
        );
        page.text(Layer::Note, &self.sign, LARGE, sign);
        let from = Point2::new(centre.x + RADIUS, centre.y);
        let to = Point2::new(at.x + wide / 2.0, centre.y);
        page.line(Layer::Note, Pen::Thick, Dash::Solid, from, to);
        let x = from.x + GAP;
        let title = (Point2::new(x, from.y + 1.5), Align::Left, 0.0);
        page.text(Layer::Note, &self.title, LARGE, title);
        let note = (
            Point2::new(x, from.y - 1.3 - 1.08 * LETTERS),
            Align::Left,
            0.0,
        );
        page.text(Layer::Note, &self.note, LETTERS, note);
    }
}

fn ring(page: &mut Page, centre: Point2) {
    let points = vec![
        Vertex::bent(centre.x + RADIUS, centre.y, 1.0),
        Vertex::bent(centre.x - RADIUS, centre.y, 1.0),
    ];
    page.path(
        Layer::Note,
        Some(Pen::Medium),
        Dash::Solid,
        points,
        true,
        None,
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::PaperKind;
    use crate::drawing::occupancy::box_of;
    use crate::drawing::{Item, Scale, check};
    use crate::geometry::Bounds2;

    #[test]
    fn it_keeps_within_its_size_and_its_letters_clear_of_its_lines() {
        let inside = Bounds2 {
            low: Point2::new(10.0, 10.0),
            high: Point2::new(287.0, 200.0),
        };
        let captions = [
            ("A", "Section at the grill", "1:10 · cut on sheet 2"),
            ("12", "Qgj", "3\" = 1'-0\""),
            ("W", "W", "a note that is a good deal longer than its title"),
        ];
        for (sign, title, note) in captions {
            let caption = Caption {
                sign: sign.into(),
                title: title.into(),
                note: note.into(),
            };
            let mut page = Page::new(PaperKind::A4.landscape(), inside);
            let at = Point2::new(150.0, 100.0);
            caption.draw(&mut page, at);
            let sheet = page.finish("s".into(), "s".into(), "1".into(), Scale::full());
            check::texts_are_clear(&sheet).unwrap();
            let (wide, high) = caption.size();
            for item in &sheet.items {
                let area = if let Item::Path { points, .. } = item {
                    Bounds2::around(points.iter().map(|p| p.at))
                } else {
                    box_of(item)
                };
                let area = area.unwrap();
                assert!(
                    area.low.x >= at.x - wide / 2.0 - 1e-9
                        && area.high.x <= at.x + wide / 2.0 + 1e-9
                );
                assert!(
                    area.high.y <= at.y + 1e-9 && area.low.y >= at.y - high - 1e-9,
                    "{area:?}"
                );
            }
        }
    }
}
