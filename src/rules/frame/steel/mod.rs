//! The mechanics of cold-formed steel members, as pure functions: newtons, millimetres and megapascals throughout.
//!
//! After AISI S100-16, its formulas from memory, held against a published example, finite elements and finite strips.
//! Not reckoned: web crippling (members hang by tabs), distortional buckling in bending (the flange is held by the
//! sheet that is screwed on it), cold work of forming.

mod beam;
mod bending;
mod buckling;
mod column;
mod distortional;
mod effective_section;
mod effective_width;
mod flat_track;
mod properties;
mod racking;
mod screws;
mod shear;
mod steel_grade;
mod warping;

pub use beam::{Beam, Load};
pub use bending::{Braced, bending_strength, service_inertia};
pub use buckling::{Unbraced, global_stress, plate_stress};
pub use column::{Column, column_strength, nominal_stress};
pub use distortional::{Distortional, distortional};
pub use effective_section::{Bent, bent_section, compressed_area};
pub use effective_width::{
    StiffenedFlange, effective_width, lip_k, stiffened_flange, unstiffened_k, web_gradient_k,
};
pub use flat_track::flat_track_strength;
pub use properties::{Gross, Punched, gross};
pub use racking::{BoardedWall, Strap, held_by_screws};
pub use screws::{SCREW_SAFETY, Screw, pull_out, pull_over, shear, tension};
pub use shear::web_shear;
pub use steel_grade::{E, G, Grade, POISSON};
