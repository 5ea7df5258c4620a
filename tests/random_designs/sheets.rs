//! Sheet lists: every part that is cut from a sheet on exactly one of them, as large as its solid.

use islandwright::catalog::Need;
use islandwright::geometry::{Faceted, Outline, Point3, Region};
use islandwright::parts::{Assembly, PartKind};
use islandwright::plan::{FORM_THICKNESS, Plan};
use islandwright::takeoff::sheets::{Laying, SheetList, SheetPiece, sheet_lists};
use std::collections::{BTreeMap, BTreeSet};

/// Everything that is wrong with the sheet lists.
pub fn faults(plan: &Plan, assembly: &Assembly, surfaces: &[Faceted]) -> Vec<String> {
    let mut findings = Vec::new();
    let laying = Laying::of(plan, assembly);
    let lists = sheet_lists(plan, assembly, &laying, &mut findings);
    let mut faults = Vec::new();
    let too_large = lists.iter().filter(|l| !l.too_large.is_empty()).count();
    if findings.len() != too_large || findings.iter().any(|f| f.code != "sheet-small") {
        faults.push(format!(
            "{too_large} lists with too large pieces, said in {findings:?}"
        ));
    }
    for list in &lists {
        each_once(list, &mut faults);
        layouts(list, &mut faults);
    }
    marks(assembly, &lists, &mut faults);
    let step = plan.design.project.units.step().mm();
    for (list, piece) in lists
        .iter()
        .flat_map(|l| l.pieces.iter().map(move |p| (l, p)))
    {
        match piece.kind {
            Some(PartKind::Board) => board(assembly, surfaces, piece, step, &mut faults),
            Some(PartKind::EdgeForm | PartKind::CutoutForm) => {
                form(assembly, surfaces, (list, piece), step, &mut faults);
            }
            _ => {}
        }
    }
    segments(assembly, surfaces, &lists, step, &mut faults);
    substrate(plan, &lists, step, &mut faults);
    mesh(plan, &lists, step, &mut faults);
    faults
}

/// Every piece of a list on one sheet or too large, under a name of its own.
fn each_once(list: &SheetList, faults: &mut Vec<String>) {
    let laid = list
        .layouts
        .iter()
        .flat_map(|l| l.pieces.iter().map(|p| p.piece));
    let mut all: Vec<_> = laid.chain(list.too_large.iter().copied()).collect();
    all.sort_unstable();
    if !all.iter().copied().eq(0..list.pieces.len()) {
        faults.push(format!(
            "{}: pieces {all:?} of {}",
            list.material,
            list.pieces.len()
        ));
    }
    let names: BTreeSet<_> = list.pieces.iter().map(SheetPiece::name).collect();
    if names.len() != list.pieces.len() {
        faults.push(format!("{}: two pieces of one name", list.material));
    }
}

/// Pieces lie inside their sheet, a kerf apart, and the bound holds.
fn layouts(list: &SheetList, faults: &mut Vec<String>) {
    if list.bound > list.cost {
        faults.push(format!(
            "{}: {} below {}",
            list.material, list.cost, list.bound
        ));
    }
    for layout in &list.layouts {
        let (length, width) = list.stock[layout.stock].steps;
        let boxes: Vec<_> = layout
            .pieces
            .iter()
            .map(|p| [p.at.0, p.at.1, p.at.0 + p.size.0, p.at.1 + p.size.1])
            .collect();
        for (i, a) in boxes.iter().enumerate() {
            let inside = a[2] <= length && a[3] <= width;
            let apart = |b: &[u32; 4]| {
                (0..2).any(|k| a[k + 2] + list.kerf <= b[k] || b[k + 2] + list.kerf <= a[k])
            };
            if !inside || !boxes[i + 1..].iter().all(apart) {
                faults.push(format!("{}: {a:?} on {length} × {width}", list.material));
            }
        }
    }
}

/// Every board and form is on its list, the board once.
fn marks(assembly: &Assembly, lists: &[SheetList], faults: &mut Vec<String>) {
    let mut found: BTreeMap<&str, usize> = BTreeMap::new();
    for piece in lists.iter().flat_map(|l| &l.pieces) {
        *found.entry(&piece.mark).or_default() += 1;
    }
    for part in &assembly.parts {
        let count = found.get(part.mark.as_str()).copied().unwrap_or(0);
        let right = match part.kind {
            PartKind::Board => count == 1,
            PartKind::EdgeForm | PartKind::CutoutForm => count >= 1,
            _ => count == 0,
        };
        if !right {
            faults.push(format!("{} is {count} times on the lists", part.mark));
        }
    }
}

/// The sides of a part's own box, the longest first.
fn sides(assembly: &Assembly, surfaces: &[Faceted], piece: &SheetPiece) -> [f64; 3] {
    let Some(part) = piece.part.and_then(|p| assembly.parts.get(p)) else {
        return [0.0; 3];
    };
    let points = &surfaces[part.solid.0];
    let bounds = points
        .bounds()
        .map_or([Point3::origin(); 2], |b| [b.low, b.high]);
    let size = bounds[1] - bounds[0];
    let mut sides = [size.x, size.y, size.z];
    sides.sort_by(|a, b| b.total_cmp(a));
    sides
}

/// Whether a side in steps is one in millimetres rounded up, give or take the chords of a curve.
fn rounds_up(steps: u32, mm: f64, step: f64) -> bool {
    let side = f64::from(steps) * step;
    side >= mm - 1e-3 && side < mm + step + 0.5
}

fn board(
    assembly: &Assembly,
    surfaces: &[Faceted],
    piece: &SheetPiece,
    step: f64,
    faults: &mut Vec<String>,
) {
    let [a, b, _] = sides(assembly, surfaces, piece);
    if !rounds_up(piece.length, a, step) || !rounds_up(piece.width, b, step) {
        faults.push(format!("{} is {a} × {b}: {piece:?}", piece.mark));
    }
}

/// Layers and rectangle of a form hold its solid, and not a sheet more.
fn form(
    assembly: &Assembly,
    surfaces: &[Faceted],
    (list, piece): (&SheetList, &SheetPiece),
    step: f64,
    faults: &mut Vec<String>,
) {
    if piece.segment.is_some() {
        return;
    }
    let sides = sides(assembly, surfaces, piece);
    // The thinnest sheet on offer: a stack of it is never too low.
    let sheets = list.stock.iter().map(|s| s.thickness.mm());
    let sheet = sheets.fold(FORM_THICKNESS, f64::min);
    let layers = f64::from(piece.layer.map_or(1, |l| l.1));
    let thick = if layers > 1.0 {
        layers * sheet
    } else {
        FORM_THICKNESS
    };
    let is_plug = piece.kind == Some(PartKind::CutoutForm) && piece.may_turn;
    // A quarter of an inch may be formed by a bead instead.
    let holds = (0..3).any(|k| {
        let (i, j) = ((k + 1) % 3, (k + 2) % 3);
        let flat = [(i, j), (j, i)].iter().any(|(i, j)| {
            rounds_up(piece.length, sides[*i], step) && rounds_up(piece.width, sides[*j], step)
        });
        let high = sides[k];
        // A plug is packed up from below by less than a layer.
        let stacked = if is_plug {
            layers * sheet <= high + 0.2 && high < (layers + 1.0) * sheet
        } else {
            thick >= high - 6.5 && thick < high + FORM_THICKNESS
        };
        flat && stacked
    });
    if !holds {
        faults.push(format!("{} is {sides:?}: {piece:?}", piece.mark));
    }
}

/// The segments of a strip, layer by layer, add up to its length.
fn segments(
    assembly: &Assembly,
    surfaces: &[Faceted],
    lists: &[SheetList],
    step: f64,
    faults: &mut Vec<String>,
) {
    let mut sums = BTreeMap::new();
    for piece in lists.iter().flat_map(|l| &l.pieces) {
        if piece.segment.is_some() {
            let sum = sums
                .entry((piece.part, piece.layer))
                .or_insert((0, 0, piece));
            sum.0 += piece.length;
            sum.1 += 1;
        }
    }
    for (length, count, piece) in sums.into_values() {
        let long = sides(assembly, surfaces, piece)[0];
        if piece.segment.map(|s| s.1) != Some(count) || !rounds_up(length, long, step) {
            faults.push(format!(
                "{} is {long}, its {count} segments {length}",
                piece.mark
            ));
        }
    }
}

/// The pieces of the substrate have its area, and each its rectangle.
fn substrate(plan: &Plan, lists: &[SheetList], step: f64, faults: &mut Vec<String>) {
    let is_of_it = |p: &&SheetPiece| p.kind == Some(PartKind::Substrate);
    let mut area = 0.0;
    for piece in lists.iter().flat_map(|l| &l.pieces).filter(is_of_it) {
        let Some(region) = &piece.region else {
            faults.push(format!("{} has no shape", piece.mark));
            continue;
        };
        area += region.area();
        let bounds = region.outer.bounds();
        let (w, h) = (bounds.width(), bounds.height());
        let fits =
            |a: f64, b: f64| rounds_up(piece.length, a, step) && rounds_up(piece.width, b, step);
        if !fits(w, h) && !fits(h, w) {
            faults.push(format!("{} is {w} × {h}: {piece:?}", piece.mark));
        }
    }
    // Curves are cut up as chords within 0.005 mm of them.
    let whole = &plan.counter.substrate;
    let curves = std::iter::once(&whole.outer).chain(&whole.holes);
    let slack: f64 = curves.map(|o| 0.005 * o.perimeter()).sum();
    if (area - whole.area()).abs() > slack {
        faults.push(format!("substrate of {}, its pieces {area}", whole.area()));
    }
    for list in lists {
        let large = list.too_large.iter().map(|p| &list.pieces[*p]);
        let names = large.filter(is_of_it).map(SheetPiece::name);
        faults.extend(names.map(|n| format!("{n} is larger than a sheet")));
    }
}

/// Only mesh is of no part; its pieces are as large as they lie, and no point of the slab is farther from mesh than the cover.
fn mesh(plan: &Plan, lists: &[SheetList], step: f64, faults: &mut Vec<String>) {
    let cover = 38.1_f64.min(plan.counter.slab.thickness / 2.0);
    let mut reach = Vec::new();
    for list in lists {
        let of_it = list.need == Need::ReinforcingMesh;
        let wrong = |p: &&SheetPiece| p.part.is_none() != of_it || p.kind.is_none() != of_it;
        faults.extend(list.pieces.iter().filter(wrong).map(|p| format!("{p:?}")));
        if !of_it {
            continue;
        }
        for piece in &list.pieces {
            let Some(b) = piece.region.as_ref().map(|r| r.outer.bounds()) else {
                faults.push(format!("{} has no shape", piece.mark));
                continue;
            };
            let (long, short) = (b.width().max(b.height()), b.width().min(b.height()));
            if !rounds_up(piece.length, long, step) || !rounds_up(piece.width, short, step) {
                faults.push(format!("{} is {long} × {short}: {piece:?}", piece.mark));
            }
            let grown = cover + 0.01;
            reach.push(Outline::rectangle(
                b.low.x - grown,
                b.low.y - grown,
                b.high.x + grown,
                b.high.y + grown,
            ));
        }
    }
    let slab = Region::solid(Outline::polygon(&plan.counter.outline.flatten(0.1)));
    let bare: f64 = slab.minus(&reach).iter().map(Region::area).sum();
    if bare > 1.0 {
        faults.push(format!("{bare} mm² of the slab have no mesh"));
    }
}
