//! The plan of the island: for whoever must know what will stand where, and how much room it takes.

mod around;
mod clearance;
mod dimensions;
mod gaps;
mod names;
mod openings;
mod seats;
mod services;
mod sheet;
mod site;

pub use services::service_signs;
pub use sheet::island;
pub use site::SitePlan;
