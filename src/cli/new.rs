//! `new`: a commented starter file.

use super::args::{NewArgs, Shape, UnitsArg};
use super::console;
use super::outcome::{Outcome, Trouble};
use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};

pub(super) fn run(args: &NewArgs) -> Result<Outcome, Trouble> {
    let shown = args.file.display();
    let mut file = OpenOptions::new()
        .write(true)
        .create_new(true)
        .open(&args.file)
        .map_err(|e| match e.kind() {
            ErrorKind::AlreadyExists => Trouble::new(
                format!("{shown} exists already and stays as it is"),
                "choose another name",
            ),
            _ => Trouble::new(format!("{shown} cannot be written: {e}"), ""),
        })?;
    let written = file.write_all(starter(args.shape, args.units).as_bytes());
    if let Err(e) = written.and_then(|()| file.sync_all()) {
        // The file is ours: it was made above.
        let _ = std::fs::remove_file(&args.file);
        return Err(Trouble::new(format!("{shown} cannot be written: {e}"), ""));
    }
    console::out(&format!(
        "wrote {shown}\nchange its numbers to yours, then: islandwright build {shown}\n"
    ));
    Ok(Outcome::Done)
}

/// The starter file of a shape in its units.
fn starter(shape: Shape, units: UnitsArg) -> &'static str {
    match (shape, units) {
        (Shape::Straight, UnitsArg::Imperial) => {
            include_str!("../../templates/straight-imperial.yaml")
        }
        (Shape::Straight, UnitsArg::Metric) => include_str!("../../templates/straight-metric.yaml"),
        (Shape::Corner, UnitsArg::Imperial) => include_str!("../../templates/corner-imperial.yaml"),
        (Shape::Corner, UnitsArg::Metric) => include_str!("../../templates/corner-metric.yaml"),
        (Shape::U, UnitsArg::Imperial) => include_str!("../../templates/u-imperial.yaml"),
        (Shape::U, UnitsArg::Metric) => include_str!("../../templates/u-metric.yaml"),
    }
}
