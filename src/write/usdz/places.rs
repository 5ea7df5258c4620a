//! The parts in their places: runs, groups, parts.

use super::materials::Materials;
use super::names::Names;
use super::shapes::Shapes;
use super::spelling::{quoted, triple};
use crate::mesh::{Appearances, Instance, UprightPlace};
use crate::parts::Group;
use std::fmt::Write;

/// Writes the parts of one run, or those that belong to none, by group.
pub(super) struct Places<'a, 'b> {
    pub(super) shapes: &'b mut Shapes<'a>,
    pub(super) materials: &'b Materials,
}

impl Places<'_, '_> {
    /// The groups that have parts, indented by so many steps; `names` are those that the parent has already.
    pub(super) fn groups(
        &mut self,
        parts: &[&Instance],
        depth: usize,
        names: &mut Names,
    ) -> String {
        let mut out = String::new();
        for group in Group::ALL {
            let of_group: Vec<_> = parts.iter().filter(|i| i.part.group == group).collect();
            if of_group.is_empty() {
                continue;
            }
            let name = names.of(group.name());
            let pad = "    ".repeat(depth);
            let _ = write!(out, "{pad}def Xform \"{name}\"\n{pad}{{\n");
            let mut within = Names::default();
            for instance in of_group {
                self.part(&mut out, instance, depth + 1, &mut within);
            }
            let _ = writeln!(out, "{pad}}}");
        }
        out
    }

    fn part(&mut self, out: &mut String, instance: &Instance, depth: usize, names: &mut Names) {
        let part = instance.part;
        let Some(shape) = self.shapes.path(part.solid.0) else {
            return;
        };
        let pad = "    ".repeat(depth);
        let name = names.of(&part.mark);
        let described = quoted(&format!("{} {}", part.mark, part.kind.name()));
        let section = quoted(&part.section);
        let _ = write!(
            out,
            "{pad}def \"{name}\" (
{pad}    prepend apiSchemas = [\"MaterialBindingAPI\"]
{pad}    customData = {{
{pad}        string part = {described}
{pad}        string section = {section}
{pad}    }}
{pad}    instanceable = true
{pad}    prepend references = <{shape}>
{pad})
{pad}{{
"
        );
        if let Some(path) = self.materials.path(Appearances::number(part.kind)) {
            let _ = writeln!(out, "{pad}    rel material:binding = <{path}>");
        }
        place(out, &UprightPlace::of(&part.placement), &pad);
        let _ = writeln!(out, "{pad}}}");
    }
}

/// First turned, then moved: the order of operations is read from the last to the first.
fn place(out: &mut String, place: &UprightPlace, pad: &str) {
    let [i, j, k, w] = place.rotation;
    let _ = write!(out, "{pad}    quatf xformOp:orient = (");
    for (n, value) in [w, i, j, k].into_iter().enumerate() {
        // All its figures: a long part's far end would else stand aside.
        let _ = write!(out, "{}{value}", if n == 0 { "" } else { ", " });
    }
    let _ = write!(out, ")\n{pad}    double3 xformOp:translate = ");
    triple(out, place.translation);
    let _ = write!(
        out,
        "\n{pad}    uniform token[] xformOpOrder = [\"xformOp:translate\", \"xformOp:orient\"]\n"
    );
}
