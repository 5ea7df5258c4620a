//! The foot of a face, and a stud in its track.

use super::content::{Chain, Content, Extra, Note, Stuff, Window};
use super::places::Spot;
use super::plane;
use super::words::Words;
use crate::catalog::practice::SHIMS_APART;
use crate::design::Surface;
use crate::drawing::dimension::Side;
use crate::drawing::hatch::Material;
use crate::geometry::{Bounds2, Outline, Point2};
use crate::parts::{Group, PartKind};
use crate::plan::{Layers, Plan};

/// How much of the ground shows, millimetres.
const GROUND: f64 = 42.0;
/// How much of the wall over the track.
const ABOVE: f64 = 88.0;
/// How long a screw is drawn, millimetres.
const SCREW: f64 = 13.0;

/// The foot of a face, cut through the flanges of a stud.
pub(super) fn foot(plan: &Plan, spot: Spot) -> Option<Content> {
    let face = plan.faces.get(spot.face)?;
    let foot = plan.levels.frame_bottom;
    let (panel, clad) = (
        plan.sizes.panel,
        Layers::of(&plan.design.trade).finish.outer,
    );
    let sleeper = plan.design.trade.sleeper_height.mm();
    let gap = (foot - sleeper).max(0.0);
    let window = Window {
        area: Bounds2 {
            low: Point2::new(-clad - 40.0, -GROUND),
            high: Point2::new(panel + 32.0, foot + ABOVE),
        },
        deep: 30.0,
    };
    let mut extras = ground(plan, &window.area);
    if gap > 0.5 {
        let shim = Outline::rectangle(0.0, 0.0, plan.design.trade.sleeper_width.mm(), gap);
        extras.push(Extra::Cut(Stuff::Shims, shim));
    }
    extras.extend(foot_screws(plan).map(|[head, tip]| Extra::Screw(head, tip)));
    Some(Content {
        // Through the flanges, but beside their middle, where boards may have a joint.
        view: plane::across(face, spot.s + plan.sizes.stud_flange / 4.0),
        window,
        shows: |part| !matches!(part.group, Group::Appliances | Group::Forms),
        extras,
        chains: vec![
            Chain::new(Side::Left, "", &[0.0, gap, foot]),
            Chain::new(Side::Left, "base gap", &[0.0, foot]),
            Chain::new(Side::Above, "", &[-clad, 0.0, panel]),
        ],
        notes: foot_notes(plan, gap, &window.area),
    })
}

/// The ground at its highest point, with what lies on it.
fn ground(plan: &Plan, area: &Bounds2) -> Vec<Extra> {
    let strip = |low: f64, high: f64| Outline::rectangle(area.low.x, low, area.high.x, high);
    let (paved, of) = match plan.design.site.surface.as_ref().map(|s| &s.value) {
        Some(Surface::Slab { thickness }) => (thickness.mm(), Material::Concrete),
        Some(Surface::Pavers { thickness, .. }) => (thickness.mm(), Material::Pavers),
        Some(Surface::Deck) => {
            let (left, right) = (Point2::new(area.low.x, 0.0), Point2::new(area.high.x, 0.0));
            return vec![Extra::Edge(left, right)];
        }
        Some(Surface::Bare) | None => (0.0, Material::Earth),
    };
    let paved = paved.min(-area.low.y);
    let mut extras = Vec::new();
    if paved > 1.0 {
        extras.push(Extra::Cut(Stuff::Of(of), strip(-paved, 0.0)));
    }
    if area.low.y < -paved - 1.0 {
        extras.push(Extra::Cut(
            Stuff::Of(Material::Earth),
            strip(area.low.y, -paved),
        ));
    }
    extras
}

/// The screws through both flanges of the bottom track, heads first.
fn foot_screws(plan: &Plan) -> impl Iterator<Item = [Point2; 2]> {
    let z = plan.levels.frame_bottom + plan.sizes.track_flange / 2.0;
    let panel = plan.sizes.panel;
    [(0.0, SCREW), (panel, panel - SCREW)]
        .into_iter()
        .map(move |(head, tip)| [Point2::new(head, z), Point2::new(tip, z)])
}

fn foot_notes(plan: &Plan, gap: f64, area: &Bounds2) -> Vec<Note> {
    let words = Words(plan);
    let trade = &plan.design.trade;
    let mut notes = vec![
        Note::on(PartKind::FinishCoat, words.finish_coat()),
        Note::on(PartKind::BaseCoat, words.base_coat()),
        Note::on(PartKind::Board, words.board()),
        Note::on(PartKind::Stud, words.stud("stud")),
        Note::on(PartKind::BottomTrack, words.track("bottom track")),
        screw_note(plan, foot_screws(plan).last()),
        Note::on(
            PartKind::BaseChannel,
            "base channel, galvanised: board and base coat stand in it, its leg laps over the sleeper".to_owned(),
        ),
        Note::on(
            PartKind::Sleeper,
            format!(
                "sleeper {} × {}, rot-proof, flush with the frame",
                words.length(trade.sleeper_width.value),
                words.length(trade.sleeper_height.value)
            ),
        ),
    ];
    let middle = trade.sleeper_width.mm() / 2.0;
    if gap > 0.5 {
        notes.push(Note::at(
            &[(1.6 * middle, gap / 2.0), (middle, gap / 2.0), (0.3 * middle, gap / 2.0)],
            format!(
                "shims {} at the highest point of the ground, more where it falls; at most {} apart (common practice)",
                words.mm(gap),
                words.mm(SHIMS_APART)
            ),
        ));
    }
    let x = (area.low.x + 3.0 * area.high.x) / 4.0;
    notes.push(Note::at(&[(x, -6.0)], words.surface().to_owned()));
    notes
}

fn screw_note(plan: &Plan, at: Option<[Point2; 2]>) -> Note {
    let points: Vec<_> = at
        .into_iter()
        .map(|[head, tip]| nalgebra::center(&head, &tip))
        .map(|p| (p.x, p.y))
        .collect();
    Note::at(
        &points,
        format!(
            "{}: one on each side at foot and head of every stud (common practice)",
            plan.design.trade.fastener
        ),
    )
}

/// A stud in its bottom track, cut above the track's web.
pub(super) fn track(plan: &Plan, spot: Spot) -> Option<Content> {
    let face = plan.faces.get(spot.face)?;
    let (panel, flange) = (plan.sizes.panel, plan.sizes.stud_flange);
    let clad = Layers::of(&plan.design.trade).finish.outer;
    let level = plan.levels.frame_bottom + 0.6 * plan.sizes.track_flange;
    let screws = [(0.0, SCREW), (panel, panel - SCREW)]
        .map(|(head, tip)| [Point2::new(spot.s, head), Point2::new(spot.s, tip)]);
    let words = Words(plan);
    Some(Content {
        view: plane::level(face, level),
        window: Window {
            area: Bounds2 {
                low: Point2::new(spot.s - 75.0, -clad - 12.0),
                high: Point2::new(spot.s + 90.0, panel + 14.0),
            },
            deep: plan.sizes.track_flange,
        },
        shows: |part| !matches!(part.group, Group::Appliances | Group::Forms),
        extras: screws
            .iter()
            .map(|[head, tip]| Extra::Screw(*head, *tip))
            .collect(),
        chains: vec![
            Chain::new(
                Side::Below,
                "",
                &[spot.s - flange / 2.0, spot.s + flange / 2.0],
            ),
            Chain::new(Side::Left, "", &[-clad, 0.0, panel]),
        ],
        notes: vec![
            Note::on(
                PartKind::Stud,
                format!(
                    "{}; {} on centre at most, marked end down, so that the punch-outs line up",
                    words.stud("stud"),
                    words.length(plan.design.trade.stud_spacing.value)
                ),
            ),
            Note::on(PartKind::BottomTrack, words.track("bottom track")),
            screw_note(plan, screws.last().copied()),
            Note::on(PartKind::Board, words.board()),
            Note::on(PartKind::BaseCoat, words.base_coat()),
            Note::on(PartKind::FinishCoat, words.finish_coat()),
        ],
    })
}
