//! How much of everything there is to do.

use crate::catalog::work::{Case, Heaviest, Measure};
use crate::catalog::{Form, Need, density};
use crate::design::{Design, Fuel, OpeningKind};
use crate::parts::{Assembly, Group, Part, PartKind};
use crate::plan::Plan;
use crate::units::{Length, Mass, Volume};
use std::collections::BTreeMap;

/// What is counted, measured and weighed of an island for its order of work.
#[derive(Clone, Debug)]
pub struct Amounts<'a> {
    design: &'a Design,
    plan: &'a Plan,
    parts: BTreeMap<PartKind, Sum>,
    panel: Mass,
}

/// Parts of one kind together.
#[derive(Clone, Copy, Debug, Default)]
struct Sum {
    count: usize,
    /// Millimetres.
    length: f64,
    /// Cubic millimetres.
    volume: f64,
}

/// The members that panels are made of.
const PANEL: [PartKind; 7] = [
    PartKind::Stud,
    PartKind::Jamb,
    PartKind::Cripple,
    PartKind::BottomTrack,
    PartKind::TopTrack,
    PartKind::Header,
    PartKind::Sill,
];

const CROSSINGS: [PartKind; 3] = [PartKind::Tie, PartKind::Trimmer, PartKind::Blocking];

impl<'a> Amounts<'a> {
    /// Counts and measures.
    pub fn new(plan: &'a Plan, assembly: &Assembly) -> Self {
        let mut parts: BTreeMap<PartKind, Sum> = BTreeMap::new();
        for part in &assembly.parts {
            let sum = parts.entry(part.kind).or_default();
            sum.count += 1;
            sum.length += part.length.mm();
            sum.volume += assembly.solid(part).volume();
        }
        Self {
            design: &plan.design,
            plan,
            parts,
            panel: heaviest_panel(assembly),
        }
    }

    /// What was asked for.
    pub fn design(&self) -> &'a Design {
        self.design
    }

    fn sum(&self, kind: PartKind) -> Sum {
        self.parts.get(&kind).copied().unwrap_or_default()
    }

    /// How many parts there are of a kind.
    pub fn count(&self, kind: PartKind) -> usize {
        self.sum(kind).count
    }

    /// How many parts there are of some kinds.
    fn counts(&self, kinds: &[PartKind]) -> f64 {
        kinds.iter().map(|k| self.count(*k)).sum::<usize>() as f64
    }

    fn metres(&self, kind: PartKind) -> f64 {
        self.sum(kind).length / 1e3
    }

    /// Square metres of a layer by its thickness.
    fn square_metres(&self, kind: PartKind, thickness: Length) -> f64 {
        self.sum(kind).volume / thickness.mm().max(1e-3) / 1e6
    }

    /// The slab's concrete.
    pub fn concrete(&self) -> Volume {
        Volume::cubic_millimetres(self.sum(PartKind::Slab).volume)
    }

    /// How much there is: pieces, metres, square metres or cubic metres.
    pub fn of(&self, measure: Measure) -> f64 {
        let trade = &self.design.trade;
        let amount = match measure {
            Measure::Once => 1.0,
            Measure::Runs => self.plan.runs.len() as f64,
            Measure::Sleepers => self.metres(PartKind::Sleeper),
            Measure::Members => self.counts(&PANEL) + self.counts(&CROSSINGS),
            Measure::PanelMembers => self.counts(&PANEL),
            Measure::Panels => self.plan.panels.len() as f64,
            Measure::Crossings => self.counts(&CROSSINGS),
            Measure::Channel => self.metres(PartKind::BaseChannel),
            Measure::Boards => self.square_metres(PartKind::Board, trade.board_thickness.value),
            Measure::BoardPieces => self.count(PartKind::Board) as f64,
            Measure::Substrate => {
                self.square_metres(PartKind::Substrate, trade.substrate_thickness.value)
            }
            Measure::EdgeForms => self.metres(PartKind::EdgeForm),
            Measure::CutoutForms => self.plan.cutouts.len() as f64,
            Measure::Slab => self.concrete().mm3() / 1e9,
            Measure::Top => self.square_metres(PartKind::Slab, self.design.counter.thickness.value),
            Measure::BaseCoat => self.square_metres(PartKind::BaseCoat, trade.base_coat.value),
            Measure::FinishCoat => {
                self.square_metres(PartKind::FinishCoat, trade.finish_coat.value)
            }
            Measure::Tile => {
                let band = self.design.tile_band.as_ref();
                band.map_or(0.0, |b| {
                    self.square_metres(PartKind::Tile, b.tile_thickness.value)
                })
            }
            other => self.of_things(other),
        };
        if amount.is_finite() { amount } else { 0.0 }
    }

    fn of_things(&self, measure: Measure) -> f64 {
        let openings = |wanted: &[OpeningKind]| {
            let all = self.design.openings.iter();
            all.filter(|o| wanted.contains(&o.kind)).count()
        };
        let appliances = |is: fn(&crate::design::Appliance) -> bool| {
            self.design.appliances.iter().filter(|a| is(a)).count()
        };
        let count = match measure {
            Measure::GasPipe => {
                let pipes = self.design.gas.iter().flat_map(|g| &g.pipes);
                return pipes.map(|p| p.length.mm() / 1e3).sum();
            }
            Measure::Brackets => return self.brackets(),
            Measure::Things => {
                let framed = self.design.openings.iter().filter(|o| o.kind.is_framed());
                self.design.appliances.len() + framed.count()
            }
            Measure::GasEnds => appliances(burns_gas),
            Measure::ElectricEnds => appliances(is_electric) + openings(&[OpeningKind::Receptacle]),
            Measure::WaterEnds => appliances(has_water),
            Measure::Fronts => openings(&[
                OpeningKind::Door,
                OpeningKind::Drawer,
                OpeningKind::Hatch,
                OpeningKind::Vent,
            ]),
            Measure::Appliances => {
                self.design.appliances.len() + openings(&[OpeningKind::Undercounter])
            }
            _ => 0,
        };
        count as f64
    }

    /// Brackets along all runs at their spacing.
    fn brackets(&self) -> f64 {
        let Some(brackets) = &self.design.counter.casting.brackets else {
            return 0.0;
        };
        let runs = self.plan.runs.iter();
        let apart = brackets.spacing.mm().max(1.0);
        runs.map(|r| (r.length / apart).floor() + 1.0).sum()
    }

    /// True for the islands of a case.
    pub fn holds(&self, case: Case) -> bool {
        let casting = &self.design.counter.casting;
        let elsewhere = casting.elsewhere.as_ref().is_some_and(|e| e.value);
        let some = |measure: Measure| self.of(measure) > 0.0;
        match case {
            Case::Always => true,
            Case::Gas => self.design.gas.is_some() || some(Measure::GasEnds),
            Case::Electricity => self.design.electricity.is_some() || some(Measure::ElectricEnds),
            Case::Water => some(Measure::WaterEnds),
            Case::Services => [Case::Gas, Case::Electricity, Case::Water]
                .iter()
                .any(|c| self.holds(*c)),
            Case::Things => some(Measure::Things),
            Case::Appliances => some(Measure::Appliances),
            Case::Fronts => some(Measure::Fronts),
            Case::Brackets => casting.brackets.is_some(),
            Case::Reinforcement => {
                let steel = &casting.reinforcement;
                steel.mesh.is_some() || steel.bars.is_some()
            }
            Case::InPlace => !elsewhere,
            Case::Elsewhere => elsewhere,
            Case::TileBand => self.count(PartKind::Tile) > 0,
            Case::Cooks => self
                .design
                .appliances
                .iter()
                .any(crate::design::Appliance::cooks),
        }
    }

    /// What the heaviest thing of a kind weighs, as far as it is known; nothing where it is not.
    pub fn heaviest(&self, of: Heaviest) -> Mass {
        let trade = &self.design.trade;
        match of {
            Heaviest::Panel => self.panel,
            Heaviest::Board => {
                let size = trade.board_length.value * trade.board_width.value;
                density::CEMENT_BOARD.of(size * trade.board_thickness.value)
            }
            Heaviest::Appliance => {
                let appliances = self.design.appliances.iter();
                let appliances = appliances.filter_map(|a| a.rating.weight.as_ref());
                let openings = self.design.openings.iter();
                let openings = openings.filter_map(|o| o.hardware.weight.as_ref());
                let all = appliances.chain(openings).map(|w| w.value);
                all.fold(Mass::ZERO, Mass::max)
            }
            Heaviest::Bag => {
                let bags = self.design.supplies.of(&Need::Concrete);
                let bags = bags.filter_map(|s| match &s.form {
                    Form::Bag { mass, .. } => Some(*mass),
                    _ => None,
                });
                bags.fold(Mass::ZERO, Mass::max)
            }
            Heaviest::Slab => density::CONCRETE_FRESH.of(self.concrete()),
        }
    }
}

fn burns_gas(a: &crate::design::Appliance) -> bool {
    a.rating.fuel.as_ref().is_some_and(|f| f.is_gas())
}

fn is_electric(a: &crate::design::Appliance) -> bool {
    let fuel = a.rating.fuel.as_ref();
    fuel.is_some_and(|f| f.value == Fuel::Electricity)
}

fn has_water(a: &crate::design::Appliance) -> bool {
    a.is_sink() || a.rating.drain.is_some()
}

/// What the heaviest panel weighs: the steel that belongs to one face of one run.
fn heaviest_panel(assembly: &Assembly) -> Mass {
    let mut panels: BTreeMap<(Option<usize>, usize), f64> = BTreeMap::new();
    let is_panel = |p: &&Part| p.group == Group::Framing && PANEL.contains(&p.kind);
    for part in assembly.parts.iter().filter(is_panel) {
        if let Some(face) = part.face {
            *panels.entry((part.run, face)).or_default() += assembly.solid(part).volume();
        }
    }
    let heaviest = panels.into_values().fold(0.0, f64::max);
    density::STEEL.of(Volume::cubic_millimetres(heaviest))
}
