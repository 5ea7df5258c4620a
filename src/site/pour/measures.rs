//! What makes an hour fit that is not.

use super::evaporation::UNCERTAINTY;
use super::hours::{Conditions, Fitness, Reason, WINDBREAK};
use super::limits::Limits;
use super::mixture::Water;
use crate::units::{Notation, Temperature};

/// Fog over the surface holds the air so damp (common practice).
const FOG: f64 = 0.9;

/// Something to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measure {
    /// A sheet over the counter.
    Shade,
    /// A screen on the windward side.
    Windbreak,
    /// Mixing water as cold as this.
    ColdWater(Temperature),
    /// This share of the mixing water as ice.
    Ice(f64),
    /// A fine mist over the surface until it is covered.
    Fog,
    /// Mixing water as warm as this.
    WarmWater(Temperature),
    /// Bags brought in to warm.
    WarmBags,
    /// Insulation that keeps the concrete warm.
    Blankets,
}

impl Measure {
    /// In words.
    pub fn spell(self, notation: Notation) -> String {
        match self {
            Self::Shade => "shade".to_owned(),
            Self::Windbreak => "a windbreak".to_owned(),
            Self::ColdWater(t) | Self::WarmWater(t) => {
                format!("mixing water at {}", t.spell(notation))
            }
            // Rounded up: less ice does less.
            Self::Ice(share) => {
                format!("ice for {:.0} % of the water", (share * 20.0).ceil() * 5.0)
            }
            Self::Fog => "fog".to_owned(),
            Self::WarmBags => "bags stored warm".to_owned(),
            Self::Blankets => "insulating blankets".to_owned(),
        }
    }
}

/// What brings an hour under what is against it; empty where nothing does.
///
/// What is over a limit is brought under it, what is within the error of the estimate out of it.
pub(super) fn measures(
    met: &Conditions,
    against: &[(Reason, Fitness)],
    limits: &Limits,
) -> Vec<Measure> {
    let has = |reason: Reason| against.iter().find(|a| a.0 == reason).map(|a| a.1);
    let mut all = Vec::new();
    if let Some(fitness) = has(Reason::Frost) {
        all.push(Measure::Blankets);
        if fitness == Fitness::Not {
            return all;
        }
    }
    if has(Reason::Cold).is_some() {
        let water = met.mixture.warmed_to(limits.coldest);
        all.push(water.map_or(Measure::WarmBags, Measure::WarmWater));
    }
    if let Some(fitness) = has(Reason::Evaporation) {
        let share = if fitness == Fitness::Not {
            1.0
        } else {
            1.0 + UNCERTAINTY
        };
        all.extend(against_drying(met, limits, limits.evaporation / share));
    }
    let is_cooled = |m: &Measure| matches!(m, Measure::ColdWater(_) | Measure::Ice(_));
    if has(Reason::Heat) == Some(Fitness::Not) && !all.iter().any(is_cooled) {
        all.extend(cooled(met, limits.hottest));
    }
    all
}

/// The first of shade, windbreak, cold water and fog that alone does it, or the first that do it together.
fn against_drying(met: &Conditions, limits: &Limits, most: f64) -> Vec<Measure> {
    type Try = fn(&Conditions, &Limits, f64) -> Option<(Measure, Conditions)>;
    let tries: [Try; 4] = [shade, windbreak, water, fog];
    for attempt in tries {
        if let Some((measure, then)) = attempt(met, limits, most)
            && then.evaporation() <= most + 1e-9
        {
            return vec![measure];
        }
    }
    let (mut now, mut all) = (*met, Vec::new());
    for attempt in [shade as Try, windbreak, fog, water] {
        if let Some((measure, then)) = attempt(&now, limits, most) {
            all.push(measure);
            now = then;
        }
        if now.evaporation() <= most + 1e-9 {
            return all;
        }
    }
    Vec::new()
}

fn shade(met: &Conditions, _: &Limits, _: f64) -> Option<(Measure, Conditions)> {
    (met.sun > 0.0).then_some((Measure::Shade, Conditions { sun: 0.0, ..*met }))
}

fn windbreak(met: &Conditions, _: &Limits, _: f64) -> Option<(Measure, Conditions)> {
    let then = Conditions {
        wind: met.wind * WINDBREAK,
        sheltered: true,
        ..*met
    };
    (!met.sheltered).then_some((Measure::Windbreak, then))
}

fn fog(met: &Conditions, _: &Limits, _: f64) -> Option<(Measure, Conditions)> {
    let humidity = met.humidity.max(FOG);
    (met.humidity < FOG).then_some((Measure::Fog, Conditions { humidity, ..*met }))
}

/// Colder water, or ice, so that no more than `most` evaporates; the concrete is not cooled below its coldest.
fn water(met: &Conditions, limits: &Limits, most: f64) -> Option<(Measure, Conditions)> {
    let sun = met.skin().in_celsius() - met.concrete().in_celsius();
    // The formula solved for the skin's temperature.
    let wind = met.wind.in_kilometres_an_hour() + 4.0;
    let damp = met.humidity * (met.air.in_celsius() + 18.0).max(0.0).powf(2.5);
    let skin = (most / (5.0e-6 * wind) + damp).powf(0.4) - 18.0;
    let wanted = Temperature::celsius(skin - sun - 0.01);
    if !skin.is_finite() || wanted < limits.coldest || wanted >= met.concrete() {
        return None;
    }
    let measure = cooled(met, wanted)?;
    let then = Conditions {
        // The same concrete by other means: what matters is how warm it is.
        mixture: super::mixture::Mixture {
            bags: wanted,
            water: wanted,
            ..met.mixture
        },
        ..*met
    };
    Some((measure, then))
}

fn cooled(met: &Conditions, wanted: Temperature) -> Option<Measure> {
    met.mixture.cooled_to(wanted).map(|water| match water {
        Water::Of(t) => Measure::ColdWater(t),
        Water::Ice(share) => Measure::Ice(share),
    })
}
