//! How the island is bought and cut.

use super::Placed;
use crate::units::{Currency, Length, Volume};

/// Money, spares and tools.
#[derive(Clone, Debug, PartialEq)]
pub struct Buying {
    /// The one currency of all prices.
    pub currency: Currency,
    /// Sales tax as a share of the price.
    pub tax: f64,
    /// What is bought beyond the need.
    pub spare: Spare,
    /// What a cut through steel takes: nothing for snips.
    pub steel_kerf: Length,
    /// What a saw cut through wood and plywood takes.
    pub saw_kerf: Length,
    /// What is cut off the far end of every stick before it is used.
    pub end_trim: Length,
    /// The longest stick that can be carried home; `None` for no limit.
    pub longest_stick: Option<Placed<Length>>,
    /// Whether the punch-outs of studs and jambs must line up.
    pub aligned: bool,
    /// How much concrete is mixed at once.
    pub mixer: Volume,
    /// How much mortar, plaster or grout is mixed at once.
    pub bucket: Volume,
    /// Inside diameter of the bucket that the water is measured in.
    pub bucket_diameter: Length,
    /// The paper that labels are printed on.
    pub labels: LabelPaper,
}

/// What is bought beyond the need, as shares of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Spare {
    /// Of the concrete.
    pub concrete: Placed<f64>,
    /// And at least so many bags of it.
    pub concrete_bags: u32,
    /// Of base coat and finish coat.
    pub coats: Placed<f64>,
    /// Of thinset and grout.
    pub mortar: Placed<f64>,
    /// Of tiles.
    pub tile: Placed<f64>,
    /// Of screws, shims and standoffs.
    pub small: Placed<f64>,
    /// Of tape, reinforcing mesh, and corner mesh in rolls.
    pub mesh: Placed<f64>,
    /// Of adhesive and sealer.
    pub liquid: Placed<f64>,
}

/// A common sheet of labels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelPaper {
    /// Letter, 3 × 10 labels of 2-5/8 × 1 in.
    Letter30,
    /// A4, 3 × 8 labels of 70 × 37 mm.
    A4x24,
}

impl Buying {
    /// What is usual where the file is silent (common practice): a tenth of spare and two bags of concrete; snips.
    pub fn usual(metric: bool) -> Self {
        let share = |value| Placed {
            value,
            ..Placed::default()
        };
        let (kerf, labels) = if metric {
            (Length::millimetres(3.0), LabelPaper::A4x24)
        } else {
            (Length::inches(0.125), LabelPaper::Letter30)
        };
        Self {
            currency: Currency::USD,
            tax: 0.0,
            spare: Spare {
                concrete: share(0.1),
                concrete_bags: 2,
                coats: share(0.1),
                mortar: share(0.1),
                tile: share(0.1),
                small: share(0.1),
                mesh: share(0.1),
                liquid: share(0.1),
            },
            steel_kerf: Length::ZERO,
            saw_kerf: kerf,
            end_trim: Length::ZERO,
            longest_stick: None,
            aligned: true,
            mixer: Volume::cubic_millimetres(45.0e6),
            bucket: Volume::cubic_millimetres(10.0e6),
            bucket_diameter: Length::millimetres(280.0),
            labels,
        }
    }
}
