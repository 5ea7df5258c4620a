//! The layout of one panel: its uprights, crosspieces and tracks.

use super::columns::{Column, ColumnFor, fill_grid};
use super::panel_checks as checks;
use super::{Crosspiece, CrosspieceKind, Panel, Sizes, Upright, UprightKind};
use crate::design::Design;
use crate::diagnostics::{Finding, Place};
use crate::units::Length;

/// An opening in the coordinates of a panel.
#[derive(Clone, Debug)]
pub(super) struct PanelOpening {
    pub(super) name: String,
    pub(super) place: Place,
    pub(super) p0: f64,
    pub(super) p1: f64,
    pub(super) z0: f64,
    pub(super) z1: f64,
    /// Interrupts the top track: the front of an appliance.
    pub(super) open_top: bool,
    /// Interrupts the bottom track: what stands on the ground.
    pub(super) open_bottom: bool,
    /// Has jambs, header and sill; otherwise studs only keep clear of it.
    pub(super) framed: bool,
}

impl PanelOpening {
    /// The heights in which no upright may stand between the jambs: the opening with the webs round it.
    fn blocked(&self, sizes: &Sizes) -> (f64, f64) {
        let t = sizes.track_thickness;
        (self.z0 - t, self.z1 + t)
    }

    /// True when a column stands between the jambs, on the tabs beside one of them.
    pub(super) fn folds_meet(&self, sizes: &Sizes, column: &Column) -> bool {
        let fold = sizes.fold + 1.0;
        let meets = |a: f64, b: f64| a < column.p1 - 1e-6 && column.p0 < b - 1e-6;
        meets(self.p0, self.p0 + fold) || meets(self.p1 - fold, self.p1)
    }

    pub(super) fn shares_p(&self, p0: f64, p1: f64) -> bool {
        self.p0 < p1 - 1e-6 && p0 < self.p1 - 1e-6
    }
}

/// What one panel must hold.
pub(super) struct Job<'a> {
    pub(super) design: &'a Design,
    pub(super) sizes: &'a Sizes,
    pub(super) length: f64,
    pub(super) openings: &'a [PanelOpening],
    /// Where two studs stand back to back for a panel that butts from outside.
    pub(super) doubled: &'a [f64],
    /// Heights of horizontal board joints.
    pub(super) joints: &'a [f64],
}

impl Job<'_> {
    pub(super) fn spell(&self, mm: f64) -> String {
        self.design
            .project
            .units
            .spell_with_unit(Length::millimetres(mm))
    }

    pub(super) fn framed(&self) -> impl Iterator<Item = &PanelOpening> {
        self.openings.iter().filter(|o| o.framed)
    }
}

/// Fills a panel.
pub(super) fn lay_out(job: &Job, panel: &mut Panel, findings: &mut Vec<Finding>) {
    let before = findings.len();
    for (i, opening) in job.openings.iter().enumerate() {
        checks::check_heights(job, i, opening, findings);
        checks::check_sides(job, opening, findings);
    }
    if findings.len() > before {
        return;
    }
    let mut columns = fixed_columns(job);
    checks::check_meeting(job, &columns, findings);
    checks::check_boxes(job, &columns, findings);
    if findings.len() > before {
        return;
    }
    fill_grid(job, &mut columns, findings);
    columns.sort_by(|a, b| a.p0.total_cmp(&b.p0));
    panel.uprights = columns.iter().flat_map(|c| pieces(job, c)).collect();
    panel.crosspieces = crosspieces(job);
    panel.blocking = blocking(job, panel);
    panel.bottom = uninterrupted(job, |o| o.open_bottom);
    panel.top = uninterrupted(job, |o| o.open_top);
}

/// End studs, doubled studs and jambs: the uprights whose place is given.
fn fixed_columns(job: &Job) -> Vec<Column> {
    let f = job.sizes.stud_flange;
    let column = |p0: f64, web_high: bool, stands_for: ColumnFor| Column {
        p0,
        p1: p0 + f,
        web_high,
        stands_for,
    };
    let mut columns = vec![
        column(0.0, false, ColumnFor::Place),
        column(job.length - f, true, ColumnFor::Place),
    ];
    for &p in job.doubled {
        columns.push(column(p - f, true, ColumnFor::Place));
        columns.push(column(p, false, ColumnFor::Place));
    }
    for (i, o) in job.openings.iter().enumerate().filter(|(_, o)| o.framed) {
        for (p0, web_high) in [(o.p0 - f, true), (o.p1, false)] {
            let same = columns.iter_mut().find(|c| {
                (c.p0 - p0).abs() < 1e-6
                    && c.web_high == web_high
                    && !matches!(c.stands_for, ColumnFor::Place)
            });
            match same {
                Some(Column {
                    stands_for: ColumnFor::Jamb(of),
                    ..
                }) => of.push(i),
                _ => columns.push(column(p0, web_high, ColumnFor::Jamb(vec![i]))),
            }
        }
    }
    columns
}

/// The uprights that a column leaves after the openings are taken out of it.
pub(super) fn pieces(job: &Job, column: &Column) -> Vec<Upright> {
    let s = job.sizes;
    let (bottom, top) = (
        s.frame_bottom + s.track_thickness,
        s.frame_top - s.track_thickness,
    );
    let mut blocks: Vec<_> = job
        .framed()
        .filter(|o| o.shares_p(column.p0, column.p1))
        .map(|o| o.blocked(s))
        .collect();
    blocks.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut found = Vec::new();
    let mut from = bottom;
    for (z0, z1) in blocks.into_iter().chain([(top, top)]) {
        let to = z0.min(top);
        if to - from > s.track_thickness {
            found.push((from, to));
        }
        from = from.max(z1);
    }
    found
        .into_iter()
        .map(|(z0, z1)| Upright {
            kind: match column.stands_for {
                ColumnFor::Jamb(ref of) if is_beside(job, of, z0, z1) => UprightKind::Jamb,
                _ if z0 == bottom && z1 == top => UprightKind::Stud,
                _ => UprightKind::Cripple,
            },
            p0: column.p0,
            p1: column.p1,
            z0,
            z1,
            web_high: column.web_high,
        })
        .collect()
}

/// True when an upright stands beside some of an opening's height.
fn is_beside(job: &Job, of: &[usize], z0: f64, z1: f64) -> bool {
    of.iter().any(|&i| {
        let o = &job.openings[i];
        z0 < o.z1 && o.z0 < z1
    })
}

/// Headers and sills of all framed openings.
fn crosspieces(job: &Job) -> Vec<Crosspiece> {
    let mut found = Vec::new();
    for (i, o) in job.openings.iter().enumerate().filter(|(_, o)| o.framed) {
        let piece = |kind, z, up| Crosspiece {
            kind,
            p0: o.p0,
            p1: o.p1,
            z,
            up,
            tab: tab(job, i, up),
        };
        if o.open_top {
            found.push(piece(CrosspieceKind::Header, o.z0, false));
            continue;
        }
        if !o.open_bottom {
            found.push(piece(CrosspieceKind::Sill, o.z0, false));
        }
        found.push(piece(CrosspieceKind::Header, o.z1, true));
    }
    found.sort_by(|a, b| a.p0.total_cmp(&b.p0).then(a.z.total_cmp(&b.z)));
    found
}

/// The tab that fits between an opening and what comes next above or below it.
fn tab(job: &Job, i: usize, up: bool) -> f64 {
    let s = job.sizes;
    let o = &job.openings[i];
    let mut room = if up {
        s.frame_top - o.z1 - s.track_thickness
    } else {
        o.z0 - s.frame_bottom - s.track_thickness
    };
    for other in job.framed().filter(|x| x.shares_p(o.p0, o.p1)) {
        let strip = if up { other.z0 - o.z1 } else { o.z0 - other.z1 };
        if strip > 0.0 {
            // Two tabs may meet on one jamb.
            room = room.min(strip / 2.0);
        }
    }
    s.tab.min(room - 2.0).max(0.0)
}

/// Blocking between neighbouring uprights behind the horizontal joints of the boards; a header, sill or opening at that
/// height takes its place.
fn blocking(job: &Job, panel: &Panel) -> Vec<(f64, f64, f64)> {
    let half = job.sizes.panel / 2.0;
    let mut found = Vec::new();
    for &z in job.joints {
        let (low, high) = (z - half, z + half);
        let mut beside: Vec<_> = panel
            .uprights
            .iter()
            .filter(|u| u.z0 < low && high < u.z1)
            .collect();
        beside.sort_by(|a, b| a.p0.total_cmp(&b.p0));
        for pair in beside.windows(2) {
            let (p0, p1) = (pair[0].p1, pair[1].p0);
            let in_opening = job.openings.iter().any(|o| {
                o.shares_p(p0, p1)
                    && o.z0 - job.sizes.track_flange < high
                    && low < o.z1 + job.sizes.track_flange
            });
            if p1 - p0 > 1.0 && !in_opening {
                found.push((p0, p1, z));
            }
        }
    }
    found
}

/// The stretches of track that the openings leave.
fn uninterrupted(job: &Job, cuts: impl Fn(&PanelOpening) -> bool) -> Vec<(f64, f64)> {
    let mut gaps: Vec<_> = job
        .openings
        .iter()
        .filter(|o| cuts(o))
        .map(|o| (o.p0, o.p1))
        .collect();
    gaps.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut from = 0.0;
    let mut found = Vec::new();
    for (p0, p1) in gaps {
        found.push((from, p0));
        from = p1;
    }
    found.push((from, job.length));
    found
}
