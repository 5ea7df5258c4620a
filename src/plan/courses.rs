//! Courses: the rows in which boards are laid on the faces.

use super::PlanLevels;
use crate::design::{Design, Trade};
use crate::diagnostics::Finding;
use crate::units::Length;

/// A course that is left over is not narrower than this share of a sheet: the last two are made equal instead.
const NARROWEST: f64 = 1.0 / 3.0;

/// The rows of boards between the bottom and the top of the frame, the same on every face.
///
/// Invariant: `bounds` rises; its first is the bottom of the frame, its last the top, and those between are the
/// middles of horizontal joints, where the framing puts blocking.
#[derive(Clone, Debug, PartialEq)]
pub struct Courses {
    /// Heights above the datum, millimetres; one more than there are courses.
    pub bounds: Vec<f64>,
    /// The longest piece along the face that a sheet gives, millimetres.
    pub sheet_along: f64,
    /// The highest piece that a sheet gives, millimetres.
    pub sheet_up: f64,
    /// The gap left at a joint, millimetres.
    pub gap: f64,
}

impl Courses {
    /// Lays out the courses: sheets lie on their long side, or stand where one course then reaches to the top and a
    /// sheet still reaches from stud to stud.
    ///
    /// Otherwise whole sheets from the bottom; were the last course a narrow strip, the last two share their height.
    pub fn of(trade: &Trade, levels: &PlanLevels) -> Self {
        let long = trade.board_length.mm().max(trade.board_width.mm());
        let short = trade.board_length.mm().min(trade.board_width.mm());
        let gap = trade.board_gap.mm();
        let height = levels.frame_top - levels.frame_bottom;
        let stands = short < height && height <= long && short >= least_along(trade);
        let (sheet_along, sheet_up) = if stands { (short, long) } else { (long, short) };
        Self {
            bounds: bounds(levels.frame_bottom, levels.frame_top, sheet_up, gap),
            sheet_along,
            sheet_up,
            gap,
        }
    }

    /// The middles of the horizontal joints, rising.
    pub fn joints(&self) -> &[f64] {
        self.bounds
            .get(1..self.bounds.len().saturating_sub(1))
            .unwrap_or(&[])
    }

    /// The lower and upper edge of the boards of each course, the gaps at joints taken off.
    pub fn rows(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        let last = self.bounds.len().saturating_sub(2);
        let half = self.gap / 2.0;
        self.bounds.windows(2).enumerate().map(move |(i, b)| {
            let low = if i == 0 { b[0] } else { b[0] + half };
            let high = if i == last { b[1] } else { b[1] - half };
            (low, high)
        })
    }
}

/// How far a sheet must reach along a face to end on a stud at both ends: the stud spacing, and at a corner the lap over
/// the next face and half the flange of the stud there.
fn least_along(trade: &Trade) -> f64 {
    trade.stud_spacing.mm() + trade.board_thickness.mm() + trade.stud.flange.mm() / 2.0
}

/// Refuses sheets that do not reach from stud to stud.
pub(super) fn check(design: &Design, levels: &PlanLevels, findings: &mut Vec<Finding>) {
    let trade = &design.trade;
    let along = Courses::of(trade, levels).sheet_along;
    let least = least_along(trade);
    if along < least {
        let spell = |mm: f64| {
            design
                .project
                .units
                .spell_with_unit(Length::millimetres(mm))
        };
        findings.push(
            Finding::error(
                "plan-boards",
                &trade.board_length.place,
                format!(
                    "a board {} long cannot reach from stud to stud with studs {} apart",
                    spell(along),
                    spell(trade.stud_spacing.mm())
                ),
            )
            .hint(format!(
                "use boards {} long or more, or set the studs closer",
                spell(least)
            )),
        );
    }
}

fn bounds(bottom: f64, top: f64, sheet: f64, gap: f64) -> Vec<f64> {
    let mut bounds = vec![bottom];
    // A sheet that is no sheet would go on for ever.
    if sheet > 1.0 && sheet > gap {
        let (mut low, mut joint) = (bottom, bottom + sheet + gap / 2.0);
        while low + sheet < top {
            bounds.push(joint);
            low = joint + gap / 2.0;
            joint = low + sheet + gap / 2.0;
        }
        if let [.., before, _] = bounds[..]
            && top - low < sheet * NARROWEST
        {
            let count = bounds.len();
            // The edge below the last two courses stands half a gap above the joint, but for the lowest course.
            let foot = if count > 2 {
                before + gap / 2.0
            } else {
                before
            };
            bounds[count - 1] = f64::midpoint(foot, top);
        }
    }
    bounds.push(top);
    bounds
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_sheet_is_one_course() {
        assert_eq!(bounds(50.0, 950.0, 900.0, 3.0), [50.0, 950.0]);
    }

    #[test]
    fn a_second_course_begins_a_gap_above_a_whole_sheet() {
        // 1500 high of 900 sheets: the first whole, 3 mm gap, the second 597.
        let bounds = bounds(50.0, 1550.0, 900.0, 3.0);
        assert_eq!(bounds, [50.0, 951.5, 1550.0]);
        let courses = Courses {
            bounds,
            sheet_along: 1200.0,
            sheet_up: 900.0,
            gap: 3.0,
        };
        let rows: Vec<_> = courses.rows().collect();
        assert_eq!(rows, [(50.0, 950.0), (953.0, 1550.0)]);
        assert_eq!(courses.joints(), [951.5]);
    }

    #[test]
    fn a_narrow_rest_is_shared_with_the_course_below() {
        // 1100 high of 900 sheets would leave 197, less than a third: halves of 550 about the joint instead.
        assert_eq!(bounds(0.0, 1100.0, 900.0, 3.0), [0.0, 550.0, 1100.0]);
        // Three courses of 400: 400 + 3 + 400 + 3 leave 14 of 820; the last two share the 417 above the first joint.
        assert_eq!(bounds(0.0, 820.0, 400.0, 3.0), [0.0, 401.5, 611.5, 820.0]);
    }

    #[test]
    fn a_sheet_of_nothing_is_one_course() {
        assert_eq!(bounds(0.0, 900.0, 0.0, 3.0), [0.0, 900.0]);
        assert_eq!(bounds(0.0, 900.0, f64::NAN, 3.0), [0.0, 900.0]);
    }

    #[test]
    fn a_sheet_that_does_not_reach_the_next_stud_is_refused() {
        use crate::design::sample::{design, mm, run};
        // Studs 400 apart, flange 31.75, board 12: 400 + 12 + 15.875 = 427.875.
        let refused = |length: f64| {
            let mut design = design(vec![run("cook", 2000.0, None, &[])]);
            design.trade.board_length = mm(length);
            design.trade.board_width = mm(300.0);
            let mut findings = Vec::new();
            check(&design, &PlanLevels::of(&design), &mut findings);
            findings.len()
        };
        assert_eq!((refused(427.8), refused(427.9)), (1, 0));
    }
}
