//! A key under which equal solids are found.

use super::{EndPlane, Extrusion, Outline, Region, Solid, Tab};

/// How many steps a millimetre has in a key.
const STEPS: f64 = 1e6;

/// Collects the numbers that make a solid what it is.
#[derive(Default)]
struct Key(Vec<i64>);

impl Key {
    fn number(&mut self, value: f64) {
        self.0.push((value * STEPS).round() as i64);
    }

    fn count(&mut self, count: usize) {
        self.0.push(i64::try_from(count).unwrap_or(i64::MAX));
    }

    fn outline(&mut self, outline: &Outline) {
        self.count(outline.vertices().len());
        for v in outline.vertices() {
            self.number(v.at.x);
            self.number(v.at.y);
            self.number(v.bulge);
        }
    }

    fn region(&mut self, region: &Region) {
        self.outline(&region.outer);
        self.count(region.holes.len());
        for hole in &region.holes {
            self.outline(hole);
        }
    }

    fn plane(&mut self, plane: &EndPlane) {
        self.number(plane.offset);
        self.number(plane.slope[0]);
        self.number(plane.slope[1]);
    }

    fn extrusion(&mut self, e: &Extrusion) {
        self.region(&e.profile);
        self.plane(&e.start);
        self.plane(&e.end);
        self.count(e.slots.len());
        for slot in &e.slots {
            self.count(slot.wall.outer);
            self.count(slot.wall.inner);
            self.outline(&slot.outline);
        }
    }

    fn tab(&mut self, tab: Option<&Tab>) {
        self.count(usize::from(tab.is_some()));
        if let Some(tab) = tab {
            self.number(tab.radius);
            self.number(tab.length);
        }
    }
}

impl Solid {
    /// Numbers that are the same for two solids exactly when they are equal to within a millionth of a millimetre.
    pub fn key(&self) -> Vec<i64> {
        let mut key = Key::default();
        match self {
            Self::Extrusion(e) => {
                key.count(0);
                key.extrusion(e);
            }
            Self::Tabbed(t) => {
                key.count(1);
                key.extrusion(&t.body);
                key.count(t.wall.outer);
                key.count(t.wall.inner);
                key.tab(t.start.as_ref());
                key.tab(t.end.as_ref());
            }
            Self::Bend(b) => {
                key.count(2);
                key.outline(&b.profile);
                key.number(b.angle);
            }
            Self::Slab(s) => {
                key.count(3);
                key.number(s.thickness);
                for edge in &s.edges {
                    key.number(edge.corner.x);
                    key.number(edge.corner.y);
                    let (shape, size) = match edge.shape {
                        super::CornerShape::Sharp => (0, 0.0),
                        super::CornerShape::Rounded(radius) => (1, radius),
                        super::CornerShape::Chamfered(leg) => (2, leg),
                    };
                    key.count(shape);
                    key.number(size);
                    key.count(edge.profile.len());
                    for p in &edge.profile {
                        key.number(p.inset);
                        key.number(p.z);
                        key.number(p.bulge);
                    }
                }
                for cutout in &s.cutouts {
                    key.outline(cutout);
                }
            }
        }
        key.0
    }
}
