//! The page poured into its frame.

use super::packed::packed;
use super::script::script;
use super::spot::spot;
use super::{BuildBook, Figure, Found, Leaf, Lists, Live, Shown, island_data};
use crate::diagnostics::{Finding, Verdict};
use crate::geometry::Point2;
use crate::table::{Cell, Table};
use minijinja::Environment;
use serde_json::{Map, Value, json};

const PAGE: &str = include_str!("../../../templates/book/page.html");
const FINDINGS: &str = include_str!("../../../templates/book/findings.html");
const FIGURES: &str = include_str!("../../../templates/book/figures.html");
const INPUTS: &str = include_str!("../../../templates/book/inputs.html");
const STYLE: &str = include_str!("../../../templates/book/style.css");

/// Why the page could not be written: a fault of the program.
#[derive(Debug)]
pub struct BookError(String);

impl std::fmt::Display for BookError {
    fn fmt(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        write!(f, "the build book cannot be written: {}", self.0)
    }
}

impl std::error::Error for BookError {}

impl From<std::io::Error> for BookError {
    fn from(error: std::io::Error) -> Self {
        Self(error.to_string())
    }
}

impl From<minijinja::Error> for BookError {
    fn from(error: minijinja::Error) -> Self {
        Self(format!("{error:#}"))
    }
}

/// Writes the page.
///
/// # Errors
/// When the frame cannot be filled or the drawings cannot be deflated: faults of the program.
pub fn build_book(book: &BuildBook) -> Result<String, BookError> {
    let mut leaves = Leaves::default();
    let drawings = leaves.chapters(&book.drawings);
    let drawn = leaves.of_chapter(&book.drawings, book.drawn_views);
    let template = leaves.chapters(&book.template);
    let lists: Vec<Value> = book.lists.iter().map(|l| list(l, &mut leaves)).collect();
    let island = island_data(&book.shown)?;
    let mut data = island.json;
    data["drawn"] = drawn;
    let values = json!({
        "title": book.title,
        "facts": book.facts,
        "figures": figures(&book.figures),
        "style": STYLE,
        "script": script(),
        "live": book.live.map(live),
        "chapters": chapters(book),
        "part_count": book.shown.parts.len(),
        "tally": tally(&book.findings),
        "cautions": book.cautions,
        "findings": findings(&book.shown, &book.outline, &book.findings),
        "drawings": drawings,
        "printing": book.printing,
        "template": template,
        "lists": lists,
        "files": files(book),
        "island": in_script(&data),
        "shapes": island.shapes,
        "sheets": packed(&serde_json::to_vec(&leaves.texts).unwrap_or_default())?,
    });
    poured("page", values)
}

/// The chapter of findings alone, as the live view puts it in place of the earlier one.
///
/// # Errors
/// When the frame cannot be filled: a fault of the program.
pub fn findings_fragment(
    shown: &Shown,
    outline: &[Point2],
    found: &[Found],
    cautions: &[String],
) -> Result<String, BookError> {
    let values = json!({
        "tally": tally(found),
        "cautions": cautions,
        "findings": findings(shown, outline, found),
    });
    poured("findings", values)
}

/// Pours values into one of the frames.
fn poured(name: &str, values: Value) -> Result<String, BookError> {
    let mut environment = Environment::new();
    environment.set_auto_escape_callback(|_| minijinja::AutoEscape::Html);
    environment.add_template("page", PAGE)?;
    environment.add_template("findings", FINDINGS)?;
    environment.add_template("figures", FIGURES)?;
    environment.add_template("inputs", INPUTS)?;
    let values = minijinja::Value::from(minijinja::value::Serde(values));
    Ok(environment.get_template(name)?.render(values)?)
}

fn figures(figures: &[Figure]) -> Value {
    let figures = figures.iter();
    let own =
        figures.map(|f| json!({"id": f.id, "name": f.name, "value": f.value, "note": f.note}));
    Value::Array(own.collect())
}

fn live(live: &Live) -> Value {
    let groups = live.inputs.iter().map(|group| {
        let inputs = group.inputs.iter().map(|i| {
            json!({"key": i.key, "label": i.label, "about": i.about, "value": i.value, "choices": i.choices})
        });
        json!({"title": group.title, "inputs": inputs.collect::<Vec<_>>()})
    });
    json!({"token": live.token, "groups": groups.collect::<Vec<_>>()})
}

/// JSON that cannot end the script it stands in.
fn in_script(value: &Value) -> String {
    value.to_string().replace('<', "\\u003c")
}

/// The drawings of the page, in the order they are met.
#[derive(Default)]
struct Leaves {
    texts: Vec<String>,
}

impl Leaves {
    fn add(&mut self, leaf: &Leaf) -> Value {
        self.texts.push(leaf.svg.clone());
        json!({"at": self.texts.len() - 1, "title": leaf.title, "number": leaf.number})
    }

    fn all(&mut self, leaves: &[Leaf]) -> Value {
        Value::Array(leaves.iter().map(|leaf| self.add(leaf)).collect())
    }

    /// Leaves by their chapters, in order.
    fn chapters(&mut self, leaves: &[Leaf]) -> Value {
        let chunks = leaves.chunk_by(|a, b| a.chapter == b.chapter);
        let chapters =
            chunks.map(|own| json!({"chapter": own[0].chapter, "sheets": self.all(own)}));
        Value::Array(chapters.collect())
    }

    /// The leaves of one chapter, which are there already from the first on.
    fn of_chapter(&self, leaves: &[Leaf], chapter: &str) -> Value {
        let numbered = leaves.iter().enumerate().take(self.texts.len());
        let own = numbered.filter(|(_, leaf)| leaf.chapter == chapter);
        Value::Array(
            own.map(|(at, leaf)| json!({"at": at, "title": leaf.title}))
                .collect(),
        )
    }
}

fn chapters(book: &BuildBook) -> Value {
    let fixed = |id: &str, title: &str| json!({"id": id, "title": title});
    let mut all = vec![fixed("island", "Island")];
    all.extend(book.live.map(|_| fixed("numbers", "Numbers")));
    all.extend([
        fixed("findings", "Findings"),
        fixed("drawings", "Drawings"),
        fixed("template", "Template"),
    ]);
    all.extend(book.lists.iter().map(|l| fixed(l.id, l.title)));
    all.push(fixed("files", "Files"));
    Value::Array(all)
}

/// Verdicts from the worst to the best: its class in the style, and whether its findings are shown at once.
const VERDICTS: [(Verdict, &str, bool); 5] = [
    (Verdict::Error, "error", true),
    (Verdict::Fail, "fail", true),
    (Verdict::Caution, "caution", true),
    (Verdict::NotChecked, "unknown", false),
    (Verdict::Pass, "pass", false),
];

fn of_verdict<'b>(found: &'b [Found<'b>], verdict: Verdict) -> impl Iterator<Item = &'b Found<'b>> {
    found.iter().filter(move |f| f.finding.verdict == verdict)
}

fn tally(found: &[Found]) -> Value {
    let counted = VERDICTS.iter().filter_map(|(verdict, class, _)| {
        let count = of_verdict(found, *verdict).count();
        let shown = count > 0 || *verdict == Verdict::Fail;
        shown.then(|| json!({"class": class, "word": verdict.word(), "count": count}))
    });
    Value::Array(counted.collect())
}

fn findings(shown: &Shown, outline: &[Point2], found: &[Found]) -> Value {
    let groups = VERDICTS.iter().filter_map(|(verdict, class, open)| {
        let items: Vec<Value> = of_verdict(found, *verdict)
            .map(|f| finding(shown, outline, f))
            .collect();
        (!items.is_empty())
            .then(|| json!({"class": class, "word": verdict.word(), "open": open, "items": items}))
    });
    Value::Array(groups.collect())
}

fn finding(shown: &Shown, outline: &[Point2], found: &Found) -> Value {
    let f: &Finding = found.finding;
    let parts = found.parts.iter();
    let parts: Vec<_> = parts.filter_map(|i| shown.parts.get(*i)).collect();
    let picture = if f.verdict == Verdict::Pass {
        None
    } else {
        spot(outline, &parts)
    };
    let line = f.place.is_known().then_some(f.place.line);
    json!({
        "found": sentence(&f.found), "limit": f.limit, "source": f.source, "hint": f.hint, "code": f.code,
        "key": f.place.key, "line": line, "picture": picture, "parts": found.parts,
        "where": parts.first().map_or("", |p| p.part.mark.as_str()),
    })
}

/// With a capital letter.
fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

fn list(list: &Lists, leaves: &mut Leaves) -> Value {
    let steps = list.steps.iter().map(|s| {
        json!({"id": s.id, "name": s.name, "when": s.when, "cautions": s.cautions, "hold": s.hold, "checks": s.checks})
    });
    let tables = list.tables.iter().enumerate();
    json!({
        "id": list.id, "title": list.title, "about": list.about, "steps": steps.collect::<Vec<_>>(),
        "tables": tables.map(|(i, t)| table(t, i == 0 && list.steps.is_empty())).collect::<Vec<_>>(),
        "sheets": leaves.all(&list.sheets),
    })
}

/// A cell with more letters may be broken into lines.
const SHORT: usize = 28;

fn table(table: &Table, open: bool) -> Value {
    let is_number = |column: usize| {
        let cells = || table.rows.iter().filter_map(|row| row.get(column));
        cells().any(|c| matches!(c, Cell::Number { .. }))
            && cells().all(|c| !matches!(c, Cell::Text(_)))
    };
    let numeric: Vec<bool> = (0..table.columns.len()).map(is_number).collect();
    let mark = table.columns.iter().position(|c| c.heading == "mark");
    // The mark stands first and stays in sight when a narrow screen is pushed aside.
    let others = (0..table.columns.len()).filter(|i| mark != Some(*i));
    let order: Vec<usize> = mark.into_iter().chain(others).collect();
    let classes = |column: usize, is_long: bool| {
        let all = [
            (numeric[column], "number"),
            (is_long, "long"),
            (mark == Some(column), "mark"),
        ];
        let own = all.iter().filter(|c| c.0).map(|c| c.1);
        own.collect::<Vec<_>>().join(" ")
    };
    let columns = order.iter().map(|&i| {
        let title = table.columns[i].title();
        json!({"title": title, "class": classes(i, false)})
    });
    let rows = table.rows.iter().map(|row| {
        let cells = order.iter().filter_map(|&i| Some((i, row.get(i)?)));
        let cells = cells.map(|(i, cell)| {
            let text = cell.spelt();
            let class = classes(i, text.chars().count() > SHORT);
            json!({"text": text, "class": class})
        });
        let mut value = Map::new();
        value.insert("cells".to_owned(), cells.collect());
        if let Some(Cell::Text(mark)) = mark.and_then(|m| row.get(m)) {
            value.insert("mark".to_owned(), mark.clone().into());
        }
        Value::Object(value)
    });
    json!({
        "name": table.name, "title": table.title, "open": open,
        "columns": columns.collect::<Vec<_>>(),
        "rows": rows.collect::<Vec<_>>(),
    })
}

fn files(book: &BuildBook) -> Value {
    let groups = book.beside.iter().map(|group| {
        let files = group.files.iter();
        let files: Vec<Value> = files
            .map(|(path, bytes)| json!({"path": path, "size": size(*bytes)}))
            .collect();
        json!({"folder": group.folder, "about": group.about, "files": files})
    });
    Value::Array(groups.collect())
}

/// A file's size for people.
fn size(bytes: usize) -> String {
    match bytes.div_ceil(1000) {
        kb @ 0..1000 => format!("{kb} kB"),
        kb => format!("{:.1} MB", kb as f64 / 1000.0),
    }
}
