//! The list of quantities as it grows.

use crate::geometry::Solid;
use crate::parts::{Assembly, Part, PartKind};
use crate::plan::{Face, Plan};
use crate::takeoff::asked::Asked;
use crate::takeoff::sheets::Laying;
use crate::takeoff::{Amount, Quantity};
use crate::units::{Area, Length, Mass, Notation, Volume};

/// Where a quantity belongs: a face, a run, or the whole island.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct At {
    pub run: Option<usize>,
    pub face: Option<usize>,
}

impl At {
    pub const ISLAND: Self = Self {
        run: None,
        face: None,
    };

    pub fn run(run: usize) -> Self {
        Self {
            run: Some(run),
            face: None,
        }
    }
}

/// What is reckoned from, and what has been reckoned.
pub(super) struct Tally<'a> {
    pub plan: &'a Plan,
    pub assembly: &'a Assembly,
    pub laying: &'a Laying,
    pub list: Vec<Quantity>,
}

impl<'a> Tally<'a> {
    pub fn new(plan: &'a Plan, assembly: &'a Assembly, laying: &'a Laying) -> Self {
        Self {
            plan,
            assembly,
            laying,
            list: Vec::new(),
        }
    }

    /// Puts a quantity down; nothing of something is left out.
    pub fn add(
        &mut self,
        asked: impl Into<Asked>,
        item: &str,
        at: At,
        amount: Amount,
        reckoned: impl Into<String>,
    ) {
        let Asked { need, length } = asked.into();
        let size = amount.size();
        if size > 1e-9 && size.is_finite() {
            self.list.push(Quantity {
                need,
                length,
                item: item.to_owned(),
                run: at.run,
                face: at.face,
                amount,
                reckoned: reckoned.into(),
            });
        }
    }

    pub fn units(&self) -> Notation {
        self.plan.design.project.units
    }

    /// A length in words.
    pub fn spell(&self, mm: f64) -> String {
        self.units().spell_with_unit(Length::millimetres(mm))
    }

    /// The parts of a kind, in the order they are built.
    pub fn parts(&self, kind: PartKind) -> impl Iterator<Item = &'a Part> + use<'a> {
        self.assembly.parts.iter().filter(move |p| p.kind == kind)
    }

    /// The parts of a kind on a face.
    pub fn on_face(&self, kind: PartKind, face: usize) -> impl Iterator<Item = &'a Part> + use<'a> {
        self.parts(kind).filter(move |p| p.face == Some(face))
    }

    /// The faces that are clad, with their numbers.
    pub fn clad(&self) -> impl Iterator<Item = (usize, &'a Face)> + use<'a> {
        let faces = self.plan.faces.iter().enumerate();
        faces.filter(|(_, face)| !face.wall)
    }

    /// A face and its run.
    pub fn at_face(&self, face: usize) -> At {
        At {
            run: self.plan.faces.get(face).map(|f| f.run),
            face: Some(face),
        }
    }

    /// The exact volume of a part, mm³.
    pub fn volume(&self, part: &Part) -> f64 {
        self.assembly.solid(part).volume()
    }

    /// The exact area of a flat part, mm².
    pub fn area(&self, part: &Part) -> f64 {
        match self.assembly.solid(part) {
            Solid::Extrusion(plate) => plate.profile.area(),
            _ => 0.0,
        }
    }
}

/// So many of something in words: `1 stud`, `24 studs`.
pub(super) fn many(count: usize, name: &str) -> String {
    match (count, name) {
        (1, _) => format!("1 {name}"),
        (_, "blocking") => format!("{count} {name}"),
        _ if name.ends_with('x') => format!("{count} {name}es"),
        _ => format!("{count} {name}s"),
    }
}

pub(super) fn length(mm: f64) -> Amount {
    Amount::Length(Length::millimetres(mm))
}

pub(super) fn area(mm2: f64) -> Amount {
    Amount::Area(Area::square_millimetres(mm2))
}

pub(super) fn volume(mm3: f64) -> Amount {
    Amount::Volume(Volume::cubic_millimetres(mm3))
}

pub(super) fn mass(mass: Mass) -> Amount {
    Amount::Mass(mass)
}

pub(super) fn count(count: usize) -> Amount {
    Amount::Count(u32::try_from(count).unwrap_or(u32::MAX))
}
