//! What the rules look at: one planned design, with what is costly worked out at most once.

use super::loads::{Load, loads};
use super::{Bound, Limit, bound};
use crate::catalog::Need;
use crate::design::Design;
use crate::parts::{self, Assembly};
use crate::plan::Plan;
use crate::site::ground::{self, Ground};
use crate::site::pour::{self, PourPlan};
use crate::takeoff::mixes::mixes;
use crate::takeoff::quantities;
use crate::takeoff::sheets::Laying;
use crate::units::{Length, Notation, Unit};
use std::cell::OnceCell;

/// One planned design as the rules see it.
#[derive(Debug)]
pub struct Subject<'a> {
    /// The plan.
    pub plan: &'a Plan,
    assembly: OnceCell<Assembly>,
    loads: OnceCell<Vec<Load>>,
    pour: OnceCell<PourPlan>,
    ground: OnceCell<Option<Ground>>,
}

impl<'a> Subject<'a> {
    /// The subject of a plan; parts are built when a rule first asks for them.
    pub fn new(plan: &'a Plan) -> Self {
        Self {
            plan,
            assembly: OnceCell::new(),
            loads: OnceCell::new(),
            pour: OnceCell::new(),
            ground: OnceCell::new(),
        }
    }

    /// What was asked for.
    pub fn design(&self) -> &'a Design {
        &self.plan.design
    }

    /// Every part.
    pub fn assembly(&self) -> &Assembly {
        self.assembly.get_or_init(|| parts::build(self.plan))
    }

    /// What stands and stays, piece by piece, with its weight and where it weighs.
    pub fn loads(&self) -> &[Load] {
        self.loads.get_or_init(|| loads(self))
    }

    /// The pour: its hours, how long placing takes and how it sets.
    pub fn pour(&self) -> &PourPlan {
        self.pour.get_or_init(|| {
            let (design, assembly) = (self.design(), self.assembly());
            let laying = Laying::of(self.plan, assembly);
            let quantities = quantities::quantities(self.plan, assembly, &laying);
            let all = mixes(design, &quantities);
            let slab = all.iter().find(|m| m.need == Need::Concrete);
            let batches = slab.and_then(|m| m.bags.as_ref()).map(|b| b.batches);
            pour::planned(design, batches.map(|b| pour::placing(design, b, None)))
        })
    }

    /// The ground; `None` where it was not measured.
    pub fn ground(&self) -> Option<&Ground> {
        let ground = self
            .ground
            .get_or_init(|| ground::reckon(self.plan, self.assembly()));
        ground
            .as_ref()
            .filter(|_| self.design().site.survey.is_some())
    }

    /// A limit as it holds for this design.
    pub fn bound(&self, limit: &Limit) -> Bound {
        bound::bound(self.design(), limit)
    }

    /// How numbers are spelt.
    pub fn notation(&self) -> Notation {
        self.design().project.units
    }

    /// A length in millimetres in words.
    pub fn mm(&self, mm: f64) -> String {
        self.notation().spell_with_unit(Length::millimetres(mm))
    }

    /// How many times a limit or a load, in tenths and rounded down, so that what falls short never reads as enough.
    pub fn times(&self, n: f64) -> String {
        if n < 100.0 {
            format!("{:.1}", (n * 10.0 + 1e-9).floor().max(0.0) / 10.0)
        } else {
            "more than 100".to_owned()
        }
    }

    /// A number in words; it is in the base unit of `unit`.
    pub fn spell(&self, unit: Unit, value: f64) -> String {
        unit.spell(value, self.notation())
    }
}
