//! Faces and counter that follow the frame as measured.

use super::{Follow, FrameAsBuilt, Planned, solve};
use crate::design::Side;
use crate::geometry::{Point2, Vector2};
use crate::plan::{Face, FaceOpening, Panel, Plan, RunPlan, counter};

/// A frame whose corners all stand as near as this to where the plan has them stands as planned, millimetres.
const SAME: f64 = 0.1;
/// A frame of which a corner stands farther than this from the plan is another frame: two inches, common practice.
const TOO_FAR: f64 = 50.8;

/// The plan with faces, panels and counter on the frame as it stands. The runs keep their shape: each lies with its working
/// side on the measured one, so that openings and cutouts keep their distances from the left corner and from the face.
pub(in crate::plan) fn follow(mut plan: Plan) -> Plan {
    let Some(mut frame) = solve::solve(&plan.design, &plan.runs) else {
        return plan;
    };
    if frame.follow == Follow::AsPlanned {
        frame.follow = followed(&mut plan, &frame);
    }
    plan.as_built = Some(frame);
    plan
}

fn followed(plan: &mut Plan, frame: &FrameAsBuilt) -> Follow {
    let far = frame.runs.iter().enumerate();
    let far = far.map(|(i, r)| (i, r.farthest_off()));
    if let Some((run, off)) = far.max_by(|a, b| a.1.total_cmp(&b.1))
        && (off.is_nan() || off > TOO_FAR)
    {
        return Follow::TooFar { run, off };
    }
    let same = plan.runs.iter().zip(&frame.runs).all(|(run, built)| {
        let [u, v] = [run.length, run.depth];
        let planned = [(0.0, 0.0), (u, 0.0), (u, v), (0.0, v)].map(|(u, v)| run.point(u, v));
        let moved = planned.iter().zip(&built.corners);
        moved.into_iter().all(|(p, c)| (c - p).norm() < SAME)
    });
    if same {
        return Follow::AsPlanned;
    }
    let Some(faces) = faces(plan, frame) else {
        return Follow::NoCounter("its faces do not close".to_owned());
    };
    let runs = runs(plan, frame);
    let mut findings = Vec::new();
    let counter = counter::lay_out(&plan.design, &runs, &faces, &plan.cutouts, &mut findings);
    match (counter, findings.first()) {
        (Some(counter), None) => {
            let panels = panels(&plan.panels, &plan.runs, &runs);
            plan.counter = counter;
            Follow::Measured(Box::new(Planned {
                runs: std::mem::replace(&mut plan.runs, runs),
                faces: std::mem::replace(&mut plan.faces, faces),
                panels: std::mem::replace(&mut plan.panels, panels),
            }))
        }
        (_, first) => Follow::NoCounter(first.map_or_else(
            || "the counter cannot be made".to_owned(),
            |f| f.found.clone(),
        )),
    }
}

/// The runs laid with their working sides on the measured ones.
fn runs(plan: &Plan, frame: &FrameAsBuilt) -> Vec<RunPlan> {
    let laid = plan.runs.iter().zip(&frame.runs).map(|(run, built)| {
        let along = (built.corners[1] - built.corners[0])
            .try_normalize(1e-9)
            .unwrap_or(run.along);
        RunPlan {
            origin: built.corners[0],
            along,
            away: Vector2::new(-along.y, along.x),
            ..run.clone()
        }
    });
    laid.collect()
}

/// The faces between the corners where the measured sides meet; `None` where two sides that follow each other do not.
fn faces(plan: &Plan, frame: &FrameAsBuilt) -> Option<Vec<Face>> {
    let line = |f: &Face| {
        let [a, b, c, d] = frame.runs[f.run].corners;
        match f.side {
            Side::Working => [a, b],
            Side::Right => [b, c],
            Side::Seating => [c, d],
            Side::Left => [d, a],
        }
    };
    let n = plan.faces.len();
    let starts: Vec<Point2> = (0..n)
        .map(|i| meet(line(&plan.faces[(i + n - 1) % n]), line(&plan.faces[i])))
        .collect::<Option<_>>()?;
    let runs = runs(plan, frame);
    let moved = plan.faces.iter().enumerate().map(|(i, face)| {
        let (start, end) = (starts[i], starts[(i + 1) % n]);
        let along = (end - start).try_normalize(1.0)?;
        let placed = Face {
            start,
            along,
            outward: Vector2::new(along.y, -along.x),
            length: (end - start).norm(),
            openings: Vec::new(),
            ..face.clone()
        };
        let (own, laid) = (&plan.runs[face.run], &runs[face.run]);
        let moved = |s: f64| moved(s, (face, own), (&placed, laid));
        let openings = face.openings.iter().map(|o| FaceOpening {
            s0: moved(o.s0),
            s1: moved(o.s1),
            ..o.clone()
        });
        Some(Face {
            openings: openings.collect(),
            ..placed.clone()
        })
    });
    moved.collect()
}

/// Where a place along a planned face lies along the one that follows, as the run carries it.
pub(in crate::plan) fn moved(s: f64, planned: (&Face, &RunPlan), built: (&Face, &RunPlan)) -> f64 {
    let own = planned.1.local(planned.0.point(s, 0.0));
    (built.1.point(own.x, own.y) - built.0.start).dot(&built.0.along)
}

/// Where two lines meet.
fn meet(a: [Point2; 2], b: [Point2; 2]) -> Option<Point2> {
    let (u, v) = (a[1] - a[0], b[1] - b[0]);
    let turn = u.perp(&v);
    let square = u.norm() * v.norm();
    // The lines of neighbouring faces are nearly square to each other.
    (turn.abs() > 0.5 * square).then(|| a[0] + u * ((b[0] - a[0]).perp(&v) / turn))
}

/// The panels carried by their runs.
fn panels(panels: &[Panel], planned: &[RunPlan], laid: &[RunPlan]) -> Vec<Panel> {
    let carried = panels.iter().map(|panel| {
        let (from, to) = (&planned[panel.run], &laid[panel.run]);
        let at = from.local(panel.start);
        let turned = |v: &Vector2| to.along * v.dot(&from.along) + to.away * v.dot(&from.away);
        Panel {
            start: to.point(at.x, at.y),
            along: turned(&panel.along),
            inward: turned(&panel.inward),
            ..panel.clone()
        }
    });
    carried.collect()
}
