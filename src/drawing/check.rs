//! What must be true of every sheet, read from the sheet alone, without trusting what drew it.

use super::occupancy::{box_of, crosses, grown, pieces};
use super::{Item, Sheet};
use crate::geometry::Bounds2;

/// Texts may come so near to each other and to lines, millimetres: rounding, not overlap.
const TOUCH: f64 = -0.05;

/// Holds when no text overlaps another one or a line, and all stay on the paper inside `margin`.
///
/// # Errors
/// Names the first two things that meet.
pub fn texts_are_clear(sheet: &Sheet) -> Result<(), String> {
    let items: Vec<Item> = sheet
        .items
        .iter()
        .flat_map(|item| item.primitives().into_owned())
        .collect();
    let boxes: Vec<(&str, Bounds2)> = items
        .iter()
        .filter_map(|item| match item {
            Item::Text { text, .. } => Some((text.as_str(), grown(&box_of(item)?, TOUCH))),
            Item::Path { .. } | Item::Dimension(_) => None,
        })
        .collect();
    let (width, height) = (sheet.paper.width.mm(), sheet.paper.height.mm());
    for (i, (text, area)) in boxes.iter().enumerate() {
        if area.low.x < 5.0
            || area.low.y < 5.0
            || area.high.x > width - 5.0
            || area.high.y > height - 5.0
        {
            return Err(format!("{}: '{text}' leaves the sheet", sheet.name));
        }
        if let Some((other, _)) = boxes[i + 1..].iter().find(|(_, b)| b.overlaps(area, 0.0)) {
            return Err(format!("{}: '{text}' overlaps '{other}'", sheet.name));
        }
    }
    for item in &items {
        let Item::Path {
            points,
            closed,
            layer,
            ..
        } = item
        else {
            continue;
        };
        for piece in pieces(points, *closed) {
            if let Some((text, area)) = boxes.iter().find(|(_, b)| crosses(piece, b)) {
                return Err(format!(
                    "{}: a line of {layer:?} at {piece:?} crosses '{text}' at {area:?}",
                    sheet.name
                ));
            }
        }
    }
    Ok(())
}

/// How far an item of lines extends along x or y, whichever is more; 0 for text.
pub fn extent(item: &Item) -> f64 {
    match item {
        Item::Text { .. } => 0.0,
        Item::Dimension(dimension) => (dimension.line[1] - dimension.line[0]).norm(),
        Item::Path { points, .. } => {
            Bounds2::around(points.iter().map(|p| p.at)).map_or(0.0, |b| b.width().max(b.height()))
        }
    }
}
