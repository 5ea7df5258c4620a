//! A layer cut into pieces that fit the bed.

use super::fit::Room;
use super::joint::{self, Cut};
use super::rough::{Rough, Sizes};
use crate::geometry::Bounds3;
use crate::mesh::body::{Body, on_grid};

/// More pieces than this nobody puts together.
const MOST: usize = 60;
/// How many places of a cut are tried: those nearest to even pieces.
const TRIED: usize = 12;

/// Why a layer cannot be cut to fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stuck {
    /// It is higher than the printer reaches.
    TooHigh,
    /// There is no place for a joint within the bed's length.
    NoJoint,
    /// It would come in too many pieces.
    TooMany,
}

/// The pieces of a layer, from left to right and front to back.
pub(super) fn split(rough: &Rough, room: &Room, sizes: &Sizes) -> Result<Vec<Body>, Stuck> {
    let mut waiting = rough.body.pieces();
    let mut done: Vec<(Bounds3, Body)> = Vec::new();
    while let Some(body) = waiting.pop() {
        let Some(bounds) = body.bounds() else {
            continue;
        };
        let size = bounds.high - bounds.low;
        if room.holds(&size) {
            done.push((bounds, body));
        } else if size.z > room.z {
            return Err(Stuck::TooHigh);
        } else {
            let parted = part(rough, &body, &bounds, room, sizes).ok_or(Stuck::NoJoint)?;
            waiting.extend(parted.iter().flat_map(Body::pieces));
        }
        if waiting.len() + done.len() > MOST {
            return Err(Stuck::TooMany);
        }
    }
    done.sort_by(|(a, _), (b, _)| {
        let key = |b: &Bounds3| [b.low.x, b.low.y, b.low.z, b.high.x, b.high.y];
        key(a)
            .partial_cmp(&key(b))
            .unwrap_or(std::cmp::Ordering::Equal)
    });
    Ok(done.into_iter().map(|(_, body)| body).collect())
}

/// One cut, as near to even pieces as there is a place for it.
fn part(
    rough: &Rough,
    body: &Body,
    bounds: &Bounds3,
    room: &Room,
    sizes: &Sizes,
) -> Option<[Body; 2]> {
    let size = bounds.high - bounds.low;
    let long = usize::from(size.y > size.x);
    let (axis, most) = if size[long] > room.long() {
        (long, room.long())
    } else {
        (1 - long, room.short())
    };
    let reach = joint::tongue(sizes);
    let each = most - reach;
    if each < 2.0 * reach {
        return None;
    }
    let count = ((size[axis] - reach) / each).ceil().max(2.0);
    let even = bounds.low[axis] + size[axis] / count;
    let last = bounds.low[axis] + each;
    let first = bounds.high[axis] - (count - 1.0) * each - reach;
    let gaps = gaps(body, axis, sizes);
    let windows = [(first, last), (bounds.low[axis], last)];
    windows.into_iter().find_map(|window| {
        let mut tried: Vec<_> = places(&gaps, window, even)
            .into_iter()
            .map(|at| {
                let cut = Cut { axis, at };
                (cut, joint::strips(body, cut, sizes))
            })
            .collect();
        // A cut beside a cutout is weaker than one through the whole, and a cut through fewer bars is easier to join.
        tried.sort_by_key(|(_, strips)| strips.len());
        tried
            .iter()
            .find_map(|(cut, strips)| joint::cut_apart(rough, body, *cut, strips, sizes))
    })
}

/// Stretches along an axis on which nothing begins or ends: from there to there a cut and its tongues fit.
fn gaps(body: &Body, axis: usize, sizes: &Sizes) -> Vec<(f64, f64)> {
    let mut stands: Vec<f64> = body.surface().points.iter().map(|p| p[axis]).collect();
    stands.sort_by(f64::total_cmp);
    let (before, after) = (
        joint::margin(sizes),
        joint::margin(sizes) + joint::tongue(sizes),
    );
    let pairs = stands.windows(2).map(|w| (w[0] + before, w[1] - after));
    pairs.filter(|(from, to)| from <= to).collect()
}

/// Where to try, the nearest to `even` first.
fn places(gaps: &[(f64, f64)], window: (f64, f64), even: f64) -> Vec<f64> {
    let within = gaps
        .iter()
        .map(|(from, to)| (from.max(window.0), to.min(window.1)));
    let mut found: Vec<f64> = within
        .filter(|(from, to)| from <= to)
        .map(|(from, to)| on_grid(even.clamp(from, to)))
        .collect();
    found.sort_by(|a, b| (a - even).abs().total_cmp(&(b - even).abs()));
    found.truncate(TRIED);
    found
}
