//! The edge of the counter on its edge form.

use super::content::{Chain, Content, Extra, Note, Stuff, Window};
use super::places::Spot;
use super::plane;
use super::words::Words;
use crate::drawing::dimension::Side;
use crate::drawing::hatch::Material;
use crate::geometry::{Bounds2, Outline, Point2, Vertex};
use crate::parts::{Group, PartKind};
use crate::plan::{CounterSide, FORM_THICKNESS, Layers, Plan};

/// Radius of a drip groove, millimetres: an eighth of an inch, common practice.
const GROOVE: f64 = 3.175;
/// From the forms to the window, millimetres.
const AIR: f64 = 14.0;
/// How far one sees into the frame.
const INSIDE: f64 = 62.0;
/// How much of the board under the counter shows.
const BELOW: f64 = 75.0;

/// The edge over a face, cut beside a stud.
pub(super) fn content(plan: &Plan, spot: Spot, side: usize) -> Option<Content> {
    let face = plan.faces.get(spot.face)?;
    let edge = Edge {
        plan,
        side: plan.counter.sides.get(side)?,
        number: side,
        out: (plan.counter.sides.get(side)?.start - face.start).dot(&face.outward),
    };
    // Just before the stud, so that it and the tie over it are seen.
    let s = spot.s + plan.sizes.stud_flange / 2.0 + 30.0;
    Some(Content {
        view: plane::across(face, s),
        window: edge.window(),
        shows: |part| part.group != Group::Appliances,
        extras: edge.extras(),
        chains: edge.chains(),
        notes: edge.notes(),
    })
}

/// One edge of the counter; x is inwards from the frame's face.
struct Edge<'a> {
    plan: &'a Plan,
    side: &'a CounterSide,
    number: usize,
    /// From the frame's face out to the edge.
    out: f64,
}

impl Edge<'_> {
    /// The lowest height of the slab here.
    fn foot(&self) -> f64 {
        let drop = if self.side.dropped {
            self.plan.counter.turndown_depth
        } else {
            0.0
        };
        self.plan.levels.slab_bottom - drop
    }

    fn window(&self) -> Window {
        let levels = &self.plan.levels;
        let low = (self.foot() - FORM_THICKNESS - AIR).min(levels.frame_top - BELOW);
        Window {
            area: Bounds2 {
                low: Point2::new(-self.out - FORM_THICKNESS - AIR, low),
                high: Point2::new(INSIDE, levels.counter_top + AIR),
            },
            deep: 60.0,
        }
    }

    fn extras(&self) -> Vec<Extra> {
        let mut extras = self.reinforcement();
        if let Some(at) = self.drip() {
            extras.push(Extra::Hollow(PartKind::Slab, groove(at, GROOVE)));
            extras.push(Extra::Cut(Stuff::Of(Material::Plywood), groove(at, GROOVE)));
        }
        extras
    }

    /// Where on the underside of the turndown the drip groove is: in the middle of what is level there.
    fn drip(&self) -> Option<Point2> {
        let asked = self.plan.design.counter.casting.drip.as_ref();
        if !asked.is_some_and(|d| d.value) || !self.side.dropped {
            return None;
        }
        let profile = &self.plan.counter.slab.edges.get(self.number)?.profile;
        let depth = self.plan.counter.turndown_depth;
        let level = profile.iter().filter(|p| (p.z + depth).abs() < 1e-6);
        let insets: Vec<f64> = level.map(|p| p.inset).collect();
        let (from, to) = (insets.first()?, insets.last()?);
        (to - from > 4.0 * GROOVE)
            .then(|| Point2::new(f64::midpoint(*from, *to) - self.out, self.foot()))
    }

    /// The mesh with its cover, and the bars across the overhang.
    fn reinforcement(&self) -> Vec<Extra> {
        let steel = &self.plan.design.counter.casting.reinforcement;
        let mut extras = Vec::new();
        let Some(cover) = steel.cover.as_ref().map(|c| c.mm()) else {
            return extras;
        };
        let right = self.window().area.high.x;
        let first = cover - self.out;
        let mut level = self.plan.levels.counter_top - cover;
        if let Some(mesh) = &steel.mesh {
            let thick = mesh.mm();
            let y = level - thick / 2.0;
            extras.push(Extra::Wire(
                Point2::new(first, y),
                Point2::new(right, y),
                thick,
            ));
            let apart = steel.mesh_spacing.as_ref().map_or(0.0, |s| s.mm());
            if apart > 2.0 * thick {
                let count = ((right - first) / apart).floor().clamp(0.0, 200.0) as u32;
                let dots = (0..=count).map(|k| first + thick + f64::from(k) * apart);
                extras.extend(
                    dots.filter(|x| *x < right)
                        .map(|x| Extra::Dot(Point2::new(x, y - thick), thick)),
                );
            }
            level -= 2.0 * thick;
        }
        if let Some(bars) = &steel.bars {
            let y = level - bars.mm() / 2.0;
            extras.push(Extra::Wire(
                Point2::new(first, y),
                Point2::new(right, y),
                bars.mm(),
            ));
        }
        extras
    }

    fn chains(&self) -> Vec<Chain> {
        let (levels, out) = (&self.plan.levels, self.out);
        let clad = Layers::of(&self.plan.design.trade).finish.outer;
        let mut across = vec![-out - FORM_THICKNESS, -out];
        let mut heights = vec![levels.frame_top, levels.slab_bottom, levels.counter_top];
        if self.side.dropped {
            across.push(self.plan.counter.turndown_width - out);
            heights.push(self.foot());
        }
        vec![
            Chain::new(Side::Below, "", &across),
            Chain::new(Side::Below, "overhang", &[-out, -clad]),
            Chain::new(Side::Left, "", &heights),
        ]
    }

    fn notes(&self) -> Vec<Note> {
        let words = Words(self.plan);
        let mut notes = vec![
            Note::on(PartKind::Slab, words.slab()),
            Note::on(PartKind::Substrate, words.substrate()),
            self.rim(),
        ];
        notes.extend(self.reinforcing_notes());
        notes.extend(self.form_notes());
        notes.push(Note::on(PartKind::TopTrack, words.track("top track")));
        if let Some(tile) = words.tile() {
            notes.push(Note::on(PartKind::Tile, tile));
        } else {
            notes.push(Note::on(PartKind::FinishCoat, words.finish_coat()));
        }
        notes.push(Note::on(PartKind::BaseCoat, words.base_coat()));
        notes.push(Note::on(PartKind::Board, words.board()));
        notes.extend(self.brackets());
        notes
    }

    /// What the rim is.
    fn rim(&self) -> Note {
        let (words, counter) = (Words(self.plan), &self.plan.counter);
        let (levels, profile) = (&self.plan.levels, words.profile());
        if !self.side.dropped {
            let at = (
                6.0 - self.out,
                f64::midpoint(levels.slab_bottom, levels.counter_top),
            );
            return Note::at(&[at], format!("edge {profile}"));
        }
        let text = format!(
            "turndown edge {} below the slab, {} wide; edge {profile}",
            words.mm(counter.turndown_depth),
            words.mm(counter.turndown_width)
        );
        let x = counter.turndown_width / 2.0 - self.out;
        let y = levels.slab_bottom - counter.turndown_depth / 2.0;
        Note::at(&[(x, y), (x, y + counter.turndown_depth / 3.0)], text)
    }

    fn reinforcing_notes(&self) -> Vec<Note> {
        let words = Words(self.plan);
        let steel = &self.plan.design.counter.casting.reinforcement;
        let wires: Vec<_> = self
            .reinforcement()
            .into_iter()
            .filter_map(|e| match e {
                Extra::Wire(from, _, _) => Some(from),
                _ => None,
            })
            .collect();
        let texts = [
            steel.mesh.as_ref().and(words.mesh()),
            steel.bars.as_ref().and(words.bars()),
        ];
        let pairs = wires.iter().zip(texts.into_iter().flatten());
        let right = self.window().area.high.x;
        pairs
            .map(|(from, text)| {
                let at = |share: f64| (from.x + (right - from.x) * share, from.y);
                Note::at(&[at(0.7), at(0.5), at(0.9), at(0.3)], text)
            })
            .collect()
    }

    fn form_notes(&self) -> Vec<Note> {
        let mut notes = vec![Note::on_some(
            PartKind::EdgeForm,
            "edge form wall",
            "{part}, plywood, oiled; struck when the slab has set hard (common practice)"
                .to_owned(),
        )];
        for name in ["edge form floor", "edge form upstand"] {
            notes.push(Note::on_some(PartKind::EdgeForm, name, "{part}".to_owned()));
        }
        if let Some(at) = self.drip() {
            let size = Words(self.plan).mm(2.0 * GROOVE);
            notes.push(Note::at(
                &[(at.x, at.y + GROOVE / 2.0)],
                format!("drip groove {size} wide, cast round a strip on the form (size: common practice)"),
            ));
        }
        notes
    }

    /// What carries the overhang where people sit.
    fn brackets(&self) -> Option<Note> {
        let face = self.plan.faces.get(self.side.face)?;
        let asked = self.plan.design.counter.casting.brackets.as_ref()?;
        let words = Words(self.plan);
        (face.side == crate::design::Side::Seating).then(|| {
            Note::whole(format!(
                "Brackets under the overhang: {} long, {} apart at most (not drawn).",
                words.length(asked.value.reach.value),
                words.length(asked.value.spacing.value)
            ))
        })
    }
}

/// A half round over a point of the underside.
fn groove(at: Point2, radius: f64) -> Outline {
    let half = Outline::new(vec![
        Vertex::bent(at.x + radius, at.y, 1.0),
        Vertex::sharp(at.x - radius, at.y),
    ]);
    Outline::polygon(&half.flatten(0.05))
}
