//! A sheet as SVG, in millimetres, one named group for each layer.

use super::palette::{self, Rgb, hex, tint};
use super::xml::clean;
use crate::drawing::{Align, Item, Layer, Sheet, lettering};
use crate::geometry::{Point2, Segment, Vertex};
use svg::Document;
use svg::node::Node;
use svg::node::element::{Description, Element, Group, Path, Rectangle, Title};

/// What stands in for the font where it is missing; `textLength` keeps the width.
const FALLBACKS: &str = "'DejaVu Sans', 'Noto Sans', Arial, Helvetica, sans-serif";

/// Spells a sheet as an SVG document: user units are millimetres on the paper, y downwards as SVG has it.
///
/// Groups follow the order of drawing; each is named after its layer, and a layer that comes back later gets a
/// number behind its name.
pub fn svg(sheet: &Sheet) -> String {
    let (width, height) = (sheet.paper.width.mm(), sheet.paper.height.mm());
    let mut document = Document::new()
        .set("width", format!("{}mm", number(width)))
        .set("height", format!("{}mm", number(height)))
        .set(
            "viewBox",
            format!("0 0 {} {}", number(width), number(height)),
        )
        .set("data-scale", spell(sheet.scale.factor, 9))
        .add(Title::new(clean(&format!(
            "{} {}",
            sheet.number, sheet.title
        ))))
        .add(Description::new().add(svg::node::Text::new(clean(&format!(
            "Scale {}. Units are millimetres on the paper.",
            sheet.scale.name
        )))))
        .add(
            Rectangle::new()
                .set("width", number(width))
                .set("height", number(height))
                .set("fill", "#fff"),
        );
    for group in groups(sheet, height) {
        document = document.add(group);
    }
    format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{document}\n")
}

fn groups(sheet: &Sheet, height: f64) -> Vec<Group> {
    let mut groups = Vec::new();
    let mut seen: Vec<Layer> = Vec::new();
    let mut rest = sheet.items.as_slice();
    while let Some(first) = rest.first() {
        let layer = first.layer();
        let end = rest.iter().take_while(|i| i.layer() == layer).count();
        let (now, later) = rest.split_at(end);
        seen.push(layer);
        let times = seen.iter().filter(|l| **l == layer).count();
        let id = if times == 1 {
            layer.name().to_owned()
        } else {
            format!("{}-{times}", layer.name())
        };
        let colour = palette::colour(sheet.ink, layer);
        groups.push(group(&id, layer, colour, now, height));
        rest = later;
    }
    groups
}

fn group(id: &str, layer: Layer, colour: Rgb, items: &[Item], height: f64) -> Group {
    let family = format!("'{}', {FALLBACKS}", lettering::FAMILY);
    let mut group = Group::new()
        .set("id", id)
        .set("class", layer.name())
        .set("fill", "none")
        .set("stroke", hex(colour))
        .set("stroke-linecap", "round")
        .set("stroke-linejoin", "round")
        .set("font-family", family);
    for item in items {
        for item in item.primitives().iter() {
            group = match item {
                Item::Text { .. } => group.add(text(item, colour, height)),
                Item::Path { .. } | Item::Dimension(_) => group.add(path(item, colour, height)),
            };
        }
    }
    group
}

fn path(item: &Item, colour: Rgb, height: f64) -> Path {
    let Item::Path {
        points,
        closed,
        pen,
        dash,
        fill,
        ..
    } = item
    else {
        return Path::new();
    };
    let mut path = Path::new().set("d", path_data(points, *closed, height));
    path = match pen {
        Some(pen) => path.set("stroke-width", number(pen.width())),
        None => path.set("stroke", "none"),
    };
    let dashes = pen.map_or_else(Vec::new, |pen| dash.pattern(pen));
    if !dashes.is_empty() {
        let lengths: Vec<_> = dashes.into_iter().map(number).collect();
        path = path.set("stroke-dasharray", lengths.join(" "));
    }
    if let Some(grey) = fill {
        path = path
            .set("fill", hex(tint(colour, *grey)))
            .set("fill-rule", "evenodd");
    }
    path
}

fn path_data(points: &[Vertex], closed: bool, height: f64) -> String {
    let Some(first) = points.first() else {
        return String::new();
    };
    let mut data = format!("M{}", pair(first.at, height));
    let next = points.iter().skip(1).chain(closed.then_some(first));
    for (from, to) in points.iter().zip(next) {
        let segment = Segment {
            from: from.at,
            to: to.at,
            bulge: from.bulge,
        };
        data.push_str(&segment_data(&segment, height));
    }
    if closed {
        data.push('Z');
    }
    data
}

fn segment_data(segment: &Segment, height: f64) -> String {
    let Some(arc) = segment.arc() else {
        return format!("L{}", pair(segment.to, height));
    };
    // SVG's y points down, so a counter-clockwise arc on the paper has its sweep flag off.
    let large = u8::from(arc.sweep.abs() > std::f64::consts::PI);
    let sweep = u8::from(arc.sweep < 0.0);
    let radius = number(arc.radius);
    let to = pair(segment.to, height);
    format!("A{radius} {radius} 0 {large} {sweep} {to}")
}

fn text(item: &Item, colour: Rgb, sheet_height: f64) -> Element {
    // A plain element, because the crate's own text element puts line breaks round its words.
    let mut node = Element::new("text");
    let Item::Text {
        at,
        text,
        height,
        align,
        angle,
        ..
    } = item
    else {
        return node;
    };
    let anchor = match align {
        Align::Left => "start",
        Align::Centre => "middle",
        Align::Right => "end",
    };
    let words = clean(text);
    node.assign("x", number(at.x));
    node.assign("y", number(sheet_height - at.y));
    node.assign("font-size", number(lettering::size(*height)));
    node.assign("textLength", number(lettering::width(&words, *height)));
    node.assign("lengthAdjust", "spacingAndGlyphs");
    node.assign("text-anchor", anchor);
    node.assign("fill", hex(colour));
    node.assign("stroke", "none");
    if *angle != 0.0 {
        let turn = format!("rotate({} {})", number(-angle), pair(*at, sheet_height));
        node.assign("transform", turn);
    }
    node.append(svg::node::Text::new(words));
    node
}

fn pair(at: Point2, height: f64) -> String {
    format!("{} {}", number(at.x), number(height - at.y))
}

/// A number with at most four decimals, without trailing zeros.
fn number(value: f64) -> String {
    spell(value, 4)
}

/// A number with so many decimals at most; whole numbers are printed, for floats would take far longer.
fn spell(value: f64, decimals: u32) -> String {
    let unit = 10_i64.pow(decimals);
    let steps = (value * unit as f64).round() as i64;
    let (whole, rest) = ((steps / unit).abs(), (steps % unit).abs());
    let sign = if steps < 0 { "-" } else { "" };
    if rest == 0 {
        return format!("{sign}{whole}");
    }
    let text = format!("{sign}{whole}.{rest:0width$}", width = decimals as usize);
    text.trim_end_matches('0').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::PaperKind;
    use crate::drawing::{Dash, Pen, Scale};
    use crate::geometry::Outline;

    fn sheet(items: Vec<Item>) -> Sheet {
        Sheet {
            name: "sample".into(),
            title: "<b>&\u{1}\"'".into(),
            number: "A-1".into(),
            paper: PaperKind::Tabloid.landscape(),
            scale: Scale {
                factor: 1.0 / 24.0,
                name: "1/2\" = 1'-0\"".into(),
            },
            chapter: "",
            ink: crate::drawing::Ink::Black,
            items,
            lost: Vec::new(),
        }
    }

    fn line(layer: Layer) -> Item {
        Item::Path {
            layer,
            points: vec![Vertex::sharp(0.1 + 0.2, 10.0), Vertex::sharp(20.0, 10.0)],
            closed: false,
            pen: Some(Pen::Medium),
            dash: Dash::Dashed,
            fill: None,
        }
    }

    #[test]
    fn numbers_are_short_and_never_a_negative_zero() {
        for (value, text) in [
            (0.1 + 0.2, "0.3"),
            (-0.000_01, "0"),
            (25.4, "25.4"),
            (100.0, "100"),
            (1.0 / 3.0, "0.3333"),
        ] {
            assert_eq!(number(value), text);
        }
    }

    #[test]
    fn a_sheet_is_measured_in_millimetres_with_y_down() {
        let text = svg(&sheet(vec![line(Layer::Outline)]));
        assert!(text.contains("width=\"431.8mm\"") && text.contains("height=\"279.4mm\""));
        assert!(text.contains("viewBox=\"0 0 431.8 279.4\""));
        assert!(text.contains("d=\"M0.3 269.4L20 269.4\""), "{text}");
    }

    #[test]
    fn markup_is_escaped_and_control_characters_are_dropped() {
        let note = Item::Text {
            layer: Layer::Note,
            at: Point2::new(5.0, 5.0),
            text: "a < b & \"c\"\u{7}\u{fffe}".into(),
            height: 2.5,
            align: Align::Left,
            angle: 90.0,
        };
        let text = svg(&sheet(vec![note]));
        assert!(text.contains("a &lt; b &amp; \"c\"</text>"), "{text}");
        assert!(text.contains("&lt;b&gt;&amp;\"'"));
        assert!(!text.contains('\u{1}') && !text.contains('\u{7}') && !text.contains('\u{fffe}'));
        assert!(text.contains("rotate(-90 5 274.4)"));
    }

    #[test]
    fn a_layer_that_comes_back_keeps_its_place_and_gets_a_number() {
        let items = vec![
            line(Layer::Outline),
            line(Layer::Note),
            line(Layer::Outline),
        ];
        let text = svg(&sheet(items));
        let places: Vec<_> = ["id=\"outline\"", "id=\"note\"", "id=\"outline-2\""]
            .iter()
            .map(|id| text.find(id).unwrap())
            .collect();
        assert!(places.is_sorted());
        assert_eq!(
            text,
            svg(&sheet(vec![
                line(Layer::Outline),
                line(Layer::Note),
                line(Layer::Outline)
            ]))
        );
    }

    #[test]
    fn arcs_turn_the_way_they_turn_on_the_paper() {
        // A half circle from (10, 10) to (0, 10) counter-clockwise bulges upwards: on the page its top is y = 15.
        let arc = Item::Path {
            layer: Layer::Cut,
            points: vec![Vertex::bent(10.0, 10.0, 1.0), Vertex::sharp(0.0, 10.0)],
            closed: false,
            pen: Some(Pen::Thin),
            dash: Dash::Solid,
            fill: None,
        };
        assert!(svg(&sheet(vec![arc])).contains("M10 269.4A5 5 0 0 0 0 269.4"));
    }

    #[test]
    fn rounded_outlines_close() {
        let outline = Outline::rounded_rectangle(0.0, 0.0, 20.0, 10.0, 2.0);
        let data = path_data(outline.vertices(), true, 100.0);
        assert_eq!(data.matches('A').count(), 4);
        assert!(data.ends_with('Z'));
    }
}
