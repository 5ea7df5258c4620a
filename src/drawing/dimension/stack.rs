//! Tiers of chains on one side of a view.

use super::measured::Dimension;
use super::{Axis, Tier};
use crate::drawing::page::{LETTERS, Page, Stand};
use crate::drawing::{Align, Dash, Layer, Pen, lettering, occupancy};
use crate::geometry::Point2;

/// From the view to where an extension line begins, millimetres.
const GAP: f64 = 1.5;
/// From the view to the first dimension line.
const FIRST: f64 = 10.0;
/// From one dimension line to the next, at least.
const NEXT: f64 = 8.0;
/// How far extension lines pass their dimension line.
const PAST: f64 = 1.5;
/// The room one line of lettering takes across the chain.
const ROW: f64 = 1.41 * LETTERS;
/// Between a dimension line and the room of its text.
const CLEAR: f64 = 0.2;
/// Between texts that had to move out of their gaps: they must not read as one.
const AIR: f64 = 1.0;

/// Draws chains outwards from a view, the first one nearest. Says how far out they reach, and how many texts found no
/// room: on a sheet that is not overfull, none.
pub fn draw_stack(page: &mut Page, axis: Axis, tiers: &[Tier]) -> (f64, usize) {
    let mut line = FIRST;
    let mut lines = Vec::with_capacity(tiers.len());
    let mut dimensions = Vec::new();
    let mut unplaced = 0;
    let mut reach = 0.0_f64;
    for (number, tier) in tiers.iter().enumerate() {
        let outer: Vec<f64> = tiers[number + 1..]
            .iter()
            .flat_map(|t| t.stations.iter().copied())
            .collect();
        let laid = Laying {
            axis,
            tier,
            line,
            outer: &outer,
        };
        let (texts_reach, missing) = laid.letter(page, &mut dimensions);
        unplaced += missing;
        lines.push(line);
        reach = (line + PAST).max(texts_reach);
        let text_of_next = if axis.letters_point_out() {
            0.0
        } else {
            CLEAR + ROW
        };
        line = (line + NEXT).max(texts_reach + text_of_next + Dimension::TICK + 0.3);
    }
    draw_extensions(page, axis, tiers, &lines);
    for dimension in dimensions {
        page.dimension(dimension);
    }
    (reach, unplaced)
}

/// One chain while its texts are placed.
struct Laying<'a> {
    axis: Axis,
    tier: &'a Tier,
    /// Where its dimension line is, outwards.
    line: f64,
    /// Where extension lines of chains farther out pass through.
    outer: &'a [f64],
}

impl Laying<'_> {
    /// Places all texts; says how far out they reach, and how many found no place.
    fn letter(&self, page: &mut Page, laid: &mut Vec<Dimension>) -> (f64, usize) {
        let mut reach = if self.axis.letters_point_out() {
            self.line + CLEAR + ROW
        } else {
            self.line + PAST
        };
        // Texts that fit come first: those that must move go round them.
        let mut outside = Vec::new();
        for number in 0..self.tier.texts.len() {
            match self.place_inside(page, number) {
                Some(stand) => laid.extend(self.dimension(number, Some(stand), None)),
                None => outside.push(number),
            }
        }
        let mut missing = 0;
        // In the order of their gaps, so that no leader crosses another.
        let mut last = f64::NEG_INFINITY;
        for number in outside {
            let placed = self
                .place_outside(page, number, last)
                .or_else(|| self.place_outside(page, number, f64::NEG_INFINITY));
            if let Some((stand, leader, out)) = placed {
                last = last.max(self.axis.along(stand.0));
                reach = reach.max(out);
                laid.extend(self.dimension(number, Some(stand), Some(leader)));
            } else {
                missing += 1;
                page.lose(self.tier.texts.get(number).map_or("", String::as_str));
                laid.extend(self.dimension(number, None, None));
            }
        }
        self.letter_name(page);
        (reach, missing)
    }

    /// From where to where a gap runs on the sheet, and what is lettered in it.
    fn gap(&self, number: usize) -> Option<(f64, f64, &str)> {
        let stations = self.tier.stations.get(number..number + 2)?;
        Some((stations[0], stations[1], self.tier.texts.get(number)?))
    }

    /// The record of one gap.
    fn dimension(
        &self,
        number: usize,
        stand: Option<Stand>,
        leader: Option<[Point2; 2]>,
    ) -> Option<Dimension> {
        let (from, to, text) = self.gap(number)?;
        let ends = [from, to].map(|t| self.axis.point(t, self.line));
        let (at, align, angle) = stand.unwrap_or((ends[0], Align::Centre, 0.0));
        Some(Dimension {
            line: ends,
            measured: self.tier.built.get(number).copied()?,
            scale: self.tier.scale(),
            text: stand.map_or_else(String::new, |_| text.to_owned()),
            at,
            height: LETTERS,
            align,
            angle,
            leader,
        })
    }

    /// Keeps the room of a text.
    fn hold(page: &mut Page, text: &str, (at, align, angle): Stand) {
        page.reserve(occupancy::text_box(at, text, LETTERS, align, angle));
    }

    fn place_inside(&self, page: &mut Page, number: usize) -> Option<Stand> {
        let (from, to, text) = self.gap(number)?;
        let width = lettering::width(text, LETTERS);
        let play = (to - from - width) / 2.0 - Dimension::TICK - 0.2;
        if play < 0.0 {
            return None;
        }
        let middle = f64::midpoint(from, to);
        let o = if self.axis.letters_point_out() {
            self.line + CLEAR
        } else {
            self.line - CLEAR - ROW
        };
        let stand = shifts(play, 0.5)
            .map(|shift| middle + shift)
            .find(|&t| self.misses_outer(t, width))
            .map(|t| self.axis.stand(t, o, LETTERS, Align::Centre))
            .filter(|&stand| page.has_room(text, LETTERS, stand));
        if let Some(stand) = stand {
            Self::hold(page, text, stand);
        }
        stand
    }

    /// Where a text that had to move stands, `past` a place along the chain, its leader, and how far out it reaches.
    fn place_outside(
        &self,
        page: &mut Page,
        number: usize,
        past: f64,
    ) -> Option<(Stand, [Point2; 2], f64)> {
        let (from, to, text) = self.gap(number)?;
        let width = lettering::width(text, LETTERS);
        let middle = f64::midpoint(from, to);
        let start = if self.axis.letters_point_out() {
            self.line + CLEAR + ROW + AIR
        } else {
            self.line + PAST + AIR
        };
        for row in 0..6 {
            let o = start + f64::from(row) * (ROW + AIR);
            for shift in shifts(20.0 + 10.0 * f64::from(row), 0.5) {
                let t = middle + shift;
                if t <= past || !self.misses_outer(t, width) {
                    continue;
                }
                let stand = self.axis.stand(t, o, LETTERS, Align::Centre);
                let near = middle.clamp(t - width / 2.0, t + width / 2.0);
                let leader = [
                    self.axis.point(middle, self.line),
                    self.axis.point(near, o - 0.1),
                ];
                if page.has_air(text, LETTERS, stand, AIR)
                    && page.stands_apart(text, LETTERS, stand)
                    && page.taken().is_clear(leader)
                {
                    Self::hold(page, text, stand);
                    page.block(leader);
                    return Some((stand, leader, o + ROW));
                }
            }
        }
        None
    }

    /// Letters what the chain measures past its last station, or before its first.
    fn letter_name(&self, page: &mut Page) {
        let (Some(first), Some(last)) = (self.tier.stations.first(), self.tier.stations.last())
        else {
            return;
        };
        let o = self.line - ROW / 2.0;
        let past = (3..=12).map(f64::from);
        let mut stands = past.flat_map(|d| {
            [
                self.axis.stand(last + d, o, LETTERS, Align::Left),
                self.axis.stand(first - d, o, LETTERS, Align::Right),
            ]
        });
        let free = stands.find(|&(at, align, angle)| {
            let area = occupancy::text_box(at, &self.tier.name, LETTERS, align, angle);
            let middle = match angle {
                0.0 => area.centre().x,
                _ => area.centre().y,
            };
            let width = area.width().max(area.height());
            self.misses_outer(middle, width)
                && page.has_room(&self.tier.name, LETTERS, (at, align, angle))
        });
        if let Some(stand) = free {
            page.text(Layer::Dimension, &self.tier.name, LETTERS, stand);
        }
    }

    /// True when a text round t crosses no extension line of a chain farther out.
    fn misses_outer(&self, t: f64, width: f64) -> bool {
        let half = width / 2.0 + 0.5;
        self.outer.iter().all(|s| (s - t).abs() >= half)
    }
}

/// 0, then steps away from it to both sides as far as `most`.
fn shifts(most: f64, step: f64) -> impl Iterator<Item = f64> {
    let count = (most / step).floor().max(0.0) as u32;
    std::iter::once(0.0).chain((1..=count).flat_map(move |i| {
        let shift = f64::from(i) * step;
        [shift, -shift]
    }))
}

/// Extension lines: each once, as far as it is needed.
fn draw_extensions(page: &mut Page, axis: Axis, tiers: &[Tier], lines: &[f64]) {
    let mut stations: Vec<(f64, f64, f64)> = Vec::new();
    for (tier, &line) in tiers.iter().zip(lines) {
        let bare = |t: f64| tier.bare.iter().any(|b| (b - t).abs() < 0.01);
        let drawn = tier.stations.iter().filter(|t| !bare(**t));
        stations.extend(drawn.map(|t| (*t, line, tier.from + GAP)));
    }
    stations.sort_by(|a, b| a.0.total_cmp(&b.0).then(b.1.total_cmp(&a.1)));
    stations.dedup_by(|later, kept| later.0 - kept.0 < 0.01);
    for (t, line, from) in stations {
        let (from, to) = (axis.point(t, from), axis.point(t, line + PAST));
        page.line(Layer::Dimension, Pen::Fine, Dash::Solid, from, to);
    }
}

#[cfg(test)]
mod tests {
    use super::super::Side;
    use super::*;
    use crate::catalog::PaperKind;
    use crate::drawing::{Scale, Sheet, check};
    use crate::geometry::{Bounds2, Point2};
    use crate::units::Notation;

    fn page() -> Page {
        let paper = PaperKind::A3.landscape();
        let inside = Bounds2 {
            low: Point2::new(10.0, 10.0),
            high: Point2::new(410.0, 287.0),
        };
        Page::new(paper, inside)
    }

    fn sheet(page: Page) -> Sheet {
        page.finish("s".into(), "s".into(), "1".into(), Scale::full())
    }

    fn tier(name: &str, built: &[f64]) -> Tier {
        Tier::new(Notation::Metric, name, built, |b| 100.0 + b / 20.0).unwrap()
    }

    #[test]
    fn three_tiers_on_every_side_never_overlap() {
        for side in [Side::Below, Side::Above, Side::Left, Side::Right] {
            let mut page = page();
            let tiers = [
                tier(
                    "studs",
                    &[
                        0.0, 30.0, 64.0, 407.0, 813.0, 1219.0, 1626.0, 1970.0, 2000.0,
                    ],
                ),
                tier("openings", &[0.0, 200.0, 700.0, 710.0, 1500.0, 2000.0]),
                tier("overall", &[0.0, 2000.0]),
            ];
            let edge = match side {
                Side::Above => 150.0,
                Side::Right => 240.0,
                Side::Below | Side::Left => 140.0,
            };
            let (reach, unplaced) = draw_stack(&mut page, Axis { side, edge }, &tiers);
            assert_eq!(unplaced, 0);
            assert!(reach >= 26.0);
            check::texts_are_clear(&sheet(page)).unwrap();
        }
    }

    #[test]
    fn the_overall_line_is_as_long_as_the_design_at_scale() {
        let mut page = page();
        let axis = Axis {
            side: Side::Below,
            edge: 140.0,
        };
        draw_stack(&mut page, axis, &[tier("overall", &[0.0, 1999.9])]);
        let longest = sheet(page)
            .items
            .iter()
            .map(check::extent)
            .fold(0.0, f64::max);
        assert!((longest - 1999.9 / 20.0).abs() < 1e-9);
    }

    proptest::proptest! {
        #[test]
        fn random_chains_are_lettered_clear_of_each_other(
            gaps in proptest::collection::vec(5.0_f64..900.0, 1..14),
            marks in proptest::collection::vec(0.0_f64..1.0, 0..6),
        ) {
            let mut built = vec![0.0];
            for gap in &gaps {
                built.push(built.last().unwrap() + gap);
            }
            let total = *built.last().unwrap();
            let scale = (280.0 / total).min(0.2);
            let make = |name: &str, b: &[f64]| Tier::new(Notation::Imperial, name, b, |b| 60.0 + b * scale);
            let mut openings: Vec<f64> = marks.iter().map(|m| m * total).collect();
            openings.extend([0.0, total]);
            let tiers: Vec<_> = [make("studs", &built), make("openings", &openings), make("overall", &[0.0, total])]
                .into_iter().flatten().collect();
            let mut page = page();
            let axis = Axis { side: Side::Below, edge: 200.0 };
            draw_stack(&mut page, axis, &tiers);
            let sheet = sheet(page);
            let answer = check::texts_are_clear(&sheet);
            proptest::prop_assert!(answer.is_ok(), "{:?}", answer);
        }
    }
}
