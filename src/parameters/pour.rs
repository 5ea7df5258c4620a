//! The pour and the forecast as the file writes them.

use super::{
    CountText, Dimension, Given, IrradianceText, MomentText, ShareText, SpeedText, TemperatureText,
    TimeSpanText,
};
use schemars::JsonSchema;
use serde::Deserialize;

/// How and when the concrete is mixed and placed.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Pour {
    /// When placing begins.
    #[serde(default)]
    pub at: Given<MomentText>,
    /// How many people mix, carry, place and finish. Usual: 2.
    #[serde(default)]
    pub crew: Given<CountText>,
    /// How many mixers run side by side. Usual: 1.
    #[serde(default)]
    pub mixers: Given<CountText>,
    /// From one batch of one mixer to the next: mixed, carried and placed. Usual: 10 min alone, 6 with two people to a mixer, 5 with three, 4 with more.
    #[serde(default)]
    pub batch_time: Given<TimeSpanText>,
    /// How warm dry mix and water are when they are mixed.
    #[serde(default)]
    pub materials: Given<PourMaterials>,
    /// Whether the mix holds silica fume: it bleeds so little that half the evaporation cracks it. Usual: false.
    #[serde(default)]
    pub silica_fume: Given<bool>,
    /// By how much the retarder in the mix delays setting at 70 °F (21 °C), as its maker says. Left out, there is none.
    #[serde(default)]
    pub retarder: Given<TimeSpanText>,
    /// Whether the counter is in the shade while it is placed and finished. Usual: false.
    #[serde(default)]
    pub shade: Given<bool>,
    /// Whether a windbreak stands on the windward side. Usual: false.
    #[serde(default)]
    pub windbreak: Given<bool>,
    /// The weather to come, hour by hour.
    #[serde(default)]
    pub forecast: Given<Forecast>,
}

/// How warm the materials are.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PourMaterials {
    /// The bags, which are as warm as the place they are stored in. Left out, they are as warm as the air.
    #[serde(default)]
    pub bags: Given<TemperatureText>,
    /// The mixing water. Usual: 60 °F, or 15 °C.
    #[serde(default)]
    pub water: Given<TemperatureText>,
}

/// The weather to come, as hours, as CSV, or both.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Forecast {
    /// How high above the ground the wind is told. Usual: 10 m, as weather services tell it.
    #[serde(default)]
    pub wind_height: Given<Dimension>,
    /// The hours in order of time.
    #[serde(default)]
    pub hours: Given<Vec<Given<ForecastHour>>>,
    /// The same as text in lines: the first names the columns with their units, such as time,air °F,humidity %,wind mph,sun W/m2.
    #[serde(default)]
    pub csv: Given<String>,
}

/// One hour of the forecast.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ForecastHour {
    /// When it begins.
    pub at: Given<MomentText>,
    /// The air in the shade.
    pub air: Given<TemperatureText>,
    /// Relative humidity.
    pub humidity: Given<ShareText>,
    /// The wind.
    pub wind: Given<SpeedText>,
    /// The sun's power on level ground.
    #[serde(default)]
    pub sun: Given<IrradianceText>,
}
