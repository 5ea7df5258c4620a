//! Sheets as one PDF: exact page sizes, vectors, lettering that can be searched, no clock.

use crate::drawing::{Align, Dash, Item, Pen, Sheet, lettering};
use crate::geometry::{Point2, Segment, Vertex};
use krilla::color::luma;
use krilla::destination::XyzDestination;
use krilla::geom::{PathBuilder, Point, Transform};
use krilla::metadata::Metadata;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};
use std::f64::consts::FRAC_PI_2;

/// What a PDF says of itself; nothing of it comes from a clock or a machine.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PdfInfo {
    /// The document's title.
    pub title: String,
    /// What it is about.
    pub subject: String,
    /// By whom it was drawn; may be empty.
    pub author: String,
}

/// Why sheets could not be put into a PDF.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PdfError {
    /// A page whose size is zero, not finite or beyond what the format holds; the sheet's name.
    PageSize(String),
    /// The library that writes the format refused.
    Library(String),
}

impl std::fmt::Display for PdfError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::PageSize(sheet) => {
                write!(f, "sheet {sheet} has a size that no PDF page can have")
            }
            Self::Library(why) => write!(f, "the PDF could not be written: {why}"),
        }
    }
}

impl std::error::Error for PdfError {}

/// The largest page side of the format, points (ISO 32000-1, annex C).
const LARGEST: f64 = 14_400.0;

/// Millimetres as points, in the steps that the file holds.
fn pt(mm: f64) -> f32 {
    // Steps of 1/10,000 point: far below a micrometre, and no number small enough to need an exponent.
    ((mm * 72.0 / 25.4 * 1e4).round() / 1e4) as f32
}

/// All sheets as the pages of one document, each with a bookmark; the same sheets always give the same bytes.
///
/// # Errors
/// When a sheet's size is not one that a page can have, or the library refuses.
pub fn pdf(sheets: &[&Sheet], info: &PdfInfo) -> Result<Vec<u8>, PdfError> {
    let font = Font::new(lettering::font_data().into(), 0)
        .ok_or_else(|| PdfError::Library("the font could not be read".to_owned()))?;
    let settings = SerializeSettings {
        enable_tagging: false,
        ..SerializeSettings::default()
    };
    let mut document = Document::new_with(settings);
    let mut bookmarks = Outline::new();
    for (i, sheet) in sheets.iter().enumerate() {
        let (width, height) = (sheet.paper.width.mm(), sheet.paper.height.mm());
        let size = PageSettings::from_wh(pt(width), pt(height))
            .filter(|_| f64::from(pt(width)) <= LARGEST && f64::from(pt(height)) <= LARGEST)
            .ok_or_else(|| PdfError::PageSize(sheet.name.clone()))?;
        let mut page = document.start_page_with(size);
        let mut surface = page.surface();
        let mut pen = PagePen {
            surface: &mut surface,
            font: &font,
            height,
            waiting: None,
        };
        sheet.items.iter().for_each(|item| pen.draw(item));
        pen.draw_waiting();
        surface.finish();
        page.finish();
        let target = XyzDestination::new(i, Point::from_xy(0.0, 0.0));
        bookmarks.push_child(OutlineNode::new(plain(&bookmark(sheet)), target));
    }
    if !sheets.is_empty() {
        document.set_outline(bookmarks);
    }
    document.set_metadata(metadata(info));
    document
        .finish()
        .map_err(|e| PdfError::Library(e.to_string()))
}

fn bookmark(sheet: &Sheet) -> String {
    if sheet.number.is_empty() {
        sheet.title.clone()
    } else {
        format!("{} {}", sheet.number, sheet.title)
    }
}

fn metadata(info: &PdfInfo) -> Metadata {
    let data = Metadata::new()
        .title(plain(&info.title))
        .description(plain(&info.subject))
        .creator("islandwright".to_owned())
        .producer("islandwright".to_owned());
    if info.author.is_empty() {
        data
    } else {
        data.authors(vec![plain(&info.author)])
    }
}

/// A text without the control characters that no page and no metadata may hold.
fn plain(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect()
}

/// Draws items on one page.
struct PagePen<'s, 'p> {
    surface: &'s mut Surface<'p>,
    font: &'s Font,
    height: f64,
    /// Lines of one style that follow on one another; drawn together, for each path costs more than its points.
    waiting: Option<(Pen, Dash, PathBuilder)>,
}

impl PagePen<'_, '_> {
    fn point(&self, p: Point2) -> (f32, f32) {
        (pt(p.x), pt(self.height - p.y))
    }

    fn draw(&mut self, item: &Item) {
        match item {
            Item::Path {
                points,
                closed,
                pen: Some(pen),
                dash,
                fill: None,
                ..
            } => {
                self.wait(*pen, *dash, points, *closed);
            }
            Item::Path {
                points,
                closed,
                pen,
                dash,
                fill,
                ..
            } => {
                self.draw_waiting();
                let mut builder = PathBuilder::new();
                self.path(&mut builder, points, *closed);
                self.draw_path(builder, pen.map(|pen| (pen, *dash)), *fill);
            }
            Item::Text {
                at,
                text,
                height,
                align,
                angle,
                ..
            } => {
                self.draw_waiting();
                self.text(*at, &plain(text), *height, *align, *angle);
            }
        }
    }

    /// Keeps a line for later, with those before it if they are of its style.
    fn wait(&mut self, pen: Pen, dash: Dash, points: &[Vertex], closed: bool) {
        if !points
            .iter()
            .all(|v| (v.at.x + v.at.y + v.bulge).is_finite())
        {
            return;
        }
        if self
            .waiting
            .as_ref()
            .is_some_and(|(p, d, _)| (*p, *d) != (pen, dash))
        {
            self.draw_waiting();
        }
        let (_, _, mut builder) = self
            .waiting
            .take()
            .unwrap_or_else(|| (pen, dash, PathBuilder::new()));
        self.path(&mut builder, points, closed);
        self.waiting = Some((pen, dash, builder));
    }

    fn draw_waiting(&mut self) {
        if let Some((pen, dash, builder)) = self.waiting.take() {
            self.draw_path(builder, Some((pen, dash)), None);
        }
    }

    fn draw_path(&mut self, builder: PathBuilder, pen: Option<(Pen, Dash)>, fill: Option<f64>) {
        if let Some(path) = builder.finish() {
            self.surface.set_fill(fill.map(grey));
            self.surface
                .set_stroke(pen.map(|(pen, dash)| stroke(pen, dash)));
            self.surface.draw_path(&path);
        }
    }

    fn path(&self, builder: &mut PathBuilder, points: &[Vertex], closed: bool) {
        let Some(first) = points.first() else {
            return;
        };
        let (x, y) = self.point(first.at);
        builder.move_to(x, y);
        let ends = points.iter().skip(1).chain(closed.then_some(first));
        for (from, to) in points.iter().zip(ends) {
            let segment = Segment {
                from: from.at,
                to: to.at,
                bulge: from.bulge,
            };
            self.segment(builder, &segment);
        }
        if closed {
            builder.close();
        }
    }

    fn segment(&self, builder: &mut PathBuilder, segment: &Segment) {
        let Some(arc) = segment.arc() else {
            let (x, y) = self.point(segment.to);
            builder.line_to(x, y);
            return;
        };
        // A cubic over a quarter of a circle strays from it by 0.00027 of the radius, and with the sixth power of its
        // angle: pieces this long stay within a thousandth of a millimetre.
        let longest = FRAC_PI_2 * (3.6 / arc.radius).powf(1.0 / 6.0).min(1.0);
        let pieces = (arc.sweep.abs() / longest - 1e-9).ceil().clamp(1.0, 64.0);
        let step = arc.sweep / pieces;
        let reach = 4.0 / 3.0 * (step / 4.0).tan() * arc.radius;
        let on = |angle: f64, along: f64| {
            let (sin, cos) = angle.sin_cos();
            arc.centre
                + crate::geometry::Vector2::new(
                    cos * arc.radius - sin * along,
                    sin * arc.radius + cos * along,
                )
        };
        for i in 0..pieces as usize {
            let from = arc.start + step * i as f64;
            let last = i + 1 == pieces as usize;
            let end = if last {
                segment.to
            } else {
                on(from + step, 0.0)
            };
            let (x1, y1) = self.point(on(from, reach));
            let (x2, y2) = self.point(on(from + step, -reach));
            let (x, y) = self.point(end);
            builder.cubic_to(x1, y1, x2, y2, x, y);
        }
    }

    fn text(&mut self, at: Point2, text: &str, height: f64, align: Align, angle: f64) {
        let width = lettering::width(text, height);
        let (x, y) = self.point(at);
        if text.is_empty() || !(x.is_finite() && y.is_finite() && height > 0.0 && angle.is_finite())
        {
            return;
        }
        let shift = match align {
            Align::Left => 0.0,
            Align::Centre => -width / 2.0,
            Align::Right => -width,
        };
        let glyphs: Vec<KrillaGlyph> = text
            .char_indices()
            .map(|(i, c)| {
                let letter = lettering::letter(c);
                let id = GlyphId::new(u32::from(letter.glyph));
                KrillaGlyph::new(
                    id,
                    letter.advance as f32,
                    0.0,
                    0.0,
                    0.0,
                    i..i + c.len_utf8(),
                    None,
                )
            })
            .collect();
        self.surface.set_stroke(None);
        self.surface.set_fill(Some(grey(0.0)));
        self.surface.push_transform(&turned(angle, x, y));
        let start = Point::from_xy(pt(shift), 0.0);
        self.surface.draw_glyphs(
            start,
            &glyphs,
            self.font.clone(),
            text,
            pt(lettering::size(height)),
            false,
        );
        self.surface.pop();
    }
}

/// A turn counter-clockwise on the page by an angle in degrees, then a shift; quarter turns are exact.
fn turned(angle: f64, x: f32, y: f32) -> Transform {
    let (sin, cos) = match angle.rem_euclid(360.0) {
        0.0 => (0.0, 1.0),
        90.0 => (1.0, 0.0),
        180.0 => (0.0, -1.0),
        270.0 => (-1.0, 0.0),
        other => other.to_radians().sin_cos(),
    };
    let (sin, cos) = (sin as f32, cos as f32);
    Transform::from_row(cos, -sin, sin, cos, x, y)
}

fn grey(lightness: f64) -> Fill {
    Fill {
        paint: luma::Color::new((lightness.clamp(0.0, 1.0) * 255.0).round() as u8).into(),
        ..Fill::default()
    }
}

fn stroke(pen: Pen, dash: Dash) -> Stroke {
    let pattern: Vec<f32> = dash.pattern(pen).into_iter().map(pt).collect();
    Stroke {
        width: pt(pen.width()),
        line_cap: if pattern.is_empty() {
            LineCap::Round
        } else {
            LineCap::Butt
        },
        line_join: LineJoin::Round,
        dash: (!pattern.is_empty()).then_some(StrokeDash {
            array: pattern,
            offset: 0.0,
        }),
        ..Stroke::default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::Paper;
    use crate::drawing::{Layer, Scale};
    use crate::geometry::Outline as Curve;
    use crate::units::Length;

    fn sheet(width: f64, items: Vec<Item>) -> Sheet {
        Sheet {
            name: "sample".into(),
            title: "Sample \u{7}".into(),
            number: "T-1".into(),
            paper: Paper {
                width: Length::millimetres(width),
                height: Length::inches(11.0),
            },
            scale: Scale {
                factor: 1.0,
                name: "1:1".into(),
            },
            items,
        }
    }

    fn items() -> Vec<Item> {
        let hole = Curve::rounded_rectangle(20.0, 30.0, 120.0, 90.0, 10.0);
        vec![
            Item::Path {
                layer: Layer::Cut,
                points: hole.vertices().to_vec(),
                closed: true,
                pen: Some(Pen::Heavy),
                dash: Dash::Phantom,
                fill: Some(0.9),
            },
            Item::Text {
                layer: Layer::Note,
                at: Point2::new(70.0, 60.0),
                text: "Ø 10 ± ½ \u{1F525} <b>&\n".into(),
                height: 3.5,
                align: Align::Centre,
                angle: 90.0,
            },
        ]
    }

    #[test]
    fn the_same_sheets_give_the_same_bytes() {
        let (first, second) = (sheet(215.9, items()), sheet(279.4, items()));
        let sheets = [&first, &second];
        let info = PdfInfo {
            title: "A <title> & more".into(),
            ..PdfInfo::default()
        };
        let first = pdf(&sheets, &info).unwrap();
        assert!(first.starts_with(b"%PDF-") && first.len() > 2000);
        assert_eq!(first, pdf(&sheets, &info).unwrap());
        let text = String::from_utf8_lossy(&first);
        // 8.5 × 11 in are 612 × 792 points exactly.
        assert!(
            text.contains("/MediaBox [0 0 612 792]") || text.contains("/MediaBox[0 0 612 792]"),
            "{text}"
        );
        assert!(!text.contains("CreationDate") && !text.contains("ModDate"));
    }

    #[test]
    fn a_size_no_page_can_have_is_refused_and_odd_items_are_harmless() {
        for width in [0.0, -5.0, f64::NAN, f64::INFINITY, 1e7] {
            let refused = pdf(&[&sheet(width, items())], &PdfInfo::default());
            assert_eq!(refused, Err(PdfError::PageSize("sample".into())), "{width}");
        }
        let point = Vertex::sharp(f64::NAN, 1.0);
        let odd = |points| Item::Path {
            layer: Layer::Cut,
            points,
            closed: true,
            pen: Some(Pen::Fine),
            dash: Dash::Solid,
            fill: None,
        };
        let one = Vertex::bent(1.0, 1.0, 1.0);
        let mut sheets = sheet(
            100.0,
            vec![
                odd(vec![]),
                odd(vec![one]),
                odd(vec![one, one]),
                odd(vec![one, point]),
            ],
        );
        sheets
            .items
            .extend(items().into_iter().map(|item| match item {
                Item::Text {
                    layer,
                    text,
                    height,
                    align,
                    angle,
                    ..
                } => Item::Text {
                    layer,
                    text,
                    height,
                    align,
                    angle,
                    at: Point2::new(f64::INFINITY, 0.0),
                },
                other @ Item::Path { .. } => other,
            }));
        assert!(pdf(&[&sheets], &PdfInfo::default()).is_ok());
        assert!(pdf(&[], &PdfInfo::default()).is_ok());
    }
}
