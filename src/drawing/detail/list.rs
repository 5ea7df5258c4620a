//! Which details a design has, in order.

use super::places::{self, Spot};
use crate::plan::Plan;

/// One detail of the set.
#[derive(Clone, Debug, PartialEq)]
pub struct Detail {
    /// Its number, from 1.
    pub number: usize,
    /// What it shows.
    pub title: String,
    pub(super) subject: Subject,
}

/// What a detail shows, and where that is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Subject {
    /// The edge of the counter over a face; the number is that of the side.
    Edge(Spot, usize),
    /// The foot of a face, through a stud.
    Base(Spot),
    /// A stud in its bottom track, from above.
    Track(Spot),
    /// A header folded onto its jamb: number of the face and of the opening in it.
    Fold(usize, usize),
    /// The jamb of an opening, from above.
    Jamb(usize, usize),
    /// The head of an opening.
    Head(usize, usize),
    /// The edge of a cutout with its appliance: number of the cutout.
    Cutout(usize),
    /// Where two runs meet: the inward corner that a face begins at.
    Inward(usize),
    /// The outward corner that a face begins at.
    Outward(usize),
    /// The upper edge of a face with its tile band.
    Tile(Spot),
}

/// The details of a design, numbered from 1; only what the design has.
pub fn details(plan: &Plan) -> Vec<Detail> {
    let subjects = subjects(plan).into_iter().zip(1..);
    let named = subjects.map(|(subject, number)| Detail {
        number,
        title: title(plan, &subject),
        subject,
    });
    named.collect()
}

fn subjects(plan: &Plan) -> Vec<Subject> {
    let spot = places::plain_stud(plan);
    let tile = spot.filter(|_| plan.design.tile_band.is_some());
    let mut edges = places::edges(plan).into_iter();
    let edge = |(spot, side)| Subject::Edge(spot, side);
    // The tile band belongs beside the edge over it.
    let mut found: Vec<Subject> = edges.next().map(edge).into_iter().collect();
    found.extend(tile.map(Subject::Tile));
    found.extend(edges.map(edge));
    found.extend(spot.map(Subject::Base));
    found.extend(spot.map(Subject::Track));
    if let Some((face, opening)) = places::framed_opening(plan) {
        found.push(Subject::Fold(face, opening));
        found.push(Subject::Jamb(face, opening));
        found.push(Subject::Head(face, opening));
    }
    found.extend(places::cutout(plan).map(Subject::Cutout));
    found.extend(places::inward_corner(plan).map(Subject::Inward));
    found.extend(places::outward_corner(plan).map(Subject::Outward));
    found
}

fn title(plan: &Plan, subject: &Subject) -> String {
    let side = |face: usize| plan.faces.get(face).map_or("", |f| f.side.name());
    match subject {
        Subject::Edge(spot, _) => format!("Counter edge, {}", side(spot.face)),
        Subject::Base(_) => "Base: sleeper, track and base channel".to_owned(),
        Subject::Track(_) => "Stud in its track, from above".to_owned(),
        Subject::Fold(..) => "Header folded onto its jamb".to_owned(),
        Subject::Jamb(face, opening) => {
            format!("Jamb at {}, from above", named(plan, *face, *opening))
        }
        Subject::Head(face, opening) => format!("Head at {}", named(plan, *face, *opening)),
        Subject::Cutout(cutout) => {
            let appliance = plan
                .cutouts
                .get(*cutout)
                .and_then(|c| plan.design.appliances.get(c.appliance));
            format!("Cutout at {}", appliance.map_or("", |a| &a.name))
        }
        Subject::Inward(_) => "Where two runs meet, from above".to_owned(),
        Subject::Outward(_) => "Outward corner, from above".to_owned(),
        Subject::Tile(_) => "Tile band under the counter".to_owned(),
    }
}

fn named(plan: &Plan, face: usize, opening: usize) -> &str {
    let face = plan.faces.get(face);
    let opening = face.and_then(|f| f.openings.get(opening));
    opening.map_or("", |o| &o.name)
}
