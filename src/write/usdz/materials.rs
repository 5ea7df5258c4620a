//! Materials of USD's preview surface.

use super::names::Names;
use super::spelling::{number, triple};
use crate::mesh::Appearance;
use std::fmt::Write;

/// Where the materials stand.
const SCOPE: &str = "Materials";

/// The materials that are seen, and the path of each.
pub(super) struct Materials {
    /// By the number of the appearance.
    paths: Vec<Option<String>>,
    /// As the layer holds them.
    pub(super) text: String,
}

impl Materials {
    /// Those of `all` that are `used`, below a root.
    pub(super) fn of(all: &[Appearance], used: impl Fn(usize) -> bool, root: &str) -> Self {
        let mut names = Names::default();
        let mut text = format!("    def Scope \"{SCOPE}\"\n    {{\n");
        let mut path = |(number, look): (usize, &Appearance)| {
            let name = used(number).then(|| names.of(look.name))?;
            let path = format!("/{root}/{SCOPE}/{name}");
            material(&mut text, look, &name, &path);
            Some(path)
        };
        let paths = all.iter().enumerate().map(|(n, a)| path((n, a))).collect();
        text.push_str("    }\n");
        Self { paths, text }
    }

    /// The path of an appearance's material.
    pub(super) fn path(&self, appearance: usize) -> Option<&str> {
        self.paths.get(appearance)?.as_deref()
    }
}

fn material(out: &mut String, look: &Appearance, name: &str, path: &str) {
    let mut colour = String::new();
    triple(&mut colour, look.colour);
    let spelt = |value: f32| {
        let mut out = String::new();
        number(&mut out, value);
        out
    };
    let _ = write!(
        out,
        "        def Material \"{name}\"
        {{
            token outputs:surface.connect = <{path}/Surface.outputs:surface>

            def Shader \"Surface\"
            {{
                uniform token info:id = \"UsdPreviewSurface\"
                color3f inputs:diffuseColor = {colour}
                float inputs:metallic = {}
                float inputs:roughness = {}
                token outputs:surface
            }}
        }}
",
        spelt(look.metallic),
        spelt(look.roughness),
    );
}
