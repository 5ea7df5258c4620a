//! The gas supply of a design as a tree of pipe.

use super::piping::{Branch, Gas, Nominal, Tree};
use crate::design::{self, Appliance, Design, GasPipe, PipeMaterial};
use crate::rules::{Answers, Bound, Limit, Subject};
use crate::units::{Length, Power, Stress, Unit};

/// The drop in pressure that may be used up.
pub(super) const ALLOWED_DROP: Limit = Limit {
    name: "gas-pressure-drop",
    what: "the drop in pressure from the supply to the farthest appliance, where the file gives no `gas.allowed_drop`",
    usual: 124.541e-6,
    unit: Unit::GasPressure,
    source: "NFPA 54 and IFGC Table 402.4(2), printed for a drop of 0.5 in w.c.",
};

/// The gas supply of a design, with its pipes as a tree.
#[derive(Debug)]
pub(super) struct Supply<'a> {
    pub(super) gas: Gas,
    pub(super) of: &'a design::Gas,
    pub(super) tree: Tree,
    /// From the supply to the farthest outlet.
    pub(super) longest: Length,
    /// The drop that may be used up, and where that comes from.
    pub(super) allowed: Bound,
}

/// What pipes can be checked; where none can, the answers say why.
pub(super) fn supply<'a>(subject: &Subject<'a>, answers: &mut Answers) -> Option<Supply<'a>> {
    let design = subject.design();
    let Some(of) = &design.gas else {
        no_supply(design, answers);
        return None;
    };
    let branches = of.pipes.iter().map(|p| branch(design, p)).collect();
    let tree = Tree::new(branches).filter(|t| !t.branches().is_empty());
    let (Some(tree), Some(gas)) = (tree, Gas::of(of.fuel.value)) else {
        answers.missing(&of.place, "pipes", "the gas pipes are not known");
        return None;
    };
    Some(Supply {
        gas,
        of,
        longest: tree.longest(),
        tree,
        allowed: allowed(subject, of),
    })
}

/// Says why there is nothing to check in a design without a gas supply.
fn no_supply(design: &Design, answers: &mut Answers) {
    let burns = design.appliances.iter().find(|a| burns_gas(a));
    let unknown = design
        .appliances
        .iter()
        .find(|a| a.cooks() && a.rating.fuel.is_none());
    if let Some(a) = burns {
        let found = format!("'{}' burns gas, and its supply is not known", a.name);
        answers.missing(&crate::diagnostics::Place::default(), "gas", found);
    } else if let Some(a) = unknown {
        let found = format!("what '{}' runs on is not known", a.name);
        answers.missing(&a.place, "fuel", found).about(&a.name);
    } else {
        answers.nothing("there is no gas");
    }
}

fn allowed(subject: &Subject, gas: &design::Gas) -> Bound {
    let mut bound = subject.bound(&ALLOWED_DROP);
    if let Some(drop) = &gas.allowed_drop {
        bound.value = drop.value.mpa();
        "set in the file: gas.allowed_drop".clone_into(&mut bound.source);
    }
    bound
}

fn branch(design: &Design, pipe: &GasPipe) -> Branch {
    let steel = pipe.material.value == PipeMaterial::Steel;
    let heat = |i: usize| {
        let rating = &design.appliances.get(i)?.rating;
        rating.heat_input.as_ref().map(|h| h.value)
    };
    Branch {
        name: pipe.name.clone(),
        upstream: pipe.from,
        length: pipe.length.value,
        size: Nominal::named(pipe.size.value).filter(|_| steel),
        load: pipe
            .serves
            .as_ref()
            .map_or(Some(Power::ZERO), |s| heat(s.value)),
    }
}

/// True when an appliance is known to burn natural gas or propane.
pub(super) fn burns_gas(a: &Appliance) -> bool {
    a.rating.fuel.as_ref().is_some_and(|f| f.is_gas())
}

impl Supply<'_> {
    /// The drop that may be used up.
    pub(super) fn drop(&self) -> Stress {
        Stress::megapascals(self.allowed.value)
    }

    /// The first appliance at or beyond a pipe whose heat is not known.
    pub(super) fn unknown_load(&self, pipe: usize) -> Option<usize> {
        let beyond = |i: &usize| self.tree.path(*i).contains(&pipe);
        let mut unknown = (0..self.of.pipes.len())
            .filter(beyond)
            .filter(|i| self.tree.branches()[*i].load.is_none());
        let i = unknown.next()?;
        Some(self.of.pipes[i].serves.as_ref()?.value)
    }

    /// True when no appliance is at or beyond a pipe.
    pub(super) fn leads_nowhere(&self, pipe: usize) -> bool {
        let beyond = |i: &usize| self.tree.path(*i).contains(&pipe);
        let mut ends = (0..self.of.pipes.len()).filter(beyond);
        ends.all(|i| self.of.pipes[i].serves.is_none())
    }

    /// Gas appliances that no pipe leads to.
    pub(super) fn unserved(&self, design: &Design) -> Vec<usize> {
        let serves = |i: usize| {
            let mut ends = self.of.pipes.iter().filter_map(|p| p.serves.as_ref());
            ends.any(|s| s.value == i)
        };
        let all = design.appliances.iter().enumerate();
        let unserved = all.filter(|(i, a)| burns_gas(a) && !serves(*i));
        unserved.map(|(i, _)| i).collect()
    }
}
