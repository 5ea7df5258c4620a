//! What the live view shows while the file is edited: the picture at once, the page a little later.

use super::{Built, Options, Output, TradeData, check, checks, models};
use crate::diagnostics::Finding;
use crate::mesh::{Model, Showing};
use crate::parameters::{self, Field, described};
use crate::parts;
use crate::write::{self, Input, InputGroup};
use serde_json::json;

/// The island for the picture and what was found about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Groups, looks, parts and views as JSON, with the shapes in base 64 under `packed`.
    pub island: String,
    /// The findings as the page shows them.
    pub findings: String,
}

/// Builds what the picture needs, and nothing else.
///
/// # Errors
/// Everything that keeps the file from being built, each with its place.
pub fn picture(text: &str, trade: &TradeData) -> Result<Picture, Vec<Finding>> {
    let plan = check(text, trade)?;
    let assembly = parts::build(&plan);
    let model: Model = models::shown(&assembly, Options::default().tolerance)?;
    let showing = Showing::of(&plan, &assembly, &model);
    let shown = super::book::shown(&plan, &assembly, &model, &showing);
    // What the takeoff finds comes with the page: its cuts may take longer than anybody waits for a picture.
    let found = [plan.design.findings.clone(), checks::findings(&plan)].concat();
    let found = crate::diagnostics::in_order(found);
    let wrong = |e: &dyn std::error::Error| super::takeoff::fault("live-picture", e);
    let island = write::island_data(&shown).map_err(|e| wrong(&e))?;
    let mut data = island.json;
    data["packed"] = island.shapes.into();
    data["drawn"] = json!([]);
    let cautions = checks::cautions(&found);
    let found = super::book::findings(&plan, &assembly, &found);
    let outline: Vec<_> = plan.faces.iter().map(|f| f.start).collect();
    let findings = write::findings_fragment(&shown, &outline, &found, &cautions);
    Ok(Picture {
        island: data.to_string(),
        findings: findings.map_err(|e| wrong(&e))?,
    })
}

/// Builds the whole page as the live view serves it.
///
/// # Errors
/// Everything that keeps the file from being built, each with its place.
pub fn live_page(text: &str, trade: &TradeData, token: &str) -> Result<String, Vec<Finding>> {
    let options = Options {
        outputs: vec![Output::Book],
        live: Some(write::Live {
            token: token.to_owned(),
            inputs: inputs(text),
        }),
        ..Options::default()
    };
    let built: Built = super::build(text, trade, &options, &mut |_| ())?;
    let page = built.groups.into_iter().flat_map(|g| g.files).next();
    Ok(page.map_or_else(String::new, |p| {
        String::from_utf8_lossy(&p.bytes).into_owned()
    }))
}

/// The file's values as inputs, group by group in the order of the file.
pub fn inputs(text: &str) -> Vec<InputGroup> {
    let schema = parameters::schema().to_value();
    let mut groups: Vec<InputGroup> = Vec::new();
    let fields = parameters::fields(text);
    for field in fields.clone() {
        let Some(about) = described(&schema, &field.key) else {
            continue;
        };
        let (group, label) = names(&fields, &field.key);
        let input = Input {
            key: field.key,
            label,
            about: about.about,
            value: field.text,
            choices: about.choices,
        };
        match groups.iter_mut().find(|g| g.title == group) {
            Some(known) => known.inputs.push(input),
            None => groups.push(InputGroup {
                title: group,
                inputs: vec![input],
            }),
        }
    }
    groups
}

/// The group that a key is shown in, and its label there: `runs: cook` and `length`.
fn names(fields: &[Field], key: &str) -> (String, String) {
    let end = key.find(['.', '[']).unwrap_or(key.len());
    let (group, rest) = key.split_at(end);
    let Some(entry) = rest.strip_prefix('[') else {
        let label = rest.trim_start_matches('.');
        let label = if label.is_empty() { group } else { label };
        return (spaced(group), spaced(label));
    };
    let (number, rest) = entry.split_once(']').unwrap_or((entry, ""));
    let named = format!("{group}[{number}].name");
    let name = fields.iter().find(|f| f.key == named);
    let name = name.map_or_else(|| number.to_owned(), |f| f.text.clone());
    let label = rest.trim_start_matches('.');
    let label = if label.is_empty() { group } else { label };
    (format!("{}: {name}", spaced(group)), spaced(label))
}

/// A key as people read it.
fn spaced(key: &str) -> String {
    key.replace('_', " ").replace('.', ", ")
}
