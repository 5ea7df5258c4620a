//! The tree of nodes: island, runs, groups, parts; forms in a tree of their own; views.

use super::camera;
use super::document::{Extras, Node};
use super::shapes::Shapes;
use crate::mesh::{Instance, Selection, Showing, UprightPlace};
use crate::parts::Group;

/// Nodes, each before or after its children as they are made; the numbers of the roots.
pub(super) struct Tree<'a> {
    pub(super) nodes: Vec<Node<'a>>,
    pub(super) shapes: Shapes<'a>,
    runs: &'a [&'a str],
}

impl<'a> Tree<'a> {
    pub(super) fn new(showing: &'a Showing) -> Self {
        Self {
            nodes: Vec::new(),
            shapes: Shapes::new(showing.meshes),
            runs: &showing.runs,
        }
    }

    /// A node with all parts below it by run and group; `None` when there are none.
    pub(super) fn of_parts(&mut self, name: &str, parts: &'a Selection) -> Option<usize> {
        if parts.instances().is_empty() {
            return None;
        }
        let runs = (0..self.runs.len()).map(Some).chain([None]);
        let mut children = Vec::new();
        for run in runs {
            let of_run: Vec<_> = parts
                .instances()
                .iter()
                .filter(|i| self.run_of(i) == run)
                .collect();
            let groups = self.groups(run, &of_run);
            match run.and_then(|r| self.runs.get(r)) {
                Some(run) if !groups.is_empty() => {
                    children.push(self.parent(format!("{run} run"), groups));
                }
                _ => children.extend(groups),
            }
        }
        Some(self.parent(name.to_owned(), children))
    }

    /// The number of a part's run, where there is such a run.
    fn run_of(&self, instance: &Instance) -> Option<usize> {
        instance.part.run.filter(|r| *r < self.runs.len())
    }

    fn groups(&mut self, run: Option<usize>, parts: &[&Instance<'a>]) -> Vec<usize> {
        let mut nodes = Vec::new();
        for group in Group::ALL {
            let of_group = parts.iter().filter(|i| i.part.group == group);
            let children: Vec<_> = of_group.map(|i| self.part(i)).collect();
            if children.is_empty() {
                continue;
            }
            let name = match run.and_then(|r| self.runs.get(r)) {
                Some(run) => format!("{run} run, {}", group.name()),
                None => group.name().to_owned(),
            };
            nodes.push(self.parent(name, children));
        }
        nodes
    }

    fn part(&mut self, instance: &Instance<'a>) -> usize {
        let part = instance.part;
        let place = UprightPlace::of(&part.placement);
        let mesh = self.shapes.of(part);
        self.push(Node {
            name: format!("{} {}", part.mark, part.kind.name()),
            mesh,
            translation: Some(place.translation).filter(|t| *t != [0.0; 3]),
            rotation: Some(place.rotation).filter(|r| *r != [0.0, 0.0, 0.0, 1.0]),
            extras: Some(Extras {
                mark: &part.mark,
                kind: part.kind.name(),
                material: &part.material,
                section: &part.section,
                length_mm: (part.length.mm() * 1000.0).round() / 1000.0,
            }),
            ..Node::default()
        })
    }

    /// A node with a camera for each view below it.
    pub(super) fn of_views(&mut self, showing: &'a Showing) -> Option<usize> {
        let nodes: Vec<_> = showing
            .views
            .iter()
            .zip(0..)
            .map(|(v, n)| camera::node(v, n))
            .collect();
        if nodes.is_empty() {
            return None;
        }
        let children = nodes.into_iter().map(|n| self.push(n)).collect();
        Some(self.parent("views".to_owned(), children))
    }

    fn parent(&mut self, name: String, children: Vec<usize>) -> usize {
        self.push(Node {
            name,
            children,
            ..Node::default()
        })
    }

    fn push(&mut self, node: Node<'a>) -> usize {
        self.nodes.push(node);
        self.nodes.len() - 1
    }
}
