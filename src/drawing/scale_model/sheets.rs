//! All sheets of the scale model.

use super::prints::Prints;
use super::{beds, together};
use crate::drawing::border::Frame;
use crate::drawing::{Scale, Sheet};
use crate::plan::Plan;

/// Draws how the pieces go together, then the list of pieces and the beds; no sheet without a piece.
pub fn sheets(plan: &Plan, prints: &Prints) -> Vec<Sheet> {
    if prints.pieces.is_empty() {
        return Vec::new();
    }
    let frame = Frame::for_workshop(&plan.design.project);
    let scale = prints.scale_name();
    let apart = format!("Scale model {scale}: how the pieces go together");
    let lying = format!("Scale model {scale}: pieces and plates");
    let first = together::draw(plan, &frame, prints, &apart);
    let first = first.map(|page| ("together".to_owned(), apart, page));
    let beds = beds::draw(&frame, prints, &lying).into_iter().zip(1..);
    let beds = beds.map(|(page, number)| (format!("plates-{number}"), lying.clone(), page));
    let pages: Vec<_> = first.into_iter().chain(beds).collect();
    let count = pages.len();
    let numbered = pages.into_iter().zip(1..);
    let sheets = numbered.map(|((name, title, mut page), number)| {
        frame.draw_foot(&mut page, &title, (number, count), &Scale::none());
        page.finish(name, title, format!("P-{number}"), Scale::none())
    });
    sheets.collect()
}
