//! Gross properties of a section, from its true cross-section.

use super::warping::warping;
use crate::catalog::{PUNCH_OUTS, SectionKind, SteelSection};

/// Gross properties; x is the axis of symmetry (strong), y the axis along the web (weak). Millimetres to the power they have.
///
/// Area and second moments are exact, bends included. `j` is A·t²/3. Shear centre and warping constant are those of
/// the middle line, bends rounded; published tables have them larger, with sharp corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gross {
    /// Area.
    pub area: f64,
    /// Second moment about the strong axis.
    pub ix: f64,
    /// Second moment about the weak axis.
    pub iy: f64,
    /// Section modulus about the strong axis.
    pub sx: f64,
    /// From the web's outer skin to the centroid.
    pub centroid: f64,
    /// Constant of uniform torsion.
    pub j: f64,
    /// Warping constant.
    pub cw: f64,
    /// From the centroid to the shear centre, negative: it lies behind the web.
    pub x0: f64,
}

impl Gross {
    /// Radius of gyration about the strong axis.
    pub fn rx(&self) -> f64 {
        (self.ix / self.area).sqrt()
    }

    /// Radius of gyration about the weak axis.
    pub fn ry(&self) -> f64 {
        (self.iy / self.area).sqrt()
    }

    /// Polar radius of gyration about the shear centre.
    pub fn r0(&self) -> f64 {
        (self.rx().powi(2) + self.ry().powi(2) + self.x0.powi(2)).sqrt()
    }

    /// Part of the torsional-flexural term: 1 − (x0/r0)².
    pub fn beta(&self) -> f64 {
        1.0 - (self.x0 / self.r0()).powi(2)
    }
}

/// Whether a member has punch-outs in its web.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Punched {
    /// A whole web.
    No,
    /// The usual punch-outs, where the web is deep enough to have them.
    Yes,
}

impl Punched {
    /// How a stud comes from the shop, with holes, or a track without.
    pub fn usual(section: &SteelSection) -> Self {
        match section.kind {
            SectionKind::Stud => Self::Yes,
            SectionKind::Track => Self::No,
        }
    }

    /// Height of the hole across the web; `None` where there is none.
    pub(super) fn hole(self, section: &SteelSection) -> Option<f64> {
        let deep = section.nominal_depth.mm() > PUNCH_OUTS.deeper_than + 1e-6;
        (self == Self::Yes && deep).then_some(PUNCH_OUTS.width)
    }
}

/// The flat parts of a section, between the bends, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Flats {
    pub(super) web: f64,
    pub(super) flange: f64,
    pub(super) lip: f64,
    pub(super) t: f64,
    /// Outside radius of a bend.
    pub(super) bend: f64,
}

impl Flats {
    pub(super) fn of(section: &SteelSection) -> Self {
        let t = section.thickness.mm();
        let bend = section.radius.mm() + t;
        let lipped = section.lip.mm() > 0.0;
        let bends = if lipped { 2.0 } else { 1.0 };
        Self {
            web: (section.depth.mm() - 2.0 * bend).max(0.0),
            flange: (section.flange.mm() - bends * bend).max(0.0),
            lip: (section.lip.mm() - bend).max(0.0),
            t,
            bend,
        }
    }
}

/// The gross properties of a section.
pub fn gross(section: &SteelSection) -> Gross {
    let moments = section.profile().moments();
    let own = moments.about_centroid();
    let centroid = moments.centroid().x;
    let t = section.thickness.mm();
    let warps = warping(section);
    Gross {
        area: own.area,
        ix: own.yy,
        iy: own.xx,
        sx: own.yy / (section.depth.mm() / 2.0),
        centroid,
        j: own.area * t * t / 3.0,
        cw: warps.constant,
        x0: warps.centre - centroid,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn radii_agree_with_the_published_table() {
        // Industry technical guide, 2024 (reference-values.md): Ix in⁴, rx and ry in.
        for (designator, ix, rx, ry) in [
            ("250S125-18", 0.099, 1.014, 0.439),
            ("362S125-33", 0.421, 1.400, 0.413),
            ("362S162-33", 0.551, 1.450, 0.616),
            ("600S162-43", 2.316, 2.276, 0.576),
            ("362T125-33", 0.438, 1.438, 0.377),
        ] {
            let g = gross(&SteelSection::from_designator(designator).unwrap());
            let near = |found: f64, said: f64| (found - said).abs() <= 0.0006 + said * 5e-4;
            assert!(near(g.ix / 25.4f64.powi(4), ix), "{designator} {}", g.ix);
            assert!(near(g.rx() / 25.4, rx), "{designator} rx {}", g.rx() / 25.4);
            assert!(near(g.ry() / 25.4, ry), "{designator} ry {}", g.ry() / 25.4);
        }
    }
}
