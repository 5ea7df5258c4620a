//! The model taken apart, in isometric projection: every piece numbered.

use super::moves::Moves;
use super::prints::{Level, Print, Prints};
use crate::drawing::axonometric::{Named, PENS, best_corner, letter_names, name_columns, weighed};
use crate::drawing::border::Frame;
use crate::drawing::fit::Fit;
use crate::drawing::hidden::{Depths, Line, Placed, Shape, View, visible};
use crate::drawing::page::{LARGE, Page, Stand};
use crate::drawing::{Align, Dash, Layer, Pen, Scale};
use crate::geometry::{Bounds2, Faceted, Placement, Point3, Vector2, Vector3};
use crate::plan::Plan;
use nalgebra::Translation3;

/// Width of the columns of names, millimetres.
const NAMES: f64 = 30.0;
/// Above and below the view, millimetres.
const AIR: f64 = 3.0;
/// So many of a piece's largest triangles are tried for its number.
const TRIED: usize = 40;
/// Shares of a triangle's corners at which a number is tried.
const WITHIN: [[f64; 3]; 7] = [
    [1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0],
    [0.5, 0.25, 0.25],
    [0.25, 0.5, 0.25],
    [0.25, 0.25, 0.5],
    [0.7, 0.15, 0.15],
    [0.15, 0.7, 0.15],
    [0.15, 0.15, 0.7],
];
/// A place is seen when what is nearest to the eye there is so near to it, millimetres built.
const ON_IT: f64 = 5.0;
/// So few pieces are all named beside the view; of more, the numbers stand on the pieces where there is room.
const FEW: usize = 12;
/// No more names are led out into the columns: leaders of more could not be told apart.
const MOST_LED: usize = 24;

/// The pieces as they are drawn: enlarged to the island's size, so that lines are weighed as on the island's own sheets.
struct Apart<'a> {
    prints: &'a Prints<'a>,
    shapes: Vec<Shape>,
    /// Where each piece stands, moved.
    places: Vec<Placement>,
    moves: Moves,
}

/// Draws the sheet; `None` where there is nothing to see.
pub(super) fn draw(plan: &Plan, frame: &Frame, prints: &Prints, title: &str) -> Option<Page> {
    let view = View::isometric(best_corner(plan));
    let apart = Apart::new(prints);
    let ways = apart.ways(&view);
    let wires = Shape::wires(&ways);
    let mut bodies = apart.bodies(&view);
    let depths = Depths::new(&bodies);
    bodies.push(Placed {
        shape: &wires,
        motion: Placement::identity(),
    });
    let lines = visible(&bodies);
    let bounds = Bounds2::around(lines.iter().flat_map(|l| [l.from, l.to]))?;
    let notes = notes(prints);
    let (columns, between) = name_columns(&frame.room(&notes), NAMES);
    let fits = |built: f64, room: f64| room / built.max(1.0);
    let factor = fits(bounds.width(), between.width())
        .min(fits(bounds.height(), between.height() - 2.0 * AIR));
    let drawn = Scale {
        factor,
        ..Scale::none()
    };
    let fit = Fit::at(drawn, &bounds, &between);
    let mut page = frame.page(title, &Scale::none(), &notes);
    let count = prints.pieces.len();
    let (own, ways): (Vec<Line>, Vec<Line>) = lines.iter().partition(|l| l.of < count);
    let range = |of: usize| match prints.pieces.get(of).map(|p| p.level) {
        Some(Level::Frame) => (1, 2),
        _ => (1, 3),
    };
    fit.draw(&mut page, &weighed(&own, &depths, &fit, range), &PENS);
    for way in ways {
        let (from, to) = (fit.point(way.from), fit.point(way.to));
        page.line(Layer::Symbol, Pen::Fine, Dash::Phantom, from, to);
    }
    let mut led = apart.numbered(&mut page, &view, &depths, &fit);
    for named in led.split_off(MOST_LED.min(led.len())) {
        page.lose(&named.text);
    }
    letter_names(&mut page, &led, &view, &depths, &fit, &columns);
    Some(page)
}

fn notes(prints: &Prints) -> Vec<String> {
    let clearance = prints.clearance;
    let mut notes = vec![format!(
        "Isometric, not to scale. The numbers are the order of putting together and stand in the list of pieces; phantom lines show where a piece goes. \
         Pieces that go into each other have {clearance} mm of air on each side: try one joint before you print the rest."
    )];
    if !prints.simplified.is_empty() {
        let simpler = prints.simplified.join("; ");
        notes.push(format!("Simpler than the island: {simpler}."));
    }
    notes
}

impl<'a> Apart<'a> {
    fn new(prints: &'a Prints<'a>) -> Self {
        let moves = Moves::new(prints);
        let places = prints.pieces.iter().enumerate().map(|(i, piece)| {
            let shift = piece.back.translation.vector * prints.scale + moves.of(i);
            Placement::from_parts(Translation3::from(shift), piece.back.rotation)
        });
        let shapes = prints.pieces.iter();
        let shapes = shapes.map(|p| Shape::new(&enlarged(p, prints.scale)));
        Self {
            places: places.collect(),
            shapes: shapes.collect(),
            moves,
            prints,
        }
    }

    fn bodies(&self, view: &View) -> Vec<Placed<'_>> {
        let pairs = self.shapes.iter().zip(&self.places);
        pairs
            .map(|(shape, place)| Placed {
                shape,
                motion: view.of_part(place),
            })
            .collect()
    }

    /// Lines in the view from the outermost corners of each level to the foot of the one above it.
    fn ways(&self, view: &View) -> Vec<[Point3; 2]> {
        let steps = self.moves.steps().filter(|([lower, _], ..)| {
            // What does not go into what stands above it has no way there.
            *lower != Level::Frame || self.prints.frame_inside
        });
        let ways = steps.flat_map(|([lower, _], top, foot)| {
            let corners = self.outermost(lower).into_iter();
            corners.map(move |p| [Point3::new(p.x, p.y, top), Point3::new(p.x, p.y, foot)])
        });
        ways.map(|way| way.map(|p| view.point(p))).collect()
    }

    /// The corners of a level that lie farthest along the four diagonals of the plan, each once.
    fn outermost(&self, level: Level) -> Vec<Point3> {
        let pieces = self.prints.pieces.iter().zip(&self.places);
        let own = pieces.filter(|(p, _)| p.level == level);
        let points: Vec<Point3> = own
            .flat_map(|(p, place)| {
                let points = p.surface.points.iter();
                points.map(move |at| place * (at * self.prints.scale))
            })
            .collect();
        let mut found: Vec<Point3> = Vec::new();
        for (x, y) in [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)] {
            let along = |p: &Point3| x * p.x + y * p.y;
            let farthest = points
                .iter()
                .max_by(|a, b| along(a).total_cmp(&along(b)))
                .copied();
            found.extend(farthest.filter(|p| !found.contains(p)));
        }
        found
    }

    /// Letters numbers on the pieces where they are many; gives those that are to be named, by number and name.
    fn numbered(&self, page: &mut Page, view: &View, depths: &Depths, fit: &Fit) -> Vec<Named> {
        let mut led = Vec::new();
        let pieces = self.prints.pieces.iter().zip(&self.places).zip(1..);
        for ((piece, place), number) in pieces {
            let places = self.places_on(piece, place, view);
            let seen = places.iter().map(|at| view.point(*at)).filter(|p| {
                let nearest = depths.at(p.xy());
                nearest.is_some_and(|d| (d - p.z).abs() < ON_IT)
            });
            let stands = seen.map(|p| -> Stand {
                let at = fit.point(p.xy()) - Vector2::new(0.0, LARGE / 2.0);
                (at, Align::Centre, 0.0)
            });
            let number = number.to_string();
            let is_named = self.prints.pieces.len() <= FEW;
            // Where no line crosses a text, all of it lies on the face that its middle lies on.
            if is_named || !page.place(Layer::Note, &number, LARGE, stands) {
                led.push(Named {
                    text: format!("{number}  {}", piece.name),
                    places,
                });
            }
        }
        led
    }

    /// Places on the largest of those faces of a piece that are turned to the eye, in the world, the nearest first: what is
    /// seen through a hole is taken for something else.
    fn places_on(&self, piece: &Print, place: &Placement, view: &View) -> Vec<Point3> {
        let turned = view.of_part(place);
        let mut faces: Vec<(f64, [Point3; 3])> = Vec::new();
        for triangle in &piece.surface.triangles {
            let corners = piece.surface.corners(triangle);
            let [a, b, c] = corners.map(|p| p * self.prints.scale);
            let across: Vector3 = turned * (b - a).cross(&(c - a));
            if across.z > 0.0 {
                faces.push((across.z, [a, b, c].map(|p| place * p)));
            }
        }
        faces.sort_by(|a, b| b.0.total_cmp(&a.0));
        let largest = faces.iter().take(TRIED);
        let places = largest.flat_map(|(_, corners)| {
            WITHIN.map(|shares| {
                let weighed = corners
                    .iter()
                    .zip(shares)
                    .map(|(p, share)| p.coords * share);
                Point3::from(weighed.sum::<Vector3>())
            })
        });
        let mut places: Vec<Point3> = places.collect();
        let near = |p: &Point3| view.point(*p).z;
        places.sort_by(|a, b| near(b).total_cmp(&near(a)));
        places
    }
}

/// A print's surface at the island's size.
fn enlarged(piece: &Print, scale: f64) -> Faceted {
    Faceted {
        points: piece.surface.points.iter().map(|p| p * scale).collect(),
        triangles: piece.surface.triangles.clone(),
    }
}
