//! Steel and sleepers by length, shims.

use super::row::points;
use super::tally::{At, Tally, count, length, many, mass};
use crate::catalog::Need;
use crate::catalog::density::STEEL;
use crate::catalog::practice::SHIMS_APART;
use crate::parts::{Part, PartKind};
use crate::units::Volume;
use std::collections::{BTreeMap, BTreeSet};

/// Steel by section and run, then sleepers and shims by run, then base channel by face.
pub(super) fn reckon(tally: &mut Tally) {
    let steel = |p: &&Part| p.group == crate::parts::Group::Framing && p.kind != PartKind::Sleeper;
    let members: Vec<&Part> = tally.assembly.parts.iter().filter(steel).collect();
    let sections: BTreeSet<&str> = members.iter().map(|p| p.section.as_str()).collect();
    for section in sections {
        for run in 0..tally.plan.runs.len() {
            let own = members
                .iter()
                .filter(|p| p.section == section && p.run == Some(run));
            let own: Vec<&Part> = own.copied().collect();
            let whole = own.iter().map(|p| p.length.mm()).sum();
            let reckoned = format!("{}, cut lengths", kinds(&own));
            let need = Need::Steel(section.to_owned());
            tally.add(Some(need), section, At::run(run), length(whole), reckoned);
            let volume = own.iter().map(|p| tally.volume(p)).sum();
            let weight = mass(STEEL.of(Volume::cubic_millimetres(volume)));
            let reckoned = format!(
                "{}, exact volume × {}",
                kinds(&own),
                STEEL.spell(tally.units())
            );
            let item = format!("{section}, weight");
            tally.add(None, &item, At::run(run), weight, reckoned);
        }
    }
    sleepers(tally);
    base_channel(tally);
}

fn sleepers(tally: &mut Tally) {
    for run in 0..tally.plan.runs.len() {
        let own = tally.parts(PartKind::Sleeper);
        let own: Vec<f64> = own
            .filter(|p| p.run == Some(run))
            .map(|p| p.length.mm())
            .collect();
        let shims = own.iter().map(|l| points(*l, 0.0, SHIMS_APART)).sum();
        let strips = many(own.len(), "strip");
        let need = Need::Sleeper;
        tally.add(
            Some(need),
            "sleeper",
            At::run(run),
            length(own.iter().sum()),
            format!("{strips} under the panels, cut lengths"),
        );
        let spacing = tally.spell(SHIMS_APART);
        tally.add(
            Some(Need::Shim),
            "shim",
            At::run(run),
            count(shims),
            format!("at both ends of {strips} and every {spacing} at most between"),
        );
    }
}

fn base_channel(tally: &mut Tally) {
    for (face, _) in tally.clad() {
        let pieces: Vec<f64> = tally
            .on_face(PartKind::BaseChannel, face)
            .map(|p| p.length.mm())
            .collect();
        let reckoned = format!(
            "{}, cut lengths to the mitres' tips",
            many(pieces.len(), "piece")
        );
        let at = tally.at_face(face);
        let whole = length(pieces.iter().sum());
        tally.add(Some(Need::BaseChannel), "base channel", at, whole, reckoned);
    }
}

/// How many of each kind, in words: `24 studs, 2 jambs`.
fn kinds(parts: &[&Part]) -> String {
    let mut counts: BTreeMap<PartKind, usize> = BTreeMap::new();
    for part in parts {
        *counts.entry(part.kind).or_default() += 1;
    }
    let words: Vec<_> = counts.iter().map(|(k, n)| many(*n, k.name())).collect();
    words.join(", ")
}
