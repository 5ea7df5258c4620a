//! The readings fitted, and the wrong one among them.

use super::{Follow, FrameAsBuilt, Push, RunAsBuilt, Slip, Suspect, TapedLength};
use crate::design::{AsBuilt, Design, Taped, Turn};
use crate::geometry::{Adjusted, Measured, Network, Observation, Point2};
use crate::plan::RunPlan;
use nalgebra::Isometry2;
use std::collections::BTreeSet;

/// How well a frame's sides keep to the plan: a standard deviation of 3/16 in, common practice.
const SIDE_KEEPS: f64 = 4.7625;
/// How well its diagonals do: half an inch, common practice; a frame is squared after it is framed.
const DIAGONAL_KEEPS: f64 = 12.7;
/// How well a mark is put where a string along a side meets another side: a sixteenth of an inch, common practice.
const STRING: f64 = 1.5875;
/// A reading is set aside when that brings the sum of squares down by at least so much: the square of 3.29, which one sound
/// reading in a thousand passes (data snooping after Baarda, value from memory).
const DROP: f64 = 10.83;
/// Two readings whose drops differ by less than this cannot be told apart.
const CLEAR: f64 = 2.0;
/// Islands of more runs than this are not fitted; nobody builds them.
const MOST_RUNS: usize = 6;

/// A reading: number of the run and of the length in [`Taped::ALL`].
type Key = (usize, usize);

/// What is fitted.
struct Frame<'a> {
    /// The plan's lengths of each run.
    planned: Vec<[f64; 6]>,
    /// What was read of each run; nothing where a run cannot be solved by itself.
    read: Vec<[Option<f64>; 6]>,
    /// The numbers of each run's corners among the points.
    corners: Vec<[usize; 4]>,
    /// Corners of one run that stand on a side of another.
    on_line: Vec<[usize; 3]>,
    /// Where the plan has the points.
    points: Vec<Point2>,
    as_built: &'a AsBuilt,
}

/// Fits the readings of a design; `None` where nothing was measured.
pub(super) fn solve(design: &Design, runs: &[RunPlan]) -> Option<FrameAsBuilt> {
    let as_built = design.as_built.as_ref()?;
    let frame = Frame::new(design, as_built, runs);
    let mut aside = BTreeSet::new();
    let mut found = Vec::new();
    let is_solvable = runs.len() <= MOST_RUNS && frame.read.iter().flatten().any(Option::is_some);
    let mut fit = None;
    if is_solvable {
        found = frame.snoop(&mut aside);
        fit = frame.fit(&aside, false, &frame.points);
    }
    let solved = fit.is_some();
    let points = fit.as_ref().map_or(&frame.points, |f| &f.points);
    let points = laid_on(&runs[0], frame.corners.first(), points);
    let checks = fit.as_ref().map_or(&[][..], |f| &f.checks);
    let own: Vec<RunAsBuilt> = (0..runs.len())
        .map(|i| frame.run(i, solved, &points, &aside, checks))
        .collect();
    let suspects = found.into_iter().map(|(key, rival)| {
        let length = own[key.0].lengths[key.1];
        let (read, others) = (length.read.unwrap_or_default(), length.adjusted);
        // How well the others know it: a few divisions of the tape.
        let sure = 3.0 * frame.deviation();
        Suspect {
            run: key.0,
            taped: Taped::ALL[key.1],
            read,
            others,
            slip: Slip::of(read - others, sure, design.project.units),
            rival: rival.map(|(run, k)| (run, Taped::ALL[k])),
        }
    });
    Some(FrameAsBuilt {
        suspects: suspects.collect(),
        redundancy: fit.as_ref().map_or(0, |f| f.redundancy),
        deviation: frame.deviation(),
        follow: if solved {
            Follow::AsPlanned
        } else {
            Follow::Unsolved
        },
        runs: own,
    })
}

/// The points moved so that the first run's working side lies on the plan's, its left corner in its place.
fn laid_on(first: &RunPlan, corners: Option<&[usize; 4]>, points: &[Point2]) -> Vec<Point2> {
    let Some([left, right, ..]) = corners.copied() else {
        return points.to_vec();
    };
    let is = points[right] - points[left];
    let turn = is.perp(&first.along).atan2(is.dot(&first.along));
    let turned = Isometry2::rotation(turn);
    let shift = first.origin - turned * points[left];
    points.iter().map(|p| turned * p + shift).collect()
}

impl<'a> Frame<'a> {
    fn new(design: &Design, as_built: &'a AsBuilt, runs: &[RunPlan]) -> Self {
        let mut frame = Self {
            planned: Vec::new(),
            read: Vec::new(),
            corners: Vec::new(),
            on_line: Vec::new(),
            points: Vec::new(),
            as_built,
        };
        for (i, run) in runs.iter().enumerate() {
            let across = run.length.hypot(run.depth);
            frame
                .planned
                .push([run.length, run.length, run.depth, run.depth, across, across]);
            let measured = as_built.runs.iter().find(|m| m.run == i);
            let read = measured.map_or([None; 6], |m| {
                std::array::from_fn(|k| m.lengths[k].as_ref().map(|l| l.value.mm()))
            });
            let enough = read.iter().flatten().count() >= 5;
            frame.read.push(if enough { read } else { [None; 6] });
            frame.add_corners(run, i, design.runs[i].turn.as_ref().map(|t| t.value));
        }
        frame
    }

    /// The corners of a run: it shares one with the run before it, and each has one corner on a side of the other.
    fn add_corners(&mut self, run: &RunPlan, i: usize, turn: Option<Turn>) {
        let first = self.points.len();
        let before = i.checked_sub(1).map(|k| self.corners[k]);
        let shared = before.zip(turn).map(|(b, turn)| match turn {
            Turn::Left => (0, b[1]),
            Turn::Right => (3, b[2]),
        });
        let places = [
            (0.0, 0.0),
            (run.length, 0.0),
            (run.length, run.depth),
            (0.0, run.depth),
        ];
        let mut own = [first; 4];
        for (corner, (u, v)) in places.into_iter().enumerate() {
            own[corner] = match shared {
                Some((mine, its)) if mine == corner => its,
                _ => {
                    self.points.push(run.point(u, v));
                    self.points.len() - 1
                }
            };
        }
        if let Some((b, turn)) = before.zip(turn) {
            self.on_line.extend(match turn {
                // The corner of each on the working side, or on the seating side, of the other.
                Turn::Left => [[b[2], own[0], own[1]], [own[3], b[0], b[1]]],
                Turn::Right => [[b[1], own[3], own[2]], [own[0], b[3], b[2]]],
            });
        }
        self.corners.push(own);
    }

    /// The standard deviation of a reading.
    fn deviation(&self) -> f64 {
        self.as_built.tape.value.mm()
    }

    /// Everything that is fitted, readings first in the order of runs and lengths, each with its key.
    fn observations(&self, aside: &BTreeSet<Key>, plan: bool) -> Vec<(Option<Key>, Observation)> {
        let mut all = Vec::new();
        for (i, read) in self.read.iter().enumerate() {
            let is_read = read.iter().any(Option::is_some);
            for (k, taped) in Taped::ALL.into_iter().enumerate() {
                let [a, b] = taped.ends().map(|c| self.corners[i][c as usize]);
                let of = Measured::Distance([a, b]);
                let is_aside = aside.contains(&(i, k));
                if let Some(value) = read[k].filter(|_| !is_aside) {
                    let deviation = self.deviation();
                    all.push((
                        Some((i, k)),
                        Observation {
                            of,
                            value,
                            deviation,
                        },
                    ));
                }
                if plan || is_aside || !is_read {
                    let deviation = if taped.is_diagonal() {
                        DIAGONAL_KEEPS
                    } else {
                        SIDE_KEEPS
                    };
                    let value = self.planned[i][k];
                    all.push((
                        None,
                        Observation {
                            of,
                            value,
                            deviation,
                        },
                    ));
                }
            }
        }
        all.extend(self.on_line.iter().map(|line| {
            let string = Observation {
                of: Measured::Offset(*line),
                value: 0.0,
                deviation: STRING,
            };
            (None, string)
        }));
        all
    }

    /// The fit without some readings, in whose place the plan stands; with `plan`, it stands beside all of them.
    fn fit(&self, aside: &BTreeSet<Key>, plan: bool, from: &[Point2]) -> Option<Adjusted> {
        let observations = self.observations(aside, plan).into_iter().map(|o| o.1);
        let network = Network {
            points: from.to_vec(),
            observations: observations.collect(),
        };
        network.adjust()
    }

    /// Sets aside one reading after the other as long as that explains why the others do not fit, no two of one run; each
    /// with another that may as well be wrong.
    fn snoop(&self, aside: &mut BTreeSet<Key>) -> Vec<(Key, Option<Key>)> {
        let mut found = Vec::new();
        let Some(mut all) = self.fit(aside, true, &self.points) else {
            return found;
        };
        loop {
            let mut sums: Vec<(f64, Key, Adjusted)> = self
                .candidates(aside)
                .into_iter()
                .filter_map(|key| {
                    let mut without = aside.clone();
                    without.insert(key);
                    let fit = self.fit(&without, true, &all.points)?;
                    Some((fit.sum, key, fit))
                })
                .collect();
            sums.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
            let mut sums = sums.into_iter();
            let Some((least, key, fit)) = sums.next() else {
                return found;
            };
            // Readings that agree among themselves and differ from the plan are a frame that is off it, unless all the rest
            // falls into place without the one.
            let is_explained = fit.sum <= farthest(fit.redundancy);
            if all.sum - least < DROP || !(is_explained || self.disagree(aside)) {
                return found;
            }
            let rival = sums.next().filter(|next| next.0 - least < CLEAR);
            found.push((key, rival.map(|r| r.1)));
            aside.insert(key);
            all = fit;
        }
    }

    /// True when the readings do not agree among themselves, whatever the plan has.
    fn disagree(&self, aside: &BTreeSet<Key>) -> bool {
        let alone = self.fit(aside, false, &self.points);
        alone.is_some_and(|fit| fit.sum >= DROP)
    }

    /// The readings of runs that were read in full and of which none is set aside.
    fn candidates(&self, aside: &BTreeSet<Key>) -> Vec<Key> {
        let whole = |i: &usize| {
            self.read[*i].iter().all(Option::is_some) && !aside.iter().any(|a| a.0 == *i)
        };
        let runs = (0..self.read.len()).filter(whole);
        runs.flat_map(|i| (0..6).map(move |k| (i, k))).collect()
    }

    /// Which corners of a run join another one.
    fn joined(&self, i: usize) -> [bool; 4] {
        self.corners[i].map(|point| {
            let others = self.corners.iter().enumerate().filter(|(k, _)| *k != i);
            let mut shared = others.flat_map(|(_, c)| c);
            shared.any(|c| *c == point) || self.on_line.iter().any(|l| l[0] == point)
        })
    }

    /// A run of the fitted points.
    fn run(
        &self,
        i: usize,
        solved: bool,
        points: &[Point2],
        aside: &BTreeSet<Key>,
        checks: &[f64],
    ) -> RunAsBuilt {
        let corners = self.corners[i].map(|c| points[c]);
        let keys = self.observations(aside, false);
        let lengths = std::array::from_fn(|k| {
            let [a, b] = Taped::ALL[k].ends().map(|c| corners[c as usize]);
            let row = keys.iter().position(|(key, _)| *key == Some((i, k)));
            let measured = self.as_built.runs.iter().find(|m| m.run == i);
            TapedLength {
                read: measured.and_then(|m| m.lengths[k].as_ref().map(|l| l.value.mm())),
                adjusted: (b - a).norm(),
                planned: self.planned[i][k],
                checked: row.and_then(|r| checks.get(r)).copied().unwrap_or(0.0),
                aside: aside.contains(&(i, k)),
            }
        });
        RunAsBuilt {
            measured: self.as_built.runs.iter().position(|m| m.run == i),
            solved: solved && self.read[i].iter().any(Option::is_some),
            off: off(&corners, &self.planned[i]),
            push: Push::of(&corners, self.joined(i)),
            lengths,
            corners,
        }
    }
}

/// The sum of squares that one sound set of readings in a thousand passes, by its redundancy: chi-square after Wilson and
/// Hilferty, value from memory.
fn farthest(redundancy: usize) -> f64 {
    let n = redundancy.max(1) as f64;
    let ninth = 2.0 / (9.0 * n);
    n * (1.0 - ninth + 3.09 * ninth.sqrt()).powi(3)
}

/// How far the corners stand from those of the planned rectangle on the same working side and left corner.
fn off(corners: &[Point2; 4], planned: &[f64; 6]) -> [f64; 4] {
    let [length, _, depth, ..] = *planned;
    let along = (corners[1] - corners[0]).normalize();
    let away = crate::geometry::Vector2::new(-along.y, along.x);
    let places = [(0.0, 0.0), (length, 0.0), (length, depth), (0.0, depth)];
    std::array::from_fn(|i| {
        let (u, v) = places[i];
        (corners[i] - (corners[0] + along * u + away * v)).norm()
    })
}
