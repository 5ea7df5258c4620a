//! From which corner the island is looked at.

use crate::drawing::hidden::Corner;
use crate::geometry::Vector2;
use crate::plan::{Face, Plan};

/// Counts as much as so many millimetres of face: an opening wants to be seen.
const OPENING: f64 = 1500.0;

/// The direction in plan from the island to the eye.
pub(super) fn towards(corner: Corner) -> Vector2 {
    let sign = |positive: bool| if positive { 1.0 } else { -1.0 };
    Vector2::new(sign(corner.right), sign(corner.back))
}

/// True for a face that is turned to the eye.
pub(super) fn shows(face: &Face, corner: Corner) -> bool {
    !face.wall && face.outward.dot(&towards(corner)) > 1e-6
}

/// The corner from which most is seen: the longest faces and the most openings; the first of equals.
pub(in crate::drawing) fn best(plan: &Plan) -> Corner {
    let worth = |corner: Corner| -> f64 {
        let faces = plan.faces.iter().filter(|f| shows(f, corner));
        let worth = faces.map(|f| f.length + OPENING * f.openings.len() as f64);
        worth.sum()
    };
    let [first, rest @ ..] = Corner::ALL;
    rest.into_iter().fold(first, |best, corner| {
        if worth(corner) > worth(best) + 1e-6 {
            corner
        } else {
            best
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Side, Turn, sample};

    #[test]
    fn the_working_side_is_seen_where_a_wall_stands_behind() {
        let run = sample::run("cook", 3000.0, None, &[Side::Seating]);
        let plan = crate::plan::lay_out(sample::design(vec![run])).unwrap();
        // The working side looks towards -y; both ends are equal.
        assert!(!best(&plan).back);
    }

    #[test]
    fn both_legs_of_a_corner_show_their_working_sides() {
        // The second run turns right, towards -y; without openings the outer sides are longer and win: with walls there
        // the eye stands inside the corner, at -x and -y.
        let wall = [Side::Seating];
        let runs = vec![
            sample::run("ash", 3000.0, None, &wall),
            sample::run("birch", 3000.0, Some(Turn::Right), &wall),
        ];
        let plan = crate::plan::lay_out(sample::design(runs)).unwrap();
        assert_eq!(
            best(&plan),
            Corner {
                right: false,
                back: false
            }
        );
    }
}
