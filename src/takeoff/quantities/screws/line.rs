//! Lines of screws through a sheet into the steel behind it.

use super::super::coverage::{edges, stretches};
use super::super::row::{between, points};
use crate::geometry::Region;

/// Screws stand so far from the edges of the sheet, millimetres: 1/2 in, within the published 3/8 to 5/8 in.
pub(super) const FROM_EDGE: f64 = 12.7;
/// Screws are no farther apart, millimetres: 8 in, published.
pub(super) const SPACING: f64 = 203.2;
/// A sheet that covers less of a strip is not screwed to it, millimetres: it bears there, no more (common practice).
const LEAST: f64 = 6.0;

/// A strip of steel behind a sheet: a rectangle along the axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Strip {
    /// The axis it runs along.
    pub axis: usize,
    /// From where to where along it.
    pub span: (f64, f64),
    /// From where to where across.
    pub width: (f64, f64),
    /// True when its line of screws is whole; the others are filled in between those lines.
    pub first: bool,
}

/// A line of screws.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Line {
    at: f64,
    span: (f64, f64),
}

/// How many screws hold a sheet to each strip, in the order of the strips.
///
/// Strips that come first have a whole line: its ends `FROM_EDGE` in, none farther apart than `SPACING`. On a strip that
/// crosses such lines, or ends within `reach` of them, their screws serve, and only what is missing between is counted:
/// so a screw where two lines meet counts once.
pub(super) fn screws(region: &Region, strips: &[Strip], reach: f64) -> Vec<usize> {
    let lines: Vec<Vec<Line>> = strips.iter().map(|s| lines(region, s)).collect();
    let counts = strips.iter().zip(&lines).map(|(strip, own)| {
        let one = |line: &Line| {
            if strip.first {
                points(line.span.1 - line.span.0, FROM_EDGE, SPACING)
            } else {
                filled(line, &crossing(strips, &lines, strip, line, reach))
            }
        };
        own.iter().map(one).sum()
    });
    counts.collect()
}

/// The lines of screws along a strip, broken where the sheet is.
fn lines(region: &Region, strip: &Strip) -> Vec<Line> {
    let bounds = region.outer.bounds();
    let across = 1 - strip.axis;
    let low = strip.width.0.max(bounds.low[across]);
    let high = strip.width.1.min(bounds.high[across]);
    if high - low < LEAST {
        return Vec::new();
    }
    let at = position(region, strip).clamp(low, high);
    stretches(region, strip.axis, at)
        .into_iter()
        .map(|s| (s.0.max(strip.span.0), s.1.min(strip.span.1)))
        .filter(|s| s.1 - s.0 > FROM_EDGE)
        .map(|span| Line { at, span })
        .collect()
}

/// Where across a strip its line runs: the middle, or `FROM_EDGE` from an edge of the sheet that bears on the strip.
fn position(region: &Region, strip: &Strip) -> f64 {
    let (low, high) = strip.width;
    let bears = edges(region, strip.axis).into_iter().find(|e| {
        let on_strip = e.at > low - 1e-6 && e.at < high + 1e-6;
        let inside = if e.inside_above {
            e.at + LEAST < high
        } else {
            e.at - LEAST > low
        };
        on_strip && inside && e.span.0 < strip.span.1 && strip.span.0 < e.span.1
    });
    bears.map_or(f64::midpoint(low, high), |e| {
        if e.inside_above {
            e.at + FROM_EDGE
        } else {
            e.at - FROM_EDGE
        }
    })
}

/// Where the whole lines cross a line or pass its ends, rising.
fn crossing(
    strips: &[Strip],
    lines: &[Vec<Line>],
    own: &Strip,
    line: &Line,
    reach: f64,
) -> Vec<f64> {
    let others = strips.iter().zip(lines);
    let mut found: Vec<f64> = others
        .filter(|(s, _)| s.first && s.axis != own.axis)
        .flat_map(|(_, lines)| lines)
        .filter(|l| l.span.0 - reach < line.at && line.at < l.span.1 + reach)
        .map(|l| l.at)
        .filter(|at| line.span.0 - reach < *at && *at < line.span.1 + reach)
        .collect();
    found.sort_by(f64::total_cmp);
    found
}

/// How many screws a line needs besides those where other lines cross it.
fn filled(line: &Line, there: &[f64]) -> usize {
    let (Some(first), Some(last)) = (there.first(), there.last()) else {
        return points(line.span.1 - line.span.0, FROM_EDGE, SPACING);
    };
    let inner: usize = there
        .windows(2)
        .map(|w| between(w[1] - w[0], SPACING))
        .sum();
    // Past the outer lines: up to the strip's end, which takes a screw of its own.
    let past = |room: f64| {
        if room > 2.0 * FROM_EDGE {
            between(room - FROM_EDGE, SPACING) + 1
        } else {
            0
        }
    };
    inner + past(first - line.span.0) + past(line.span.1 - last)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Outline;

    const IN: f64 = 25.4;

    fn strip(axis: usize, span: (f64, f64), width: (f64, f64), first: bool) -> Strip {
        let scaled = |p: (f64, f64)| (p.0 * IN, p.1 * IN);
        Strip {
            axis,
            span: scaled(span),
            width: scaled(width),
            first,
        }
    }

    #[test]
    fn a_sheet_on_three_studs_between_two_tracks() {
        // A sheet 32 × 31 in inches; studs at both edges and in the middle: 30 clear at 8, four gaps, five screws each.
        // Between studs 15-1/2 apart each track takes one more: two gaps, two tracks, four.
        let sheet = Region::solid(Outline::rectangle(0.0, 0.0, 32.0 * IN, 31.0 * IN));
        let strips = [
            strip(1, (0.0, 31.0), (-0.6, 0.7), true),
            strip(1, (0.0, 31.0), (15.4, 16.6), true),
            strip(1, (0.0, 31.0), (31.4, 32.6), true),
            strip(0, (-20.0, 50.0), (0.0, 1.25), false),
            strip(0, (-20.0, 50.0), (29.75, 31.0), false),
        ];
        assert_eq!(screws(&sheet, &strips, 50.0), [5, 5, 5, 2, 2]);
    }

    #[test]
    fn a_strip_that_crosses_nothing_has_its_own_line() {
        let sheet = Region::solid(Outline::rectangle(0.0, 0.0, 32.0 * IN, 31.0 * IN));
        let alone = [strip(0, (2.0, 19.0), (10.0, 12.0), false)];
        assert_eq!(screws(&sheet, &alone, 50.0), [3]);
        let beside = [strip(1, (0.0, 31.0), (31.9, 33.0), true)];
        assert_eq!(screws(&sheet, &beside, 50.0), [0]);
    }
}
