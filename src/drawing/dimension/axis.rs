//! The frame in which chains are laid out: along the chain, and outwards from the view.

use crate::drawing::Align;
use crate::drawing::page::Stand;
use crate::geometry::Point2;

/// Where dimensions stand, seen from the view.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// Under it.
    Below,
    /// Over it.
    Above,
    /// To its left.
    Left,
    /// To its right.
    Right,
}

/// One side of a view on the sheet: t runs along it (x or y of the sheet), o outwards from its edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    /// Which side.
    pub side: Side,
    /// Where the edge is: y of the sheet for below and above, x for left and right.
    pub edge: f64,
}

impl Axis {
    /// The point on the sheet.
    pub fn point(&self, t: f64, o: f64) -> Point2 {
        match self.side {
            Side::Below => Point2::new(t, self.edge - o),
            Side::Above => Point2::new(t, self.edge + o),
            Side::Left => Point2::new(self.edge - o, t),
            Side::Right => Point2::new(self.edge + o, t),
        }
    }

    /// Where a point of the sheet is along the chain.
    pub fn along(&self, point: Point2) -> f64 {
        match self.side {
            Side::Below | Side::Above => point.x,
            Side::Left | Side::Right => point.y,
        }
    }

    /// True when the tops of letters point outwards.
    pub fn letters_point_out(&self) -> bool {
        matches!(self.side, Side::Above | Side::Left)
    }

    /// How a text stands whose room begins `o` outwards and which is `height` high, by its middle, start or end at t.
    pub fn stand(&self, t: f64, o: f64, height: f64, align: Align) -> Stand {
        let baseline = if self.letters_point_out() {
            o + 0.33 * height
        } else {
            o + 1.08 * height
        };
        let angle = match self.side {
            Side::Below | Side::Above => 0.0,
            Side::Left | Side::Right => 90.0,
        };
        (self.point(t, baseline), align, angle)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::occupancy::text_box;

    #[test]
    fn the_room_of_a_text_begins_where_it_is_asked_to() {
        for side in [Side::Below, Side::Above, Side::Left, Side::Right] {
            let axis = Axis { side, edge: 100.0 };
            let (at, align, angle) = axis.stand(50.0, 12.0, 2.5, Align::Centre);
            let area = text_box(at, "600", 2.5, align, angle);
            let (near, far) = match side {
                Side::Below => (100.0 - area.high.y, 100.0 - area.low.y),
                Side::Above => (area.low.y - 100.0, area.high.y - 100.0),
                Side::Left => (100.0 - area.high.x, 100.0 - area.low.x),
                Side::Right => (area.low.x - 100.0, area.high.x - 100.0),
            };
            assert!((near - 12.0).abs() < 1e-9, "{side:?} begins at {near}");
            assert!((far - 12.0 - 1.41 * 2.5).abs() < 1e-9);
            let along = match side {
                Side::Below | Side::Above => area.centre().x,
                Side::Left | Side::Right => area.centre().y,
            };
            assert!((along - 50.0).abs() < 1e-9);
        }
    }
}
