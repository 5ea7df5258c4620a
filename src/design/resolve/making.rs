//! How the counter is cast, the frame braced and the coats laid, resolved.

use super::amounts::{Range, SOME};
use super::gather::{Gather, Limits, Usual};
use super::soft::{flag, word};
use crate::design::{Backing, Bracing, Brackets, Casting, Making, Placed, Reinforcement, Run};
use crate::diagnostics::Place;
use crate::parameters::{self, Given};
use crate::units::{Stress, parse_slope, parse_stress};

/// Diameters of wires and bars.
const BAR: Limits = Limits(1.0, 40.0);
/// Spacings of wires, bars, brackets and joints.
const SPACED: Limits = Limits(10.0, 20_000.0);

/// Falls that mean anything.
const FALL: Range = Range {
    least: 0.0,
    most: 0.2,
    said: "0 % to 20 %",
};

const LIFTERS: Range = Range {
    least: 1.0,
    most: 100.0,
    said: "1 to 100",
};

/// How the counter is made.
pub(super) fn casting(g: &mut Gather, given: &Given<parameters::Counter>, runs: &[Run]) -> Casting {
    let empty = parameters::Counter::default();
    let c = given.value().unwrap_or(&empty);
    let strength = g.amount(&c.strength, &SOME, |t| parse_stress(t).map(Stress::mpa));
    Casting {
        strength: strength.map(|s| Placed {
            value: Stress::megapascals(s.value),
            place: s.place,
        }),
        air_entrained: flag(&c.air_entrained),
        reinforcement: reinforcement(g, &c.reinforcement),
        brackets: brackets(g, &c.brackets),
        joints: joints(g, &c.joints, runs),
        fall: g.amount(&c.fall, &FALL, parse_slope),
        drip: flag(&c.drip),
        elsewhere: flag(&c.elsewhere),
        lifters: g.whole(&c.lifters, &LIFTERS),
    }
}

fn reinforcement(g: &mut Gather, given: &Given<parameters::Reinforcement>) -> Reinforcement {
    let empty = parameters::Reinforcement::default();
    let r = given.value().unwrap_or(&empty);
    let mesh = g.optional_length(&r.mesh, BAR);
    let bars = g.optional_length(&r.bars, BAR);
    let mut spaced = |given, there: bool, usual| {
        let spacing = g.optional_length(given, SPACED);
        let value = g.usual(usual);
        let place = Place::default();
        spacing.or_else(|| there.then_some(Placed { value, place }))
    };
    let mesh_spacing = spaced(&r.mesh_spacing, mesh.is_some(), Usual(6.0, 150.0));
    let bar_spacing = spaced(&r.bar_spacing, bars.is_some(), Usual(12.0, 300.0));
    Reinforcement {
        mesh,
        mesh_spacing,
        cover: g.optional_length(&r.cover, Limits(0.0, 150.0)),
        corner_bars: flag(&r.corner_bars),
        bars,
        bar_spacing,
    }
}

fn brackets(g: &mut Gather, given: &Given<parameters::Brackets>) -> Option<Placed<Brackets>> {
    let Given::Yes(b, place) = given else {
        return None;
    };
    let spacing = g.entry_length(&b.spacing, place, "spacing", SPACED);
    let reach = g.entry_length(&b.reach, place, "reach", Limits(10.0, 1000.0));
    let value = Brackets {
        spacing: spacing?,
        reach: reach?,
    };
    Some(Placed {
        value,
        place: place.clone(),
    })
}

fn joints(
    g: &mut Gather,
    given: &Given<Vec<Given<parameters::Joint>>>,
    runs: &[Run],
) -> Vec<(usize, Placed<crate::units::Length>)> {
    let mut found = Vec::new();
    for (j, place) in given.entries() {
        let run = g.run_of(&j.run, place, runs);
        let most = run
            .and_then(|r| runs.get(r))
            .map_or(f64::MAX, |r| r.length.mm());
        let at = g.entry_length(&j.at, place, "at", Limits(0.0, most));
        if let (Some(run), Some(at)) = (run, at) {
            found.push((run, at));
        }
    }
    found.sort_by(|a, b| {
        (a.0, a.1.mm())
            .partial_cmp(&(b.0, b.1.mm()))
            .unwrap_or(std::cmp::Ordering::Equal)
    });
    found
}

/// Choices of the trade that only the checks read.
pub(super) fn making(
    g: &mut Gather,
    trade: &Given<parameters::Trade>,
    band: &Given<parameters::TileBand>,
) -> Making {
    let (no_trade, no_band) = (
        parameters::Trade::default(),
        parameters::TileBand::default(),
    );
    let t = trade.value().unwrap_or(&no_trade);
    let b = band.value().unwrap_or(&no_band);
    Making {
        bracing: word(&t.bracing, |w| match w {
            parameters::Bracing::Boards => Bracing::Boards,
            parameters::Bracing::Straps => Bracing::Straps,
        }),
        base_channel: g.optional_length(&t.base_channel, Limits(3.0, 150.0)),
        backing: word(&t.backing, |w| match w {
            parameters::Backing::Board => Backing::Board,
            parameters::Backing::Lath => Backing::Lath,
            parameters::Backing::Masonry => Backing::Masonry,
            parameters::Backing::Concrete => Backing::Concrete,
        }),
        coat_joints: g.optional_length(&t.coat_joints, SPACED),
        tile_joints: g.optional_length(&b.joint_every, SPACED),
        tile_joint_width: g.optional_length(&b.joint_width, Limits(0.0, 100.0)),
    }
}
