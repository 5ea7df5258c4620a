//! All that hides, in a tree of boxes.

use super::clip::{NEARER, Occluder, Seen};
use crate::geometry::{Bounds2, Point2, Point3};

/// How many triangles a leaf of the tree holds at most.
const LEAF: usize = 4;

#[derive(Clone, Copy, Debug)]
struct Node {
    bounds: Bounds2,
    nearest: f64,
    /// A leaf's triangles from `first` on, or for `count` 0 the two children at `first` and `first + 1`.
    first: usize,
    count: usize,
}

/// The triangles turned to the eye, sorted into a tree of boxes.
#[derive(Clone, Debug, Default)]
pub struct Screen {
    occluders: Vec<Occluder>,
    nodes: Vec<Node>,
}

impl Screen {
    /// Builds the tree.
    pub(super) fn new(occluders: Vec<Occluder>) -> Self {
        let mut screen = Self {
            occluders,
            nodes: Vec::new(),
        };
        let count = screen.occluders.len();
        if let Some(root) = screen.node(0, count) {
            screen.nodes.push(root);
            screen.split(0);
        }
        screen
    }

    fn node(&self, first: usize, count: usize) -> Option<Node> {
        let mut all = self.occluders[first..first + count].iter();
        let start = all.next()?;
        let start = (start.bounds, start.nearest);
        let (bounds, nearest) = all.fold(start, |(bounds, nearest), o| {
            (bounds.union(o.bounds), nearest.max(o.nearest))
        });
        Some(Node {
            bounds,
            nearest,
            first,
            count,
        })
    }

    fn split(&mut self, number: usize) {
        let Node {
            bounds,
            first,
            count,
            ..
        } = self.nodes[number];
        if count <= LEAF {
            return;
        }
        let across = bounds.width() >= bounds.height();
        let middle = |o: &Occluder| {
            let centre = o.bounds.centre();
            if across { centre.x } else { centre.y }
        };
        let half = count / 2;
        self.occluders[first..first + count]
            .select_nth_unstable_by(half, |a, b| middle(a).total_cmp(&middle(b)));
        let children = self.nodes.len();
        let halves = [(first, half), (first + half, count - half)];
        let made = halves.map(|(first, count)| self.node(first, count));
        let [Some(low), Some(high)] = made else {
            return;
        };
        self.nodes.extend([low, high]);
        self.nodes[number].first = children;
        self.nodes[number].count = 0;
        self.split(children);
        self.split(children + 1);
    }

    /// The depth of what is seen at a point; `None` where nothing is.
    pub(super) fn nearest_at(&self, at: Point2) -> Option<f64> {
        let mut nearest: Option<f64> = None;
        let may_be_seen = |bounds: &Bounds2, depth: f64, nearest: Option<f64>| {
            let (low, high) = (at - bounds.low, bounds.high - at);
            low.min() >= -1e-3 && high.min() >= -1e-3 && nearest.is_none_or(|n| depth > n)
        };
        let mut stack: Vec<usize> = (0..self.nodes.len().min(1)).collect();
        while let Some(number) = stack.pop() {
            let node = &self.nodes[number];
            if !may_be_seen(&node.bounds, node.nearest, nearest) {
                continue;
            }
            if node.count == 0 {
                stack.extend([node.first, node.first + 1]);
                continue;
            }
            for occluder in &self.occluders[node.first..node.first + node.count] {
                if may_be_seen(&occluder.bounds, occluder.nearest, nearest)
                    && let Some(depth) = occluder.depth_at(at)
                {
                    nearest = Some(nearest.map_or(depth, |n: f64| n.max(depth)));
                }
            }
        }
        nearest
    }

    /// The pieces of the edge from `a` to `b` that nothing hides. Every box looked into and every triangle held against
    /// the edge adds one to `steps`.
    pub(super) fn seen(&self, a: Point3, b: Point3, steps: &mut u64) -> Seen {
        let mut seen = Seen::whole();
        let reach = Bounds2 {
            low: a.xy().inf(&b.xy()),
            high: a.xy().sup(&b.xy()),
        };
        let farthest = a.z.min(b.z) + NEARER;
        let may_hide =
            |bounds: &Bounds2, nearest: f64| nearest > farthest && bounds.overlaps(&reach, -1e-3);
        let mut stack: Vec<usize> = (0..self.nodes.len().min(1)).collect();
        while let Some(number) = stack.pop() {
            let node = &self.nodes[number];
            *steps += 1;
            if !may_hide(&node.bounds, node.nearest) {
                continue;
            }
            if node.count == 0 {
                // The nearer child comes off the stack first: it hides most and may end the search.
                let (low, high) = (node.first, node.first + 1);
                let low_nearer = self.nodes[low].nearest > self.nodes[high].nearest;
                stack.extend(if low_nearer { [high, low] } else { [low, high] });
                continue;
            }
            *steps += node.count as u64;
            for occluder in &self.occluders[node.first..node.first + node.count] {
                if may_hide(&occluder.bounds, occluder.nearest)
                    && let Some(range) = occluder.hides(a, b)
                {
                    seen.hide(range);
                }
            }
            if seen.0.is_empty() {
                break;
            }
        }
        seen
    }
}
