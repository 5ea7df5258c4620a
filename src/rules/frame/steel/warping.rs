//! Shear centre and warping constant of a thin open section, along its middle line, bends rounded.

use crate::catalog::SteelSection;
use crate::geometry::Point2;
use std::f64::consts::FRAC_PI_2;

/// Into how many chords a bend is cut.
const CHORDS: usize = 8;

/// How a section warps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Warping {
    /// The shear centre's distance from the web's outer skin, negative behind it, mm.
    pub centre: f64,
    /// Warping constant, mm⁶.
    pub constant: f64,
}

/// The middle line from one free edge to the other, symmetric about y = 0, the web's outer skin on x = 0.
fn middle_line(section: &SteelSection) -> Vec<Point2> {
    let t = section.thickness.mm();
    let r = (section.radius.mm() + t / 2.0).max(0.0);
    let (low, left) = (t / 2.0 - section.depth.mm() / 2.0, t / 2.0);
    let lip = section.lip.mm();
    let mut lower = Vec::new();
    let mut bend = |x: f64, y: f64, from: f64| {
        for k in 0..=CHORDS {
            let (sin, cos) = (from - FRAC_PI_2 * k as f64 / CHORDS as f64).sin_cos();
            lower.push(Point2::new(x + r * cos, y + r * sin));
        }
    };
    let right = section.flange.mm() - t / 2.0;
    if lip > 0.0 {
        bend(right - r, low + r, 0.0);
    }
    bend(left + r, low + r, -FRAC_PI_2);
    let edge = if lip > 0.0 {
        Point2::new(right, lip - section.depth.mm() / 2.0)
    } else {
        Point2::new(section.flange.mm(), low)
    };
    lower.insert(0, edge);
    let upper: Vec<Point2> = lower.iter().rev().map(|p| Point2::new(p.x, -p.y)).collect();
    lower.extend(upper);
    lower
}

/// How a section warps: the sectorial coordinate about the middle of its web, moved to the shear centre.
pub(super) fn warping(section: &SteelSection) -> Warping {
    let t = section.thickness.mm();
    let line = middle_line(section);
    let pole = Point2::new(t / 2.0, 0.0);
    let mut swept = vec![0.0];
    for pair in line.windows(2) {
        let last = swept.last().copied().unwrap_or(0.0);
        swept.push(last + (pair[0] - pole).perp(&(pair[1] - pole)));
    }
    let y: Vec<f64> = line.iter().map(|p| p.y).collect();
    let sum = |f: &[f64], g: &[f64]| -> f64 {
        let lengths = line.windows(2).map(|p| (p[1] - p[0]).norm());
        let parts = f.windows(2).zip(g.windows(2)).zip(lengths);
        parts
            .map(|((f, g), length)| {
                let whole = 2.0 * (f[0] * g[0] + f[1] * g[1]) + f[0] * g[1] + f[1] * g[0];
                whole * length * t / 6.0
            })
            .sum()
    };
    let away = sum(&swept, &y) / sum(&y, &y);
    let moved: Vec<f64> = swept.iter().zip(&y).map(|(w, y)| w - away * y).collect();
    let ones = vec![1.0; line.len()];
    let mean = sum(&moved, &ones) / sum(&ones, &ones);
    let about: Vec<f64> = moved.iter().map(|w| w - mean).collect();
    Warping {
        centre: pole.x + away,
        constant: sum(&about, &about),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Length;

    /// A section with the corners of its middle line sharp, as the handbooks have it.
    fn sharp(designator: &str) -> SteelSection {
        let mut section = SteelSection::from_designator(designator).unwrap();
        section.radius = Length::millimetres(-section.thickness.mm() / 2.0);
        section
    }

    fn near(found: f64, paper: f64) {
        assert!((found / paper - 1.0).abs() < 1e-9, "{found} for {paper}");
    }

    #[test]
    fn a_plain_channel_has_the_handbook_s_shear_centre_and_warping() {
        // Plain channel (value from memory): e = 3b²/(h + 6b) behind the web's middle line,
        // Cw = t b³ h²/12 · (3b + 2h)/(6b + h).
        let section = sharp("362T125-33");
        let t = section.thickness.mm();
        let (h, b) = (section.depth.mm() - t, section.flange.mm() - t / 2.0);
        let found = warping(&section);
        near(t / 2.0 - found.centre, 3.0 * b * b / (h + 6.0 * b));
        let cw = t * b.powi(3) * h * h / 12.0 * (3.0 * b + 2.0 * h) / (6.0 * b + h);
        near(found.constant, cw);
    }

    #[test]
    fn a_lipped_channel_has_the_handbook_s_shear_centre_and_warping() {
        // AISI manual, part I, sharp corners (value from memory); a, b, c web, flange and lip of the middle line.
        let section = sharp("362S162-54");
        let t = section.thickness.mm();
        let (a, b) = (section.depth.mm() - t, section.flange.mm() - t);
        let c = section.lip.mm() - t / 2.0;
        let found = warping(&section);
        let e = b * (3.0 * a * a * b + c * (6.0 * a * a - 8.0 * c * c))
            / (a.powi(3) + 6.0 * a * a * b + c * (8.0 * c * c - 12.0 * a * c + 6.0 * a * a));
        near(t / 2.0 - found.centre, e);
        let lips = 48.0 * c.powi(4)
            + 112.0 * b * c.powi(3)
            + 8.0 * a * c.powi(3)
            + 48.0 * a * b * c * c
            + 12.0 * a * a * c * c
            + 12.0 * a * a * b * c
            + 6.0 * a.powi(3) * c;
        let above = 2.0 * a.powi(3) * b + 3.0 * a * a * b * b + lips;
        let below = 6.0 * a * a * b + (a + 2.0 * c).powi(3) - 24.0 * a * c * c;
        near(found.constant, a * a * b * b * t / 12.0 * above / below);
    }
}
