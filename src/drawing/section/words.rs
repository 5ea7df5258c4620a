//! What a section says.

use super::subject::Subject;
use crate::design::Surface;
use crate::drawing::detail::{Note, Words};
use crate::parts::PartKind;
use crate::plan::BodyOf;

/// The notes of a section; those on parts that it does not meet are left out when it is drawn.
pub(super) fn notes(subject: &Subject) -> Vec<Note> {
    let plan = subject.plan;
    let trade = &plan.design.trade;
    let words = Words(plan);
    let mut notes = vec![slab(subject)];
    notes.extend(mesh(subject));
    notes.extend(turndown(subject));
    notes.push(Note::on(
        PartKind::Substrate,
        format!(
            "substrate: {} {}",
            trade.substrate,
            words.length(trade.substrate_thickness.value)
        ),
    ));
    notes.extend(envelope(subject));
    let tile = plan.design.tile_band.as_ref();
    notes.extend(tile.map(|band| {
        let thick = words.length(band.tile_thickness.value);
        Note::on(PartKind::Tile, format!("tile with its bed {thick}"))
    }));
    notes.push(Note::on(
        PartKind::Board,
        format!("cement board {}", words.length(trade.board_thickness.value)),
    ));
    notes.push(Note::on(
        PartKind::FinishCoat,
        format!(
            "base coat {}, finish coat {}",
            words.length(trade.base_coat.value),
            words.length(trade.finish_coat.value)
        ),
    ));
    notes.push(Note::on(
        PartKind::TopTrack,
        format!("tracks {}", trade.track.designator),
    ));
    notes.push(Note::on(
        PartKind::Tie,
        format!("tie {} beyond", trade.stud.designator),
    ));
    notes.push(Note::on(
        PartKind::Stud,
        format!(
            "studs {}, {} on centre at most",
            trade.stud.designator,
            words.length(trade.stud_spacing.value)
        ),
    ));
    notes.push(Note::on(
        PartKind::Sleeper,
        format!(
            "sleeper {} × {}, rot-proof, on shims where the ground falls",
            words.length(trade.sleeper_width.value),
            words.length(trade.sleeper_height.value)
        ),
    ));
    notes.push(ground(subject));
    notes.extend(brackets(subject));
    notes
}

fn slab(subject: &Subject) -> Note {
    let levels = &subject.plan.levels;
    let z = levels.slab_bottom + 0.25 * (levels.counter_top - levels.slab_bottom);
    let spans = subject.slab(subject.plan.counter.turndown_width + 10.0);
    let shares = [0.85, 0.6, 0.3].into_iter();
    let feet = shares.flat_map(|share| spans.iter().map(move |(a, b)| (a + (b - a) * share, z)));
    let feet: Vec<(f64, f64)> = feet.collect();
    Note::at(&feet, Words(subject.plan).slab())
}

fn mesh(subject: &Subject) -> Option<Note> {
    let (z, spans) = subject.mesh()?;
    let (low, high) = *spans.first()?;
    let at = [0.8, 0.6, 0.9, 0.4].map(|share| (low + (high - low) * share, z));
    Some(Note::at(&at, Words(subject.plan).mesh()?))
}

fn turndown(subject: &Subject) -> Option<Note> {
    let counter = &subject.plan.counter;
    let edges = subject.counter();
    // The working side is nearer to the notes; where the cutout is open it has no turndown here.
    let open = subject.cutout().is_some_and(|(c, _)| c.open);
    let half = counter.turndown_width / 2.0;
    let z = subject.plan.levels.slab_bottom - counter.turndown_depth / 2.0;
    let near = edges[0].1 && !open;
    let feet = [
        near.then_some(-edges[0].0 - half),
        edges[1].1.then_some(-edges[1].0 + half),
    ];
    let feet: Vec<(f64, f64)> = feet.into_iter().flatten().map(|x| (x, z)).collect();
    let words = Words(subject.plan);
    (!feet.is_empty()).then(|| {
        let text = format!(
            "turndown edge {} deep, {} wide",
            words.mm(counter.turndown_depth),
            words.mm(counter.turndown_width)
        );
        Note::at(&feet, text)
    })
}

fn envelope(subject: &Subject) -> Option<Note> {
    let bodies = subject.bodies();
    let (_, body) = bodies
        .iter()
        .find(|(_, b)| matches!(b.of, BodyOf::Appliance(_)))?;
    let (x0, x1) = (-body.v.1, -body.v.0);
    let at = |x: f64, z: f64| (x0 + (x1 - x0) * x, body.z.0 + (body.z.1 - body.z.0) * z);
    let feet = [at(0.92, 0.2), at(0.92, 0.6), at(0.7, 0.15)];
    Some(Note::at(
        &feet,
        "envelope of the appliance: its own instructions give its sizes and clearances".to_owned(),
    ))
}

fn ground(subject: &Subject) -> Note {
    let area = subject.window();
    let x = area.high.x - 20.0;
    let feet = [(x, -12.0), (x - 60.0, -12.0), (x - 120.0, -12.0)];
    let words = Words(subject.plan);
    let text = match subject.plan.design.site.surface.as_ref().map(|s| &s.value) {
        Some(Surface::Slab { thickness }) => {
            format!("existing concrete slab {}", words.length(thickness.value))
        }
        Some(Surface::Pavers { thickness, .. }) => {
            format!("pavers {} on bedding", words.length(thickness.value))
        }
        None => "ground; the file does not say what lies on it".to_owned(),
        _ => words.surface().to_owned(),
    };
    Note::at(&feet, text)
}

fn brackets(subject: &Subject) -> Option<Note> {
    let asked = subject.plan.design.counter.casting.brackets.as_ref()?;
    let [_, (far, _)] = subject.counter();
    let words = Words(subject.plan);
    let reach = asked.value.reach.value;
    // Where the counter passes the seats' face there are brackets under it, as the plan of the counter draws them.
    let overhangs = far - subject.finished()[1] > 0.5;
    overhangs.then(|| {
        Note::whole(format!(
            "Brackets under the overhang: {} long, {} apart at most (not drawn).",
            words.length(reach),
            words.length(asked.value.spacing.value)
        ))
    })
}
