//! Columns: where along a panel uprights stand.

use super::panel_layout::Job;
use crate::diagnostics::Finding;

/// Why an upright stands where it does.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum ColumnFor {
    /// An end or a corner.
    Place,
    /// Beside these openings of the job.
    Jamb(Vec<usize>),
    /// The grid.
    Grid,
}

/// A line of uprights above each other, one stud flange wide.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Column {
    pub(super) p0: f64,
    pub(super) p1: f64,
    pub(super) web_high: bool,
    pub(super) stands_for: ColumnFor,
}

impl Column {
    fn middle(&self) -> f64 {
        f64::midpoint(self.p0, self.p1)
    }
}

/// How far a vent or box keeps from the studs beside it, for its collar.
pub(super) const COLLAR: f64 = 2.0;

/// Adds the columns of the grid, moved or doubled where something is in their way, so that no two neighbours are
/// farther apart than the spacing.
pub(super) fn fill_grid(job: &Job, columns: &mut Vec<Column>, findings: &mut Vec<Finding>) {
    let spacing = job.sizes.spacing;
    let half = job.sizes.stud_flange / 2.0;
    let obstacles = obstacles(job);
    let lines = (job.length / spacing).ceil() as usize;
    for k in 1..lines {
        let middle = k as f64 * spacing;
        if is_free(columns, &obstacles, middle - half, middle + half) {
            columns.push(grid_column(middle, half));
        }
    }
    columns.sort_by(|a, b| a.p0.total_cmp(&b.p0));
    let mut i = 0;
    while i + 1 < columns.len() {
        let (here, next) = (columns[i].middle(), columns[i + 1].middle());
        if next - here <= spacing + 1e-6 {
            i += 1;
            continue;
        }
        if let Some(middle) = between(job, columns, &obstacles, i) {
            columns.insert(i + 1, grid_column(middle, half));
        } else {
            refuse(job, here, next, findings);
            i += 1;
        }
    }
}

fn grid_column(middle: f64, half: f64) -> Column {
    Column {
        p0: middle - half,
        p1: middle + half,
        web_high: false,
        stands_for: ColumnFor::Grid,
    }
}

/// Stretches where no grid column may stand: the folds beside jambs, vents and boxes.
fn obstacles(job: &Job) -> Vec<(f64, f64)> {
    let margin = job.sizes.fold + 1.0;
    job.openings
        .iter()
        .flat_map(|o| {
            if o.framed {
                vec![(o.p0, o.p0 + margin), (o.p1 - margin, o.p1)]
            } else {
                vec![(o.p0 - COLLAR, o.p1 + COLLAR)]
            }
        })
        .collect()
}

fn is_free(columns: &[Column], obstacles: &[(f64, f64)], p0: f64, p1: f64) -> bool {
    let apart = |a: f64, b: f64| p1 <= a + 1e-6 || b <= p0 + 1e-6;
    columns.iter().all(|c| apart(c.p0, c.p1)) && obstacles.iter().all(|o| apart(o.0, o.1))
}

/// The middle of one more column in the gap after column `i`: hard beside the jamb, corner or box that pushed the grid
/// out of step, or else as far on as the spacing allows.
fn between(job: &Job, columns: &[Column], obstacles: &[(f64, f64)], i: usize) -> Option<f64> {
    let spacing = job.sizes.spacing;
    let half = job.sizes.stud_flange / 2.0;
    let (here, next) = (&columns[i], &columns[i + 1]);
    let fits = |m: &f64| {
        *m > here.middle()
            && *m < next.middle()
            && *m <= here.middle() + spacing + 1e-6
            && is_free(columns, obstacles, m - half, m + half)
    };
    let closes = |m: &f64| next.middle() - m <= spacing + 1e-6;
    let mut before: Vec<f64> = std::iter::once(next.p0)
        .chain(obstacles.iter().map(|o| o.0))
        .map(|p| p - half)
        .filter(fits)
        .collect();
    let mut beside: Vec<f64> = std::iter::once(here.p1)
        .chain(obstacles.iter().map(|o| o.1))
        .map(|p| p + half)
        .filter(|m| fits(m) && closes(m))
        .collect();
    before.sort_by(|a, b| b.total_cmp(a));
    beside.sort_by(f64::total_cmp);
    let on_grid = |c: &Column| c.stands_for == ColumnFor::Grid;
    let last = before.iter().copied().find(closes);
    let first = beside.first().copied();
    let doubled = if on_grid(next) {
        first.or(last)
    } else {
        last.or(first)
    };
    let farthest = Some(here.middle() + spacing).filter(fits);
    doubled.or(farthest).or(before.first().copied())
}

fn refuse(job: &Job, here: f64, next: f64, findings: &mut Vec<Finding>) {
    let middle = f64::midpoint(here, next);
    let nearest = job.openings.iter().min_by(|a, b| {
        let d = |o: &&super::panel_layout::PanelOpening| (f64::midpoint(o.p0, o.p1) - middle).abs();
        d(a).total_cmp(&d(b))
    });
    let Some(opening) = nearest else { return };
    findings.push(
        Finding::error(
            "plan-spacing",
            &opening.place,
            format!(
                "beside '{}' there is no place for a stud within the stud spacing",
                opening.name
            ),
        )
        .hint("move it so that a stud fits beside it, or make it narrower"),
    );
}

#[cfg(test)]
mod tests {
    use crate::design::sample::{design, mm, placed, run};
    use crate::design::{Opening, OpeningKind, Side, Station};
    use crate::diagnostics::Place;
    use crate::units::Length;

    fn opening(kind: OpeningKind, at: f64, width: f64, sill: f64) -> Opening {
        Opening {
            name: kind.name().to_owned(),
            kind,
            place: Place::default(),
            run: 0,
            side: Side::Working,
            station: placed(Station::FromLeft(Length::millimetres(at))),
            width: mm(width),
            height: mm(100.0),
            sill: mm(sill),
            flange: mm(0.0),
            body_depth: mm(0.0),
            hardware: crate::design::Hardware::default(),
        }
    }

    #[test]
    fn a_box_with_a_jamb_behind_it_is_refused() {
        // The door's jamb stands from 1300 to 1331.75 and reaches from track to track.
        let codes = |at: f64| {
            let mut island = design(vec![run("cook", 3000.0, None, &[])]);
            island.openings = vec![
                opening(OpeningKind::Door, 1000.0, 600.0, 200.0),
                opening(OpeningKind::Receptacle, at, 60.0, 600.0),
            ];
            let findings = crate::plan::lay_out(island).err().unwrap_or_default();
            findings.iter().map(|f| f.code).collect::<Vec<_>>()
        };
        assert_eq!(codes(1320.0), ["plan-jambs"]);
        assert_eq!(codes(1400.0), [""; 0]);
    }
}
