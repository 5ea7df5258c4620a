//! Light-gauge steel sections from their industry designator.

use crate::geometry::{Outline, Region, Vertex, Wall};
use crate::units::Length;
use std::f64::consts::PI;

/// Stud or track.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SectionKind {
    /// A lipped C.
    Stud,
    /// A plain channel.
    Track,
}

/// The parts of a designator such as `362S125-33`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Designation {
    /// Hundredths of an inch, as written.
    pub web: u32,
    /// Stud or track.
    pub kind: SectionKind,
    /// Hundredths of an inch, as written.
    pub flange: u32,
    /// Thousandths of an inch, as written.
    pub mils: u32,
}

/// A section with its true dimensions.
#[derive(Clone, Debug, PartialEq)]
pub struct SteelSection {
    /// As written, such as `362S125-33`.
    pub designator: String,
    /// Stud or track.
    pub kind: SectionKind,
    /// The nominal web depth: outside of a stud, inside of a track.
    pub nominal_depth: Length,
    /// Outside to outside over the flanges.
    pub depth: Length,
    /// From the web's outer skin to the flange's free edge.
    pub flange: Length,
    /// The lip, outside; zero for a track.
    pub lip: Length,
    /// Design thickness.
    pub thickness: Length,
    /// Inside bend radius.
    pub radius: Length,
}

impl std::str::FromStr for Designation {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let form = || format!("'{text}' is not a section designator such as 362S125-33");
        let (body, mils) = text.trim().split_once('-').ok_or_else(form)?;
        let at = body.find(['S', 'T']).ok_or_else(form)?;
        let kind = if body.as_bytes()[at] == b'S' {
            SectionKind::Stud
        } else {
            SectionKind::Track
        };
        let number = |t: &str| match t.len() {
            2..=4 if t.bytes().all(|b| b.is_ascii_digit()) => t.parse::<u32>().map_err(|_| form()),
            _ => Err(form()),
        };
        Ok(Self {
            web: number(&body[..at])?,
            kind,
            flange: number(&body[at + 1..])?,
            mils: number(mils)?,
        })
    }
}

/// Mils, and the design thickness in inches (ASTM C645, AISI S220-20 A5.1.1; 68 and 97 from memory).
const THICKNESSES: [(u32, f64); 8] = [
    (18, 0.0188),
    (27, 0.0283),
    (30, 0.0312),
    (33, 0.0346),
    (43, 0.0451),
    (54, 0.0566),
    (68, 0.0713),
    (97, 0.1017),
];

/// A code of hundredths truncated from eighths: 362 means 3.625 in.
fn from_truncated_eighths(code: u32) -> f64 {
    (f64::from(code) / 12.5).ceil() / 8.0
}

/// The stiffening lip that goes with a flange, in (value from memory; reproduces the published table).
fn lip_for(flange: f64) -> Option<f64> {
    match flange {
        f if f < 1.25 => None,
        f if f < 1.375 => Some(3.0 / 16.0),
        f if f < 1.625 => Some(3.0 / 8.0),
        f if f < 2.0 => Some(0.5),
        f if f <= 3.0 => Some(5.0 / 8.0),
        _ => None,
    }
}

impl SteelSection {
    /// Reads a designator and gives the section's dimensions.
    ///
    /// ```
    /// use islandwright::catalog::SteelSection;
    /// let stud = SteelSection::from_designator("362S125-33").unwrap();
    /// assert!((stud.depth.in_inches() - 3.625).abs() < 1e-9);
    /// ```
    ///
    /// # Errors
    /// When the text is not a designator, or names a thickness or flange that is not made.
    pub fn from_designator(text: &str) -> Result<Self, String> {
        let d: Designation = text.parse()?;
        let thickness = THICKNESSES.iter().find(|t| t.0 == d.mils).ok_or_else(|| {
            let known: Vec<_> = THICKNESSES.iter().map(|t| t.0.to_string()).collect();
            format!(
                "{} mil is not a thickness made; there are {}",
                d.mils,
                known.join(", ")
            )
        })?;
        let t = thickness.1;
        let depth = from_truncated_eighths(d.web);
        let flange = from_truncated_eighths(d.flange);
        if !(1.5..=14.0).contains(&depth) {
            return Err(format!(
                "a web of {depth} in is not made; there are 1-5/8 to 14 in"
            ));
        }
        let radius = (3.0 / 32.0 - t / 2.0).max(1.5 * t);
        let lip = match d.kind {
            SectionKind::Track => 0.0,
            SectionKind::Stud => lip_for(flange).ok_or_else(|| {
                format!("a stud flange of {flange} in is not made; there are 1-1/4 to 3 in")
            })?,
        };
        if d.kind == SectionKind::Track && !(0.75..=3.0).contains(&flange) {
            return Err(format!(
                "a track flange of {flange} in is not made; there are 3/4 to 3 in"
            ));
        }
        let overall = match d.kind {
            SectionKind::Stud => depth,
            SectionKind::Track => depth + 2.0 * t + radius,
        };
        Ok(Self {
            designator: text.trim().to_owned(),
            kind: d.kind,
            nominal_depth: Length::inches(depth),
            depth: Length::inches(overall),
            flange: Length::inches(flange),
            lip: Length::inches(lip),
            thickness: Length::inches(t),
            radius: Length::inches(radius),
        })
    }

    /// The cross-section: the web's outer skin on x = 0, flanges towards +x, the middle of the web at y = 0.
    ///
    /// The first segment runs down the web's outer skin; see [`SteelSection::web`].
    pub fn profile(&self) -> Region {
        let h = self.depth.mm() / 2.0;
        let (b, c) = (self.flange.mm(), self.lip.mm());
        let (t, r) = (self.thickness.mm(), self.radius.mm());
        let (o, q) = (r + t, (PI / 8.0).tan());
        let mut v = vec![Vertex::sharp(0.0, h - o), Vertex::bent(0.0, o - h, q)];
        if c > 0.0 {
            v.extend([
                Vertex::sharp(o, -h),
                Vertex::bent(b - o, -h, q),
                Vertex::sharp(b, o - h),
                Vertex::sharp(b, c - h),
                Vertex::sharp(b - t, c - h),
                Vertex::bent(b - t, o - h, -q),
                Vertex::sharp(b - o, t - h),
            ]);
        } else {
            v.extend([
                Vertex::sharp(o, -h),
                Vertex::sharp(b, -h),
                Vertex::sharp(b, t - h),
            ]);
        }
        v.extend([
            Vertex::bent(o, t - h, -q),
            Vertex::sharp(t, o - h),
            Vertex::bent(t, h - o, -q),
        ]);
        if c > 0.0 {
            v.extend([
                Vertex::sharp(o, h - t),
                Vertex::bent(b - o, h - t, -q),
                Vertex::sharp(b - t, h - o),
                Vertex::sharp(b - t, h - c),
                Vertex::sharp(b, h - c),
                Vertex::bent(b, h - o, q),
                Vertex::sharp(b - o, h),
            ]);
        } else {
            v.extend([
                Vertex::sharp(o, h - t),
                Vertex::sharp(b, h - t),
                Vertex::sharp(b, h),
            ]);
        }
        v.push(Vertex::bent(o, h, q));
        Region::solid(Outline::new(v))
    }

    /// The web as a wall of [`SteelSection::profile`]: its outer skin and its inner skin.
    pub fn web(&self) -> Wall {
        Wall {
            outer: 0,
            inner: if self.lip.mm() > 0.0 { 10 } else { 6 },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn areas_agree_with_the_published_table() {
        // Industry technical guide, 2024 (reference-values.md): gross area, in².
        for (designator, area) in [
            ("250S125-18", 0.097),
            ("362S125-33", 0.215),
            ("362S162-33", 0.262),
            ("600S162-43", 0.447),
            ("362T125-33", 0.212),
        ] {
            let section = SteelSection::from_designator(designator).unwrap();
            let found = section.profile().area() / (25.4 * 25.4);
            assert!(
                (found - area).abs() <= 0.0006,
                "{designator}: {found} for {area}"
            );
        }
    }

    #[test]
    fn the_web_is_found_in_the_profile() {
        for designator in ["362S125-33", "362T125-33"] {
            let section = SteelSection::from_designator(designator).unwrap();
            let sides: Vec<_> = section.profile().outer.segments().collect();
            let web = section.web();
            assert!(sides[web.outer].from.x == 0.0 && sides[web.outer].to.x == 0.0);
            let t = section.thickness.mm();
            assert!(sides[web.inner].from.x == t && sides[web.inner].to.x == t);
        }
    }

    #[test]
    fn what_is_not_made_is_refused_by_name() {
        for text in [
            "",
            "362",
            "362S125",
            "362S125-20",
            "362X125-33",
            "9999S125-33",
            "362S900-33",
            "３６２S125-33",
        ] {
            assert!(
                SteelSection::from_designator(text).is_err(),
                "{text} was taken"
            );
        }
    }
}
