//! The two fuel gases and what the equation needs of them.

use crate::design::Fuel;
use crate::units::Power;

/// One British thermal unit (international table) an hour in watts (NIST SP 811, appendix B.8).
const BTU_PER_HOUR: f64 = 0.293_071_07;

/// A fuel gas.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gas {
    /// Natural gas of specific gravity 0.60.
    Natural,
    /// Undiluted propane of specific gravity 1.50.
    Propane,
}

impl Gas {
    /// The gas of a fuel; `None` for what is no gas.
    pub fn of(fuel: Fuel) -> Option<Self> {
        match fuel {
            Fuel::NaturalGas => Some(Self::Natural),
            Fuel::Propane => Some(Self::Propane),
            _ => None,
        }
    }

    /// The factor Cr of the low-pressure equation (IFGC 2018 and IRC 2018, Table 402.4 / G2413.4).
    pub fn cr(self) -> f64 {
        match self {
            Self::Natural => 0.6094,
            Self::Propane => 1.2462,
        }
    }

    /// Heat content, Btu a cubic foot: natural gas as the example of IFGC appendix A has it, propane a value from memory.
    pub fn heat_content(self) -> f64 {
        match self {
            Self::Natural => 1000.0,
            Self::Propane => 2500.0,
        }
    }

    /// The heat of a flow in cubic feet an hour.
    pub fn heat_of(self, cubic_feet_an_hour: f64) -> Power {
        Power::watts(cubic_feet_an_hour * self.heat_content() * BTU_PER_HOUR)
    }

    /// The flow in cubic feet an hour that gives a heat.
    pub fn flow_of(self, heat: Power) -> f64 {
        heat.w() / (self.heat_content() * BTU_PER_HOUR)
    }
}
