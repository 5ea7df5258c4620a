//! The slab: volume and weight by run, whole, and by area of counter.

use super::rim::{ShareOfSlab, slab_shares};
use super::tally::{At, Tally, area, mass, volume};
use crate::catalog::{Density, Need, density};
use crate::parts::PartKind;
use crate::takeoff::Amount;
use crate::units::{Area, Notation, Volume};

/// Square millimetres.
const SQUARE_METRE: f64 = 1.0e6;
/// Square millimetres.
const SQUARE_FOOT: f64 = 304.8 * 304.8;

/// Fresh and dried, with what is said of them.
const STATES: [(&str, Density); 2] = [
    ("slab, fresh", density::CONCRETE_FRESH),
    ("slab, dried", density::CONCRETE_DRIED),
];

/// Each run's share of the slab's exact volume.
pub(super) fn of_runs(tally: &Tally) -> Vec<ShareOfSlab> {
    let whole = tally.parts(PartKind::Slab).map(|p| tally.volume(p)).sum();
    slab_shares(tally.plan, whole)
}

/// Concrete, counter area, and the slab's weights.
pub(super) fn reckon(tally: &mut Tally) {
    let shares = of_runs(tally);
    for (run, share) in shares.iter().enumerate() {
        let rim = Amount::Volume(Volume::cubic_millimetres(share.rim.abs())).spell(tally.units());
        let (edge, sign) = if tally.plan.counter.turndown.is_empty() {
            ("edge profile", if share.rim < 0.0 { "less" } else { "and" })
        } else {
            (
                "turndown and edge",
                if share.rim < 0.0 { "less" } else { "and" },
            )
        };
        let flat = Amount::Area(Area::square_millimetres(share.area)).spell(tally.units());
        let thick = tally.spell(tally.plan.counter.slab.thickness);
        let reckoned =
            format!("its share of the solid: {flat}, cutouts out, × {thick}, {sign} {edge} {rim}");
        let at = At::run(run);
        tally.add(
            Some(Need::Concrete),
            "slab",
            at,
            volume(share.volume()),
            reckoned,
        );
        tally.add(
            None,
            "counter area",
            at,
            area(share.area),
            "top of the slab within its outermost line, cutouts taken off",
        );
    }
    for (item, density) in STATES {
        weights(tally, item, density, &shares);
    }
}

/// By run, whole where there are several, and by the area of the counter.
fn weights(tally: &mut Tally, item: &str, density: Density, shares: &[ShareOfSlab]) {
    let weight = |mm3: f64| density.of(Volume::cubic_millimetres(mm3));
    let said = density.spell(tally.units());
    for (run, share) in shares.iter().enumerate() {
        let reckoned = format!("its volume × {said}");
        let amount = mass(weight(share.volume()));
        tally.add(None, item, At::run(run), amount, reckoned);
    }
    let whole: f64 = shares.iter().map(|s| s.volume()).sum();
    if shares.len() > 1 {
        tally.add(
            None,
            &format!("{item}, all runs"),
            At::ISLAND,
            mass(weight(whole)),
            format!("exact volume of the whole slab × {said}"),
        );
    }
    let counter: f64 = shares.iter().map(|s| s.area).sum();
    let each = |mm2: f64| weight(whole) * (mm2 / counter);
    let by_area = "weight of the whole slab by the counter area";
    let (unit, amount, reckoned) = match tally.units() {
        Notation::Metric => ("m²", each(SQUARE_METRE), by_area.to_owned()),
        Notation::Imperial => (
            "ft²",
            each(SQUARE_FOOT),
            format!("{by_area}; {:.1} kg/m²", each(SQUARE_METRE).kg()),
        ),
    };
    let item = format!("{item}, each {unit} of counter");
    tally.add(None, &item, At::ISLAND, mass(amount), reckoned);
}
