//! How the island is bought and cut, as the file writes it.

use super::{CountText, CurrencyText, Dimension, Given, ShareText, VolumeText};
use schemars::JsonSchema;
use serde::Deserialize;

/// Money, spares and tools.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Buying {
    /// The one currency of all prices. Usual: USD.
    #[serde(default)]
    pub currency: Given<CurrencyText>,
    /// Sales tax on everything. Usual: 0 %.
    #[serde(default)]
    pub tax: Given<ShareText>,
    /// What is bought beyond the need.
    #[serde(default)]
    pub spare: Given<Spare>,
    /// What a cut through steel takes; snips take nothing. Usual: 0 in.
    #[serde(default)]
    pub steel_kerf: Given<Dimension>,
    /// What a saw cut through wood and plywood takes. Usual: 1/8 in, or 3 mm.
    #[serde(default)]
    pub saw_kerf: Given<Dimension>,
    /// What is cut off the far end of every stick before it is used. Usual: 0 in.
    #[serde(default)]
    pub end_trim: Given<Dimension>,
    /// The longest stick that you can carry home. Usual: no limit.
    #[serde(default)]
    pub longest_stick: Given<Dimension>,
    /// Whether the punch-outs of studs and jambs must line up, so that pipes and cables pass. Usual: aligned.
    #[serde(default)]
    pub punch_outs: Given<PunchOuts>,
    /// How much concrete is mixed at once. Usual: 45 L, some 1.6 cu ft.
    #[serde(default)]
    pub mixer: Given<VolumeText>,
    /// How much mortar, plaster or grout is mixed at once. Usual: 10 L.
    #[serde(default)]
    pub bucket: Given<VolumeText>,
    /// Inside diameter of the bucket that the water is measured in. Usual: 280 mm, some 11 in.
    #[serde(default)]
    pub bucket_diameter: Given<Dimension>,
    /// The paper that labels are printed on. Usual: letter-30, or a4-24 with metric units.
    #[serde(default)]
    pub labels: Given<Labels>,
}

/// What is bought beyond the need, as shares of it.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Spare {
    /// Of the concrete. Usual: 10 %.
    #[serde(default)]
    pub concrete: Given<ShareText>,
    /// And at least so many bags of concrete. Usual: 2.
    #[serde(default)]
    pub concrete_bags: Given<CountText>,
    /// Of base coat and finish coat. Usual: 10 %.
    #[serde(default)]
    pub coats: Given<ShareText>,
    /// Of thinset and grout. Usual: 10 %.
    #[serde(default)]
    pub mortar: Given<ShareText>,
    /// Of tiles. Usual: 10 %.
    #[serde(default)]
    pub tile: Given<ShareText>,
    /// Of screws, shims and standoffs. Usual: 10 %.
    #[serde(default)]
    pub small: Given<ShareText>,
    /// Of tape, reinforcing mesh, and corner mesh in rolls. Usual: 10 %.
    #[serde(default)]
    pub mesh: Given<ShareText>,
    /// Of adhesive and sealer. Usual: 10 %.
    #[serde(default)]
    pub liquid: Given<ShareText>,
}

/// Whether punch-outs line up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PunchOuts {
    /// Studs and jambs are cut from the marked end, so that their punch-outs line up.
    Aligned,
    /// Wherever they come to be.
    AsTheyFall,
}

/// A common sheet of labels.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
pub enum Labels {
    /// Letter, 3 × 10 labels of 2-5/8 × 1 in.
    #[serde(rename = "letter-30")]
    Letter30,
    /// A4, 3 × 8 labels of 70 × 37 mm.
    #[serde(rename = "a4-24")]
    A4x24,
}
