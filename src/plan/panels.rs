//! Where panels stand, and what each must frame.

use super::panel_layout::{Job, PanelOpening, lay_out};
use super::{Courses, Face, Panel, PanelOf, PlanLevels, RunPlan, Sizes};
use crate::design::{Design, Passes, Side, Turn};
use crate::diagnostics::Finding;

/// Every panel of every run: working, seating, left, right, bulkheads.
pub(super) fn panels(
    design: &Design,
    runs: &[RunPlan],
    faces: &[Face],
    levels: &PlanLevels,
    sizes: &Sizes,
    findings: &mut Vec<Finding>,
) -> Vec<Panel> {
    let mut panels = Vec::new();
    for (i, run) in runs.iter().enumerate() {
        for (of, doubled) in sides_of(design, runs, i) {
            panels.push((stand(run, i, PanelOf::Side(of), 0.0, sizes), doubled));
        }
        for (k, at) in design.runs[i].bulkheads.iter().enumerate() {
            if let Some(middle) = bulkhead(design, run, sizes, at, findings) {
                panels.push((
                    stand(run, i, PanelOf::Bulkhead(k), middle, sizes),
                    Vec::new(),
                ));
            }
        }
    }
    let mut framed: Vec<Vec<bool>> = faces
        .iter()
        .map(|f| vec![false; f.openings.len()])
        .collect();
    let courses = Courses::of(&design.trade, levels);
    let joints = courses.joints().to_vec();
    let mut finished = Vec::with_capacity(panels.len());
    for (mut panel, doubled) in panels {
        panel.face = faces.iter().position(|f| panel.lies_in(f));
        let openings = openings_in(design, faces, &panel, sizes, &mut framed);
        let clad = panel.face.is_some_and(|f| !faces[f].wall);
        let job = Job {
            design,
            sizes,
            length: panel.length,
            openings: &openings,
            doubled: &doubled,
            joints: if clad { &joints } else { &[] },
        };
        lay_out(&job, &mut panel, findings);
        finished.push(panel);
    }
    homeless(design, faces, &framed, findings);
    finished
}

/// The sides of a run's frame that have a panel, and where the studs of each are doubled for a run that butts there.
fn sides_of(design: &Design, runs: &[RunPlan], i: usize) -> Vec<(Side, Vec<f64>)> {
    let passes_at_start = i > 0 && design.runs[i].passes == Passes::Later;
    let passes_at_end = design
        .runs
        .get(i + 1)
        .is_some_and(|r| r.passes == Passes::Earlier);
    let turn = |k: usize| design.runs[k].turn.as_ref().map(|t| t.value);
    let start = runs[i].framed.0;
    let mut working = Vec::new();
    let mut seating = Vec::new();
    let mut double = |turn: Option<Turn>, u: f64| match turn {
        Some(Turn::Right) => working.push(u - start),
        _ => seating.push(u - start),
    };
    if passes_at_start {
        double(turn(i), runs[i - 1].depth);
    }
    if passes_at_end {
        double(turn(i + 1), runs[i].length - runs[i + 1].depth);
    }
    let mut sides = vec![(Side::Working, working), (Side::Seating, seating)];
    if i == 0 || passes_at_start {
        sides.push((Side::Left, Vec::new()));
    }
    if i + 1 == runs.len() || passes_at_end {
        sides.push((Side::Right, Vec::new()));
    }
    sides
}

/// An empty panel in its place.
fn stand(run: &RunPlan, i: usize, of: PanelOf, middle: f64, sizes: &Sizes) -> Panel {
    let (a, b) = run.framed;
    let t = sizes.panel;
    let across = run.depth - 2.0 * t;
    let (start, along, inward, length) = match of {
        PanelOf::Side(Side::Working) => (run.point(a, 0.0), run.along, run.away, b - a),
        PanelOf::Side(Side::Seating) => (run.point(a, run.depth), run.along, -run.away, b - a),
        PanelOf::Side(Side::Left) => (run.point(a, t), run.away, run.along, across),
        PanelOf::Side(Side::Right) => (run.point(b, t), run.away, -run.along, across),
        PanelOf::Bulkhead(_) => (run.point(middle - t / 2.0, t), run.away, run.along, across),
    };
    Panel {
        run: i,
        of,
        face: None,
        start,
        along,
        inward,
        length,
        uprights: Vec::new(),
        crosspieces: Vec::new(),
        bottom: Vec::new(),
        top: Vec::new(),
        blocking: Vec::new(),
    }
}

/// The middle of a bulkhead along its run, unless it meets the panels at the ends.
fn bulkhead(
    design: &Design,
    run: &RunPlan,
    sizes: &Sizes,
    at: &crate::design::Placed<crate::units::Length>,
    findings: &mut Vec<Finding>,
) -> Option<f64> {
    let middle = at.value.mm();
    let (low, high) = (
        run.framed.0 + 1.5 * sizes.panel,
        run.framed.1 - 1.5 * sizes.panel,
    );
    if middle >= low && middle <= high {
        return Some(middle);
    }
    let spell = |mm: f64| {
        design
            .project
            .units
            .spell_with_unit(crate::units::Length::millimetres(mm))
    };
    findings.push(
        Finding::error(
            "plan-bulkhead",
            &at.place,
            format!(
                "a bulkhead {} from the left end meets the frame's end or corner",
                spell(middle)
            ),
        )
        .hint(format!(
            "place it between {} and {}",
            spell(low),
            spell(high)
        )),
    );
    None
}

/// The openings that fall into a panel, in its coordinates; `framed` says which have found one.
fn openings_in(
    design: &Design,
    faces: &[Face],
    panel: &Panel,
    sizes: &Sizes,
    framed: &mut [Vec<bool>],
) -> Vec<PanelOpening> {
    let Some(f) = panel.face else {
        return Vec::new();
    };
    let face = &faces[f];
    let mut found = Vec::new();
    for (k, o) in face.openings.iter().enumerate() {
        let p = |s: f64| (face.point(s, 0.0) - panel.start).dot(&panel.along);
        let (a, b) = (p(o.s0), p(o.s1));
        let (p0, p1) = (a.min(b), a.max(b));
        if p0 < -1e-6 || p1 > panel.length + 1e-6 {
            continue;
        }
        framed[f][k] = true;
        let place = match o.kind {
            Some(_) => &design.openings[o.index].place,
            None => &design.appliances[o.index].place,
        };
        found.push(PanelOpening {
            name: o.name.clone(),
            place: place.clone(),
            p0,
            p1,
            z0: o.z0,
            z1: o.z1,
            open_top: o.kind.is_none(),
            open_bottom: o.kind.is_some() && o.z0 <= sizes.frame_bottom + 1e-6,
            framed: o.is_framed(sizes),
        });
    }
    found
}

/// Refuses openings that fall between two panels.
fn homeless(design: &Design, faces: &[Face], framed: &[Vec<bool>], findings: &mut Vec<Finding>) {
    for (f, face) in faces.iter().enumerate() {
        for (k, o) in face.openings.iter().enumerate() {
            if framed[f][k] {
                continue;
            }
            let place = match o.kind {
                Some(_) => &design.openings[o.index].place,
                None => &design.appliances[o.index].place,
            };
            findings.push(
                Finding::error(
                    "plan-opening",
                    place,
                    format!(
                        "'{}' falls where two frame panels meet, at a corner of the {}",
                        o.name, face.name
                    ),
                )
                .hint("move it away from the corner of the two runs"),
            );
        }
    }
}
