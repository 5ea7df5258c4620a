//! A keyed joint: tongues of one piece that go into sockets of the other.

use super::rough::{Rough, Sizes};
use super::{Bar, Layer};
use crate::geometry::{Bounds3, Point3};
use crate::mesh::body::{Body, on_grid};

/// How far a tongue reaches at least, millimetres of the print: less would break off.
const TONGUE: f64 = 3.0;
/// How wide a tongue is at most, millimetres of the print.
const WIDEST: f64 = 20.0;
/// How far a cutter passes a face that it goes through, millimetres of the print.
const PAST: f64 = 0.25;

/// A cut across an axis, 0 for x and 1 for y.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cut {
    pub(super) axis: usize,
    pub(super) at: f64,
}

/// How far the tongues of a model reach, millimetres of the print.
pub(super) fn tongue(sizes: &Sizes) -> f64 {
    on_grid(TONGUE.max(3.0 * sizes.wall))
}

/// What a joint keeps clear of on both sides, millimetres of the print.
pub(super) fn margin(sizes: &Sizes) -> f64 {
    2.0 * sizes.wall
}

/// The strips that a cut parts, each with the same cross-section from before the cut to past its tongues.
pub(super) fn strips(body: &Body, cut: Cut, sizes: &Sizes) -> Vec<Bounds3> {
    let Some(mut slice) = body.bounds() else {
        return Vec::new();
    };
    slice.low[cut.axis] = cut.at - sizes.wall;
    slice.high[cut.axis] = cut.at + tongue(sizes) + sizes.wall;
    let across = 1 - cut.axis;
    for i in [across, 2] {
        slice.low[i] -= 1.0;
        slice.high[i] += 1.0;
    }
    let Some(slice) = Body::cuboid(&slice) else {
        return Vec::new();
    };
    let pieces = body.within(&slice).pieces();
    pieces.iter().filter_map(Body::bounds).collect()
}

/// The two sides of a cut; `None` when no strip is large enough for a tongue.
pub(super) fn cut_apart(
    rough: &Rough,
    body: &Body,
    cut: Cut,
    strips: &[Bounds3],
    sizes: &Sizes,
) -> Option<[Body; 2]> {
    let shapes: Vec<_> = strips
        .iter()
        .filter_map(|s| match rough.layer {
            Layer::Base => Flanked::of(s, sizes)?.bodies(s, cut, sizes),
            Layer::Counter => upright(s, (s.low[1 - cut.axis], s.high[1 - cut.axis]), cut, sizes),
            Layer::Frame => upright(s, shared(&rough.bars, s, cut, sizes)?, cut, sizes),
        })
        .collect();
    let (tongues, sockets): (Vec<_>, Vec<_>) = shapes.into_iter().unzip();
    let (tongues, sockets) = (Body::union_of(tongues)?, Body::union_of(sockets)?);
    let mut low = body.bounds()?;
    for i in 0..3 {
        low.low[i] -= 1.0;
        low.high[i] += 1.0;
    }
    low.high[cut.axis] = cut.at;
    let low = Body::cuboid(&low)?;
    Some([
        body.within(&low.with(&tongues)),
        body.without(&low.with(&sockets)),
    ])
}

/// The width that all bars of a strip share.
fn shared(bars: &[Bar], strip: &Bounds3, cut: Cut, sizes: &Sizes) -> Option<(f64, f64)> {
    let across = 1 - cut.axis;
    let reach = (cut.at - sizes.wall, cut.at + tongue(sizes) + sizes.wall);
    let through = bars.iter().map(|b| b.bounds).filter(|b| {
        b.low[cut.axis] <= reach.0 && b.high[cut.axis] >= reach.1 && b.overlaps(strip, 0.0)
    });
    let ends = through.map(|b| (b.low[across], b.high[across]));
    ends.reduce(|a, b| (a.0.max(b.0), a.1.min(b.1)))
}

/// An upright tongue in the middle third of a strip, and its socket: it slides in from above and nothing hangs over.
fn upright(
    strip: &Bounds3,
    (from, to): (f64, f64),
    cut: Cut,
    sizes: &Sizes,
) -> Option<(Body, Body)> {
    let width = on_grid(((to - from) / 3.0).min(WIDEST));
    let cheek = (to - from - width) / 2.0 - sizes.clearance;
    if width < sizes.wall || cheek < sizes.wall {
        return None;
    }
    let low = on_grid(f64::midpoint(from, to) - width / 2.0);
    let shape = |gap: f64| {
        let across = 1 - cut.axis;
        let mut b = *strip;
        b.low[cut.axis] = cut.at - sizes.wall;
        b.high[cut.axis] = cut.at + tongue(sizes) + gap;
        b.low[across] = low - gap;
        b.high[across] = low + width + gap;
        b.low.z -= PAST;
        b.high.z += PAST;
        Body::cuboid(&b)
    };
    Some((shape(0.0)?, shape(sizes.clearance)?))
}

/// A tongue in the plane of a thin wall, its flanks at 45 degrees so that it prints upright.
struct Flanked {
    middle: f64,
    half: f64,
}

impl Flanked {
    fn of(strip: &Bounds3, sizes: &Sizes) -> Option<Self> {
        let height = strip.high.z - strip.low.z;
        let reach = tongue(sizes);
        let half = on_grid((height / 3.0).min(WIDEST) / 2.0);
        let left = height / 2.0 - half - 2.0 * sizes.clearance;
        (half - reach >= sizes.wall / 2.0 && left >= sizes.wall).then(|| Self {
            middle: on_grid(f64::midpoint(strip.low.z, strip.high.z)),
            half,
        })
    }

    fn bodies(&self, strip: &Bounds3, cut: Cut, sizes: &Sizes) -> Option<(Body, Body)> {
        Some((
            self.body(strip, cut, 0.0, sizes)?,
            self.body(strip, cut, sizes.clearance, sizes)?,
        ))
    }

    /// The tongue, or with a gap its socket; the gap is square to the flanks.
    fn body(&self, strip: &Bounds3, cut: Cut, gap: f64, sizes: &Sizes) -> Option<Body> {
        let across = 1 - cut.axis;
        let reach = tongue(sizes) + gap;
        let root = on_grid(self.half + gap * std::f64::consts::SQRT_2);
        let tip = root - reach;
        let back = sizes.wall;
        let outline = [
            (cut.at - back, -root),
            (cut.at, -root),
            (cut.at + reach, -tip),
            (cut.at + reach, tip),
            (cut.at, root),
            (cut.at - back, root),
        ];
        let ring = |side: f64| {
            outline.map(|(along, z)| {
                let mut point = Point3::new(0.0, 0.0, self.middle + z);
                point[cut.axis] = along;
                point[across] = side;
                point
            })
        };
        let (near, far) = (strip.low[across] - PAST, strip.high[across] + PAST);
        // Counter-clockwise in (x, z) faces −y; in (y, z) it faces +x.
        if cut.axis == 0 {
            Body::between(&ring(far), &ring(near))
        } else {
            Body::between(&ring(near), &ring(far))
        }
    }
}
