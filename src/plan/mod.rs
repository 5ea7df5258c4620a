//! The plan: where everything stands, before anything is a solid. Datums that several parts share live here.
//!
//! World coordinates are millimetres: x along the first run, y away from its working side, z up from the datum. The
//! first run's working face of the frame is y = 0, its left end x = 0.

mod as_built;
mod band;
mod body;
mod chain;
mod columns;
mod counter;
mod courses;
mod crossing;
mod cutout;
mod face;
mod face_loop;
mod layers;
mod level;
mod panel;
mod panel_checks;
mod panel_layout;
mod panels;
mod room;
mod run;
mod sleeper;
mod station;

pub use as_built::{Follow, FrameAsBuilt, Planned, Push, RunAsBuilt, Slip, Suspect, TapedLength};
pub use band::Band;
pub use body::{Body, BodyOf};
pub use counter::{
    CounterCutout, CounterPlan, CounterSide, FORM_THICKNESS, SideKind, TurndownLine,
};
pub use courses::Courses;
pub use crossing::{Crossing, CrossingKind};
pub use cutout::Cutout;
pub use face::{Corner, Face, FaceOpening, Steel};
pub use layers::{Layer, Layers};
pub use level::PlanLevels;
pub use panel::{Crosspiece, CrosspieceKind, Panel, PanelOf, Sizes, Upright, UprightKind};
pub use run::RunPlan;
pub use sleeper::Sleeper;

use crate::design::{Design, Side};
use crate::diagnostics::Finding;

/// The planned island.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What was asked for.
    pub design: Design,
    /// Heights.
    pub levels: PlanLevels,
    /// The runs, in the order of the design.
    pub runs: Vec<RunPlan>,
    /// The faces in counter-clockwise order round the island, starting with the first run's working face. There are
    /// two for each run and the two ends. Each face begins where the one before it ends.
    pub faces: Vec<Face>,
    /// The cutouts, one for each appliance, in the order of the design.
    pub cutouts: Vec<Cutout>,
    /// The room that appliances and what fills openings take up below the counter.
    pub bodies: Vec<Body>,
    /// The sizes the frame is laid out by.
    pub sizes: Sizes,
    /// The frame panels, run by run.
    pub panels: Vec<Panel>,
    /// Ties, trimmers and blocking under the counter, run by run.
    pub crossings: Vec<Crossing>,
    /// The counter.
    pub counter: CounterPlan,
    /// The frame as it was measured, where it was. Runs, faces, panels and counter follow it already.
    pub as_built: Option<FrameAsBuilt>,
}

impl Plan {
    /// From where to where the counter reaches across a run, away from its working face: overhangs included, in millimetres.
    pub fn counter_across(&self, run: usize) -> (f64, f64) {
        let out = |side: Side| {
            let sides = self.counter.sides.iter().filter(|s| {
                let face = &self.faces[s.face];
                face.run == run && face.side == side && !matches!(s.kind, SideKind::Notch(_))
            });
            sides
                .map(|s| (s.start - self.faces[s.face].start).dot(&self.faces[s.face].outward))
                .fold(0.0, f64::max)
        };
        (
            -out(Side::Working),
            self.runs[run].depth + out(Side::Seating),
        )
    }

    /// The steel that boards on a face can be screwed to, in the face's coordinates.
    pub fn steel_behind(&self, face: usize) -> Vec<Steel> {
        let planned = self.as_built.as_ref().and_then(FrameAsBuilt::planned);
        let (faces, panels) =
            planned.map_or((&self.faces, &self.panels), |p| (&p.faces, &p.panels));
        let Some(own) = faces.get(face) else {
            return Vec::new();
        };
        let steel = panels.iter().flat_map(|p| p.steel(own, &self.sizes));
        let Some(planned) = planned else {
            return steel.collect();
        };
        // The members stand where their run carries them; the boards follow the measured face in front of them.
        let (from, to) = (&planned.runs[own.run], &self.runs[own.run]);
        let moved = |s| as_built::moved(s, (own, from), (&self.faces[face], to));
        steel
            .map(|s| Steel {
                s0: moved(s.s0),
                s1: moved(s.s1),
                ..s
            })
            .collect()
    }
}

/// Plans a design, or says everything that stops it from being built.
///
/// # Errors
/// When something overlaps, passes the end of what it stands in, or leaves no room for what must be there. Each
/// finding points to its key in the file.
pub fn lay_out(design: Design) -> Result<Plan, Vec<Finding>> {
    let mut findings = Vec::new();
    let levels = PlanLevels::of(&design);
    level::check(&design, &levels, &mut findings);
    courses::check(&design, &levels, &mut findings);
    let runs = chain::lay_out(&design, &mut findings);
    stop_on(&mut findings)?;
    let mut faces = face_loop::faces(&design, &runs);
    let cutouts = cutout::place(&design, &runs, &mut findings);
    face_loop::place_openings(&design, &runs, &levels, &cutouts, &mut faces, &mut findings);
    let bodies = body::place(&design, &runs, &faces, &levels, &cutouts, &mut findings);
    stop_on(&mut findings)?;
    let counter = counter::lay_out(&design, &runs, &faces, &cutouts, &mut findings);
    let sizes = Sizes::of(&design, &levels);
    let panels = panels::panels(&design, &runs, &faces, &levels, &sizes, &mut findings);
    stop_on(&mut findings)?;
    let Some(counter) = counter else {
        return Err(findings);
    };
    let crossings = crossing::crossings(&design, &runs, &panels, &cutouts, &sizes);
    let inside = room::Inside {
        design: &design,
        runs: &runs,
        panels: &panels,
        cutouts: &cutouts,
        bodies: &bodies,
        crossings: &crossings,
        sizes: &sizes,
    };
    inside.check(&mut findings);
    stop_on(&mut findings)?;
    let plan = Plan {
        design,
        levels,
        runs,
        faces,
        cutouts,
        bodies,
        sizes,
        panels,
        crossings,
        counter,
        as_built: None,
    };
    Ok(as_built::follow(plan))
}

/// Ends the planning where the next step would stand on something broken.
fn stop_on(findings: &mut Vec<Finding>) -> Result<(), Vec<Finding>> {
    if findings.is_empty() {
        Ok(())
    } else {
        Err(std::mem::take(findings))
    }
}
