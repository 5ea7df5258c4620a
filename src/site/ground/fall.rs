//! Which way the ground falls, and how much.

use crate::geometry::Vector2;

/// The fall of a plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fall {
    /// How much it falls, a part of one: zero or more.
    pub slope: f64,
    /// The way down, a unit vector in the world; straight towards the cook where it does not fall at all.
    pub down: Vector2,
    /// True when it falls by less over all that was measured than levels were read to.
    pub is_level: bool,
}

/// The four ways of the first run, in words.
const WORDS: [&str; 8] = [
    "away from the cook",
    "away from the cook and to the right",
    "to the right",
    "towards the cook and to the right",
    "towards the cook",
    "towards the cook and to the left",
    "to the left",
    "away from the cook and to the left",
];

const COMPASS: [&str; 8] = [
    "north",
    "north-east",
    "east",
    "south-east",
    "south",
    "south-west",
    "west",
    "north-west",
];

impl Fall {
    /// The fall of a plane that rises so; `reach` is how far it was measured, `reading` how finely, millimetres.
    pub fn of(rise: Vector2, reach: f64, reading: f64) -> Self {
        let slope = rise.norm();
        let down = if slope > 0.0 {
            -rise / slope
        } else {
            -Vector2::y()
        };
        Self {
            slope,
            down,
            is_level: slope * reach < reading,
        }
    }

    /// Degrees clockwise, seen from above, from straight away from the cook of the first run to the way down: 0 to 360.
    pub fn clockwise(&self) -> f64 {
        self.down
            .x
            .atan2(self.down.y)
            .to_degrees()
            .rem_euclid(360.0)
    }

    /// The way down as the cook of the first run says it.
    pub fn words(&self) -> &'static str {
        WORDS[eighth(self.clockwise())]
    }

    /// The way down by the compass, where north stands so many degrees clockwise from straight away from the cook.
    pub fn compass(&self, north: f64) -> &'static str {
        COMPASS[eighth(self.clockwise() - north)]
    }

    /// How much the ground falls along a direction; negative where it rises.
    pub fn along(&self, way: Vector2) -> f64 {
        self.slope * self.down.dot(&way)
    }
}

/// The nearest eighth of a turn.
fn eighth(degrees: f64) -> usize {
    let turned = degrees.rem_euclid(360.0) / 45.0;
    (turned.round() as usize) % 8
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_way_down_in_words_and_by_the_compass() {
        // Rising to the right and away from the cook, water runs to the left and towards the cook.
        let fall = Fall::of(Vector2::new(0.01, 0.01), 1000.0, 3.0);
        assert_eq!(fall.words(), "towards the cook and to the left");
        assert!((fall.clockwise() - 225.0).abs() < 1e-9 && !fall.is_level);
        // North 30° clockwise from straight away from the cook: 225° there is 195° by the compass.
        assert_eq!(fall.compass(30.0), "south");
        assert_eq!(fall.compass(0.0), "south-west");
        assert_eq!(
            Fall::of(Vector2::new(-0.01, 0.0), 1.0, 3.0).words(),
            "to the right"
        );
        assert!(Fall::of(Vector2::zeros(), 1e4, 3.0).is_level);
        assert_eq!(
            Fall::of(Vector2::new(0.0, -0.2), 1e4, 3.0).words(),
            "away from the cook"
        );
    }
}
