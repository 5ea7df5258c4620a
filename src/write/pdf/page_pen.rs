//! Items drawn on one page.

use crate::drawing::{Align, Dash, Ink, Item, Pen, lettering};
use crate::geometry::{Point2, Segment, Vertex};
use crate::write::palette::{self, Rgb, tint};
use krilla::color::{luma, rgb};
use krilla::geom::{PathBuilder, Point, Transform};
use krilla::paint::{Fill, LineCap, LineJoin, Paint, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use std::f64::consts::FRAC_PI_2;

/// Millimetres as points, in the steps that the file holds.
pub(super) fn pt(mm: f64) -> f32 {
    // Steps of 1/10,000 point: far below a micrometre, and no number small enough to need an exponent.
    ((mm * 72.0 / 25.4 * 1e4).round() / 1e4) as f32
}

/// A text without the control characters that no page and no metadata may hold.
pub(super) fn plain(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect()
}

/// How a line is drawn.
type Look = (Rgb, Pen, Dash);

/// Draws items on one page.
pub(super) struct PagePen<'s, 'p> {
    pub(super) surface: &'s mut Surface<'p>,
    pub(super) font: &'s Font,
    pub(super) height: f64,
    pub(super) ink: Ink,
    /// Lines of one style that follow on one another; drawn together, for each path costs more than its points.
    pub(super) waiting: Option<(Look, PathBuilder)>,
}

impl PagePen<'_, '_> {
    fn point(&self, p: Point2) -> (f32, f32) {
        (pt(p.x), pt(self.height - p.y))
    }

    pub(super) fn draw(&mut self, item: &Item) {
        let colour = palette::colour(self.ink, item.layer());
        match item {
            Item::Path {
                points,
                closed,
                pen: Some(pen),
                dash,
                fill: None,
                ..
            } => {
                self.wait((colour, *pen, *dash), points, *closed);
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
                let look = pen.map(|pen| (colour, pen, *dash));
                self.draw_path(builder, look, fill.map(|grey| tint(colour, grey)));
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
                self.surface.set_stroke(None);
                self.surface.set_fill(Some(full(colour)));
                self.text(*at, &plain(text), *height, *align, *angle);
            }
            Item::Dimension(dimension) => {
                dimension
                    .primitives()
                    .iter()
                    .for_each(|item| self.draw(item));
            }
        }
    }

    /// Keeps a line for later, with those before it if they are of its style.
    fn wait(&mut self, look: Look, points: &[Vertex], closed: bool) {
        if !points
            .iter()
            .all(|v| (v.at.x + v.at.y + v.bulge).is_finite())
        {
            return;
        }
        if self
            .waiting
            .as_ref()
            .is_some_and(|(waiting, _)| *waiting != look)
        {
            self.draw_waiting();
        }
        let (_, mut builder) = self
            .waiting
            .take()
            .unwrap_or_else(|| (look, PathBuilder::new()));
        self.path(&mut builder, points, closed);
        self.waiting = Some((look, builder));
    }

    pub(super) fn draw_waiting(&mut self) {
        if let Some((look, builder)) = self.waiting.take() {
            self.draw_path(builder, Some(look), None);
        }
    }

    fn draw_path(&mut self, builder: PathBuilder, look: Option<Look>, fill: Option<Rgb>) {
        if let Some(path) = builder.finish() {
            self.surface.set_fill(fill.map(full));
            self.surface.set_stroke(look.map(stroke));
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
                let id = GlyphId::new(u32::from(shown(letter.glyph)));
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

/// The glyph that is drawn: for a letter that the font has not, the sign that says so, since PDF/A forbids the font's own
/// box for it. The text underneath stays as written and can be searched for.
fn shown(glyph: u16) -> u16 {
    if glyph == 0 {
        lettering::letter(char::REPLACEMENT_CHARACTER).glyph
    } else {
        glyph
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

/// Greys stay greys in the file, so that a printer prints them with black alone.
fn paint([red, green, blue]: Rgb) -> Paint {
    if red == green && green == blue {
        luma::Color::new(red).into()
    } else {
        rgb::Color::new(red, green, blue).into()
    }
}

fn full(colour: Rgb) -> Fill {
    Fill {
        paint: paint(colour),
        ..Fill::default()
    }
}

fn stroke((colour, pen, dash): Look) -> Stroke {
    let pattern: Vec<f32> = dash.pattern(pen).into_iter().map(pt).collect();
    Stroke {
        paint: paint(colour),
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
