//! Edge forms by profile, their mitres, and the counter's corners.

use super::tally::{At, Tally, count, length, many};
use crate::geometry::Solid;
use crate::parts::{Part, PartKind};
use crate::plan::SideKind;
use crate::takeoff::sheets::forms::{cleats, has_bead};
use crate::takeoff::territory::{length_within, slack, territories};
use std::collections::BTreeMap;

/// Lengths of the edge by run and profile, of form strips by run and section, then mitred ends, sealant, cleats, corners of the edge, and
/// cutout forms.
pub(super) fn reckon(tally: &mut Tally) {
    edges(tally);
    for run in 0..tally.plan.runs.len() {
        let mut sections: BTreeMap<&str, Vec<&Part>> = BTreeMap::new();
        for part in tally
            .parts(PartKind::EdgeForm)
            .filter(|p| p.run == Some(run))
        {
            sections
                .entry(part.section.as_str())
                .or_default()
                .push(part);
        }
        for (section, strips) in sections {
            let whole = strips.iter().map(|p| p.length.mm()).sum();
            let reckoned = format!("{}, longest sides", many(strips.len(), "strip"));
            tally.add(None, section, At::run(run), length(whole), reckoned);
        }
        let mitres = tally
            .parts(PartKind::EdgeForm)
            .filter(|p| p.run == Some(run))
            .map(|p| mitred_ends(tally.assembly.solid(p)))
            .sum();
        let reckoned = "ends of form strips that are not square, the edge's profile on each strip";
        tally.add(None, "form mitre", At::run(run), count(mitres), reckoned);
    }
    along_strips(tally);
    corners(tally);
    for run in 0..tally.plan.runs.len() {
        let forms = tally.parts(PartKind::CutoutForm);
        let forms = forms.filter(|p| p.run == Some(run)).count();
        let reckoned = "plugs, or four strips a cutout with sharp corners";
        tally.add(None, "cutout form", At::run(run), count(forms), reckoned);
    }
}

/// The exposed edge by run and profile, with its turndown and without.
fn edges(tally: &mut Tally) {
    let counter = &tally.plan.counter;
    let profile = tally.plan.design.counter.profile.value.name();
    for (run, bounds) in territories(tally.plan).iter().enumerate() {
        for (dropped, with) in [(true, " with turndown"), (false, "")] {
            let own = counter.sides.iter().filter(|s| s.kind == SideKind::Exposed);
            let own = own.filter(|s| s.dropped == dropped);
            let whole = own
                .map(|s| length_within(s.start, s.end, bounds, slack(tally.plan)))
                .sum();
            let item = format!("edge, {profile}{with}");
            let reckoned = "outermost line of the exposed sides, corners as if sharp";
            tally.add(None, &item, At::run(run), length(whole), reckoned);
        }
    }
}

/// The bead of sealant in the forms of eased edges, then the cleats behind butted strips.
fn along_strips(tally: &mut Tally) {
    let (design, assembly) = (&tally.plan.design, tally.assembly);
    for run in 0..tally.plan.runs.len() {
        let strips = tally.parts(PartKind::EdgeForm);
        let beaded = strips.filter(|p| p.run == Some(run) && has_bead(assembly, p));
        let whole = beaded.map(|p| p.length.mm()).sum();
        let reckoned = "longest sides of the strips whose cast edge is eased";
        tally.add(None, "sealant bead", At::run(run), length(whole), reckoned);
    }
    for run in 0..tally.plan.runs.len() {
        let reckoned = "joints of form strips that are longer than a sheet";
        let found = count(cleats(design, assembly, run));
        tally.add(None, "form cleat", At::run(run), found, reckoned);
    }
}

fn mitred_ends(solid: &Solid) -> usize {
    let Solid::Extrusion(strip) = solid else {
        return 0;
    };
    let ends = [strip.start, strip.end];
    ends.iter().filter(|e| e.slope != [0.0, 0.0]).count()
}

/// Corners between two exposed edges, outward and inward ones apart.
fn corners(tally: &mut Tally) {
    let counter = &tally.plan.counter;
    let n = counter.sides.len();
    let exposed = |i: usize| counter.sides[i % n].kind == SideKind::Exposed;
    let corners = (0..n).filter(|i| exposed(*i) && exposed(i + n - 1));
    let (outward, inward): (Vec<_>, Vec<_>) =
        corners.partition(|i| counter.slab.corner(*i).is_convex());
    let outward = (outward.len(), "edge corner, outward");
    for (found, item) in [outward, (inward.len(), "edge corner, inward")] {
        let reckoned = "corners of the counter between two exposed edges";
        tally.add(None, item, At::ISLAND, count(found), reckoned);
    }
}
