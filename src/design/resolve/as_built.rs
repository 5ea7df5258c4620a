//! The frame as measured, resolved.

use super::gather::{Gather, Limits, Usual};
use crate::design::{AsBuilt, MeasuredRun, Placed, Run, Taped};
use crate::diagnostics::Place;
use crate::parameters::{self, Dimension, Given};
use crate::units::Length;

/// How finely a tape can be read.
const FINE: Limits = Limits(0.1, 25.4);
/// Lengths of frames.
const LONG: Limits = Limits(25.4, 100_000.0);
/// Heights over a mark.
const HIGH: Limits = Limits(-10_000.0, 10_000.0);
/// How finely a tape is read: 1/16 in or 1 mm, common practice.
const READ: Usual = Usual(1.0 / 16.0, 1.0);

/// What was measured; `None` where nothing was.
pub(super) fn as_built(
    g: &mut Gather,
    given: &Given<parameters::AsBuilt>,
    runs: &[Run],
) -> Option<AsBuilt> {
    let Given::Yes(a, place) = given else {
        return None;
    };
    let tape = Placed {
        value: g
            .soft_length(&a.tape, FINE)
            .unwrap_or_else(|| g.usual(READ)),
        place: a.tape.place(),
    };
    g.is_there(&a.runs, place, "runs");
    let mut found: Vec<MeasuredRun> = Vec::new();
    for (m, at) in a.runs.entries() {
        let Some(run) = g.run_of(&m.run, at, runs) else {
            continue;
        };
        if found.iter().any(|f| f.run == run) {
            let said = format!("run '{}' is measured twice", runs[run].name.value);
            g.fail("as-built-twice", at, said, "keep one of the two entries");
            continue;
        }
        found.push(measured(g, m, at, run));
    }
    Some(AsBuilt {
        place: place.clone(),
        tape,
        runs: found,
    })
}

fn measured(g: &mut Gather, m: &parameters::MeasuredRun, at: &Place, run: usize) -> MeasuredRun {
    let nothing = parameters::Diagonals::default();
    let across = m.diagonals.value().unwrap_or(&nothing);
    let given: [&Given<Dimension>; 6] = [
        &m.working,
        &m.seating,
        &m.left,
        &m.right,
        &across.from_working_left,
        &across.from_working_right,
    ];
    let mut lengths = given.map(|l| g.optional_length(l, LONG));
    impossible(g, &mut lengths);
    let nothing = parameters::CornerHeights::default();
    let h = m.heights.value().unwrap_or(&nothing);
    let heights = [
        &h.working_left,
        &h.working_right,
        &h.seating_right,
        &h.seating_left,
    ];
    MeasuredRun {
        run,
        place: at.clone(),
        lengths,
        heights: heights.map(|h| g.optional_length(h, HIGH)),
    }
}

/// Leaves out diagonals that close no triangle with the two sides beside them.
fn impossible(g: &mut Gather, lengths: &mut [Option<Placed<Length>>; 6]) {
    let mm = |l: &Option<Placed<Length>>| l.as_ref().map(|l| l.value.mm());
    let known = [0, 1, 2, 3].map(|i| mm(&lengths[i]));
    let [working, seating, left, right] = known;
    // A diagonal with the pair of sides it closes on either hand.
    let pairs = [
        [(working, right), (left, seating)],
        [(working, left), (right, seating)],
    ];
    for (i, pairs) in [4, 5].into_iter().zip(pairs) {
        let Some(taped) = lengths[i].clone() else {
            continue;
        };
        let across = taped.value.mm();
        let open = pairs.into_iter().find_map(|(a, b)| {
            let (a, b) = (a?, b?);
            (across >= a + b || across <= (a - b).abs()).then_some((a, b))
        });
        let Some((a, b)) = open else { continue };
        let [a, b, d] = [a, b, across].map(|x| g.spell(Length::millimetres(x)));
        let found = format!(
            "no quadrilateral has a diagonal of {d} between sides of {a} and {b}: the {} is left out",
            Taped::ALL[i].name()
        );
        g.fail(
            "as-built-diagonal",
            &taped.place,
            found,
            "tape it and those two sides again",
        );
        lengths[i] = None;
    }
}
