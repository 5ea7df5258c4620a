//! The quantities of any design: finite, positive, adding up to the whole, and no more than there is room for.

use islandwright::catalog::Need;
use islandwright::geometry::Solid;
use islandwright::parts::{Assembly, PartKind};
use islandwright::plan::Plan;
use islandwright::takeoff::{Amount, Quantity};

/// What is wrong with the quantities.
pub fn faults(plan: &Plan, assembly: &Assembly, quantities: &[Quantity]) -> Vec<String> {
    let mut found = Vec::new();
    found.extend(quantities.iter().filter_map(unsound));
    found.extend(wholes(plan, assembly, quantities));
    found.extend(areas(plan, quantities));
    found.extend(counts(plan, assembly, quantities));
    found
}

fn unsound(q: &Quantity) -> Option<String> {
    let sound = q.amount.size().is_finite() && q.amount.size() > 0.0 && !q.reckoned.is_empty();
    (!sound).then(|| format!("unsound: {q:?}"))
}

fn sum<'a>(quantities: impl Iterator<Item = &'a Quantity>) -> f64 {
    quantities.map(|q| q.amount.size()).sum()
}

fn of<'a>(quantities: &'a [Quantity], item: &'a str) -> impl Iterator<Item = &'a Quantity> {
    quantities.iter().filter(move |q| q.item == item)
}

/// Rows of runs and faces against what the parts are as wholes.
fn wholes(plan: &Plan, assembly: &Assembly, quantities: &[Quantity]) -> Vec<String> {
    let volume = |kind: PartKind| -> f64 {
        let parts = assembly.parts.iter().filter(|p| p.kind == kind);
        parts.map(|p| assembly.solid(p).volume()).sum()
    };
    let trade = &plan.design.trade;
    let cutouts: f64 = plan
        .counter
        .slab
        .cutouts
        .iter()
        .map(islandwright::geometry::Outline::area)
        .sum();
    let steel = |section: &str| -> f64 {
        let parts = assembly.parts.iter().filter(|p| p.section == section);
        parts.map(|p| p.length.mm()).sum()
    };
    let (stud, track) = (&trade.stud.designator, &trade.track.designator);
    let sheet = trade.substrate_thickness.mm();
    let cases = [
        ("slab", volume(PartKind::Slab)),
        ("base coat, mixed", volume(PartKind::BaseCoat)),
        ("finish coat, mixed", volume(PartKind::FinishCoat)),
        ("substrate", volume(PartKind::Substrate) / sheet),
        ("counter area", plan.counter.outline.area() - cutouts),
        (
            "board",
            volume(PartKind::Board) / trade.board_thickness.mm(),
        ),
        (stud, steel(stud)),
        (track, steel(track)),
    ];
    cases
        .iter()
        .filter_map(|(item, whole)| {
            let found = sum(of(quantities, item));
            let same = (found - whole).abs() <= 1e-9 * whole.abs().max(1.0);
            (!same).then(|| format!("{item}: {found} for a whole of {whole}"))
        })
        .collect()
}

/// No layer of a face is larger than the face with its corner laps, and boards no larger than the base coat over them
/// with the coat's laps.
fn areas(plan: &Plan, quantities: &[Quantity]) -> Vec<String> {
    let height = plan.levels.frame_top - plan.levels.frame_bottom;
    let thick = plan.design.trade.cladding().mm();
    let mut found = Vec::new();
    for (index, face) in plan.faces.iter().enumerate() {
        let most = (face.length + 2.0 * thick) * height;
        for item in ["board", "base coat", "finish coat", "thinset"] {
            let own = of(quantities, item).filter(|q| q.face == Some(index));
            let area = sum(own);
            if area > most + 1e-6 || (face.wall && area > 0.0) {
                found.push(format!("{item} on {}: {area} of {most}", face.name));
            }
        }
    }
    found
}

fn counts(plan: &Plan, assembly: &Assembly, quantities: &[Quantity]) -> Vec<String> {
    let mut found = Vec::new();
    let parts = |kind: PartKind| {
        assembly
            .parts
            .iter()
            .filter(move |p| p.kind == kind)
            .count()
    };
    // Every upright stands in something at both ends, with two screws each.
    let uprights: usize = plan.panels.iter().map(|p| p.uprights.len()).sum();
    let screws = sum(of(quantities, "steel screw, uprights"));
    if (screws - 4.0 * uprights as f64).abs() > 0.5 {
        found.push(format!("{screws} screws for {uprights} uprights"));
    }
    let tiles = sum(of(quantities, "tile"));
    if (tiles - parts(PartKind::Tile) as f64).abs() > 0.5 {
        found.push(format!("{tiles} tiles for {}", parts(PartKind::Tile)));
    }
    // Every board of some size is held by four screws at least, and by no more than one for each 60 mm square.
    let boards = assembly.parts.iter().filter(|p| p.kind == PartKind::Board);
    let large = boards.filter(|p| match assembly.solid(p) {
        Solid::Extrusion(s) => {
            let b = s.profile.outer.bounds();
            b.width().min(b.height()) > 300.0
        }
        _ => false,
    });
    let screws = sum(quantities
        .iter()
        .filter(|q| q.item == "board screw, boards"));
    let area: f64 = sum(of(quantities, "board"));
    if screws < 4.0 * large.count() as f64 || screws > area / 3600.0 + 100.0 {
        found.push(format!("{screws} board screws for {area} mm²"));
    }
    let things = quantities
        .iter()
        .filter(|q| matches!(q.need, Some(Need::Thing(_))))
        .map(|q| q.amount);
    let things: Vec<Amount> = things.collect();
    let listed = plan.design.appliances.len() + plan.design.openings.len();
    if things.len() != listed || things.iter().any(|a| *a != Amount::Count(1)) {
        found.push(format!("{} things listed for {listed}", things.len()));
    }
    found
}
