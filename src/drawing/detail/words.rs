//! How pieces are named in the notes of details: what they are, and their sizes as the file spells lengths.

use crate::catalog::SteelSection;
use crate::design::{EdgeProfile, Reinforcement, Surface};
use crate::plan::Plan;
use crate::units::{Length, Notation};

/// Spells for one plan.
#[derive(Clone, Copy, Debug)]
pub struct Words<'a>(pub &'a Plan);

impl Words<'_> {
    /// A length of so many millimetres.
    pub fn mm(self, mm: f64) -> String {
        self.length(Length::millimetres(mm))
    }

    /// A length.
    pub fn length(self, length: Length) -> String {
        self.0.design.project.units.spell_with_unit(length)
    }

    /// A steel section with its true sizes.
    pub fn steel(self, name: &str, section: &SteelSection) -> String {
        let thick = match self.0.design.project.units {
            Notation::Imperial => {
                let mils = section.designator.rsplit('-').next().unwrap_or_default();
                format!("{mils} mil")
            }
            Notation::Metric => format!("{:.2} mm", section.thickness.mm()),
        };
        format!(
            "{name} {}: {} × {}, steel {thick}",
            section.designator,
            self.length(section.nominal_depth),
            self.length(section.flange)
        )
    }

    /// A stud with its name.
    pub fn stud(self, name: &str) -> String {
        self.steel(name, &self.0.design.trade.stud.value)
    }

    /// A track with its name.
    pub fn track(self, name: &str) -> String {
        self.steel(name, &self.0.design.trade.track.value)
    }

    /// The board.
    pub fn board(self) -> String {
        let trade = &self.0.design.trade;
        format!(
            "cement board {}, screwed to every stud; joints {} wide, filled and taped",
            self.length(trade.board_thickness.value),
            self.length(trade.board_gap.value)
        )
    }

    /// The base coat.
    pub fn base_coat(self) -> String {
        format!(
            "base coat {}",
            self.length(self.0.design.trade.base_coat.value)
        )
    }

    /// The finish coat.
    pub fn finish_coat(self) -> String {
        format!(
            "finish coat {}",
            self.length(self.0.design.trade.finish_coat.value)
        )
    }

    /// The tiles of the band.
    pub fn tile(self) -> Option<String> {
        let band = self.0.design.tile_band.as_ref()?;
        Some(format!(
            "tile {} × {}, {} with its bed, on the base coat; joints {}",
            self.length(band.tile_width.value),
            self.length(band.tile_height.value),
            self.length(band.tile_thickness.value),
            self.length(band.joint.value)
        ))
    }

    /// The substrate.
    pub fn substrate(self) -> String {
        let trade = &self.0.design.trade;
        format!(
            "substrate: {} {}, on the top tracks and ties",
            trade.substrate,
            self.length(trade.substrate_thickness.value)
        )
    }

    /// The slab.
    pub fn slab(self) -> String {
        format!(
            "counter slab {}: {}",
            self.length(self.0.design.counter.thickness.value),
            self.0.design.trade.slab_mix
        )
    }

    /// The mesh, where there is one.
    pub fn mesh(self) -> Option<String> {
        let r = &self.0.design.counter.casting.reinforcement;
        let mesh = r.mesh.as_ref()?;
        let apart = r
            .mesh_spacing
            .as_ref()
            .map(|s| format!(" at {}", self.length(s.value)));
        Some(format!(
            "mesh, wires {}{}{}",
            self.length(mesh.value),
            apart.unwrap_or_default(),
            self.cover(r)
        ))
    }

    /// The bars across the overhang, where there are any.
    pub fn bars(self) -> Option<String> {
        let r = &self.0.design.counter.casting.reinforcement;
        let bar = r.bars.as_ref()?;
        let apart = r
            .bar_spacing
            .as_ref()
            .map(|s| format!(" at {}", self.length(s.value)));
        Some(format!(
            "bars {}{} across the overhang{}",
            self.length(bar.value),
            apart.unwrap_or_default(),
            self.cover(r)
        ))
    }

    fn cover(self, r: &Reinforcement) -> String {
        r.cover.as_ref().map_or_else(String::new, |c| {
            format!(", {} below the top", self.length(c.value))
        })
    }

    /// The shape of the edge.
    pub fn profile(self) -> String {
        match self.0.design.counter.profile.value {
            EdgeProfile::Square { eased } if eased.mm() <= 0.0 => "square".to_owned(),
            EdgeProfile::Square { eased } => {
                format!("square, arrises eased {}", self.length(eased))
            }
            EdgeProfile::Chamfer { size } => format!("chamfer {0} × {0}", self.length(size)),
            EdgeProfile::HalfRound => "half round over its whole height".to_owned(),
            EdgeProfile::QuarterRound { radius } => {
                format!("quarter round, radius {}", self.length(radius))
            }
            EdgeProfile::Cove { radius } => format!("cove, radius {}", self.length(radius)),
        }
    }

    /// What the sleepers stand on, as the file has it.
    pub fn surface(self) -> &'static str {
        match self.0.design.site.surface.as_ref().map(|s| &s.value) {
            None => "ground: see the site",
            Some(Surface::Bare) => "bare ground",
            Some(Surface::Slab { .. }) => "concrete slab",
            Some(Surface::Pavers { .. }) => "pavers on bedding",
            Some(Surface::Deck) => "deck: its joists must carry the island",
        }
    }
}
