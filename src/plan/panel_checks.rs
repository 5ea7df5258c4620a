//! What a panel cannot hold, said with what would put it right.

use super::Upright;
use super::columns::{COLLAR, Column, ColumnFor};
use super::panel_layout::{Job, PanelOpening, pieces};
use crate::diagnostics::Finding;

/// Refuses an opening with no room for its header or sill.
pub(super) fn check_heights(job: &Job, i: usize, o: &PanelOpening, findings: &mut Vec<Finding>) {
    let s = job.sizes;
    let strip = if o.framed {
        s.least_strip()
    } else {
        s.track_flange + 1.0
    };
    let mut refuse = |found: String, hint: String| {
        findings.push(Finding::error("plan-opening", &o.place, found).hint(hint));
    };
    if !o.open_bottom && o.z0 - s.frame_bottom < strip - 1e-6 {
        refuse(
            format!(
                "'{}' leaves no room for a sill above the bottom track",
                o.name
            ),
            format!(
                "its lower edge must be {} above the datum or more{}",
                job.spell(s.frame_bottom + strip),
                if o.framed {
                    format!(", or {} to stand on the ground", job.spell(s.frame_bottom))
                } else {
                    String::new()
                }
            ),
        );
    }
    if !o.open_top && s.frame_top - o.z1 < strip - 1e-6 {
        refuse(
            format!(
                "'{}' leaves no room for a header under the top track",
                o.name
            ),
            format!(
                "its upper edge may be {} above the datum at most",
                job.spell(s.frame_top - strip)
            ),
        );
    }
    for other in &job.openings[..i] {
        let apart = (o.z0 - other.z1).max(other.z0 - o.z1);
        let strip = if o.framed && other.framed {
            s.least_strip()
        } else {
            s.track_flange + 1.0
        };
        if (o.framed || other.framed) && other.shares_p(o.p0, o.p1) && apart < strip - 1e-6 {
            refuse(
                format!(
                    "between '{}' and '{}' there is no room for header and sill",
                    o.name, other.name
                ),
                format!("leave {} between them", job.spell(strip)),
            );
        }
    }
}

/// Refuses an opening with no room for its jambs at the panel's ends.
pub(super) fn check_sides(job: &Job, o: &PanelOpening, findings: &mut Vec<Finding>) {
    let f = job.sizes.stud_flange;
    let needed = if o.framed { 2.0 * f } else { f + 2.0 };
    let room = o.p0.min(job.length - o.p1);
    if room < needed - 1e-6 {
        findings.push(
            Finding::error(
                "plan-opening",
                &o.place,
                format!(
                    "'{}' stands too near the end of its frame panel for a jamb",
                    o.name
                ),
            )
            .hint(format!(
                "move it {} away from the end",
                job.spell(needed - room)
            )),
        );
    }
}

/// Refuses jambs that would stand in another upright.
pub(super) fn check_meeting(job: &Job, columns: &[Column], findings: &mut Vec<Finding>) {
    for (i, a) in columns.iter().enumerate() {
        for b in &columns[i + 1..] {
            let together = a.p0 < b.p1 - 1e-6 && b.p0 < a.p1 - 1e-6;
            let ColumnFor::Jamb(of) = &b.stands_for else {
                continue;
            };
            let collide = |x: &Upright| {
                pieces(job, a)
                    .iter()
                    .any(|y| y.z0 < x.z1 - 1e-6 && x.z0 < y.z1 - 1e-6)
            };
            if together && pieces(job, b).iter().any(collide) {
                let o = &job.openings[of[0]];
                let other = match &a.stands_for {
                    ColumnFor::Jamb(of) => format!("the jamb of '{}'", job.openings[of[0]].name),
                    _ => "a stud at the corner".to_owned(),
                };
                findings.push(
                    Finding::error(
                        "plan-jambs",
                        &o.place,
                        format!("the jamb of '{}' stands in {other}", o.name),
                    )
                    .hint(format!(
                        "move or resize it so that two stud flanges ({}) fit between, or make their sides line up exactly",
                        job.spell(2.0 * job.sizes.stud_flange)
                    )),
                );
            }
        }
    }
    for column in columns {
        let ColumnFor::Jamb(of) = &column.stands_for else {
            continue;
        };
        if let Some(other) = job.framed().find(|o| o.folds_meet(job.sizes, column)) {
            let o = &job.openings[of[0]];
            findings.push(
                Finding::error(
                    "plan-jambs",
                    &o.place,
                    format!(
                        "the jamb of '{}' stands on the tabs at the side of '{}'",
                        o.name, other.name
                    ),
                )
                .hint(format!(
                    "make their sides line up exactly, or set one side {} or more inside the other",
                    job.spell(job.sizes.stud_flange + job.sizes.fold + 1.0)
                )),
            );
        }
    }
    for (i, o) in job.openings.iter().enumerate().filter(|(_, o)| o.framed) {
        let held = columns
            .iter()
            .filter(|c| matches!(&c.stands_for, ColumnFor::Jamb(of) if of.contains(&i)))
            .all(|c| pieces(job, c).iter().any(|u| holds(job, u, o)));
        if !held {
            findings.push(
                Finding::error(
                    "plan-jambs",
                    &o.place,
                    format!(
                        "a jamb of '{}' is cut off by the opening above or below it",
                        o.name
                    ),
                )
                .hint("make their sides line up exactly, or set one well inside the other"),
            );
        }
    }
}

/// Refuses a vent or box that would be cut where an upright with a place of its own stands.
pub(super) fn check_boxes(job: &Job, columns: &[Column], findings: &mut Vec<Finding>) {
    for o in job.openings.iter().filter(|o| !o.framed) {
        let (p0, p1) = (o.p0 - COLLAR, o.p1 + COLLAR);
        let met = columns.iter().find(|c| {
            c.p0 < p1 - 1e-6
                && p0 < c.p1 - 1e-6
                && pieces(job, c).iter().any(|u| u.z0 < o.z1 && o.z0 < u.z1)
        });
        let Some(column) = met else { continue };
        let stands = match &column.stands_for {
            ColumnFor::Jamb(of) => format!("the jamb of '{}'", job.openings[of[0]].name),
            _ => "a stud at the corner".to_owned(),
        };
        let (left, right) = (p1 - column.p0, column.p1 - p0);
        findings.push(
            Finding::error(
                "plan-jambs",
                &o.place,
                format!("'{}' would be cut where {stands} stands", o.name),
            )
            .hint(format!(
                "move it {} away from it",
                job.spell(left.min(right))
            )),
        );
    }
}

/// True when a jamb stands beside the whole opening.
fn holds(job: &Job, u: &Upright, o: &PanelOpening) -> bool {
    let t = job.sizes.track_thickness;
    u.z0 <= o.z0 - if o.open_bottom { -2.0 * t } else { 0.0 } + 1e-6
        && u.z1 >= o.z1 - if o.open_top { 2.0 * t } else { 0.0 } - 1e-6
}
