//! The meshes of an assembly, checked.

use super::defect::{Defect, Fault};
use super::{Instance, Selection};
use crate::geometry::{Faceted, Placement, Point3, Solid, Unsound};
use crate::parts::{Assembly, Group, Part};

/// Below this many shapes a second thread costs more than it brings.
const WORTH_SHARING: usize = 16;

/// The surface of each shape of an assembly, in the order of its solids.
///
/// Invariant: each surface is closed, faces outwards and has its solid's volume and box within the tolerance.
#[derive(Clone, Debug, PartialEq)]
pub struct Model {
    meshes: Vec<Faceted>,
}

impl Model {
    /// Makes and checks the surfaces; curves stay within `tolerance` millimetres.
    ///
    /// # Errors
    /// All parts whose surface is unsound; equal parts are named by the first of them.
    pub fn new(assembly: &Assembly, tolerance: f64) -> Result<Self, Vec<Defect>> {
        let made = all_faceted(&assembly.solids, tolerance);
        let mut meshes = Vec::with_capacity(made.len());
        let mut defects = Vec::new();
        for (number, result) in made.into_iter().enumerate() {
            match result {
                Ok(mesh) => meshes.push(mesh),
                Err(unsound) => {
                    meshes.push(Faceted::default());
                    defects.push(Defect {
                        mark: first_mark(assembly, number),
                        fault: Fault::Unsound(unsound),
                    });
                }
            }
        }
        let model = Self { meshes };
        defects.extend(model.beyond_single_precision(assembly));
        if defects.is_empty() {
            Ok(model)
        } else {
            Err(defects)
        }
    }

    /// The surfaces in the order of the assembly's solids.
    pub fn meshes(&self) -> &[Faceted] {
        &self.meshes
    }

    /// The parts of one group, or all of them, in the assembly's order.
    pub fn selection<'a>(&'a self, assembly: &'a Assembly, group: Option<Group>) -> Selection<'a> {
        self.chosen(assembly, |p| group.is_none_or(|g| p.group == g))
    }

    /// The parts that a question is answered with yes for, in the assembly's order.
    pub fn chosen<'a>(
        &'a self,
        assembly: &'a Assembly,
        wanted: impl Fn(&Part) -> bool,
    ) -> Selection<'a> {
        let wanted = assembly.parts.iter().filter(|p| wanted(p));
        let placed = wanted.filter_map(|part| {
            let mesh = self.meshes.get(part.solid.0)?;
            Some(Instance { part, mesh })
        });
        Selection::new(placed.collect())
    }

    /// Parts whose corners fall together when their places are rounded to single precision.
    fn beyond_single_precision(&self, assembly: &Assembly) -> Vec<Defect> {
        let all = self.selection(assembly, None);
        let coarse = all
            .instances()
            .iter()
            .filter(|i| !holds_single(i.mesh, &i.part.placement));
        coarse
            .map(|i| Defect {
                mark: i.part.mark.clone(),
                fault: Fault::TooFine,
            })
            .collect()
    }
}

/// The mark of the first part that has a shape.
fn first_mark(assembly: &Assembly, number: usize) -> String {
    let first = assembly.parts.iter().find(|p| p.solid.0 == number);
    first.map_or_else(|| format!("(shape {number})"), |p| p.mark.clone())
}

/// True when the corners of each triangle stay apart in single precision.
fn holds_single(mesh: &Faceted, placement: &Placement) -> bool {
    let single = |p: &Point3| (placement * p).map(|c| c as f32);
    let points: Vec<_> = mesh.points.iter().map(single).collect();
    mesh.triangles.iter().all(|t| {
        let [a, b, c] = t.corners.map(|i| points[i as usize]);
        a != b && b != c && c != a
    })
}

/// The surface of each solid, checked; two threads share the work when there is enough of it.
fn all_faceted(solids: &[Solid], tolerance: f64) -> Vec<Result<Faceted, Unsound>> {
    let one = |solid: &Solid| {
        let mesh = solid.faceted(tolerance);
        mesh.check_against(solid, tolerance).map(|()| mesh)
    };
    if solids.len() < WORTH_SHARING {
        return solids.iter().map(one).collect();
    }
    // Every other solid, for neighbours are alike: halves of the row would be of unequal weight.
    let every_other = |from: usize| {
        solids
            .iter()
            .skip(from)
            .step_by(2)
            .map(one)
            .collect::<Vec<_>>()
    };
    let (even, odd) = std::thread::scope(|scope| {
        let odd = scope.spawn(|| every_other(1));
        (every_other(0), odd.join())
    });
    let Ok(odd) = odd else {
        // A thread that cannot be had is no reason to fail.
        return solids.iter().map(one).collect();
    };
    let mut odd = odd.into_iter();
    even.into_iter()
        .flat_map(|e| [Some(e), odd.next()])
        .flatten()
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Vector3;
    use crate::parts::{Part, PartKind, Piece, SolidId};
    use crate::units::Length;

    fn part(mark: &str, group: Group, solid: usize, x: f64) -> Part {
        Part {
            mark: mark.to_owned(),
            kind: PartKind::Stud,
            group,
            run: Some(0),
            face: None,
            material: String::new(),
            section: String::new(),
            length: Length::ZERO,
            solid: SolidId(solid),
            placement: Placement::new(Vector3::new(x, 0.0, 0.0), Vector3::zeros()),
        }
    }

    fn many(count: usize) -> Assembly {
        Assembly::new((0..count).map(|i| Piece {
            part: part(&format!("P{i}"), Group::Framing, i, 0.0),
            solid: Solid::cuboid(10.0 + i as f64, 10.0, 10.0),
        }))
    }

    #[test]
    fn meshes_keep_the_order_of_the_solids_however_many() {
        for count in [0, 1, 15, 16, 17, 40] {
            let assembly = many(count);
            let model = Model::new(&assembly, 0.1).unwrap();
            assert_eq!(model.meshes().len(), count);
            for (mesh, solid) in model.meshes().iter().zip(&assembly.solids) {
                assert_eq!(mesh.bounds().unwrap(), solid.bounds());
            }
        }
    }

    #[test]
    fn a_shape_that_is_none_is_named_by_its_first_part() {
        let mut assembly = many(3);
        assembly.solids[1] = Solid::cuboid(10.0, 5.0, -1.0);
        assembly.parts.push(part("LATER", Group::Boards, 1, 0.0));
        let defects = Model::new(&assembly, 0.1).unwrap_err();
        assert_eq!(defects.len(), 1);
        assert_eq!(defects[0].mark, "P1");
        assert!(defects[0].to_string().starts_with("part P1: "));
    }

    #[test]
    fn a_part_too_far_away_for_its_detail_is_refused() {
        let mut assembly = many(1);
        assembly.parts.push(part("FAR", Group::Framing, 0, 1e12));
        let defects = Model::new(&assembly, 0.1).unwrap_err();
        assert_eq!(defects.len(), 1);
        assert_eq!(
            (defects[0].mark.as_str(), defects[0].fault),
            ("FAR", Fault::TooFine)
        );
    }

    #[test]
    fn a_selection_holds_its_group_in_order() {
        let mut assembly = many(2);
        assembly.parts.insert(1, part("B", Group::Boards, 0, 50.0));
        let model = Model::new(&assembly, 0.1).unwrap();
        let marks = |group| -> Vec<_> {
            let chosen = model.selection(&assembly, group);
            chosen
                .instances()
                .iter()
                .map(|i| i.part.mark.clone())
                .collect()
        };
        assert_eq!(marks(None), ["P0", "B", "P1"]);
        assert_eq!(marks(Some(Group::Framing)), ["P0", "P1"]);
        assert_eq!(marks(Some(Group::Boards)), ["B"]);
        assert!(marks(Some(Group::Coats)).is_empty());
    }
}
