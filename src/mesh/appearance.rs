//! What surfaces look like.

use crate::design::Design;
use crate::parts::PartKind;
use crate::units::Colour;

/// How a material takes light, in the metal and roughness terms of glTF 2.0 and of USD's preview surface.
#[derive(Clone, Debug, PartialEq)]
pub struct Appearance {
    /// What it is, such as `cement board`; unique among [`Appearances::all`].
    pub name: &'static str,
    /// Its colour by sRGB.
    pub srgb: Colour,
    /// Its colour as shares of red, green and blue light, 0 to 1.
    pub colour: [f32; 3],
    /// 0 for what is no metal, 1 for bare metal.
    pub metallic: f32,
    /// 0 for a mirror, 1 for chalk.
    pub roughness: f32,
}

/// The appearance of every kind of part of one design.
///
/// Invariant: none of `all` twice, always in the same order, whether a part shows it or not.
#[derive(Clone, Debug, PartialEq)]
pub struct Appearances {
    all: Vec<Appearance>,
}

/// Places in the table below.
const STEEL: usize = 0;
const SLEEPER: usize = 1;
const CHANNEL: usize = 2;
const BOARD: usize = 3;
const BASE_COAT: usize = 4;
const FINISH_COAT: usize = 5;
const TILE: usize = 6;
const CONCRETE: usize = 7;
const FORM: usize = 8;
const STAINLESS: usize = 9;

impl Appearances {
    /// Usual colours; the finish coat has the one that the file gives it. Metals are a little less than bare, since zinc
    /// and brushed steel are, and so that they show where a viewer has no surroundings to reflect.
    pub fn of(design: &Design) -> Self {
        let all = vec![
            made("galvanised steel", [0xb8, 0xbd, 0xc0], 0.8, 0.45),
            made("sleeper", [0x6b, 0x5a, 0x46], 0.0, 0.9),
            made("base channel", [0xd9, 0xd9, 0xd4], 0.0, 0.5),
            made("cement board", [0xb3, 0xb0, 0xa8], 0.0, 0.95),
            made("base coat", [0x9a, 0x96, 0x8d], 0.0, 0.95),
            made("finish coat", design.trade.finish_colour.0, 0.0, 0.95),
            made("tile", [0x5b, 0x7c, 0x8d], 0.0, 0.2),
            made("concrete", [0x8d, 0x8b, 0x86], 0.0, 0.7),
            made("form strip", [0xc9, 0xa9, 0x78], 0.0, 0.6),
            made("stainless steel", [0xd0, 0xd2, 0xd3], 0.8, 0.3),
        ];
        Self { all }
    }

    /// All of them, in a fixed order.
    pub fn all(&self) -> &[Appearance] {
        &self.all
    }

    /// Which of [`Self::all`] a kind of part has.
    pub fn number(kind: PartKind) -> usize {
        match kind {
            PartKind::Stud
            | PartKind::Jamb
            | PartKind::Cripple
            | PartKind::BottomTrack
            | PartKind::TopTrack
            | PartKind::Header
            | PartKind::Sill
            | PartKind::Tie
            | PartKind::Trimmer
            | PartKind::Blocking => STEEL,
            PartKind::Sleeper => SLEEPER,
            PartKind::BaseChannel => CHANNEL,
            PartKind::Board | PartKind::Substrate => BOARD,
            PartKind::BaseCoat => BASE_COAT,
            PartKind::FinishCoat => FINISH_COAT,
            PartKind::Tile => TILE,
            PartKind::Slab => CONCRETE,
            PartKind::EdgeForm | PartKind::CutoutForm => FORM,
            PartKind::Body | PartKind::Flange | PartKind::Leaf => STAINLESS,
        }
    }

    /// The appearance of a kind of part.
    pub fn of_kind(&self, kind: PartKind) -> &Appearance {
        &self.all[Self::number(kind)]
    }
}

fn made(name: &'static str, srgb: [u8; 3], metallic: f32, roughness: f32) -> Appearance {
    let srgb = Colour(srgb);
    Appearance {
        name,
        srgb,
        colour: srgb.linear(),
        metallic,
        roughness,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample;

    #[test]
    fn each_place_of_the_table_is_what_it_says() {
        let mut design = sample::design(vec![sample::run("ash", 3000.0, None, &[])]);
        design.trade.finish_colour.value = Colour([1, 2, 3]);
        let looks = Appearances::of(&design);
        for (kind, name) in [
            (PartKind::Tie, "galvanised steel"),
            (PartKind::Sleeper, "sleeper"),
            (PartKind::BaseChannel, "base channel"),
            (PartKind::Substrate, "cement board"),
            (PartKind::BaseCoat, "base coat"),
            (PartKind::FinishCoat, "finish coat"),
            (PartKind::Tile, "tile"),
            (PartKind::Slab, "concrete"),
            (PartKind::CutoutForm, "form strip"),
            (PartKind::Leaf, "stainless steel"),
        ] {
            assert_eq!(looks.of_kind(kind).name, name);
        }
        assert_eq!(looks.of_kind(PartKind::FinishCoat).srgb, Colour([1, 2, 3]));
    }

    #[test]
    fn names_are_unique_and_figures_are_shares() {
        let looks = Appearances::of(&sample::design(vec![sample::run("ash", 3000.0, None, &[])]));
        let share = |part: f32| (0.0..=1.0).contains(&part);
        for (i, look) in looks.all().iter().enumerate() {
            assert!(
                looks.all()[i + 1..]
                    .iter()
                    .all(|other| other.name != look.name)
            );
            assert!(look.colour.into_iter().all(share));
            assert!(share(look.metallic) && share(look.roughness));
        }
    }
}
