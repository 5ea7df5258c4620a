//! Appliances and openings gathered with their runs, before their places are known.

use super::gather::{Gather, Limits};
use super::runs::side_of;
use super::station;
use crate::design::{Placed, Run, Side};
use crate::diagnostics::Place;
use crate::parameters::{self, File, Given};
use crate::units::Length;

/// More appliances or openings than this are not one island.
const MOST: usize = 1000;

/// One appliance or opening with a run, a name and a middle.
pub(super) struct Thing<'f> {
    pub(super) name: String,
    pub(super) place: Place,
    pub(super) run: usize,
    pub(super) side: Side,
    pub(super) width: Placed<Length>,
    pub(super) at: &'f Given<parameters::At>,
    pub(super) what: What<'f>,
    /// From the run's left end, or for an opening in an end from its working side, to the middle.
    pub(super) middle: Option<Placed<Length>>,
}

/// Its entry in the file.
#[derive(Clone, Copy)]
pub(super) enum What<'f> {
    Appliance(&'f parameters::Appliance),
    Opening(&'f parameters::Opening),
}

/// Everything in the file that could be understood so far, with the middles worked out.
pub(super) fn things<'f>(g: &mut Gather, file: &'f File, runs: &[Run]) -> Vec<Thing<'f>> {
    let counts = [
        (file.appliances.entries().count(), file.appliances.place()),
        (file.openings.entries().count(), file.openings.place()),
    ];
    for (count, place) in counts {
        if count > MOST {
            let hint = format!("an island can have {MOST}");
            g.error(
                "too-many",
                &place,
                format!("there are {count} entries"),
                hint,
            );
            return Vec::new();
        }
    }
    let mut things: Vec<Thing> = Vec::new();
    for (a, place) in file.appliances.entries() {
        let cutout = g.needed(&a.cutout, place, "cutout");
        let width = cutout.and_then(|c| {
            g.needed_length(&c.width, &a.cutout.place(), "width", Limits(50.0, 2500.0))
        });
        let head = Head {
            name: &a.name,
            run: &a.run,
            place,
        };
        let thing = head.thing(
            g,
            &things,
            runs,
            Side::Working,
            width,
            &a.at,
            What::Appliance(a),
        );
        things.extend(thing);
    }
    for (o, place) in file.openings.entries() {
        let width = g.needed_length(&o.width, place, "width", Limits(20.0, 2500.0));
        let side = o.side.value().map_or(Side::Working, |s| side_of(*s));
        let head = Head {
            name: &o.name,
            run: &o.run,
            place,
        };
        let thing = head.thing(g, &things, runs, side, width, &o.at, What::Opening(o));
        things.extend(thing);
    }
    station::place(g, &mut things, runs, file);
    things
}

/// What all entries have.
struct Head<'f> {
    name: &'f Given<String>,
    run: &'f Given<String>,
    place: &'f Place,
}

impl Head<'_> {
    #[allow(clippy::too_many_arguments)]
    fn thing<'f>(
        &self,
        g: &mut Gather,
        earlier: &[Thing],
        runs: &[Run],
        side: Side,
        width: Option<Placed<Length>>,
        at: &'f Given<parameters::At>,
        what: What<'f>,
    ) -> Option<Thing<'f>> {
        let name = self.name(g, earlier);
        let run = self.run(g, runs);
        g.needed(at, self.place, "at");
        Some(Thing {
            name: name?,
            place: self.place.clone(),
            run: run?,
            side,
            width: width?,
            at,
            what,
            middle: None,
        })
    }

    fn name(&self, g: &mut Gather, earlier: &[Thing]) -> Option<String> {
        let name = g.needed(self.name, self.place, "name")?.trim().to_owned();
        let place = self.name.place();
        if name.is_empty() {
            g.error(
                "empty-text",
                &place,
                "the name is empty",
                "give it a short name",
            );
            return None;
        }
        if !g.is_plain(&name, &place, 40) {
            return None;
        }
        if let Some(other) = earlier.iter().find(|t| t.name == name) {
            let found = format!("'{name}' is there twice");
            let hint = format!("the other is on line {}; rename one", other.place.line);
            g.error("same-name", &place, found, hint);
            return None;
        }
        Some(name)
    }

    fn run(&self, g: &mut Gather, runs: &[Run]) -> Option<usize> {
        if self.run.is_absent() && runs.len() == 1 {
            return Some(0);
        }
        let wanted = g.needed(self.run, self.place, "run")?;
        let found = runs.iter().position(|r| r.name.value == wanted.trim());
        if found.is_none() {
            let names: Vec<_> = runs.iter().map(|r| r.name.as_str()).collect();
            let hint = parameters::nearest(wanted, names.iter().copied()).map_or_else(
                || match names.as_slice() {
                    [] => "no run stands: put 'runs' right first".to_owned(),
                    names => format!("the runs are {}", names.join(", ")),
                },
                |n| format!("did you mean '{n}'?"),
            );
            let text = format!("there is no run named '{}'", wanted.escape_debug());
            g.error("unknown-run", &self.run.place(), text, hint);
        }
        found
    }
}
