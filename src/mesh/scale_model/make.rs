//! The scale model made.

use super::fit::Room;
use super::rough::{Rough, Sizes};
use super::split::{self, Stuck};
use super::{Layer, Piece, ScaleModel, base, counter, frame, laid, plates, scale, thickness};
use crate::design::Printer;
use crate::diagnostics::{Finding, Place, Verdict};
use crate::geometry::{Bounds3, Point3};
use crate::mesh::body::Body;
use crate::parts::{Assembly, Group};
use crate::plan::{Band, Layers, Plan};

/// The scale model, and what is to be said about it; `None` when it cannot be printed, which is among the findings.
pub fn scale_model(plan: &Plan, assembly: &Assembly) -> (Option<ScaleModel>, Vec<Finding>) {
    let asked = &plan.design.scale_model;
    let room = Room::of(&asked.printer);
    let scale = match &asked.scale {
        Some(given) => given.value,
        None => scale::largest(&wholes(plan, assembly), &room),
    };
    let sizes = Sizes::of(&asked.printer, scale);
    let base = base::base(plan, &sizes);
    let frame_inside = base.as_ref().is_some_and(|b| b.takes_frame);
    let roughs = [
        frame::frame(assembly, &sizes),
        base.map(|b| b.rough),
        counter::counter(assembly, &sizes),
    ];
    let mut maker = Maker {
        plan,
        room,
        sizes,
        pieces: Vec::new(),
        findings: Vec::new(),
        failed: false,
    };
    for rough in roughs.iter().flatten() {
        maker.add(rough);
    }
    let Maker {
        pieces,
        findings,
        failed,
        ..
    } = maker;
    if pieces.is_empty() || failed {
        return (None, findings);
    }
    let plates = plates::plates(&pieces, &room);
    let [frame, _, _] = roughs;
    let model = ScaleModel {
        scale,
        bed: [room.x, room.y, room.z],
        nozzle: asked.printer.nozzle.mm(),
        wall: asked.printer.wall.mm(),
        clearance: asked.printer.clearance.mm(),
        plates,
        pieces,
        bars: frame.map_or_else(Vec::new, |f| f.bars),
        frame_inside,
        simplified: simplified(frame_inside, &sizes),
    };
    (Some(model), findings)
}

/// The boxes of the layers at full size.
fn wholes(plan: &Plan, assembly: &Assembly) -> Vec<Bounds3> {
    let of_group = |wanted: Group| {
        let parts = assembly.parts.iter().filter(move |p| p.group == wanted);
        let boxes = parts.filter_map(|p| {
            let b = assembly.solid(p).bounds();
            let corners = [0, 1, 2, 3, 4, 5, 6, 7].map(|i: usize| {
                let pick = |axis: usize| {
                    if i >> axis & 1 == 0 {
                        b.low[axis]
                    } else {
                        b.high[axis]
                    }
                };
                p.placement * Point3::new(pick(0), pick(1), pick(2))
            });
            Bounds3::around(corners)
        });
        boxes.reduce(Bounds3::union)
    };
    let mut frame = of_group(Group::Framing);
    if let Some(frame) = &mut frame {
        frame.low.z = frame.low.z.min(0.0);
    }
    let layers = Layers::of(&plan.design.trade);
    let band = Band::of(&plan.design, &plan.levels).map_or(0.0, |b| b.layer.outer);
    let out = layers.finish.outer.max(band);
    let base = frame.map(|b| Bounds3 {
        low: Point3::new(b.low.x - out, b.low.y - out, plan.levels.frame_bottom),
        high: Point3::new(b.high.x + out, b.high.y + out, plan.levels.slab_bottom),
    });
    [of_group(Group::Counter), base, frame]
        .into_iter()
        .flatten()
        .collect()
}

/// What the print leaves out or draws otherwise.
fn simplified(frame_inside: bool, sizes: &Sizes) -> Vec<String> {
    let goes = if frame_inside {
        "the frame goes into the base from below"
    } else {
        "the base is thicker than it should be and the frame stands beside it"
    };
    vec![
        "the frame's members are solid bars of their outer size, without lips, punch-outs and tabs; each of them is there".to_owned(),
        format!("nothing is made thinner than {} mm", (sizes.wall * 1000.0).floor() / 1000.0),
        "sleepers reach down to the ground: what packs them to level is part of them".to_owned(),
        "the base is hollow and has no bottom; boards, coats and tiles are one skin without joints, open where the openings are".to_owned(),
        "the substrate is left out: the base reaches up to the slab".to_owned(),
        "forms, appliances, doors and base channels are left out".to_owned(),
        goes.to_owned(),
    ]
}

/// Collects the pieces.
struct Maker<'a> {
    plan: &'a Plan,
    room: Room,
    sizes: Sizes,
    pieces: Vec<Piece>,
    findings: Vec<Finding>,
    /// True when a layer could not be made.
    failed: bool,
}

impl Maker<'_> {
    fn add(&mut self, rough: &Rough) {
        match split::split(rough, &self.room, &self.sizes) {
            Ok(bodies) => {
                let several = bodies.len() > 1;
                for (body, number) in bodies.iter().zip(1..) {
                    let name = if several {
                        format!("{}-{number}", rough.layer.name())
                    } else {
                        rough.layer.name().to_owned()
                    };
                    self.lay(rough, body, name);
                }
            }
            Err(stuck) => self.stuck(rough.layer, stuck),
        }
    }

    fn lay(&mut self, rough: &Rough, body: &Body, name: String) {
        let Some(bounds) = body.bounds() else {
            return;
        };
        let surface = body.surface();
        let members: Vec<_> = rough
            .bars
            .iter()
            .filter(|b| shares(body, &bounds, &b.bounds))
            .map(|b| b.mark.clone())
            .collect();
        if let Err(fault) = surface.check() {
            let found = format!("{name} of the scale model is not sound: {fault}");
            let hint = "this is a fault of the program: please report it with the parameter file";
            self.fail("scale-unsound", &[], found, hint.to_owned());
            return;
        }
        let thinnest = match rough.layer {
            Layer::Frame => self.sizes.wall,
            Layer::Counter | Layer::Base => thickness::thinnest(&surface),
        };
        if thinnest < self.sizes.wall - 1e-3 {
            self.thin(&name, thinnest);
        }
        let laid = laid::lay(surface, &bounds, &self.room);
        self.pieces.push(Piece {
            name,
            layer: rough.layer,
            over_air: laid::over_air(&laid.surface),
            surface: laid.surface,
            back: laid.back,
            members,
            thinnest,
        });
    }

    fn stuck(&mut self, layer: Layer, stuck: Stuck) {
        let Printer { bed: [x, y, z], .. } = &self.plan.design.scale_model.printer;
        let name = layer.name();
        let size = |v: f64| format!("{} mm", (v * 10.0).round() / 10.0);
        let hint = "make the scale smaller, such as 1:24 for 1:12, or name the larger bed of another printer".to_owned();
        match stuck {
            Stuck::TooHigh => {
                let found = format!(
                    "the {name} of the scale model is higher than the {} that the printer reaches",
                    size(z.mm())
                );
                self.fail("scale-bed", &[&z.place], found, hint);
            }
            Stuck::NoJoint => {
                let found = format!(
                    "the {name} of the scale model cannot be split to fit a bed of {} × {}: there is no place for a joint",
                    size(x.mm()),
                    size(y.mm())
                );
                let places = if x.mm() <= y.mm() {
                    [&x.place, &y.place]
                } else {
                    [&y.place, &x.place]
                };
                self.fail("scale-bed", &places, found, hint);
            }
            Stuck::TooMany => {
                let found = format!(
                    "the {name} of the scale model would be split into more than 60 pieces"
                );
                self.fail("scale-bed", &[&x.place, &y.place], found, hint);
            }
        }
    }

    fn thin(&mut self, name: &str, thinnest: f64) {
        let mut finding = self.finding(
            "scale-thin",
            &[&self.plan.design.scale_model.printer.wall.place],
            format!("{name} of the scale model is {thinnest:.2} mm thick where it is thinnest"),
            "make the scale larger, or thicken it in the print program".to_owned(),
        );
        finding.verdict = Verdict::Caution;
        finding.limit = format!("{} mm", (self.sizes.wall * 1000.0).round() / 1000.0);
        self.findings.push(finding);
    }

    fn fail(&mut self, code: &'static str, places: &[&Place], found: String, hint: String) {
        let finding = self.finding(code, places, found, hint);
        self.findings.push(finding);
        self.failed = true;
    }

    /// A finding at the first of some places that the file has, or at its scale.
    fn finding(
        &self,
        code: &'static str,
        places: &[&Place],
        found: String,
        hint: String,
    ) -> Finding {
        let asked = &self.plan.design.scale_model;
        let scale = asked.scale.as_ref().map(|s| &s.place);
        let known = places
            .iter()
            .copied()
            .chain(scale)
            .chain([&asked.place])
            .find(|p| p.is_known());
        let mut finding =
            Finding::error(code, known.unwrap_or(&Place::default()), found).hint(hint);
        // Nobody asked for a model of an island that is too large for a usual printer.
        finding.verdict = if asked.place.is_known() {
            Verdict::Fail
        } else {
            Verdict::Caution
        };
        finding
    }
}

/// True when a bar is in a body, in part at least.
fn shares(body: &Body, bounds: &Bounds3, bar: &Bounds3) -> bool {
    let is_near = bounds.overlaps(bar, 0.0);
    let shared = Body::cuboid(bar).filter(|_| is_near);
    shared.is_some_and(|b| body.within(&b).volume() > 1e-6)
}
