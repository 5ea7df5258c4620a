//! Whether two solids share space, by a mesh library that nobody here wrote.

use islandwright::geometry::{Bounds3, Faceted};
use islandwright::parts::{Assembly, Group, Part, PartKind};
use manifold_rust::manifold::Manifold;
use manifold_rust::types::{Error, MeshGL64};

/// Curves are cut into chords this close, millimetres.
pub const CHORDS: f64 = 0.05;
/// What two solids that touch may share, millimetres thick.
const CONTACT: f64 = 0.001;
/// How high an upright's square end may stand in the bends of its track, millimetres.
const NESTING: f64 = 0.5;

/// One solid in its place.
struct Placed<'a> {
    part: &'a Part,
    surface: Faceted,
    bounds: Bounds3,
    solid: Option<Manifold>,
}

impl Placed<'_> {
    /// Made once it is needed: most solids touch few others.
    fn solid(&mut self) -> Manifold {
        let surface = &self.surface;
        self.solid.get_or_insert_with(|| manifold(surface)).clone()
    }
}

fn manifold(surface: &Faceted) -> Manifold {
    let mesh = MeshGL64 {
        num_prop: 3,
        vert_properties: surface
            .points
            .iter()
            .flat_map(|p| [p.x, p.y, p.z])
            .collect(),
        tri_verts: surface
            .triangles
            .iter()
            .flat_map(|t| t.corners.map(u64::from))
            .collect(),
        ..MeshGL64::default()
    };
    let made = Manifold::from_mesh_gl64(&mesh);
    assert!(made.status() == Error::NoError, "a solid is no manifold");
    made
}

/// The thickness of what two solids share, as of a thin sheet: its volume over one of its two skins.
fn thickness(shared: &Manifold) -> f64 {
    let (volume, area) = (shared.volume(), shared.surface_area());
    if volume > 0.0 && area > 0.0 {
        2.0 * volume / area
    } else {
        0.0
    }
}

/// Uprights stand in tracks; slab, substrate and forms meet in curves that each cuts into chords of its own.
fn is_allowed(a: &Part, b: &Part, shared: &Manifold) -> bool {
    use PartKind::{BottomTrack, Cripple, Header, Jamb, Sill, Stud, TopTrack};
    let either = |kinds: &[PartKind]| kinds.contains(&a.kind) || kinds.contains(&b.kind);
    if either(&[Stud, Jamb, Cripple]) && either(&[BottomTrack, TopTrack, Header, Sill]) {
        let b = shared.bounding_box();
        let sides = [b.max.x - b.min.x, b.max.y - b.min.y, b.max.z - b.min.z];
        return sides.iter().any(|side| *side <= NESTING);
    }
    let is_curved = |part: &Part| matches!(part.group, Group::Counter | Group::Forms);
    is_curved(a) && is_curved(b) && thickness(shared) <= CHORDS
}

/// Every pair of solids that share more than touching ones may.
pub fn overlaps(assembly: &Assembly, surfaces: &[Faceted]) -> Vec<String> {
    let mut placed: Vec<Placed> = assembly
        .parts
        .iter()
        .map(|part| {
            let surface = surfaces[part.solid.0].moved(&part.placement);
            let bounds = surface.bounds().expect("a solid has points");
            Placed {
                part,
                surface,
                bounds,
                solid: None,
            }
        })
        .collect();
    placed.sort_by(|a, b| a.bounds.low.x.total_cmp(&b.bounds.low.x));
    let mut faults = Vec::new();
    for i in 0..placed.len() {
        for j in i + 1..placed.len() {
            if placed[j].bounds.low.x >= placed[i].bounds.high.x - CONTACT {
                break;
            }
            let groups = [placed[i].part.group, placed[j].part.group];
            let never_together =
                groups.contains(&Group::Forms) && groups.contains(&Group::Appliances);
            if never_together || !placed[i].bounds.overlaps(&placed[j].bounds, CONTACT) {
                continue;
            }
            let shared = placed[i].solid().intersection(&placed[j].solid());
            let (a, b) = (placed[i].part, placed[j].part);
            if thickness(&shared) > CONTACT && !is_allowed(a, b, &shared) {
                faults.push(format!(
                    "{} {:?} and {} {:?} share {:.1} mm³, {:.3} mm thick, at {:?}",
                    a.mark,
                    a.kind,
                    b.mark,
                    b.kind,
                    shared.volume(),
                    thickness(&shared),
                    shared.bounding_box()
                ));
            }
        }
    }
    faults
}
