//! The frame round an opening: the header folded onto its jamb, the jamb from above, the head.

use super::content::{Chain, Content, Extra, Note, Window};
use super::plane;
use super::words::Words;
use crate::catalog::PUNCH_OUTS;
use crate::drawing::dimension::Side;
use crate::geometry::{Bounds2, Point2};
use crate::parts::{Group, PartKind};
use crate::plan::{CrosspieceKind, Face, FaceOpening, Layers, Plan};

/// How long a screw is drawn, millimetres.
const SCREW: f64 = 13.0;

/// An opening of a face.
struct At<'a> {
    plan: &'a Plan,
    face: &'a Face,
    opening: &'a FaceOpening,
    number: usize,
}

impl<'a> At<'a> {
    fn new(plan: &'a Plan, face: usize, opening: usize) -> Option<Self> {
        let number = face;
        let face = plan.faces.get(face)?;
        Some(Self {
            plan,
            face,
            opening: face.openings.get(opening)?,
            number,
        })
    }

    /// How far the header is cut longer than the opening at either end.
    fn tab(&self) -> Option<f64> {
        let panels = self
            .plan
            .panels
            .iter()
            .filter(|p| p.face == Some(self.number));
        let mut headers = panels.flat_map(|panel| {
            let headers = panel
                .crosspieces
                .iter()
                .filter(|c| c.kind == CrosspieceKind::Header);
            headers.map(move |c| (panel.on_face(self.face, c.p0, c.p1), c))
        });
        let own = headers.find(|(s, c)| {
            (c.z - self.opening.z1).abs() < 1e-6 && (s.0 - self.opening.s0).abs() < 1e-6
        });
        own.map(|(_, c)| c.tab)
    }

    /// A height beside the opening at which the jambs have no punch-out, where there is one.
    fn level(&self) -> f64 {
        let o = self.opening;
        let foot = self.plan.sizes.frame_bottom + self.plan.sizes.track_thickness;
        let is_whole = |z: &f64| {
            let from = (z - foot - PUNCH_OUTS.first).rem_euclid(PUNCH_OUTS.pitch);
            from.min(PUNCH_OUTS.pitch - from) > PUNCH_OUTS.height / 2.0 + 10.0
        };
        let levels = [0.4, 0.6, 0.25, 0.75, 0.12, 0.88].map(|share| o.z0 + share * (o.z1 - o.z0));
        levels.into_iter().find(is_whole).unwrap_or(levels[0])
    }

    fn flange(&self) -> f64 {
        let opening = self.plan.design.openings.get(self.opening.index);
        opening.map_or(0.0, |o| o.flange.mm())
    }

    fn kind(&self) -> &'static str {
        self.opening.kind.map_or("appliance", |k| k.name())
    }

    fn clad(&self) -> f64 {
        Layers::of(&self.plan.design.trade).finish.outer
    }

    /// What the rough opening is.
    fn rough(&self) -> Note {
        let (o, words) = (self.opening, Words(self.plan));
        Note::whole(format!(
            "Rough opening {} wide, {} high, its upper edge {} above the datum: check it against the maker's sheet before cutting.",
            words.mm(o.s1 - o.s0),
            words.mm(o.z1 - o.z0),
            words.mm(o.z1)
        ))
    }

    /// Board, coats, leaf and flange at the edge of the opening.
    fn face_notes(&self) -> Vec<Note> {
        let words = Words(self.plan);
        let mut notes = vec![
            Note::on(
                PartKind::Board,
                format!("{}; flush with the opening's edge", words.board()),
            ),
            Note::on(
                PartKind::BaseCoat,
                format!("{}, to the edge", words.base_coat()),
            ),
            Note::on(
                PartKind::FinishCoat,
                format!("{}, to the edge", words.finish_coat()),
            ),
            Note::on(
                PartKind::Leaf,
                format!("{}: its envelope only", self.kind()),
            ),
        ];
        if self.flange() > 0.0 {
            notes.push(Note::on(
                PartKind::Flange,
                format!(
                    "flange, laps {} over the face; bed it in sealant at top and sides (common practice)",
                    words.mm(self.flange())
                ),
            ));
        }
        notes
    }
}

/// The header's end at its left jamb, cut along the frame.
pub(super) fn fold(plan: &Plan, face: usize, opening: usize) -> Option<Content> {
    let at = At::new(plan, face, opening)?;
    let (o, sizes, words) = (at.opening, &plan.sizes, Words(plan));
    let tab = at.tab()?;
    let t = sizes.track_thickness;
    let screws = [0.45, 0.8].map(|share| {
        let z = o.z1 + sizes.fold + (tab - sizes.fold).max(0.0) * share;
        [Point2::new(o.s0 + t, z), Point2::new(o.s0 + t - SCREW, z)]
    });
    let high = (o.z1 + sizes.track_flange.max(tab) + 32.0).min(plan.levels.frame_top + 10.0);
    let jamb = o.s0 - sizes.stud_flange;
    let first = screws[0];
    Some(Content {
        // Beside the middle, where the jamb's web has its punch-outs.
        view: plane::along(at.face, 0.2 * sizes.panel),
        window: Window {
            area: Bounds2 {
                low: Point2::new(jamb - 30.0, o.z1 - 62.0),
                high: Point2::new(o.s0 + 105.0, high),
            },
            deep: 0.85 * sizes.panel,
        },
        shows: |part| part.group == Group::Framing,
        extras: screws.map(|[head, tip]| Extra::Screw(head, tip)).to_vec(),
        chains: vec![
            Chain::new(Side::Left, "", &[o.z1, o.z1 + sizes.track_flange]),
            Chain::new(Side::Below, "", &[jamb, o.s0]),
        ],
        notes: vec![
            Note::on(
                PartKind::Header,
                format!(
                    "{}; cut {} longer than the opening at either end, flanges slit there, web folded up onto the jamb",
                    words.track("header, track"),
                    words.mm(tab)
                ),
            ),
            Note::on(PartKind::Jamb, format!("{}, its web towards the opening", words.stud("jamb, stud"))),
            Note::at(
                &[(f64::midpoint(first[0].x, first[1].x), first[0].y)],
                format!("{}: two through every tab (common practice)", plan.design.trade.fastener),
            ),
            Note::on(PartKind::Cripple, words.stud("cripple, stud")),
            Note::whole("Sills, ties, trimmers and blocking are folded onto what they meet in the same way.".to_owned()),
            at.rough(),
        ],
    })
}

/// The left jamb, cut level.
pub(super) fn jamb(plan: &Plan, face: usize, opening: usize) -> Option<Content> {
    let at = At::new(plan, face, opening)?;
    let (o, panel, clad, words) = (at.opening, plan.sizes.panel, at.clad(), Words(plan));
    let mut chains = vec![
        Chain::new(Side::Left, "", &[-clad, 0.0, panel]),
        Chain::new(Side::Below, "jamb", &[o.s0 - plan.sizes.stud_flange, o.s0]),
    ];
    if at.flange() > 0.0 {
        chains.push(Chain::new(
            Side::Below,
            "flange",
            &[o.s0 - at.flange(), o.s0],
        ));
    }
    let mut notes = at.face_notes();
    notes.push(Note::on(
        PartKind::Jamb,
        format!(
            "{}, full height, its web towards the opening",
            words.stud("jamb, stud")
        ),
    ));
    notes.push(at.rough());
    Some(Content {
        view: plane::level(at.face, at.level()),
        window: Window {
            area: Bounds2 {
                low: Point2::new(o.s0 - 85.0, -clad - 18.0),
                high: Point2::new(o.s0 + 70.0, panel + 14.0),
            },
            deep: 30.0,
        },
        shows: |part| part.group != Group::Forms,
        extras: Vec::new(),
        chains,
        notes,
    })
}

/// The head of the opening, cut upright.
pub(super) fn head(plan: &Plan, face: usize, opening: usize) -> Option<Content> {
    let at = At::new(plan, face, opening)?;
    let (o, panel, clad, words) = (at.opening, plan.sizes.panel, at.clad(), Words(plan));
    let mut notes = at.face_notes();
    notes.push(Note::on(
        PartKind::Header,
        format!("{}, flanges up", words.track("header, track")),
    ));
    notes.push(at.rough());
    let high = (o.z1 + plan.sizes.track_flange + 55.0).min(plan.levels.frame_top + 10.0);
    let mut chains = vec![
        Chain::new(Side::Left, "", &[o.z1, o.z1 + plan.sizes.track_flange]),
        Chain::new(Side::Above, "", &[-clad, 0.0, panel]),
    ];
    if at.flange() > 0.0 {
        chains.insert(
            1,
            Chain::new(Side::Left, "flange", &[o.z1, o.z1 + at.flange()]),
        );
    }
    Some(Content {
        view: plane::across(at.face, o.s0 + 0.3 * (o.s1 - o.s0)),
        window: Window {
            area: Bounds2 {
                low: Point2::new(-clad - 22.0, o.z1 - 55.0),
                high: Point2::new(panel + 20.0, high),
            },
            deep: 20.0,
        },
        shows: |part| part.group != Group::Forms,
        extras: Vec::new(),
        chains,
        notes,
    })
}
