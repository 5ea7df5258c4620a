//! Resolving: from the file as written to the design with nothing left open.

mod amounts;
mod as_built;
mod buying;
mod counter;
mod drawings;
mod forecast;
mod forecast_csv;
mod gather;
mod island;
mod making;
mod marks;
mod openings;
mod pour;
mod project;
mod ratings;
mod runs;
mod scale_model;
mod serves;
mod services;
mod site;
mod soft;
mod sold;
mod station;
mod step_changes;
mod supplies;
mod survey;
#[cfg(test)]
mod tests;
mod things;
mod trade;
mod trade_files;
mod work;

pub use drawings::{TITLE_BLOCK, shipped_title_block, title_block};
pub use island::{from_text, from_text_changed, from_text_with, resolve};
pub use trade_files::{add_trade, shipped_trade};
